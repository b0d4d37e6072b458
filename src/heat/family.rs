//! What quench media are made of, and the usual cautions with them.

use serde::Deserialize;

/// What a medium is made of; decides its cautions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Family {
    /// Salt dissolved in water.
    Brine,
    /// Plain water.
    Water,
    /// Polymer dissolved in water.
    Polymer,
    /// Mineral oil, used warm.
    Oil,
    /// Mineral oil for hot baths, above 100 °C.
    HotOil,
    /// Vegetable oil.
    VegetableOil,
    /// Molten salt.
    Salt,
    /// Metal plates clamped on the piece.
    Plates,
    /// Protective gas in a pressure vessel.
    Gas,
    /// Air.
    Air,
    /// The user's own curve; what it is made of is not known.
    Own,
}

impl Family {
    /// The usual cautions, for display. They remind and do not replace local codes, the
    /// supplier's safety data sheet and training.
    #[must_use]
    pub fn cautions(self) -> &'static [&'static str] {
        match self {
            Self::Brine => &[
                "Brine and steam splash: cover face and arms.",
                "Cracks and warps steel with more than about 0.5 % carbon.",
                "Rinse the piece at once: brine rusts steel and tools.",
            ],
            Self::Water => &[
                "Steam and hot splashes: cover face and arms.",
                "May crack high-carbon and alloy steel.",
                "Above about 30 °C the vapour film lasts longer and leaves soft spots.",
            ],
            Self::Polymer => &[
                "Steam and hot splashes: cover face and arms.",
                "Check the concentration: it drifts with use and decides the speed.",
            ],
            Self::Oil | Self::VegetableOil => &[
                "Oil burns: keep the bath well below its flash point, by at least 28 °C or as your code asks.",
                "Put the whole piece under quickly; red steel half out of the oil lights the surface.",
                "Keep a lid at hand and a fire extinguisher for burning liquids. Never use water.",
                "Keep water out: a little in the oil foams and boils over.",
            ],
            Self::HotOil => &[
                "Above 100 °C any water in the bath flashes to steam and throws burning oil: dry piece, dry tongs.",
                "Only oil made for hot baths, well below its flash point, with temperature control.",
                "Keep a lid at hand and a fire extinguisher for burning liquids. Never use water.",
            ],
            Self::Salt => &[
                "Molten salt burns deeply, and a wet or oily piece makes it erupt: dry and clean only.",
                "Nitrate salt feeds fire: no oil, charcoal, aluminium or magnesium near it.",
                "Stay below the supplier's limit, about 550 °C. Water is added by built-in equipment only.",
            ],
            Self::Plates => &[
                "Plates pinch and burn: clamp with tools.",
                "Plates warm with every piece: let them cool between pieces.",
            ],
            Self::Gas => &[
                "Nitrogen takes the place of air without warning: ventilate, and measure oxygen in closed rooms.",
                "A pressure vessel is for licensed equipment and trained people.",
            ],
            Self::Air => &["The piece stays hot enough to burn long after it is black."],
            Self::Own => &["Follow the supplier's safety data sheet for this quenchant."],
        }
    }
}
