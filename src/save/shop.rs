//! What a shop owns, as it is kept: apart from routes, since it changes nothing in them.

use super::file::{FORMAT, ReadError, VERSION, WriteError, open};
use crate::advise::{Correction, Shop};
use serde::Serialize;
use serde_json::Value;

/// Value of `kind` in a file of a shop.
const KIND: &str = "shop";
/// Field of what the logbook has taught; files before it was kept have none.
const LEARNT: &str = "learnt";

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    kind: &'static str,
    shop: &'a Shop,
    #[serde(skip_serializing_if = "Option::is_none")]
    learnt: Option<&'a Correction>,
}

/// Reads a shop, with what its logbook has taught where that is kept. The shop's numbers are not
/// checked: one that makes no sense is told where it is used, and can be mended there.
///
/// # Errors
/// A text that is no file of a shop, or one of a newer version; what was learnt with numbers out of
/// range.
pub fn read_shop(text: &str) -> Result<(Shop, Option<Correction>), ReadError> {
    let (_, mut fields) = open(text)?;
    match fields.take("kind")? {
        Value::String(kind) if kind == KIND => {}
        other => return Err(ReadError::kind(&other, "\"shop\"")),
    }
    let fault = |field: &'static str, fault: String| ReadError::Field { field, fault };
    let unread = |e: serde_json::Error| format!("cannot be read: {e}");
    let shop = serde_json::from_value(fields.take("shop")?).map_err(|e| fault(KIND, unread(e)))?;
    let learnt = match fields.take_optional(LEARNT) {
        Some(learnt) => {
            let learnt: Correction =
                serde_json::from_value(learnt).map_err(|e| fault(LEARNT, unread(e)))?;
            learnt.check().map_err(|e| fault(LEARNT, e.to_string()))?;
            Some(learnt)
        }
        None => None,
    };
    Ok((shop, learnt))
}

/// Writes a shop, with what its logbook has taught.
///
/// # Errors
/// None that can be met; the text is made by the same library as all others.
pub fn write_shop(shop: &Shop, learnt: Option<&Correction>) -> Result<String, WriteError> {
    let file = File {
        format: FORMAT,
        version: VERSION,
        kind: KIND,
        shop,
        learnt,
    };
    serde_json::to_string(&file).map_err(|e| WriteError::Text(e.to_string()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advise::{Corrected, Owner, UnknownKind};
    use crate::route::MODELS;

    #[test]
    fn a_shop_comes_back_as_it_was_and_another_file_is_refused() {
        let shop = Shop::example();
        assert_eq!(shop.validate(), Ok(()));
        let text = write_shop(&shop, None).unwrap();
        assert_eq!(read_shop(&text), Ok((shop.clone(), None)));
        let learnt = Correction {
            is_on: true,
            models: Some(MODELS.to_owned()),
            furnaces: shop.furnaces.clone(),
            learnt: vec![Corrected {
                kind: UnknownKind::TemperOvenOffset,
                owner: Owner::TemperOven,
                value: 6.0,
                left_part: 0.7,
                runs: 4,
            }],
        };
        let with = write_shop(&shop, Some(&learnt)).unwrap();
        assert_eq!(read_shop(&with), Ok((shop, Some(learnt))));
        assert!(read_shop(&with.replace("0.7", "1.7")).is_err());
        assert!(read_shop(&text.replace("\"shop\",", "\"routes\",")).is_err());
        assert!(read_shop(&text.replace("most_c", "most_f")).is_err());
        assert!(read_shop(&text[..text.len() / 2]).is_err());
        assert!(read_shop("[]").is_err());
    }
}
