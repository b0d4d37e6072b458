//! What forms before martensite, and where on the way down pearlite and bainite did: what their
//! hardness follows.

use super::kinetics::Product;

/// What diagrams show: the products that austenite turns into, and carbide that it rejects.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Forming {
    /// Carbide on the grain boundaries of hypereutectoid austenite.
    GrainBoundaryCarbide,
    /// Proeutectoid ferrite.
    Ferrite,
    /// Pearlite.
    Pearlite,
    /// Bainite.
    Bainite,
}

impl Forming {
    /// All in the order in which a slow cooling meets them; none forms both the first two.
    pub const ALL: [Self; 4] = [
        Self::GrainBoundaryCarbide,
        Self::Ferrite,
        Self::Pearlite,
        Self::Bainite,
    ];

    /// Its name in answers.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::GrainBoundaryCarbide => "grain_boundary_carbide",
            Self::Ferrite => "ferrite",
            Self::Pearlite => "pearlite",
            Self::Bainite => "bainite",
        }
    }
}

impl From<Product> for Forming {
    fn from(product: Product) -> Self {
        match product {
            Product::Ferrite => Self::Ferrite,
            Product::Pearlite => Self::Pearlite,
            Product::Bainite => Self::Bainite,
        }
    }
}

/// A product as it formed while cooling.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct FormedProduct {
    /// Mean temperature at which it formed, °C.
    pub temperature_c: f64,
    /// Carbon of the austenite that it formed from, wt %.
    pub carbon_wt: f64,
}

/// What formed before martensite, apart from ferrite, whose hardness does not follow how it formed.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct Formed {
    /// Pearlite; none where none formed.
    pub pearlite: Option<FormedProduct>,
    /// Bainite; none where none formed.
    pub bainite: Option<FormedProduct>,
}
