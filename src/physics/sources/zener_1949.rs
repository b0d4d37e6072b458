//! Zener 1949: growth of a plate from a supersaturated solution.

use super::{Source, Standing};

/// Where this comes from.
pub const SOURCE: Source = Source {
    key: "zener_1949",
    authors: "C. Zener",
    year: 1949,
    title: "Theory of growth of spherical precipitates from solid solution",
    venue: "Journal of Applied Physics 20, 950–953",
    link: None,
    used_for: "thickening of carbide films on grain boundaries",
    standing: Standing::FromMemory,
};

/// Square of the half thickness of a plate over `D t`, from a solution of content `far` in which
/// `beside` is in balance with a plate of content `plate`: the profile taken as straight. Zero
/// where nothing is supersaturated.
#[must_use]
pub fn plate_growth(far: f64, beside: f64, plate: f64) -> f64 {
    let excess = (far - beside).max(0.0);
    let room = (plate - beside) * (plate - far);
    if room > 0.0 {
        excess * excess / room
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 1.0 far, 0.8 beside, 6.67 in the plate: 0.04 / (5.87 x 5.67).
    #[test]
    fn worked_by_hand() {
        assert!((plate_growth(1.0, 0.8, 6.67) - 0.001_201_8).abs() < 1e-7);
        assert_eq!(plate_growth(0.7, 0.8, 6.67), 0.0);
    }

    /// The exact law of a plate, `S² = 4 λ² D t` with `√π λ exp(λ²) erfc(λ) = Ω`, for little
    /// supersaturation: within the tenth or two that Zener tells.
    #[test]
    fn near_the_exact_law() {
        let (far, beside, plate) = (1.0, 0.9, 6.67);
        let omega = (far - beside) / (plate - beside);
        let lambda = omega / std::f64::consts::PI.sqrt();
        let exact = 4.0 * lambda * lambda;
        assert!((plate_growth(far, beside, plate) / exact - 1.0).abs() < 0.25);
    }
}
