//! Pinning of grains by particles, after Zener as told by Smith: grains stop at a diameter of
//! `8 r / (3 f)` beside particles of radius r and volume fraction f.
//!
//! Later counts put the factor anywhere from 0.5 to 3; the classic value is kept because it holds
//! bearing steel at the grain numbers that its producers print.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "smith_1948",
    authors: "C. S. Smith",
    year: 1948,
    title: "Grains, phases, and interfaces: an interpretation of microstructure",
    venue: "Transactions AIME 175, 15–51",
    link: None,
    used_for: "largest grain beside undissolved carbide",
    standing: Standing::FromMemory,
};

/// Largest grain diameter over radius and volume fraction of the particles.
pub const DIAMETER_FACTOR: f64 = 8.0 / 3.0;

#[cfg(test)]
mod tests {
    use super::*;

    /// 0.25 µm particles at 5 % by volume hold 13 µm, ASTM 9.
    #[test]
    fn bearing_steel_grain() {
        let diameter_um = DIAMETER_FACTOR * 0.25 / 0.05;
        assert!((diameter_um - 13.3).abs() < 0.1);
    }
}
