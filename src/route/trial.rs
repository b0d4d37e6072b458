//! A trial: what a route comes to where something is off from the plan, as numbers alone. It leaves
//! out margins over other quenchants, charts and sentences, and goes by stages, so that what many
//! trials share is computed once: the steel, a soak temperature, a quench.

use super::allowed::{RouteFieldError, allowed};
use super::baths::Baths;
use super::error::RouteError;
use super::hardening::{Hardening, KineticsOff};
use super::outcome::{Stage, Step};
use super::plan::{Cold, Quench, Route, Temper};
use super::prior::stock_before_soak;
use super::quenched::{Finished, Judged, QuenchedPiece, bath_at_ms};
use super::validate::validate;
use super::verdict::HARDENED;
use crate::hardness::Hardness;
use crate::heat::{AGITATION, Quenching, Section};
use crate::soak::{Hold, SoakEnd, SoakPoint, Stock};
use crate::steel::Composition;
use crate::transform::LARGEST_MS_OFF_K;
use recalesce_texts::route::fields as texts;
use serde::{Deserialize, Serialize};

/// How far a piece is from what was planned, and the models from the truth. Nothing is off by
/// default.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Deviation {
    /// The piece in the soak hotter than planned, K: -300 to 300.
    pub soak_k: f64,
    /// The piece in every temper hotter than planned, K: -300 to 300.
    pub temper_k: f64,
    /// The piece thicker than planned, mm: -50 to 50; every thickness of a blade.
    pub thickness_mm: f64,
    /// Factor on the heat transfer of every bath: 0.01 to 100.
    pub heat_transfer_factor: f64,
    /// Factor on the times at which ferrite, pearlite and bainite form: 0.01 to 100.
    pub nose_time_factor: f64,
    /// Starts of martensite above the model's, K: -200 to 200.
    pub ms_k: f64,
    /// Hardness before the first temper above the model's, HRC: -30 to 30.
    pub quenched_hrc: f64,
    /// Hardness after a temper above the model's, HRC: -30 to 30.
    pub tempered_hrc: f64,
}

impl Default for Deviation {
    fn default() -> Self {
        Self {
            soak_k: 0.0,
            temper_k: 0.0,
            thickness_mm: 0.0,
            heat_transfer_factor: 1.0,
            nose_time_factor: 1.0,
            ms_k: 0.0,
            quenched_hrc: 0.0,
            tempered_hrc: 0.0,
        }
    }
}

impl Deviation {
    /// Puts into the hardness after a step what that of the models is off by.
    pub(super) fn enter(&self, stage: &mut Stage) {
        let off_hrc = match stage.step {
            Step::Temper(_) => self.tempered_hrc,
            Step::Soak | Step::Quench | Step::Snap | Step::Cold => self.quenched_hrc,
        };
        stage.hardness = stage.hardness.map(|hardness| harder(hardness, off_hrc));
    }

    /// Checks that every number is one that a piece or a model may be off by; see the fields for the
    /// ranges.
    ///
    /// # Errors
    /// The first that is not a number or out of range, with what is allowed.
    pub fn check(&self) -> Result<(), RouteFieldError> {
        const KELVIN: (f64, f64) = (-300.0, 300.0);
        const FACTOR: (f64, f64) = (0.01, 100.0);
        const HRC: (f64, f64) = (-30.0, 30.0);
        allowed("soak_k", texts::SOAK_OFF, KELVIN, "K").check(self.soak_k)?;
        allowed("temper_k", texts::TEMPERS_OFF, KELVIN, "K").check(self.temper_k)?;
        allowed("thickness_mm", texts::THICKNESS_OFF, (-50.0, 50.0), "mm")
            .check(self.thickness_mm)?;
        allowed(
            "heat_transfer_factor",
            texts::HEAT_TRANSFER_FACTOR,
            FACTOR,
            "",
        )
        .check(self.heat_transfer_factor)?;
        allowed("nose_time_factor", texts::NOSE_TIME_FACTOR, FACTOR, "")
            .check(self.nose_time_factor)?;
        let ms_k = (-LARGEST_MS_OFF_K, LARGEST_MS_OFF_K);
        allowed("ms_k", texts::MARTENSITE_START_OFF, ms_k, "K").check(self.ms_k)?;
        allowed("quenched_hrc", texts::QUENCHED_HARDNESS_OFF, HRC, "HRC")
            .check(self.quenched_hrc)?;
        allowed("tempered_hrc", texts::TEMPERED_HARDNESS_OFF, HRC, "HRC").check(self.tempered_hrc)
    }
}

/// What a trial comes to at the place that decides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Trial {
    /// Carbon in solution, carbide, ferrite and grain when the piece leaves the furnace.
    pub soak: SoakPoint,
    /// Constituents and hardness after each step from the quench on, as far as the models reach.
    /// Their bands are those of the models alone.
    pub stages: Vec<Stage>,
    /// Factor by which the whole quench may be slower and still harden; see
    /// [`super::Margin::factor`].
    pub margin_factor: Option<f64>,
    /// The bath in which the place passes Ms, counted from zero: what comes later does not count for the margin.
    pub bath_at_ms: usize,
}

impl Trial {
    /// The piece as quenched, where the models reach.
    #[must_use]
    pub fn quenched(&self) -> Option<&Stage> {
        self.stages.iter().find(|stage| stage.step == Step::Quench)
    }

    /// The piece after the last step of the route of this trial; see [`finished_stage`].
    #[must_use]
    pub fn finished(&self, route: &Route) -> Option<&Stage> {
        finished_stage(&self.stages, route.cold.as_ref(), &route.tempers)
    }
}

/// Of the stages of a piece the one after the last step of its route. None where a model refuses
/// that step or the cold bath before it: an earlier stage is not the finished piece.
#[must_use]
pub fn finished_stage<'a>(
    stages: &'a [Stage],
    cold: Option<&Cold>,
    tempers: &[Temper],
) -> Option<&'a Stage> {
    let last = match (tempers.len(), cold) {
        (0, None) => Step::Quench,
        (0, Some(_)) => Step::Cold,
        (count, _) => Step::Temper(count),
    };
    let has_cold = stages.iter().any(|stage| stage.step == Step::Cold);
    stages
        .last()
        .filter(|stage| stage.step == last && has_cold == cold.is_some())
}

/// One heat of steel in the structure in which it goes into the soak: what all trials of it share.
#[derive(Debug, Clone)]
pub struct TrialSteel {
    composition: Composition,
    stock: Stock,
    off: KineticsOff,
}

impl TrialSteel {
    /// The steel of a route, after its steps before hardening.
    ///
    /// # Errors
    /// A route that makes no sense, or a steel that the equilibrium does not cover.
    pub fn of(route: &Route) -> Result<Self, RouteError> {
        validate(route)?;
        Ok(Self {
            composition: route.composition,
            stock: stock_before_soak(route)?,
            off: KineticsOff::of_heat(&route.composition, &route.end_quench),
        })
    }

    /// Another heat in the same structure: what steps before hardening do to it is not gone through
    /// again. An end-quench test counts for it too.
    ///
    /// # Errors
    /// A composition that the equilibrium does not cover.
    pub fn another_heat(&self, heat: &Composition) -> Result<Self, RouteError> {
        Ok(Self {
            composition: *heat,
            stock: Stock::new(heat, *self.stock.structure())?,
            off: self.off,
        })
    }

    /// What it consists of, wt %.
    #[must_use]
    pub const fn composition(&self) -> &Composition {
        &self.composition
    }

    /// The steel at the true temperature of a soak, °C, for as many times as are asked.
    ///
    /// # Errors
    /// A temperature below A1, or one that the equilibrium does not cover.
    pub fn at(&self, temperature_c: f64) -> Result<Hold<'_>, RouteError> {
        Ok(self.stock.at(temperature_c)?)
    }

    /// Quenches a section that has left a soak at its true temperature, °C. Off by so much that it
    /// would be beyond the sizes or the agitation that the heat model covers, it is taken as at the
    /// end of them.
    ///
    /// # Errors
    /// A deviation that [`Deviation::check`] refuses, a quenchant that is not in the list, or a quench that the heat model does not cover. A steel
    /// that the transformation models do not cover is still cooled.
    pub fn quench(
        &self,
        soaked: &SoakEnd,
        temperature_c: f64,
        section: Section,
        quench: &Quench,
        deviation: &Deviation,
    ) -> Result<QuenchedTrial, RouteError> {
        deviation.check()?;
        let factor = deviation.heat_transfer_factor;
        // The few pieces beyond what the heat model covers are taken as at its ends.
        let stirred = |agitation: f64| (agitation * factor).clamp(AGITATION.0, AGITATION.1);
        let mut baths = Baths::of(quench)?;
        for later in &mut baths.later {
            later.agitation = stirred(later.agitation);
        }
        let off = self.off.with(deviation);
        let hardening = Hardening::off_by(&soaked.point, &soaked.dissolved, quench.end_c, &off);
        let cooling = Cooling {
            section: section.thicker_by(deviation.thickness_mm).within_covered(),
            agitation: stirred(quench.agitation),
            start_c: temperature_c,
            air_delay_s: quench.air_delay_s,
            end_c: quench.end_c,
        };
        let piece = QuenchedPiece::of(hardening, &cooling.in_baths(&baths))?;
        Ok(QuenchedTrial {
            steel: self.composition,
            baths,
            cooling,
            piece,
        })
    }

    /// The trial of a route with this steel: its own composition counts.
    ///
    /// # Errors
    /// As [`Deviation::check`], [`Self::at`] and [`Self::quench`]; a soak time outside 0 to two
    /// days.
    pub fn trial(&self, route: &Route, deviation: &Deviation) -> Result<Trial, RouteError> {
        deviation.check()?;
        let temperature_c = route.soak.temperature_c + deviation.soak_k;
        let soaked = self.at(temperature_c)?.end(60.0 * route.soak.time_min)?;
        let quenched = self.quench(
            &soaked,
            temperature_c,
            route.section,
            &route.quench,
            deviation,
        )?;
        Ok(Trial {
            soak: soaked.point,
            stages: quenched.finish(route.cold.as_ref(), &route.tempers, deviation),
            margin_factor: quenched.margin_factor(),
            bath_at_ms: quenched.bath_at_ms(),
        })
    }
}

/// The trial of a route.
///
/// # Errors
/// As [`super::run`].
pub fn trial(route: &Route, deviation: &Deviation) -> Result<Trial, RouteError> {
    TrialSteel::of(route)?.trial(route, deviation)
}

/// How a piece cools, but for its baths.
#[derive(Debug, Clone, Copy)]
struct Cooling {
    section: Section,
    agitation: f64,
    start_c: f64,
    air_delay_s: f64,
    end_c: f64,
}

impl Cooling {
    fn in_baths(self, baths: &Baths) -> Quenching<'_> {
        Quenching {
            section: self.section,
            medium: &baths.first,
            agitation: self.agitation,
            start_c: self.start_c,
            air_delay_s: self.air_delay_s,
            end_c: self.end_c,
            then: &baths.later,
            martensite_start_c: None,
        }
    }
}

/// A piece out of its quench: for any cold bath and any tempers.
pub struct QuenchedTrial {
    steel: Composition,
    baths: Baths,
    cooling: Cooling,
    piece: QuenchedPiece,
}

impl QuenchedTrial {
    /// Factor by which the whole quench may be slower and still harden; none where the models do
    /// not reach. Where something has formed on the way the piece is cooled once more for it.
    #[must_use]
    pub fn margin_factor(&self) -> Option<f64> {
        let QuenchedPiece {
            hardening: Ok(hardening),
            cooled,
            quenched: Ok(Some(quenched)),
        } = &self.piece
        else {
            return None;
        };
        let kinetics = hardening.kinetics();
        let judged = Judged::of(
            &self.cooling.in_baths(&self.baths),
            &self.baths,
            kinetics,
            cooled,
            cooled.slowest()?,
            &quenched.fractions,
        );
        let curve = judged.deciding()?;
        kinetics
            .slowest_factor(&curve.time_s, &curve.temperature_c, HARDENED)
            .ok()
    }

    /// The bath in which the place that decides passes Ms, counted from zero; the last where the models do not
    /// reach.
    #[must_use]
    pub fn bath_at_ms(&self) -> usize {
        let QuenchedPiece {
            hardening, cooled, ..
        } = &self.piece;
        let deciding = hardening.as_ref().ok().zip(cooled.slowest());
        deciding.map_or(self.baths.later.len(), |(hardening, curve)| {
            bath_at_ms(cooled, curve, hardening.kinetics().ms_c())
        })
    }

    /// Constituents and hardness after the quench, a cold bath and tempers, as far as the models
    /// reach.
    #[must_use]
    pub fn finish(
        &self,
        cold: Option<&Cold>,
        tempers: &[Temper],
        deviation: &Deviation,
    ) -> Vec<Stage> {
        let off = |temper: Temper| Temper {
            temperature_c: temper.temperature_c + deviation.temper_k,
            ..temper
        };
        let quenched = self.piece.quenched.as_ref().ok().and_then(Option::as_ref);
        let chilled = cold
            .zip(quenched)
            .zip(self.piece.hardening.as_ref().ok())
            .and_then(|((cold, quenched), hardening)| {
                let cold = Cold {
                    snap: cold.snap.map(off),
                    ..*cold
                };
                hardening.cold(&self.steel, quenched, &cold).ok()
            });
        let tempers: Vec<Temper> = tempers.iter().copied().map(off).collect();
        let mut stages = Finished::of(&self.steel, quenched, chilled.as_ref(), &tempers).stages;
        for stage in &mut stages {
            deviation.enter(stage);
        }
        stages
    }
}

fn harder(hardness: Hardness, by_hrc: f64) -> Hardness {
    // There and back changes the last bits.
    if by_hrc == 0.0 {
        return hardness;
    }
    Hardness::from_hrc_carried(hardness.hrc_carried() + by_hrc)
}

#[cfg(test)]
#[path = "trial_tests.rs"]
mod tests;
