//! The handbook's practice for a grade: a whole route to start from.

use super::hardening::Hardening;
use super::other_quenches::{hardens_edge_in, hardens_in};
use super::plan::{Route, Target, Temper};
use super::prepared::Prepared;
use super::prior::{PriorStep, SlowCooling, Work};
use super::quench_class;
use super::run::soak_for;
use crate::hardness::{Hardness, embrittling_range_c};
use crate::heat::{Medium, MediumChoice, medium};
use crate::phases::critical_temperatures;
use crate::steel::{Entry, Grade};

/// A forging begins so far below the top of its range, K: an even heat is not the hottest.
const BELOW_TOP_K: f64 = 40.0;
/// Refining cycles go so far below the normalising temperature, K. Common practice, no source:
/// 885, 849 and 827 °C.
const REFINED_BELOW_K: [f64; 2] = [36.0, 58.0];
/// A refining cycle stays so far above A1, K. Expert value.
const LEAST_ABOVE_A1_K: f64 = 35.0;
/// Hypereutectoid steel is made soft again so far below A1, K, so that fine pearlite does not put
/// all its carbon into solution in the soak. Common practice, no source.
const BELOW_A1_K: f64 = 35.0;
/// Annealing of which the handbook tells no rate: K/h, and down to °C. Common practice, no source.
const LED_DOWN: (f64, f64) = (20.0, 600.0);
/// Steps as they are first offered, min.
const HEAT_MIN: f64 = 5.0;
const NORMALISE_MIN: f64 = 10.0;
const REFINE_MIN: f64 = 3.0;
const ANNEAL_MIN: f64 = 60.0;
const BELOW_A1_MIN: f64 = 120.0;
/// A first temper, °C and min; of air-hardening tool steel, min. Common practice, no source.
const FIRST_TEMPER_C: f64 = 190.0;
const TEMPER_MIN: f64 = 60.0;
const AIR_HARDENING_TEMPER_MIN: f64 = 120.0;
/// A first quench goes down to this, °C.
const ROOM_C: f64 = 20.0;
/// How far above the embrittling range a first temper is begun, K. Expert value.
const CLEAR_OF_IT_K: f64 = 20.0;
/// A first temper takes about so much off the hardness as quenched, HRC: 2 to 4 are usual. Common
/// practice, no source.
const FIRST_TEMPER_TAKES_HRC: f64 = 3.0;
/// A target is first so wide either way, HRC: what a shop can keep to.
const TARGET_EITHER_WAY_HRC: f64 = 1.0;

impl Route {
    /// The example with its handbook's steps before hardening: what the page opens with.
    #[must_use]
    pub fn whole_example() -> Self {
        let mut route = Self::example();
        if let Some(grade) = route.listed_grade() {
            route.prior = starting_steps(grade);
        }
        route
    }

    /// Takes a grade with its handbook's whole practice, whatever grade there was before: steps before
    /// hardening, soak, a quenchant of its class (the gentlest that hardens this section, or its
    /// cutting edge, or the fastest where none does), two tempers inside the tempering range, and for a target what that gives. No
    /// handbook of the list has a cold bath, so there is none. Piece, section, furnace and the time in
    /// air stay.
    pub fn take_handbook(&mut self, grade: &Grade) {
        self.take_grade(grade);
        self.prior = starting_steps(grade);
        self.quench.agitation = 1.0;
        self.quench.end_c = ROOM_C;
        self.quench.then.clear();
        self.cold = None;
        if let Some(temper) = first_temper(grade) {
            self.tempers = vec![temper; 2];
        }
        let prepared = Prepared::of(self).ok();
        let hardening = prepared.as_ref().and_then(|steel| self.hardening(steel));
        let mut end_hrc = None;
        if let Some((medium, hardens)) = self.first_quenchant(grade, hardening.as_ref()) {
            self.quench.medium = MediumChoice::Named(medium.name.clone());
            if hardens {
                let outcome = prepared.as_ref().and_then(|steel| steel.run(self).ok());
                let last = outcome.and_then(|outcome| outcome.judged_stages().last()?.hardness);
                end_hrc = last.map(Hardness::hrc_carried);
            }
        }
        self.target = first_target(grade, end_hrc).unwrap_or(self.target);
    }

    /// The quenchant of a grade's class to start with, and whether it hardens what has to: the
    /// gentlest that does; but a blade is not brought to water or brine for its spine where a gentler
    /// one hardens what is sharpened. The fastest where none does. Where the models do not reach, the
    /// gentlest is taken at its class's word.
    fn first_quenchant(
        &self,
        grade: &Grade,
        hardening: Option<&Hardening>,
    ) -> Option<(&'static Medium, bool)> {
        let offered: Vec<&Medium> = quench_class::offered(&grade.quench_class)
            .filter_map(medium)
            .collect();
        let kinetics = hardening.map(Hardening::kinetics);
        let hardens = |medium: &Medium| {
            kinetics
                .and_then(|kinetics| hardens_in(medium, self, kinetics))
                .unwrap_or(true)
        };
        let through = offered.iter().find(|medium| hardens(medium)).copied();
        if let Some(gentle) = through.filter(|medium| !medium.is_harsh()) {
            return Some((gentle, true));
        }
        let works = |medium: &Medium| {
            kinetics.is_some_and(|kinetics| hardens_edge_in(medium, self, kinetics))
        };
        let mut gentle = offered.iter().filter(|medium| !medium.is_harsh());
        if let Some(fastest) = gentle.next_back().filter(|medium| works(medium)) {
            return Some((fastest, true));
        }
        through
            .map(|medium| (medium, true))
            .or_else(|| offered.last().map(|medium| (*medium, false)))
    }
}

impl Route {
    /// The austenite of its soak.
    pub(super) fn hardening(&self, steel: &Prepared) -> Option<Hardening> {
        let hold = steel.stock.at(self.soak.temperature_c).ok()?;
        let soaked = soak_for(&hold, self.soak.time_min).ok()?;
        Hardening::of_route(self, &soaked.end, &soaked.dissolved).ok()
    }
}

/// A target to start from: what the starting route gives, or where no model tells it, what the
/// handbook has as quenched less what a first temper takes. Never harder than the handbook has it as
/// quenched.
fn first_target(grade: &Grade, end_hrc: Option<f64>) -> Option<Target> {
    let (least_hrc, most_hrc) = grade.as_quenched_hrc.span?;
    let by_handbook_hrc = f64::midpoint(least_hrc, most_hrc) - FIRST_TEMPER_TAKES_HRC;
    let about_hrc = end_hrc
        .unwrap_or(by_handbook_hrc)
        .min(most_hrc - TARGET_EITHER_WAY_HRC)
        .round();
    Some(Target {
        least_hrc: about_hrc - TARGET_EITHER_WAY_HRC,
        most_hrc: about_hrc + TARGET_EITHER_WAY_HRC,
    })
}

/// A temper to start from: as cool as edge tools are tempered where the handbook's range allows it, and
/// not where the steel is embrittled.
fn first_temper(grade: &Grade) -> Option<Temper> {
    let (from_c, to_c) = grade.temper_c.span?;
    let [embrittled_c, free_c] = embrittling_range_c(&grade.nominal);
    let cool_c = FIRST_TEMPER_C.clamp(from_c, to_c);
    let is_embrittled = (embrittled_c..=free_c).contains(&cool_c);
    Some(Temper {
        temperature_c: if is_embrittled {
            (free_c + CLEAR_OF_IT_K).clamp(from_c, to_c)
        } else {
            cool_c
        },
        time_min: if hardens_in_air(grade) {
            AIR_HARDENING_TEMPER_MIN
        } else {
            TEMPER_MIN
        },
    })
}

/// The steps before hardening that a handbook has for a grade, the middle of each range: forged,
/// normalised and refined, or annealed where the grade hardens in air.
#[must_use]
pub fn starting_steps(grade: &Grade) -> Vec<PriorStep> {
    let critical = critical_temperatures(&grade.nominal).ok();
    let a1_c = critical.map_or(0.0, |critical| critical.a1_c);
    let is_hypereutectoid =
        critical.is_some_and(|critical| grade.nominal.c > critical.eutectoid_carbon_wt);
    let air = |work, temperature_c: f64, time_min| PriorStep {
        work,
        temperature_c: temperature_c.round(),
        time_min,
        cooling: SlowCooling::still_air(),
    };
    let mut steps = Vec::new();
    if let Some((finish_c, top_c)) = grade.forge_c.span.filter(|(least, most)| most > least) {
        let forge = Work::Forge { finish_c, heats: 2 };
        let mut forged = air(forge, (top_c - BELOW_TOP_K).max(finish_c), HEAT_MIN);
        if hardens_in_air(grade) {
            // Cold from the forge it would be martensite in coarse grains, and crack.
            let (rate_k_per_h, until_c) = LED_DOWN;
            forged.cooling = SlowCooling::Furnace {
                rate_k_per_h,
                until_c,
            };
        }
        steps.push(forged);
    }
    match middle(&grade.normalise_c) {
        Some(normalise_c) => {
            steps.push(air(Work::Normalise, normalise_c, NORMALISE_MIN));
            for below_k in REFINED_BELOW_K {
                let refine_c = (normalise_c - below_k).max(a1_c + LEAST_ABOVE_A1_K);
                steps.push(air(Work::Refine, refine_c, REFINE_MIN));
            }
            if is_hypereutectoid {
                let anneal_c = ((a1_c - BELOW_A1_K) / 5.0).round() * 5.0;
                steps.push(air(Work::SubcriticalAnneal, anneal_c, BELOW_A1_MIN));
            }
        }
        None => steps.extend(anneal(grade, a1_c)),
    }
    steps
}

/// Whether a grade is not to be normalised, because it hardens in air.
fn hardens_in_air(grade: &Grade) -> bool {
    grade.normalise_c.text.contains("not")
}

/// The handbook's annealing of a grade.
fn anneal(grade: &Grade, a1_c: f64) -> Option<PriorStep> {
    let temperature_c = middle(&grade.anneal_c)?.round();
    if temperature_c <= a1_c {
        return Some(PriorStep {
            work: Work::SubcriticalAnneal,
            temperature_c,
            time_min: BELOW_A1_MIN,
            cooling: SlowCooling::still_air(),
        });
    }
    let (rate_k_per_h, until_c) = grade.anneal_led_down().unwrap_or(LED_DOWN);
    Some(PriorStep {
        work: Work::SlowAnneal,
        temperature_c,
        time_min: ANNEAL_MIN,
        cooling: SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        },
    })
}

fn middle(entry: &Entry) -> Option<f64> {
    entry.span.map(|(least, most)| f64::midpoint(least, most))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::Section;
    use crate::route::departures;
    use crate::route::{Sentence, Verdict, run, sentences, validate};
    use crate::steel::find;
    use crate::steel::grades;
    use crate::units::TemperatureScale;

    #[test]
    fn every_grade_has_a_whole_route_inside_its_handbook() {
        for grade in grades() {
            let mut route = Route::example();
            route.take_handbook(grade);
            assert_eq!(validate(&route), Ok(()), "{}", grade.designation);
            assert!(!route.prior.is_empty(), "{}", grade.designation);
            assert_eq!(departures(&route), [], "{}", grade.designation);
            let outcome = run(&route).unwrap_or_else(|e| panic!("{}: {e}", grade.designation));
            for (step, done) in route.prior.iter().zip(&outcome.prior) {
                assert!(
                    done.state.given().is_some(),
                    "{} {step:?}",
                    grade.designation
                );
            }
        }
    }

    /// The route of a grade is its own, whichever was there before.
    #[test]
    fn the_grade_before_leaves_nothing_behind() {
        let mut route = Route::example();
        for grade in grades().iter().step_by(3) {
            route.take_handbook(grade);
            let mut straight = Route::example();
            straight.take_handbook(grade);
            assert_eq!(route, straight, "{}", grade.designation);
        }
    }

    /// A starting route hardens the section, or no quenchant of its class does and the verdict says so.
    /// The section is the example's knife, 4 mm at its spine. It aims at no more than the handbook has.
    #[test]
    fn every_starting_route_hardens_or_says_why_not() {
        for grade in grades() {
            let mut route = Route::example();
            route.take_handbook(grade);
            let (name, target) = (&grade.designation, route.target);
            assert_eq!(route.cold, None, "{name}");
            let (_, most_hrc) = grade.as_quenched_hrc.span.unwrap();
            assert!(target.most_hrc <= most_hrc.round(), "{name} {target:?}");
            let outcome = run(&route).unwrap();
            let Some(quenched) = outcome.quench.transformed.given() else {
                continue;
            };
            // All do at 4 mm, or harden what is sharpened.
            let sharpened = quenched
                .hardened_depth_mm
                .is_some_and(|mm| mm >= 0.25 * 26.0);
            assert!(quenched.margin.factor >= 1.0 || sharpened, "{name}");
            assert_eq!(
                quenched.margin.factor < 1.0,
                outcome.judged_edge().is_some(),
                "{name}"
            );
        }
        let mut thick = Route::example();
        thick.section = Section::Plate { thickness_mm: 40.0 };
        thick.take_handbook(find("1045").unwrap());
        assert_eq!(
            thick.quench.medium,
            MediumChoice::Named("brine10".to_owned())
        );
        let margin = run(&thick)
            .unwrap()
            .quench
            .transformed
            .given()
            .unwrap()
            .margin;
        assert_eq!(margin.verdict, Verdict::Misses);
    }

    /// The gentlest that hardens: oil at 4 mm of alloyed steel, water of plain.
    #[test]
    fn the_quenchant_follows_the_section() {
        let offered = |grade: &str, thickness_mm: f64| {
            let mut route = Route::example();
            route.section = Section::Plate { thickness_mm };
            route.take_handbook(find(grade).unwrap());
            route.quench.medium
        };
        let named = |name: &str| MediumChoice::Named(name.to_owned());
        assert_eq!(offered("4140", 4.0), named("oil_medium"));
        assert_eq!(offered("A2", 4.0), named("plate_Al_clamped"));
        assert_eq!(offered("1095", 4.0), named("water20"));
        assert_eq!(offered("1095", 1.0), named("oil_fast"));
    }

    /// Common practice, no source: a thin edge tool of plain steel starts in fast oil, which leaves its
    /// spine softer, and water is named as what would harden more and may crack it. Steel whose class
    /// has no oil stays with water.
    #[test]
    fn a_thin_blade_starts_in_oil_for_its_cutting_edge() {
        for name in ["1075", "1095", "W2"] {
            let mut route = Route::example();
            route.take_handbook(find(name).unwrap());
            let fast = MediumChoice::Named("oil_fast".to_owned());
            assert_eq!(route.quench.medium, fast, "{name}");
            let outcome = run(&route).unwrap();
            let told: Vec<String> = sentences(&route, &outcome, TemperatureScale::Celsius)
                .iter()
                .map(Sentence::text)
                .collect();
            let [quench, end] = [&told[1], told.last().unwrap()];
            assert!(quench.contains("above that it stays softer"), "{quench}");
            assert!(
                quench.contains("Water") && quench.contains("may crack it"),
                "{quench}"
            );
            assert!(
                end.contains("At the cutting edge it has") && end.contains("On target"),
                "{name}: {end}"
            );
            let [spine, edge] = [&outcome.stages[..], outcome.judged_stages()].map(|stages| {
                let last = stages.last().unwrap();
                last.hardness.unwrap().hrc_carried()
            });
            assert!(edge > spine, "{name}");
        }
        let mut route = Route::example();
        route.take_handbook(find("1045").unwrap());
        assert_eq!(
            route.quench.medium,
            MediumChoice::Named("water20".to_owned())
        );
    }

    /// Air-hardening D2 tempered twice as its handbook begins lies inside its tempering table.
    #[test]
    fn a_first_temper_is_one_that_is_known() {
        for name in ["D2", "A2", "S7", "O1", "52100", "51CrV4"] {
            let mut route = Route::example();
            route.take_handbook(find(name).unwrap());
            let outcome = run(&route).unwrap();
            assert!(outcome.temper.given().is_some(), "{name}");
        }
    }

    #[test]
    fn air_hardening_grades_are_annealed_and_not_normalised() {
        for name in ["A2", "D2", "S7", "440C"] {
            let works: Vec<Work> = starting_steps(find(name).unwrap())
                .iter()
                .map(|step| step.work)
                .collect();
            assert!(!works.contains(&Work::Normalise), "{name} {works:?}");
            assert!(works.contains(&Work::SlowAnneal), "{name} {works:?}");
        }
    }
}
