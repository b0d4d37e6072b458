//! Versions 1 to 9 of the format. Version 2 added the thermocouple and the offset of the furnace, and
//! structures before hardening to the three of version 1, which kept their names; version 3 added
//! to a quenchant of the user's own its name, its band and its figures, later baths to the quench,
//! and square bars and convex blades to the sections; version 4 added the end-quench test of the
//! heat; version 5 added the steps before hardening; version 6 added the snap temper before the
//! cold, and baths at another temperature than the listed one; version 7 added to the runs
//! of a logbook what a test coupon showed, and to routes the seed of their samples; version 8
//! added to what was predicted of a run whether what the logbook had taught was counted with, and to what is
//! kept of a shop with which models and of which tempers that was learnt, how sure it is and what it is not
//! told apart from; version 9 added to what was predicted of a run of which place it is, the same of what is
//! reached from outside, and where the middle of its band lies. What a version does not have is as it
//! meant it by default, so one reader serves all. While version 9 is the newest, its routes are the
//! project's own types; when a later version changes what they mean, the types of this one are
//! copied here as they are now.

use super::file::{Fields, Kind, Loaded, ReadError};
use super::shelf::{MOST_ROUTES, Shelf, ShelfItem};
use super::told::told;
use recalesce_texts::save::file as texts;
use serde_json::Value;

/// Reads the routes of a file of versions 1 to 9: good ones onto the shelf, bad ones with their fault.
pub(super) fn read(mut fields: Fields) -> Result<Loaded, ReadError> {
    let kind = match fields.take("kind")? {
        Value::String(kind) if kind == Kind::Shelf.name() => Kind::Shelf,
        Value::String(kind) if kind == Kind::Bench.name() => Kind::Bench,
        other => return Err(ReadError::kind(&other, texts::SHELF_OR_BENCH)),
    };
    let Value::Array(routes) = fields.take("routes")? else {
        return Err(ReadError::Field {
            field: "routes",
            fault: texts::NO_LIST.to_owned(),
        });
    };
    fields.finish()?;
    let most = match kind {
        Kind::Shelf => MOST_ROUTES,
        Kind::Bench => 1,
    };
    if routes.len() > most {
        return Err(ReadError::TooMany {
            found: routes.len(),
            most,
        });
    }
    let mut shelf = Shelf::default();
    let mut rejected = Vec::new();
    for (index, value) in routes.into_iter().enumerate() {
        let read = serde_json::from_value::<ShelfItem>(value)
            .map_err(|e| told(&e))
            .and_then(|ShelfItem { id, name, route }| {
                shelf
                    .insert(index, Some(id), &name, route)
                    .map_err(|e| e.to_string())
            });
        if let Err(fault) = read {
            rejected.push((index, fault));
        }
    }
    Ok(Loaded {
        kind,
        shelf,
        rejected,
    })
}
