//! The phase map: boundaries of austenite against carbon for the alloy content of a steel.

use super::critical::{Boundaries, Eutectoid, TOLERANCE_K, check, upwards};
use super::search::Upwards;
use super::{EquilibriumError, PhaseError};
use crate::steel::Composition;

/// Boundaries for the map of one alloy content; points are `[carbon wt %, temperature °C]`, in
/// order of carbon.
#[derive(Debug, Clone, PartialEq)]
pub struct PhaseMap {
    /// Where austenite begins at the steel's own carbon, °C.
    pub a1_c: f64,
    /// Where the three phases end at the steel's own carbon, °C; above `a1_c` in alloy steel.
    pub a1_upper_c: f64,
    /// Where the last ferrite goes, from no carbon, or from where that is at 1200 °C, to the
    /// eutectoid. In steels of 12 % Cr and more ferrite comes back at high temperature: the line
    /// begins where that is no longer so.
    pub a3: Vec<[f64; 2]>,
    /// Where the last carbide other than MC goes, from the eutectoid to 2 wt % carbon or 1200 °C.
    pub acm: Vec<[f64; 2]>,
    /// Where austenite begins: the lower end of A1.
    pub a1_lower: Vec<[f64; 2]>,
    /// Where ferrite and carbide no longer stand beside austenite together: the upper end of A1.
    pub a1_upper: Vec<[f64; 2]>,
    /// Carbon of the eutectoid, wt %.
    pub eutectoid_carbon_wt: f64,
}

/// Most carbon on the map, wt %.
const MOST_CARBON_WT: f64 = 2.0;
/// Least carbon of the lines A1, wt %: below, they end in the boundaries of ferrite.
const LEAST_CARBON_WT: f64 = 0.03;
/// Stands for no carbon, wt %.
const NO_CARBON_WT: f64 = 1e-4;
/// Top of the map, °C.
const TOP_C: f64 = 1200.0;
/// Pieces into which A3 and Acm are cut, and the lines A1.
const PIECES: u8 = 48;
const PIECES_OF_A1: u8 = 24;
/// Accuracy in carbon, wt %.
const TOLERANCE_WT: f64 = 1e-5;

/// The map of a steel's alloy content.
///
/// # Errors
/// As [`super::critical_temperatures`].
pub fn phase_map(steel: &Composition) -> Result<PhaseMap, PhaseError> {
    check(steel)?;
    let mut boundaries = Boundaries::default();
    let own = steel.with_carbon(steel.c.clamp(LEAST_CARBON_WT, MOST_CARBON_WT));
    let a1_c = boundaries.first_austenite_c(&own)?;
    let eutectoid = boundaries.eutectoid(steel, a1_c)?;
    let a1_upper_c = end_of_three_c(&mut boundaries, &own, a1_c, eutectoid)?;
    let mut a1_lower = Vec::with_capacity(usize::from(PIECES_OF_A1) + 1);
    let mut a1_upper = Vec::with_capacity(usize::from(PIECES_OF_A1) + 1);
    for i in 0..=PIECES_OF_A1 {
        let carbon_wt = LEAST_CARBON_WT + part(i, PIECES_OF_A1) * (MOST_CARBON_WT - LEAST_CARBON_WT);
        let here = steel.with_carbon(carbon_wt);
        let lower_c = boundaries.first_austenite_c(&here)?;
        let upper_c = end_of_three_c(&mut boundaries, &here, lower_c, eutectoid)?;
        a1_lower.push([carbon_wt, lower_c]);
        a1_upper.push([carbon_wt, upper_c]);
    }
    Ok(PhaseMap {
        a1_c,
        a1_upper_c,
        a3: a3(&mut boundaries, steel, eutectoid)?,
        acm: acm(&mut boundaries, steel, eutectoid)?,
        a1_lower,
        a1_upper,
        eutectoid_carbon_wt: eutectoid.carbon_wt,
    })
}

fn part(i: u8, of: u8) -> f64 {
    f64::from(i) / f64::from(of)
}

/// Where one of the two phases beside austenite is gone, °C.
fn end_of_three_c(
    boundaries: &mut Boundaries,
    steel: &Composition,
    a1_c: f64,
    eutectoid: Eutectoid,
) -> Result<f64, EquilibriumError> {
    let first = if steel.c < eutectoid.carbon_wt {
        boundaries.last_carbide_c(steel, a1_c)
    } else {
        boundaries.last_ferrite_c(steel, a1_c)
    }?;
    Ok(first.map_or(TOP_C, |t_c| t_c.min(TOP_C)))
}

/// The line A3, downwards.
fn a3(
    boundaries: &mut Boundaries,
    steel: &Composition,
    eutectoid: Eutectoid,
) -> Result<Vec<[f64; 2]>, EquilibriumError> {
    let iron = steel.with_carbon(NO_CARBON_WT);
    let bottom_c = eutectoid.temperature_c;
    let top_c = upwards(bottom_c, 20.0).first_change(|t_c| {
        let [ferrite, _] = boundaries.beside_austenite(&iron, t_c)?;
        Ok::<_, EquilibriumError>(ferrite)
    })?;
    let reaches_none = top_c.is_some_and(|t_c| t_c < TOP_C);
    let top_c = top_c.map_or(TOP_C, |t_c| t_c.min(TOP_C));
    let mut line = vec![[eutectoid.carbon_wt, bottom_c]];
    let mut carbon_wt = eutectoid.carbon_wt;
    let last = if reaches_none { PIECES - 1 } else { PIECES };
    for i in 1..=last {
        let t_c = bottom_c + part(i, PIECES) * (top_c - bottom_c);
        // carbon falls by about this much
        let step = 0.7 * carbon_wt / f64::from(PIECES + 1 - i);
        let found = Upwards {
            from: -carbon_wt,
            to: -NO_CARBON_WT,
            step,
            longest: 0.1,
            tolerance: TOLERANCE_WT,
        }
        .first_change(|minus_c_wt| {
            let here = steel.with_carbon(-minus_c_wt);
            let [ferrite, _] = boundaries.beside_austenite(&here, t_c)?;
            Ok::<_, EquilibriumError>(ferrite)
        })?;
        // without one, ferrite comes back on heating from here
        let Some(minus_c_wt) = found else {
            break;
        };
        carbon_wt = -minus_c_wt;
        line.push([carbon_wt, t_c]);
    }
    if reaches_none {
        line.push([0.0, top_c]);
    }
    line.reverse();
    Ok(line)
}

/// The line of the last carbide, upwards.
fn acm(
    boundaries: &mut Boundaries,
    steel: &Composition,
    eutectoid: Eutectoid,
) -> Result<Vec<[f64; 2]>, EquilibriumError> {
    let bottom_c = eutectoid.temperature_c;
    let mut line = vec![[eutectoid.carbon_wt, bottom_c]];
    let mut carbon_wt = eutectoid.carbon_wt;
    let height = |boundaries: &mut Boundaries, c_wt, t_c| {
        let [_, carbide] = boundaries.beside_austenite(&steel.with_carbon(c_wt), t_c)?;
        Ok::<_, EquilibriumError>(carbide)
    };
    let mut last_c = bottom_c;
    for i in 1..=PIECES {
        let t_c = bottom_c + part(i, PIECES) * (TOP_C - bottom_c);
        let found = Upwards {
            from: carbon_wt,
            to: MOST_CARBON_WT,
            step: 0.01,
            longest: 0.5,
            tolerance: TOLERANCE_WT,
        }
        .first_change(|c_wt| height(boundaries, c_wt, t_c))?;
        let Some(found) = found else {
            // the line leaves the map at its side
            let side_c = Upwards {
                from: last_c,
                to: t_c,
                step: 2.0,
                longest: 10.0,
                tolerance: TOLERANCE_K,
            }
            .first_change(|t_c| height(boundaries, MOST_CARBON_WT, t_c))?;
            line.extend(side_c.map(|t_c| [MOST_CARBON_WT, t_c]));
            break;
        };
        (carbon_wt, last_c) = (found, t_c);
        line.push([carbon_wt, t_c]);
    }
    Ok(line)
}
