//! Questions about a steel: its phases, its soak, what forms as it cools, how hard it is.

use super::{answered, error, help, number};
use recalesce::soak::StartingStructure;
use serde_json::{Map, Value};

#[test]
fn critical_temperatures_name_the_upper_one_that_applies() {
    let low = answered("{\"question\":\"critical_temperatures\",\"grade\":\"1045\"}");
    assert!(number(&low, "a1_c") < number(&low, "a3_c"));
    assert!(!low.contains_key("acm_c"));
    let high = answered("{\"question\":\"critical_temperatures\",\"grade\":\"52100\"}");
    assert!(number(&high, "a1_c") < number(&high, "acm_c"));
    assert!(!high.contains_key("a3_c"));
}

#[test]
fn equilibrium_gives_phases_that_make_up_the_whole() {
    let reply =
        answered("{\"question\":\"equilibrium\",\"grade\":\"52100\",\"temperature_c\":845}");
    let phases = reply["phases"].as_array().expect("list");
    let names: Vec<_> = phases.iter().map(|p| p["name"].as_str()).collect();
    assert_eq!(names, [Some("austenite"), Some("cementite")]);
    for share in ["mass_fraction", "volume_fraction"] {
        let sum: f64 = phases.iter().filter_map(|p| p[share].as_f64()).sum();
        assert!((sum - 1.0).abs() < 1e-9, "{share}: {sum}");
    }
    let carbon_wt = phases[0]["composition"]["c"].as_f64();
    assert!(
        carbon_wt.is_some_and(|c| c > 0.5 && c < 1.0),
        "{carbon_wt:?}"
    );
    let cold = error("{\"question\":\"equilibrium\",\"grade\":\"52100\",\"temperature_c\":20}");
    assert!(cold.contains("600 to 1250"), "{cold}");
}

#[test]
fn a_hotter_soak_dissolves_more() {
    let soak = |temperature_c: f64, rest: &str| {
        answered(&format!(
            "{{\"question\":\"soak\",\"grade\":\"52100\",\"temperature_c\":{temperature_c},\
             \"time_min\":15{rest}}}"
        ))
    };
    let carbon_wt = |reply: &Map<String, Value>| reply["dissolved"]["c"].as_f64();
    let (cooler, hotter) = (soak(807.0, ""), soak(845.0, ""));
    assert!(carbon_wt(&cooler) < carbon_wt(&hotter));
    let (before, after) = (
        number(&cooler, "carbide_volume_fraction"),
        number(&hotter, "carbide_volume_fraction"),
    );
    assert!(before > after && after > 0.0);
    assert!(number(&hotter, "grain_astm") > 5.0);
    let help = help();
    for start in StartingStructure::ALL {
        let name = serde_json::to_value(start).expect("JSON");
        assert!(help.contains(name.as_str().expect("a name")), "{name}");
    }
    // Left out, the start is spheroidised; fine pearlite dissolves sooner.
    assert_eq!(soak(845.0, ",\"start\":\"spheroidised\""), hotter);
    assert!(carbon_wt(&soak(845.0, ",\"start\":\"fine_pearlite\"")) > carbon_wt(&hotter));
    let cold =
        error("{\"question\":\"soak\",\"grade\":\"52100\",\"temperature_c\":600,\"time_min\":15}");
    assert!(cold.contains("A1"), "{cold}");
}

#[test]
fn the_fan_of_coolings_falls_from_martensite_to_soft() {
    let reply = answered(r#"{"question":"continuous_cooling","grade":"4140","grain_astm":8}"#);
    let coolings = reply["coolings"].as_array().expect("list");
    let martensite = |i: usize| coolings[i]["fractions"]["martensite"].as_f64();
    assert!(martensite(0).is_some_and(|m| m > 0.9));
    assert!(martensite(coolings.len() - 1).is_some_and(|m| m < 0.01));
    let slowest = coolings.last().expect("coolings");
    assert_eq!(slowest["hrc"], Value::Null);
    let first = &slowest["passages"][0];
    assert_eq!(first["product"], "ferrite");
    assert!(first["start"][1].as_f64() > first["end"][1].as_f64());
}

#[test]
fn isothermal_gives_products_with_their_curves() {
    let reply = answered("{\"question\":\"isothermal\",\"grade\":\"4140\",\"grain_astm\":8}");
    let products = reply["products"].as_array().expect("list");
    for product in products {
        let product = product.as_object().expect("object");
        assert!(number(product, "nose_s") > 0.0);
        assert!(number(product, "nose_c") < number(product, "start_limit_c"));
        assert!(product["curve"].as_array().is_some_and(|c| c.len() > 5));
    }
    let names: Vec<_> = products.iter().map(|p| p["product"].as_str()).collect();
    assert_eq!(names, ["ferrite", "pearlite", "bainite"].map(Some));
}

#[test]
fn critical_cooling_is_slower_for_less_martensite() {
    let rate = |martensite| {
        let question = format!(
            "{{\"question\":\"critical_cooling\",\"grade\":\"4140\",\"martensite\":{martensite}}}"
        );
        let reply = answered(&question);
        assert!(number(&reply, "allowed_s") > 0.0);
        number(&reply, "rate_k_per_s")
    };
    assert!(rate(0.5) < rate(0.95));
}

#[test]
fn a_cold_treatment_leaves_less_austenite() {
    let retained = |rest: &str| {
        let question = format!(
            "{{\"question\":\"martensite\",\"composition\":{{\"c\":0.75,\"mn\":0.35,\"cr\":1.2}},\
             \"quench_end_c\":20{rest}}}"
        );
        number(&answered(&question), "retained_austenite_volume_fraction")
    };
    let (room, cold, late) = (
        retained(""),
        retained(",\"cold_c\":-75"),
        retained(",\"cold_c\":-75,\"delay_min\":1440"),
    );
    assert!(cold < late && late < room, "{cold} {late} {room}");
    assert_eq!(retained(",\"cold_c\":80"), room);
}

#[test]
fn end_quench_falls_along_the_bar() {
    let reply = answered("{\"question\":\"end_quench\",\"grade\":\"4140\",\"grain_astm\":7}");
    let list = |field: &str| -> Vec<f64> {
        let values = reply[field].as_array().expect("list");
        values.iter().filter_map(Value::as_f64).collect()
    };
    let (distance_mm, hrc) = (list("distance_mm"), list("hrc"));
    assert_eq!(distance_mm.len(), hrc.len());
    assert!(hrc.windows(2).all(|w| w[1] <= w[0]));
    assert!(number(&reply, "ideal_diameter_mm") > 20.0);
}

#[test]
fn as_quenched_hardness_follows_martensite() {
    let hardness = |martensite: f64| {
        let question = format!(
            "{{\"question\":\"as_quenched\",\"grade\":\"4140\",\"martensite\":{martensite}}}"
        );
        let reply = answered(&question);
        (number(&reply, "hrc"), number(&reply, "hv"))
    };
    let (full, half) = (hardness(1.0), hardness(0.5));
    assert!(full.0 > half.0 + 5.0 && full.1 > half.1);
    let none = error("{\"question\":\"as_quenched\",\"grade\":\"4140\",\"martensite\":1.2}");
    assert!(none.contains("0.5 to 1"), "{none}");
}

#[test]
fn a_second_temper_softens_further() {
    let after = |steps: &str| {
        let question =
            format!("{{\"question\":\"temper\",\"grade\":\"4140\",\"steps\":[{steps}]}}");
        number(&answered(&question), "hrc")
    };
    const STEP: &str = "{\"temperature_c\":540,\"time_s\":7200}";
    assert!(after(&format!("{STEP},{STEP}")) < after(STEP));
    for (steps, words) in [
        ("", "0 steps"),
        ("{\"temperature_c\":540}", "`steps`: missing field `time_s`"),
        (
            "{\"temperature_c\":540,\"time_min\":5}",
            "unknown field `time_min`",
        ),
        (
            "{\"temperature_c\":900,\"time_s\":60}",
            "Tempering holds for temperature from 100",
        ),
    ] {
        let question =
            format!("{{\"question\":\"temper\",\"grade\":\"4140\",\"steps\":[{steps}]}}");
        let error = error(&question);
        assert!(error.contains(words), "{steps}: {error}");
    }
}

#[test]
fn scales_convert_there_and_back() {
    let to = |from: &str, value: f64, to: &str| {
        let question = format!(
            "{{\"question\":\"convert\",\"from\":\"{from}\",\"value\":{value},\"to\":\"{to}\"}}"
        );
        number(&answered(&question), "value")
    };
    // ASTM E140, from memory: 60 HRC is 697 HV.
    let hv = to("hrc", 60.0, "hv");
    assert!((hv - 697.0).abs() < 1.0, "{hv}");
    assert!((to("hv", hv, "hrc") - 60.0).abs() < 1e-6);
    let unknown = error("{\"question\":\"convert\",\"from\":\"shore\",\"value\":60,\"to\":\"hv\"}");
    assert!(
        unknown.contains("`from`: unknown variant `shore`"),
        "{unknown}"
    );
}
