//! Carbon lost at the surface of a piece soaked in air.

/// Depth of the decarburised skin after a soak in air, mm: `2 √(D t)`.
///
/// An upper bound while scale does not overrun it: the surface is taken to lose all its carbon at
/// once. Zero for a time or temperature that is not a number or below zero.
#[must_use]
pub fn decarburised_depth_mm(temperature_c: f64, time_s: f64) -> f64 {
    let temperature_k = temperature_c + 273.15;
    if !(temperature_k > 0.0 && time_s > 0.0 && time_s.is_finite()) {
        return 0.0;
    }
    2000.0 * (super::diffusion::of_carbon_m2_s(temperature_k) * time_s).sqrt()
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
}
