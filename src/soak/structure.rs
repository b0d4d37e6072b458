//! The structure that the piece has before it is heated for hardening.

use serde::{Deserialize, Serialize};

/// Carbide form in the piece as it goes into the furnace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StartingStructure {
    /// Round carbides in ferrite, as delivered by the mill for machining.
    #[default]
    Spheroidised,
    /// Pearlite lamellae from a slow cool.
    LamellarPearlite,
    /// Fine pearlite from an air cool after normalising.
    FinePearlite,
}

impl StartingStructure {
    /// Every structure, the most usual first.
    pub const ALL: [Self; 3] = [
        Self::Spheroidised,
        Self::LamellarPearlite,
        Self::FinePearlite,
    ];

    /// Radius that halves the carbide volume by size, µm; for lamellae, of the sphere that
    /// dissolves as fast.
    ///
    /// Expert values: spheroids of 0.5 µm mean diameter by count, which is 0.373 µm here for the
    /// spread of sizes taken; coarse lamellae dissolve twenty times faster; fine ones have half
    /// their thickness.
    #[must_use]
    pub const fn carbide_radius_um(self) -> f64 {
        match self {
            Self::Spheroidised => 0.373,
            Self::LamellarPearlite => 0.083,
            Self::FinePearlite => 0.042,
        }
    }

    /// How far alloy has gone into the carbide: 0 as in the steel, 1 equilibrium with ferrite.
    ///
    /// Expert values: a spheroidising anneal lasts hours and reaches equilibrium; pearlite forms
    /// in minutes at 680-700 °C, in seconds when air cooled.
    #[must_use]
    pub const fn carbide_enrichment(self) -> f64 {
        match self {
            Self::Spheroidised => 1.0,
            Self::LamellarPearlite => 0.5,
            Self::FinePearlite => 0.2,
        }
    }

    /// Half the width of the ferrite that carbon has to cross, µm. Expert values.
    #[must_use]
    pub const fn ferrite_half_width_um(self) -> f64 {
        match self {
            Self::Spheroidised => 5.0,
            Self::LamellarPearlite => 10.0,
            Self::FinePearlite => 6.0,
        }
    }

    /// Austenite grain just after ferrite is gone, as mean intercept, µm. Expert values: ASTM 10.5,
    /// 10 and 11.
    #[must_use]
    pub const fn first_grain_um(self) -> f64 {
        match self {
            Self::Spheroidised => 8.4,
            Self::LamellarPearlite => 10.0,
            Self::FinePearlite => 7.1,
        }
    }
}
