//! The shelf after another window has changed it too.

use crate::browser::storage;
use crate::keep;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::save::{self, Shelf};
use recalesce_texts::page as texts;

/// Joins the shelf with the one in the browser's store. What both windows have changed is kept twice,
/// and told; a text that cannot be read whole, mostly of a newer version of the page, stays as it is, and
/// this window writes no more over it.
pub(crate) fn join_shelf(bench: Bench) {
    let Some(stored) = storage::read(storage::SHELF) else {
        // Cleared by hand: what is here stays.
        bench.seen_shelf.update_value(|seen| seen.now = None);
        return keep::put_shelf(bench);
    };
    let common = bench.seen_shelf.try_update_value(|seen| {
        let common = seen.common();
        seen.now = Some(stored.clone());
        common
    });
    let loaded = save::read(&stored).ok();
    let Some(loaded) = loaded.filter(|loaded| loaded.rejected.is_empty()) else {
        bench
            .seen_shelf
            .update_value(|seen| seen.is_unreadable = true);
        return bench.warn(texts::shelf::UNREAD_FROM_ELSEWHERE.to_owned());
    };
    let common = common.flatten().and_then(|text| save::read(&text).ok());
    let common = common.map(|common| common.shelf).unwrap_or_default();
    let own = bench.shelf.get_untracked();
    let theirs = loaded.shelf;
    let joined = Shelf::joined(&common, own.clone(), theirs.clone());
    if joined.shelf != own {
        bench.undo.shelf_from_elsewhere(joined.shelf.clone());
    }
    if joined.shelf != theirs {
        keep::put_shelf(bench);
    }
    let quoted = |names: &[String]| {
        let names: Vec<String> = names.iter().map(|name| format!("“{name}”")).collect();
        names.join(", ")
    };
    if !joined.left_out.is_empty() {
        // The one window's shelf or the other's has them.
        let are_aside = storage::set_aside(storage::SHELF, &stored)
            && save::write_shelf(&own).is_ok_and(|own| storage::set_aside(storage::SHELF, &own));
        let left_out = quoted(&joined.left_out);
        bench.warn(texts::shelf::no_room_for_both(&left_out, are_aside));
    } else if !joined.twice.is_empty() {
        bench.warn(texts::shelf::kept_twice(&quoted(&joined.twice)));
    }
}
