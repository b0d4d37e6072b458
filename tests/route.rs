//! The pipeline from a route to its outcome: the example, and properties over random routes.
//! `ROUTES=1000000 cargo test --release --test route random` tries a million of them, which takes hours;
//! `ROUTES=250000..500000` the second quarter of these.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::heat::{Family, Grind, Leave, MediumChoice, OwnMedium, Section, media, medium};
use recalesce::route::{
    Cold, NextBath, Outcome, Route, Step, Temper, caution_text, run, sentences, validate,
};
use recalesce::soak::StartingStructure;
use recalesce::steel::{Element, grades};
use recalesce::units::{LengthUnit, TemperatureScale};
use serde_json::Value;
use std::ops::Range;

/// Random routes by their numbers, where the environment does not say otherwise.
const ROUTES: Range<u64> = 0..10_000;
/// So many of ten have to come to an outcome: the rest is refused, in words.
const LEAST_OUTCOMES_IN_TEN: u64 = 8;

fn routes() -> Range<u64> {
    let Ok(asked) = std::env::var("ROUTES") else {
        return ROUTES;
    };
    let number = |text: &str| text.parse().expect("a number of a route");
    match asked.split_once("..") {
        Some((first, end)) => number(first)..number(end),
        None => 0..number(&asked),
    }
}

/// No element beyond what a composition may hold, wt %.
const MOST_ALLOY_WT: f64 = 18.0;

/// Splitmix: the same routes on every run and machine.
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        (z >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.next()
    }

    /// Even in the logarithm.
    fn scale(&mut self, least: f64, most: f64) -> f64 {
        self.between(least.ln(), most.ln()).exp()
    }

    fn chance(&mut self, part: f64) -> bool {
        self.next() < part
    }

    fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[((self.next() * of.len() as f64) as usize).min(of.len() - 1)]
    }

    fn route(&mut self) -> Route {
        let mut route = Route::example();
        let grade = self.pick(grades());
        route.take_grade(grade);
        if self.chance(0.5) {
            // Another heat, or a steel of the user's own.
            route.grade = None;
            for element in Element::ALL {
                let content = route.composition.get(element) * self.between(0.7, 1.3);
                route.composition.set(element, content.min(MOST_ALLOY_WT));
            }
        }
        route.start = *self.pick(&StartingStructure::ALL);
        // Blades and square bars take ten times as long as the others.
        route.section = if self.chance(0.05) {
            let spine_mm = self.between(1.0, 10.0);
            Section::Blade {
                edge_mm: spine_mm * self.between(0.1, 0.9),
                spine_mm,
                // None is lower than 5 mm.
                height_mm: (spine_mm * self.between(4.0, 15.0)).max(5.0),
                grind: *self.pick(&[Grind::Straight, Grind::Convex]),
            }
        } else if self.chance(0.06) {
            Section::Square {
                side_mm: self.scale(0.5, 100.0),
            }
        } else if self.chance(0.5) {
            Section::Round {
                diameter_mm: self.scale(0.5, 100.0),
            }
        } else {
            Section::Plate {
                thickness_mm: self.scale(0.3, 80.0),
            }
        };
        route.furnace_band_k = self.between(0.0, 15.0);
        route.soak.temperature_c += self.between(-60.0, 80.0);
        route.soak.time_min = self.scale(0.5, 300.0);
        route.quench.medium = if self.chance(0.1) {
            MediumChoice::Own(OwnMedium {
                h_w_m2k: vec![
                    [70.0, self.scale(20.0, 3000.0)],
                    [350.0, self.scale(20.0, 6000.0)],
                    [700.0, self.scale(20.0, 3000.0)],
                ],
                bath_c: self.between(0.0, 250.0),
                radiation: self.chance(0.5),
                ..OwnMedium::default()
            })
        } else {
            let listed = self.pick(media());
            let named = MediumChoice::Named(listed.name.clone());
            match listed.bath_range() {
                Some(range) if self.chance(0.3) => {
                    named.with_bath(self.between(range.least_c, range.most_c))
                }
                _ => named,
            }
        };
        if self.chance(0.1) {
            route.quench.then = vec![NextBath {
                leave: if self.chance(0.5) {
                    Leave::AfterS(self.scale(0.2, 7200.0))
                } else {
                    let bath_c = route.quench.medium.resolve().map_or(0.0, |m| m.bath_c);
                    Leave::AtC(self.between(260.0, 600.0).max(bath_c + 5.0))
                },
                medium: MediumChoice::Named(self.pick(media()).name.clone()),
                agitation: 1.0,
            }];
        }
        route.quench.agitation = self.scale(0.4, 2.5);
        route.quench.air_delay_s = self.between(0.0, 4.0);
        route.quench.end_c = self.between(-80.0, 120.0);
        route.cold = self.chance(0.4).then(|| Cold {
            temperature_c: self.between(-196.0, 0.0),
            time_min: self.scale(5.0, 600.0),
            delay_min: self.scale(0.5, 3000.0),
            snap: self.chance(0.3).then(|| Temper {
                temperature_c: self.between(120.0, 200.0),
                time_min: self.scale(5.0, 480.0),
            }),
        });
        let tempers = (self.next() * 4.0) as usize;
        route.tempers = (0..tempers)
            .map(|_| Temper {
                temperature_c: self.between(100.0, 700.0),
                time_min: self.scale(1.0, 600.0),
            })
            .collect();
        route
    }
}

/// Fields that may be absent; everything else that is null was a number that is none.
const MAY_BE_ABSENT: [&str; 20] = [
    "cost",
    "next_slower",
    "slowest_medium",
    "thickest_mm",
    "held_c",
    "hardened_depth_mm",
    "carbon_at_coldest_wt",
    "carbon_at_hottest_wt",
    "hrc_at_coldest",
    "hrc_at_hottest",
    "austenite_at_hottest",
    "fractions",
    "hardness",
    "less_hrc",
    "more_hrc",
    "limiting",
    "chemistry",
    "soak",
    "auto_tempered_hrc",
    "meets_target_s",
];

/// The first number that is not finite, by its way through the outcome.
fn not_finite(value: &Value, way: &str) -> Option<String> {
    match value {
        Value::Null => {
            let name = way.rsplit('.').next().unwrap_or_default();
            (!MAY_BE_ABSENT.contains(&name)).then(|| way.to_owned())
        }
        Value::Array(items) => items
            .iter()
            .enumerate()
            .find_map(|(i, item)| not_finite(item, &format!("{way}[{i}]"))),
        Value::Object(fields) => fields
            .iter()
            .find_map(|(name, field)| not_finite(field, &format!("{way}.{name}"))),
        _ => None,
    }
}

/// Numbers that may be absent, and are finite when they are there.
fn optional_numbers(outcome: &Outcome) -> Vec<Option<f64>> {
    let furnace = &outcome.furnace;
    let mut numbers = vec![
        furnace.carbon_at_coldest_wt,
        furnace.carbon_at_hottest_wt,
        furnace.hrc_at_coldest,
        furnace.hrc_at_hottest,
        furnace.austenite_at_hottest,
    ];
    if let Some(quenched) = outcome.quench.transformed.given() {
        numbers.extend([
            quenched.thickest_mm,
            quenched.hardened_depth_mm,
            quenched.held_c,
            quenched.auto_tempered_hrc,
        ]);
        let sources = quenched.margin.sources;
        let ends = [sources.chemistry, sources.soak];
        numbers.extend(ends.into_iter().flatten().flatten().map(Some));
    }
    numbers.extend(outcome.temper.given().map(|temper| temper.meets_target_s));
    for influence in &outcome.influences {
        numbers.extend([influence.less_hrc, influence.more_hrc]);
    }
    numbers
}

/// What is wrong with an outcome by itself.
fn fault(route: &Route, outcome: &Outcome) -> Option<String> {
    let value = match serde_json::to_value(outcome) {
        Ok(value) => value,
        Err(error) => return Some(error.to_string()),
    };
    if let Some(way) = not_finite(&value, "outcome") {
        return Some(format!("not finite: {way}"));
    }
    if let Some(number) = optional_numbers(outcome)
        .into_iter()
        .flatten()
        .find(|number| !number.is_finite())
    {
        return Some(format!("not finite: {number}"));
    }
    for stage in &outcome.stages {
        let Some(f) = stage.fractions else { continue };
        let parts = [
            f.ferrite,
            f.pearlite,
            f.bainite,
            f.martensite,
            f.austenite,
            f.carbide,
        ];
        let sum: f64 = parts.iter().sum();
        if (sum - 1.0).abs() > 1e-9 || parts.iter().any(|part| !(0.0..=1.0).contains(part)) {
            return Some(format!("{:?}: {f:?} sum {sum}", stage.step));
        }
    }
    let told = sentences(route, outcome, TemperatureScale::Celsius);
    if told
        .iter()
        .any(|sentence| sentence.text().trim().is_empty())
    {
        return Some("a sentence without words".to_owned());
    }
    if outcome.cautions.iter().any(|caution| {
        caution_text(caution, TemperatureScale::Celsius, LengthUnit::Millimetre).is_empty()
    }) {
        return Some("a caution without words".to_owned());
    }
    None
}

fn austenite_as_quenched(outcome: &Outcome) -> Option<f64> {
    let stage = outcome.stages.iter().find(|s| s.step == Step::Quench)?;
    Some(stage.fractions?.austenite)
}

/// Whether the deciding place of a quench passes some 50 K between 700 and 450 °C in less time than that of
/// another; not where one of them does not pass all.
fn is_sooner_past_nose(quench: &Outcome, other: &Outcome) -> bool {
    let stays_s = |outcome: &Outcome| -> Option<Vec<f64>> {
        let curve = outcome.quench.deciding_curve()?;
        let levels = (0..=5).map(|step| 700.0 - 50.0 * f64::from(step));
        let reached_s: Option<Vec<f64>> = levels.map(|level_c| curve.time_to_c(level_c)).collect();
        Some(
            reached_s?
                .windows(2)
                .map(|pair| pair[1] - pair[0])
                .collect(),
        )
    };
    let both = stays_s(quench).zip(stays_s(other));
    both.is_some_and(|(of_it, of_other)| of_it.iter().zip(of_other).any(|(a, b)| *a < b))
}

/// Changes one thing that must only work one way, and compares.
fn comparison(number: u64, dice: &mut Dice, route: &Route, outcome: &Outcome) -> Option<String> {
    let mut other = route.clone();
    match number % 3 {
        // How one bath's speed counts depends on when the next takes over.
        0 if !route.quench.then.is_empty() => {}
        0 => {
            other.quench.agitation *= dice.between(0.5, 0.95);
            let slower = run(&other).ok()?;
            let (fast, slow) = (
                outcome.quench.transformed.given()?,
                slower.quench.transformed.given()?,
            );
            // Its hottest point ends at the same temperature, the place that decides within a few hundredths of
            // a kelvin, but in a blade taken out between Ms and the bath: there the hottest point moves, and
            // the place may end colder, with more martensite.
            // A slower bath may hold the piece in vapour until its inside has come down to the nose, and then
            // takes it through that in less time than a faster bath that has boiled before: more is left for
            // martensite. So goes a 75 mm round of 0.55 % C, 1.5 % Si in water of 40 °C, half of it hardened; and a
            // 33 mm round of 0.6 % C, 2 % Si is longer where ferrite forms, and less long where pearlite does.
            let is_hard = fast.hardened_fraction > 0.5;
            // Films of carbide leave the austenite leaner, and more of it then turns.
            let has_films = slow.fractions.carbide > fast.fractions.carbide + 1e-6;
            let [end_c, slow_end_c] = [outcome, &slower].map(|outcome| {
                let curve = outcome.quench.deciding_curve()?;
                curve.temperature_c.last().copied()
            });
            let is_colder = slow_end_c? < end_c? - 0.05;
            if is_hard
                && !is_sooner_past_nose(&slower, outcome)
                && (!has_films
                    && !is_colder
                    && slow.fractions.martensite > fast.fractions.martensite + 1e-3
                    || slow.hardened_fraction > fast.hardened_fraction + 1e-6)
                || slow.margin.factor > fast.margin.factor * (1.0 + 1e-6)
            {
                return Some(format!(
                    "slower by agitation {}: {:?}, factor {}, then {:?}, factor {}",
                    other.quench.agitation,
                    fast.fractions,
                    fast.margin.factor,
                    slow.fractions,
                    slow.margin.factor
                ));
            }
        }
        1 => {
            other.soak.temperature_c += dice.between(1.0, 40.0);
            let hotter = run(&other).ok()?;
            let soaks = [&outcome.soak, &hotter.soak];
            let [cool_wt, hot_wt] = soaks.map(|soak| soak.carbon_in_solution_wt);
            // Beside ferrite one carbide may give way to another that holds more carbon (M23C6 to M7C3 in
            // 16 % Cr near 1000 °C), and ferrite grows for it: the austenite itself then still gains carbon.
            let [cool, hot] = soaks.map(|soak| &soak.limit);
            let has_ferrite_and_carbide = [cool, hot].into_iter().all(|limit| {
                limit.ferrite_mass_fraction > 0.0 && limit.carbide_mass_fraction > 0.0
            });
            let is_given_way = has_ferrite_and_carbide
                && hot.carbide.c > cool.carbide.c
                && hot.austenite.c > cool.austenite.c;
            if hot_wt < cool_wt - 1e-9 && !is_given_way {
                return Some(format!(
                    "hotter at {} °C: {cool_wt} then {hot_wt} wt % C in solution",
                    other.soak.temperature_c
                ));
            }
        }
        _ => {
            other.quench.end_c -= dice.between(1.0, 60.0);
            let colder = run(&other).ok()?;
            let (warm, cold) = (
                austenite_as_quenched(outcome)?,
                austenite_as_quenched(&colder)?,
            );
            if cold > warm + 1e-9 {
                return Some(format!(
                    "colder to {} °C: {warm} then {cold} austenite",
                    other.quench.end_c
                ));
            }
        }
    }
    None
}

/// What is wrong with one random route; whether it came to an outcome.
fn examine(number: u64) -> (bool, Option<String>) {
    let mut dice = Dice(number.wrapping_mul(0xd134_2543_de82_ef95));
    let route = dice.route();
    let told = |what: String| {
        Some(format!(
            "route {number}: {what}\n{}",
            serde_json::to_string(&route).unwrap_or_default()
        ))
    };
    if let Err(error) = validate(&route) {
        return (false, told(format!("meant to be valid: {error}")));
    }
    match run(&route) {
        Ok(outcome) => {
            let fault =
                fault(&route, &outcome).or_else(|| comparison(number, &mut dice, &route, &outcome));
            (true, fault.and_then(told))
        }
        Err(error) if error.to_string().trim().is_empty() => {
            (false, told("refused without words".to_owned()))
        }
        Err(_) => (false, None),
    }
}

/// No panic, all finite, fractions sum to 1, and: slower never more martensite, hotter never less
/// carbon in solution, colder never more retained austenite.
#[test]
fn random_routes_are_sound() {
    let routes = &routes();
    let threads = std::thread::available_parallelism().map_or(2, |n| n.get() as u64);
    let results: Vec<(u64, Vec<String>)> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads)
            .map(|worker| {
                scope.spawn(move || {
                    let mut outcomes = 0;
                    let mut faults = Vec::new();
                    for number in (routes.start + worker..routes.end).step_by(threads as usize) {
                        let (has_outcome, fault) = examine(number);
                        outcomes += u64::from(has_outcome);
                        faults.extend(fault);
                    }
                    (outcomes, faults)
                })
            })
            .collect();
        workers
            .into_iter()
            .map(|worker| worker.join().expect("no panic"))
            .collect()
    });
    let outcomes: u64 = results.iter().map(|r| r.0).sum();
    let faults: Vec<&String> = results.iter().flat_map(|r| &r.1).collect();
    assert!(
        faults.is_empty(),
        "{} faults, the first:\n{}",
        faults.len(),
        faults
            .iter()
            .take(12)
            .map(|s| s.as_str())
            .collect::<Vec<_>>()
            .join("\n")
    );
    assert!(
        10 * outcomes >= LEAST_OUTCOMES_IN_TEN * (routes.end - routes.start),
        "{outcomes} outcomes"
    );
}

/// In still, blown and compressed gas every list medium is slower at every temperature than the
/// one before it.
#[test]
fn a_slower_gas_never_gives_more_martensite() {
    for grade in ["O1", "L6", "4340", "52100"] {
        for thickness_mm in [1.0, 4.0, 12.0] {
            let mut route = Route::example();
            if let Ok(grade) = recalesce::steel::find(grade) {
                route.take_grade(grade);
            }
            route.section = Section::Plate { thickness_mm };
            let hardened: Vec<f64> = ["N2_6bar", "N2_2bar", "air_fan", "air_still"]
                .iter()
                .filter_map(|name| {
                    route.quench.medium = MediumChoice::Named((*name).to_owned());
                    let outcome = run(&route).ok()?;
                    Some(outcome.quench.transformed.given()?.hardened_fraction)
                })
                .collect();
            assert_eq!(hardened.len(), 4, "{grade}");
            assert!(
                hardened.is_sorted_by(|fast, slow| *slow <= fast + 1e-6),
                "{grade} {thickness_mm} mm: {hardened:?}"
            );
        }
    }
}

#[test]
fn the_example_is_told_in_sentences() {
    let route = Route::example();
    let outcome = run(&route).expect("the example runs");
    let told: Vec<String> = sentences(&route, &outcome, TemperatureScale::Celsius)
        .iter()
        .map(recalesce::route::Sentence::text)
        .collect();
    assert!(told.len() >= 4, "{told:#?}");
    let steps: Vec<Step> = outcome.stages.iter().map(|stage| stage.step).collect();
    assert_eq!(
        steps,
        [
            Step::Soak,
            Step::Quench,
            Step::Cold,
            Step::Temper(1),
            Step::Temper(2)
        ]
    );
    assert!(outcome.influences.len() >= 4);
    assert!(outcome.temper.given().is_some());
}

/// The example in each quenchant: what is offered next, and as the slowest.
#[test]
fn quenchants_offered_are_those_of_a_shop() {
    for here in media() {
        let mut route = Route::example();
        route.section = Section::Plate { thickness_mm: 2.0 };
        route.quench.medium = MediumChoice::Named(here.name.clone());
        let outcome = run(&route).expect("the example runs in every quenchant");
        let quenched = outcome.quench.transformed.given().expect("known kinetics");
        let offered = [&quenched.next_slower, &quenched.slowest_medium];
        for neighbour in offered.into_iter().flatten() {
            assert_ne!(neighbour.name, "ref_fluid", "in {}", here.name);
        }
        if let Some(next) = &quenched.next_slower {
            let next = medium(&next.name).expect("one of the list");
            let alike = match here.family {
                Family::Oil | Family::VegetableOil | Family::HotOil => {
                    &[Family::Oil, Family::VegetableOil, Family::HotOil][..]
                }
                Family::Gas | Family::Air => &[Family::Gas, Family::Air],
                Family::Plates => &[Family::Plates, Family::Air, Family::Gas],
                _ => &[],
            };
            assert!(
                alike.is_empty() || alike.contains(&next.family),
                "{} after {}",
                next.name,
                here.name
            );
            let place = |name: &str| media().iter().position(|m| m.name == name);
            assert!(place(&next.name) > place(&here.name));
        }
    }
    let next_of = |name: &str| {
        let mut route = Route::example();
        route.quench.medium = MediumChoice::Named(name.to_owned());
        let outcome = run(&route).ok()?;
        let next = outcome.quench.transformed.given()?.next_slower.as_ref()?;
        Some(next.name.clone())
    };
    assert_eq!(next_of("oil_fast").as_deref(), Some("canola60"));
    assert_eq!(next_of("oil_medium").as_deref(), Some("oil_marq150"));
    assert_eq!(next_of("oil_slow"), None);
    assert_eq!(next_of("plate_Al_foil").as_deref(), Some("air_fan"));
    assert_eq!(next_of("air_fan").as_deref(), Some("air_still"));
    assert_eq!(next_of("air_still"), None);
}
