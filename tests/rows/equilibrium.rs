//! Rows of the equilibrium check files with what this project predicts for them.

use std::collections::BTreeMap;

use super::Row;
use recalesce::phases::{
    Equilibrium, EquilibriumSeries, PhaseName, critical_points, equilibrium, phase_map,
};
use recalesce::steel::{Composition, Element};

const PUBLISHED: &str = include_str!("../checks/published_phase_points.csv");
const TRANSITIONS: &str = include_str!("../checks/transitions.csv");
const EQUILIBRIA: &str = include_str!("../checks/equilibria.csv");

/// Cases of the reference with a stable phase missing: its face-centred phase is either MC or
/// austenite there, never both, or MC is lost early. the test of the equilibrium
/// `a_phase_is_missing_in_the_reference` shows it.
const REFERENCE_INCOMPLETE: [(&str, &str); 11] = [
    ("A2 740", ""),
    ("A2 760", ""),
    ("A2 1050", ""),
    ("A2", "T_first_austenite_C"),
    ("A2", "T_last_ferrite_C"),
    ("A2", "T_last_MC_C"),
    ("D2 800", ""),
    ("D2", "T_"),
    ("W2 730", ""),
    ("W2", "T_first_austenite_C"),
    ("W2", "T_last_ferrite_C"),
];

/// Whether a row rests on such a case.
pub fn reference_is_incomplete(row: &Row) -> bool {
    REFERENCE_INCOMPLETE.iter().any(|(case, quantity)| {
        let of_case = row.case == *case || row.case == format!("{case} °C");
        let of_both = !quantity.is_empty() && row.case.starts_with(&format!("{case} {quantity}"));
        of_case && row.quantity.starts_with(quantity) || of_both
    })
}

/// Every row that this room predicts.
pub fn rows() -> Vec<Row> {
    let mut rows = equilibria();
    rows.extend(transitions());
    rows.extend(textbook());
    rows.extend(regressions());
    rows
}

/// Compositions of the grades that the check files name.
fn compositions() -> BTreeMap<String, Composition> {
    read(EQUILIBRIA)
        .into_iter()
        .map(|line| {
            (
                line["grade"].clone(),
                parse_composition(&line["composition_wt_pct"]),
            )
        })
        .collect()
}

/// Iron and carbon as textbooks and handbooks give them.
fn textbook() -> Vec<Row> {
    let carbon = |c| Composition {
        c,
        ..Composition::default()
    };
    let end = |c: f64, name: PhaseName| -> Result<f64, String> {
        let points = critical_points(&carbon(c)).map_err(|e| e.to_string())?;
        let mut of_it = points.ranges.iter().filter(|r| r.name == name);
        of_it.find_map(|r| r.to_c).ok_or_else(|| "none".to_owned())
    };
    let dissolved = |name: PhaseName, at_c: f64| -> Result<f64, String> {
        let found = equilibrium(&carbon(2.4), at_c).map_err(|e| e.to_string())?;
        let phase = found.phase(name).ok_or("not stable")?;
        Ok(phase.composition.c)
    };
    let map = phase_map(&carbon(0.5)).map_err(|e| e.to_string());
    // where A3 ends and Acm begins
    let eutectoid = |which: usize| {
        let map = map.as_ref().map_err(Clone::clone)?;
        let at = map.acm.first().filter(|at| Some(*at) == map.a3.last());
        at.map(|at| at[which])
            .ok_or_else(|| "no eutectoid".to_owned())
    };
    let mut rows = Vec::new();
    for line in read(PUBLISHED) {
        let value: Option<f64> = line["value"].parse().ok();
        let at_c: Option<f64> = line["T_C"].parse().ok();
        let (Some(value), true) = (value, line["system_or_grade"].starts_with("Fe")) else {
            continue;
        };
        let (predicted, tolerance) = match (line["quantity"].as_str(), at_c) {
            ("A3 pure iron", _) => (end(0.0, PhaseName::Ferrite), 1.0),
            ("eutectoid T (Fe3C)" | "eutectoid T", _) => (eutectoid(1), 1.0),
            ("eutectoid C", _) => (eutectoid(0), 0.01),
            // ferrite just below the eutectoid
            ("max C in ferrite", _) => (dissolved(PhaseName::Ferrite, 726.0), 0.005),
            // no liquid is described: the reading at the eutectic temperature
            ("max C in austenite", Some(at_c)) => {
                (dissolved(PhaseName::Austenite, at_c), 0.05 * value)
            }
            ("C in austenite in equilibrium with cementite", Some(at_c)) => {
                (dissolved(PhaseName::Austenite, at_c), 0.03 * value)
            }
            _ => continue,
        };
        rows.push(Row {
            quantity: line["quantity"].clone(),
            case: format!("{} {}", line["system_or_grade"], line["T_C"]),
            predicted,
            value,
            tolerance,
            source: format!("{} ({})", line["source"], line["seen_or_memory"]),
        });
    }
    rows
}

/// Ae1 and Ae3 by regressions over measured steels, themselves good to about 10 K.
fn regressions() -> Vec<Row> {
    let compositions = compositions();
    let mut rows = Vec::new();
    for line in read(PUBLISHED) {
        let Some(steel) = compositions.get(&line["system_or_grade"]) else {
            continue;
        };
        let Ok(value) = line["value"].parse::<f64>() else {
            continue;
        };
        let points = critical_points(steel).map_err(|e| e.to_string());
        let predicted = if line["quantity"].starts_with("Ae1") {
            points.map(|p| 0.5 * (p.a1_lower_c + p.a1_upper_c))
        } else if line["quantity"] == "Ae3" {
            points.and_then(|p| p.last_ferrite_c.ok_or_else(|| "none".to_owned()))
        } else {
            continue;
        };
        rows.push(Row {
            quantity: line["quantity"].clone(),
            case: line["system_or_grade"].clone(),
            predicted,
            value,
            tolerance: 20.0,
            source: line["source"].clone(),
        });
    }
    rows
}

/// Temperatures at which phases come and go.
fn transitions() -> Vec<Row> {
    let compositions = compositions();
    let mut rows = Vec::new();
    for line in read(TRANSITIONS) {
        if line["parameter_set"].contains("alternative") {
            continue;
        }
        let grade = line["grade"].clone();
        let points = critical_points(&compositions[&grade]);
        let end = |name: PhaseName, limit_c: f64| -> Result<f64, String> {
            let points = points.as_ref().map_err(ToString::to_string)?;
            let of_it = points.ranges.iter().filter(|r| r.name == name);
            let ends = of_it.map(|r| r.to_c.unwrap_or(1250.0).min(limit_c));
            ends.reduce(f64::max)
                .ok_or_else(|| "never stable".to_owned())
        };
        for (column, name) in [
            ("T_first_austenite_C", None),
            ("T_last_ferrite_C", Some(PhaseName::Ferrite)),
            ("T_last_cementite_C", Some(PhaseName::Cementite)),
            ("T_last_M7C3_C", Some(PhaseName::M7C3)),
            ("T_last_M23C6_C", Some(PhaseName::M23C6)),
            ("T_last_M6C_C", Some(PhaseName::M6C)),
            ("T_last_MC_C", Some(PhaseName::Mc)),
        ] {
            if line[column].is_empty() {
                continue;
            }
            // ">900" is a bound: a prediction above it counts as on it
            let bound = line[column].starts_with('>');
            let value: f64 = line[column].trim_start_matches('>').parse().unwrap();
            let limit_c = if bound { value } else { f64::INFINITY };
            rows.push(Row {
                quantity: column.to_owned(),
                case: grade.clone(),
                predicted: match name {
                    None => points
                        .as_ref()
                        .map(|p| p.a1_lower_c)
                        .map_err(ToString::to_string),
                    Some(name) => end(name, limit_c),
                },
                value,
                tolerance: 1.0,
                source: format!("same parameters ({})", line["parameter_set"]),
            });
        }
    }
    rows
}

/// Phase fractions, dissolved carbon, and that no other phase is stable.
fn equilibria() -> Vec<Row> {
    let mut cases: BTreeMap<(String, String, String), Vec<BTreeMap<String, String>>> =
        BTreeMap::new();
    for line in read(EQUILIBRIA) {
        // rows of another parameter set tell how far assessments differ, not what this one gives
        if line["source"].contains("alternative") {
            continue;
        }
        let key = (
            line["grade"].clone(),
            line["composition_wt_pct"].clone(),
            line["T_C"].clone(),
        );
        cases.entry(key).or_default().push(line);
    }
    let mut rows = Vec::new();
    let mut series = EquilibriumSeries::default();
    for ((grade, composition, temperature), lines) in cases {
        let steel = parse_composition(&composition);
        let temperature_c: f64 = temperature.parse().unwrap();
        let cold = equilibrium(&steel, temperature_c).map_err(|e| e.to_string());
        let warm = series.at(&steel, temperature_c).map_err(|e| e.to_string());
        let source = lines[0]["source"].clone();
        let case = format!("{grade} {temperature} °C");
        for name in PhaseName::ALL {
            let value: f64 = lines
                .iter()
                .filter(|line| phase_name(&line["phase"]) == name)
                .map(|line| line["mass_fraction"].parse::<f64>().unwrap())
                .sum();
            let of = |found: &Result<Equilibrium, String>| {
                found
                    .as_ref()
                    .map(|e| e.phase(name).map_or(0.0, |p| p.mass_fraction))
                    .map_err(Clone::clone)
            };
            for (how, found) in [("", &cold), (", from the row before", &warm)] {
                if value > 0.0 || of(found) != Ok(0.0) {
                    rows.push(Row {
                        quantity: format!("mass fraction of {name:?}{how}"),
                        case: case.clone(),
                        predicted: of(found),
                        value,
                        tolerance: 0.005,
                        source: source.clone(),
                    });
                }
            }
        }
        for (column, tolerance, element) in [
            ("C_wt_in_austenite", 0.005, Element::C),
            ("Cr_wt_in_austenite", 0.05, Element::Cr),
            ("Mn_wt_in_austenite", 0.05, Element::Mn),
        ] {
            if let Ok(value) = lines[0][column].parse::<f64>() {
                rows.push(Row {
                    quantity: format!("{} in austenite, wt %", element.symbol()),
                    case: case.clone(),
                    predicted: cold.clone().and_then(|e| {
                        e.phase(PhaseName::Austenite)
                            .map(|p| p.composition.get(element))
                            .ok_or_else(|| "no austenite".to_owned())
                    }),
                    value,
                    tolerance,
                    source: source.clone(),
                });
            }
        }
    }
    rows
}

fn phase_name(name: &str) -> PhaseName {
    match name {
        "FCC_A1" => PhaseName::Austenite,
        "BCC_A2" => PhaseName::Ferrite,
        "CEMENTITE_D011" => PhaseName::Cementite,
        "M7C3_D101" => PhaseName::M7C3,
        "M23C6_D84" => PhaseName::M23C6,
        "M6C_E93" => PhaseName::M6C,
        "MC(FCC#2)" => PhaseName::Mc,
        other => panic!("{other}"),
    }
}

/// Composition from "C0.45 MN0.75".
pub fn parse_composition(text: &str) -> Composition {
    let mut steel = Composition::default();
    for part in text.split_whitespace() {
        let digits = part.find(|c: char| c.is_ascii_digit()).unwrap();
        let element = Element::ALL
            .into_iter()
            .find(|e| e.symbol().eq_ignore_ascii_case(&part[..digits]))
            .unwrap();
        steel.set(element, part[digits..].parse().unwrap());
    }
    steel
}

/// Lines of a check file by the names of its columns.
pub fn read(text: &str) -> Vec<BTreeMap<String, String>> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let names = reader.headers().unwrap().clone();
    reader
        .records()
        .map(|record| {
            let record = record.unwrap();
            names
                .iter()
                .zip(record.iter())
                .map(|(name, value)| (name.to_owned(), value.to_owned()))
                .collect()
        })
        .collect()
}
