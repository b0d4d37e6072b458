//! Quenchants of the user's own: from figures to heat transfer and back.
#![cfg(not(target_arch = "wasm32"))]

mod figures;
mod fit_curve;
mod read_curve;
mod simulated_probe;

use recalesce::heat::{Medium, Quenching, Section, cool, medium};

/// An error's words with plain spaces.
fn plain(error: &impl std::fmt::Display) -> String {
    error.to_string().replace('\u{a0}', " ")
}

fn listed(name: &str) -> &'static Medium {
    medium(name).unwrap_or_else(|| panic!("{name} is in the list"))
}

/// Seconds from entry at 800 °C to 540 °C at the centre of plates of 3, 6 and 12 mm.
fn plate_times_s(medium: &Medium) -> [f64; 3] {
    [3.0, 6.0, 12.0].map(|thickness_mm| {
        cool(&Quenching {
            section: Section::Plate { thickness_mm },
            medium,
            agitation: 1.0,
            start_c: 800.0,
            air_delay_s: 0.0,
            end_c: 500.0,
            then: &[],
            martensite_start_c: None,
        })
        .expect("a quench")
        .slowest()
        .and_then(|curve| curve.time_to_c(540.0))
        .expect("a time")
    })
}

fn assert_same_plates(own: &Medium, listed: &Medium, tolerance: f64) {
    for (got, expected) in plate_times_s(own).into_iter().zip(plate_times_s(listed)) {
        println!(
            "{}: {expected:.3} s, {:+.2} %",
            listed.name,
            100.0 * (got / expected - 1.0)
        );
        approx::assert_relative_eq!(got, expected, max_relative = tolerance);
    }
}
