//! What a shop owns, as it is kept: apart from routes, since it changes nothing in them.

use super::file::{FORMAT, ReadError, VERSION, WriteError, open};
use crate::advise::Shop;
use serde::Serialize;
use serde_json::Value;

/// Value of `kind` in a file of a shop.
const KIND: &str = "shop";

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    kind: &'static str,
    shop: &'a Shop,
}

/// Reads a shop. Its numbers are not checked: one that makes no sense is told where it is used, and
/// can be mended there.
///
/// # Errors
/// A text that is no file of a shop, or one of a newer version.
pub fn read_shop(text: &str) -> Result<Shop, ReadError> {
    let (_, mut fields) = open(text)?;
    match fields.take("kind")? {
        Value::String(kind) if kind == KIND => {}
        other => return Err(ReadError::kind(&other, "\"shop\"")),
    }
    serde_json::from_value(fields.take("shop")?).map_err(|e| ReadError::Field {
        field: KIND,
        fault: format!("cannot be read: {e}"),
    })
}

/// Writes a shop.
///
/// # Errors
/// None that can be met; the text is made by the same library as all others.
pub fn write_shop(shop: &Shop) -> Result<String, WriteError> {
    let file = File {
        format: FORMAT,
        version: VERSION,
        kind: KIND,
        shop,
    };
    serde_json::to_string(&file).map_err(|e| WriteError::Text(e.to_string()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_shop_comes_back_as_it_was_and_another_file_is_refused() {
        let shop = Shop::example();
        assert_eq!(shop.validate(), Ok(()));
        let text = write_shop(&shop).unwrap();
        assert_eq!(read_shop(&text), Ok(shop));
        assert!(read_shop(&text.replace("\"shop\",", "\"routes\",")).is_err());
        assert!(read_shop(&text.replace("most_c", "most_f")).is_err());
        assert!(read_shop(&text[..text.len() / 2]).is_err());
        assert!(read_shop("[]").is_err());
    }
}
