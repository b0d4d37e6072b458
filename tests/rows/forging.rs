//! Forging windows against the handbook ranges of the grade list.

use super::Row;
use recalesce::phases::critical_temperatures;
use recalesce::route::{ForgingWindow, forging_window};
use recalesce::steel::grades;

/// Both ends of every range that has two.
pub fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for grade in grades() {
        let Some((finish_c, start_c)) = grade.forge_c.span.filter(|(least, most)| most > least)
        else {
            continue;
        };
        let window = critical_temperatures(&grade.nominal)
            .map(|critical| forging_window(&grade.nominal, &critical))
            .map_err(|error| error.to_string());
        let row = |quantity: &str, end: fn(&ForgingWindow) -> f64, value| Row {
            quantity: quantity.to_owned(),
            case: grade.designation.clone(),
            predicted: window.as_ref().map(end).map_err(Clone::clone),
            value,
            tolerance: ForgingWindow::BAND_K,
            source: grade.heat_treatment_source.clone(),
        };
        rows.push(row("forging begins", |w| w.start_most_c, start_c));
        rows.push(row("forging ends", |w| w.finish_least_c, finish_c));
    }
    rows
}
