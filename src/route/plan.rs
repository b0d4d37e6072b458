//! A route: what the user decides. Everything else is computed from it.

use super::furnace::Thermocouple;
use super::prior::PriorStep;
use super::taught::Taught;
use crate::heat::{Leave, MediumChoice, Section};
use crate::soak::StartingStructure;
use crate::steel::{Composition, Grade, find};
use crate::transform::BarPoint;
use recalesce_texts::route::plan as texts;
use serde::{Deserialize, Serialize};

/// The whole thermal route of one piece of steel, as saved and as asked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Route {
    /// What the piece is, in the user's words.
    pub piece: String,
    /// Designation of the grade in the list; none for a composition of the user's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grade: Option<String>,
    /// Composition of the heat, wt %.
    pub composition: Composition,
    /// End-quench test of the heat, where one was made.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub end_quench: Vec<BarPoint>,
    /// Structure of the stock: before hardening, or before the first of the steps before it.
    pub start: StartingStructure,
    /// Steps before hardening, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub prior: Vec<PriorStep>,
    /// Shape and size of the piece.
    pub section: Section,
    /// How far the piece may be from the reading, K, either way, by control and unevenness of the
    /// furnace.
    pub furnace_band_k: f64,
    /// The thermocouple that the furnace goes by.
    #[serde(default, skip_serializing_if = "is_default")]
    pub thermocouple: Thermocouple,
    /// How much hotter the piece is than the furnace reads, K, as a survey has found.
    #[serde(default, skip_serializing_if = "is_default")]
    pub furnace_offset_k: f64,
    /// Soak at hardening temperature.
    pub soak: Soak,
    /// Quench.
    pub quench: Quench,
    /// Cold treatment after the quench, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cold: Option<Cold>,
    /// Tempers, in order.
    #[serde(default)]
    pub tempers: Vec<Temper>,
    /// Hardness that the use asks for.
    pub target: Target,
    /// Seed of the samples that tell how sure the route is: the same one gives the same numbers.
    #[serde(default = "first_seed", skip_serializing_if = "is_first_seed")]
    pub seed: u32,
    /// What earlier runs have taught of it, where it is to be counted with: no part of what is saved.
    #[serde(skip)]
    pub taught: Option<Taught>,
}

impl Route {
    /// The grade of the list that it names; none for a steel of the user's own.
    #[must_use]
    pub fn listed_grade(&self) -> Option<&'static Grade> {
        find(self.grade.as_deref()?).ok()
    }

    /// What it is called until the user names it: the piece and its steel.
    #[must_use]
    pub fn name(&self) -> String {
        let steel = self.grade.as_deref().unwrap_or(texts::OWN_STEEL);
        texts::piece_of_steel(&self.piece, steel)
    }

    /// The route as far as its quench: what follows it, and what it is called, are left out.
    #[must_use]
    pub fn as_far_as_quench(&self) -> Self {
        Self {
            piece: String::new(),
            cold: None,
            tempers: Vec::new(),
            target: Self::example().target,
            seed: first_seed(),
            ..self.clone()
        }
    }
}

/// Soak at hardening temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Soak {
    /// Temperature of the piece, °C.
    pub temperature_c: f64,
    /// Time at temperature, min.
    pub time_min: f64,
}

/// Quench from the soak temperature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Quench {
    /// The quenchant.
    pub medium: MediumChoice,
    /// Factor on the heat transfer of the still bath: 1 is still, 1.6 a good stir.
    #[serde(default = "still")]
    pub agitation: f64,
    /// Time in air between furnace and bath, s.
    #[serde(default)]
    pub air_delay_s: f64,
    /// Temperature to which the piece is left to cool before the next step, °C.
    #[serde(default = "room_c")]
    pub end_c: f64,
    /// Baths after the first, in order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub then: Vec<NextBath>,
}

/// A bath of a quench after the first.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NextBath {
    /// When the piece leaves the bath before.
    pub leave: Leave,
    /// The quenchant.
    pub medium: MediumChoice,
    /// Factor on the heat transfer of the still bath.
    #[serde(default = "still")]
    pub agitation: f64,
}

pub(super) const fn first_seed() -> u32 {
    1
}

#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde asks by reference")]
const fn is_first_seed(seed: &u32) -> bool {
    *seed == first_seed()
}

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

const fn still() -> f64 {
    1.0
}

const fn room_c() -> f64 {
    20.0
}

/// Cold treatment between quench and temper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cold {
    /// Temperature of the cold bath, °C.
    pub temperature_c: f64,
    /// Time in the bath, min.
    pub time_min: f64,
    /// Time at room temperature between quench and cold bath, min, with that before and after a snap
    /// temper.
    pub delay_min: f64,
    /// A short, low temper between quench and cold bath, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub snap: Option<Temper>,
}

/// One temper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Temper {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Time at temperature, min.
    pub time_min: f64,
}

/// Hardness range that the use asks for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Target {
    /// Lowest acceptable hardness, HRC.
    pub least_hrc: f64,
    /// Highest acceptable hardness, HRC.
    pub most_hrc: f64,
}
