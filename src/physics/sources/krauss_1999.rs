//! Krauss 1999 after Litwinchuk and others 1976: hardness of high-carbon martensite levels off.
//!
//! Recalled: quenched to room temperature hardness peaks at 0.8 to 1.0 % C; refrigerated martensite
//! of that carbon reaches about 900 HV; austenite under an indenter counts with 250 to 350 HV
//! because part of it transforms there. The as-quenched values below are the plateau on which the
//! handbooks agree; each already holds the austenite that plain-carbon steel keeps at 20 °C.

use super::{Source, Standing};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "krauss_1999",
    authors: "G. Krauss",
    year: 1999,
    title: "Martensite in steel: strength and structure",
    venue: "Materials Science and Engineering A 273–275, 40–57",
    link: Some("https://doi.org/10.1016/S0921-5093(99)00288-9"),
    used_for: "hardness of martensite above 0.6 % carbon, of retained austenite, its usual amount",
    standing: Standing::FromMemory,
};

/// `[carbon wt %, HRC]` as quenched to room temperature, from the plateau's foot on.
pub const PLATEAU_HRC: [[f64; 2]; 4] = [[0.80, 65.5], [0.90, 66.0], [1.00, 66.0], [1.40, 66.0]];

/// Hardness that no mixture with martensite exceeds, HV: refrigerated high-carbon martensite.
pub const REFRIGERATED_HV: f64 = 900.0;

/// Vickers hardness with which retained austenite counts in a mixture. Within the 250 to 350 of
/// the source, chosen so that 20, 30 and 50 % austenite cost the 1.5, 3.5 and 8 HRC of the rule of
/// thumb.
pub const RETAINED_AUSTENITE_HV: f64 = 300.0;

/// `[carbon wt %, volume fraction]`: austenite that plain-carbon steel keeps when quenched to
/// 20 °C, and which the as-quenched curves therefore hold already. Computed from
/// Ms = 545 - 601.2 (1 - exp(-0.868 C)) and exp(-0.011 (Ms - 20)).
pub const USUAL_AUSTENITE: [[f64; 2]; 7] = [
    [0.10, 0.005],
    [0.20, 0.009],
    [0.40, 0.022],
    [0.60, 0.046],
    [0.80, 0.085],
    [1.00, 0.144],
    [1.40, 0.325],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_austenite_follows_its_formula() {
        for [carbon, fraction] in USUAL_AUSTENITE {
            let ms_c = 545.0 - 601.2 * (1.0 - f64::exp(-0.868 * carbon));
            let computed = f64::exp(-0.011 * (ms_c - 20.0));
            assert!((computed - fraction).abs() < 0.003, "{carbon}: {computed}");
        }
    }
}
