//! What a cold treatment gains, and what waiting for it costs.

use super::hardening::{Hardened, Hardening};
use super::outcome::{ColdOutcome, SnapOutcome};
use super::plan::{Cold, Route};
use super::sentences::TELLABLE_HRC;
use super::tempering::Tempering;
use crate::heat::core_cold_s;
use crate::steel::OutOfRange;

/// The cold bath that is weighed when none is planned: dry ice in solvent.
const WEIGHED: Cold = Cold::FIRST_OFFERED;
/// Fall in retained austenite that is worth a cold bath by itself, volume fraction.
const WORTH_AUSTENITE: f64 = 0.04;
/// Further waiting whose cost is told, min.
const LONGER_MIN: f64 = 10.0;

/// A cold treatment of a quenched piece: the one planned, or the one weighed.
pub(super) struct Chilled {
    pub(super) piece: Hardened,
    pub(super) outcome: ColdOutcome,
}

impl Chilled {
    pub(super) fn of(
        route: &Route,
        hardening: &Hardening,
        quenched: &Hardened,
    ) -> Result<Self, OutOfRange> {
        let cold = route.cold.unwrap_or(WEIGHED);
        let later = Cold {
            delay_min: cold.delay_min + LONGER_MIN,
            ..cold
        };
        let steel = &route.composition;
        let piece = hardening.cold(steel, quenched, &cold)?;
        let later = hardening.cold(steel, quenched, &later)?;
        let [before, gain_hrc] = match &piece.snapped {
            Some(snapped) => [
                snapped.stage.fractions.map_or(0.0, |f| f.austenite),
                snapped.stage.hardness.map_or(0.0, |hardness| {
                    piece.hardness.hrc_carried() - hardness.hrc_carried()
                }),
            ],
            None => [quenched.fractions.austenite, rise_hrc(quenched, &piece)],
        };
        let after = piece.fractions.austenite;
        let is_tellable = gain_hrc >= TELLABLE_HRC || before - after >= WORTH_AUSTENITE;
        let is_kept = !is_tellable || is_kept(route, quenched, &piece);
        let snap = match (cold.snap, &piece.snapped) {
            (Some(snap), Some(snapped)) => {
                let without = hardening.cold(steel, quenched, &Cold { snap: None, ..cold })?;
                Some(SnapOutcome {
                    temperature_c: snap.temperature_c,
                    time_min: snap.time_min,
                    austenite_without: without.fractions.austenite,
                    austenite_between: snapped.austenite_between,
                    takes_hrc: snapped.stage.hardness.map_or(0.0, |hardness| {
                        quenched.hardness.hrc_carried() - hardness.hrc_carried()
                    }),
                })
            }
            _ => None,
        };
        Ok(Self {
            piece,
            outcome: ColdOutcome {
                is_planned: route.cold.is_some(),
                temperature_c: cold.temperature_c,
                austenite_before: before,
                austenite_after: after,
                gain_hrc,
                austenite_lost_per_min: (later.fractions.austenite - after) / LONGER_MIN,
                gain_lost_hrc_per_min: rise_hrc(&later, &piece) / LONGER_MIN,
                core_cold_min: core_cold_s(route.section, cold.temperature_c) / 60.0,
                is_worth_it: is_tellable && is_kept,
                is_kept,
                snap,
            },
        })
    }
}

/// Whether the tempers leave of it what a tester can see, or as much austenite as is worth it: a hot temper turns
/// what is left anyway. What the tempers do that the models do not reach is taken to leave it.
fn is_kept(route: &Route, quenched: &Hardened, chilled: &Hardened) -> bool {
    if route.tempers.is_empty() {
        return true;
    }
    let [without, with] = [quenched, chilled].map(|piece| {
        let tempering = Tempering::of(&route.composition, &route.tempers, Some(piece)).ok()?;
        let last = tempering.stages().last()?;
        Some((last.hardness?.hrc_carried(), last.fractions?.austenite))
    });
    without.zip(with).is_none_or(|(without, with)| {
        with.0 - without.0 >= TELLABLE_HRC || without.1 - with.1 >= WORTH_AUSTENITE
    })
}

fn rise_hrc(from: &Hardened, to: &Hardened) -> f64 {
    let [from, to] = [from, to].map(|piece| piece.hardness.hrc_carried());
    to - from
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::outcome::{Outcome, Step};
    use crate::route::{Temper, run};

    fn after(delay_min: f64) -> ColdOutcome {
        let mut route = Route::example();
        route.cold = Some(Cold {
            delay_min,
            ..WEIGHED
        });
        *run(&route).unwrap().cold.given().unwrap()
    }

    fn example(snap: Option<Temper>, tempers: bool) -> Outcome {
        let mut route = Route::example();
        route.cold = Some(Cold { snap, ..WEIGHED });
        if !tempers {
            route.tempers.clear();
        }
        run(&route).unwrap()
    }

    /// Common practice, no source: a spring's temper turns what austenite is left, with or without the cold.
    #[test]
    fn a_cold_bath_before_a_hot_temper_is_not_worth_it() {
        let worth = |grade, temper_c| {
            let mut route = Route::example();
            route.take_grade(crate::steel::find(grade).unwrap());
            route.section = crate::heat::Section::Plate { thickness_mm: 8.0 };
            route.cold = Some(WEIGHED);
            for temper in &mut route.tempers {
                temper.temperature_c = temper_c;
            }
            let outcome = run(&route).unwrap();
            let cold = *outcome.cold.given().unwrap();
            let words = super::super::cold_words::cold_sentence(&outcome)
                .unwrap()
                .text();
            (cold.is_worth_it, cold.is_kept, words)
        };
        let (is_worth_it, is_kept, words) = worth("5160", 450.0);
        assert!(
            !is_worth_it && !is_kept && words.contains("leave next to nothing"),
            "{words}"
        );
        let (is_worth_it, is_kept, words) = worth("5160", 150.0);
        assert!(
            is_worth_it && is_kept && words.contains("worth doing"),
            "{words}"
        );
        // Of what is little from the start a temper takes nothing.
        let (is_worth_it, is_kept, words) = worth("4130", 150.0);
        assert!(
            !is_worth_it && is_kept && words.contains("adds only"),
            "{words}"
        );
    }

    /// Common practice, no source: it costs some response of the cold, and next to no hardness.
    #[test]
    fn a_snap_temper_keeps_austenite_from_the_cold() {
        let [with, without] = [Some(Cold::SNAP_FIRST_OFFERED), None].map(|s| example(s, true));
        let steps = |outcome: &Outcome| outcome.stages.iter().map(|s| s.step).collect::<Vec<_>>();
        assert_eq!(
            steps(&with),
            [
                Step::Soak,
                Step::Quench,
                Step::Snap,
                Step::Cold,
                Step::Temper(1),
                Step::Temper(2)
            ]
        );
        let [cold, bare] = [&with, &without].map(|outcome| *outcome.cold.given().unwrap());
        let snap = cold.snap.unwrap();
        assert_eq!(snap.austenite_without, bare.austenite_after);
        assert!(cold.austenite_after > bare.austenite_after + 0.002);
        let [least, most] = snap.austenite_between;
        assert!(bare.austenite_after - 1e-3 <= least && least < cold.austenite_after);
        assert!(cold.austenite_after < most && most < cold.austenite_before);
        assert!(snap.takes_hrc > 0.0 && snap.takes_hrc < 3.0, "{snap:?}");
        assert!(cold.gain_hrc > 0.0);
        // The tempers after it are as without it, but for the austenite.
        let end = |outcome: &Outcome| {
            outcome
                .stages
                .last()
                .unwrap()
                .hardness
                .unwrap()
                .hrc_carried()
        };
        assert!((end(&with) - end(&without)).abs() < 1.0);
        let band = |outcome: &Outcome| outcome.stages.last().unwrap().band_hrc;
        assert!(band(&with) > band(&without));
    }

    /// What the cold turns after it is fresh: harder than it would be tempered, and it tempers with
    /// the first temper.
    #[test]
    fn fresh_martensite_after_a_snap_temper_is_harder() {
        let outcome = example(Some(Cold::SNAP_FIRST_OFFERED), false);
        let of = |step: Step| *outcome.stages.iter().find(|s| s.step == step).unwrap();
        let [snap, cold] = [Step::Snap, Step::Cold].map(|step| of(step).hardness.unwrap().hv);
        assert!(cold > snap);
        let sums = outcome.stages.iter().filter_map(|s| s.fractions);
        for f in sums.skip(1) {
            let all = f.ferrite + f.pearlite + f.bainite + f.martensite + f.austenite + f.carbide;
            assert!((all - 1.0).abs() < 1e-9);
        }
    }

    /// The cost by the minute is the slope of what later baths leave, and waiting costs most at
    /// first (Harris and Cohen 1949: the lag grows with the root of time).
    #[test]
    fn waiting_costs_what_a_later_bath_shows() {
        let [soon, later, late] = [0.0, 10.0, 600.0].map(after);
        let slope = (later.austenite_after - soon.austenite_after) / 10.0;
        assert!((soon.austenite_lost_per_min - slope).abs() < 1e-12);
        assert!(soon.austenite_lost_per_min > later.austenite_lost_per_min);
        assert!(later.austenite_lost_per_min > late.austenite_lost_per_min);
        assert!(late.gain_hrc < soon.gain_hrc && late.austenite_lost_per_min >= 0.0);
        assert!(soon.gain_lost_hrc_per_min > 0.0);
    }
}
