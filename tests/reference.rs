//! The reference routes give natively what they gave when their outcomes were written down.
//!
//! `UPDATE_REFERENCE=1 cargo test --test reference` writes `tests/reference/outcomes.json` anew,
//! after a change of a model, with which `route::MODELS` goes up by one if it moves a hardness by a tenth
//! HRC or a margin by a twentieth: what logbooks have taught is the error of the models before. The page's own WebAssembly is held to the same file in
//! `tests/web.rs`.
#![cfg(not(target_arch = "wasm32"))]

#[path = "reference/key_numbers.rs"]
mod key_numbers;

use key_numbers::{OUTCOMES, answers, differences};

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/outcomes.json");

#[test]
fn outcomes_are_as_written_down() {
    let answers = answers();
    assert_eq!(answers.len(), 38);
    if std::env::var_os("UPDATE_REFERENCE").is_some() {
        let lines: Vec<String> = answers.iter().map(ToString::to_string).collect();
        std::fs::write(FILE, format!("[\n{}\n]\n", lines.join(",\n"))).expect("a written file");
        return;
    }
    let different = differences(OUTCOMES, &answers);
    assert!(
        different.is_empty(),
        "{}\nWhere that is meant and more than a tenth HRC or a twentieth of a margin, `route::MODELS` goes up by one.",
        different.join("\n")
    );
}
