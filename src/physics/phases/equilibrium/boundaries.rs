//! Temperatures at which phases come and go: the critical temperatures of a steel.

use super::column::{Column, ColumnSearch};
use super::state::{MODEL, RANGE};
use super::{EquilibriumError, PhaseName};
use crate::numeric::order;
use crate::steel::{Composition, OutOfRange};
use crate::units::NumberOutside;
use recalesce_texts::phases as texts;

/// Temperatures searched, °C: nickel and manganese can hold A1 below the range of single points.
const LOWEST_C: f64 = 500.0;
const HIGHEST_C: f64 = 1250.0;

/// Accuracy of each temperature, K.
const TOLERANCE_K: f64 = 0.02;

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
    let column = ColumnSearch::new([LOWEST_C, HIGHEST_C], TOLERANCE_K).at(steel, &[], None)?;
    let ranges = stable_ranges(&column);
    let of = |name: PhaseName| ranges.iter().filter(move |r| r.name == name);
    let a1_lower_c = of(PhaseName::Austenite)
        .filter_map(|r| r.from_c)
        .reduce(f64::min)
        .ok_or(OutOfRange {
            model: MODEL,
            number: NumberOutside {
                field: texts::START_OF_AUSTENITE,
                value: f64::NAN,
                least: LOWEST_C,
                most: HIGHEST_C,
                unit: "°C",
            },
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

/// Temperatures between which each phase of a column is stable, from low to high.
fn stable_ranges(column: &Column) -> Vec<StableRange> {
    let mut ranges = Vec::new();
    for name in PhaseName::ALL {
        let mut from: Option<Option<f64>> = None;
        for (place, set) in column.sets.iter().enumerate() {
            let begins_c = (place > 0).then(|| column.edge_c(place));
            if set.has(name) {
                from = from.or(Some(begins_c));
            } else if let Some(from_c) = from.take() {
                ranges.push(StableRange {
                    name,
                    from_c,
                    to_c: begins_c,
                });
            }
        }
        ranges.extend(from.map(|from_c| StableRange {
            name,
            from_c,
            to_c: None,
        }));
    }
    order::sort_by(&mut ranges, |a, b| {
        let place = |r: &StableRange| r.from_c.unwrap_or(f64::NEG_INFINITY);
        place(a).total_cmp(&place(b)).then(a.name.cmp(&b.name))
    });
    ranges
}
