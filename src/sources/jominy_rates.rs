//! Cooling rate along the standard end-quench bar, as charts of the trade print it.

use super::{Source, Standing};

/// The table.
pub const SOURCE: Source = Source {
    key: "jominy_rates",
    authors: "charts of end-quench practice",
    year: 1961,
    title: "Cooling rate at 704 °C (1300 °F) against distance from the quenched end",
    venue: "printed on end-quench charts of the trade",
    link: None,
    used_for: "end-quench distance that cools like a given rate",
    standing: Standing::FromMemory,
};

/// Distance from the quenched end in sixteenths of an inch, and cooling rate at 704 °C in K/s.
pub const RATE_AT_704C_K_PER_S: [(f64, f64); 18] = [
    (1.0, 272.0),
    (2.0, 169.0),
    (3.0, 108.0),
    (4.0, 69.0),
    (5.0, 43.0),
    (6.0, 31.0),
    (7.0, 23.0),
    (8.0, 18.0),
    (9.0, 14.0),
    (10.0, 11.9),
    (12.0, 9.0),
    (14.0, 6.9),
    (16.0, 5.6),
    (18.0, 4.6),
    (20.0, 3.9),
    (24.0, 2.8),
    (28.0, 2.2),
    (32.0, 2.0),
];

#[cfg(test)]
mod tests {
    /// 490 °F/s at 1/16 in and 10 °F/s at 16/16 in on the charts.
    #[test]
    fn fahrenheit_marks_of_the_charts() {
        let rate = |j: f64| {
            super::RATE_AT_704C_K_PER_S
                .iter()
                .find(|row| row.0 == j)
                .map_or(f64::NAN, |row| row.1)
        };
        assert!((rate(1.0) * 1.8 - 490.0).abs() < 1.0);
        assert!((rate(16.0) * 1.8 - 10.0).abs() < 0.2);
    }
}
