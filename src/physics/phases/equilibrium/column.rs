//! All temperatures at which phases of one steel come and go.

use super::slots::Amounts;
use super::solver::{Saved, Solver};
use super::{EquilibriumError, PhaseName, ZERO_C_K};
use crate::steel::Composition;

/// Step between samples when nothing is known, K. A phase that is stable over less than this is
/// found only where another boundary lies in its field.
const STEP_K: f64 = 25.0;

/// Longest distance between samples when a neighbour's boundaries are known, K.
const LONGEST_GAP_K: f64 = 100.0;

/// Fields narrower than this are not sampled for, K; the bisection finds what is in them.
const NARROW_K: f64 = 1.0;

/// Distance from a sample of the same column beyond which a boundary begins from that of the column
/// nearby, K.
const FAR_K: f64 = 40.0;

/// Most evaluations for one boundary.
const EVALUATIONS: u32 = 14;

/// Stands for the height of a phase that has no minimum of its own, in units of RT.
const FAR: f64 = 1.0;

/// Phases that are stable together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::phases) struct PhaseSet(u8);

impl PhaseSet {
    fn of(names: impl IntoIterator<Item = PhaseName>) -> Self {
        Self(names.into_iter().fold(0, |bits, name| bits | bit(name)))
    }

    /// True when any of the phases is in it.
    pub(in crate::phases) fn has_any(self, names: &[PhaseName]) -> bool {
        names.iter().any(|name| self.0 & bit(*name) != 0)
    }

    pub(in crate::phases) fn has(self, name: PhaseName) -> bool {
        self.has_any(&[name])
    }

    pub(in crate::phases) const fn is_one_phase(self) -> bool {
        self.0.is_power_of_two()
    }

    /// Its phases in the order of [`PhaseName::ALL`].
    pub(in crate::phases) fn names(self) -> Vec<PhaseName> {
        let all = PhaseName::ALL.into_iter();
        all.filter(|name| self.has(*name)).collect()
    }

    /// How many phases one of two sets has and the other has not.
    pub(in crate::phases) const fn differs_by(self, other: Self) -> u32 {
        (self.0 ^ other.0).count_ones()
    }

    /// The phase that one of two sets has and the other has not, if it is one.
    fn only_difference(self, other: Self) -> Option<PhaseName> {
        let mut names = Self(self.0 ^ other.0).names();
        names.pop().filter(|_| names.is_empty())
    }
}

const fn bit(name: PhaseName) -> u8 {
    1 << name as u8
}

/// A temperature at which the stable set changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::phases) struct Change {
    /// Where, °C.
    pub(in crate::phases) at_c: f64,
    /// The phase that comes or goes; `None` where several do at once.
    phase: Option<PhaseName>,
    /// How fast its height changes there, in units of RT per K.
    slope: f64,
}

impl Change {
    /// The same change where it is expected nearby.
    pub(in crate::phases) const fn moved_to(self, at_c: f64) -> Self {
        Self { at_c, ..self }
    }
}

/// What is stable over all temperatures of a range.
#[derive(Debug, Clone)]
pub(in crate::phases) struct Column {
    /// Carbon of the steel, wt %.
    pub(in crate::phases) carbon_wt: f64,
    /// Lowest and highest temperature, °C.
    pub(in crate::phases) range_c: [f64; 2],
    /// Stable sets from low to high.
    pub(in crate::phases) sets: Vec<PhaseSet>,
    /// Changes between them.
    pub(in crate::phases) changes: Vec<Change>,
    /// Equilibria from which those nearby are soon found.
    samples: Vec<Sample>,
}

impl Column {
    /// The temperature below one of its sets, °C; that of the upper end after the last.
    pub(in crate::phases) fn edge_c(&self, set: usize) -> f64 {
        let [low_c, high_c] = self.range_c;
        let Some(before) = set.checked_sub(1) else {
            return low_c;
        };
        self.changes.get(before).map_or(high_c, |c| c.at_c)
    }
}

/// Searches columns.
#[derive(Debug, Clone)]
pub(in crate::phases) struct ColumnSearch {
    range_c: [f64; 2],
    tolerance_k: f64,
    solver: Option<Solver>,
}

/// A temperature with what is stable there.
#[derive(Debug, Clone)]
struct Sample {
    at_c: f64,
    /// The phase that was kept out, at the boundary where it comes or goes.
    without: Option<PhaseName>,
    set: PhaseSet,
    state: Saved,
}

impl ColumnSearch {
    pub(in crate::phases) const fn new(range_c: [f64; 2], tolerance_k: f64) -> Self {
        Self {
            range_c,
            tolerance_k,
            solver: None,
        }
    }

    /// Everything that comes and goes in a steel, beginning where changes are expected, and from the
    /// equilibria of a column nearby. Composition and temperatures are not checked.
    ///
    /// # Errors
    /// [`EquilibriumError::NotConverged`].
    pub(in crate::phases) fn at(
        &mut self,
        steel: &Composition,
        expected: &[Change],
        nearby: Option<&Column>,
    ) -> Result<Column, EquilibriumError> {
        let amounts = Amounts::new(steel);
        let is_of_it = |s: &Solver| s.phases.present == amounts.present;
        let is_same = self.solver.as_ref().is_some_and(is_of_it);
        let solver = self.solver.take().filter(|_| is_same);
        let mut search = Search {
            amounts: &amounts,
            tolerance_k: self.tolerance_k,
            expected,
            // without carbon there are fewer phases
            nearby: nearby.filter(|_| is_same).map_or(&[], |c| &c.samples),
            solver: solver.unwrap_or_else(|| Solver::new(&amounts).for_map()),
            found: Vec::new(),
            samples: Vec::new(),
        };
        let mut sets = Vec::new();
        let mut above: Option<Sample> = None;
        for at_c in sampled_c(self.range_c, expected) {
            let below = search.sample(at_c, above.as_ref())?;
            match above {
                Some(above) => search.between(&below, &above)?,
                None => sets.push(below.set),
            }
            above = Some(below);
        }
        let mut changes: Vec<Change> = Vec::with_capacity(search.found.len());
        for (change, set_below) in search.found {
            match changes.last_mut() {
                // nearer than they are known: at once
                Some(above) if above.at_c - change.at_c <= 2.0 * self.tolerance_k => {
                    above.phase = None;
                    sets.pop();
                }
                _ => changes.push(change),
            }
            sets.push(set_below);
        }
        sets.reverse();
        changes.reverse();
        self.solver = Some(search.solver);
        Ok(Column {
            carbon_wt: steel.c,
            range_c: self.range_c,
            sets,
            changes,
            samples: search.samples,
        })
    }
}

/// Where to look first, from high to low, °C: in the middle of every field that is expected.
fn sampled_c([low_c, high_c]: [f64; 2], expected: &[Change]) -> Vec<f64> {
    let longest_k = if expected.is_empty() {
        STEP_K
    } else {
        LONGEST_GAP_K
    };
    let mut edges: Vec<f64> = expected.iter().map(|change| change.at_c).collect();
    edges.retain(|at_c| (low_c..high_c).contains(at_c));
    edges.push(low_c);
    edges.sort_by(f64::total_cmp);
    edges.reverse();
    let mut all = vec![high_c];
    let mut above_c = high_c;
    let mut last_c = high_c;
    for edge_c in edges {
        let middle_c = if edge_c == low_c {
            low_c
        } else {
            0.5 * (edge_c + above_c)
        };
        if above_c - edge_c > NARROW_K || edge_c == low_c {
            let parts = ((last_c - middle_c) / longest_k).ceil().max(1.0);
            for part in 1..=parts as u32 {
                all.push(last_c + (middle_c - last_c) * f64::from(part) / parts);
            }
            last_c = middle_c;
        }
        above_c = edge_c;
    }
    all.dedup();
    all
}

/// The sample nearest to a temperature.
fn nearest<'a>(samples: impl Iterator<Item = &'a Sample>, at_c: f64) -> Option<&'a Sample> {
    let distance_k = |sample: &&Sample| (sample.at_c - at_c).abs();
    samples.min_by(|a, b| distance_k(a).total_cmp(&distance_k(b)))
}

/// The search of one column.
struct Search<'a> {
    amounts: &'a Amounts,
    tolerance_k: f64,
    expected: &'a [Change],
    /// Samples of a column nearby.
    nearby: &'a [Sample],
    solver: Solver,
    /// Changes from high to low, each with the set below it.
    found: Vec<(Change, PhaseSet)>,
    samples: Vec<Sample>,
}

impl Search<'_> {
    /// The equilibrium at a temperature, from the nearest one known.
    fn sample(&mut self, at_c: f64, other: Option<&Sample>) -> Result<Sample, EquilibriumError> {
        let known = self.nearby.iter().filter(|s| s.without.is_none());
        if let Some(near) = nearest(known.chain(other), at_c) {
            self.solver.restore(near.state.clone());
        }
        self.solver.solve(self.amounts, at_c + ZERO_C_K)?;
        let sample = Sample {
            at_c,
            without: None,
            set: self.stable(),
            state: self.solver.save(),
        };
        self.samples.push(sample.clone());
        Ok(sample)
    }

    fn stable(&self) -> PhaseSet {
        let slots = self.solver.phases.slots.iter();
        PhaseSet::of(slots.filter(|s| s.active).map(|s| s.name))
    }

    /// All changes between two samples.
    fn between(&mut self, low: &Sample, high: &Sample) -> Result<(), EquilibriumError> {
        if low.set == high.set {
            return Ok(());
        }
        let middle_c = f64::midpoint(low.at_c, high.at_c);
        let single = low.set.only_difference(high.set);
        let change = if high.at_c - low.at_c <= self.tolerance_k {
            Some(Change {
                at_c: middle_c,
                phase: single,
                slope: 0.0,
            })
        } else {
            single.and_then(|name| self.boundary(name, low, high))
        };
        if let Some(change) = change {
            self.found.push((change, low.set));
            return Ok(());
        }
        // several phases come or go, or others are in between
        let middle = self.sample(middle_c, Some(high))?;
        self.between(&middle, high)?;
        self.between(low, &middle)
    }

    /// Where the only phase that two samples differ by comes or goes: where its height above the
    /// equilibrium of all others is zero. `None` when the others are not those of the samples.
    fn boundary(&mut self, name: PhaseName, low: &Sample, high: &Sample) -> Option<Change> {
        let (mut low_c, mut high_c) = (low.at_c, high.at_c);
        let (lacking, rises) = if high.set.has(name) {
            (low, -1.0)
        } else {
            (high, 1.0)
        };
        let near = self
            .expected
            .iter()
            .find(|c| c.phase == Some(name) && low_c < c.at_c && c.at_c < high_c);
        let mut at_c = near.map_or(0.5 * (low_c + high_c), |c| c.at_c);
        let mut slope = near.map_or(0.0, |c| c.slope);
        let rims = self
            .nearby
            .iter()
            .filter(|s| s.without == Some(name) && s.set == lacking.set);
        let start = match nearest(rims, at_c) {
            Some(rim) if (lacking.at_c - at_c).abs() > FAR_K => rim,
            _ => lacking,
        };
        self.solver.restore(start.state.clone());
        let mut before: Option<(f64, f64)> = None;
        // a slope taken over from nearby may be a tenth off
        let mut settled_k = 5.0 * self.tolerance_k;
        for _ in 0..EVALUATIONS {
            let height = self.height_without(name, at_c)?;
            let others = self.stable();
            if height * rises > 0.0 {
                high_c = high_c.min(at_c);
            } else {
                low_c = low_c.max(at_c);
            }
            if let Some((before_c, height_before)) = before {
                slope = (height - height_before) / (at_c - before_c);
                settled_k = self.tolerance_k;
            }
            before = Some((at_c, height));
            let step_k = -height / slope;
            let next_c = at_c + step_k;
            let is_inside = slope * rises > 0.0 && low_c <= next_c && next_c <= high_c;
            if is_inside && step_k.abs() < settled_k || high_c - low_c < self.tolerance_k {
                if others != lacking.set {
                    return None;
                }
                self.samples.push(Sample {
                    at_c,
                    without: Some(name),
                    set: others,
                    state: self.solver.save(),
                });
                return Some(Change {
                    at_c: if is_inside { next_c } else { at_c },
                    phase: Some(name),
                    slope,
                });
            }
            at_c = if is_inside {
                next_c
            } else {
                0.5 * (low_c + high_c)
            };
        }
        None
    }

    /// Lowest height of a phase above the equilibrium of all others, in units of RT per mole of
    /// atoms: negative where the phase is stable.
    fn height_without(&mut self, name: PhaseName, at_c: f64) -> Option<f64> {
        self.solver.suspend(Some(name));
        let solved = self.solver.solve(self.amounts, at_c + ZERO_C_K);
        let height = solved
            .is_ok()
            .then(|| self.solver.height_of(name, self.amounts).min(FAR));
        self.solver.suspend(None);
        height
    }
}
