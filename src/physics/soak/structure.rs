//! The structure that the piece has before it is heated for hardening.

use recalesce_texts::soak as texts;
use serde::{Deserialize, Serialize};

/// Radius of the sphere that dissolves as fast as the films of a network, µm. Expert value.
const NETWORK_RADIUS_UM: f64 = 0.5;

/// Carbide form in the piece as it goes into the furnace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StartingStructure {
    /// Round carbides in ferrite, as delivered by the mill for machining.
    #[default]
    Spheroidised,
    /// Round carbides of twice the size, from a long anneal at the mill or a repeated one.
    CoarseSpheroidised,
    /// Small round carbides from an hour or two just below A1, after hardening or normalising.
    SubcriticalAnnealed,
    /// Coarse pearlite lamellae from a slow cool in the furnace.
    LamellarPearlite,
    /// Pearlite between coarse and fine, from a cool in ashes or vermiculite, or an isothermal
    /// anneal.
    MediumPearlite,
    /// Fine pearlite from an air cool after normalising.
    FinePearlite,
    /// Very fine carbides in tempered martensite, from a quench and a high temper or a refining
    /// cycle that ends in a quench.
    QuenchedAndRefined,
    /// Coarse pearlite in large grains, cooled from the forge without normalising; in
    /// hypereutectoid steel with a network of carbide.
    AsForged,
}

/// What counts of a structure when the piece is heated: how its carbide is spread, how far alloy
/// has gone into it, and how fine the austenite will be.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Structure {
    /// Radius that halves the volume of the evenly spread carbide by size, µm; for lamellae, of
    /// the sphere that dissolves as fast.
    pub carbide_radius_um: f64,
    /// Part of the carbide, by volume, that an earlier soak has left undissolved.
    pub left_over_part: f64,
    /// Radius that halves the volume of that, µm.
    pub left_over_radius_um: f64,
    /// Part of the carbide outside pearlite that stands as a network on the grain boundaries.
    pub network_part: f64,
    /// Radius of the sphere that dissolves as fast as the films of the network, µm.
    pub network_radius_um: f64,
    /// How far alloy has gone into the carbide: 0 as in the steel, 1 equilibrium with ferrite.
    pub carbide_enrichment: f64,
    /// Half the width of the ferrite that carbon has to cross, µm.
    pub ferrite_half_width_um: f64,
    /// Austenite grain just after ferrite is gone, as mean intercept, µm.
    pub first_grain_um: f64,
}

impl StartingStructure {
    /// Every structure, round carbides first, then pearlite from coarse to fine.
    pub const ALL: [Self; 8] = [
        Self::Spheroidised,
        Self::CoarseSpheroidised,
        Self::SubcriticalAnnealed,
        Self::LamellarPearlite,
        Self::MediumPearlite,
        Self::FinePearlite,
        Self::QuenchedAndRefined,
        Self::AsForged,
    ];

    /// What it is called.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Spheroidised => texts::SPHEROIDISED,
            Self::CoarseSpheroidised => texts::COARSE_SPHEROIDISED,
            Self::SubcriticalAnnealed => texts::SUBCRITICAL_ANNEALED,
            Self::LamellarPearlite => texts::COARSE_PEARLITE,
            Self::MediumPearlite => texts::MEDIUM_PEARLITE,
            Self::FinePearlite => texts::FINE_PEARLITE,
            Self::QuenchedAndRefined => texts::QUENCHED_AND_REFINED,
            Self::AsForged => texts::AS_FORGED,
        }
    }

    /// What the model takes of it.
    ///
    /// Expert values. Carbide radius: spheroids of 0.5 µm mean diameter by count, which is 0.373 µm
    /// here for the spread of sizes taken; 1.0 µm after a long anneal, 0.3 µm after a short one
    /// below A1; coarse lamellae dissolve twenty times faster than the first; fine ones have half
    /// their thickness, medium ones lie between; carbides of martensite tempered while it heats up
    /// have 0.05 µm. Enrichment: a spheroidising anneal lasts hours and reaches equilibrium, an hour
    /// below A1 most of it; pearlite forms in minutes at 680-700 °C, in seconds when air cooled; a
    /// network forms hotter and has longer; martensite tempers in minutes while it heats up.
    /// Ferrite: large forged grains have it wide between them, tempered martensite has none but
    /// within its laths. First grain: ASTM 10.5, 10, 11, 10, 10.5, 11, 12 and 8 in the order of
    /// [`Self::ALL`]: austenite begins on carbides and colony boundaries, and the finer they are,
    /// the more grains. Network: half of what is outside pearlite after cooling in air from the
    /// forge.
    #[must_use]
    pub const fn structure(self) -> Structure {
        let (carbide_radius_um, carbide_enrichment, ferrite_half_width_um, first_grain_um) =
            match self {
                Self::Spheroidised => (0.373, 1.0, 5.0, 8.4),
                Self::CoarseSpheroidised => (0.746, 1.0, 8.0, 10.0),
                Self::SubcriticalAnnealed => (0.224, 0.8, 4.0, 7.1),
                Self::LamellarPearlite => (0.083, 0.5, 10.0, 10.0),
                Self::MediumPearlite => (0.059, 0.35, 8.0, 8.4),
                Self::FinePearlite => (0.042, 0.2, 6.0, 7.1),
                Self::QuenchedAndRefined => (0.037, 0.2, 1.0, 5.0),
                Self::AsForged => (0.083, 0.7, 20.0, 20.0),
            };
        Structure {
            carbide_radius_um,
            left_over_part: 0.0,
            left_over_radius_um: carbide_radius_um,
            network_part: match self {
                Self::AsForged => 0.5,
                _ => 0.0,
            },
            network_radius_um: NETWORK_RADIUS_UM,
            carbide_enrichment,
            ferrite_half_width_um,
            first_grain_um,
        }
    }
}

impl From<StartingStructure> for Structure {
    fn from(start: StartingStructure) -> Self {
        start.structure()
    }
}
