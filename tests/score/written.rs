//! The score as the page shows it, held to what the models give.

use super::groups::Group;
use super::{rows, shown};
use recalesce::sources::score::{Against, Outside, QuantityScore, measured};
use rows::{Row, score};

const FILE: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/src/physics/sources/score.json"
);

/// Four significant digits, so that the file changes only with the models.
fn rounded(x: f64) -> f64 {
    // Below this an error is none.
    if x.abs() < 1e-6 {
        return 0.0;
    }
    format!("{x:.3e}").parse().expect("a number")
}

fn outside(group: &Group, row: &Row) -> Outside {
    Outside {
        quantity: shown::quantity(&row.quantity),
        case: shown::case(&row.case),
        unit: shown::unit(group.unit, &row.quantity).to_owned(),
        is_factor: row.is_factor(),
        predicted: row.predicted.clone().map(rounded),
        value: rounded(row.value),
        tolerance: rounded(row.tolerance),
        source: shown::source(&row.source).to_owned(),
    }
}

fn quantity(group: &Group, rows: &[&Row]) -> QuantityScore {
    let found = score(rows.iter().copied());
    let is_factor = rows.iter().any(|row| row.is_factor());
    let mean = if is_factor {
        found.mean.exp()
    } else {
        found.mean
    };
    let tolerances = || rows.iter().map(|row| row.tolerance);
    let reached = group.aim.reached(&found, is_factor);
    QuantityScore {
        quantity: group.title.to_owned(),
        against: group.against,
        unit: group.unit.to_owned(),
        rows: found.rows,
        inside: found.inside,
        mean_error: (found.predicted > 0).then(|| rounded(mean)),
        tolerance: [
            rounded(tolerances().fold(f64::INFINITY, f64::min)),
            rounded(tolerances().fold(0.0, f64::max)),
        ],
        aim: reached.map(|is_reached| (group.aim.words(), is_reached)),
        outside: rows
            .iter()
            // What the reference itself gets wrong is no miss of the models.
            .filter(|row| group.against != Against::FaultyReference && !row.is_inside())
            .map(|row| outside(group, row))
            .collect(),
    }
}

/// Fails where the file that the page shows is not what the models give now; writes it anew when asked to.
pub(crate) fn check(grouped: &[(&Group, Vec<&Row>)]) {
    let now: Vec<QuantityScore> = grouped
        .iter()
        .map(|(group, rows)| quantity(group, rows))
        .collect();
    shown::check(&now);
    if std::env::var_os("UPDATE_SCORE").is_some() {
        let text = serde_json::to_string_pretty(&now).expect("JSON");
        std::fs::write(FILE, text + "\n").expect("a written file");
        return;
    }
    let told = measured().expect("the file that the page shows");
    let changed: Vec<&str> = now
        .iter()
        .filter(|score| !told.contains(score))
        .map(|score| score.quantity.as_str())
        .collect();
    assert!(
        changed.is_empty() && now.len() == told.len(),
        "The Sources page does not show the score that the models have now: {}. \
         Write it anew with UPDATE_SCORE=1 cargo test --locked --test score, and say why it changed.",
        changed.join("; ")
    );
}
