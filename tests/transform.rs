//! Outside values and properties of the transformation room.

mod rows;
#[path = "rows/transform.rs"]
mod transform_rows;

use std::collections::BTreeMap;
use transform_rows::{FACTOR, rows};

/// Error of a row: difference, or logarithm of the ratio where the tolerance is a factor.
fn error(row: &rows::Row) -> Option<(f64, f64)> {
    let predicted = *row.predicted.as_ref().ok()?;
    Some(if row.quantity.ends_with(FACTOR) {
        ((predicted / row.value).ln(), row.tolerance.ln())
    } else {
        (predicted - row.value, row.tolerance)
    })
}

#[test]
fn report() {
    let rows = rows();
    let mut groups: BTreeMap<&str, Vec<&rows::Row>> = BTreeMap::new();
    for row in &rows {
        let group = if row.quantity.starts_with("Jominy") {
            "Jominy hardness"
        } else {
            row.quantity.as_str()
        };
        groups.entry(group).or_default().push(row);
    }
    for (group, rows) in groups {
        let errors: Vec<(f64, f64)> = rows.iter().filter_map(|row| error(row)).collect();
        let n = errors.len() as f64;
        let rms = (errors.iter().map(|e| e.0 * e.0).sum::<f64>() / n).sqrt();
        let mean = errors.iter().map(|e| e.0).sum::<f64>() / n;
        let mae = errors.iter().map(|e| e.0.abs()).sum::<f64>() / n;
        let inside = errors.iter().filter(|e| e.0.abs() <= e.1).count();
        let (rms, mean, mae) = if group.ends_with(FACTOR) {
            (rms.exp(), mean.exp(), mae.exp())
        } else {
            (rms, mean, mae)
        };
        println!(
            "{group}: {} rows, {} predicted, inside {inside}, bias {mean:.2} mae {mae:.2} rms {rms:.2}",
            rows.len(),
            errors.len()
        );
        for row in rows {
            match error(row) {
                Some((e, t)) if e.abs() <= t => {}
                _ => println!(
                    "    OUT {} | predicted {:.2?} value {} tol {} ",
                    row.case, row.predicted, row.value, row.tolerance
                ),
            }
        }
    }
}
