//! How far what is open about a quench moves the hardness of a place that hardens only in part: the place
//! is quenched once more at both ends of it.

use super::hardening::{Hardened, Hardening, KineticsOff};
use super::margin::{Margin, MarginSources, Verdict};
use super::outcome::{Stage, TemperOutcome, TemperPoint};
use super::plan::Route;
use super::quenched::Finished;
use crate::heat::CoolingCurve;
use crate::soak::SoakOutcome;

/// A place at the ends of what is open about its quench: where transformation begins so much sooner for its
/// cooling, and so much later, as the quenchant, the model and the heat of the steel leave open nine times in
/// ten. The soak is left out: the furnace's ends are looked at by themselves.
pub(super) struct QuenchEnds([Option<(Hardening, Hardened)>; 2]);

impl QuenchEnds {
    /// None for a place that is sure to harden: what may form there moves its hardness by less than the models
    /// tell.
    pub(super) fn of(
        route: &Route,
        soaked: &SoakOutcome,
        curve: &CoolingCurve,
        margin: &Margin,
    ) -> Self {
        if margin.verdict == Verdict::Holds {
            return Self([None, None]);
        }
        let open = MarginSources {
            soak: None,
            ..margin.sources
        };
        // A quench that is slower by a factor is one past reactions that are faster by it.
        Self(open.together().map(|factor| {
            let off = KineticsOff::of(route).later_by(factor);
            let end_c = route.quench.end_c;
            let hardening = Hardening::off_by(&soaked.end, &soaked.dissolved, end_c, &off).ok()?;
            let quenched = hardening.quench(curve).ok()?;
            Some((hardening, quenched))
        }))
    }

    /// The place after the steps that follow, at both ends.
    pub(super) fn finished(&self, route: &Route) -> [Option<Finished>; 2] {
        let steel = &route.composition;
        self.0.each_ref().map(|end| {
            let (hardening, quenched) = end.as_ref()?;
            let cold = route.cold.as_ref();
            let chilled = cold.and_then(|cold| hardening.cold(steel, quenched, cold).ok());
            Some(Finished::of(
                steel,
                Some(quenched),
                chilled.as_ref(),
                &route.tempers,
            ))
        })
    }
}

/// Widens the bands of some steps by how far both ends are from them as they are modelled.
pub(super) fn widen(stages: &mut [Stage], as_modelled: &[Stage], ends: &[Option<Finished>; 2]) {
    for (stage, as_modelled) in stages.iter_mut().zip(as_modelled) {
        let apart_hrc = |end: &Option<Finished>| {
            let mut stages = end.as_ref()?.stages.iter();
            let there = stages.find(|there| there.step == stage.step)?.hardness?;
            Some(there.hrc_carried() - as_modelled.hardness?.hrc_carried())
        };
        stage.quench_swing_hrc = root_mean_square(ends.each_ref().map(apart_hrc));
        stage.band_hrc = stage.band_hrc.hypot(stage.quench_swing_hrc);
    }
}

/// The same for the chart of the tempers of a route.
pub(super) fn widen_chart(chart: &mut TemperOutcome, route: &Route, ends: &[Option<Finished>; 2]) {
    let ends = ends.each_ref().map(|end| {
        let tempering = end.as_ref()?.tempering.as_ref().ok()?;
        tempering.curve(route).ok()
    });
    for (number, point) in chart.curve.iter_mut().enumerate() {
        let apart_hrc = |end: &Option<Vec<TemperPoint>>| {
            let there = end.as_ref()?.get(number)?;
            Some(there.hrc - point.hrc)
        };
        let swing_hrc = root_mean_square(ends.each_ref().map(apart_hrc));
        point.band_hrc = point.band_hrc.hypot(swing_hrc);
    }
}

/// Of the sides that are known; zero where neither is. Where hardness falls off to one side only, a band as wide
/// as that to both would hold more than nine in ten.
fn root_mean_square(sides: [Option<f64>; 2]) -> f64 {
    let known = sides.iter().flatten();
    let (count, squares) = known.fold((0.0, 0.0), |(count, squares), side| {
        (count + 1.0, squares + side * side)
    });
    if count > 0.0 {
        f64::sqrt(squares / count)
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Grind, MediumChoice, Section};
    use crate::route::{Deviation, Left, Outcome, Step, Taught, run};
    use crate::steel::find;

    fn plate(thickness_mm: f64) -> Route {
        let mut route = Route::example();
        route.take_grade(find("1095").unwrap());
        route.section = Section::Plate { thickness_mm };
        route.quench.medium = MediumChoice::Named("oil_fast".to_owned());
        route
    }

    fn swing_hrc(outcome: &Outcome, step: Step) -> f64 {
        let mut stages = outcome.stages.iter();
        stages.find(|s| s.step == step).unwrap().quench_swing_hrc
    }

    #[test]
    fn a_place_swings_as_far_as_it_is_unsure_to_harden() {
        let swings = [1.0, 2.0, 3.0, 4.0].map(|thickness_mm| {
            let outcome = run(&plate(thickness_mm)).unwrap();
            swing_hrc(&outcome, Step::Quench)
        });
        assert_eq!(swings[0], 0.0);
        assert!(swings.is_sorted() && swings[2] > 5.0, "{swings:?}");
    }

    /// A hot temper takes more from martensite than from pearlite, and brings both ends nearer to each other.
    #[test]
    fn a_hotter_temper_leaves_less_of_it_and_the_chart_shows_that() {
        let mut route = plate(3.0);
        let [cool, hot] = [180.0, 600.0].map(|temperature_c| {
            for temper in &mut route.tempers {
                temper.temperature_c = temperature_c;
            }
            let outcome = run(&route).unwrap();
            let last = outcome.stages.last().unwrap();
            let chart = outcome.temper.given().unwrap();
            let mut points = chart.curve.iter();
            let charted = points.find(|p| p.temperature_c == temperature_c).unwrap();
            // The furnace's ends move the step alone.
            assert!(charted.band_hrc <= last.band_hrc + 1e-9);
            assert!(
                charted.band_hrc > 0.9 * last.band_hrc,
                "{charted:?} {last:?}"
            );
            last.quench_swing_hrc
        });
        assert!(cool > 5.0 && hot < 0.5 * cool, "{cool} {hot}");
    }

    #[test]
    fn what_was_learnt_of_quench_and_nose_leaves_less_of_it() {
        let mut route = plate(3.0);
        let open = swing_hrc(&run(&route).unwrap(), Step::Quench);
        let left = Left {
            nose: 0.3,
            heat_transfer: 0.3,
            ..Left::default()
        };
        route.taught = Some(Taught::new(Deviation::default(), left));
        let learnt = swing_hrc(&run(&route).unwrap(), Step::Quench);
        assert!(learnt < 0.8 * open, "{learnt} of {open}");
    }

    /// Of a blade soft at the spine the edge is judged by itself.
    #[test]
    fn an_edge_that_is_sure_to_harden_does_not_swing_with_the_spine() {
        let mut route = plate(4.0);
        route.section = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 30.0,
            grind: Grind::Straight,
        };
        route.quench.medium = MediumChoice::Named("oil_medium".to_owned());
        let outcome = run(&route).unwrap();
        assert!(swing_hrc(&outcome, Step::Quench) > 5.0);
        assert!(!outcome.cutting_edge.is_empty());
        assert!(
            outcome
                .cutting_edge
                .iter()
                .all(|s| s.quench_swing_hrc == 0.0)
        );
    }
}
