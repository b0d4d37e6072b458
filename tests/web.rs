//! The program as WebAssembly in a browser: what natively passes must hold there too.
#![cfg(target_arch = "wasm32")]

use serde_json::Value;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

#[path = "reference/key_numbers.rs"]
mod key_numbers;

wasm_bindgen_test_configure!(run_in_browser);

/// The outcomes of the reference routes as the native program has written them down.
#[wasm_bindgen_test]
fn the_browser_gives_the_native_answers() {
    let written: Value = serde_json::from_str(key_numbers::OUTCOMES).expect("outcomes as written");
    let mut found = Vec::new();
    let answers = Value::from(key_numbers::answers());
    key_numbers::compare(&written["outcomes"], &answers, "", &mut found);
    assert!(found.is_empty(), "{}", found.join("\n"));
}
