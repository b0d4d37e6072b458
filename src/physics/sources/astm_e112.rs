//! ASTM E112: grain number, mean intercept and grains per area.

use super::{Source, Standing};
use crate::numeric::formula::Number;

/// The standard.
pub const SOURCE: Source = Source {
    key: "astm_e112",
    authors: "ASTM International",
    year: 2013,
    title: "E112, Standard Test Methods for Determining Average Grain Size",
    venue: "ASTM International",
    link: None,
    used_for: "grain number from mean intercept and back",
    standing: Standing::FromMemory,
};

const PER_DECADE: f64 = -6.643856;
const AT_ONE_MM: f64 = -3.288;

/// Grain number of a mean intercept in µm.
#[must_use]
pub fn grain_number(intercept_um: f64) -> f64 {
    grain_number_of(intercept_um)
}

/// The law of [`grain_number`].
pub fn grain_number_of<N: Number>(intercept_um: N) -> N {
    let n = N::constant;
    n(PER_DECADE) * (intercept_um / n(1000.0)).log10() + n(AT_ONE_MM)
}

/// Mean intercept of a grain number, µm.
#[must_use]
pub fn intercept_um(grain_number: f64) -> f64 {
    1000.0 * 10_f64.powf((grain_number - AT_ONE_MM) / PER_DECADE)
}

/// Grains in a square inch of a picture at 100 times.
#[must_use]
pub fn grains_per_square_inch(grain_number: f64) -> f64 {
    (grain_number - 1.0).exp2()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values from memory: number 5 is 56 µm, 8 is 20 µm, 12 is 5 µm.
    #[test]
    fn known_pairs() {
        for (number, um) in [(5.0, 56.5), (8.0, 20.0), (12.0, 5.0)] {
            assert!((intercept_um(number) / um - 1.0).abs() < 0.01);
            assert!((grain_number(intercept_um(number)) - number).abs() < 1e-9);
        }
        assert_eq!(grains_per_square_inch(1.0), 1.0);
    }
}
