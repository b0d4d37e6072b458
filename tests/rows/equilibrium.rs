//! Rows of the equilibrium check files with what this project predicts for them.

use std::collections::BTreeMap;

use super::Row;
use recalesce::phases::{Equilibrium, EquilibriumSeries, PhaseName, equilibrium};
use recalesce::steel::{Composition, Element};

const EQUILIBRIA: &str = include_str!("../checks/equilibria.csv");

/// Every row that this room predicts.
pub fn rows() -> Vec<Row> {
    equilibria()
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
