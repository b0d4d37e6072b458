//! What a logbook can teach: each unknown, what it is of, and what was known of it beforehand.

use super::slot::Slot;
use crate::advise::shop::Furnace;
use crate::heat::MediumChoice;
use crate::route::{FURNACE_OFFSET_K, Route};
use crate::steel::Composition;
use crate::transform::BarPoint;
use crate::units::TemperatureScale;
use recalesce_texts::advise::inputs;
use recalesce_texts::advise::learn::unknown as texts;
use serde::{Deserialize, Serialize};

/// A kind of unknown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UnknownKind {
    /// How much hotter the piece is than the furnace reads, K.
    FurnaceOffset,
    /// How much more heat the quenchant takes than is listed, as a factor.
    QuenchSeverity,
    /// How much later the heat transforms than the model says, as a factor on the time of the nose.
    Hardenability,
    /// How much above the model's the heat's start of martensite lies, K.
    MartensiteStart,
    /// How much hotter the piece is in a temper than asked, K.
    TemperOvenOffset,
    /// How much harder the heat is as quenched than the model says, HRC.
    QuenchedHardness,
    /// How much harder the heat is after a temper than the model says, HRC.
    TemperedHardness,
    /// How much more the tester shows than the hardness, HRC.
    Tester,
}

impl UnknownKind {
    /// The unknown by which something goes that can be off; none for what is anew in each piece.
    pub(super) const fn of(slot: Slot) -> Option<Self> {
        Some(match slot {
            Slot::Soak => Self::FurnaceOffset,
            Slot::HeatTransfer => Self::QuenchSeverity,
            Slot::Nose => Self::Hardenability,
            Slot::MartensiteStart => Self::MartensiteStart,
            Slot::Thickness => return None,
            Slot::Temper => Self::TemperOvenOffset,
            Slot::Quenched => Self::QuenchedHardness,
            Slot::Tempered => Self::TemperedHardness,
            Slot::Tester => Self::Tester,
        })
    }

    /// Whether it is a factor; it is then learnt by its logarithm.
    #[must_use]
    pub const fn is_factor(self) -> bool {
        matches!(self, Self::QuenchSeverity | Self::Hardenability)
    }

    /// What a correction may have of it, in its unit: of a furnace what a route may have.
    pub(super) const fn allowed(self) -> (f64, f64) {
        match self {
            Self::FurnaceOffset => FURNACE_OFFSET_K,
            Self::TemperOvenOffset | Self::MartensiteStart => (-200.0, 200.0),
            Self::QuenchSeverity | Self::Hardenability => (0.01, 100.0),
            Self::QuenchedHardness | Self::TemperedHardness | Self::Tester => (-30.0, 30.0),
        }
    }

    /// The nearest that a correction may have of it.
    pub(super) fn within_allowed(self, value: f64) -> f64 {
        let (least, most) = self.allowed();
        value.clamp(least, most)
    }

    /// The widest that a correction may have of its band either way, in its unit.
    pub(super) fn widest(self) -> f64 {
        let (least, most) = self.allowed();
        most - least
    }

    /// Its unit; empty for a factor.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::FurnaceOffset | Self::MartensiteStart | Self::TemperOvenOffset => "K",
            Self::QuenchSeverity | Self::Hardenability => "",
            Self::QuenchedHardness | Self::TemperedHardness | Self::Tester => "HRC",
        }
    }

    /// Where its band before comes from.
    pub(super) const fn source(self) -> &'static str {
        match self {
            Self::FurnaceOffset => texts::FURNACE_BAND,
            Self::QuenchSeverity => texts::QUENCHANT_BAND,
            Self::Hardenability => texts::NOSE_ERROR,
            Self::MartensiteStart => inputs::MARTENSITE_START_ERROR,
            Self::TemperOvenOffset => texts::OVEN_BAND,
            Self::QuenchedHardness => texts::QUENCHED_HARDNESS_ERROR,
            Self::TemperedHardness => texts::TEMPERED_HARDNESS_ERROR,
            Self::Tester => texts::TESTER_ERROR,
        }
    }
}

/// What an unknown is of: what two routes must have in common to share it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Owner {
    /// A furnace of the shop, by its place in the list; none for one that the shop does not have.
    Furnace(Option<usize>),
    /// The quenchants of a quench in order.
    Quenchants(Vec<MediumChoice>),
    /// A heat of steel.
    Heat {
        /// Its grade.
        grade: Option<String>,
        /// Its composition, wt %.
        composition: Composition,
        /// Its end-quench test.
        end_quench: Vec<BarPoint>,
    },
    /// The oven of the tempers.
    TemperOven,
    /// The hardness tester.
    Tester,
}

impl Owner {
    /// What an unknown of a route is of; none where several furnaces of the shop may have been meant.
    pub(super) fn of(kind: UnknownKind, route: &Route, furnaces: &[Furnace]) -> Option<Self> {
        Some(match kind {
            UnknownKind::FurnaceOffset => {
                let mut places = furnaces_of(route, furnaces);
                let first = places.next();
                if places.next().is_some() {
                    return None;
                }
                Self::Furnace(first)
            }
            UnknownKind::QuenchSeverity => {
                let later = route.quench.then.iter().map(|bath| &bath.medium);
                let all = std::iter::once(&route.quench.medium).chain(later);
                Self::Quenchants(all.cloned().collect())
            }
            UnknownKind::Hardenability
            | UnknownKind::MartensiteStart
            | UnknownKind::QuenchedHardness
            | UnknownKind::TemperedHardness => Self::Heat {
                grade: route.grade.clone(),
                composition: route.composition,
                end_quench: route.end_quench.clone(),
            },
            UnknownKind::TemperOvenOffset => Self::TemperOven,
            UnknownKind::Tester => Self::Tester,
        })
    }

    /// What it is called inside a sentence, with the temperature of a bath on a scale.
    pub(super) fn name(&self, furnaces: &[Furnace], scale: TemperatureScale) -> String {
        match self {
            Self::Furnace(place) => place
                .and_then(|place| furnaces.get(place))
                .map(|furnace| furnace.name.trim())
                .filter(|name| !name.is_empty())
                .map_or_else(|| texts::THE_FURNACE.to_owned(), texts::furnace_named),
            Self::Quenchants(media) => {
                let titles = media.iter().map(|medium| {
                    medium.resolve().map_or_else(
                        |_| texts::A_QUENCHANT.to_owned(),
                        |medium| medium.title.words(scale),
                    )
                });
                texts::one_after_the_other(&titles.collect::<Vec<_>>())
            }
            Self::Heat { grade, .. } => grade.as_ref().map_or_else(
                || texts::HEAT_OF_OWN_STEEL.to_owned(),
                |grade| texts::heat_of(grade),
            ),
            Self::TemperOven => texts::THE_OVEN.to_owned(),
            Self::Tester => texts::THE_TESTER.to_owned(),
        }
    }
}

/// The furnaces of a shop that a route may have been planned for, by their places: those whose band
/// and thermocouple the route has and that reach the soak.
pub(super) fn furnaces_of(route: &Route, furnaces: &[Furnace]) -> impl Iterator<Item = usize> {
    let all = furnaces.iter().enumerate();
    all.filter(|(_, furnace)| furnace.may_be_of(route))
        .map(|(place, _)| place)
}

/// An unknown with what was known beforehand: normal about none.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Unknown {
    pub(super) kind: UnknownKind,
    pub(super) owner: Owner,
    /// Standard deviation, of a factor that of its natural logarithm.
    pub(super) sd: f64,
    /// What none of it stands for: the offset of the furnace that is told.
    pub(super) from: f64,
}

/// The unknowns of a logbook.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Unknowns(pub(super) Vec<Unknown>);

impl Unknowns {
    /// The place of an unknown, which joins the list where it is not in it. Where routes know it
    /// differently well the widest counts.
    pub(super) fn place_of(&mut self, unknown: Unknown) -> usize {
        let is_it = |known: &Unknown| known.kind == unknown.kind && known.owner == unknown.owner;
        if let Some(place) = self.0.iter().position(is_it) {
            if let Some(known) = self.0.get_mut(place) {
                known.sd = known.sd.max(unknown.sd);
            }
            return place;
        }
        self.0.push(unknown);
        self.0.len() - 1
    }

    /// Values in their own units of values in standard deviations.
    pub(super) fn values(&self, in_sd: &[f64]) -> Vec<f64> {
        let all = self.0.iter().zip(in_sd);
        all.map(|(unknown, z)| unknown.sd * z).collect()
    }
}
