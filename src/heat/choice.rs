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
