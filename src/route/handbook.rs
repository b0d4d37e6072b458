//! The handbook's practice for a grade: a whole route to start from, and where a route departs
//! from it.

use super::plan::{Route, Temper};
use super::prior::{PriorStep, SlowCooling, Work};
use crate::hardness::embrittling_range_c;
use crate::heat::MediumChoice;
use crate::phases::critical_temperatures;
use crate::steel::{Entry, Grade, find};
use crate::units::{TemperatureScale, format_duration_s, format_temperature};

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
/// How far above the embrittling range a first temper is begun, K. Expert value.
const CLEAR_OF_IT_K: f64 = 20.0;
/// Quench classes of the list by their first words, and the quenchant of each.
const QUENCHANTS: [(&str, &str); 9] = [
    ("brine", "brine10"),
    ("water", "water20"),
    ("fast", "oil_fast"),
    ("medium/fast", "oil_medfast"),
    ("oil / air / plate", "plate_Al_clamped"),
    ("oil", "oil_medium"),
    ("medium", "oil_medium"),
    ("warm", "oil_medium"),
    ("air", "plate_Al_clamped"),
];

impl Route {
    /// The example with its handbook's steps before hardening: what the page opens with.
    #[must_use]
    pub fn whole_example() -> Self {
        let mut route = Self::example();
        if let Some(grade) = route.grade.as_deref().and_then(|name| find(name).ok()) {
            route.prior = starting_steps(grade);
        }
        route
    }

    /// Takes a grade with its handbook's whole practice: steps before hardening, soak, quenchant,
    /// and two tempers inside the tempering range, whatever grade there was before. Section, furnace,
    /// cold bath and target stay.
    pub fn take_handbook(&mut self, grade: &Grade) {
        self.take_grade(grade);
        self.prior = starting_steps(grade);
        if let Some(name) = quenchant(grade) {
            self.quench.medium = MediumChoice::Named(name.to_owned());
            self.quench.agitation = 1.0;
            self.quench.then.clear();
        }
        if let Some(temper) = first_temper(grade) {
            self.tempers = vec![temper; 2];
        }
    }
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

fn quenchant(grade: &Grade) -> Option<&'static str> {
    let class = grade.quench_class.trim();
    QUENCHANTS
        .iter()
        .find(|(words, _)| class.starts_with(words))
        .map(|(_, name)| *name)
}

/// A setting that lies outside the handbook's range for the grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Departure {
    /// Which setting.
    pub of: Setting,
    /// Least and largest of the handbook, °C or, for a time, min.
    pub handbook: (f64, f64),
}

/// A setting of a route that handbooks give a range for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Setting {
    /// Temperature of a step before hardening, counted from zero.
    Prior(usize),
    /// Finishing temperature of a forging, counted from zero.
    Finish(usize),
    /// Soak temperature.
    SoakTemperature,
    /// Soak time.
    SoakTime,
    /// Temperature of a temper, counted from zero.
    Temper(usize),
}

impl Departure {
    /// The handbook's range in words.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let shown = |value: f64| match self.of {
            Setting::SoakTime => format_duration_s(60.0 * value),
            _ => format_temperature(value, scale),
        };
        let (least, most) = self.handbook;
        if least >= most {
            format!("handbook: {}", shown(least))
        } else {
            format!("handbook: {} to {}", shown(least), shown(most))
        }
    }
}

/// Where a route departs from the handbook's practice for its grade, in the order of the route.
/// Nothing for a steel of no grade, and where the handbook gives no range.
#[must_use]
pub fn departures(route: &Route) -> Vec<Departure> {
    /// A single temperature of a handbook stands for so much either way, K.
    const ABOUT_K: f64 = 15.0;
    let Some(grade) = route.grade.as_deref().and_then(|name| find(name).ok()) else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut check = |of: Setting, value: f64, entry: &Entry| {
        let Some((least, most)) = entry.span else {
            return;
        };
        let about = if least < most || of == Setting::SoakTime {
            0.0
        } else {
            ABOUT_K
        };
        if !(least - about..=most + about).contains(&value) {
            found.push(Departure {
                of,
                handbook: (least, most),
            });
        }
    };
    for (i, step) in route.prior.iter().enumerate() {
        let of = Setting::Prior(i);
        match step.work {
            Work::Forge { finish_c, .. } => {
                check(of, step.temperature_c, &grade.forge_c);
                check(Setting::Finish(i), finish_c, &grade.forge_c);
            }
            Work::Normalise => check(of, step.temperature_c, &grade.normalise_c),
            Work::SlowAnneal => check(of, step.temperature_c, &grade.anneal_c),
            Work::Refine | Work::SubcriticalAnneal | Work::StressRelief => {}
        }
    }
    let soak = route.soak;
    check(
        Setting::SoakTemperature,
        soak.temperature_c,
        &grade.austenitise_c,
    );
    check(Setting::SoakTime, soak.time_min, &grade.soak_min);
    for (i, temper) in route.tempers.iter().enumerate() {
        check(Setting::Temper(i), temper.temperature_c, &grade.temper_c);
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{run, validate};
    use crate::steel::grades;

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
        for grade in grades() {
            let mut routes = ["51CrV4", "D2", "1045"].map(|before| {
                let mut route = Route::example();
                route.take_handbook(find(before).unwrap());
                route.take_handbook(grade);
                route
            });
            let mut straight = Route::example();
            straight.take_handbook(grade);
            for route in &mut routes {
                assert_eq!(*route, straight, "{}", grade.designation);
            }
        }
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
    fn what_goes_beyond_is_told() {
        let mut route = Route::example();
        route.take_handbook(find("52100").unwrap());
        route.soak.temperature_c = 900.0;
        route.prior[1].temperature_c = 950.0;
        let told: Vec<String> = departures(&route)
            .iter()
            .map(|d| d.words(TemperatureScale::Celsius).replace('\u{a0}', " "))
            .collect();
        assert_eq!(told, ["handbook: 885 °C", "handbook: 800 °C to 845 °C"]);
        route.grade = None;
        assert_eq!(departures(&route), []);
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
