//! What quench media are made of, and the usual cautions with them.

use super::hazard::{Hazard, Said};

/// What a medium is made of; decides its cautions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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
    /// The family with this name in the list of media.
    pub(super) fn named(name: &str) -> Option<Self> {
        Some(match name {
            "brine" => Self::Brine,
            "water" => Self::Water,
            "polymer" => Self::Polymer,
            "oil" => Self::Oil,
            "hot_oil" => Self::HotOil,
            "vegetable_oil" => Self::VegetableOil,
            "salt" => Self::Salt,
            "plates" => Self::Plates,
            "gas" => Self::Gas,
            "air" => Self::Air,
            _ => return None,
        })
    }

    /// Whether a piece comes wet out of it.
    const fn is_wet(self) -> bool {
        matches!(self, Self::Water | Self::Brine | Self::Polymer)
    }

    /// Whether a piece comes oily out of it.
    const fn is_oily(self) -> bool {
        matches!(self, Self::Oil | Self::VegetableOil | Self::HotOil)
    }

    /// Whether a piece may go into this bath straight from another. Common practice, no source:
    /// water or oil carried into molten salt makes it erupt.
    #[must_use]
    pub const fn may_follow(self, before: Self) -> bool {
        let may_be_wet = before.is_wet() || before.is_oily() || matches!(before, Self::Own);
        !(matches!(self, Self::Salt) && may_be_wet)
    }

    /// The caution for going from one bath into this one. Common practice, no source.
    #[must_use]
    pub const fn caution_after(self, before: Self) -> Option<Hazard> {
        if !self.may_follow(before) {
            return Some(Hazard(&[Said::Words(
                "Never bring a wet or oily piece into molten salt: it erupts.",
            )]));
        }
        if self.is_oily() && before.is_wet() {
            return Some(Hazard(&[Said::Words(
                "Water carried into oil spatters, foams over and burns: shake it off, lower the piece from a distance, lid at hand.",
            )]));
        }
        if before.is_oily() && !self.is_oily() {
            return Some(Hazard(&[Said::Words(
                "Oil on a piece taken out hot smokes and may flash: vent, no flame near, lid at hand.",
            )]));
        }
        None
    }

    /// The usual cautions, for display. They remind and do not replace local codes, the
    /// supplier's safety data sheet and training.
    #[must_use]
    pub fn cautions(self) -> &'static [Hazard] {
        match self {
            Self::Brine => &[
                Hazard(&[Said::Words("Brine and steam splash: cover face and arms.")]),
                Hazard(&[Said::Words(
                    "Cracks and warps steel with more than about 0.5 % carbon.",
                )]),
                Hazard(&[Said::Words(
                    "Rinse the piece at once: brine rusts steel and tools.",
                )]),
            ],
            Self::Water => &[
                Hazard(&[Said::Words("Steam and hot splashes: cover face and arms.")]),
                Hazard(&[Said::Words("May crack high-carbon and alloy steel.")]),
                Hazard(&[
                    Said::Words("Above about "),
                    Said::Temperature(30.0),
                    Said::Words(" the vapour film lasts longer and leaves soft spots."),
                ]),
            ],
            Self::Polymer => &[
                Hazard(&[Said::Words("Steam and hot splashes: cover face and arms.")]),
                Hazard(&[Said::Words(
                    "Check the concentration: it drifts with use and decides the speed.",
                )]),
            ],
            Self::Oil | Self::VegetableOil => &[
                Hazard(&[
                    Said::Words(
                        "Oil burns: keep the bath well below its flash point, by at least ",
                    ),
                    Said::Difference(28.0),
                    Said::Words(" or as your code asks."),
                ]),
                Hazard(&[Said::Words(
                    "Put the whole piece under quickly; red steel half out of the oil lights the surface.",
                )]),
                Hazard(&[Said::Words(
                    "Keep a lid at hand and a fire extinguisher for burning liquids. Never use water.",
                )]),
                Hazard(&[Said::Words(
                    "Keep water out: a little in the oil foams and boils over.",
                )]),
            ],
            Self::HotOil => &[
                Hazard(&[
                    Said::Words("Above "),
                    Said::Temperature(100.0),
                    Said::Words(
                        " any water in the bath flashes to steam and throws burning oil: dry piece, dry tongs.",
                    ),
                ]),
                Hazard(&[Said::Words(
                    "Only oil made for hot baths, well below its flash point, with temperature control.",
                )]),
                Hazard(&[Said::Words(
                    "Keep a lid at hand and a fire extinguisher for burning liquids. Never use water.",
                )]),
            ],
            Self::Salt => &[
                Hazard(&[Said::Words(
                    "Molten salt burns deeply, and a wet or oily piece makes it erupt: dry and clean only.",
                )]),
                Hazard(&[Said::Words(
                    "Nitrate salt feeds fire: no oil, charcoal, aluminium or magnesium near it.",
                )]),
                Hazard(&[
                    Said::Words("Stay below the supplier's limit, about "),
                    Said::Temperature(550.0),
                    Said::Words(". Water is added by built-in equipment only."),
                ]),
            ],
            Self::Plates => &[
                Hazard(&[Said::Words("Plates pinch and burn: clamp with tools.")]),
                Hazard(&[Said::Words(
                    "Plates warm with every piece: let them cool between pieces.",
                )]),
            ],
            Self::Gas => &[
                Hazard(&[Said::Words(
                    "Nitrogen takes the place of air without warning: ventilate, and measure oxygen in closed rooms.",
                )]),
                Hazard(&[Said::Words(
                    "Above 1 bar absolute it is a pressure vessel: licensed equipment and trained people only.",
                )]),
            ],
            Self::Air => &[Hazard(&[Said::Words(
                "The piece stays hot enough to burn long after it is black.",
            )])],
            Self::Own => &[
                Hazard(&[Said::Words(
                    "Follow the supplier's safety data sheet for this quenchant.",
                )]),
                Hazard(&[Said::Words(
                    "If it is oil, it burns: well below its flash point, lid and extinguisher at hand, no water.",
                )]),
                Hazard(&[Said::Words(
                    "If it is water or brine: steam burns, and steel of much carbon may crack.",
                )]),
                Hazard(&[Said::Words(
                    "If it is molten salt: dry and clean pieces only, water makes it erupt.",
                )]),
            ],
        }
    }
}
