//! Cooling rate along the end-quench bar.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "astm_a255_cooling_rates",
    authors: "ASTM",
    year: 2020,
    title: "ASTM A255, Standard Test Methods for Determining Hardenability of Steel",
    venue: "ASTM International; the scale printed above the standard end-quench chart",
    link: None,
    used_for: "cooling rate at 704 °C against distance from the quenched end; end-quench distance that cools like a given rate",
    standing: Standing::FromMemory,
};

/// Rows of (distance from the quenched end in sixteenths of an inch, cooling rate at 704 °C in
/// K/s).
pub const RATE_AT_704C: &[[f64; 2]] = &[
    [1.0, 272.0],
    [2.0, 169.0],
    [3.0, 108.0],
    [4.0, 69.0],
    [5.0, 43.0],
    [6.0, 31.0],
    [7.0, 23.0],
    [8.0, 18.0],
    [9.0, 14.0],
    [10.0, 11.9],
    [12.0, 9.0],
    [14.0, 6.9],
    [16.0, 5.6],
    [18.0, 4.6],
    [20.0, 3.9],
    [24.0, 2.8],
    [28.0, 2.2],
    [32.0, 2.0],
];

#[cfg(test)]
mod tests {
    use super::*;

    /// The same scale in °F/s, as a hardenability chart prints it (from memory).
    #[test]
    fn agrees_with_the_scale_in_fahrenheit() {
        for (sixteenths, fahrenheit_per_s) in [
            (1.0, 490.0),
            (2.0, 305.0),
            (4.0, 125.0),
            (8.0, 33.0),
            (16.0, 10.0),
            (20.0, 7.0),
            (28.0, 4.0),
        ] {
            let row = RATE_AT_704C
                .iter()
                .find(|row| row[0] == sixteenths)
                .unwrap();
            approx::assert_relative_eq!(row[1], fahrenheit_per_s / 1.8, max_relative = 0.03);
        }
    }
}
