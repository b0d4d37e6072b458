//! What air does to the surface of a piece while it soaks: carbon lost, scale grown, and what to
//! leave for grinding.
//!
//! Both depths go with the square root of time. Carbon leaves by diffusion to a surface that is
//! taken to lose all of it at once: the profile is `erf(x / 2√(Dt))`. Scale grows on steel at most
//! as fast as on clean iron.

use super::{LONGEST_S, diffusion};
use crate::sources::{paidassi_1958, pilling_bedworth_1923};
use crate::steel::OutOfRange;
use recalesce_texts::soak as texts;

/// Depth at which half of the carbon is lost, in `2√(Dt)`: `erf 0.4769 = 0.5`.
const HALF_LOST: f64 = 0.4769;
/// Scale on steel over that on clean iron, least: expert value, so that together with the whole
/// of it the range holds the shop's 0.05 to 0.15 mm in an hour at 900 °C and 0.15 to 0.3 mm at
/// 1000 °C (from memory).
const LEAST_OF_IRON: f64 = 0.2;

/// A depth between two bounds, mm.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Depth {
    /// Lower bound, mm.
    pub least_mm: f64,
    /// Upper bound, mm.
    pub most_mm: f64,
}

/// The surface of a piece after a soak in air.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Skin {
    /// Depth of the steel that has lost carbon, from the surface that is left: from where half of
    /// it is lost, which a file feels, to where a sixth is.
    pub decarburised: Depth,
    /// Thickness of the scale on it, if none falls off.
    pub scale: Depth,
    /// Stock to leave for grinding on each side of the piece as it goes into the furnace, mm: an
    /// upper bound, of metal lost as scale and the whole decarburised depth below it.
    pub stock_per_side_mm: f64,
}

/// The surface of a piece soaked for `time_s` seconds at `temperature_c` in still air, unprotected.
///
/// For carbon and low-alloy steel. Every depth has an upper bound, which more chromium, a little
/// smoke in a charcoal or gas fire, a coating or foil only lessen: at the surface some carbon is
/// left, a rim of ferrite below 912 °C lets carbon through more slowly, and scale eats into what
/// has lost it. Not for a piece with scale on it from before, nor for the heating up, which adds to
/// the time.
///
/// # Errors
/// A temperature outside 700 to 1250 °C, or a time outside 0 to two days.
pub fn skin(temperature_c: f64, time_s: f64) -> Result<Skin, OutOfRange> {
    const MODEL: &str = texts::SURFACE_IN_AIR;
    OutOfRange::check(
        MODEL,
        texts::TEMPERATURE,
        "°C",
        temperature_c,
        paidassi_1958::RANGE_C,
    )?;
    OutOfRange::check(MODEL, texts::TIME, "s", time_s, (0.0, LONGEST_S))?;
    let decarburised_mm = decarburised_depth_mm(temperature_c, time_s);
    let scale_mm = paidassi_1958::scale_mm(temperature_c + 273.15, time_s);
    Ok(Skin {
        decarburised: Depth {
            least_mm: HALF_LOST * decarburised_mm,
            most_mm: decarburised_mm,
        },
        scale: Depth {
            least_mm: LEAST_OF_IRON * scale_mm,
            most_mm: scale_mm,
        },
        stock_per_side_mm: decarburised_mm + scale_mm / pilling_bedworth_1923::WUSTITE_ON_IRON,
    })
}

/// Depth of the decarburised skin after a soak in air, mm: `2 √(D t)`, where a sixth of the carbon
/// is lost.
///
/// An upper bound while scale does not overrun it: the surface is taken to lose all its carbon at
/// once. Zero for a time or temperature that is not a number or below zero.
#[must_use]
pub fn decarburised_depth_mm(temperature_c: f64, time_s: f64) -> f64 {
    let temperature_k = temperature_c + 273.15;
    if !(temperature_k > 0.0 && time_s > 0.0 && time_s.is_finite()) {
        return 0.0;
    }
    2000.0 * (diffusion::of_carbon_m2_s(temperature_k) * time_s).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed in the project's shop notes: 10 min at 800, 850, 900, 1000 °C.
    #[test]
    fn ten_minutes() {
        for (temperature_c, mm) in [(800.0, 0.06), (850.0, 0.09), (900.0, 0.12), (1000.0, 0.22)] {
            let depth = decarburised_depth_mm(temperature_c, 600.0);
            assert!((depth - mm).abs() < 0.006, "{temperature_c}: {depth}");
        }
        assert_eq!(decarburised_depth_mm(f64::NAN, 600.0), 0.0);
    }

    #[test]
    fn carbon_left_at_the_bounds() {
        assert!((libm::erf(HALF_LOST) - 0.5).abs() < 1e-4);
        assert!((libm::erf(1.0) - 5.0 / 6.0).abs() < 0.01);
    }
}
