//! The structure that the piece has before it is heated for hardening.

use serde::{Deserialize, Serialize};

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

/// What the model takes of a structure.
struct Sizes {
    carbide_radius_um: f64,
    carbide_enrichment: f64,
    ferrite_half_width_um: f64,
    first_grain_um: f64,
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

    /// Radius that halves the carbide volume by size, µm; for lamellae, of the sphere that
    /// dissolves as fast.
    ///
    /// Expert values: spheroids of 0.5 µm mean diameter by count, which is 0.373 µm here for the
    /// spread of sizes taken; 1.0 µm after a long anneal, 0.3 µm after a short one below A1;
    /// coarse lamellae dissolve twenty times faster than the first; fine ones have half their
    /// thickness, medium ones lie between; carbides of martensite tempered while it heats up have
    /// 0.05 µm.
    #[must_use]
    pub const fn carbide_radius_um(self) -> f64 {
        self.sizes().carbide_radius_um
    }

    /// How far alloy has gone into the carbide: 0 as in the steel, 1 equilibrium with ferrite.
    ///
    /// Expert values: a spheroidising anneal lasts hours and reaches equilibrium, an hour below A1
    /// most of it; pearlite forms in minutes at 680-700 °C, in seconds when air cooled; a network
    /// forms hotter and has longer; martensite tempers in minutes while it heats up.
    #[must_use]
    pub const fn carbide_enrichment(self) -> f64 {
        self.sizes().carbide_enrichment
    }

    /// Half the width of the ferrite that carbon has to cross, µm.
    ///
    /// Expert values; large forged grains have wide ferrite between them, tempered martensite has
    /// none but within its laths.
    #[must_use]
    pub const fn ferrite_half_width_um(self) -> f64 {
        self.sizes().ferrite_half_width_um
    }

    /// Austenite grain just after ferrite is gone, as mean intercept, µm.
    ///
    /// Expert values: ASTM 10.5, 10, 11, 10, 10.5, 11, 12 and 8 in the order of [`Self::ALL`].
    /// Austenite begins on carbides and colony boundaries: the finer they are, the more grains.
    #[must_use]
    pub const fn first_grain_um(self) -> f64 {
        self.sizes().first_grain_um
    }

    /// Part of the carbide outside pearlite that stands as a network on the grain boundaries of
    /// hypereutectoid steel: half of it after cooling in air from the forge. Expert value.
    #[must_use]
    pub const fn network_part(self) -> f64 {
        match self {
            Self::AsForged => 0.5,
            _ => 0.0,
        }
    }

    /// Radius of the sphere that dissolves as fast as the films of a network, µm. Expert value.
    #[must_use]
    pub const fn network_radius_um(self) -> f64 {
        0.5
    }

    const fn sizes(self) -> Sizes {
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
        Sizes {
            carbide_radius_um,
            carbide_enrichment,
            ferrite_half_width_um,
            first_grain_um,
        }
    }
}
