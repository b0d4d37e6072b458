//! Every experiment of the project is played to its end by the model; damaged ones are refused.

use super::*;
use crate::route::{Outcome, Route, run};
use serde_json::{Value, json};

fn outcome(route: &Route) -> Option<Outcome> {
    run(route).ok()
}

#[test]
fn every_experiment_can_be_played_to_its_end_and_asks_for_something_to_be_done() {
    for text in BUNDLED {
        let experiment = read_experiment(text).unwrap();
        let title = &experiment.title;
        let mut route = experiment.route.clone();
        let mut changes = 0;
        for (place, step) in experiment.steps.iter().enumerate() {
            let now = outcome(&route);
            match step {
                Step::Change { until, .. } => {
                    let is_done = |route: &Route| {
                        let now = outcome(route);
                        now.is_some_and(|now| until.iter().all(|g| g.is_reached(route, &now)))
                    };
                    assert!(
                        !is_done(&route),
                        "{title}, {place}: done before it is asked"
                    );
                    route = experiment.shown_at(place).unwrap();
                    let values: Vec<_> = until
                        .iter()
                        .map(|g| g.number.of(&route, &outcome(&route).unwrap()))
                        .collect();
                    assert!(
                        is_done(&route),
                        "{title}, {place}: its way gives {values:?}"
                    );
                    changes += 1;
                }
                Step::Ask { number, .. } => {
                    let answer = number.of(&route, &now.unwrap());
                    assert!(
                        answer.is_some(),
                        "{title}, {place}: the model does not tell"
                    );
                }
                Step::Tell(_) | Step::Predict { .. } => {}
            }
        }
        assert!(changes > 0, "{title}");
        let first = experiment
            .steps
            .iter()
            .position(|s| matches!(s, Step::Predict { .. }));
        let change = experiment
            .steps
            .iter()
            .position(|s| matches!(s, Step::Change { .. }));
        assert!(first < change, "{title}: predict first");
    }
}

/// The first experiment with one part of it replaced.
fn with(pointer: &str, value: Value) -> Result<Experiment, ExperimentError> {
    let mut file: Value = serde_json::from_str(BUNDLED[0]).unwrap();
    *file.pointer_mut(pointer).unwrap() = value;
    read_experiment(&file.to_string())
}

#[test]
fn what_is_wrong_with_an_experiment_is_told_with_its_field() {
    let told = |result: Result<Experiment, ExperimentError>| result.unwrap_err().to_string();
    assert!(told(with("/title", json!(""))).contains("title: has 0 letters"));
    assert!(told(with("/minutes", json!(0))).contains("minutes"));
    assert!(told(with("/steps", json!([]))).contains("there are 0"));
    assert!(
        told(with("/steps/1/predict/right", json!(9))).contains("steps[1].right: 9 is none of 3")
    );
    assert!(told(with("/steps/2/change/until", json!([]))).contains("steps[2].until"));
    assert!(told(with("/steps/2/change/until/0/least", Value::Null)).contains("least or most"));
    assert!(told(with("/steps/2/change/way", json!({"soak": 7}))).contains("steps[2].way"));
    let hot = json!({"soak": {"temperature_c": 1e9}});
    assert!(told(with("/steps/2/change/way", hot)).contains("steps[2].way"));
    assert!(told(with("/steps/4/ask/number", json!("mood"))).contains("unknown variant"));
    assert!(
        told(with("/route/soak/temperature_c", json!(-400)))
            .contains("The route of the experiment")
    );
    assert!(told(with("/format", json!("recalesce"))).contains("no experiment"));
    assert!(told(with("/version", json!(2))).contains("of version 2; version 1 is read"));
    assert!(told(with("/minutes", json!("ten"))).starts_with("minutes: "));
    assert!(told(with("/steps/0", json!({"say": "x"}))).starts_with("steps[0]: unknown variant"));
    assert!(told(with("/at_the_forge", json!("At {790 F}."))).contains("{790 °C} or {15 K}"));
    let without = |names: &[&str]| {
        let mut file: Value = serde_json::from_str(BUNDLED[0]).unwrap();
        let fields = file.as_object_mut().unwrap();
        for name in names {
            fields.remove(*name);
        }
        read_experiment(&file.to_string())
    };
    assert!(told(without(&["about"])).contains("about: it is missing"));
    assert!(told(without(&["version"])).contains("of version none"));
    // Written before there were format and version.
    assert!(without(&["format", "version"]).is_ok());
    let mut more: Value = serde_json::from_str(BUNDLED[0]).unwrap();
    more["author"] = json!("me");
    assert!(told(read_experiment(&more.to_string())).contains("author: no such field"));
    assert!(told(read_experiment("{")).contains("cannot be read"));
    assert!(told(read_experiment(&" ".repeat(LARGEST_EXPERIMENT_BYTES + 1))).contains("bytes"));
}
