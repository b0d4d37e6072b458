//! Every place of the section: does it harden, by what margin, and what costs the rest?

use super::hardening::Hardening;
use super::margin::Margin;
use super::quenched::Judged;
use super::spread::Spread;
use super::verdict::judge;
use crate::heat::{Cooled, CoolingCurve, Place};
use crate::steel::OutOfRange;
use crate::transform::{Fractions, Product};
use serde::Serialize;

/// How one place of the section stands after the quench.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PlaceOutcome {
    /// Which place.
    pub place: Place,
    /// How its verdict stands, judged on its own cooling curve as that of the deciding place is.
    pub margin: Margin,
    /// Its constituents at the end of the quench.
    pub fractions: Fractions,
    /// Martensite and retained austenite as a fraction of what was austenite, with bainite where the
    /// piece is held for it.
    pub hardened_fraction: f64,
    /// What took most of the rest; none where next to nothing did.
    pub cost: Option<Product>,
}

/// Volume fraction from which a product counts as what cost the rest.
const TOLD: f64 = 0.005;

/// What the places of a quench share.
pub(super) struct Places<'a> {
    /// Their austenite.
    pub(super) hardening: &'a Hardening,
    /// Their curves without heat of what forms.
    pub(super) judged: &'a Judged<'a>,
    /// Factor by which the heat transfer is uncertain either way.
    pub(super) band_factor: f64,
    /// What is open about the austenite.
    pub(super) spread: &'a Spread,
}

impl Places<'_> {
    /// A place by its number, with its cooling curve and what it became.
    pub(super) fn place(
        &self,
        number: usize,
        curve: &CoolingCurve,
        fractions: Fractions,
    ) -> Result<PlaceOutcome, OutOfRange> {
        let judged = self.judged.curve(number);
        let margin = judge(
            self.hardening.kinetics(),
            judged.as_deref().unwrap_or(curve),
            self.band_factor,
            self.spread,
        )?;
        let bainite = self.judged.held_c.map(|_| fractions.bainite_of_matrix());
        Ok(PlaceOutcome {
            place: curve.place,
            margin,
            fractions,
            hardened_fraction: fractions.hardened() + bainite.unwrap_or_default(),
            cost: cost(&fractions, bainite.is_some()),
        })
    }

    /// All places, of which the deciding one is known.
    pub(super) fn all(
        &self,
        cooled: &Cooled,
        deciding: &PlaceOutcome,
    ) -> Result<Vec<PlaceOutcome>, OutOfRange> {
        let place = |(number, curve): (usize, &CoolingCurve)| {
            if number == cooled.slowest {
                return Ok(*deciding);
            }
            self.place(number, curve, self.hardening.formed_along(curve)?)
        };
        cooled.curves.iter().enumerate().map(place).collect()
    }
}

/// The product that took most; bainite only where it is not wanted.
fn cost(fractions: &Fractions, is_bainite_wanted: bool) -> Option<Product> {
    Product::ALL
        .into_iter()
        .filter(|product| !(is_bainite_wanted && *product == Product::Bainite))
        .filter(|product| fractions.of(*product) >= TOLD)
        .max_by(|a, b| fractions.of(*a).total_cmp(&fractions.of(*b)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Grind, Leave, MediumChoice, Section};
    use crate::route::{NextBath, Route, Verdict, run};
    use crate::steel::find;

    fn places(route: &Route) -> Vec<PlaceOutcome> {
        let quench = run(route).unwrap().quench;
        let quenched = quench.transformed.given().unwrap();
        // The place that decides is told twice alike.
        let deciding = quenched.places[quench.deciding];
        assert_eq!(deciding.margin, quenched.margin);
        assert_eq!(deciding.fractions, quenched.fractions);
        assert_eq!(deciding.hardened_fraction, quenched.hardened_fraction);
        quenched.places.clone()
    }

    fn of(designation: &str, section: Section, medium: &str) -> Route {
        let mut route = Route::example();
        route.take_grade(find(designation).unwrap());
        route.section = section;
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        route
    }

    /// Notes on quenching, computed there by an earlier solver of this project: in oil the edge of a
    /// 0.5 to 4 mm blade of 1095 hardens and its spine does not; the slowest place is at about three
    /// quarters of the height, as the spine's own face cools it too.
    #[test]
    fn an_edge_may_harden_where_the_spine_does_not() {
        let blade = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 30.0,
            grind: Grind::Straight,
        };
        let told = places(&of("1095", blade, "oil_medium"));
        let at = |place: Place| *told.iter().find(|told| told.place == place).unwrap();
        let edge = at(Place::Edge);
        assert!(edge.margin.factor > 1.0 && edge.hardened_fraction > 0.95 && edge.cost.is_none());
        let [quarter, middle, upper] =
            [Place::Quarter, Place::Middle, Place::ThreeQuarter].map(|p| at(p).margin.factor);
        assert!(edge.margin.factor > quarter && quarter > middle && middle > upper);
        assert!(at(Place::Spine).margin.factor > upper);
        let core = at(Place::ThreeQuarter);
        assert!(core.hardened_fraction < 0.95 && core.margin.verdict != Verdict::Holds);
        assert_eq!(core.cost, Some(Product::Pearlite));
    }

    /// The depth of hardening ends between the last place that hardens and the first that does not, also where
    /// the core of the spine lies low, in a blade not much higher than thick.
    #[test]
    fn the_depth_of_hardening_lies_between_the_places() {
        for (edge_mm, spine_mm, height_mm, medium, agitation) in [
            (0.5, 12.0, 6.0, "oil_medium", 3.0),
            (1.0, 16.0, 10.0, "oil_fast", 3.0),
            (1.0, 16.0, 20.0, "water20", 3.0),
            (0.5, 4.0, 30.0, "oil_medium", 1.0),
        ] {
            let section = Section::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                grind: Grind::Straight,
            };
            let mut route = of("1095", section, medium);
            route.quench.agitation = agitation;
            let quench = run(&route).unwrap().quench;
            let quenched = quench.transformed.given().unwrap();
            let mut heights: Vec<(f64, f64)> = quenched
                .places
                .iter()
                .filter_map(|told| {
                    let height = match told.place {
                        Place::Edge => 0.0,
                        Place::Quarter => 0.25 * height_mm,
                        Place::Middle => 0.5 * height_mm,
                        Place::ThreeQuarter => 0.75 * height_mm,
                        Place::Spine => section.spine_core_mm()?,
                        _ => return None,
                    };
                    Some((height, told.hardened_fraction))
                })
                .collect();
            heights.sort_by(|a, b| a.0.total_cmp(&b.0));
            let first_soft = heights.iter().position(|(_, part)| *part < 0.95).unwrap();
            let depth_mm = quenched.hardened_depth_mm.unwrap();
            // Straight between the two.
            let expected_mm = first_soft.checked_sub(1).map_or(0.0, |last_hard| {
                let [(from, was), (to, is)] = [heights[last_hard], heights[first_soft]];
                from + (to - from) * (was - 0.95) / (was - is)
            });
            assert!(
                (depth_mm - expected_mm).abs() < 0.01 * height_mm,
                "{section:?}: {depth_mm}, not {expected_mm}, {heights:?}"
            );
        }
    }

    /// What lies further out cools sooner.
    #[test]
    fn centre_surface_and_corner_have_more_to_spare_in_this_order() {
        let square = Section::Square { side_mm: 25.0 };
        let told = places(&of("4140", square, "oil_fast"));
        let factor = |place: Place| {
            let told = told.iter().find(|told| told.place == place).unwrap();
            told.margin.factor
        };
        let [centre, surface, corner] = [Place::Centre, Place::Surface, Place::Corner].map(factor);
        assert!(centre < surface && surface < corner, "{told:?}");
    }

    /// Held for bainite, bainite costs nothing.
    #[test]
    fn wanted_bainite_is_no_cost() {
        let mut route = of(
            "52100",
            Section::Plate { thickness_mm: 1.5 },
            "salt200_agit_wet",
        );
        route.quench.medium = route.quench.medium.with_bath(280.0);
        route.quench.then = vec![NextBath {
            leave: Leave::AfterS(7200.0),
            medium: MediumChoice::Named("air_still".to_owned()),
            agitation: 1.0,
        }];
        for place in places(&route) {
            assert!(place.fractions.bainite > 0.5, "{place:?}");
            assert!(
                place.hardened_fraction > 0.95 && place.cost.is_none(),
                "{place:?}"
            );
        }
    }
}
