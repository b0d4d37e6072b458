//! What widens the band of a margin beside the quenchant and the model: the heat of the steel, and
//! the soak.

use super::hardening::Hardening;
use super::plan::Route;
use super::taught::Left;
use super::verdict::HARDENED;
use crate::soak::{Stock, Structure};
use crate::transform::Kinetics;

/// Stocks of a lean and a rich heat, as a steel that is only known by its grade may be; none where
/// the contents are those of a certificate, or a heat is outside the models.
#[derive(Debug, Clone, Default)]
pub(super) struct Heats([Option<Stock>; 2]);

impl Heats {
    /// The heats that the steel of a route may be.
    pub(super) fn of(route: &Route, structure: Structure) -> Self {
        let grade = route.listed_grade();
        grade
            .filter(|grade| grade.nominal == route.composition)
            .map_or_else(Self::default, |grade| {
                let stock = |heat| Stock::new(&heat, structure).ok();
                Self(grade.lean_and_rich().map(stock))
            })
    }
}

/// The kinetics of the austenite that a soak of a stock leaves.
pub(super) fn kinetics_after(route: &Route, stock: &Stock, soak_c: f64) -> Option<Kinetics> {
    let end = stock
        .at(soak_c)
        .ok()?
        .end(60.0 * route.soak.time_min)
        .ok()?;
    let hardening = Hardening::of_route(route, &end.point, &end.dissolved).ok()?;
    Some(hardening.into_kinetics())
}

/// Factors on a margin at the ends of what is open about the austenite; none where nothing is.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Spread {
    /// Least and largest over the heats of the grade.
    pub(super) chemistry: Option<[f64; 2]>,
    /// Least and largest over the furnace's band.
    pub(super) soak: Option<[f64; 2]>,
    /// What runs have left of what is open about the models.
    pub(super) left: Left,
}

impl Spread {
    /// That of the austenite of a route; `ends` are its kinetics after the coldest and the hottest
    /// soak.
    pub(super) fn of(
        route: &Route,
        heats: &Heats,
        planned: &Kinetics,
        ends: [Option<&Kinetics>; 2],
    ) -> Self {
        // A heat with an end-quench test of its own is known.
        let is_known = !route.end_quench.is_empty();
        let heats = heats.0.each_ref().map(|stock| {
            let stock = stock.as_ref().filter(|_| !is_known)?;
            kinetics_after(route, stock, route.soak.temperature_c)
        });
        Self {
            chemistry: factors(planned, heats.each_ref().map(Option::as_ref)),
            soak: over_furnace(planned, ends),
            left: route.taught().left,
        }
    }
}

/// The factors after the coldest and the hottest soak. Where the coldest leaves no austenite of which the models
/// know, no quench is fast enough.
fn over_furnace(
    planned: &Kinetics,
    [coldest, hottest]: [Option<&Kinetics>; 2],
) -> Option<[f64; 2]> {
    let [least, most] = factors(planned, [coldest, hottest]).unwrap_or([1.0, 1.0]);
    let known = coldest.or(hottest).is_some();
    known.then_some([if coldest.is_some() { least } else { 0.0 }, most])
}

/// How much slower or faster than for the austenite planned the slowest quench may be for others;
/// nothing where none is known.
fn factors(planned: &Kinetics, others: [Option<&Kinetics>; 2]) -> Option<[f64; 2]> {
    let rate = |kinetics: &Kinetics| Some(kinetics.critical_cooling(HARDENED).ok()?.rate_k_per_s);
    let planned = rate(planned)?;
    let mut known = others
        .into_iter()
        .flatten()
        .filter_map(|other| Some(planned / rate(other)?))
        .peekable();
    known.peek()?;
    Some(known.fold([1.0, 1.0], |[least, most], factor: f64| {
        [least.min(factor), most.max(factor)]
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{MediumChoice, Section};
    use crate::route::{Caution, MarginSources, Soak, Verdict, run};
    use crate::steel::find;
    use crate::transform::BarPoint;

    fn sources(route: &Route) -> MarginSources {
        let outcome = run(route).unwrap();
        outcome.quench.transformed.given().unwrap().margin.sources
    }

    fn plate(designation: &str, thickness_mm: f64) -> Route {
        let mut route = Route::example();
        route.take_grade(find(designation).unwrap());
        route.section = Section::Plate { thickness_mm };
        route
    }

    /// Manganese is most of what hardens 1095, and the standard lets it run from 0.3 to 0.5 %.
    #[test]
    fn a_grade_may_be_lean_or_rich_and_a_certificate_not() {
        let mut route = plate("1095", 3.0);
        let [least, most] = sources(&route).chemistry.unwrap();
        assert!((0.7..0.95).contains(&least) && (1.05..1.4).contains(&most));
        route.grade = None;
        assert_eq!(sources(&route).chemistry, None);
        // An end-quench test is of the very heat.
        let mut tested = plate("4140", 20.0);
        assert!(sources(&tested).chemistry.is_some());
        tested.end_quench = [
            (1.5, 56.0),
            (13.0, 52.0),
            (19.0, 49.0),
            (29.0, 44.0),
            (38.0, 41.0),
        ]
        .map(|(distance_mm, hrc)| BarPoint { distance_mm, hrc })
        .to_vec();
        assert_eq!(sources(&tested).chemistry, None);
        // A grade's name over other contents is that of a certificate.
        let mut certified = plate("1095", 3.0);
        certified.composition.mn = 0.33;
        assert_eq!(sources(&certified).chemistry, None);
    }

    #[test]
    fn a_furnace_that_wanders_widens_the_margin() {
        let mut route = plate("52100", 3.0);
        route.furnace_band_k = 0.0;
        assert_eq!(sources(&route).soak, Some([1.0, 1.0]));
        route.furnace_band_k = 15.0;
        let [least, most] = sources(&route).soak.unwrap();
        assert!(least < 0.97 && most > 1.03);
    }

    /// Just above A1 the cold end of the furnace does not harden: the worse it wanders the less is sure of the
    /// outcome, the piece is warned of, and where nothing dissolves there no quench counts as safe.
    #[test]
    fn a_cold_end_that_does_not_harden_makes_nothing_surer() {
        let mut route = plate("1095", 1.0);
        route.quench.medium = MediumChoice::Named("water20".to_owned());
        route.soak = Soak {
            temperature_c: 735.0,
            time_min: 15.0,
        };
        let mut before_hrc = 0.0;
        for band_k in [0.0, 3.0, 6.0, 8.0, 9.0, 10.0, 12.0, 20.0] {
            route.furnace_band_k = band_k;
            let outcome = run(&route).unwrap();
            let last = outcome.stages.last().unwrap();
            assert!(last.band_hrc >= before_hrc - 0.01, "{band_k} K: {last:?}");
            before_hrc = last.band_hrc;
            let [least, most] = last.hrc_range().unwrap();
            assert!((0.0..=68.0).contains(&least) && (0.0..=68.0).contains(&most));
            let is_told = |caution: &Caution| matches!(caution, Caution::FurnaceCold { .. });
            let is_soft = outcome.furnace.hardened_at_coldest < HARDENED;
            assert_eq!(outcome.cautions.iter().any(is_told), is_soft, "{band_k} K");
            assert_eq!(is_soft, band_k >= 8.0, "{band_k} K");
            if outcome.furnace.hrc_at_coldest.is_none() {
                assert_eq!(sources(&route).soak.unwrap()[0], 0.0);
                let quenched = outcome.quench.transformed.given().unwrap();
                assert_eq!(quenched.margin.verdict, Verdict::Narrow);
            }
        }
        assert!(before_hrc > 45.0);
    }

    /// The word is safe only where the whole band is: the same piece may be so with a certificate
    /// and not by the grade alone.
    #[test]
    fn the_word_follows_the_whole_band() {
        for thickness_mm in [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 6.0, 9.0] {
            let route = plate("1084", thickness_mm);
            let outcome = run(&route).unwrap();
            let margin = outcome.quench.transformed.given().unwrap().margin;
            let [least, most] = margin.factor_band;
            assert!(least < margin.factor && margin.factor < most);
            let word = match margin.verdict {
                Verdict::Holds => least >= 1.0,
                Verdict::Narrow => least < 1.0 && most >= 1.0,
                Verdict::Misses => most < 1.0,
            };
            assert!(word, "{thickness_mm}: {margin:?}");
            let certificate = Route {
                grade: None,
                ..route
            };
            let outcome = run(&certificate).unwrap();
            let known = outcome.quench.transformed.given().unwrap().margin;
            assert_eq!(known.factor, margin.factor);
            assert!(known.factor_band[0] > least && known.factor_band[1] < most);
        }
    }
}
