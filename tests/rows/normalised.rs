//! Bars of an inch normalised in still air, through the whole program: heating, cooling with heat of
//! transformation, hardness.

use super::Row;
use super::transform::{composition, read};
use recalesce::heat::Section;
use recalesce::route::{PieceState, PriorStep, Route, SlowCooling, Work, run};

const CHECKS: &str = include_str!("../checks/normalised.csv");

/// The piece after a normalising of half an hour. The grade's composition is the middle of its range:
/// the tables do not print that of their heat.
pub fn normalised(contents: &str, temperature_c: f64) -> Result<PieceState, String> {
    let mut route = Route::example();
    route.grade = None;
    route.composition = composition(contents);
    route.section = Section::Round { diameter_mm: 25.4 };
    route.prior = vec![PriorStep {
        work: Work::Normalise,
        temperature_c,
        time_min: 30.0,
        cooling: SlowCooling::still_air(),
    }];
    let outcome = run(&route).map_err(|e| e.to_string())?;
    let state = outcome.prior.first().and_then(|step| step.state.given());
    state.cloned().ok_or_else(|| "no state".to_owned())
}

/// Each bar with its hardness.
pub fn rows() -> Vec<Row> {
    read(CHECKS)
        .into_iter()
        .map(|line| {
            let contents = line.get("composition");
            let condition = line.get("condition");
            let (temperature_c, _) = condition.split_once(" C").expect("a temperature");
            let state = normalised(&contents, temperature_c.parse().expect("a temperature"));
            let hardness = state.and_then(|state| state.hardness.ok_or("no hardness".to_owned()));
            Row {
                quantity: line.get("quantity"),
                case: format!("{}; {contents}; {condition}", line.get("steel")),
                predicted: hardness.map(|hardness| hardness.hv),
                value: line.get("value").parse().expect("a value"),
                tolerance: line.get("tolerance").parse().expect("a tolerance"),
                source: format!("{} [{}]", line.get("source"), line.get("seen_or_memory")),
            }
        })
        .collect()
}
