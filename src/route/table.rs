//! Which quench still does it: every quenchant of the list, and those of the route that are not in
//! it, against sizes of the piece.

use super::baths::Baths;
use super::cautions::may_crack;
use super::error::RouteError;
use super::hardening::Hardening;
use super::margin::Verdict;
use super::other_quenches::Quencher;
use super::plan::{Quench, Route};
use super::prior::stock_before_soak;
use super::run::soak_for;
use super::shop_media::shop_media;
use super::spread::{Heats, Spread, kinetics_after};
use super::taught::Taught;
use super::validate::validate;
use crate::heat::{AGITATION, HeatTransfer, Medium, MediumChoice, Section, plate_to_nose_s};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;

/// Thicknesses of the flat pieces, and diameters of the rounds, mm.
const FLAT_MM: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];
const ROUND_MM: [f64; 6] = [3.0, 6.0, 10.0, 16.0, 25.0, 40.0];

/// Every quenchant, still, against sizes of the piece, at its centre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct QuenchTable {
    /// Thickness of flat pieces, or diameter of rounds where the route's piece is round, mm.
    pub sizes_mm: Vec<f64>,
    /// From the fastest quenchant to the slowest, by the time of a 3 mm plate to 540 °C.
    pub rows: Vec<TableRow>,
}

/// One quenchant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TableRow {
    /// By its name in the list; those of the route that are not there by their curve or bath.
    pub medium: MediumChoice,
    /// Whether it is so harsh for the carbon in solution that the piece may crack.
    pub may_crack: bool,
    /// One for each size; none where the heat model does not reach.
    pub cells: Vec<Option<TableCell>>,
}

/// One quenchant for one size.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TableCell {
    /// The word that the band allows.
    pub verdict: Verdict,
    /// Seconds to spare at the nose, negative when it misses.
    pub seconds: f64,
    /// Factor by which the whole quench may be slower and still harden the centre.
    pub factor: f64,
}

/// The table for a route's steel, soak and delay in air.
///
/// # Errors
/// As [`super::run`], and where the kinetics do not cover the dissolved composition.
pub fn quench_table(route: &Route) -> Result<QuenchTable, RouteError> {
    quench_table_as_taught(route, &|_| None)
}

/// The same with what earlier runs have taught of a route: what of it is of the quenchant goes by that of
/// each row.
///
/// # Errors
/// As [`quench_table`].
pub fn quench_table_as_taught(
    route: &Route,
    taught: &dyn Fn(&Route) -> Option<Taught>,
) -> Result<QuenchTable, RouteError> {
    validate(route)?;
    let planned = route;
    let route = Route {
        taught: taught(planned),
        ..planned.clone()
    };
    let route = &*route.as_taught();
    let baths = Baths::of(&route.quench)?;
    let stock = stock_before_soak(route)?;
    let soaked = soak_for(&stock.at(route.soak.temperature_c)?, route.soak.time_min)?;
    let hardening = Hardening::of_route(route, &soaked.end, &soaked.dissolved)?;
    let ends = [-1.0, 1.0].map(|side| {
        let soak_c = route.soak.temperature_c + side * route.soak_band_k();
        kinetics_after(route, &stock, soak_c)
    });
    let spread = Spread::of(
        route,
        &Heats::of(route, *stock.structure()),
        hardening.kinetics(),
        ends.each_ref().map(Option::as_ref),
    );
    let (sizes_mm, section): (_, fn(f64) -> Section) = match route.section {
        Section::Round { .. } => (ROUND_MM, |diameter_mm| Section::Round { diameter_mm }),
        Section::Square { .. } => (ROUND_MM, |side_mm| Section::Square { side_mm }),
        Section::Plate { .. } | Section::Blade { .. } => {
            (FLAT_MM, |thickness_mm| Section::Plate { thickness_mm })
        }
    };
    let row = |choice: MediumChoice, medium: &Medium| {
        let in_it = Route {
            quench: Quench {
                medium: choice.clone(),
                then: Vec::new(),
                ..planned.quench.clone()
            },
            ..planned.clone()
        };
        let Taught { off, left, .. } = taught(&in_it).unwrap_or_default();
        let quencher = Quencher {
            route,
            baths: &baths,
            kinetics: hardening.kinetics(),
            spread: Spread { left, ..spread },
        };
        let as_severe = as_severe(medium, off.heat_transfer_factor);
        let cell = |size_mm| {
            let margin = quencher.margin(as_severe.as_ref()?, section(size_mm))?;
            Some(TableCell {
                verdict: margin.verdict,
                seconds: margin.seconds,
                factor: margin.factor,
            })
        };
        TableRow {
            medium: choice,
            may_crack: may_crack(medium, soaked.end.carbon_wt),
            cells: sizes_mm.map(cell).to_vec(),
        }
    };
    let mut rows: Vec<TableRow> = shop_media()
        .map(|medium| row(MediumChoice::Named(medium.name.clone()), medium))
        .collect();
    for choice in not_in_the_list(&route.quench) {
        let medium = choice.resolve()?;
        let here_s = plate_to_nose_s(&medium);
        let is_faster = |row: &TableRow| {
            let listed = row.medium.resolve();
            listed.is_ok_and(|listed| plate_to_nose_s(&listed) <= here_s)
        };
        let place = rows.partition_point(is_faster);
        rows.insert(place, row(choice.clone(), &medium));
    }
    Ok(QuenchTable {
        sizes_mm: sizes_mm.to_vec(),
        rows,
    })
}

/// A quenchant, still, that takes so many times more heat than listed; none where the heat model does not
/// reach.
fn as_severe(medium: &Medium, factor: f64) -> Option<Cow<'_, Medium>> {
    if factor == 1.0 {
        return Some(Cow::Borrowed(medium));
    }
    let (least, most) = AGITATION;
    let factor = factor.clamp(least, most);
    let points = medium.h_w_m2k.points().map(|[at_c, h]| [at_c, factor * h]);
    let h_w_m2k = HeatTransfer::new(&points.collect::<Vec<_>>()).ok()?;
    Some(Cow::Owned(Medium {
        h_w_m2k,
        ..medium.clone()
    }))
}

/// Quenchants of a route that the list does not have as they are: the user's own, and those with
/// their bath at another temperature.
fn not_in_the_list(quench: &Quench) -> Vec<&MediumChoice> {
    let later = quench.then.iter().map(|next| &next.medium);
    let mut found: Vec<&MediumChoice> = Vec::new();
    for choice in std::iter::once(&quench.medium).chain(later) {
        if !matches!(choice, MediumChoice::Named(_)) && !found.contains(&choice) {
            found.push(choice);
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Leave, OwnMedium};
    use crate::route::{Deviation, Left, NextBath, run};

    #[test]
    fn thicker_pieces_have_less_to_spare() {
        let table = quench_table(&Route::example()).unwrap();
        assert!(table.rows.len() > 15);
        for row in &table.rows {
            let factors: Vec<f64> = row.cells.iter().map(|c| c.unwrap().factor).collect();
            for pair in factors.windows(2) {
                assert!(pair[1] < pair[0], "{:?}: {factors:?}", row.medium);
            }
        }
    }

    /// A cell says what the route says that it stands for.
    #[test]
    fn a_cell_is_the_route_that_it_loads() {
        cells_are_routes(&|_| None, 3e-3);
    }

    /// So it does with what runs have taught: of the oven and the heat the same in every row, of a quenchant
    /// in its own.
    #[test]
    fn a_cell_is_the_taught_route_that_it_loads() {
        let taught = |route: &Route| {
            let heat_transfer_factor = match route.quench.medium.listed() {
                Some("oil_fast") => 0.7,
                Some("oil_slow") => 1.4,
                _ => 1.0,
            };
            let off = Deviation {
                soak_k: -9.0,
                nose_time_factor: 0.9,
                heat_transfer_factor,
                ..Deviation::default()
            };
            let left = Left {
                heat_transfer: heat_transfer_factor.min(1.0),
                ..Left::default()
            };
            Some(Taught::new(off, left))
        };
        // In a slower quench the steps of the two differ more.
        cells_are_routes(&taught, 5e-3);
        let route = Route::example();
        let margins = |table: QuenchTable| -> Vec<f64> {
            let rows = table.rows.iter();
            rows.map(|row| row.cells[2].unwrap().factor).collect()
        };
        let [plain, with] = [
            quench_table(&route),
            quench_table_as_taught(&route, &taught),
        ];
        assert_ne!(margins(plain.unwrap()), margins(with.unwrap()));
    }

    fn cells_are_routes(taught: &dyn Fn(&Route) -> Option<Taught>, within: f64) {
        let route = Route::example();
        let table = quench_table_as_taught(&route, taught).unwrap();
        for (name, column) in [("oil_fast", 2), ("oil_slow", 4), ("air_still", 0)] {
            let named = MediumChoice::Named(name.to_owned());
            let row = table.rows.iter().find(|row| row.medium == named).unwrap();
            let mut loaded = route.clone();
            loaded.quench.medium = named;
            loaded.quench.agitation = 1.0;
            loaded.section = Section::Plate {
                thickness_mm: table.sizes_mm[column],
            };
            loaded.taught = taught(&loaded);
            let outcome = run(&loaded).unwrap();
            let margin = outcome.quench.transformed.given().unwrap().margin;
            let cell = row.cells[column].unwrap();
            assert_eq!(cell.verdict, margin.verdict, "{name}");
            // The route's own curve has the heat of martensite in it, and shorter steps.
            approx::assert_relative_eq!(cell.factor, margin.factor, max_relative = within);
            // Seconds are a difference of times: near zero their error is that of the arrival.
            approx::assert_abs_diff_eq!(
                cell.seconds,
                margin.seconds,
                epsilon = 1e-2 * margin.arrival_s
            );
        }
    }

    /// A curve of the user's own and a warmer bath have rows where their speed puts them.
    #[test]
    fn quenchants_of_the_route_that_are_not_in_the_list_have_rows() {
        let mut route = Route::example();
        let oil = |factor: f64| {
            MediumChoice::Own(OwnMedium {
                h_w_m2k: crate::heat::medium("oil_medium")
                    .unwrap()
                    .h_w_m2k
                    .points()
                    .map(|[t, h]| [t, factor * h])
                    .collect(),
                bath_c: 50.0,
                ..OwnMedium::default()
            })
        };
        let warm = MediumChoice::Named("oil_slow".to_owned()).with_bath(75.0);
        route.quench.medium = oil(1.05);
        let next = |medium: &MediumChoice| NextBath {
            leave: Leave::AtC(400.0),
            medium: medium.clone(),
            agitation: 1.0,
        };
        route.quench.then = vec![next(&warm), next(&oil(1.05))];
        let listed = quench_table(&Route::example()).unwrap().rows.len();
        let table = quench_table(&route).unwrap();
        assert_eq!(table.rows.len(), listed + 2);
        let place = |choice: &MediumChoice| {
            table
                .rows
                .iter()
                .position(|row| row.medium == *choice)
                .unwrap()
        };
        let medium = place(&MediumChoice::Named("oil_medium".to_owned()));
        assert_eq!(place(&oil(1.05)) + 1, medium);
        assert!(place(&warm) > medium);
    }
}
