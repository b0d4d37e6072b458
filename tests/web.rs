//! The program as WebAssembly in a browser: what natively passes must hold there too.
#![cfg(target_arch = "wasm32")]

use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

#[path = "reference/key_numbers.rs"]
mod key_numbers;

wasm_bindgen_test_configure!(run_in_browser);

/// The outcomes of the reference routes as the native program has written them down.
#[wasm_bindgen_test]
fn the_browser_gives_the_native_answers() {
    let found = key_numbers::differences(key_numbers::OUTCOMES, &key_numbers::answers());
    assert!(found.is_empty(), "{}", found.join("\n"));
}
