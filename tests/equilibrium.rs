//! Equilibrium against outside values, and its properties over random compositions.

#![cfg(not(target_arch = "wasm32"))]

mod rows;

/// Same parameters, other program (named in the rows' source column).
#[test]
fn every_row_within_its_tolerance() {
    let mut outside = Vec::new();
    let rows = rows::equilibrium::rows();
    for row in &rows {
        let within = row
            .predicted
            .as_ref()
            .is_ok_and(|p| (p - row.value).abs() <= row.tolerance);
        if !within {
            outside.push(format!(
                "{}, {}: {:?} against {} ± {}",
                row.case, row.quantity, row.predicted, row.value, row.tolerance
            ));
        }
    }
    assert!(
        outside.is_empty(),
        "{} of {} outside\n{}",
        outside.len(),
        rows.len(),
        outside.join("\n")
    );
}
