//! What a shop owns, as it is kept: apart from routes, since it changes nothing in them.

use super::file::{FORMAT, ReadError, VERSION, WriteError, open};
use super::told::told;
use crate::advise::{Correction, Shop};
use recalesce_texts::save::file as texts;
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

/// What is kept of a shop.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptShop {
    /// What it owns.
    pub shop: Shop,
    /// What its logbook has taught, where that is kept and can be read.
    pub learnt: Option<Correction>,
    /// What is wrong with what its logbook has taught, where it cannot be read.
    pub fault: Option<String>,
}

/// Reads a shop, with what its logbook has taught where that is kept. The shop's numbers are not
/// checked: one that makes no sense is told where it is used, and can be mended there. What was learnt
/// that cannot be read, or has numbers out of range, is no error: the shop is read without it.
///
/// # Errors
/// A text that is no file of a shop, or one of a newer version.
pub fn read_shop(text: &str) -> Result<KeptShop, ReadError> {
    let (_, mut fields) = open(text)?;
    match fields.take("kind")? {
        Value::String(kind) if kind == KIND => {}
        other => return Err(ReadError::kind(&other, "\"shop\"")),
    }
    let shop = serde_json::from_value(fields.take("shop")?).map_err(|e| ReadError::Field {
        field: KIND,
        fault: texts::not_read(&told(&e)),
    })?;
    let (learnt, fault) = match fields.take_optional(LEARNT).map(learnt_of).transpose() {
        Ok(learnt) => (learnt, None),
        Err(fault) => (None, Some(fault)),
    };
    Ok(KeptShop {
        shop,
        learnt,
        fault,
    })
}

fn learnt_of(value: Value) -> Result<Correction, String> {
    let learnt: Correction = serde_json::from_value(value).map_err(|e| told(&e))?;
    learnt.check().map_err(|e| e.to_string())?;
    Ok(learnt)
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
        let kept = |learnt| KeptShop {
            shop: shop.clone(),
            learnt,
            fault: None,
        };
        assert_eq!(read_shop(&text), Ok(kept(None)));
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
                tempers_c: None,
                half_band: Some(4.5),
                entangled_with: vec![UnknownKind::TemperedHardness],
            }],
        };
        let with = write_shop(&shop, Some(&learnt)).unwrap();
        assert_eq!(read_shop(&with), Ok(kept(Some(learnt))));
        // Damage to what was learnt is no harm to the shop.
        for (was, is) in [
            ("0.7", "1.7"),
            ("4.5", "-4.5"),
            ("\"left_part\"", "\"left\""),
            ("\"learnt\":{", "\"learnt\":{\"of_later\":1,"),
        ] {
            let damaged = with.replacen(was, is, 1);
            assert_ne!(damaged, with);
            let found = read_shop(&damaged).unwrap();
            assert_eq!((&found.shop, &found.learnt), (&shop, &None));
            assert!(found.fault.is_some_and(|fault| !fault.is_empty()));
        }
        assert!(read_shop(&text.replace("\"shop\",", "\"routes\",")).is_err());
        assert!(read_shop(&text.replace("most_c", "most_f")).is_err());
        assert!(read_shop(&text[..text.len() / 2]).is_err());
        assert!(read_shop("[]").is_err());
    }
}
