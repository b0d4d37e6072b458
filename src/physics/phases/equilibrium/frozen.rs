//! A phase whose metals are frozen while carbon moves: its energy against carbon, and the common
//! tangent of two.

use super::PhaseName;
use super::slots::{Amounts, MASSES, Phases, Slot};
use crate::phases::gibbs::{Component, Derivatives, ELEMENT_ORDER, MOST};

/// Newton steps for a common tangent, and the largest change of a carbon ratio that ends them.
const MOST_STEPS: usize = 60;
const SETTLED: f64 = 1e-12;

/// Largest share of the carbon sites that austenite and ferrite may fill in the search.
const MOST_FILLED: f64 = 0.25;

/// Energy of a phase per mole of metal atoms, in units of RT, against moles of carbon per mole of
/// metal atoms.
#[derive(Debug, Clone, Copy)]
pub(super) struct Point {
    pub(super) carbon: f64,
    pub(super) energy: f64,
    pub(super) slope: f64,
    curvature: f64,
}

impl Point {
    /// Where its tangent meets the axis of no carbon: the potential of the metal mixture.
    fn metal_potential(&self) -> f64 {
        self.energy - self.slope * self.carbon
    }
}

/// A phase with its metals frozen.
pub(super) struct Frozen<'a> {
    phases: &'a Phases,
    pub(super) slot: &'a Slot,
    y: [f64; MOST],
    carbon_place: Option<usize>,
    vacancy_place: Option<usize>,
    /// Metal and carbon sites per formula unit.
    pub(super) metal_sites: f64,
    carbon_sites: f64,
}

impl<'a> Frozen<'a> {
    pub(super) fn new(phases: &'a Phases, name: PhaseName, amounts: &Amounts) -> Option<Self> {
        let slot = phases.slots.iter().find(|slot| slot.name == name)?;
        let model = &phases.models[slot.model];
        let carbon = amounts
            .place(Component::C)
            .map_or(0.0, |place| amounts.moles[place]);
        let mut frozen = Self {
            phases,
            slot,
            y: [0.0; MOST],
            carbon_place: None,
            vacancy_place: None,
            metal_sites: 0.0,
            carbon_sites: 0.0,
        };
        for (i, variable) in model.variables.iter().enumerate() {
            match (variable.constituent, variable.element) {
                (Component::C, _) => frozen.carbon_place = Some(i),
                (Component::Va, _) => {
                    frozen.vacancy_place = Some(i);
                    frozen.carbon_sites = variable.sites;
                }
                (_, Some(place)) => {
                    frozen.y[i] = amounts.moles[place] / (1.0 - carbon);
                    frozen.metal_sites = variable.sites;
                }
                (_, None) => {}
            }
        }
        if let (None, Some(place)) = (frozen.vacancy_place, amounts.place(Component::C)) {
            frozen.carbon_sites = model.fixed_atoms[place];
        }
        Some(frozen)
    }

    /// Carbon per metal atom when every carbon site is filled.
    fn filled(&self) -> f64 {
        self.carbon_sites / self.metal_sites
    }

    fn has_fixed_carbon(&self) -> bool {
        self.vacancy_place.is_none()
    }

    pub(super) fn can_hold(&self, carbon: f64) -> bool {
        if self.has_fixed_carbon() {
            (carbon - self.filled()).abs() < 1e-9
        } else {
            carbon < MOST_FILLED * self.filled()
        }
    }

    /// Carbon at which the energy has a slope.
    pub(super) fn with_slope(&self, slope: f64, work: &mut Derivatives) -> Option<f64> {
        let mut carbon = 0.03 * self.filled();
        for _ in 0..MOST_STEPS {
            let point = self.at(carbon, work);
            let step = (slope - point.slope) / point.curvature;
            if !step.is_finite() {
                return None;
            }
            if step.abs() < SETTLED {
                return Some(carbon);
            }
            carbon = moved(carbon, step, self.filled());
        }
        None
    }

    pub(super) fn at(&self, carbon: f64, work: &mut Derivatives) -> Point {
        let model = &self.phases.models[self.slot.model];
        let mut y = self.y;
        let share = carbon / self.filled();
        if let (Some(c), Some(va)) = (self.carbon_place, self.vacancy_place) {
            y[c] = share;
            y[va] = 1.0 - share;
        } else if let Some(va) = self.vacancy_place {
            y[va] = 1.0;
        }
        model.without_mixing(&y, work);
        model.add_mixing(&y, work);
        let per_metal = 1.0 / (model.rt() * self.metal_sites);
        let (mut slope, mut curvature) = (0.0, 0.0);
        if let (Some(c), Some(va)) = (self.carbon_place, self.vacancy_place) {
            let g = &work.hessian;
            slope = (work.gradient[c] - work.gradient[va]) * per_metal / self.filled();
            curvature = (g[c][c] - 2.0 * g[c][va] + g[va][va]) * per_metal
                / (self.filled() * self.filled());
        }
        Point {
            carbon,
            energy: work.value * per_metal,
            slope,
            curvature,
        }
    }
}

/// Atomic mass, g/mol.
pub(super) fn mass_of(component: Component) -> f64 {
    let of_it = ELEMENT_ORDER
        .iter()
        .zip(MASSES)
        .find(|(c, _)| **c == component);
    of_it.map_or(0.0, |(_, mass)| mass)
}

/// A step in the logarithm, held so that no phase fills up or empties at once.
fn moved(carbon: f64, step: f64, filled: f64) -> f64 {
    (carbon * (step / carbon).clamp(-1.5, 1.5).exp()).min(MOST_FILLED * filled)
}

/// The two points with a common tangent, the first with less carbon or the second of fixed carbon.
pub(super) fn common_tangent(
    a: &Frozen<'_>,
    b: &Frozen<'_>,
    work: &mut Derivatives,
) -> Option<(Point, Point)> {
    if a.has_fixed_carbon() || a.carbon_place.is_none() {
        return None;
    }
    let start = |phase: &Frozen<'_>| match phase.slot.name {
        PhaseName::Cementite => phase.filled(),
        PhaseName::Ferrite => 3e-4 * phase.filled(),
        _ => 0.03 * phase.filled(),
    };
    let (mut ca, mut cb) = (start(a), start(b));
    for _ in 0..MOST_STEPS {
        let (pa, pb) = (a.at(ca, work), b.at(cb, work));
        let step_a;
        let step_b;
        if b.has_fixed_carbon() {
            // the tangent at a must pass through b
            let miss = pa.energy + pa.slope * (pb.carbon - ca) - pb.energy;
            step_a = -miss / (pa.curvature * (pb.carbon - ca));
            step_b = 0.0;
        } else {
            // equal slopes and equal potentials of the metal
            let slopes = pb.slope - pa.slope;
            let metals = pb.metal_potential() - pa.metal_potential();
            step_a = (metals + cb * slopes) / ((cb - ca) * pa.curvature);
            step_b = (metals + ca * slopes) / ((cb - ca) * pb.curvature);
        }
        if !(step_a.is_finite() && step_b.is_finite()) {
            return None;
        }
        if step_a.abs() < SETTLED && step_b.abs() < SETTLED {
            return (pa.curvature > 0.0).then_some((pa, pb));
        }
        ca = moved(ca, step_a, a.filled());
        if !b.has_fixed_carbon() {
            cb = moved(cb, step_b, b.filled());
        }
    }
    None
}
