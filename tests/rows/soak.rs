//! Rows on critical temperatures, dissolved carbon and grain.

use super::Row;
use recalesce::phases::{UpperLimit, critical_temperatures, soak_limit};
use recalesce::soak::{StartingStructure, soak};
use recalesce::sources::{andrews_1965, astm_e112, grange_1961};
use recalesce::steel::{Composition, Element, find};
use std::collections::HashMap;

/// Every row.
pub fn rows() -> Vec<Row> {
    let mut rows = heating_points();
    rows.extend(regressions());
    rows.extend(transitions());
    rows.extend(beside_cementite());
    rows.extend(high_chromium());
    rows.extend(dissolved_carbon());
    rows.extend(grain());
    rows.extend(grain_numbers());
    rows
}

type Line = HashMap<String, String>;

fn table(text: &str) -> Vec<Line> {
    csv::Reader::from_reader(text.as_bytes())
        .deserialize()
        .collect::<Result<_, _>>()
        .expect("a table with a header")
}

fn number(text: &str) -> f64 {
    let ends: Vec<f64> = text
        .split('-')
        .filter_map(|t| t.trim().parse().ok())
        .collect();
    ends.iter().sum::<f64>() / ends.len() as f64
}

/// Half the width of a range, or a least tolerance.
fn half_range(text: &str, least: f64) -> f64 {
    let ends: Vec<f64> = text
        .split('-')
        .filter_map(|t| t.trim().parse().ok())
        .collect();
    match ends[..] {
        [from, to] => (0.5 * (to - from)).max(least),
        _ => least,
    }
}

/// Reads `C 0.38-0.45 Mn 0.6-0.9` or `C1.0 MN0.35 SI0.25`.
fn composition(text: &str) -> Composition {
    let mut steel = Composition::default();
    let mut element = None;
    for word in text.split_whitespace() {
        let split = word
            .find(|c: char| c.is_ascii_digit())
            .unwrap_or(word.len());
        let (symbol, value) = word.split_at(split);
        if !symbol.is_empty() {
            element = Element::ALL
                .into_iter()
                .find(|e| e.symbol().eq_ignore_ascii_case(symbol));
        }
        if let (Some(element), false) = (element, value.is_empty()) {
            steel.set(element, number(value));
        }
    }
    steel
}

fn a1(steel: &Composition) -> Result<f64, String> {
    critical_temperatures(steel)
        .map(|c| c.a1_c)
        .map_err(|e| e.to_string())
}

fn upper(steel: &Composition) -> Result<f64, String> {
    critical_temperatures(steel)
        .map(|c| match c.upper {
            UpperLimit::A3 { temperature_c } | UpperLimit::Acm { temperature_c } => temperature_c,
        })
        .map_err(|e| e.to_string())
}

/// Heating points by producers and handbooks, which lie above equilibrium.
fn heating_points() -> Vec<Row> {
    let mut rows: Vec<Row> = table(include_str!("../checks/transformations.csv"))
        .iter()
        .filter(|l| ["Ac1", "Ac3", "Acm"].contains(&l["quantity"].as_str()))
        .map(|l| {
            let steel = composition(&l["composition"]);
            Row {
                quantity: format!("critical temperature {}", l["quantity"]),
                case: format!("{}, {}", l["steel"], l["condition"]),
                predicted: if l["quantity"] == "Ac1" {
                    a1(&steel)
                } else {
                    upper(&steel)
                },
                value: number(&l["value"]),
                tolerance: number(&l["tolerance"]),
                source: l["source"].clone(),
            }
        })
        .collect();
    for l in table(include_str!("../checks/published_phase_points.csv")) {
        let quantity = l["quantity"].as_str();
        let point = ["Ac1", "Ac3", "Accm"]
            .iter()
            .find(|q| quantity.starts_with(**q));
        let name = l["system_or_grade"]
            .split(['/', ' '])
            .next()
            .unwrap_or_default();
        let (Some(point), Ok(grade)) = (point, find(name)) else {
            continue;
        };
        rows.push(Row {
            quantity: format!("critical temperature {point}"),
            case: l["system_or_grade"].clone(),
            predicted: if *point == "Ac1" {
                a1(&grade.nominal)
            } else {
                upper(&grade.nominal)
            },
            value: number(&l["value"]),
            // The file gives none; heating points scatter by the rate of heating.
            tolerance: half_range(&l["value"], 15.0),
            source: format!("{} ({})", l["source"], l["seen_or_memory"]),
        });
    }
    rows
}

/// Compositions for which the file of published points prints the regressions.
fn regression_steel(name: &str) -> Option<Composition> {
    let text = match name {
        "1045" => "C 0.45 Mn 0.75 Si 0.22",
        "1075/C75S" => "C 0.75 Mn 0.7 Si 0.25",
        "1095" => "C 0.96 Mn 0.4 Si 0.2",
        "C100S" => "C 1.0 Mn 0.45 Si 0.25",
        "5160" => "C 0.6 Mn 0.85 Si 0.25 Cr 0.8",
        "52100/100Cr6" => "C 1.0 Mn 0.35 Si 0.25 Cr 1.45",
        "9260/60Si7" => "C 0.6 Mn 0.85 Si 2.0",
        "W2" => "C 1.0 Mn 0.25 Si 0.25 V 0.2",
        "4140" => "C 0.4 Mn 0.85 Si 0.25 Cr 0.95 Mo 0.2",
        "4340" => "C 0.4 Mn 0.7 Si 0.25 Cr 0.8 Ni 1.8 Mo 0.25",
        "1.2842/O2" => "C 0.9 Mn 2.0 Si 0.25 Cr 0.35 V 0.1",
        "L6" => "C 0.75 Mn 0.7 Si 0.25 Cr 0.8 Ni 1.6 Mo 0.3",
        _ => return None,
    };
    Some(composition(text))
}

/// The regressions as the file evaluates them: checks how they are keyed in.
fn regressions() -> Vec<Row> {
    table(include_str!("../checks/published_phase_points.csv"))
        .iter()
        .filter_map(|l| {
            let steel = regression_steel(&l["system_or_grade"])?;
            let formula: fn(&Composition) -> f64 =
                match (l["quantity"].starts_with("Ae1"), &l["source"]) {
                    (true, s) if s.starts_with("Grange") => grange_1961::ae1_c,
                    (true, s) if s.starts_with("Andrews") => andrews_1965::ac1_c,
                    (false, s) if s.starts_with("Grange") => grange_1961::ae3_c,
                    (false, s) if s.starts_with("Andrews") => andrews_1965::ac3_c,
                    _ => return None,
                };
            Some(Row {
                quantity: "regression of critical temperatures".to_owned(),
                case: format!("{} {}", l["system_or_grade"], l["quantity"]),
                predicted: Ok(formula(&steel)),
                value: number(&l["value"]),
                tolerance: 1.0,
                source: l["source"].clone(),
            })
        })
        .collect()
}

/// Transition temperatures computed from the same parameters with another program.
fn transitions() -> Vec<Row> {
    let mut rows = Vec::new();
    for l in table(include_str!("../checks/transitions.csv")) {
        let Some(steel) = regression_steel(&l["grade"]) else {
            continue;
        };
        if l["parameter_set"].starts_with("alternative") {
            continue;
        }
        let last = if steel.c < 0.7 {
            "T_last_ferrite_C"
        } else {
            "T_last_cementite_C"
        };
        for (column, predicted) in [("T_first_austenite_C", a1(&steel)), (last, upper(&steel))] {
            rows.push(Row {
                quantity: "transition".to_owned(),
                case: format!("{} {column}", l["grade"]),
                predicted,
                value: number(&l[column]),
                tolerance: 1.0,
                source: "equilibrium computed for the project".to_owned(),
            });
        }
    }
    rows
}

/// Carbon of austenite beside cementite against computed equilibria, where no ferrite is left.
fn beside_cementite() -> Vec<Row> {
    let all = table(include_str!("../checks/equilibria.csv"));
    let with_ferrite: Vec<(&str, &str)> = all
        .iter()
        .filter(|l| l["phase"] == "BCC_A2")
        .map(|l| (l["grade"].as_str(), l["T_C"].as_str()))
        .collect();
    all.iter()
        .filter(|l| l["phase"] == "CEMENTITE_D011" && !l["source"].contains("alternative"))
        .filter(|l| !with_ferrite.contains(&(l["grade"].as_str(), l["T_C"].as_str())))
        .filter(|l| number(&l["T_C"]) <= 900.0 && !l["grade"].starts_with("Fe-C"))
        .filter_map(|l| {
            let steel = composition(&l["composition_wt_pct"]);
            (steel.cr < 1.8).then(|| Row {
                quantity: "carbon in austenite beside cementite".to_owned(),
                case: format!("{} {} °C", l["grade"], l["T_C"]),
                predicted: soak_limit(&steel, number(&l["T_C"]))
                    .map(|limit| limit.austenite.c)
                    .map_err(|e| e.to_string()),
                value: number(&l["C_wt_in_austenite"]),
                tolerance: 0.005,
                source: l["source"].clone(),
            })
        })
        .collect()
}

/// Austenite of stainless steels at 1100 °C as the file gives it, "about"; the tolerances are the
/// uncertainty claimed.
fn high_chromium() -> Vec<Row> {
    let mut rows = Vec::new();
    for l in table(include_str!("../checks/published_phase_points.csv")) {
        if l["quantity"] != "C / Cr in austenite at 1100 C" {
            continue;
        }
        let name = l["system_or_grade"].split(' ').next().unwrap_or_default();
        let (Ok(grade), Some((carbon, chromium))) = (find(name), l["value"].split_once('/')) else {
            continue;
        };
        let limit = soak_limit(&grade.nominal, 1100.0).map_err(|e| e.to_string());
        let carbon = number(carbon.trim_start_matches("about"));
        for (element, value, tolerance) in [
            (Element::C, carbon, 0.05),
            (Element::Cr, number(chromium), 0.5),
        ] {
            rows.push(Row {
                quantity: format!("{} in austenite at 1100 °C", element.symbol()),
                case: name.to_owned(),
                predicted: limit.clone().map(|l| l.austenite.get(element)),
                value,
                tolerance,
                source: format!("{} ({})", l["source"], l["seen_or_memory"]),
            });
        }
    }
    rows
}

fn bearing() -> Composition {
    composition("C 1.0 Mn 0.35 Si 0.25 Cr 1.45")
}

fn dissolved_carbon() -> Vec<Row> {
    let of = |steel: &Composition, temperature_c: f64, time_min: f64| {
        soak(
            steel,
            StartingStructure::Spheroidised,
            temperature_c,
            60.0 * time_min,
            0.0,
        )
        .map_err(|e| e.to_string())
    };
    let after = |temperature_c, time_min| of(&bearing(), temperature_c, time_min);
    let grade = |name: &str, temperature_c, time_min| {
        let steel = find(name).map_err(|e| e.to_string())?.nominal;
        of(&steel, temperature_c, time_min)
    };
    let carbon = |temperature_c, time_min| after(temperature_c, time_min).map(|o| o.end.carbon_wt);
    let row =
        |quantity: &str, case: &str, predicted, (least, most): (f64, f64), source: &str| Row {
            quantity: quantity.to_owned(),
            case: case.to_owned(),
            predicted,
            value: f64::midpoint(least, most),
            tolerance: 0.5 * (most - least),
            source: source.to_owned(),
        };
    let practice = "common practice, no source";
    vec![
        row(
            "dissolved carbon",
            "52100, 807 °C 15 min",
            carbon(807.0, 15.0),
            (0.60, 0.80),
            practice,
        ),
        row(
            "dissolved carbon",
            "52100, 845 °C 15 min",
            carbon(845.0, 15.0),
            (0.65, 0.95),
            practice,
        ),
        row(
            "dissolved carbon",
            "52100, 845 °C 25 min",
            carbon(845.0, 25.0),
            (0.65, 0.95),
            practice,
        ),
        row(
            "dissolved carbon",
            "52100, 845 °C 20 min",
            carbon(845.0, 20.0),
            (0.65, 0.80),
            practice,
        ),
        row(
            "carbide left, vol %",
            "52100, 845 °C 20 min",
            after(845.0, 20.0).map(|o| 100.0 * o.end.carbide_volume_fraction),
            (3.0, 8.0),
            practice,
        ),
        row(
            "dissolved carbon",
            "D2, 1010 °C 30 min",
            grade("D2", 1010.0, 30.0).map(|o| o.end.carbon_wt),
            (0.5, 0.6),
            practice,
        ),
        row(
            "carbide left, vol %",
            "D2, 1010 °C 30 min",
            grade("D2", 1010.0, 30.0).map(|o| 100.0 * o.end.carbide_volume_fraction),
            (10.0, 15.0),
            practice,
        ),
        row(
            "dissolved carbon",
            "440C, 1040 °C 30 min",
            grade("440C", 1040.0, 30.0).map(|o| o.end.carbon_wt),
            (0.40, 0.50),
            practice,
        ),
    ]
}

/// Producer's grain numbers of 100Cr6. The card prints no hold: 30 min is taken.
fn grain() -> Vec<Row> {
    table(include_str!("../checks/transformations.csv"))
        .iter()
        .filter(|l| l["quantity"] == "austenite grain size")
        .map(|l| {
            let temperature_c = l["condition"]
                .split_whitespace()
                .find_map(|w| w.parse().ok())
                .unwrap_or(f64::NAN);
            Row {
                quantity: "austenite grain size".to_owned(),
                case: format!("{} {}", l["steel"], l["condition"]),
                predicted: soak(
                    &composition(&l["composition"]),
                    StartingStructure::Spheroidised,
                    temperature_c,
                    1800.0,
                    0.0,
                )
                .map(|o| o.end.grain_astm)
                .map_err(|e| e.to_string()),
                value: number(&l["value"]),
                tolerance: number(&l["tolerance"]),
                source: l["source"].clone(),
            }
        })
        .collect()
}

fn grain_numbers() -> Vec<Row> {
    table(include_str!("../checks/quenching.csv"))
        .iter()
        .filter_map(|l| {
            let grain: f64 = l["condition"].strip_prefix("G=")?.parse().ok()?;
            let value = number(&l["value"]);
            let (predicted, part) = match l["quantity"].as_str() {
                "E112_grains_per_sq_inch_100x" => (astm_e112::grains_per_square_inch(grain), 1e-12),
                "E112_mean_intercept" => (astm_e112::intercept_um(grain), 0.01),
                _ => return None,
            };
            Some(Row {
                quantity: l["quantity"].clone(),
                case: l["condition"].clone(),
                predicted: Ok(predicted),
                value,
                tolerance: part * value,
                source: l["source"].clone(),
            })
        })
        .collect()
}
