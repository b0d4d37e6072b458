//! Retained austenite on tempering: first-order loss with the activation energy of 52100.
//!
//! The activation energy was read in the abstract: in-situ synchrotron diffraction of SAE 52100 at
//! 200 to 235 °C gives 138 to 148 kJ/mol without load (82 to 104 under 295 MPa). The rate is
//! anchored so that half is left after one hour at 235 °C; the anchor, the silicon shift and the
//! chromium limit are recalled and not from this source.
//! That leaves 94 % after one hour at 200 °C, 61 % at 230 °C, 3 % at 260 °C.

use super::{Source, Standing};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "jimenez_melero_2013",
    authors: "E. Jimenez-Melero, R. Blonde, M. Y. Sherif, V. Honkimäki, N. H. van Dijk",
    year: 2013,
    title: "Time-dependent synchrotron X-ray diffraction on the austenite decomposition kinetics in SAE 52100 bearing steel at elevated temperatures under tensile stress",
    venue: "Acta Materialia 61",
    link: None,
    used_for: "loss of retained austenite on tempering",
    standing: Standing::FromMemory,
};

/// Activation energy without load, J/mol: middle of the measured 138 to 148 kJ/mol.
pub const ACTIVATION_J_PER_MOL: f64 = 143_000.0;

/// Temperature at which half is left after [`HALF_TIME_S`], K.
pub const HALF_TEMPERATURE_K: f64 = 508.0;

/// Half-life at [`HALF_TEMPERATURE_K`], s.
pub const HALF_TIME_S: f64 = 3600.0;

/// `[silicon wt %, shift K]`: by how much silicon moves the loss to higher temperature.
pub const SILICON_SHIFT_K: [[f64; 2]; 2] = [[0.5, 0.0], [1.5, 90.0]];

/// Chromium from which austenite stays to about 450 °C and this law does not hold, wt %.
pub const LARGEST_CHROMIUM_WT: f64 = 5.0;

#[cfg(test)]
mod tests {
    use super::*;

    /// The anchor in its Arrhenius form gives k0 = 9.7e10 per second.
    #[test]
    fn anchor_worked_by_hand() {
        let k0 = core::f64::consts::LN_2 / HALF_TIME_S
            * f64::exp(ACTIVATION_J_PER_MOL / (8.314462618 * HALF_TEMPERATURE_K));
        assert!((k0 / 9.7e10 - 1.0).abs() < 0.02, "{k0}");
    }
}
