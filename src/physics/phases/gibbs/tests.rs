//! Gibbs energies against the rows of the reference evaluation with the same parameters, and
//! derivatives against differences.

use super::*;

struct Row {
    structure: Structure,
    kelvin: f64,
    fractions: Vec<(usize, String, f64)>,
    per_formula: f64,
    atoms_per_formula: f64,
}

const ROWS: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../tests/checks/gibbs_energies.csv"
);

fn rows() -> Vec<Row> {
    let mut reader = csv::Reader::from_path(ROWS).unwrap();
    reader
        .records()
        .map(|record| {
            let record = record.unwrap();
            let structure = match &record[0] {
                "FCC_A1" => Structure::Fcc,
                "BCC_A2" => Structure::Bcc,
                "CEMENTITE_D011" => Structure::Cementite,
                "M7C3_D101" => Structure::M7C3,
                "M23C6_D84" => Structure::M23C6,
                "M6C_E93" => Structure::M6C,
                other => panic!("{other}"),
            };
            let fractions = record[2]
                .split(';')
                .map(|part| {
                    let (sublattice, rest) = part.trim().split_once(':').unwrap();
                    let (name, value) = rest.split_once('=').unwrap();
                    (
                        sublattice.parse().unwrap(),
                        name.to_owned(),
                        value.parse().unwrap(),
                    )
                })
                .collect();
            Row {
                structure,
                kelvin: record[1].parse().unwrap(),
                fractions,
                per_formula: record[4].parse().unwrap(),
                atoms_per_formula: record[6].parse().unwrap(),
            }
        })
        .collect()
}

fn compiled(row: &Row) -> (PhaseModel, [f64; MOST]) {
    let mut model = PhaseModel::new(row.structure, &ELEMENT_ORDER).unwrap();
    model.set_temperature(&AtTemperature::new(row.kelvin));
    // sublattices with one constituent have no variable
    let kept: Vec<usize> = row
        .structure
        .sublattices()
        .iter()
        .enumerate()
        .filter(|(_, (_, constituents))| constituents.len() > 1)
        .map(|(s, _)| s + 1)
        .collect();
    let mut y = [0.0; MOST];
    for (i, variable) in model.variables.iter().enumerate() {
        let name = format!("{:?}", variable.constituent).to_uppercase();
        let sublattice = kept[variable.sublattice];
        y[i] = row
            .fractions
            .iter()
            .find(|(s, n, _)| *s == sublattice && *n == name)
            .map_or(0.0, |(_, _, value)| *value);
    }
    (model, y)
}

fn total(model: &PhaseModel, y: &[f64; MOST]) -> Derivatives {
    let mut out = Derivatives::ZERO;
    model.without_mixing(y, &mut out);
    model.add_mixing(y, &mut out);
    out
}

#[test]
fn every_row_of_the_reference_evaluation_to_a_thousandth_of_a_joule() {
    let mut worst = 0.0_f64;
    for row in rows() {
        let (model, y) = compiled(&row);
        let value = total(&model, &y).value;
        let atoms: f64 = model.atoms(&y).iter().sum();
        let error = (value - row.per_formula).abs();
        worst = worst.max(error);
        assert!(
            error < 1e-3,
            "{:?} {} K: {value} against {}",
            row.structure,
            row.kelvin,
            row.per_formula
        );
        assert!((atoms - row.atoms_per_formula).abs() < 2e-3);
    }
    println!("largest deviation {worst:.1e} J/mol");
}

#[test]
fn gradient_and_hessian_match_differences() {
    for row in rows() {
        let (model, y) = compiled(&row);
        let at = total(&model, &y);
        for i in 0..model.variables.len() {
            let step = 1e-5 * y[i].min(0.1);
            let shifted = |by: f64| {
                let mut moved = y;
                moved[i] += by;
                total(&model, &moved)
            };
            let (low, high) = (shifted(-step), shifted(step));
            approx::assert_relative_eq!(
                at.gradient[i],
                (high.value - low.value) / (2.0 * step),
                max_relative = 1e-4,
                epsilon = 3.0
            );
            for j in 0..model.variables.len() {
                approx::assert_relative_eq!(
                    at.hessian[i][j],
                    (high.gradient[j] - low.gradient[j]) / (2.0 * step),
                    max_relative = 1e-4,
                    epsilon = 3.0
                );
            }
        }
    }
}
