//! Temperatures at which phases come and go: the critical temperatures of a steel.

use super::slots::Amounts;
use super::solver::Solver;
use super::state::{MODEL, RANGE};
use super::{EquilibriumError, PhaseName, ZERO_C_K};
use crate::numeric::roots::bracketed_root;
use crate::steel::{Composition, OutOfRange};

/// Temperatures searched, °C: nickel and manganese can hold A1 below the range of single points.
pub(super) const LOWEST_C: f64 = 500.0;
pub(super) const HIGHEST_C: f64 = 1250.0;

/// Step of the search, K; a phase that is stable over less than this may be missed.
const STEP_K: f64 = 25.0;

/// Accuracy of each temperature, K.
const TOLERANCE_K: f64 = 0.02;

/// Accuracy on the map, K, where a line is a pixel wide.
pub(super) const MAP_TOLERANCE_K: f64 = 0.1;

/// Temperatures between which a phase is stable.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct StableRange {
    /// The phase.
    pub name: PhaseName,
    /// Temperature at which it appears on heating, °C; `None` when it is stable at 500 °C.
    pub from_c: Option<f64>,
    /// Temperature at which it vanishes on heating, °C; `None` when it is stable at 1250 °C.
    pub to_c: Option<f64>,
}

/// Critical temperatures of full equilibrium.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct CriticalPoints {
    /// Temperature at which austenite appears on heating, °C: the lower end of A1.
    pub a1_lower_c: f64,
    /// Temperature at which either ferrite or the carbide of pearlite is gone, °C: the upper end
    /// of A1. Equal to the lower end in plain iron and carbon.
    pub a1_upper_c: f64,
    /// Temperature at which the last ferrite is gone, °C; `None` when some is left at 1250 °C.
    pub last_ferrite_c: Option<f64>,
    /// Temperature at which the last cementite, M7C3 or M23C6 is gone, °C; `None` when some is
    /// left at 1250 °C or there never was any.
    pub last_pearlitic_carbide_c: Option<f64>,
    /// Temperature at which the last carbide of any kind is gone, °C; `None` when some is left at
    /// 1250 °C or there never was any.
    pub last_carbide_c: Option<f64>,
    /// Every phase with the temperatures between which it is stable, from low to high.
    pub ranges: Vec<StableRange>,
}

/// Critical temperatures of a steel at full equilibrium. Heating through them takes more
/// (10 to 40 K at furnace rates), cooling less.
///
/// # Errors
/// A composition that is no steel or outside [`RANGE`], a steel without austenite or with
/// austenite at all temperatures from 500 to 1250 °C, or a search that did not come to rest.
pub fn critical_points(steel: &Composition) -> Result<CriticalPoints, EquilibriumError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let amounts = Amounts::new(steel);
    let mut solver = Solver::new(&amounts);
    let ranges = stable_ranges(&mut solver, &amounts, (LOWEST_C, HIGHEST_C), TOLERANCE_K)?;
    let of = |name: PhaseName| ranges.iter().filter(move |r| r.name == name);
    let a1_lower_c = of(PhaseName::Austenite)
        .filter_map(|r| r.from_c)
        .reduce(f64::min)
        .ok_or(OutOfRange {
            model: MODEL,
            quantity: "start of austenite",
            value: f64::NAN,
            least: LOWEST_C,
            largest: HIGHEST_C,
            unit: "°C",
        })?;
    // the last of several phases, if all of them go
    let last = |names: &[PhaseName]| {
        let ends = ranges.iter().filter(|r| names.contains(&r.name));
        ends.map(|r| r.to_c)
            .reduce(|a, b| a.zip(b).map(|(a, b)| a.max(b)))
    };
    let pearlitic = [PhaseName::Cementite, PhaseName::M7C3, PhaseName::M23C6];
    let carbides: Vec<PhaseName> = PhaseName::ALL
        .into_iter()
        .filter(|name| name.is_carbide())
        .collect();
    let ferrite = last(&[PhaseName::Ferrite]);
    let carbide = last(&pearlitic);
    // a phase that never was ends the range of three phases at its start
    let end = |last: Option<Option<f64>>| match last {
        Some(to_c) => to_c.unwrap_or(HIGHEST_C),
        None => a1_lower_c,
    };
    Ok(CriticalPoints {
        a1_lower_c,
        a1_upper_c: end(ferrite).min(end(carbide)).max(a1_lower_c),
        last_ferrite_c: ferrite.flatten(),
        last_pearlitic_carbide_c: carbide.flatten(),
        last_carbide_c: last(&carbides).flatten(),
        ranges,
    })
}

/// Ranges of all phases of a steel between two temperatures, found on cooling.
pub(super) fn stable_ranges(
    solver: &mut Solver,
    amounts: &Amounts,
    (lowest_c, highest_c): (f64, f64),
    tolerance_k: f64,
) -> Result<Vec<StableRange>, EquilibriumError> {
    let steps = ((highest_c - lowest_c) / STEP_K).ceil();
    let mut ranges: Vec<StableRange> = Vec::new();
    // phases now stable, with the temperature at which each vanishes on heating
    let mut open: Vec<(PhaseName, Option<f64>)> = Vec::new();
    let mut above_c = highest_c;
    for step in 0..=steps as u32 {
        let at_c = (highest_c - STEP_K * f64::from(step)).max(lowest_c);
        solver.solve(amounts, at_c + ZERO_C_K)?;
        let stable = stable_set(solver);
        for name in PhaseName::ALL {
            let was = open.iter().position(|(open, _)| *open == name);
            if was.is_some() == stable.contains(&name) {
                continue;
            }
            let before = solver.save();
            match (was, stable.contains(&name)) {
                (None, true) if step == 0 => open.push((name, None)),
                (None, true) => {
                    let to_c = boundary(solver, amounts, name, (at_c, above_c), tolerance_k)?;
                    open.push((name, Some(to_c)));
                }
                (Some(place), false) => {
                    let (_, to_c) = open.remove(place);
                    let from_c = boundary(solver, amounts, name, (at_c, above_c), tolerance_k)?;
                    ranges.push(StableRange {
                        name,
                        from_c: Some(from_c),
                        to_c,
                    });
                }
                _ => {}
            }
            solver.restore(before);
        }
        above_c = at_c;
        // without austenite nothing is left to happen that matters to heat treating
        if !stable.contains(&PhaseName::Austenite) && at_c < 700.0 {
            break;
        }
    }
    ranges.extend(open.into_iter().map(|(name, to_c)| StableRange {
        name,
        from_c: None,
        to_c,
    }));
    ranges.sort_by(|a, b| {
        let place = |r: &StableRange| r.from_c.unwrap_or(f64::NEG_INFINITY);
        place(a).total_cmp(&place(b)).then(a.name.cmp(&b.name))
    });
    Ok(ranges)
}

/// Names of the phases in the set that a solver has found.
pub(super) fn stable_set(solver: &Solver) -> Vec<PhaseName> {
    let slots = solver.phases.slots.iter();
    let mut names: Vec<PhaseName> = slots.filter(|s| s.active).map(|s| s.name).collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Temperature between two others, °C, at which a phase comes or goes: where its lowest height
/// above the equilibrium of all other phases is zero.
pub(super) fn boundary(
    solver: &mut Solver,
    amounts: &Amounts,
    name: PhaseName,
    (low_c, high_c): (f64, f64),
    tolerance_k: f64,
) -> Result<f64, EquilibriumError> {
    let mut failure = None;
    let mut height_at = |at_c: f64| match height_without(solver, amounts, name, at_c) {
        Ok(height) => height,
        Err(error) => {
            failure = Some(error);
            f64::NAN
        }
    };
    let root = bracketed_root(&mut height_at, low_c, high_c, tolerance_k);
    match (root, failure) {
        (Ok(at_c), _) => Ok(at_c),
        (Err(_), Some(error)) => Err(error),
        (Err(_), None) => Err(EquilibriumError::NotConverged {
            temperature_c: 0.5 * (low_c + high_c),
        }),
    }
}

/// Lowest height of a phase above the equilibrium of all others, in units of RT per mole of atoms:
/// negative where the phase is stable.
pub(super) fn height_without(
    solver: &mut Solver,
    amounts: &Amounts,
    name: PhaseName,
    at_c: f64,
) -> Result<f64, EquilibriumError> {
    solver.suspend(Some(name));
    let solved = solver.solve(amounts, at_c + ZERO_C_K);
    let height = if solved.is_ok() {
        solver.height_of(name, amounts).min(LARGE)
    } else {
        LARGE
    };
    solver.suspend(None);
    solved.map(|()| height)
}

/// Stands for the height of a phase that has no minimum of its own, in units of RT.
const LARGE: f64 = 1.0;
