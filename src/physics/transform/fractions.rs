//! What a piece consists of, and what a cooling curve has made of it.

use super::Formed;
use super::kinetics::Product;
use crate::soak::BoundaryCarbide;

/// Volume fractions of the piece; their sum is 1.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct Fractions {
    /// Proeutectoid ferrite.
    pub ferrite: f64,
    /// Pearlite.
    pub pearlite: f64,
    /// Bainite.
    pub bainite: f64,
    /// Martensite.
    pub martensite: f64,
    /// Retained austenite.
    pub austenite: f64,
    /// Carbide that the soak left undissolved, and what has come out on grain boundaries.
    pub carbide: f64,
}

impl Fractions {
    /// Martensite and the austenite it left, as a fraction of all but carbide: the measure of a full
    /// quench.
    #[must_use]
    pub fn hardened(&self) -> f64 {
        let hard = self.martensite + self.austenite;
        let matrix = hard + self.ferrite + self.pearlite + self.bainite;
        if matrix > 0.0 { hard / matrix } else { 0.0 }
    }

    /// The part that is a product of diffusion.
    #[must_use]
    pub const fn of(&self, product: Product) -> f64 {
        match product {
            Product::Ferrite => self.ferrite,
            Product::Pearlite => self.pearlite,
            Product::Bainite => self.bainite,
        }
    }

    /// Bainite as a fraction of all but carbide.
    #[must_use]
    pub fn bainite_of_matrix(&self) -> f64 {
        let matrix = 1.0 - self.carbide;
        if matrix > 0.0 {
            self.bainite / matrix
        } else {
            0.0
        }
    }
}

/// What a piece consists of at one point of its cooling curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HistoryPoint {
    /// Time, s.
    pub time_s: f64,
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Volume fractions at this time.
    pub fractions: Fractions,
}

/// What a cooling curve makes of the austenite.
#[derive(Debug, Clone, PartialEq)]
pub struct Transformed {
    /// Volume fractions at the end of the curve.
    pub fractions: Fractions,
    /// How the pearlite and the bainite among them formed.
    pub formed: Formed,
    /// Start of martensite of the austenite that was left, °C: lower than that of the whole when
    /// ferrite has enriched it in carbon, higher when carbide on grain boundaries has taken carbon.
    pub ms_c: f64,
    /// Carbide on the grain boundaries.
    pub boundary_carbide: BoundaryCarbide,
    /// Largest sum of dt / t(1 %) over the products down to Ms: 1 or more means that the first
    /// per cent of a product has formed. Its inverse is the margin as a factor on time.
    pub additivity: f64,
    /// Age of each product at the end, in multiples of its 1 % start time, in the order of
    /// [`Product::ALL`].
    pub ages: [f64; 3],
    /// The product to which `additivity` belongs; none when the curve passes no product's range.
    pub limiting: Option<Product>,
    /// Fractions at every point of the curve.
    pub history: Vec<HistoryPoint>,
}
