//! Properties of the nickel alloy of the standard quench probe.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "n06600_data_sheet",
    authors: "maker of the alloy",
    year: 2008,
    title: "Data sheet of nickel-chromium-iron alloy UNS N06600",
    venue: "supplier's data sheet",
    link: None,
    used_for: "conductivity and heat capacity of the 12.5 mm probe of ISO 9950 and ASTM D6200",
    standing: Standing::FromMemory,
};

/// Density, kg/m³; read.
pub const DENSITY_KG_M3: f64 = 8470.0;

/// Rows of (temperature °C, conductivity W/mK, heat capacity J/kgK); linear between. The
/// conductivity at 900 °C is extrapolated. Another supplier's table, read, lies 2 to 4 % higher
/// in conductivity.
pub const ROWS: &[[f64; 3]] = &[
    [20.0, 14.9, 444.0],
    [100.0, 15.9, 465.0],
    [200.0, 17.3, 486.0],
    [300.0, 19.0, 502.0],
    [400.0, 20.5, 519.0],
    [500.0, 22.1, 536.0],
    [600.0, 23.9, 578.0],
    [700.0, 25.7, 595.0],
    [800.0, 27.5, 611.0],
    [900.0, 29.3, 628.0],
];

#[cfg(test)]
mod tests {
    use super::*;

    /// A supplier's table, read: 14.8, 16.1, 18.1, 21.5, 24.7, 28.1 W/mK.
    #[test]
    fn conductivity_is_near_another_suppliers() {
        let other = [
            (0, 14.8),
            (1, 16.1),
            (2, 18.1),
            (4, 21.5),
            (6, 24.7),
            (8, 28.1),
        ];
        for (row, conductivity) in other {
            approx::assert_relative_eq!(ROWS[row][1], conductivity, max_relative = 0.05);
        }
    }
}
