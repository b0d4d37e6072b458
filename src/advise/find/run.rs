//! The search in slices.

use super::chance::{Heats, Weighed, sample};
use super::nearest::nearest;
use super::options::{Soaking, Tempers, colds, soakings, tempers};
use super::rank::{ranked, trade_off};
use super::{Found, Sought};
use crate::advise::error::AdviseError;
use crate::advise::inputs::Tolerances;
use crate::advise::learn::Correction;
use crate::advise::shop::Shop;
use crate::hardness::embrittling_range_c;
use crate::numeric::order;
use crate::route::{
    Cold, Deviation, Piece, Quench, QuenchedTrial, Route, RouteError, Taught, Temper, Trial,
    TrialSteel, finished_stage, may_crack,
};
use crate::soak::SoakEnd;
use crate::units::TemperatureScale;

/// Quenches that are sampled, and of these the most in one quenchant (expert values).
const MOST_SAMPLED: usize = 12;
const MOST_OF_A_QUENCHANT: usize = 6;
/// Tempers that are weighed with a quench and a cold step (expert value).
const MOST_WEIGHED: usize = 12;

/// A soak and a quench, as planned.
pub(super) struct Upstream {
    pub(super) soaking: usize,
    pub(super) quenchant: usize,
    pub(super) soaked: SoakEnd,
    pub(super) quenched: QuenchedTrial,
    pub(super) margin_factor: Option<f64>,
    pub(super) may_crack: bool,
    /// What runs have taught of it, whatever the tempers that follow.
    pub(super) taught: Option<Taught>,
}

impl Upstream {
    /// What is off about every piece of it, most probably.
    pub(super) fn off(&self) -> Deviation {
        self.taught.unwrap_or_default().off
    }

    /// What runs have taught of it where these tempers follow.
    pub(super) fn taught_with(&self, tempers: &[Temper]) -> Option<Taught> {
        self.taught?.of_tempers(tempers)
    }

    /// A route with this soak and quench, as planned.
    pub(super) fn as_planned(&self, route: &Route) -> Trial {
        let off = self.taught_with(&route.tempers).unwrap_or_default().off;
        let finished = self
            .quenched
            .finish(route.cold.as_ref(), &route.tempers, &off);
        Trial {
            soak: self.soaked.point,
            stages: finished,
            margin_factor: self.margin_factor,
            bath_at_ms: self.quenched.bath_at_ms(),
        }
    }
}

/// A whole route, as planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Choice {
    pub(super) upstream: usize,
    pub(super) cold: usize,
    pub(super) tempers: usize,
    pub(super) hrc: f64,
    /// What nine in ten errors of the model are within, HRC.
    pub(super) band_hrc: f64,
    pub(super) piece: Piece,
    pub(super) time_min: f64,
}

/// A search for routes, a slice at a time: a worker may tell how far it is, show what there is so far,
/// and stop by dropping it.
pub struct FindRun {
    pub(super) piece: Route,
    pub(super) shop: Shop,
    pub(super) sought: Sought,
    pub(super) tolerances: Tolerances,
    /// What a logbook has taught.
    pub(super) correction: Correction,
    pub(super) steel: TrialSteel,
    pub(super) soakings: Vec<Soaking>,
    pub(super) tempers: Vec<Tempers>,
    pub(super) colds: Vec<Option<Cold>>,
    embrittling_c: [f64; 2],
    /// Soak and quenchant of each quench, and how many are done.
    quenches: Vec<(usize, usize)>,
    done: usize,
    pub(super) upstreams: Vec<Upstream>,
    pub(super) choices: Vec<Choice>,
    first_refusal: Option<RouteError>,
    /// Quenches to sample, none until all are computed, and how many are done.
    to_sample: Option<Vec<usize>>,
    sampled: usize,
    pub(super) heats: Heats,
    weighed: Vec<Weighed>,
    /// Scale of the temperatures in what is told.
    pub(super) scale: TemperatureScale,
}

impl FindRun {
    /// Prepares a search.
    ///
    /// # Errors
    /// As [`super::find`], but for what only shows on the way.
    pub fn new(
        piece: &Route,
        shop: &Shop,
        sought: &Sought,
        tolerances: &Tolerances,
        seed: u32,
    ) -> Result<Self, AdviseError> {
        Self::taught(
            piece,
            shop,
            sought,
            tolerances,
            seed,
            &Correction::default(),
        )
    }

    /// The same with what a logbook has taught of the shop, where that is switched on: furnaces have
    /// the offsets that were learnt, and pieces come out as they did.
    ///
    /// # Errors
    /// As [`Self::new`], and a correction with numbers out of range.
    pub fn taught(
        piece: &Route,
        shop: &Shop,
        sought: &Sought,
        tolerances: &Tolerances,
        seed: u32,
        correction: &Correction,
    ) -> Result<Self, AdviseError> {
        correction.check()?;
        let shop = &correction.set_right(shop);
        shop.validate()?;
        sought.limits.check()?;
        tolerances.check()?;
        let piece = Route {
            target: sought.target,
            taught: None,
            ..piece.clone()
        };
        let steel = TrialSteel::of(&piece)?;
        let soakings = soakings(&piece, shop)?;
        let of_soak = |soaking| (0..shop.quenchants.len()).map(move |q| (soaking, q));
        Ok(Self {
            quenches: (0..soakings.len()).flat_map(of_soak).collect(),
            tempers: tempers(shop),
            colds: colds(shop, sought.limits.no_cold),
            embrittling_c: embrittling_range_c(&piece.composition),
            shop: shop.clone(),
            sought: *sought,
            tolerances: *tolerances,
            correction: correction.clone(),
            done: 0,
            upstreams: Vec::new(),
            choices: Vec::new(),
            first_refusal: None,
            to_sample: None,
            sampled: 0,
            heats: Heats::new(seed),
            weighed: Vec::new(),
            scale: TemperatureScale::Celsius,
            piece,
            steel,
            soakings,
        })
    }

    /// The same, telling temperatures on a scale.
    #[must_use]
    pub fn on_scale(self, scale: TemperatureScale) -> Self {
        Self { scale, ..self }
    }

    /// Computes the next slice, some milliseconds; false when all is done.
    pub fn step(&mut self) -> bool {
        if let Some(&(soaking, quenchant)) = self.quenches.get(self.done) {
            if let Err(refusal) = self.quench(soaking, quenchant) {
                self.first_refusal.get_or_insert(refusal);
            }
            self.done += 1;
            return true;
        }
        if self.to_sample.is_none() {
            self.to_sample = Some(self.worth_sampling());
        }
        let next = self
            .to_sample
            .as_ref()
            .and_then(|list| list.get(self.sampled))
            .copied();
        let Some(upstream) = next else { return false };
        let choices = self.choices_of(upstream);
        // What cannot be sampled is left out: it was computed as planned, so this does not happen
        // but at the edge of the models.
        if let Ok(weighed) = sample(self, &choices, &self.heats) {
            self.weighed.extend(weighed);
        }
        self.sampled += 1;
        true
    }

    fn is_sampled(&self) -> bool {
        let list = self.to_sample.as_ref();
        list.is_some_and(|list| self.sampled >= list.len())
    }

    /// Part of the work that is done, about; all where there is nothing to do.
    #[must_use]
    pub fn progress(&self) -> f64 {
        if self.quenches.is_empty() {
            return 1.0;
        }
        let sampling = self.to_sample.as_ref().map_or(MOST_SAMPLED, Vec::len);
        let all = self.quenches.len() + sampling;
        (self.done + self.sampled) as f64 / all as f64
    }

    /// What there is so far.
    ///
    /// # Errors
    /// When no soak and quench of the shop could be computed.
    pub fn so_far(&self) -> Result<Found, AdviseError> {
        if let (true, Some(refusal)) = (self.upstreams.is_empty(), &self.first_refusal) {
            return Err(AdviseError::NoCase {
                cases: self.done,
                first: refusal.to_string(),
            });
        }
        let routes = ranked(self, &self.weighed);
        let is_over = self.is_sampled() && self.done == self.quenches.len();
        let nearest = if routes.is_empty() && is_over {
            nearest(self)
        } else {
            None
        };
        Ok(Found {
            nearest,
            routes,
            trade_off: trade_off(self),
            tried: self.choices.len(),
        })
    }

    /// The quench of the shop in one of its quenchants.
    pub(super) fn quench_in(&self, quenchant: usize) -> Option<Quench> {
        let own = self.shop.quenchants.get(quenchant)?;
        Some(Quench {
            medium: own.medium.clone(),
            agitation: own.agitation,
            then: Vec::new(),
            ..self.piece.quench.clone()
        })
    }

    /// The piece in a soak of the shop, which says by which furnace it goes.
    pub(super) fn piece_in(&self, plan: &Soaking) -> Route {
        Route {
            furnace_band_k: plan.furnace.band_k(),
            furnace_offset_k: plan.furnace.offset_k,
            thermocouple: plan.furnace.thermocouple,
            soak: plan.soak,
            ..self.piece.clone()
        }
    }

    /// What runs have taught of the piece in a soak and a quench, in the furnace of the soak.
    pub(super) fn taught_in(&self, plan: &Soaking, quench: &Quench) -> Option<Taught> {
        let route = Route {
            quench: quench.clone(),
            ..self.piece_in(plan)
        };
        self.correction.taught_in(&self.shop, &plan.furnace, &route)
    }

    fn quench(&mut self, soaking: usize, quenchant: usize) -> Result<(), RouteError> {
        let (Some(plan), Some(quench)) = (self.soakings.get(soaking), self.quench_in(quenchant))
        else {
            return Ok(());
        };
        let taught = self.taught_in(plan, &quench);
        let off = taught.unwrap_or_default().off;
        let soak_c = plan.soak.temperature_c + off.soak_k;
        let soaked = self.steel.at(soak_c)?.end(60.0 * plan.soak.time_min)?;
        let section = self.piece.section;
        let quenched = self.steel.quench(&soaked, soak_c, section, &quench, &off)?;
        let upstream = Upstream {
            soaking,
            quenchant,
            soaked,
            taught,
            margin_factor: quenched.margin_factor(),
            may_crack: may_crack(&quench.medium.resolve()?, soaked.dissolved.c),
            quenched,
        };
        let place = self.upstreams.len();
        for cold in 0..self.colds.len() {
            for tempers in 0..self.tempers.len() {
                let choice = self.choice(&upstream, place, cold, tempers);
                self.choices.extend(choice);
            }
        }
        self.upstreams.push(upstream);
        Ok(())
    }

    fn choice(
        &self,
        upstream: &Upstream,
        place: usize,
        cold: usize,
        tempers: usize,
    ) -> Option<Choice> {
        let step = self.colds.get(cold)?.as_ref();
        let plan = self.tempers.get(tempers)?;
        let soak = &self.soakings.get(upstream.soaking)?.soak;
        let all = plan.all();
        let Taught { off, left, .. } = upstream.taught_with(&all).unwrap_or_default();
        let stages = upstream.quenched.finish(step, &all, &off);
        let last = finished_stage(&stages, step, &all)?;
        let hrc = last.hardness?.hrc_carried();
        let point = &upstream.soaked.point;
        let [from_c, to_c] = self.embrittling_c;
        Some(Choice {
            upstream: place,
            cold,
            tempers,
            hrc,
            band_hrc: left.tempered * last.band_hrc,
            piece: Piece {
                hrc: Some(hrc),
                austenite: last.fractions.map(|f| f.austenite),
                soft: last.fractions.map(|f| f.ferrite + f.pearlite + f.bainite),
                carbide: point.carbide_volume_fraction,
                carbide_radius_um: upstream.soaked.carbide_radius_um,
                carbide_kind: None,
                carbon_in_solution_wt: point.carbon_wt,
                grain_astm: point.grain_astm,
                is_tempered: true,
                is_embrittled: (from_c..=to_c)
                    .contains(&(plan.temper.temperature_c + upstream.off().temper_k)),
            },
            time_min: soak.time_min
                + plan.time_min()
                + step.map_or(0.0, |cold| cold.time_min + cold.delay_min),
        })
    }

    /// How far a choice is from the middle of the target, HRC.
    pub(super) fn off_middle_hrc(&self, choice: &Choice) -> f64 {
        let target = self.sought.target;
        (choice.hrc - f64::midpoint(target.least_hrc, target.most_hrc)).abs()
    }

    /// Quenches whose best choice as planned is nearest to the middle of the target, those that may
    /// crack the piece last.
    fn worth_sampling(&self) -> Vec<usize> {
        let mut best: Vec<Option<Choice>> = vec![None; self.upstreams.len()];
        for choice in self
            .choices
            .iter()
            .filter(|choice| self.keeps_to_all(choice))
        {
            if let Some(best) = best.get_mut(choice.upstream)
                && best.is_none_or(|best| self.off_middle_hrc(choice) < self.off_middle_hrc(&best))
            {
                *best = Some(*choice);
            }
        }
        let mut order: Vec<Choice> = best.into_iter().flatten().collect();
        let cracks = |choice: &Choice| {
            self.upstreams
                .get(choice.upstream)
                .is_some_and(|upstream| upstream.may_crack)
        };
        order::sort_by(&mut order, |a, b| {
            let half_hrc = |choice| (2.0 * self.off_middle_hrc(choice)).round();
            let points = |choice: &Choice| choice.piece.points(self.sought.purpose.property());
            cracks(a)
                .cmp(&cracks(b))
                .then(a.piece.is_embrittled.cmp(&b.piece.is_embrittled))
                .then(half_hrc(a).total_cmp(&half_hrc(b)))
                .then(points(b).total_cmp(&points(a)))
        });
        let mut of_quenchant = vec![0; self.shop.quenchants.len()];
        let taken = order.into_iter().filter(|choice| {
            let quenchant = self.upstreams.get(choice.upstream).map(|up| up.quenchant);
            quenchant
                .and_then(|quenchant| of_quenchant.get_mut(quenchant))
                .is_some_and(|count| {
                    *count += 1;
                    *count <= MOST_OF_A_QUENCHANT
                })
        });
        taken
            .take(MOST_SAMPLED)
            .map(|choice| choice.upstream)
            .collect()
    }

    /// Choices of a quench that meet the target and keep to the limits as planned: with each cold step
    /// those nearest to the middle of the target.
    fn choices_of(&self, upstream: usize) -> Vec<Choice> {
        let kept = self
            .choices
            .iter()
            .filter(|choice| choice.upstream == upstream);
        let kept: Vec<&Choice> = kept.filter(|choice| self.keeps_to_all(choice)).collect();
        let mut taken = Vec::new();
        for cold in 0..self.colds.len() {
            let own = kept.iter().filter(|choice| choice.cold == cold);
            let mut near: Vec<Choice> = own.map(|choice| **choice).collect();
            order::sort_by(&mut near, |a, b| {
                self.off_middle_hrc(a).total_cmp(&self.off_middle_hrc(b))
            });
            taken.extend(near.into_iter().take(MOST_WEIGHED));
        }
        taken
    }
}
