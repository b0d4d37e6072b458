//! The phase map of a steel: the temperatures at which phases come and go against carbon, all
//! other contents held.

use super::boundaries::{MAP_TOLERANCE_K, StableRange, height_without, stable_ranges, stable_set};
use super::slots::Amounts;
use super::solver::Solver;
use super::state::RANGE;
use super::{EquilibriumError, PhaseName, ZERO_C_K};
use crate::numeric::roots::bracketed_root;
use crate::steel::Composition;

/// Extent of the map.
const LARGEST_CARBON_WT: f64 = 2.0;
const LOWEST_C: f64 = 550.0;
const HIGHEST_C: f64 = 1200.0;

/// Columns: the step of carbon, wt %, and further contents near zero, where lines are steep.
const STEP_WT: f64 = 0.05;
const NEAR_ZERO_WT: [f64; 5] = [0.0, 0.005, 0.01, 0.02, 0.03];

/// Columns between two that are searched over all temperatures; those between follow the lines.
const SEARCHED_EVERY: usize = 5;

/// How far from where a line is expected it is looked for, K.
const REACH_K: f64 = 6.0;

/// A line along which the amount of a phase is zero.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PhaseLine {
    /// The phase.
    pub phase: PhaseName,
    /// True when the phase is stable below the line, false when above it.
    pub stable_below: bool,
    /// Points: carbon, wt %, and temperature, °C, in order of carbon.
    pub points: Vec<[f64; 2]>,
}

/// The map: carbon 0 to 2 wt %, 550 to 1200 °C, the other contents as in the steel.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Isopleth {
    /// All lines; between two of them the set of stable phases is the same.
    pub lines: Vec<PhaseLine>,
    /// End of ferrite on heating up to the eutectoid carbon: A3.
    pub a3: Vec<[f64; 2]>,
    /// End of cementite, M7C3 and M23C6 on heating from the eutectoid carbon: Acm.
    pub acm: Vec<[f64; 2]>,
    /// Start of austenite on heating: the lower line of A1.
    pub a1_lower: Vec<[f64; 2]>,
    /// End of ferrite or of those carbides on heating, whichever is first: the upper line of A1.
    pub a1_upper: Vec<[f64; 2]>,
    /// Where A3 and Acm meet: carbon, wt %, and temperature, °C.
    pub eutectoid: Option<[f64; 2]>,
}

/// Ranges of the phases at one carbon content.
#[derive(Debug, Clone)]
struct Column {
    carbon_wt: f64,
    ranges: Vec<StableRange>,
}

/// Computes the map of a steel's alloy content.
///
/// # Errors
/// A composition that is no steel or outside [`RANGE`], or a search that did not come to rest.
pub fn isopleth(steel: &Composition) -> Result<Isopleth, EquilibriumError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let mut carbon_wt: Vec<f64> = NEAR_ZERO_WT.to_vec();
    let count = (LARGEST_CARBON_WT / STEP_WT).round() as u32;
    carbon_wt.extend((1..=count).map(|i| STEP_WT * f64::from(i)));
    let columns = columns(steel, &carbon_wt)?;
    Ok(assemble(&columns))
}

fn columns(steel: &Composition, carbon_wt: &[f64]) -> Result<Vec<Column>, EquilibriumError> {
    let mut solver: Option<Solver> = None;
    let mut found: Vec<Column> = Vec::with_capacity(carbon_wt.len());
    let mut from = 0;
    while from < carbon_wt.len() {
        let to = (from + SEARCHED_EVERY - 1).min(carbon_wt.len() - 1);
        // the last of the group is searched; if it has the lines of the one before the group,
        // those between follow them
        let last = searched(&mut solver, steel, carbon_wt[to])?;
        let follows = found.last().is_some_and(|before| same_lines(before, &last));
        for content in &carbon_wt[from..to] {
            let followed = if follows {
                follow(&mut solver, steel, *content, &found)?
            } else {
                None
            };
            let column = match followed {
                Some(column) => column,
                None => searched(&mut solver, steel, *content)?,
            };
            found.push(column);
        }
        found.push(last);
        from = to + 1;
    }
    Ok(found)
}

fn solver_for<'a>(solver: &'a mut Option<Solver>, amounts: &Amounts) -> &'a mut Solver {
    if solver
        .as_ref()
        .is_some_and(|s| s.phases.present != amounts.present)
    {
        *solver = None;
    }
    solver.get_or_insert_with(|| Solver::new(amounts))
}

fn searched(
    solver: &mut Option<Solver>,
    steel: &Composition,
    carbon_wt: f64,
) -> Result<Column, EquilibriumError> {
    let amounts = Amounts::new(&steel.with_carbon(carbon_wt));
    let solver = solver_for(solver, &amounts);
    let ranges = stable_ranges(solver, &amounts, (LOWEST_C, HIGHEST_C), MAP_TOLERANCE_K)?;
    Ok(Column { carbon_wt, ranges })
}

/// The same phases come and go in both columns.
fn same_lines(a: &Column, b: &Column) -> bool {
    let key = |r: &StableRange| (r.name, r.from_c.is_some(), r.to_c.is_some());
    let keys = |column: &Column| {
        let mut keys: Vec<_> = column.ranges.iter().map(key).collect();
        keys.sort_unstable();
        keys
    };
    keys(a) == keys(b)
}

/// Follows every line from the two columns before; `None` when one is not where it is expected.
fn follow(
    solver: &mut Option<Solver>,
    steel: &Composition,
    carbon_wt: f64,
    found: &[Column],
) -> Result<Option<Column>, EquilibriumError> {
    let [.., earlier, before] = found else {
        return Ok(None);
    };
    let amounts = Amounts::new(&steel.with_carbon(carbon_wt));
    let solver = solver_for(solver, &amounts);
    let share = (carbon_wt - before.carbon_wt) / (before.carbon_wt - earlier.carbon_wt);
    let mut ranges = before.ranges.clone();
    for range in &mut ranges {
        let old = earlier.ranges.iter().find(|r| r.name == range.name);
        for (end, old_end) in [
            (&mut range.from_c, old.and_then(|r| r.from_c)),
            (&mut range.to_c, old.and_then(|r| r.to_c)),
        ] {
            let Some(now_c) = *end else { continue };
            let slope_k = old_end.map_or(0.0, |old_c| now_c - old_c);
            let expected_c = now_c + share * slope_k;
            match near(solver, &amounts, range.name, expected_c, slope_k)? {
                Some(at_c) => *end = Some(at_c),
                None => return Ok(None),
            }
        }
        if range.from_c > range.to_c && range.to_c.is_some() {
            return Ok(None);
        }
    }
    Ok(Some(Column { carbon_wt, ranges }))
}

/// A boundary near an expected temperature.
fn near(
    solver: &mut Solver,
    amounts: &Amounts,
    name: PhaseName,
    expected_c: f64,
    slope_k: f64,
) -> Result<Option<f64>, EquilibriumError> {
    let reach_k = REACH_K + 0.3 * slope_k.abs();
    let low_c = (expected_c - reach_k).max(LOWEST_C);
    let high_c = (expected_c + reach_k).min(HIGHEST_C);
    if low_c >= high_c {
        return Ok(None);
    }
    let mut failure = None;
    let root = bracketed_root(
        |at_c| {
            height_without(solver, amounts, name, at_c).unwrap_or_else(|error| {
                failure = Some(error);
                f64::NAN
            })
        },
        low_c,
        high_c,
        MAP_TOLERANCE_K,
    );
    match failure {
        Some(error) => Err(error),
        None => Ok(root.ok()),
    }
}

const PEARLITIC: [PhaseName; 3] = [PhaseName::Cementite, PhaseName::M7C3, PhaseName::M23C6];

fn assemble(columns: &[Column]) -> Isopleth {
    let last = |column: &Column, names: &[PhaseName]| {
        let ends = column.ranges.iter().filter(|r| names.contains(&r.name));
        ends.map(|r| r.to_c.unwrap_or(HIGHEST_C)).reduce(f64::max)
    };
    let mut map = Isopleth {
        lines: lines(columns),
        a3: Vec::new(),
        acm: Vec::new(),
        a1_lower: Vec::new(),
        a1_upper: Vec::new(),
        eutectoid: None,
    };
    // ends of ferrite and of the carbide at each carbon content
    let ends: Vec<[f64; 3]> = columns
        .iter()
        .map(|column| {
            let ferrite_c = last(column, &[PhaseName::Ferrite]).unwrap_or(LOWEST_C);
            let carbide_c = last(column, &PEARLITIC).unwrap_or(LOWEST_C);
            [column.carbon_wt, ferrite_c, carbide_c]
        })
        .collect();
    let crossing = ends
        .windows(2)
        .position(|pair| pair[0][1] > pair[0][2] && pair[1][1] <= pair[1][2]);
    map.eutectoid = crossing.and_then(|at| meeting(&ends, at));
    for (place, [carbon, ferrite_c, carbide_c]) in ends.iter().copied().enumerate() {
        if crossing.is_none_or(|at| place <= at) && ferrite_c > carbide_c {
            map.a3.push([carbon, ferrite_c]);
        } else if crossing.is_some_and(|at| place > at) && carbide_c < HIGHEST_C {
            map.acm.push([carbon, carbide_c]);
        }
    }
    if let Some(at) = map.eutectoid {
        map.a3.push(at);
        map.acm.insert(0, at);
    }
    for (column, [carbon, ferrite_c, carbide_c]) in columns.iter().zip(ends) {
        let mut austenite = column
            .ranges
            .iter()
            .filter(|r| r.name == PhaseName::Austenite);
        let start = austenite.find_map(|r| r.from_c);
        if let (Some(start_c), true) = (start, carbide_c > LOWEST_C) {
            map.a1_lower.push([carbon, start_c]);
            map.a1_upper
                .push([carbon, ferrite_c.min(carbide_c).max(start_c)]);
        }
    }
    map
}

/// Where the end of ferrite, followed on from lower carbon, meets the end of the carbide, followed
/// back from higher carbon: both bend at their crossing, between two columns.
fn meeting(ends: &[[f64; 3]], at: usize) -> Option<[f64; 2]> {
    let (low, high) = (ends.get(at)?, ends.get(at + 1)?);
    let line = |from: &[f64; 3], to: Option<&[f64; 3]>, which: usize| {
        to.map_or(0.0, |to| (from[which] - to[which]) / (from[0] - to[0]))
    };
    let a3_slope = line(low, at.checked_sub(1).and_then(|k| ends.get(k)), 1);
    let acm_slope = line(high, ends.get(at + 2), 2);
    let carbon =
        (high[2] - low[1] + a3_slope * low[0] - acm_slope * high[0]) / (a3_slope - acm_slope);
    let carbon = if carbon.is_finite() {
        carbon.clamp(low[0], high[0])
    } else {
        0.5 * (low[0] + high[0])
    };
    Some([carbon, low[1] + a3_slope * (carbon - low[0])])
}

/// Joins the ends of ranges of neighbouring columns into lines.
fn lines(columns: &[Column]) -> Vec<PhaseLine> {
    let mut lines = Vec::new();
    for phase in PhaseName::ALL {
        for stable_below in [true, false] {
            let mut points: Vec<[f64; 2]> = Vec::new();
            let mut finish = |points: &mut Vec<[f64; 2]>| {
                let points = std::mem::take(points);
                if points.len() > 1 {
                    lines.push(PhaseLine {
                        phase,
                        stable_below,
                        points,
                    });
                }
            };
            for column in columns {
                let of_it = column.ranges.iter().filter(|r| r.name == phase);
                let ends = of_it.filter_map(|r| if stable_below { r.to_c } else { r.from_c });
                match ends.reduce(f64::max) {
                    Some(at_c) => points.push([column.carbon_wt, at_c]),
                    None => finish(&mut points),
                }
            }
            finish(&mut points);
        }
    }
    lines
}

/// Names of the stable phases at a point of the map, for its label.
///
/// # Errors
/// As [`super::equilibrium`].
pub fn stable_phases(
    steel: &Composition,
    temperature_c: f64,
) -> Result<Vec<PhaseName>, EquilibriumError> {
    super::state::check(steel, temperature_c)?;
    let amounts = Amounts::new(steel);
    let mut solver = Solver::new(&amounts);
    solver.solve(&amounts, temperature_c + ZERO_C_K)?;
    Ok(stable_set(&solver))
}
