//! The program as WebAssembly in a browser: what natively passes must hold there too.
#![cfg(target_arch = "wasm32")]

use recalesce::steel::Composition;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
fn a_composition_survives_json() {
    let steel: Composition = serde_json::from_str(r#"{"c":1.0,"cr":1.45}"#).unwrap();
    let again: Composition = serde_json::from_str(&serde_json::to_string(&steel).unwrap()).unwrap();
    assert_eq!(steel, again);
}
