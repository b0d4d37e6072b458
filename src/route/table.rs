//! Which quench still does it: every quenchant of the list against sizes of the piece.

use super::baths::Baths;
use super::cautions::may_crack;
use super::error::RouteError;
use super::hardening::Hardening;
use super::other_quenches::{Quencher, shop_media};
use super::outcome::Verdict;
use super::plan::Route;
use super::prior::stock_before_soak;
use super::run::soak_for;
use super::spread::{Heats, Spread, kinetics_after};
use super::validate::validate;
use crate::heat::Section;
use serde::{Deserialize, Serialize};

/// Thicknesses of the flat pieces, and diameters of the rounds, mm.
const FLAT_MM: [f64; 6] = [1.0, 2.0, 3.0, 4.0, 6.0, 10.0];
const ROUND_MM: [f64; 6] = [3.0, 6.0, 10.0, 16.0, 25.0, 40.0];

/// Every quenchant of the list, still, against sizes of the piece, at its centre.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct QuenchTable {
    /// Thickness of flat pieces, or diameter of rounds where the route's piece is round, mm.
    pub sizes_mm: Vec<f64>,
    /// By falling speed of the quenchant.
    pub rows: Vec<TableRow>,
}

/// One quenchant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TableRow {
    /// Its name in the list.
    pub medium: String,
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
    validate(route)?;
    let baths = Baths::of(&route.quench)?;
    let stock = stock_before_soak(route)?;
    let soaked = soak_for(&stock.at(route.soak.temperature_c)?, route.soak.time_min)?;
    let hardening = Hardening::of_route(route, &soaked.end, &soaked.dissolved)?;
    let ends = [-1.0, 1.0].map(|side| {
        let soak_c = route.soak.temperature_c + side * route.soak_band_k();
        kinetics_after(route, &stock, soak_c)
    });
    let quencher = Quencher {
        route,
        baths: &baths,
        kinetics: hardening.kinetics(),
        spread: Spread::of(
            route,
            &Heats::of(route, *stock.structure()),
            hardening.kinetics(),
            ends.each_ref().map(Option::as_ref),
        ),
    };
    let (sizes_mm, section): (_, fn(f64) -> Section) = match route.section {
        Section::Round { .. } => (ROUND_MM, |diameter_mm| Section::Round { diameter_mm }),
        Section::Square { .. } => (ROUND_MM, |side_mm| Section::Square { side_mm }),
        Section::Plate { .. } | Section::Blade { .. } => {
            (FLAT_MM, |thickness_mm| Section::Plate { thickness_mm })
        }
    };
    let rows = shop_media()
        .map(|medium| TableRow {
            medium: medium.name.clone(),
            may_crack: may_crack(medium, soaked.end.carbon_wt),
            cells: sizes_mm
                .map(|size_mm| {
                    let margin = quencher.margin(medium, section(size_mm))?;
                    Some(TableCell {
                        verdict: margin.verdict,
                        seconds: margin.seconds,
                        factor: margin.factor,
                    })
                })
                .to_vec(),
        })
        .collect();
    Ok(QuenchTable {
        sizes_mm: sizes_mm.to_vec(),
        rows,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::MediumChoice;
    use crate::route::run;

    #[test]
    fn thicker_pieces_have_less_to_spare() {
        let table = quench_table(&Route::example()).unwrap();
        assert!(table.rows.len() > 15);
        for row in &table.rows {
            let factors: Vec<f64> = row.cells.iter().map(|c| c.unwrap().factor).collect();
            for pair in factors.windows(2) {
                assert!(pair[1] < pair[0], "{}: {factors:?}", row.medium);
            }
        }
    }

    /// A cell says what the route says that it stands for.
    #[test]
    fn a_cell_is_the_route_that_it_loads() {
        let route = Route::example();
        let table = quench_table(&route).unwrap();
        for (name, column) in [("oil_fast", 2), ("oil_slow", 4), ("air_still", 0)] {
            let row = table.rows.iter().find(|row| row.medium == name).unwrap();
            let mut loaded = route.clone();
            loaded.quench.medium = MediumChoice::Named(name.to_owned());
            loaded.quench.agitation = 1.0;
            loaded.section = Section::Plate {
                thickness_mm: table.sizes_mm[column],
            };
            let outcome = run(&loaded).unwrap();
            let margin = outcome.quench.transformed.given().unwrap().margin;
            let cell = row.cells[column].unwrap();
            assert_eq!(cell.verdict, margin.verdict, "{name}");
            // The route's own curve has the heat of martensite in it, and shorter steps.
            approx::assert_relative_eq!(cell.factor, margin.factor, max_relative = 3e-3);
            // Seconds are a difference of times: near zero their error is that of the arrival.
            approx::assert_abs_diff_eq!(
                cell.seconds,
                margin.seconds,
                epsilon = 1e-2 * margin.arrival_s
            );
        }
    }
}
