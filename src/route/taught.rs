//! What earlier runs have taught of the furnace, the quenchant and the heat of a route: counted with
//! only where it is put to the route, which nothing does by itself.

use super::furnace::Thermocouple;
use super::outcome::{Stage, Step};
use super::plan::{Route, Temper};
use super::trial::Deviation;
use super::validate::{FURNACE_OFFSET_K, SNAP_C, SOAK_C, TEMPER_C};
use crate::heat::AGITATION;
use std::borrow::Cow;

/// What runs have taught of the pieces of a route.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Taught {
    /// How far the pieces are from the plan, and the models from the pieces, most probably.
    pub off: Deviation,
    /// What is left of what was open.
    pub left: Left,
    /// Of which tempers the hardness after a temper was learnt; none where it acts on all alike.
    tempered: Option<Tempered>,
    /// How much hotter than asked its hottest temper was made, K: what [`Route::as_taught`] has moved.
    /// The chart of the tempers is drawn over what is asked.
    moved_tempers_k: f64,
}

/// Parts of the bands that are left, 0 to 1: 1 is all of it. Of a factor that of its logarithm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// Of the furnace's band.
    pub furnace: f64,
    /// Of the tolerance of its thermocouple.
    pub thermocouple: f64,
    /// Of the band of the quenchant.
    pub heat_transfer: f64,
    /// Of the model's time of the nose.
    pub nose: f64,
    /// Of the model's start of martensite.
    pub ms: f64,
    /// Of the model's hardness before the first temper.
    pub quenched: f64,
    /// Of the band of the tempers.
    pub temper: f64,
    /// Of the model's hardness after a temper.
    pub tempered: f64,
}

impl Default for Left {
    fn default() -> Self {
        Self {
            furnace: 1.0,
            thermocouple: 1.0,
            heat_transfer: 1.0,
            nose: 1.0,
            ms: 1.0,
            quenched: 1.0,
            temper: 1.0,
            tempered: 1.0,
        }
    }
}

impl Left {
    /// What is left of the band of a factor.
    pub(super) fn of_factor(band_factor: f64, part: f64) -> f64 {
        // A power of one may change the last bit.
        if part == 1.0 {
            return band_factor;
        }
        band_factor.powf(part)
    }
}

/// Distance from the tempers that taught it over which what was learnt of the hardness after a temper
/// fades, K. So do the model's errors of one heat at two tempers in the data that it was fitted to
/// ([`crate::sources::tempering_stages`], 30 min to 4 h, without the rows that count half, 383 of 24
/// heats): of what they have in common at one temperature 0.7 is left 50 K away, 0.4 at 100 K and still
/// 0.37 at 150 K (`tests/hardness.rs`). What is left from there on is not counted, which leaves the band
/// rather too wide.
const FADES_OVER_K: f64 = 150.0;

/// What was learnt of the hardness after a temper, and of which tempers.
///
/// Between these it acts whole. Outside, the error of the model there is taken to go with the one that
/// was learnt the less the farther it is, and not at all from [`FADES_OVER_K`] on: of the learnt error
/// that part is counted, and of the band what the rest leaves open. Of two tempers the hotter decides
/// the hardness, so a route goes by its hottest. Soaks have no such range: a steel is soaked in a
/// window of some tens of kelvin, and what its furnace is off by is asked by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tempered {
    /// Hardness above the model's, HRC.
    pub off_hrc: f64,
    /// Part of the band that is left, 0 to 1.
    pub left: f64,
    /// From the coolest to the hottest, as asked, °C.
    pub tempers_c: [f64; 2],
}

impl Tempered {
    /// Part of what was learnt of tempers that acts on one, as asked, 0 to 1.
    #[must_use]
    pub fn part_at([least_c, most_c]: [f64; 2], temper_c: f64) -> f64 {
        let away_k = (least_c - temper_c).max(temper_c - most_c).max(0.0);
        (1.0 - away_k / FADES_OVER_K).max(0.0)
    }
}

impl Taught {
    /// The same for a route whose hottest temper is as hot as that, as asked, °C.
    pub(super) fn at(mut self, temper_c: f64) -> Self {
        if let Some(tempered) = &self.tempered {
            let part = Tempered::part_at(tempered.tempers_c, temper_c);
            self.off.tempered_hrc = part * tempered.off_hrc;
            self.left.tempered = (1.0 - part * part * (1.0 - tempered.left.powi(2))).sqrt();
        }
        self
    }

    /// The same for a piece whose hottest temper is made as hot as that, °C.
    pub(super) fn as_made_at(self, temper_c: f64) -> Self {
        let asked_c = temper_c - self.moved_tempers_k;
        self.at(asked_c)
    }

    /// The same for a route with these tempers, as asked; none where nothing of it acts there.
    #[must_use]
    pub fn of_tempers(self, tempers: &[Temper]) -> Option<Self> {
        let here =
            hottest_temper_c(tempers).map_or(self, |hottest_temper_c| self.at(hottest_temper_c));
        let is_none = (here.off, here.left) == (Deviation::default(), Left::default());
        (!is_none).then_some(here)
    }

    /// The same where the hardness after a temper was learnt of some tempers.
    #[must_use]
    pub const fn within(self, tempered: Tempered) -> Self {
        Self {
            tempered: Some(tempered),
            ..self
        }
    }

    /// Puts into the hardness after a step, with the models' band, what runs have taught of it: how
    /// far off it is, and how much of the band is left. What else may be off about the step, HRC, is
    /// as open as before.
    pub(super) fn enter(&self, stage: &mut Stage, open_hrc: f64) {
        self.off.enter(stage);
        let (part, open_hrc) = match stage.step {
            Step::Temper(_) => (self.left.tempered, open_hrc),
            Step::Cold | Step::Snap => (self.left.quenched, open_hrc),
            Step::Soak | Step::Quench => (self.left.quenched, 0.0),
        };
        stage.band_hrc = narrowed(stage.band_hrc, part, open_hrc);
    }

    /// What is off by `off`, with what is left of the bands.
    #[must_use]
    pub const fn new(off: Deviation, left: Left) -> Self {
        Self {
            off,
            left,
            tempered: None,
            moved_tempers_k: 0.0,
        }
    }
}

/// The hottest of some tempers, °C; none where there is none.
#[must_use]
pub fn hottest_temper_c(tempers: &[Temper]) -> Option<f64> {
    let all = tempers.iter().map(|temper| temper.temperature_c);
    all.reduce(f64::max)
}

/// A band of which a part is left but for what is open beside it.
pub(super) fn narrowed(band_hrc: f64, part: f64, open_hrc: f64) -> f64 {
    if part == 1.0 {
        return band_hrc;
    }
    let of_model = band_hrc.powi(2) - open_hrc.powi(2);
    (part * of_model.max(0.0).sqrt()).hypot(open_hrc)
}

impl Route {
    /// What earlier runs have taught of it; nothing off and all open where nothing is put to it.
    #[must_use]
    pub fn taught(&self) -> Taught {
        self.taught.unwrap_or_default()
    }

    /// How much hotter than asked its hottest temper is, K.
    pub(super) fn moved_tempers_k(&self) -> f64 {
        self.taught.map_or(0.0, |taught| taught.moved_tempers_k)
    }

    /// The route as its pieces go through it, by what earlier runs have taught: the soak and the
    /// tempers as hot as they are, the quench as severe as it is, within what a route may have. The
    /// furnace is set as before. Where nothing is put to it, it stays as it is; done again it changes
    /// nothing more.
    #[must_use]
    pub fn as_taught(&self) -> Cow<'_, Self> {
        let Some(taught) = self.taught else {
            return Cow::Borrowed(self);
        };
        let Taught { off, left, .. } = taught;
        let hotter = |temper: &Temper, (least_c, most_c): (f64, f64)| Temper {
            temperature_c: (temper.temperature_c + off.temper_k).clamp(least_c, most_c),
            ..*temper
        };
        let stirred = |agitation: f64| {
            let (least, most) = AGITATION;
            (agitation * off.heat_transfer_factor).clamp(least, most)
        };
        let mut route = self.clone();
        let (least_k, most_k) = FURNACE_OFFSET_K;
        let offset_k = (self.furnace_offset_k + off.soak_k).clamp(least_k, most_k);
        let soak_c = self.soak.temperature_c + (offset_k - self.furnace_offset_k);
        route.soak.temperature_c = soak_c.clamp(SOAK_C.0, SOAK_C.1);
        route.furnace_offset_k += route.soak.temperature_c - self.soak.temperature_c;
        if (left.furnace, left.thermocouple) != (1.0, 1.0) {
            let tolerance_k = self.thermocouple.tolerance_k(route.soak.temperature_c);
            let band_k = left.furnace * self.furnace_band_k;
            route.furnace_band_k = band_k.hypot(left.thermocouple * tolerance_k);
            route.thermocouple = Thermocouple::Checked;
        }
        route.quench.agitation = stirred(self.quench.agitation);
        for bath in &mut route.quench.then {
            bath.agitation = stirred(bath.agitation);
        }
        for temper in &mut route.tempers {
            *temper = hotter(temper, TEMPER_C);
        }
        if let Some(snap) = route.cold.as_mut().and_then(|cold| cold.snap.as_mut()) {
            *snap = hotter(snap, SNAP_C);
        }
        // At the limit of a temper it is less than what is off.
        let hottest_c = |of: &Self| hottest_temper_c(&of.tempers);
        let moved_k = hottest_c(&route).zip(hottest_c(self));
        let moved_k = moved_k.map_or(0.0, |(made_c, asked_c)| made_c - asked_c);
        route.taught = Some(Taught {
            off: Deviation {
                soak_k: 0.0,
                temper_k: 0.0,
                heat_transfer_factor: 1.0,
                ..off
            },
            left: Left {
                furnace: 1.0,
                thermocouple: 1.0,
                ..left
            },
            tempered: taught.tempered,
            moved_tempers_k: taught.moved_tempers_k + moved_k,
        });
        Cow::Owned(route)
    }
}

#[cfg(test)]
#[path = "taught_tests.rs"]
mod tests;
