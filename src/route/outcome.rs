//! What a route comes to: every number that the page, the terminal and the card show.

use super::caution_words::Caution;
use super::furnace_ends::swing_hrc;
use super::known::Known;
use super::margin::{Margin, Neighbour};
use super::outside::Outside;
use super::places::PlaceOutcome;
use super::prior::{PieceState, PriorOutcome};
use super::verdict::HARDENED;
use crate::hardness::Hardness;
use crate::heat::{CoolingCurve, Heating, MediumTitle, Place};
use crate::phases::CriticalTemperatures;
use crate::soak::{BoundaryCarbide, Skin, SoakOutcome};
use crate::transform::{Fractions, Isothermal};
use crate::units::format_fixed;
use serde::{Deserialize, Serialize};

/// Where the sides of a band differ by twice so much, HRC, it is told by its ends.
pub(crate) const UNEVEN_HRC: f64 = 0.25;

/// The whole outcome of a route.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Outcome {
    /// A1, A3 or Acm of the steel.
    pub critical: CriticalTemperatures,
    /// The stock before the first step, where there are steps before hardening.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock: Option<PieceState>,
    /// What each step before hardening does, in order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub prior: Vec<PriorOutcome>,
    /// Heating up to the soak in a furnace that is at temperature.
    pub heating: Heating,
    /// Soak: carbon dissolved, carbide left, grain.
    pub soak: SoakOutcome,
    /// What air does to the surface from going in to coming out, unprotected.
    pub skin: Known<Skin>,
    /// What the furnace's band makes of the soak.
    pub furnace: FurnaceBand,
    /// Quench: cooling curves, and what forms on them.
    pub quench: QuenchOutcome,
    /// Cold treatment, as planned or, when none is planned, as it would be at −75 °C.
    pub cold: Known<ColdOutcome>,
    /// Constituents and hardness after each step, in order.
    pub stages: Vec<Stage>,
    /// The same of what is reached from outside, of a piece that does not harden through.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside: Option<Outside>,
    /// Hardness against tempering temperature for the planned time and number of tempers, where the target is
    /// laid against it.
    pub temper: Known<TemperOutcome>,
    /// What moves the final hardness that the target is laid against, one thing at a time.
    pub influences: Vec<Influence>,
    /// What can go wrong or hurt, in the order of the route.
    pub cautions: Vec<Caution>,
}

impl Outcome {
    /// Widens the band of each hardness by what the furnace's band does to the quenched hardness.
    pub(super) fn widen_by_furnace(&mut self) {
        let mut stages = self.stages.iter();
        let quenched = stages.find(|stage| stage.step == Step::Quench);
        let Some(quenched) = quenched.and_then(|stage| stage.hardness) else {
            return;
        };
        let swing_hrc = self.furnace.swing_hrc(quenched);
        for stage in &mut self.stages {
            stage.widen_by_furnace(swing_hrc);
        }
    }
}

/// How much one change moves the final hardness.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Influence {
    /// What is changed.
    pub kind: InfluenceKind,
    /// Change of the final hardness with less of it, HRC.
    pub less_hrc: Option<f64>,
    /// Change of the final hardness with more of it, HRC.
    pub more_hrc: Option<f64>,
}

/// A change to a route.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "change", rename_all = "snake_case")]
pub enum InfluenceKind {
    /// All tempers cooler or hotter.
    TemperTemperature {
        /// By how much, K.
        step_k: f64,
    },
    /// The cold bath left out.
    NoCold,
    /// The section thicker.
    Thickness {
        /// By how much, mm.
        step_mm: f64,
    },
    /// The furnace at the ends of its band.
    Furnace {
        /// By how much, K.
        step_k: f64,
    },
    /// A shorter or longer soak.
    SoakTime {
        /// By how much, min.
        step_min: f64,
    },
}

/// The soak at the two ends of the furnace's band, and the austenite that each would leave.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FurnaceBand {
    /// What the furnace has to read, °C.
    pub set_point_c: f64,
    /// Coldest that the piece may be, °C.
    pub coldest_c: f64,
    /// Hottest that the piece may be, °C.
    pub hottest_c: f64,
    /// Carbon in solution at the coldest, wt % of the austenite; none when nothing dissolves.
    pub carbon_at_coldest_wt: Option<f64>,
    /// Carbon in solution at the hottest, wt % of the austenite.
    pub carbon_at_hottest_wt: Option<f64>,
    /// What of the deciding place hardens after the coldest soak, as a fraction of all but carbide, with
    /// bainite; 0 when nothing dissolves.
    pub hardened_at_coldest: f64,
    /// Hardness as quenched after the coldest soak, HRC, carried on below 20; none when nothing dissolves
    /// or the models do not reach.
    pub hrc_at_coldest: Option<f64>,
    /// Hardness as quenched after the hottest soak, HRC, carried on below 20.
    pub hrc_at_hottest: Option<f64>,
    /// Austenite left after the quench at the hottest, volume fraction.
    pub austenite_at_hottest: Option<f64>,
}

impl FurnaceBand {
    /// How far either end of the furnace's band moves a hardness as quenched, HRC.
    pub(super) fn swing_hrc(&self, quenched: Hardness) -> f64 {
        let ends = [self.hrc_at_coldest, self.hrc_at_hottest];
        swing_hrc(ends, quenched.hrc_carried())
    }
}

/// What the quench does.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct QuenchOutcome {
    /// Name of the quenchant for sentences.
    pub medium_title: MediumTitle,
    /// Cooling curves of the places of the section.
    pub curves: Vec<CoolingCurve>,
    /// Times at which it goes into a later bath, s from leaving the furnace.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub changes_s: Vec<f64>,
    /// Index of the curve that decides: the slowest place.
    pub deciding: usize,
    /// Transformation of that place, or why the models give none.
    pub transformed: Known<QuenchTransformed>,
}

/// Transformation at the place that decides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct QuenchTransformed {
    /// Isothermal curves of the austenite that left the furnace.
    pub isothermal: Isothermal,
    /// Start of martensite, °C.
    pub ms_c: f64,
    /// What the martensite of the deciding place tempers on the way down, HRC; none outside the law
    /// of tempering.
    pub auto_tempered_hrc: Option<f64>,
    /// Half of the austenite is martensite, °C.
    pub m50_c: f64,
    /// Nine tenths of the austenite are martensite, °C.
    pub m90_c: f64,
    /// Constituents at the end of the quench.
    pub fractions: Fractions,
    /// Martensite and retained austenite as a fraction of what was austenite: 1 is hardened through.
    pub hardened_fraction: f64,
    /// The bath in which the deciding place passes Ms, counted from zero.
    pub bath_at_ms: usize,
    /// Temperature of the bath above Ms in which the piece is held for bainite, °C, if any: bainite
    /// then counts as hardened, and the margin is that of the arrival in the bath.
    pub held_c: Option<f64>,
    /// How the verdict stands.
    pub margin: Margin,
    /// The same place in the next slower quenchant of the list.
    pub next_slower: Option<Neighbour>,
    /// The slowest quenchant of the list that still hardens this section.
    pub slowest_medium: Option<Neighbour>,
    /// The thickest section of this shape that this quench still hardens, mm.
    pub thickest_mm: Option<f64>,
    /// How far it hardens, mm: in a blade from the edge up, else from the surface inwards.
    pub hardened_depth_mm: Option<f64>,
    /// Every place with a name, in the order of the cooling curves.
    pub places: Vec<PlaceOutcome>,
    /// Carbide that comes out on the grain boundaries of the deciding place on its way down.
    pub boundary_carbide: BoundaryCarbide,
}

/// What a cold treatment does.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ColdOutcome {
    /// Whether the route has this cold step, or it is only what one would do.
    pub is_planned: bool,
    /// Temperature of the bath, °C.
    pub temperature_c: f64,
    /// Retained austenite right before, volume fraction.
    pub austenite_before: f64,
    /// Retained austenite after, volume fraction.
    pub austenite_after: f64,
    /// Gain in hardness, HRC.
    pub gain_hrc: f64,
    /// Austenite that each further minute of waiting before the bath keeps, volume fraction, in the
    /// mean of the next ten.
    pub austenite_lost_per_min: f64,
    /// Hardness that each further minute of waiting costs, HRC, in the mean of the next ten.
    pub gain_lost_hrc_per_min: f64,
    /// Whether it changes the piece, as tempered, by more than a tester can see.
    pub is_worth_it: bool,
    /// Whether the tempers leave what it changes, where that is more than a tester can see.
    pub is_kept: bool,
    /// About how long the core of the piece takes to be as cold as the bath, min.
    pub core_cold_min: f64,
    /// What the snap temper before it costs, if one is planned.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub snap: Option<SnapOutcome>,
}

/// What a snap temper before the cold costs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SnapOutcome {
    /// Temperature of the snap temper, °C.
    pub temperature_c: f64,
    /// Time at temperature, min.
    pub time_min: f64,
    /// Retained austenite after the cold bath without it, volume fraction.
    pub austenite_without: f64,
    /// Between which it is with it, volume fraction: how far a warm stay stabilises is known as a
    /// trend only.
    pub austenite_between: [f64; 2],
    /// Hardness that it takes before the cold, HRC.
    pub takes_hrc: f64,
}

/// A step of the route with what the piece is after it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stage {
    /// Which step.
    pub step: Step,
    /// Constituents of the deciding place.
    pub fractions: Option<Fractions>,
    /// Hardness of the deciding place.
    pub hardness: Option<Hardness>,
    /// Half width of the band that covers nine in ten, HRC.
    pub band_hrc: f64,
    /// How far the middle of the band lies above the hardness, HRC: a place that may harden only in part has
    /// farther to fall than to rise.
    pub band_off_hrc: f64,
    /// How much softer and how much harder what is open about the quench may leave such a place, HRC.
    pub quench_swing_hrc: [f64; 2],
}

impl Stage {
    /// Its hardness, HRC; none where it is unknown or below the scale.
    #[must_use]
    pub fn hrc(&self) -> Option<f64> {
        self.hardness?.hrc()
    }

    /// Between which hardness it is nine times in ten, HRC: from 0, where the scale carried on below 20 begins,
    /// to 68, where it ends.
    #[must_use]
    pub fn hrc_range(&self) -> Option<[f64; 2]> {
        let hrc = self.hardness?.hrc_carried();
        Some(hrc_range(hrc, self.band_hrc, self.band_off_hrc))
    }

    /// How far the band reaches below and above the hardness, HRC.
    #[must_use]
    pub fn sides_hrc(&self) -> [f64; 2] {
        [
            self.band_hrc - self.band_off_hrc,
            self.band_hrc + self.band_off_hrc,
        ]
    }

    /// The band in short: a half width where both sides are alike, else from where to where.
    #[must_use]
    pub fn band_words(&self) -> String {
        match self.hrc_range() {
            Some([least, most]) if self.band_off_hrc.abs() >= UNEVEN_HRC => {
                format!(
                    "{}\u{2013}{}",
                    format_fixed(least, 0),
                    format_fixed(most, 0)
                )
            }
            _ => format!("±{}", format_fixed(self.band_hrc, 1)),
        }
    }

    /// Widens the band of a hardness by what the furnace's band does to it as quenched: the two are independent,
    /// so they add in quadrature.
    pub(super) fn widen_by_furnace(&mut self, swing_hrc: f64) {
        if self.hardness.is_some() {
            self.band_hrc = self.band_hrc.hypot(swing_hrc);
        }
    }

    /// Widens the band by how much softer and harder the place may be, HRC, independently of the rest.
    pub(super) fn widen_by_quench(&mut self, swing_hrc: [f64; 2]) {
        let [below, above] = swing_hrc.map(|swing| self.band_hrc.hypot(swing));
        self.band_hrc = 0.5 * (below + above);
        self.band_off_hrc = 0.5 * (above - below);
        self.quench_swing_hrc = swing_hrc;
    }

    /// The piece after the soak: austenite with what it stands beside.
    pub(super) fn after_soak(soaked: &SoakOutcome) -> Self {
        let end = &soaked.end;
        Self {
            step: Step::Soak,
            fractions: Some(Fractions {
                ferrite: end.ferrite_volume_fraction,
                carbide: end.carbide_volume_fraction,
                austenite: 1.0 - end.ferrite_volume_fraction - end.carbide_volume_fraction,
                ..Fractions::default()
            }),
            hardness: None,
            band_hrc: 0.0,
            band_off_hrc: 0.0,
            quench_swing_hrc: [0.0; 2],
        }
    }
}

/// The ends of a band of a half width about a middle that lies so far above a hardness, HRC, on the scale as it is
/// carried on.
pub(crate) fn hrc_range(hrc: f64, half_hrc: f64, off_hrc: f64) -> [f64; 2] {
    let middle_hrc = hrc + off_hrc;
    [middle_hrc - half_hrc, middle_hrc + half_hrc]
        .map(|hrc| Hardness::from_hrc_carried(hrc).hrc_carried())
}

impl QuenchOutcome {
    /// The place that is told, where places differ in hardness: the one that decides, if it does not harden.
    #[must_use]
    pub fn named_place(&self) -> Option<Place> {
        let transformed = self.transformed.given()?;
        let is_soft = transformed.hardened_fraction < HARDENED;
        Some(self.deciding_curve().filter(|_| is_soft)?.place)
    }

    /// The curve of the place that decides.
    #[must_use]
    pub fn deciding_curve(&self) -> Option<&CoolingCurve> {
        self.curves.get(self.deciding)
    }
}

impl TemperPoint {
    /// Between which hardness it is nine times in ten, HRC, as [`Stage::hrc_range`].
    #[must_use]
    pub fn hrc_range(&self) -> [f64; 2] {
        hrc_range(self.hrc, self.band_hrc, self.band_off_hrc)
    }
}

impl TemperOutcome {
    /// Hardness of the chart at a temperature, HRC, straight between its points; none outside.
    #[must_use]
    pub fn hrc_at(&self, temperature_c: f64) -> Option<f64> {
        let after = self
            .curve
            .partition_point(|point| point.temperature_c < temperature_c);
        let right = self.curve.get(after)?;
        let Some(left) = after.checked_sub(1).and_then(|i| self.curve.get(i)) else {
            return (right.temperature_c == temperature_c).then_some(right.hrc);
        };
        let part =
            (temperature_c - left.temperature_c) / (right.temperature_c - left.temperature_c);
        Some(left.hrc + part * (right.hrc - left.hrc))
    }
}

/// A step of the route.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// Soak at hardening temperature.
    Soak,
    /// Quench.
    Quench,
    /// Snap temper before the cold treatment.
    Snap,
    /// Cold treatment.
    Cold,
    /// Temper, counted from 1.
    Temper(usize),
}

/// The temper chart.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TemperOutcome {
    /// Hardness of the martensite before the first temper, HRC.
    pub start_hrc: f64,
    /// Points of the curve by rising temperature: °C, HRC, half width of the band in HRC.
    pub curve: Vec<TemperPoint>,
    /// Range in which tempering embrittles, °C.
    pub embrittling_c: [f64; 2],
    /// Temperatures at which the curve meets the middle of the target, °C, those outside the
    /// embrittling range first.
    pub meets_target_c: Vec<f64>,
    /// Time of each temper that meets it at the planned temperature, s.
    pub meets_target_s: Option<f64>,
}

/// One point of the temper chart.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct TemperPoint {
    /// Tempering temperature, °C.
    pub temperature_c: f64,
    /// Hardness after all tempers at that temperature, HRC.
    pub hrc: f64,
    /// Half width of the band, HRC.
    pub band_hrc: f64,
    /// How far the middle of the band lies above the hardness, HRC.
    pub band_off_hrc: f64,
}
