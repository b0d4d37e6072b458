//! Which quenchant: one of the list, or the user's own heat-transfer curve.

use serde::{Deserialize, Serialize};

/// A quenchant as a route or a question names it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum MediumChoice {
    /// A medium of the list, by its name.
    Named(String),
    /// The user's own curve.
    Own(OwnMedium),
}

/// When a piece is taken out of a bath.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Leave {
    /// After a time in it, s.
    AfterS(f64),
    /// As soon as no place of the piece is hotter than this, °C.
    AtC(f64),
}

/// A bath that follows another.
#[derive(Debug, Clone, PartialEq)]
pub struct LaterBath {
    /// When the bath before is left.
    pub leave: Leave,
    /// This bath.
    pub medium: super::Medium,
    /// Factor on its still heat transfer, 0.05 to 20.
    pub agitation: f64,
}

/// A heat-transfer curve of the user's own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnMedium {
    /// Pairs of surface temperature, °C, and heat-transfer coefficient, W/m²K, by rising
    /// temperature; the logarithm of the coefficient is linear between them.
    pub h_w_m2k: Vec<[f64; 2]>,
    /// Temperature of the bath, °C.
    pub bath_c: f64,
    /// Whether the surface also radiates to surroundings at bath temperature.
    #[serde(default)]
    pub radiation: bool,
}
