//! The phase map: fields of stable phases over carbon and temperature for the alloy content of a
//! steel.

mod columns;
mod fields;
mod lines;
mod numbers;
mod strip;

use super::critical::{Boundaries, check};
use super::equilibrium::Column;
use super::{PhaseError, PhaseName};
use crate::steel::Composition;
use lines::Lines;
use strip::Strip;

/// The map of one alloy content: carbon 0 to 2 wt %, 600 to 1200 °C; points are
/// `[carbon wt %, temperature °C]`.
///
/// Lines lie within 0.1 K of the boundary at the contents of carbon that were searched, and are
/// straight in between, by no more than 2 K beside it. Where fields begin and end is foreseen from
/// both sides, in strips of 0.02 to 0.1 wt %; one that is smaller and lies between the contents
/// searched is not found.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct PhaseMap {
    /// All fields. They cover the map without gap or overlap, and neighbours share their points.
    pub fields: Vec<Field>,
    /// Where fields touch.
    pub boundaries: Vec<Boundary>,
    /// The fields at the steel's own carbon, from low to high.
    pub own: Vec<OwnField>,
    /// Where austenite begins at the steel's own carbon, °C.
    pub a1_c: f64,
    /// Where the three phases end at the steel's own carbon, °C; above `a1_c` in alloy steel.
    pub a1_upper_c: f64,
    /// Where the last ferrite goes with no carbide but MC and M6C beside it, from little carbon down
    /// to the eutectoid. Carbon may fall on the way in steels of 12 % Cr and more; in those of
    /// 17 % there may be no such line on the map, nor Acm: one of ferrite and carbide stands beside
    /// austenite up to the top.
    pub a3: Vec<[f64; 2]>,
    /// Where the last carbide other than MC and M6C goes without ferrite beside it, from the
    /// eutectoid up.
    pub acm: Vec<[f64; 2]>,
    /// Where ferrite and carbide begin to turn into austenite, in order of carbon: the lower line
    /// of A1.
    pub a1_lower: Vec<[f64; 2]>,
    /// Where ferrite and carbide no longer stand beside austenite together, in order of
    /// carbon: the upper line of A1.
    pub a1_upper: Vec<[f64; 2]>,
    /// Carbon of the eutectoid, wt %.
    pub eutectoid_carbon_wt: f64,
}

/// A field of the map: where the same phases are stable.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Field {
    /// The stable phases in the order of [`PhaseName::ALL`].
    pub phases: Vec<PhaseName>,
    /// The outline; the last point joins the first.
    pub outline: Vec<[f64; 2]>,
}

/// Where two fields touch.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Boundary {
    /// Place of the field below in [`PhaseMap::fields`].
    pub below: usize,
    /// Place of the field above.
    pub above: usize,
    /// The line, in order of carbon.
    pub points: Vec<[f64; 2]>,
}

/// A field at the steel's own carbon.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct OwnField {
    /// The stable phases in the order of [`PhaseName::ALL`].
    pub phases: Vec<PhaseName>,
    /// Lower end, °C; that of the map for the first.
    pub from_c: f64,
    /// Upper end, °C; that of the map for the last.
    pub to_c: f64,
}

impl PhaseMap {
    /// Temperatures of the map, °C.
    pub const RANGE_C: [f64; 2] = [LOWEST_C, HIGHEST_C];
    /// Most carbon on it, wt %.
    pub const MOST_CARBON_WT: f64 = MOST_CARBON_WT;
}

/// Extent of the map.
const MOST_CARBON_WT: f64 = 2.0;
const LOWEST_C: f64 = 600.0;
const HIGHEST_C: f64 = 1200.0;

/// Least carbon at which A1 is given, wt %: with less there may be no carbide below it.
const LEAST_CARBON_WT: f64 = 0.03;

/// The map of a steel's alloy content.
///
/// # Errors
/// As [`super::critical_temperatures`].
pub fn phase_map(steel: &Composition) -> Result<PhaseMap, PhaseError> {
    check(steel)?;
    let mut boundaries = Boundaries::default();
    let own_wt = steel.c.clamp(LEAST_CARBON_WT, MOST_CARBON_WT);
    let a1_c = boundaries.first_austenite_c(&steel.with_carbon(own_wt))?;
    let eutectoid = boundaries.eutectoid(steel, a1_c)?;
    let mut wanted_wt = vec![own_wt];
    if eutectoid.temperature_c < HIGHEST_C {
        wanted_wt.push(eutectoid.carbon_wt);
    }
    let columns = columns::columns(steel, &wanted_wt)?;
    let cells: Vec<strip::Cell> = (0..columns.len())
        .filter_map(|place| Strip::after(&columns, place))
        .flat_map(|strip| strip.cells())
        .collect();
    let (fields, borders) = fields::joined(&cells);
    let lines = Lines::of(&fields, &borders);
    let own = columns
        .iter()
        .find(|column| column.carbon_wt == own_wt)
        .map_or_else(Vec::new, own_fields);
    Ok(PhaseMap {
        a1_c,
        a1_upper_c: end_of_three_c(&own, a1_c),
        own,
        boundaries: borders
            .into_iter()
            .map(|border| Boundary {
                below: border.fields[0],
                above: border.fields[1],
                points: border.points,
            })
            .collect(),
        fields: fields
            .into_iter()
            .map(|field| Field {
                phases: field.set.names(),
                outline: field.outline,
            })
            .collect(),
        a3: lines.a3,
        acm: lines.acm,
        a1_lower: lines.a1_lower,
        a1_upper: lines.a1_upper,
        eutectoid_carbon_wt: eutectoid.carbon_wt,
    })
}

fn own_fields(column: &Column) -> Vec<OwnField> {
    let places = column.sets.iter().enumerate();
    places
        .map(|(place, set)| OwnField {
            phases: set.names(),
            from_c: column.edge_c(place),
            to_c: column.edge_c(place + 1),
        })
        .collect()
}

/// Where ferrite and carbide no longer stand beside austenite together, °C.
fn end_of_three_c(own: &[OwnField], a1_c: f64) -> f64 {
    let has_three = |field: &&OwnField| {
        let has = |name: &PhaseName| field.phases.contains(name);
        has(&PhaseName::Austenite)
            && has(&PhaseName::Ferrite)
            && super::critical::CARBIDES.iter().any(has)
    };
    let last = own.iter().rfind(has_three);
    last.map_or(a1_c, |field| field.to_c.max(a1_c))
}
