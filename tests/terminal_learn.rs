//! The terminal's question of a logbook.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::terminal::answer;
use serde_json::{Value, json};

const SAVED: &str = include_str!("saved/v5_logbook.json");

fn asked(question: &Value) -> Value {
    serde_json::from_str(&answer(&question.to_string(), 1)).expect("an answer")
}

fn route() -> Value {
    json!({
        "piece": "knife", "grade": "52100",
        "composition": {"c": 1.0, "mn": 0.35, "si": 0.25, "cr": 1.45},
        "start": "spheroidised", "section": {"shape": "plate", "thickness_mm": 3},
        "furnace_band_k": 8, "soak": {"temperature_c": 845, "time_min": 12},
        "quench": {"medium": "oil_fast"}, "tempers": [{"temperature_c": 180, "time_min": 120}],
        "target": {"least_hrc": 59, "most_hrc": 63}
    })
}

fn run(id: &str, day: &str, quenched: f64, tempered: f64) -> Value {
    json!({
        "id": id, "day": day, "route": route(),
        "readings": [
            {"value": quenched, "scale": "hrc", "after": "quench"},
            {"value": tempered, "scale": "hrc", "after": "temper"}
        ]
    })
}

fn number(value: &Value, path: &str) -> f64 {
    let found = value.pointer(path).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("{path} in {value}"))
}

/// Two soft pieces: the next one is foretold softer, in a narrower band, and a wild reading is named.
#[test]
fn a_logbook_teaches_about_the_next_piece() {
    let mut runs: Vec<Value> = (1..6)
        .map(|i| {
            let by = 0.2 * f64::from(i % 3);
            run(&format!("knife-{i}"), "2026-03-14", 63.6 + by, 59.4 - by)
        })
        .collect();
    runs[2]["readings"][1]["value"] = json!(44);
    let found = asked(&json!({"question": "learn", "runs": runs}));
    assert_eq!(found["error"], Value::Null, "{found}");
    let width = |at: &str| {
        number(&found, &format!("/prediction/{at}/most"))
            - number(&found, &format!("/prediction/{at}/least"))
    };
    assert!(width("after") < 0.9 * width("before"));
    assert!(number(&found, "/prediction/after/mean") < number(&found, "/prediction/before/mean"));
    let compared = found["compared"].as_array().expect("a list");
    let outliers: Vec<&Value> = compared
        .iter()
        .filter(|compared| compared["is_outlier"] == true)
        .collect();
    assert_eq!(outliers.len(), 1);
    assert_eq!(
        (&outliers[0]["run"], &outliers[0]["what"]),
        (&json!(2), &json!("tempered_hrc"))
    );
    let unknowns = found["unknowns"].as_array().expect("a list");
    assert!(unknowns.iter().all(|unknown| {
        unknown["words"]
            .as_str()
            .is_some_and(|words| words.ends_with('.'))
            && unknown["source"]
                .as_str()
                .is_some_and(|source| !source.is_empty())
            && unknown.get("owner").is_none()
    }));
    assert!(
        found["next"][0]["words"]
            .as_str()
            .is_some_and(|words| words.contains("next piece"))
    );
}

/// Runs as the page exports them, of a shop with a name for its furnace.
#[test]
fn an_exported_logbook_is_taken_as_it_is() {
    let saved: Value = serde_json::from_str(SAVED).expect("a file");
    let shop = json!({
        "furnaces": [{
            "name": "kiln", "least_c": 100, "most_c": 1100, "band_k": 10
        }],
        "quenchants": [{"medium": "oil_fast"}],
        "tester": {"error_hrc": 2}
    });
    let found = asked(&json!({"question": "learn", "runs": saved["runs"], "shop": shop}));
    assert_eq!(found["error"], Value::Null, "{found}");
    let text = found.to_string();
    assert!(text.contains("the furnace “kiln”"), "{text}");
    // The knife's grain; everything else of the three runs is used or was not measured.
    let not_used = found["not_used"].as_array().expect("a list");
    let fields: Vec<&Value> = not_used.iter().map(|not_used| &not_used["field"]).collect();
    assert!(
        fields.contains(&&json!("fracture_grain_astm")),
        "{fields:?}"
    );
    let told = found["compared"].as_array().expect("a list").iter();
    let otherwise: Vec<bool> = told
        .map(|compared| compared["is_told_otherwise"] == true)
        .collect();
    assert!(otherwise.iter().any(|is| *is) && otherwise.iter().any(|is| !*is));
}

#[test]
fn what_makes_no_sense_is_named() {
    let error = |question: Value| {
        let found = asked(&question);
        found["error"].as_str().expect("an error").to_owned()
    };
    let mut wrong = run("knife-2", "2026-03-14", 63.0, 60.0);
    wrong["readings"][1]["value"] = json!(99);
    let runs = json!([run("knife-1", "2026-03-14", 63.0, 60.0), wrong]);
    let said = error(json!({"question": "learn", "runs": runs}));
    assert!(said.contains("[1].readings[1].value"), "{said}");
    let said = error(json!({"question": "learn", "runs": []}));
    assert!(said.contains("no run"), "{said}");
    let said = error(
        json!({"question": "learn", "runs": [], "route": route(), "shop": {
            "furnaces": [], "quenchants": [{"medium": "oil_fast"}]
        }}),
    );
    assert!(said.contains("furnaces"), "{said}");
}

/// With nothing measured yet it is told what to begin with.
#[test]
fn without_a_run_the_first_measurement_is_told() {
    let found = asked(&json!({"question": "learn", "runs": [], "route": route()}));
    assert_eq!(found["prediction"]["before"], found["prediction"]["after"]);
    let next = found["next"].as_array().expect("a list");
    assert!(next.len() >= 5 && number(&next[0], "/narrower_hrc") > 0.1);
    assert!(next.iter().all(|next| next["measure"] != "another_reading"));
}

/// What `learn` answers goes into the other questions as it came out: it acts there and is told, and
/// only there.
#[test]
fn what_was_learnt_is_used_where_it_is_brought_along() {
    let runs: Vec<Value> = (1..7)
        .map(|i| run(&format!("knife-{i}"), "2026-03-14", 62.4, 58.6))
        .collect();
    let learned = asked(&json!({"question": "learn", "runs": runs}));
    let learnt = &learned["learnt"];
    assert!(learnt["learnt"].is_array() && learnt.get("is_on").is_none());
    let final_hv = |answer: &Value| {
        let stages = answer["stages"].as_array().expect("stages");
        number(stages.last().expect("a stage"), "/hardness/hv")
    };
    let without = asked(&json!({"question": "route", "route": route()}));
    let with = asked(&json!({"question": "route", "route": route(), "learnt": learnt}));
    assert!(final_hv(&with) < final_hv(&without) - 10.0, "{with}");
    assert!(without.get("learnt").is_none());
    let told = with["learnt"].as_array().expect("what acts");
    assert!(
        told.iter().any(|words| words
            .as_str()
            .is_some_and(|words| words.contains("from 6 runs"))),
        "{told:?}"
    );
    let spread = |learnt: Option<&Value>| {
        let mut question = json!({"question": "spread", "cases": 64, "route": route()});
        if let Some(learnt) = learnt {
            question["learnt"] = learnt.clone();
        }
        asked(&question)
    };
    let (without, with) = (spread(None), spread(Some(learnt)));
    assert!(number(&with, "/final_hrc/mean") < number(&without, "/final_hrc/mean") - 0.5);
    assert!(number(&with, "/final_hrc/sd") < number(&without, "/final_hrc/sd"));
    assert_eq!(with["learnt"].as_array().map(Vec::len), Some(told.len()));
    // Another heat in another quenchant is told nothing, and stays as it is.
    let mut other = route();
    other["grade"] = json!("1084");
    other["composition"] = json!({"c": 0.84, "mn": 0.75, "si": 0.2});
    other["soak"]["temperature_c"] = json!(815);
    other["quench"]["medium"] = json!("water20");
    other["tempers"] = json!([]);
    let shop = json!({
        "furnaces": [{"name": "kiln", "least_c": 100, "most_c": 1100, "band_k": 8}],
        "quenchants": [{"medium": "oil_fast"}]
    });
    let sought = json!({"target": {"least_hrc": 58, "most_hrc": 62}, "use": "edge"});
    let find = |learnt: Option<&Value>| {
        let mut question =
            json!({"question": "find", "route": route(), "shop": shop, "sought": sought});
        if let Some(learnt) = learnt {
            question["learnt"] = learnt.clone();
        }
        asked(&question)
    };
    let (without, with) = (find(None), find(Some(learnt)));
    assert!(without.get("learnt").is_none() && with["learnt"].is_array());
    // The same temper gives less than before: what is found first is tempered less for as much.
    let temper_c = |found: &Value| number(found, "/routes/0/route/tempers/0/temperature_c");
    assert!(temper_c(&with) < temper_c(&without), "{with}");
    let unlearnt = asked(&json!({"question": "route", "route": other}));
    let unheard = asked(&json!({"question": "route", "route": other, "learnt": learnt}));
    assert_eq!(unheard["learnt"], json!([]));
    assert_eq!(unheard["stages"], unlearnt["stages"]);
    // The error of other models acts nowhere, and it is said.
    for models in [Value::Null, json!("1")] {
        let mut other_models = learnt.clone();
        other_models["models"] = models;
        let unheard =
            asked(&json!({"question": "route", "route": route(), "learnt": other_models}));
        let untaught = asked(&json!({"question": "route", "route": route()}));
        assert_eq!(unheard["stages"], untaught["stages"]);
        let said = unheard["learnt"][0].as_str().expect("a sentence");
        assert!(said.contains("another version of the models"), "{said}");
    }
    let broken = asked(&json!({
        "question": "route", "route": route(),
        "learnt": {"learnt": [{"kind": "tester", "owner": "tester", "value": 0, "left_part": 2, "runs": 1}]}
    }));
    assert!(
        broken["error"]
            .as_str()
            .is_some_and(|error| error.contains("learnt.left_part")),
        "{broken}"
    );
}
