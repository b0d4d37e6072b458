//! Questions about a route: its outcome, how sure it is, and routes found for a target.

use super::{answered, error, number, object};
use recalesce::terminal::answer;
use serde_json::{Value, json};

#[test]
fn a_saved_route_is_answered_whole() {
    let shelf: Value = serde_json::from_str(include_str!("../saved/v1_shelf.json")).expect("JSON");
    for item in shelf["routes"].as_array().expect("list") {
        let question = serde_json::json!({"question": "route", "route": item["route"]});
        let reply = answered(&question.to_string());
        for field in [
            "critical", "soak", "furnace", "quench", "cold", "stages", "temper",
        ] {
            assert!(reply.contains_key(field), "{field}");
        }
        let tempers = item["route"]["tempers"].as_array().map_or(0, Vec::len);
        let stages = reply["stages"].as_array().expect("list");
        assert!(stages.len() >= 2 + tempers);
        assert!(reply["sentences"].as_array().is_some_and(|s| s.len() > 3));
    }
}

#[test]
fn a_route_takes_the_composition_of_its_grade_and_names_its_faults() {
    let shelf: Value = serde_json::from_str(include_str!("../saved/v1_shelf.json")).expect("JSON");
    let ask = |change: &dyn Fn(&mut Value)| {
        let mut route = shelf["routes"][0]["route"].clone();
        change(&mut route);
        answer(
            &serde_json::json!({"question": "route", "route": route}).to_string(),
            7,
        )
    };
    let without = |field: &'static str| {
        move |route: &mut Value| {
            route.as_object_mut().map(|fields| fields.remove(field));
        }
    };
    assert!(!object(&ask(&without("composition"))).contains_key("error"));
    let cases: [(String, &str); 5] = [
        (ask(&without("soak")), "missing field `soak`"),
        (
            ask(&|r| r["soak"]["time_s"] = 5.into()),
            "unknown field `time_s`",
        ),
        (
            ask(&|r| r["soak"]["temperature_c"] = 1600.into()),
            "soak temperature 1600 °C is outside 500 to 1300 °C",
        ),
        (
            ask(&|r| r["quench"]["medium"] = "quicksilver".into()),
            "oil_fast",
        ),
        (ask(&|r| *r = 3.into()), "`route`: invalid type"),
    ];
    for (reply, words) in cases {
        let error = object(&reply)["error"].to_string();
        assert!(error.contains(words), "{words}: {error}");
    }
}

/// The bands of a knife are those of its route, and a seed gives them again.
#[test]
fn a_spread_is_that_of_its_seed() {
    let ask = |more: &str| {
        let route = json!({
            "piece": "knife", "grade": "52100", "start": "spheroidised",
            "section": {"shape": "plate", "thickness_mm": 3}, "furnace_band_k": 8,
            "soak": {"temperature_c": 845, "time_min": 12}, "quench": {"medium": "oil_fast"},
            "tempers": [{"temperature_c": 180, "time_min": 120}],
            "target": {"least_hrc": 59, "most_hrc": 63}
        });
        format!("{{\"question\":\"spread\",\"route\":{route}{more}}}")
    };
    let first = answered(&ask(",\"cases\":64,\"seed\":3"));
    assert_eq!(first, answered(&ask(",\"cases\":64,\"seed\":3")));
    assert_ne!(
        first["final_hrc"],
        answered(&ask(",\"cases\":64"))["final_hrc"]
    );
    let at = |part: &str| first["final_hrc"][part].as_f64().expect("a number");
    assert!(at("p05") < at("p25") && at("p25") < at("p50") && at("p75") < at("p95"));
    assert!(number(&first, "meets_target_part") > 0.3);
    assert!(
        first["inputs"]
            .as_array()
            .is_some_and(|inputs| inputs.len() > 6)
    );
    let few = error(&ask(",\"cases\":3"));
    assert!(few.contains("16 to 16384"), "{few}");
    let divided = answered(&ask(",\"rows\":16").replace("spread", "sensitivity"));
    let hardness = &divided["quantities"][0];
    assert_eq!(hardness["quantity"], "final_hrc");
    assert!(
        hardness["words"]
            .as_str()
            .is_some_and(|words| words.contains("decides"))
    );
    let absurd = error(&ask(",\"tolerances\":{\"thickness_band_mm\":-1}"));
    assert!(absurd.contains("thickness_band_mm"), "{absurd}");
}

/// A route found is one for other questions; faults of the shop are named.
#[test]
fn a_route_is_found_and_can_be_asked_for() {
    let shop = |band_k: f64| {
        json!({
            "furnaces": [
                {"name": "forge", "least_c": 600, "most_c": 1250, "band_k": 30, "holds": false},
                {"name": "kiln", "least_c": 100, "most_c": 1100, "band_k": band_k}
            ],
            "quenchants": [{"medium": "oil_fast"}]
        })
    };
    let ask = |shop: &Value| {
        let asked = json!({
            "question": "find", "shop": shop,
            "sought": {"target": {"least_hrc": 59, "most_hrc": 62}, "use": "edge"},
            "route": {
                "piece": "knife", "grade": "52100", "start": "spheroidised",
                "section": {"shape": "plate", "thickness_mm": 3}, "furnace_band_k": 8,
                "soak": {"temperature_c": 845, "time_min": 12}, "quench": {"medium": "oil_fast"},
                "target": {"least_hrc": 59, "most_hrc": 62}
            }
        });
        asked.to_string()
    };
    let found = answered(&ask(&shop(8.0)));
    let best = &found["routes"][0];
    assert!(
        best["reason"]
            .as_str()
            .is_some_and(|reason| reason.starts_with("The best chance"))
    );
    assert_eq!(best["route"]["furnace_band_k"], 8.0);
    let loaded = answered(&json!({"question": "route", "route": best["route"]}).to_string());
    let stages = loaded["stages"].as_array().expect("a list");
    assert_eq!(
        stages.len(),
        2 + best["route"]["tempers"].as_array().map_or(0, Vec::len)
    );
    let absurd = error(&ask(&shop(-8.0)));
    assert!(absurd.contains("furnaces[1].band_k"), "{absurd}");
}
