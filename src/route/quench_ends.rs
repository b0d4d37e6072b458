//! How far what is open about a quench moves the hardness of a place that hardens only in part: the place
//! is quenched once more at both ends of it.

use super::hardening::{Hardened, Hardening, KineticsOff};
use super::margin::{Margin, MarginSources, Verdict};
use super::outcome::{Stage, TemperOutcome};
use super::plan::Route;
use super::quenched::Finished;
use crate::heat::CoolingCurve;
use crate::numeric::order::larger;
use crate::soak::SoakOutcome;

/// A place at the ends of what is open about its quench: where transformation begins so much sooner for its
/// cooling, and so much later, as the quenchant, the model and the heat of the steel leave open nine times in
/// ten. The soak is left out: the furnace's ends are looked at by themselves.
pub(super) struct QuenchEnds([Option<(Hardening, Hardened)>; 2]);

impl QuenchEnds {
    /// None for a place that is sure to harden: what may form there moves its hardness by less than the models
    /// tell. One that is held for bainite is never sure of how much; a quenchant that is slower does not hold it
    /// longer, if it arrives in time.
    pub(super) fn of(
        route: &Route,
        soaked: &SoakOutcome,
        curve: &CoolingCurve,
        margin: &Margin,
        is_held: bool,
    ) -> Self {
        let mut open = MarginSources {
            soak: None,
            ..margin.sources
        };
        if margin.verdict == Verdict::Holds {
            if !is_held {
                return Self([None, None]);
            }
            open.heat_transfer = [1.0; 2];
        }
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

/// How much softer and harder than as modelled each step is at the ends, HRC.
pub(super) fn swings_hrc(stages: &[Stage], ends: &[Option<Finished>; 2]) -> Vec<[f64; 2]> {
    let of_stage = |stage: &Stage| {
        softer_and_harder(ends.each_ref().map(|end| {
            let mut stages = end.as_ref()?.stages.iter();
            let there = stages.find(|there| there.step == stage.step)?.hardness?;
            Some(there.hrc_carried() - stage.hardness?.hrc_carried())
        }))
    };
    stages.iter().map(of_stage).collect()
}

/// Widens the chart of the tempers of a route by the same.
pub(super) fn widen_chart(chart: &mut TemperOutcome, route: &Route, ends: &[Option<Finished>; 2]) {
    let ends = ends.each_ref().map(|end| {
        let tempering = end.as_ref()?.tempering.as_ref().ok()?;
        tempering.curve(route).ok()
    });
    for (number, point) in chart.curve.iter_mut().enumerate() {
        let swing_hrc = softer_and_harder(ends.each_ref().map(|end| {
            let there = end.as_ref()?.get(number)?;
            Some(there.hrc - point.hrc)
        }));
        let [below, above] = swing_hrc.map(|swing| point.band_hrc.hypot(swing));
        point.band_hrc = 0.5 * (below + above);
        point.band_off_hrc = 0.5 * (above - below);
    }
}

/// How far the farther of both ends falls and rises, of those that are known.
fn softer_and_harder(apart_hrc: [Option<f64>; 2]) -> [f64; 2] {
    let known = || apart_hrc.iter().flatten();
    [
        known().fold(0.0, |most, apart| larger(most, -apart)),
        known().fold(0.0, |most, apart| larger(most, *apart)),
    ]
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

    fn swing_hrc(outcome: &Outcome, step: Step) -> [f64; 2] {
        let mut stages = outcome.stages.iter();
        stages.find(|s| s.step == step).unwrap().quench_swing_hrc
    }

    #[test]
    fn a_place_swings_as_far_as_it_is_unsure_to_harden() {
        let swings = [1.0, 2.0, 3.0, 4.0].map(|thickness_mm| {
            let outcome = run(&plate(thickness_mm)).unwrap();
            swing_hrc(&outcome, Step::Quench)
        });
        assert_eq!(swings[0], [0.0; 2]);
        let softer = swings.map(|[softer, _]| softer);
        assert!(softer.is_sorted() && softer[2] > 5.0, "{swings:?}");
    }

    /// What hardens least may fall far and rise little: it is never harder than hardened through.
    #[test]
    fn a_band_does_not_reach_beyond_what_is_hardened_through() {
        let top_hrc = |thickness_mm| {
            let outcome = run(&plate(thickness_mm)).unwrap();
            let last = outcome.stages.last().unwrap();
            let [least, most] = last.hrc_range().unwrap();
            approx::assert_abs_diff_eq!(most - least, 2.0 * last.band_hrc, epsilon = 1e-9);
            (most, last.band_off_hrc)
        };
        let [(through, even), (partly, off)] = [1.0, 3.0].map(top_hrc);
        assert_eq!(even, 0.0);
        assert!(off < -1.0 && partly < through + 0.5, "{partly} {through}");
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
            last.quench_swing_hrc[0]
        });
        assert!(cool > 5.0 && hot < 0.5 * cool, "{cool} {hot}");
    }

    #[test]
    fn what_was_learnt_of_quench_and_nose_leaves_less_of_it() {
        let mut route = plate(3.0);
        let [open, _] = swing_hrc(&run(&route).unwrap(), Step::Quench);
        let left = Left {
            nose: 0.3,
            heat_transfer: 0.3,
            ..Left::default()
        };
        route.taught = Some(Taught::new(Deviation::default(), left));
        let [learnt, _] = swing_hrc(&run(&route).unwrap(), Step::Quench);
        assert!(learnt < 0.8 * open, "{learnt} of {open}");
    }

    /// The ends are those of the piece as it is taught to be, and what was learnt is no swing.
    #[test]
    fn the_ends_lie_on_both_sides_of_what_was_learnt() {
        let mut route = plate(3.0);
        let [softer, harder] = swing_hrc(&run(&route).unwrap(), Step::Quench);
        let off = Deviation {
            quenched_hrc: 3.0,
            ..Deviation::default()
        };
        route.taught = Some(Taught::new(off, Left::default()));
        let learnt = swing_hrc(&run(&route).unwrap(), Step::Quench);
        approx::assert_abs_diff_eq!(learnt[0], softer, epsilon = 1e-9);
        approx::assert_abs_diff_eq!(learnt[1], harder, epsilon = 1e-9);
        // It hardens nearly, and so does it at the softer end.
        let later = Deviation {
            nose_time_factor: 2.0,
            ..Deviation::default()
        };
        route.taught = Some(Taught::new(later, Left::default()));
        let [nearly, _] = swing_hrc(&run(&route).unwrap(), Step::Quench);
        assert!(nearly > 0.0 && nearly < 0.5 * softer, "{nearly} {softer}");
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
        assert!(swing_hrc(&outcome, Step::Quench)[0] > 5.0);
        let edge = &outcome.judged_edge().unwrap().stages;
        assert!(edge.iter().all(|s| s.quench_swing_hrc == [0.0; 2]));
    }
}
