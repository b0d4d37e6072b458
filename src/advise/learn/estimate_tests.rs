//! The straight case, against what is known in closed form.

use super::*;

/// A measurement of one unknown, whose standard deviation before was `sd`.
fn row(unknown: usize, sd: f64, measured: f64, variance: f64) -> Row {
    Row {
        misfit: measured,
        variance,
        by: vec![(unknown, sd)],
        by_piece: Vec::new(),
    }
}

/// Of a normal prior and normal readings the posterior is the mean weighted by precision.
#[test]
fn readings_of_one_number_are_averaged_with_what_was_known() {
    let (prior_sd, reading_sd) = (6.0, 2.0);
    let readings = [3.0, 4.5, 2.5];
    let pieces: Vec<Rows> = readings
        .iter()
        .map(|reading| vec![row(0, prior_sd, *reading, reading_sd * reading_sd)])
        .collect();
    let found = Estimate::of(&pieces, &[0.0], Weighing::Plain).unwrap();
    let precision = prior_sd.powi(-2) + 3.0 * reading_sd.powi(-2);
    let mean = readings.iter().sum::<f64>() * reading_sd.powi(-2) / precision;
    approx::assert_relative_eq!(found.at[0] * prior_sd, mean, max_relative = 1e-12);
    let variance = found.variance_of(&[(0, prior_sd)]);
    approx::assert_relative_eq!(variance, 1.0 / precision, max_relative = 1e-12);
    // Where it was straightened makes no difference to what is straight.
    let moved: Vec<Rows> = pieces
        .iter()
        .map(|rows| {
            let mut rows = rows.clone();
            rows[0].misfit -= 0.7 * prior_sd;
            rows
        })
        .collect();
    let again = Estimate::of(&moved, &[0.7], Weighing::Plain).unwrap();
    approx::assert_relative_eq!(again.at[0], found.at[0], max_relative = 1e-12);
}

/// What two measurements of a piece share counts once: with everything shared the second one tells
/// nothing.
#[test]
fn what_is_off_about_a_piece_is_not_averaged_away() {
    let shared = |scatter: f64, variance: f64| Row {
        by_piece: vec![scatter],
        ..row(0, 1.0, 1.2, variance)
    };
    let once = vec![vec![shared(2.0, 1e-6)]];
    let twice = vec![vec![shared(2.0, 1e-6), shared(2.0, 1e-6)]];
    let found = |pieces: &[Rows]| Estimate::of(pieces, &[0.0], Weighing::Plain).unwrap();
    approx::assert_relative_eq!(found(&once).at[0], found(&twice).at[0], max_relative = 1e-5);
    // On two pieces it does.
    let apart = vec![vec![shared(2.0, 1e-6)], vec![shared(2.0, 1e-6)]];
    let closed = |count: f64| 1.0 / (1.0 + count / 4.0);
    approx::assert_relative_eq!(
        found(&twice).covariance.at(0, 0),
        closed(1.0),
        max_relative = 1e-5
    );
    approx::assert_relative_eq!(
        found(&apart).covariance.at(0, 0),
        closed(2.0),
        max_relative = 1e-5
    );
}

/// Two unknowns of which only the sum is measured: the sum is known, and neither by itself.
#[test]
fn only_the_sum_is_known_where_only_the_sum_is_measured() {
    let both = Row {
        by: vec![(0, 1.0), (1, 1.0)],
        ..row(0, 1.0, 3.0, 0.01)
    };
    let found = Estimate::of(&[vec![both.clone()]], &[0.0, 0.0], Weighing::Plain).unwrap();
    approx::assert_relative_eq!(found.at[0], found.at[1], max_relative = 1e-12);
    approx::assert_relative_eq!(
        found.at[0] + found.at[1],
        3.0 * 2.0 / 2.01,
        max_relative = 1e-12
    );
    approx::assert_relative_eq!(
        found.variance_of(&both.by),
        2.0 * 0.01 / 2.01,
        max_relative = 1e-9
    );
    approx::assert_relative_eq!(found.covariance.at(0, 0), 1.01 / 2.01, max_relative = 1e-12);
    assert!(found.covariance.at(0, 1) < -0.49);
}

/// Two wild readings of twenty move the mean by half of their share at most.
#[test]
fn what_lies_far_off_is_weighed_down() {
    let with = |wild: f64, weighing| {
        let pieces: Vec<Rows> = (0..20)
            .map(|i| {
                let near = 0.1 * (f64::from(i) - 9.5);
                vec![row(0, 5.0, if i % 9 == 4 { wild } else { near }, 1.0)]
            })
            .collect();
        Estimate::of(&pieces, &[0.0], weighing).unwrap()
    };
    let found = with(40.0, Weighing::Robust);
    assert!(5.0 * found.at[0] < 0.25, "{}", 5.0 * found.at[0]);
    assert!(5.0 * with(40.0, Weighing::Plain).at[0] > 3.5);
    assert!(found.weights[4][0] < 0.05 && found.weights[0][0] == 1.0);
    // How far off it is no longer matters.
    approx::assert_abs_diff_eq!(
        found.at[0],
        with(400.0, Weighing::Robust).at[0],
        epsilon = 1e-6
    );
}

#[test]
fn nothing_measured_leaves_what_was_known() {
    let found = Estimate::of(&[], &[0.0, 0.0], Weighing::Robust).unwrap();
    assert_eq!(found.at, [0.0, 0.0]);
    assert_eq!(found.covariance, Symmetric::unit(2));
    let nan = vec![vec![row(0, f64::NAN, 1.0, 1.0)]];
    assert!(Estimate::of(&nan, &[0.0], Weighing::Robust).is_err());
}
