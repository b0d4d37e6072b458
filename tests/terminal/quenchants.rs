//! Questions about a quenchant: how it cools probe and sections, and one found from what was measured.

use super::{answered, error, number};
use recalesce::heat::medium;
use serde_json::{Map, Value, json};

#[test]
fn the_probe_cools_fastest_in_brine() {
    let probe = |medium: &str| answered(&format!("{{\"question\":\"probe\",\"medium\":{medium}}}"));
    let rate = |medium: &str| number(&probe(medium), "max_rate_k_per_s");
    assert!(rate("\"brine10\"") > rate("\"oil_fast\""));
    assert!(rate("\"oil_fast\"") > rate("\"air_still\""));
    let oil = probe("\"oil_fast\"");
    let times: Vec<f64> = ["time_to_600c_s", "time_to_400c_s", "time_to_200c_s"]
        .map(|field| number(&oil, field))
        .to_vec();
    assert!(times.is_sorted() && times[0] > 0.0);
    // A bath at 200 °C never cools the probe to 200 °C.
    assert_eq!(probe("\"salt200_still\"")["time_to_200c_s"], Value::Null);
}

/// Times at which a place passes temperatures, from an answer.
fn times(reply: &Map<String, Value>, field: &str) -> Vec<Option<f64>> {
    let values = reply[field].as_array().expect("list");
    values.iter().map(Value::as_f64).collect()
}

#[test]
fn cooling_gives_times_in_the_order_asked() {
    let reply = answered(
        "{\"question\":\"cooling\",\"section\":{\"shape\":\"round\",\"diameter_mm\":12},\
         \"medium\":\"oil_fast\",\"start_c\":845,\"at_c\":[300,700,500,-100]}",
    );
    let centre = times(&reply, "centre_time_s");
    let surface = times(&reply, "surface_time_s");
    assert_eq!(centre.len(), 4);
    assert!(centre[1] < centre[2] && centre[2] < centre[0]);
    assert!(surface[0] < centre[0]);
    // Colder than the bath: not in this quench.
    assert_eq!((centre[3], surface[3]), (None, None));
    assert!(number(&reply, "max_rate_k_per_s") > 10.0);
    assert!(!reply.contains_key("edge_time_s"));
}

#[test]
fn the_edge_of_a_blade_cools_first_and_a_stir_helps() {
    let at = |stir: f64| {
        let question = format!(
            "{{\"question\":\"cooling\",\"section\":{{\"shape\":\"blade\",\"edge_mm\":0.5,\
             \"spine_mm\":4,\"height_mm\":30}},\"medium\":{{\"h_w_m2k\":[[70,300],[265,485],\
             [480,2500],[850,900]],\"bath_c\":50}},\"agitation\":{stir},\"start_c\":820,\
             \"at_c\":[500]}}"
        );
        let reply = answered(&question);
        (
            times(&reply, "edge_time_s")[0],
            times(&reply, "centre_time_s")[0],
        )
    };
    let (still, stirred) = (at(1.0), at(1.6));
    assert!(still.0 < still.1);
    assert!(stirred.1 < still.1);
}

/// The quenchant found is one for other questions.
#[test]
fn a_quenchant_is_found_from_its_figures_and_from_its_curve() {
    let listed = answered("{\"question\":\"probe\",\"medium\":\"oil_medium\"}");
    let figures: Map<String, Value> = [
        "max_rate_k_per_s",
        "max_rate_at_c",
        "rate_at_300c_k_per_s",
        "time_to_600c_s",
        "time_to_400c_s",
        "time_to_200c_s",
    ]
    .into_iter()
    .map(|name| (name.to_owned(), listed[name].clone()))
    .collect();
    let asked = json!({"question": "fit_quenchant", "bath_c": 50, "figures": figures});
    let by_figures = answered(&asked.to_string());
    assert_eq!(by_figures["template"], "oil_medium");

    let mut curve = "time (s);temperature (°C)\n".to_owned();
    let medium = medium("oil_medium").expect("in the list");
    let computed = recalesce::heat::probe(medium).expect("a curve").curve;
    for i in 0..320 {
        let time_s = 0.125 * f64::from(i);
        let temperature_c = computed.temperature_at_s(time_s).expect("a temperature");
        curve += &format!("{time_s:.3};{temperature_c:.2}\n");
    }
    let asked = json!({"question": "fit_quenchant", "bath_c": 50, "curve_text": curve});
    let by_curve = answered(&asked.to_string());
    assert!(number(&by_curve, "rms_k") < 0.3);
    assert_eq!(by_curve["notes"], json!([]));
    assert!(by_curve["knots"].as_array().is_some_and(|k| k.len() > 10));

    for found in [by_figures, by_curve] {
        let medium = json!({"h_w_m2k": found["h_w_m2k"], "bath_c": found["bath_c"]});
        let probe = answered(&json!({"question": "probe", "medium": medium}).to_string());
        let ratio = number(&probe, "time_to_400c_s") / number(&listed, "time_to_400c_s");
        assert!((ratio - 1.0).abs() < 0.01, "{ratio}");
        assert!((1.16..1.32).contains(&number(&found, "h_band_factor")));
        let figures = found["figures"].as_array().expect("a list");
        assert_eq!(figures.len(), 6);
        assert_eq!(figures[0]["figure"], "max_rate_k_per_s");
        assert!(figures.iter().all(|figure| figure["agrees"] == true));
    }
}

/// A quenchant found from a coupon is one for other questions; faults are named.
#[test]
fn a_coupon_gives_a_quenchant() {
    let asked = |more: &str| {
        format!(
            "{{\"question\":\"coupon\",\"grade\":\"1095\",\"section\":{{\"shape\":\"plate\",\
             \"thickness_mm\":5}},\"temperature_c\":800,\"time_min\":10,\"like\":\"oil_fast\"{more}}}"
        )
    };
    let found = answered(&asked(",\"centre_hrc\":51,\"bath_c\":55"));
    let factor = found["factor"]["best"].as_f64().expect("a factor");
    let medium = json!({"h_w_m2k": found["h_w_m2k"], "bath_c": found["bath_c"]});
    let ball = answered(&json!({"question": "probe", "medium": medium}).to_string());
    assert_eq!(ball["time_to_400c_s"], found["figures"]["time_to_400c_s"]);
    assert!((1.0..3.0).contains(&factor), "{factor}");
    assert_eq!(found["bath_c"], 55.0);
    assert_eq!(found["readings"][0]["place"], "centre");
    for (more, words) in [
        ("", "no hardness is given"),
        (
            ",\"centre_hrc\":71",
            "hardness of the centre: 71 is outside 0 to 70 HRC",
        ),
        (",\"centre_hrc\":\"hard\"", "`centre_hrc`"),
    ] {
        let error = error(&asked(more));
        assert!(error.contains(words), "{more}: {error}");
    }
}

#[test]
fn faults_of_a_quenchants_figures_and_curve_are_named() {
    for (fields, words) in [
        ("", "`figures`: give either these or `curve_text`"),
        (
            ",\"figures\":{\"ball\":9}",
            "`figures`: unknown field `ball`",
        ),
        (
            ",\"figures\":{\"nickel_ball_s\":99}",
            "`figures`: nickel-ball time: 99\u{a0}s is outside 1.3 to 40\u{a0}s",
        ),
        (
            ",\"curve_text\":\"0 850\\n1 x\"",
            "`curve_text`: line 2: “x” is no temperature",
        ),
        (",\"curve_text\":\"\",\"figures\":{}", "give either these"),
        (",\"scale\":\"kelvin\",\"curve_text\":\"\"", "`scale`"),
    ] {
        let question = format!("{{\"question\":\"fit_quenchant\",\"bath_c\":50{fields}}}");
        let error = error(&question);
        assert!(error.contains(words), "{question}: {error}");
    }
}

#[test]
fn faults_of_sections_and_quenchants_are_named() {
    let question = |section: &str, medium: &str| {
        format!(
            "{{\"question\":\"cooling\",\"section\":{section},\"medium\":{medium},\
             \"start_c\":845,\"at_c\":[500]}}"
        )
    };
    let cases = [
        (
            "{\"shape\":\"plate\",\"thickness_mm\":0}",
            "\"oil_fast\"",
            "thickness: 0 mm",
        ),
        (
            "{\"shape\":\"cube\"}",
            "\"oil_fast\"",
            "`section`: unknown variant `cube`",
        ),
        (
            "{\"shape\":\"plate\",\"thickness_mm\":3}",
            "\"oil_fats\"",
            "oil_fast",
        ),
        (
            "{\"shape\":\"plate\",\"thickness_mm\":3}",
            "{\"bath_c\":20}",
            "`medium`",
        ),
        (
            "{\"shape\":\"plate\",\"thickness_mm\":3}",
            "{\"h_w_m2k\":[[100,0],[200,10]],\"bath_c\":20}",
            "`medium`: point 1",
        ),
    ];
    for (section, medium, words) in cases {
        let error = error(&question(section, medium));
        assert!(error.contains(words), "{section} {medium}: {error}");
    }
}
