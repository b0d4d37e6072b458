//! How near the models come to outside values: `cargo xtask score`.
//!
//! Every row of the check files that a model answers counts, also those that it refuses. Groups
//! carry the aim of the project where there is one. The test fails only when fewer rows lie
//! inside their tolerance than the ratchet in [`groups::GROUPS`] says: a number there only ever rises. The fits
//! of this project are run again with each heat or steel left out of them in turn.
//!
//! The page shows the same table: `UPDATE_SCORE=1 cargo test --test score` writes it anew.
#![cfg(not(target_arch = "wasm32"))]

#[path = "../fits/mod.rs"]
mod fits;
mod groups;
mod report;
#[path = "../rows/mod.rs"]
mod rows;
mod shown;
mod written;

use groups::{GROUPS, Group};
use report::{bands_met, report};
use rows::{Row, score};

#[test]
fn score_of_every_quantity() {
    let rows = rows::all();
    let mut grouped: Vec<(&Group, Vec<&Row>)> = GROUPS.iter().map(|g| (g, Vec::new())).collect();
    let mut homeless = Vec::new();
    for row in &rows {
        match grouped.iter_mut().find(|(group, _)| (group.takes)(row)) {
            Some((_, taken)) => taken.push(row),
            None => homeless.push(row),
        }
    }
    println!("{}", report(&grouped, &rows).expect("a report"));
    println!("{}", bands_met());
    assert!(homeless.is_empty(), "rows without a group: {homeless:#?}");
    written::check(&grouped);
    for (group, rows) in &grouped {
        let s = score(rows.iter().copied());
        assert!(s.rows > 0, "no rows: {}", group.title);
        assert!(
            s.inside >= group.ratchet,
            "{}: {} inside, were {}",
            group.title,
            s.inside,
            group.ratchet
        );
    }
}

/// Every fit of this project, run again with its folds; each tells its error as it is.
fn errors_of(fits: &[fits::Fit]) {
    println!("\n{}", fits::table(fits));
    for fit in fits {
        assert!(fit.is_told_rightly(), "{fit:#?}");
        // The constants of the program are as good as those that the same data give again.
        assert!(fit.stored.rms < 1.3 * fit.fitted.rms + 0.02, "{fit:#?}");
    }
}

#[test]
fn errors_of_the_fits_on_what_is_left_out() {
    errors_of(&[
        fits::tempering::fitted(),
        fits::dividing_factor::fitted(),
        fits::annealed::fitted(),
        fits::grain::fitted(),
    ]);
}

#[test]
#[ignore = "takes some minutes; cargo xtask score runs it"]
fn errors_of_the_isothermal_fit_on_what_is_left_out() {
    errors_of(&fits::isothermal::fitted());
}
