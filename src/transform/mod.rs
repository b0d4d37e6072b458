//! What austenite turns into: isothermal curves, additivity along a cooling curve, martensite.

use crate::steel::Composition;

/// The austenite that leaves the furnace: what all transformation models take in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Austenite {
    /// What is dissolved in it, wt % of the austenite.
    pub composition: Composition,
    /// ASTM grain number.
    pub grain_astm: f64,
    /// Volume fraction of the whole piece that is undissolved carbide.
    pub undissolved_carbide_volume_fraction: f64,
}
