//! What quench media are made of, and the usual cautions with them.

use super::hazard::{Hazard, Said};
use recalesce_texts::heat::cautions as texts;

const WATER_BOILS_C: f64 = 100.0;

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

    /// Whether its curve is that of a still bath, which can be stirred. Salt of the list is still or stirred by
    /// its name.
    #[must_use]
    pub const fn is_listed_still(self) -> bool {
        !matches!(self, Self::Salt | Self::Plates | Self::Gas | Self::Air)
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
            return Some(Hazard(&[Said::Words(texts::WET_INTO_SALT)]));
        }
        if self.is_oily() && before.is_wet() {
            return Some(Hazard(&[Said::Words(texts::WATER_INTO_OIL)]));
        }
        if before.is_oily() && !self.is_oily() {
            return Some(Hazard(&[Said::Words(texts::OILY_AND_HOT)]));
        }
        None
    }

    /// The usual cautions with a bath, °C, for display. They remind and do not replace local codes, the
    /// supplier's safety data sheet and training.
    pub(super) fn cautions(self, bath_c: f64) -> &'static [Hazard] {
        match self {
            Self::Brine => &[
                Hazard(&[Said::Words(texts::BRINE_SPLASHES)]),
                Hazard(&[Said::Words(texts::BRINE_CRACKS)]),
                Hazard(&[Said::Words(texts::BRINE_RUSTS)]),
            ],
            Self::Water => &[
                Hazard(&[Said::Words(texts::STEAM)]),
                Hazard(&[Said::Words(texts::WATER_CRACKS)]),
                Hazard(&[Said::WithTemperature(texts::WARM_WATER, 30.0)]),
            ],
            Self::Polymer => &[
                Hazard(&[Said::Words(texts::STEAM)]),
                Hazard(&[Said::Words(texts::CONCENTRATION)]),
            ],
            Self::Oil => &[
                Hazard(&[Said::WithDifference(texts::OIL_BURNS, 28.0)]),
                Hazard(&[Said::Words(texts::UNDER_QUICKLY)]),
                Hazard(&[Said::Words(texts::LID_AT_HAND)]),
                Hazard(&[Said::Words(texts::WATER_IN_OIL)]),
            ],
            Self::VegetableOil => &[
                Hazard(&[Said::WithDifference(texts::OIL_BURNS, 28.0)]),
                Hazard(&[Said::Words(texts::UNDER_QUICKLY)]),
                Hazard(&[Said::Words(texts::LID_FOR_COOKING_OIL)]),
                Hazard(&[Said::Words(texts::WATER_IN_OIL)]),
            ],
            Self::HotOil => &[
                Hazard(&[Said::WithTemperature(texts::WATER_IN_HOT_OIL, 100.0)]),
                Hazard(&[Said::Words(texts::OIL_FOR_HOT_BATHS)]),
                Hazard(&[Said::Words(texts::UNDER_QUICKLY)]),
                Hazard(&[Said::Words(texts::LID_AT_HAND)]),
            ],
            Self::Salt => &[
                Hazard(&[Said::Words(texts::SALT_BURNS)]),
                Hazard(&[Said::Words(texts::NITRATE)]),
                Hazard(&[Said::WithTemperature(texts::LIMIT_OF_SALT, 550.0)]),
            ],
            Self::Plates => &[
                Hazard(&[Said::Words(texts::PLATES_PINCH)]),
                Hazard(&[Said::Words(texts::PLATES_WARM)]),
            ],
            Self::Gas => &[
                Hazard(&[Said::Words(texts::NITROGEN)]),
                Hazard(&[Said::Words(texts::PRESSURE_VESSEL)]),
            ],
            Self::Air => &[Hazard(&[Said::Words(texts::BLACK_AND_HOT)])],
            // No bath so hot is of water, and none so cold of molten salt.
            Self::Own if bath_c < WATER_BOILS_C => &[
                Hazard(&[Said::Words(texts::KIND_NOT_TOLD)]),
                Hazard(&[Said::Words(texts::IF_OIL)]),
                Hazard(&[Said::Words(texts::IF_WATER)]),
            ],
            Self::Own => &[
                Hazard(&[Said::Words(texts::KIND_NOT_TOLD)]),
                Hazard(&[Said::Words(texts::IF_HOT_OIL)]),
                Hazard(&[Said::Words(texts::IF_SALT)]),
            ],
        }
    }
}
