//! The plans of a logbook and the unknowns that they share.

use super::estimate::{Row, Rows};
use super::logged::{Alike, Observed};
use super::plan::{Linear, Measurable, Plan, measurable};
use super::slot::{Slot, Slots, Variances};
use super::unknown::{Owner, Unknown, UnknownKind, Unknowns};
use crate::advise::error::AdviseError;
use crate::advise::inputs::{Tolerances, only_known_grade, open_inputs};
use crate::advise::law::NINE_IN_TEN;
use crate::advise::shop::{Furnace, Shop};
use crate::advise::spread::hrc;
use crate::advise::{Tester, USUAL_TESTER_HRC};
use crate::route::{Deviation, Route, TrialSteel, run};

/// Factor on the time of the nose with which everything hardens, whatever the heat.
const HARDENS_ALL: f64 = 100.0;

/// Whether a place that is reached from outside is harder than the one that decides.
fn has_outside(route: &Route) -> bool {
    run(route).is_ok_and(|outcome| outcome.outside.is_some())
}

/// All that pieces of a logbook went through.
#[derive(Clone)]
pub(super) struct Model {
    pub(super) shop: Option<Shop>,
    /// Offset of a furnace that is not told, K: that of the route asked for.
    pub(super) offset_k: f64,
    steels: Vec<(Route, TrialSteel)>,
    pub(super) plans: Vec<Plan>,
    pub(super) unknowns: Unknowns,
}

impl Model {
    pub(super) const fn new(shop: Option<Shop>, offset_k: f64) -> Self {
        Self {
            shop,
            offset_k,
            steels: Vec::new(),
            plans: Vec::new(),
            unknowns: Unknowns(Vec::new()),
        }
    }

    /// The place of the plan of a route: the same for all routes that do the same.
    ///
    /// # Errors
    /// A route without an outcome.
    pub(super) fn plan(&mut self, route: &Route) -> Result<usize, AdviseError> {
        // What was learnt before is no part of what runs are compared with, or it would be learnt again.
        let route = Route {
            taught: None,
            piece: String::new(),
            target: Route::example().target,
            ..route.clone()
        };
        match self.plans.iter().position(|plan| plan.route == route) {
            Some(place) => Ok(place),
            None => self.add(route),
        }
    }

    /// Another plan with the same unknowns: a coupon, say.
    pub(super) fn like(&mut self, place: usize, change: impl FnOnce(&mut Route)) -> Option<usize> {
        let plan = self.plans.get(place)?;
        let mut route = plan.route.clone();
        change(&mut route);
        let plan = Plan { route, ..*plan };
        self.plans.push(plan);
        Some(self.plans.len() - 1)
    }

    fn add(&mut self, route: Route) -> Result<usize, AdviseError> {
        let steel = self.steel(&route)?;
        let trial_steel = self.trial_steel(steel)?;
        let planned = trial_steel.trial(&route, &Deviation::default())?;
        let temper_band_k = route
            .tempers
            .first()
            .zip(self.shop.as_ref())
            .and_then(|(temper, shop)| shop.temper_band_k(temper.temperature_c));
        let tolerances = Tolerances {
            temper_band_k,
            ..Tolerances::default()
        };
        let mut variances = Variances::of(&open_inputs(&route, &planned, &tolerances)?)
            .with_tester(self.tester_hrc());
        let heats = heats_of_grade(&route, trial_steel);
        for slot in [Slot::Nose, Slot::Quenched, Slot::Tempered] {
            variances.same.add(slot, heats.get(slot).powi(2));
        }
        let sd_of_quench = variances
            .sd(Slot::Nose)
            .hypot(variances.sd(Slot::HeatTransfer));
        let enough = (NINE_IN_TEN * sd_of_quench).exp();
        let mut plan = Plan {
            planned: measurable(&route, &planned.stages, 0.0),
            alike: match planned.margin_factor {
                Some(factor) if factor >= enough => Alike::Surely,
                // As a run is compared with its prediction.
                Some(factor) if factor < 1.0 && has_outside(&route) => Alike::Not,
                _ => Alike::AsPlanned,
            },
            unknowns: [None; super::slot::SLOTS],
            variances,
            base: Slots::default(),
            steel,
            route,
        };
        for slot in Slot::ALL {
            let Some(kind) = UnknownKind::of(slot) else {
                continue;
            };
            let sd = variances.same.get(slot).sqrt();
            if sd <= 0.0 {
                continue;
            }
            let Some(owner) = Owner::of(kind, &plan.route, self.furnaces()) else {
                // Runs that may have been in different furnaces have nothing in common.
                plan.variances.make_anew(slot);
                continue;
            };
            let from = if kind == UnknownKind::FurnaceOffset {
                let from_k = self.furnace_offset_k(&owner);
                plan.base
                    .set(Slot::Soak, from_k - plan.route.furnace_offset_k);
                from_k
            } else {
                0.0
            };
            plan.unknowns[slot as usize] = Some(self.unknowns.place_of(Unknown {
                kind,
                owner,
                sd,
                from,
            }));
        }
        self.plans.push(plan);
        Ok(self.plans.len() - 1)
    }

    /// The furnaces of the shop; none where none is told.
    pub(super) fn furnaces(&self) -> &[Furnace] {
        self.shop.as_ref().map_or(&[], |shop| &shop.furnaces)
    }

    /// Error of the shop's tester, HRC either way, nine in ten.
    fn tester_hrc(&self) -> f64 {
        let tester = self.shop.as_ref().and_then(|shop| shop.tester);
        tester.map_or(USUAL_TESTER_HRC, |Tester { error_hrc }| error_hrc)
    }

    /// How much hotter the piece is than a furnace reads, as far as the user knows, K.
    fn furnace_offset_k(&self, owner: &Owner) -> f64 {
        let Owner::Furnace(Some(place)) = owner else {
            return self.offset_k;
        };
        let furnace = self
            .shop
            .as_ref()
            .and_then(|shop| shop.furnaces.get(*place));
        furnace.map_or(self.offset_k, |furnace| furnace.offset_k)
    }

    fn steel(&mut self, route: &Route) -> Result<usize, AdviseError> {
        let is_same = |known: &Route| {
            known.composition == route.composition
                && known.start == route.start
                && known.prior == route.prior
                && known.end_quench == route.end_quench
                && (route.prior.is_empty() || known.section == route.section)
        };
        if let Some(place) = self.steels.iter().position(|(known, _)| is_same(known)) {
            return Ok(place);
        }
        self.steels.push((route.clone(), TrialSteel::of(route)?));
        Ok(self.steels.len() - 1)
    }

    pub(super) fn trial_steel(&self, place: usize) -> Result<&TrialSteel, AdviseError> {
        let found = self.steels.get(place);
        found.map(|(_, steel)| steel).ok_or(AdviseError::NotSolved)
    }

    /// Values of the unknowns in their own units.
    pub(super) fn values(&self, in_sd: &[f64]) -> Vec<f64> {
        self.unknowns.values(in_sd)
    }

    /// The measurements on a piece of a plan, straightened.
    pub(super) fn rows(&self, plan: &Plan, linear: &Linear, observed: &[Observed]) -> Rows {
        let row = |seen: &Observed| {
            Some(Row {
                misfit: seen.value - linear.mean(seen.what)?,
                variance: seen.variance(plan.variances.anew.get(Slot::Tester)),
                by: self.by(plan, linear, seen.what),
                by_piece: by_piece(plan, linear, seen.what),
            })
        };
        observed.iter().filter_map(row).collect()
    }

    /// How a measurement changes with the unknowns, each in its standard deviations.
    pub(super) fn by(&self, plan: &Plan, linear: &Linear, what: Measurable) -> Vec<(usize, f64)> {
        let by = linear.by(what);
        let all = Slot::ALL.into_iter().filter_map(|slot| {
            let place = plan.unknown(slot)?;
            Some((place, by.get(slot) * self.unknowns.0.get(place)?.sd))
        });
        all.filter(|(_, by)| *by != 0.0).collect()
    }

    /// As [`Self::by`], for the hardness itself, whatever the tester shows.
    pub(super) fn by_hardness(
        &self,
        plan: &Plan,
        linear: &Linear,
        what: Measurable,
    ) -> Vec<(usize, f64)> {
        let tester = plan.unknown(Slot::Tester);
        let all = self.by(plan, linear, what).into_iter();
        all.filter(|(place, _)| Some(*place) != tester).collect()
    }
}

/// How a measurement changes with what is anew in each piece, each in its standard deviations. The
/// tester is anew in each reading. What is bent is taken to be independent of the rest, and of that
/// of other measurements on the piece.
pub(super) fn by_piece(plan: &Plan, linear: &Linear, what: Measurable) -> Vec<f64> {
    let by = linear.by(what);
    let straight = Slot::ALL
        .into_iter()
        .filter(|slot| *slot != Slot::Tester)
        .map(|slot| by.get(slot) * plan.variances.anew.get(slot).sqrt());
    let bent = Measurable::ALL.into_iter().map(|other| {
        if other == what {
            linear.bend_variance(what).sqrt()
        } else {
            0.0
        }
    });
    straight.chain(bent).collect()
}

/// What the heats of a grade of which nothing more is known may add to the error of the models, as
/// standard deviations: half of what lies between a lean heat and a rich one, which nine in ten lie
/// between.
fn heats_of_grade(route: &Route, steel: &TrialSteel) -> Slots {
    let Some(grade) = only_known_grade(route) else {
        return Slots::default();
    };
    let hardened = Deviation {
        nose_time_factor: HARDENS_ALL,
        ..Deviation::default()
    };
    let heats = grade.lean_and_rich().map(|heat| {
        let heat = steel.another_heat(&heat).ok()?;
        let planned = heat.trial(route, &Deviation::default()).ok()?;
        let hardened = heat.trial(route, &hardened).ok()?;
        let is_tempered = !route.tempers.is_empty();
        Some(Slots::from_fn(|slot| {
            let number = match slot {
                Slot::Nose => planned.margin_factor.map(f64::ln),
                Slot::Quenched => hardened.quenched().and_then(hrc),
                Slot::Tempered if is_tempered => hardened.finished(route).and_then(hrc),
                _ => None,
            };
            number.unwrap_or(f64::NAN)
        }))
    });
    let [Some(lean), Some(rich)] = heats else {
        return Slots::default();
    };
    Slots::from_fn(|slot| {
        let half = 0.5 * (rich.get(slot) - lean.get(slot)).abs();
        // What is not known of either widens nothing.
        if half.is_finite() {
            half / NINE_IN_TEN
        } else {
            0.0
        }
    })
}
