//! Heat capacity and conductivity of structural steel in equilibrium on heating.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "en_1993_1_2_2005",
    authors: "CEN",
    year: 2005,
    title: "EN 1993-1-2, Design of steel structures: structural fire design",
    venue: "European Committee for Standardization, 3.4.1.2 and 3.4.1.3; heat capacity read in public code, conductivity from memory",
    link: None,
    used_for: "heat capacity and conductivity while the piece heats up; its peak at 735 °C belongs to heating and is absent in undercooled austenite, so it does not enter a quench",
    standing: Standing::Read,
};

/// Density of steel at every temperature, kg/m³.
pub const DENSITY_KG_M3: f64 = 7850.0;

/// Heat capacity, J/kgK, of carbon steel between 20 and 1200 °C; nothing outside.
#[must_use]
pub fn heat_capacity_j_kgk(temperature_c: f64) -> Option<f64> {
    let t = temperature_c;
    Some(match t {
        20.0..600.0 => 425.0 + 7.73e-1 * t - 1.69e-3 * t * t + 2.22e-6 * t * t * t,
        600.0..735.0 => 666.0 + 13002.0 / (738.0 - t),
        735.0..900.0 => 545.0 + 17820.0 / (t - 731.0),
        900.0..=1200.0 => 650.0,
        _ => return None,
    })
}

/// Conductivity, W/mK, of carbon steel between 20 and 1200 °C; nothing outside.
#[must_use]
pub fn conductivity_w_mk(temperature_c: f64) -> Option<f64> {
    match temperature_c {
        20.0..800.0 => Some(54.0 - 3.33e-2 * temperature_c),
        800.0..=1200.0 => Some(27.3),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn branches_meet() {
        for t in [600.0, 735.0, 900.0] {
            let (below, at) = (heat_capacity_j_kgk(t - 1e-6), heat_capacity_j_kgk(t));
            approx::assert_relative_eq!(below.unwrap(), at.unwrap(), max_relative = 0.02);
        }
        approx::assert_relative_eq!(
            conductivity_w_mk(799.999).unwrap(),
            conductivity_w_mk(800.0).unwrap(),
            max_relative = 0.003
        );
        assert_eq!(heat_capacity_j_kgk(1300.0), None);
    }
}
