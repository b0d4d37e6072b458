//! What is reached from outside of a piece that does not harden through: the cutting edge of a blade, the
//! surface of another section.

use super::cold::Chilled;
use super::furnace_ends::{FurnaceEnd, swing_hrc};
use super::hardening::{Hardened, Hardening};
use super::outcome::{ColdOutcome, Outcome, QuenchTransformed, Stage};
use super::plan::Route;
use super::quench_ends::{QuenchEnds, swings_hrc};
use super::quenched::Finished;
use super::sentences::TELLABLE_HRC;
use super::tempering::Tempering;
use super::verdict::HARDENED;
use crate::heat::{Cooled, CoolingCurve, Place};
use crate::soak::SoakOutcome;
use crate::steel::OutOfRange;
use serde::Serialize;

/// The place that is reached from outside, where the one that decides does not harden.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Outside {
    /// The cutting edge of a blade, the surface of another section.
    pub place: Place,
    /// Its constituents and hardness after each step from the quench on.
    pub stages: Vec<Stage>,
    /// Austenite left after the quench there at the hottest of the furnace's band, volume fraction.
    pub austenite_at_hottest: Option<f64>,
    /// What the cold treatment does to it, as planned or as it would be at −75 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cold: Option<ColdOutcome>,
}

impl Outside {
    /// It as it is after the last of its steps.
    #[must_use]
    pub fn last(&self) -> Option<&Stage> {
        self.stages.last()
    }

    /// Whether the target is laid against it: the edge is what is sharpened.
    pub(super) fn is_edge(&self) -> bool {
        self.place == Place::Edge
    }
}

impl Outcome {
    /// The cutting edge of a blade that does not harden through, where it is hard enough for the C scale: the
    /// target is laid against it, as it is what is sharpened.
    #[must_use]
    pub fn judged_edge(&self) -> Option<&Outside> {
        let edge = self.outside.as_ref().filter(|outside| outside.is_edge());
        edge.filter(|edge| edge.last().and_then(Stage::hrc).is_some())
    }

    /// What the piece is after each step, where the target is laid against it.
    #[must_use]
    pub fn judged_stages(&self) -> &[Stage] {
        match self.judged_edge() {
            Some(edge) => &edge.stages,
            None => &self.stages,
        }
    }

    /// What the cold treatment does there.
    #[must_use]
    pub fn judged_cold(&self) -> Option<&ColdOutcome> {
        let edge = self.judged_edge();
        edge.map_or(self.cold.given(), |edge| edge.cold.as_ref())
    }

    /// The place where the target is laid against the hardness, where places differ.
    #[must_use]
    pub fn judged_place(&self) -> Option<Place> {
        let edge = self.judged_edge().map(|edge| edge.place);
        edge.or_else(|| self.quench.named_place())
    }
}

/// What becomes of the piece there.
pub(super) struct OutsidePiece<'a> {
    pub(super) steel: OutsideSteel<'a>,
    pub(super) tempering: Result<Tempering, OutOfRange>,
    /// As finished at both ends of what is open about its quench.
    pub(super) ends: Option<[Option<Finished>; 2]>,
}

/// The steel there, to be changed and tempered otherwise.
pub(super) struct OutsideSteel<'a> {
    pub(super) curve: &'a CoolingCurve,
    pub(super) quenched: Hardened,
    /// After the cold bath, if there is one.
    pub(super) ready: Hardened,
}

/// A piece as quenched.
pub(super) struct QuenchedWhole<'a> {
    pub(super) soaked: &'a SoakOutcome,
    pub(super) hardening: &'a Hardening,
    pub(super) cooled: &'a Cooled,
    /// The place that decides.
    pub(super) deciding: &'a Hardened,
    pub(super) transformed: &'a QuenchTransformed,
    pub(super) furnace_ends: &'a [Option<FurnaceEnd>; 2],
}

impl<'a> QuenchedWhole<'a> {
    /// None of a piece that hardens where it hardens least, nor of a surface that a tester cannot tell from
    /// there.
    pub(super) fn outside(&self, route: &Route) -> Option<(Outside, OutsidePiece<'a>)> {
        if self.transformed.hardened_fraction >= HARDENED {
            return None;
        }
        let places = [Place::Edge, Place::Surface];
        let curve = places.into_iter().find_map(|place| self.cooled.at(place))?;
        let quenched = self.hardening.quench(curve).ok()?;
        let quenched_hrc = quenched.hardness.hrc_carried();
        let apart_hrc = quenched_hrc - self.deciding.hardness.hrc_carried();
        if curve.place == Place::Surface && apart_hrc < TELLABLE_HRC {
            return None;
        }
        let chilled = Chilled::of(route, self.hardening, &quenched).ok();
        let cold_piece = chilled.as_ref().map(|chilled| &chilled.piece);
        let cold_piece = route.cold.and(cold_piece);
        let ready = *cold_piece.unwrap_or(&quenched);
        let steel = &route.composition;
        let finished = Finished::of(steel, Some(&quenched), cold_piece, &route.tempers);
        let mut places = self.transformed.places.iter();
        let there = places.find(|there| there.place == curve.place);
        let ends = there.map(|there| {
            let is_held = self.transformed.held_c.is_some();
            let ends = QuenchEnds::of(route, self.soaked, curve, &there.margin, is_held);
            ends.finished(route)
        });
        let swings_hrc = ends.as_ref().map(|ends| swings_hrc(&finished.stages, ends));
        let at_ends = self.furnace_ends.each_ref();
        let at_ends = at_ends.map(|end| end.as_ref()?.quenched_along(curve));
        let ends_hrc = at_ends.map(|end| Some(end?.hardness.hrc_carried()));
        let furnace_swing_hrc = swing_hrc(ends_hrc, quenched_hrc);
        let mut stages = finished.stages;
        for stage in &mut stages {
            route.taught().enter(stage, ready.open_hrc());
            stage.widen_by_furnace(furnace_swing_hrc);
        }
        for (stage, swing_hrc) in stages.iter_mut().zip(swings_hrc.unwrap_or_default()) {
            stage.widen_by_quench(swing_hrc);
        }
        let outside = Outside {
            place: curve.place,
            stages,
            austenite_at_hottest: at_ends[1].map(|hottest| hottest.fractions.austenite),
            cold: chilled.map(|chilled| chilled.outcome),
        };
        let piece = OutsidePiece {
            steel: OutsideSteel {
                curve,
                quenched,
                ready,
            },
            tempering: finished.tempering,
            ends,
        };
        Some((outside, piece))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Grind, MediumChoice, Section};
    use crate::route::{
        Caution, Cold, Deviation, Influence, InfluenceKind, Left, Sentence, Step, Taught, card,
        run, sentences,
    };
    use crate::steel::find;
    use crate::units::{LengthUnit, TemperatureScale};

    fn of(designation: &str, section: Section, medium: &str) -> (Route, Outcome) {
        let mut route = Route::example();
        route.take_grade(find(designation).unwrap());
        route.section = section;
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        let outcome = run(&route).unwrap();
        (route, outcome)
    }

    fn round(designation: &str, diameter_mm: f64, medium: &str) -> (Route, Outcome) {
        of(designation, Section::Round { diameter_mm }, medium)
    }

    fn blade() -> (Route, Outcome) {
        let section = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 30.0,
            grind: Grind::Straight,
        };
        of("1095", section, "oil_medium")
    }

    fn told((route, outcome): &(Route, Outcome)) -> Vec<String> {
        let all = sentences(route, outcome, TemperatureScale::Celsius);
        all.iter().map(Sentence::text).collect()
    }

    #[test]
    fn a_bar_soft_inside_has_a_harder_surface_and_is_judged_inside() {
        let bar = round("4140", 60.0, "oil_medium");
        let outside = bar.1.outside.as_ref().unwrap();
        assert_eq!(outside.place, Place::Surface);
        let [surface, inside] = [&outside.stages, &bar.1.stages].map(|stages| {
            let last = stages.last().unwrap();
            (last.step, last.hrc().unwrap())
        });
        assert_eq!(surface.0, inside.0);
        assert!(surface.1 > inside.1 + 1.0, "{surface:?} {inside:?}");
        assert_eq!(bar.1.judged_stages(), bar.1.stages);
        let said = told(&bar);
        let said = said.last().unwrap();
        let (inside, surface) = said.split_once("At the surface it has").unwrap();
        assert!(inside.contains("target."), "{said}");
        assert!(!surface.contains("target"), "{said}");
        let card = card(
            &bar.0,
            &bar.1,
            TemperatureScale::Celsius,
            LengthUnit::Millimetre,
        );
        let rows: Vec<&str> = card.expected.iter().map(|row| row.after.as_str()).collect();
        let temper = rows.len() - 2;
        assert!(rows[temper].ends_with(", centre"), "{rows:?}");
        assert!(rows[temper + 1].ends_with(", surface"), "{rows:?}");
    }

    /// The surface is harder by no more than it hardens before the inside: of a thin bar by nothing.
    #[test]
    fn a_surface_like_the_inside_is_not_told() {
        let through = round("4140", 12.0, "oil_medium");
        assert_eq!(through.1.outside, None);
        let soft = round("1045", 12.0, "air_still");
        let quenched = soft.1.quench.transformed.given().unwrap();
        assert!(quenched.hardened_fraction < HARDENED);
        assert_eq!(soft.1.outside, None);
    }

    /// Its stages are those of a thin plate that cools as the edge does: hard through.
    #[test]
    fn an_edge_is_as_hard_as_a_piece_that_hardens_through() {
        let (_, outcome) = blade();
        let edge = outcome.judged_edge().unwrap();
        let thin = of("1095", Section::Plate { thickness_mm: 0.5 }, "oil_medium").1;
        let hrc = |stages: &[Stage], step| {
            let stage = stages.iter().find(|stage| stage.step == step);
            stage.unwrap().hrc().unwrap()
        };
        for step in [Step::Quench, Step::Temper(2)] {
            let [edge, thin] = [&edge.stages, &thin.stages].map(|stages| hrc(stages, step));
            assert!((edge - thin).abs() < 0.5, "{step:?}: {edge} {thin}");
        }
    }

    /// What the cold does is told of what is sharpened, with the austenite that is left there.
    #[test]
    fn the_cold_bath_of_a_blade_soft_above_is_that_of_its_edge() {
        let blade = blade();
        let edge = blade.1.judged_edge().unwrap();
        let [edge, above] = [edge.cold.as_ref(), blade.1.cold.given()];
        let [edge, above] = [edge, above].map(|cold| cold.unwrap().austenite_before);
        assert!(edge > 0.05 && edge > above + 0.01, "{edge} {above}");
        let said = told(&blade);
        let cold = said.iter().find(|said| said.contains("cold bath")).unwrap();
        assert!(cold.starts_with("At the cutting edge"), "{cold}");
        let mut route = blade.0;
        route.cold = None;
        let cautions = run(&route).unwrap().cautions;
        let much = Caution::MuchAustenite { fraction: edge };
        assert!(cautions.contains(&much), "{cautions:?} {edge}");
    }

    /// What a snap temper keeps, and what a furnace that is too hot leaves, is told of the edge as it is of a thin
    /// piece of the same steel.
    #[test]
    fn austenite_of_an_edge_is_that_of_a_thin_piece() {
        let (mut route, _) = blade();
        route.tempers.clear();
        route.cold = Some(Cold {
            snap: Some(Cold::SNAP_FIRST_OFFERED),
            ..Cold::FIRST_OFFERED
        });
        let kept = |route: &Route| {
            let mut cautions = run(route).unwrap().cautions.into_iter();
            let told = cautions.find_map(|caution| match caution {
                Caution::SnapKeeps { most } => Some(most),
                _ => None,
            });
            told.unwrap()
        };
        let edge = kept(&route);
        route.section = Section::Plate { thickness_mm: 0.5 };
        approx::assert_abs_diff_eq!(edge, kept(&route), epsilon = 0.01);
    }

    /// The chart, the ways to the target and what moves the hardness are those of what is judged.
    #[test]
    fn the_temper_of_a_blade_soft_above_is_that_of_its_edge() {
        let (route, outcome) = blade();
        let chart = outcome.temper.given().unwrap();
        let last = outcome.judged_stages().last().unwrap().hrc().unwrap();
        let temper_c = route.tempers[0].temperature_c;
        approx::assert_abs_diff_eq!(chart.hrc_at(temper_c).unwrap(), last, epsilon = 0.2);
        let mut there = route.clone();
        for temper in &mut there.tempers {
            temper.temperature_c = chart.meets_target_c[0];
        }
        let met = run(&there).unwrap();
        let met_hrc = met.judged_stages().last().unwrap().hrc().unwrap();
        let middle_hrc = 0.5 * (route.target.least_hrc + route.target.most_hrc);
        approx::assert_abs_diff_eq!(met_hrc, middle_hrc, epsilon = 0.1);
        let hotter = outcome.influences.iter().find_map(|moved| {
            let is_temper = matches!(moved.kind, InfluenceKind::TemperTemperature { .. });
            moved.more_hrc.filter(|_| is_temper)
        });
        let mut warmer = route.clone();
        for temper in &mut warmer.tempers {
            temper.temperature_c += 10.0;
        }
        let warmer = run(&warmer).unwrap();
        let moved = warmer.judged_stages().last().unwrap().hrc().unwrap() - last;
        approx::assert_abs_diff_eq!(hotter.unwrap(), moved, epsilon = 1e-9);
        let of_section = |moved: &Influence| matches!(moved.kind, InfluenceKind::Thickness { .. });
        assert!(!outcome.influences.iter().any(of_section));
    }

    /// What was learnt counts at every place.
    #[test]
    fn what_was_learnt_moves_the_outside_as_well() {
        let (mut route, plain) = blade();
        let off = Deviation {
            tempered_hrc: -1.5,
            ..Deviation::default()
        };
        route.taught = Some(Taught::new(off, Left::default()));
        let taught = run(&route).unwrap();
        let last = |outcome: &Outcome| outcome.judged_stages().last().unwrap().hrc().unwrap();
        approx::assert_abs_diff_eq!(last(&taught), last(&plain) - 1.5, epsilon = 1e-9);
    }

    /// Of a bar soft inside the surface is martensite, which breaks untempered.
    #[test]
    fn a_hard_surface_without_a_temper_is_told() {
        let (mut route, _) = round("1045", 40.0, "water20");
        route.tempers.clear();
        let outcome = run(&route).unwrap();
        let inside = outcome.stages.last().unwrap().fractions.unwrap();
        let surface = outcome.outside.as_ref().and_then(Outside::last).unwrap();
        let surface = surface.fractions.unwrap();
        assert!(inside.martensite < 0.1 && surface.martensite > 0.5);
        assert!(outcome.cautions.contains(&Caution::NotTempered));
    }
}
