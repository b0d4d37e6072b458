//! The reference routes give natively what they gave when their outcomes were written down.
//!
//! `UPDATE_REFERENCE=1 cargo test --test reference` writes `tests/reference/outcomes.json` anew,
//! after a change of a model, with which `route::MODELS` goes up by one if it moves a hardness by a tenth
//! HRC or any other number by a tenth: what logbooks have taught is the error of the models before. The
//! file holds the version it was written with and what that gave when it was new, and such numbers under the
//! same one are refused. The page's own WebAssembly is held to the same file in `tests/web.rs`.
#![cfg(not(target_arch = "wasm32"))]

#[path = "reference/key_numbers.rs"]
mod key_numbers;
#[path = "reference/written.rs"]
mod written;

use key_numbers::{OUTCOMES, answers};
use recalesce::route::MODELS;
use written::Written;

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/outcomes.json");

#[test]
fn outcomes_are_as_written_down() {
    let answers = answers();
    assert_eq!(answers.len(), 39);
    let written = Written::read(OUTCOMES);
    if let Err(why) = written.stands(&answers, MODELS) {
        let is_allowed = std::env::var_os("UPDATE_REFERENCE").is_some();
        assert!(
            is_allowed && written.may_be_replaced(&answers, MODELS),
            "{why}"
        );
        std::fs::write(FILE, written.text(&answers, MODELS)).expect("a written file");
    }
}

/// Other numbers under the version that they are written with are refused, also to be written anew.
#[test]
fn other_numbers_need_another_version_of_the_models() {
    let written = Written::read(OUTCOMES);
    let mut now = written.outcomes.clone();
    assert_eq!(written.stands(&now, MODELS), Ok(()));
    now[0]["carbon_wt"] = 0.5.into();
    let why = written.stands(&now, MODELS).expect_err("another number");
    assert!(
        why.contains("[0].carbon_wt: ") && why.contains("goes up by one"),
        "{why}"
    );
    assert!(!written.may_be_replaced(&now, MODELS));
    // Nor may a route be refused that came to an outcome.
    let mut refused = written.outcomes.clone();
    refused[0] = serde_json::json!({"piece": refused[0]["piece"], "refused": "no"});
    assert!(!written.may_be_replaced(&refused, MODELS));
    // With the next version they are to be written down, and only then stand.
    let next = "3".to_owned() + MODELS;
    let why = written.stands(&now, &next).expect_err("not written yet");
    assert!(why.contains("UPDATE_REFERENCE=1"), "{why}");
    assert!(written.may_be_replaced(&now, &next));
    let anew = Written::read(&written.text(&now, &next));
    assert_eq!(anew.stands(&now, &next), Ok(()));
    // A mesh a little finer is no other model.
    let mut finer = written.outcomes.clone();
    finer[0]["carbon_wt"] = (1.02 * finer[0]["carbon_wt"].as_f64().expect("a number")).into();
    assert!(written.stands(&finer, MODELS).is_err());
    assert!(written.may_be_replaced(&finer, MODELS));
    // Nor are many such steps, as long as they stay near where the version began.
    let mut again = Written::read(&written.text(&finer, MODELS));
    for _ in 0..4 {
        let carbon_wt = again.outcomes[0]["carbon_wt"].as_f64().expect("a number");
        finer[0]["carbon_wt"] = (1.04 * carbon_wt).into();
        again = Written::read(&again.text(&finer, MODELS));
    }
    assert!(!again.may_be_replaced(&finer, MODELS));
    // A caution, a sentence of refusal or a route more is no other number.
    let mut cautions = written.outcomes.clone();
    cautions[0]["cautions"] = 99.into();
    assert!(written.stands(&cautions, MODELS).is_err());
    assert!(written.may_be_replaced(&cautions, MODELS));
}
