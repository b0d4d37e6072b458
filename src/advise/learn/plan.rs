//! What a route comes to where something is off, and how that changes with it.

use super::logged::Alike;
use super::slot::{SLOTS, Slot, Slots, Variances};
use crate::advise::spread::{austenite, hrc};
use crate::route::{QuenchedTrial, Route, RouteError, Stage, Step, TrialSteel, finished_stage};
use crate::soak::SoakEnd;

/// What is measured on a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Measurable {
    /// Hardness as quenched, HRC.
    Quenched,
    /// Hardness after the cold bath, HRC.
    Chilled,
    /// Hardness after the last temper, HRC.
    Tempered,
    /// Retained austenite after the last step, vol %.
    Austenite,
}

/// How many kinds there are.
pub(super) const MEASURABLES: usize = 4;

impl Measurable {
    pub(super) const ALL: [Self; MEASURABLES] = [
        Self::Quenched,
        Self::Chilled,
        Self::Tempered,
        Self::Austenite,
    ];

    /// Its name in an answer.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Quenched => "quenched_hrc",
            Self::Chilled => "cold_hrc",
            Self::Tempered => "tempered_hrc",
            Self::Austenite => "austenite_vol_percent",
        }
    }

    /// Hardness after the last step of a route.
    pub(super) const fn finished(route: &Route) -> Self {
        if !route.tempers.is_empty() {
            Self::Tempered
        } else if route.cold.is_some() {
            Self::Chilled
        } else {
            Self::Quenched
        }
    }

    /// How it changes with what the models do not compute; none where they do.
    const fn plain_change(self, slot: Slot) -> Option<f64> {
        let is_hardness = !matches!(self, Self::Austenite);
        Some(match slot {
            Slot::Quenched => matches!(self, Self::Quenched | Self::Chilled) as u8 as f64,
            Slot::Tempered => matches!(self, Self::Tempered) as u8 as f64,
            Slot::Tester => is_hardness as u8 as f64,
            _ => return None,
        })
    }
}

/// What can be measured on a piece, as computed; none where the models do not reach.
pub(super) type Computed = [Option<f64>; MEASURABLES];

/// What is computed for a piece, and how it changes with everything that can be off.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Linear {
    /// As computed.
    pub(super) at: Computed,
    /// Change of each by one of each.
    pub(super) by: [Slots; MEASURABLES],
    /// What the bend adds to each in the mean over what is anew in each piece, and what it may add,
    /// bends of all kinds together.
    bend: [Bend; MEASURABLES],
}

/// What is left of a number where it is straightened.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Bend {
    mean: f64,
    most: f64,
}

impl Linear {
    /// The same about other numbers, near by.
    pub(super) fn about(&self, at: Computed) -> Self {
        Self { at, ..*self }
    }

    /// The mean over pieces that are off by what is anew in each.
    pub(super) fn mean(&self, what: Measurable) -> Option<f64> {
        Some(self.at[what as usize]? + self.bend[what as usize].mean)
    }

    /// Variance that the bend adds over pieces, by the second-order term of JCGM 100, 5.1.2: all
    /// that is off is taken to act along one line, as more heat transfer and less thickness do.
    pub(super) const fn bend_variance(&self, what: Measurable) -> f64 {
        let most = self.bend[what as usize].most;
        2.0 * most * most
    }

    pub(super) const fn by(&self, what: Measurable) -> &Slots {
        &self.by[what as usize]
    }
}

/// What can be measured on a piece after each step of a route, where the tester shows so much more
/// than the hardness, HRC.
pub(super) fn measurable(route: &Route, stages: &[Stage], tester_hrc: f64) -> Computed {
    let Route { cold, tempers, .. } = route;
    let at = |step| stages.iter().find(|stage| stage.step == step);
    let shown = |stage: &Stage| Some(hrc(stage)? + tester_hrc);
    let finished = finished_stage(stages, cold.as_ref(), tempers);
    Measurable::ALL.map(|what| match what {
        Measurable::Quenched => shown(at(Step::Quench)?),
        Measurable::Chilled => shown(at(Step::Cold)?),
        Measurable::Tempered => shown(at(Step::Temper(tempers.len()))?),
        Measurable::Austenite => Some(100.0 * austenite(finished?)?),
    })
}

/// A route that pieces went through, with what the models need for it.
#[derive(Clone)]
pub(super) struct Plan {
    pub(super) route: Route,
    /// The unknown that each of what can be off goes by.
    pub(super) unknowns: [Option<usize>; SLOTS],
    pub(super) variances: Variances,
    /// What is off before anything is learnt: an offset of the furnace that was not told then.
    pub(super) base: Slots,
    /// Its steel, by its place among the steels.
    pub(super) steel: usize,
    /// What comes of it as planned.
    pub(super) planned: Computed,
    /// Whether all places of its pieces harden alike.
    pub(super) alike: Alike,
}

impl Plan {
    /// What is off in every piece of it, where the unknowns have these values.
    pub(super) fn off(&self, unknowns: &[f64]) -> Slots {
        Slots::from_fn(|slot| {
            let of_unknown = self.unknown(slot).and_then(|unknown| unknowns.get(unknown));
            self.base.get(slot) + of_unknown.copied().unwrap_or_default()
        })
    }

    pub(super) const fn unknown(&self, slot: Slot) -> Option<usize> {
        self.unknowns[slot as usize]
    }

    /// Slots for which the models have to be asked again and quenched anew.
    pub(super) fn quench_slots(&self) -> impl Iterator<Item = Slot> {
        const OF_QUENCH: [Slot; 5] = [
            Slot::Soak,
            Slot::HeatTransfer,
            Slot::Nose,
            Slot::MartensiteStart,
            Slot::Thickness,
        ];
        let is_open = |slot: &Slot| self.variances.sd(*slot) > 0.0;
        OF_QUENCH.into_iter().filter(is_open)
    }

    /// Soaks a piece.
    ///
    /// # Errors
    /// A soak without austenite.
    pub(super) fn soak(&self, steel: &TrialSteel, off: &Slots) -> Result<SoakEnd, RouteError> {
        let hold = steel.at(self.temperature_c(off))?;
        Ok(hold.end(60.0 * self.route.soak.time_min)?)
    }

    fn temperature_c(&self, off: &Slots) -> f64 {
        self.route.soak.temperature_c + off.deviation().soak_k
    }

    /// Quenches a soaked piece.
    fn quench(
        &self,
        steel: &TrialSteel,
        soaked: &SoakEnd,
        off: &Slots,
    ) -> Result<QuenchedTrial, RouteError> {
        let Route {
            section, quench, ..
        } = &self.route;
        let temperature_c = self.temperature_c(off);
        steel.quench(soaked, temperature_c, *section, quench, &off.deviation())
    }

    /// What can be measured on a quenched piece.
    fn finish(&self, quenched: &QuenchedTrial, off: &Slots) -> Computed {
        let Route { cold, tempers, .. } = &self.route;
        let stages = quenched.finish(cold.as_ref(), tempers, &off.deviation());
        measurable(&self.route, &stages, off.get(Slot::Tester))
    }

    /// What can be measured on a piece that is off by so much.
    ///
    /// # Errors
    /// A soak without austenite, or a quench that the heat model does not cover.
    pub(super) fn compute(&self, steel: &TrialSteel, off: &Slots) -> Result<Computed, RouteError> {
        let soaked = self.soak(steel, off)?;
        Ok(self.finish(&self.quench(steel, &soaked, off)?, off))
    }

    /// The same of a soaked piece, with what is known of its changes without quenching anew.
    ///
    /// # Errors
    /// A quench that the heat model does not cover.
    pub(super) fn centre(
        &self,
        steel: &TrialSteel,
        soaked: &SoakEnd,
        off: &Slots,
    ) -> Result<Linear, RouteError> {
        let quenched = self.quench(steel, soaked, off)?;
        let at = self.finish(&quenched, off);
        let mut linear = Linear {
            at,
            by: Measurable::ALL
                .map(|what| Slots::from_fn(|slot| what.plain_change(slot).unwrap_or_default())),
            bend: Default::default(),
        };
        if self.variances.sd(Slot::Temper) > 0.0 && !self.route.tempers.is_empty() {
            let beside = |off: &Slots| Some(self.finish(&quenched, off));
            self.differ(&mut linear, off, Slot::Temper, beside);
        }
        Ok(linear)
    }

    /// Fills in how a soaked piece changes with something for which it is quenched anew, and where
    /// need be soaked anew.
    pub(super) fn change_with(
        &self,
        steel: &TrialSteel,
        soaked: &SoakEnd,
        off: &Slots,
        slot: Slot,
        linear: &mut Linear,
    ) {
        self.differ(linear, off, slot, |off| {
            if slot == Slot::Soak {
                return self.compute(steel, off).ok();
            }
            let quenched = self.quench(steel, soaked, off).ok()?;
            Some(self.finish(&quenched, off))
        });
    }

    /// Differences over half a standard deviation either way, so that a bend of that size is
    /// straightened; on one side where the models do not reach on the other.
    fn differ(
        &self,
        linear: &mut Linear,
        off: &Slots,
        slot: Slot,
        computed: impl Fn(&Slots) -> Option<Computed>,
    ) {
        let width = 0.5 * self.variances.sd(slot);
        let beside = |way: f64| {
            let mut beside = *off;
            beside.add(slot, way * width);
            computed(&beside)
        };
        let (below, above) = (beside(-1.0), beside(1.0));
        let anew = self.variances.anew.get(slot);
        let all = linear.at.iter().zip(&mut linear.by).zip(&mut linear.bend);
        for (what, ((at, by), bend)) in all.enumerate() {
            let side = |computed: &Option<Computed>| computed.and_then(|all| *all.get(what)?);
            let change = match (side(&below), *at, side(&above)) {
                (Some(below), Some(at), Some(above)) => {
                    let bent = 0.5 * (above - 2.0 * at + below) / (width * width) * anew;
                    bend.mean += bent;
                    bend.most += bent.abs();
                    (above - below) / (2.0 * width)
                }
                (None, Some(at), Some(above)) => (above - at) / width,
                (Some(below), Some(at), None) => (at - below) / width,
                _ => 0.0,
            };
            by.set(slot, change);
        }
    }
}
