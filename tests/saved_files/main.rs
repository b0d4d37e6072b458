//! Files of every version so far, bad files, and what can be done to a shelf.
#![cfg(not(target_arch = "wasm32"))]

mod any_route;
mod comes_back;
mod faults;
mod links;
mod shelf_changes;
mod versions;

use recalesce::save::{Shelf, read};
use serde_json::Value;

const V1_SHELF: &str = include_str!("../saved/v1_shelf.json");
const V5_BENCH: &str = include_str!("../saved/v5_bench.json");
const V6_BENCH: &str = include_str!("../saved/v6_bench.json");
const V7_BENCH: &str = include_str!("../saved/v7_bench.json");
const V8_BENCH: &str = include_str!("../saved/v8_bench.json");
const V9_BENCH: &str = include_str!("../saved/v9_bench.json");

fn shelf() -> Shelf {
    read(V1_SHELF).expect("the shelf of version 1").shelf
}

fn names(shelf: &Shelf) -> Vec<&str> {
    shelf.items().iter().map(|i| i.name.as_str()).collect()
}

/// The shelf of version 1 with a change to its JSON.
fn changed(change: impl FnOnce(&mut Value)) -> String {
    let mut value: Value = serde_json::from_str(V1_SHELF).expect("JSON");
    change(&mut value);
    value.to_string()
}
