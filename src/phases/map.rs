//! The phase map: boundaries of austenite against carbon for the alloy content of a steel.

use super::PhaseError;
use super::critical::{HIGHEST_C, Lines, RANGE};
use crate::steel::Composition;

/// Boundaries for the map of one alloy content; points are `[carbon wt %, temperature °C]`, in
/// order of carbon.
#[derive(Debug, Clone, PartialEq)]
pub struct PhaseMap {
    /// Where austenite begins, °C.
    pub a1_c: f64,
    /// Where the three phases end, °C; above `a1_c` in alloy steel.
    pub a1_upper_c: f64,
    /// Where the last ferrite goes, from no carbon to the eutectoid.
    pub a3: Vec<[f64; 2]>,
    /// Where the last cementite goes, from the eutectoid to 2 wt % carbon or 1147 °C.
    pub acm: Vec<[f64; 2]>,
    /// Carbon of the eutectoid, wt %.
    pub eutectoid_carbon_wt: f64,
}

/// Most carbon on the map, wt %.
const MOST_CARBON_WT: f64 = 2.0;
/// Pieces into which each line is cut.
const PIECES: u8 = 48;

/// The map of a steel's alloy content; its own carbon does not matter.
///
/// # Errors
/// As [`super::critical_temperatures`].
pub fn phase_map(steel: &Composition) -> Result<PhaseMap, PhaseError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let lines = Lines::of(steel);
    let eutectoid = [lines.eutectoid_carbon_wt, lines.a1_c];
    let part = |i: u8| f64::from(i) / f64::from(PIECES);
    let mut a3: Vec<[f64; 2]> = (0..PIECES)
        .map(|i| {
            let carbon_wt = part(i) * eutectoid[0];
            [carbon_wt, lines.a3_c(carbon_wt)]
        })
        .collect();
    a3.push(eutectoid);
    let top_c = if lines.acm_carbon_wt(HIGHEST_C) > MOST_CARBON_WT {
        lines.acm_c(MOST_CARBON_WT)
    } else {
        HIGHEST_C
    };
    let acm = std::iter::once(eutectoid)
        .chain((1..=PIECES).map(|i| {
            let temperature_c = lines.a1_c + part(i) * (top_c - lines.a1_c);
            [lines.acm_carbon_wt(temperature_c), temperature_c]
        }))
        .collect();
    Ok(PhaseMap {
        a1_c: lines.a1_c,
        a1_upper_c: lines.a1_c,
        a3,
        acm,
        eutectoid_carbon_wt: lines.eutectoid_carbon_wt,
    })
}
