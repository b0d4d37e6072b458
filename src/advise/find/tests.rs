//! Searches against all that a small shop can do.

use super::*;
use crate::advise::{ColdBath, Furnace, Quenchant, TemperOven, spread};
use crate::heat::{MediumChoice, Section};
use crate::route::{Deviation, Thermocouple, trial};
use crate::steel::find as find_grade;

fn furnace(least_c: f64, most_c: f64) -> Furnace {
    Furnace {
        name: "kiln".to_owned(),
        least_c,
        most_c,
        band_k: 8.0,
        offset_k: 0.0,
        thermocouple: Thermocouple::Checked,
        holds: true,
    }
}

fn shop(quenchants: &[&str]) -> Shop {
    Shop {
        furnaces: vec![furnace(700.0, 1100.0)],
        quenchants: quenchants
            .iter()
            .map(|name| Quenchant {
                medium: MediumChoice::Named((*name).to_owned()),
                agitation: 1.0,
            })
            .collect(),
        colds: Vec::new(),
        temper_oven: Some(TemperOven {
            least_c: 100.0,
            most_c: 300.0,
            band_k: 5.0,
        }),
        tester: None,
    }
}

fn piece(designation: &str, thickness_mm: f64) -> Route {
    let mut route = Route::example();
    route.take_grade(find_grade(designation).unwrap());
    route.section = Section::Plate { thickness_mm };
    route.cold = None;
    route
}

fn sought(least_hrc: f64, most_hrc: f64) -> Sought {
    Sought {
        target: Target {
            least_hrc,
            most_hrc,
        },
        purpose: Purpose::Edge,
        limits: Limits::default(),
    }
}

fn run(piece: &Route, shop: &Shop, sought: &Sought) -> FindRun {
    let mut run = FindRun::new(piece, shop, sought, &Tolerances::default(), 1).unwrap();
    while run.step() {}
    run
}

/// Every route that the search has computed is that of the whole pipeline, and none of the grid is
/// left out.
#[test]
fn the_search_is_the_whole_grid() {
    let piece = piece("O1", 3.0);
    let shop = shop(&["oil_fast", "air_still"]);
    let found = run(&piece, &shop, &sought(59.0, 62.0));
    let grid = found.soakings.len() * shop.quenchants.len() * found.tempers.len();
    assert_eq!(found.soakings.len(), 10);
    assert_eq!(found.choices.len(), grid);
    for choice in found.choices.iter().step_by(7) {
        let route = found.route(choice).unwrap();
        let alone = trial(&route, &Deviation::default()).unwrap();
        let last = alone.finished(&route).unwrap();
        assert_eq!(choice.hrc, last.hardness.unwrap().hrc_carried());
        let upstream = &found.upstreams[choice.upstream];
        assert_eq!(upstream.margin_factor, alone.margin_factor);
    }
}

/// Of all routes of the grid that meet the target as planned, sampled without exception, none is
/// likelier to meet it than the best that was told, by what counts.
#[test]
fn no_route_of_the_grid_has_a_better_chance() {
    let shop = shop(&["oil_fast", "oil_medium"]);
    let found = run(&piece("O1", 3.0), &shop, &sought(59.0, 62.0));
    let told = found.so_far().unwrap().routes;
    let told = told
        .iter()
        .filter_map(|route| route.chance)
        .fold(0.0, f64::max);
    let mut best = 0.0_f64;
    for upstream in 0..found.upstreams.len() {
        let own = found
            .choices
            .iter()
            .filter(|choice| choice.upstream == upstream);
        let all: Vec<_> = own
            .filter(|choice| found.keeps_to_all(choice))
            .copied()
            .collect();
        for weighed in chance::sample(&found, &all, &found.heats).unwrap() {
            best = best.max(weighed.chance.unwrap());
        }
    }
    assert!(best > 0.0 && told > best - 0.05, "{told} of {best}");
}

/// The chance of a route found is that of a far larger sample of it.
#[test]
fn the_chance_is_that_of_a_large_sample() {
    let found = run(&piece("O1", 3.0), &shop(&["oil_fast"]), &sought(59.0, 62.0));
    let tolerances = Tolerances {
        temper_band_k: Some(5.0),
        ..Tolerances::default()
    };
    for told in found.so_far().unwrap().routes.iter().take(2) {
        let sample = spread(&told.route, &tolerances, 256, 9).unwrap();
        let chance = sample.meets_target_part.unwrap();
        let told_chance = told.chance.unwrap();
        assert!(
            (told_chance - chance).abs() < 0.07,
            "{told_chance} {chance}"
        );
        let band = sample.final_hrc.unwrap();
        assert!(
            (told.band_hrc[0] - band.p05).abs() < 0.5,
            "{told:?} {band:?}"
        );
        assert!(
            (told.band_hrc[1] - band.p95).abs() < 0.5,
            "{told:?} {band:?}"
        );
    }
}

#[test]
fn routes_come_in_order_with_their_reasons() {
    let found = find(
        &piece("O1", 3.0),
        &shop(&["oil_fast", "oil_medium", "water20"]),
        &sought(59.0, 62.0),
        &Tolerances::default(),
        1,
    )
    .unwrap();
    let routes = &found.routes;
    assert!(routes.len() > 2 && found.nearest.is_none());
    assert!(
        routes[0].reason.starts_with("The best chance of 59 to 62"),
        "{}",
        routes[0].reason
    );
    for pair in routes.windows(2) {
        let ahead = !pair[0].may_crack && pair[1].may_crack
            || !pair[0].embrittles && pair[1].embrittles
            || pair[0].chance.unwrap() + 0.05 > pair[1].chance.unwrap();
        assert!(ahead, "{} {}", pair[0].reason, pair[1].reason);
        assert!(!pair[1].reason.is_empty());
    }
    for told in routes {
        assert!((59.0..=62.0).contains(&told.hrc) && told.chance > Some(0.2));
        assert_eq!(crate::route::validate(&told.route), Ok(()));
    }
}

/// No route of the trade-off is beaten in both by another of it.
#[test]
fn the_trade_off_falls() {
    let found = run(
        &piece("52100", 3.0),
        &shop(&["oil_fast"]),
        &sought(58.0, 62.0),
    );
    let front = found.so_far().unwrap().trade_off;
    assert!(front.len() > 5);
    for pair in front.windows(2) {
        assert!(pair[0].hrc >= pair[1].hrc && pair[0].toughness_points < pair[1].toughness_points);
    }
    let beaten = found
        .choices
        .iter()
        .filter(|c| found.keeps_to_limits(c))
        .any(|choice| {
            let points = choice.piece.points(Property::Toughness);
            front
                .first()
                .is_some_and(|hardest| choice.hrc > hardest.hrc + 1e-9)
                || front
                    .last()
                    .is_some_and(|toughest| points > toughest.toughness_points + 5.0)
        });
    assert!(!beaten);
}

fn in_the_way(piece: &Route, shop: &Shop, sought: &Sought) -> Nearest {
    let found = find(piece, shop, sought, &Tolerances::default(), 1).unwrap();
    assert!(found.routes.is_empty());
    found.nearest.unwrap()
}

#[test]
fn what_stands_in_the_way_is_told_with_what_would_help() {
    let knife = piece("1095", 6.0);
    let slow = in_the_way(&knife, &shop(&["air_still"]), &sought(58.0, 62.0));
    assert_eq!(slow.limit, Limit::Margin);
    assert!(
        slow.words.contains("too slow") && slow.words.contains("list"),
        "{}",
        slow.words
    );

    let oil = shop(&["oil_fast"]);
    let tool = piece("O1", 3.0);
    let hard = in_the_way(&tool, &oil, &sought(67.0, 69.0));
    assert_eq!(hard.limit, Limit::Hardness);
    assert!(hard.words.contains("hardest"), "{}", hard.words);

    let limited = |change: fn(&mut Limits)| {
        let mut sought = sought(59.0, 62.0);
        change(&mut sought.limits);
        sought
    };
    let austenite = in_the_way(&tool, &oil, &limited(|l| l.most_austenite = Some(0.001)));
    assert_eq!(austenite.limit, Limit::Austenite);
    assert!(austenite.words.contains("cold bath"), "{}", austenite.words);
    let grain = in_the_way(&tool, &oil, &limited(|l| l.least_grain_astm = Some(14.5)));
    assert_eq!(grain.limit, Limit::Grain);
    let time = in_the_way(&tool, &oil, &limited(|l| l.longest_h = Some(0.5)));
    assert_eq!(time.limit, Limit::Time);

    let mut cold_kiln = shop(&["oil_fast"]);
    cold_kiln.furnaces = vec![furnace(100.0, 600.0)];
    let furnace = in_the_way(&tool, &cold_kiln, &sought(59.0, 62.0));
    assert_eq!(furnace.limit, Limit::Furnace);
    let nothing = run(&tool, &cold_kiln, &sought(59.0, 62.0));
    assert_eq!(nothing.progress(), 1.0);
}

/// No piece as quenched passes for a tempered one.
#[test]
fn a_steel_whose_temper_is_not_known_gives_no_route() {
    let mut piece = piece("S5", 5.0);
    // More than the law of tempering knows; the grade may have up to 1.35 %.
    piece.composition.mo = 0.6;
    let untold = in_the_way(&piece, &shop(&["oil_fast"]), &sought(55.0, 66.0));
    assert_eq!((untold.limit, untold.nearest), (Limit::Hardness, None));
    assert!(untold.words.contains("do not tell"), "{}", untold.words);
}

/// A temper has the chance of its own oven, whatever others are weighed with it.
#[test]
fn every_temper_has_the_band_of_its_oven() {
    let mut shop = shop(&["oil_fast"]);
    shop.temper_oven = None;
    shop.furnaces = vec![furnace(190.0, 1100.0), furnace(100.0, 185.0)];
    shop.furnaces[1].band_k = 40.0;
    let found = run(&piece("O1", 3.0), &shop, &sought(58.0, 64.0));
    let at = |temperature_c: f64| {
        let own = found
            .choices
            .iter()
            .find(|choice| found.tempers[choice.tempers].temper.temperature_c == temperature_c);
        *own.unwrap()
    };
    let (wide, narrow) = (at(180.0), at(200.0));
    assert_eq!(found.tempers[wide.tempers].band_k, 40.0);
    assert_eq!(found.tempers[narrow.tempers].band_k, 8.0);
    let weigh = |choices: &[run::Choice]| chance::sample(&found, choices, &found.heats).unwrap();
    assert_eq!(weigh(&[wide, narrow])[1], weigh(&[narrow])[0]);
    let width = |weighed: &chance::Weighed| weighed.band_hrc[1] - weighed.band_hrc[0];
    let both = weigh(&[narrow, wide]);
    assert!(width(&both[1]) > width(&both[0]) + 0.2, "{both:?}");
}

/// What is left of a steel at the edge of the models is no sample of it.
#[test]
fn few_cases_inside_the_models_give_no_chance() {
    let found = run(&piece("O1", 3.0), &shop(&["oil_fast"]), &sought(58.0, 64.0));
    let choice = found.choices[0];
    let mut cases = chance::quenched_cases(&found, &choice, &found.heats).unwrap();
    assert!(
        chance::weigh(&found, &choice, &cases)
            .unwrap()
            .chance
            .is_some()
    );
    cases.quenched.truncate(15);
    assert_eq!(chance::weigh(&found, &choice, &cases).unwrap().chance, None);
    cases.too_cold = 1;
    assert!(
        chance::weigh(&found, &choice, &cases)
            .unwrap()
            .chance
            .is_some()
    );
}

/// What the models do not tell is said, and a limit to it gives no chance.
#[test]
fn what_is_not_checked_is_told() {
    let mut sought = sought(59.0, 62.0);
    sought.limits.most_austenite = Some(0.3);
    let mut found = run(&piece("O1", 3.0), &shop(&["oil_fast"]), &sought);
    let choice = found.choices[0];
    assert_eq!(found.not_checked(&choice), []);
    found.upstreams[choice.upstream].margin_factor = None;
    let mut untold = choice;
    untold.piece.austenite = None;
    assert_eq!(
        found.not_checked(&untold),
        [Limit::Margin, Limit::Austenite]
    );
    let weighed = chance::sample(&found, &[untold], &found.heats).unwrap();
    assert_eq!(weighed[0].chance, None);
    let told = rank::ranked(&found, &weighed);
    assert_eq!(told[0].not_checked, [Limit::Margin, Limit::Austenite]);
    assert!(
        told[0].reason.contains("cannot be told. Not checked"),
        "{}",
        told[0].reason
    );
    // Without the limit the chance is that of the hardness.
    found.sought.limits.most_austenite = None;
    let weighed = chance::sample(&found, &[untold], &found.heats).unwrap();
    assert!(weighed[0].chance.is_some());
    let reason = &rank::ranked(&found, &weighed)[0].reason;
    assert!(reason.contains("margin of its quench"), "{reason}");
}

/// A limit set to what advice names can be met.
#[test]
fn advice_is_rounded_to_the_safe_side() {
    let (tool, oil) = (piece("O1", 3.0), shop(&["oil_fast"]));
    let mut limited = sought(59.0, 62.0);
    limited.limits.least_grain_astm = Some(14.5);
    let words = in_the_way(&tool, &oil, &limited).words;
    let named = words.split("a limit of ").nth(1).unwrap();
    let grain: f64 = named
        .split(" would")
        .next()
        .unwrap()
        .trim_end_matches(',')
        .parse()
        .unwrap();
    limited.limits.least_grain_astm = Some(grain);
    let found = find(&tool, &oil, &limited, &Tolerances::default(), 1).unwrap();
    assert!(!found.routes.is_empty(), "{words}");
}

/// A cold bath of the shop is used, and a limit may rule it out.
#[test]
fn a_cold_bath_is_a_choice() {
    let mut shop = shop(&["oil_fast"]);
    shop.colds.push(ColdBath {
        name: "dry ice".to_owned(),
        temperature_c: -75.0,
    });
    let mut sought = sought(59.0, 63.0);
    let with = run(&piece("52100", 3.0), &shop, &sought);
    assert!(with.choices.iter().any(|choice| choice.cold == 1));
    sought.limits.no_cold = true;
    let without = run(&piece("52100", 3.0), &shop, &sought);
    assert!(without.choices.iter().all(|choice| choice.cold == 0));
}

#[test]
fn slices_tell_how_far_they_are() {
    let (piece, shop) = (piece("O1", 3.0), shop(&["oil_fast"]));
    let mut run = FindRun::new(
        &piece,
        &shop,
        &sought(59.0, 62.0),
        &Tolerances::default(),
        1,
    )
    .unwrap();
    let mut last = run.progress();
    assert_eq!(last, 0.0);
    while run.step() {
        assert!(run.progress() >= last);
        last = run.progress();
        // Routes of the grid fit, so nothing stands in the way, told late or early.
        assert_eq!(run.so_far().unwrap().nearest, None);
    }
    assert_eq!(run.progress(), 1.0);
}

/// Where no quench of the shop hardens the piece, the slowest of the list that would is told as the bench tells
/// it: by its margin in this section, and what may crack the piece only where nothing else does.
#[test]
fn the_slowest_that_would_harden_goes_by_the_section_and_does_not_crack_it() {
    for (piece, told) in [
        (
            Route {
                section: Section::Round { diameter_mm: 30.0 },
                ..piece("O1", 3.0)
            },
            "polymer",
        ),
        (piece("4140", 20.0), "plates"),
    ] {
        let nearest = in_the_way(&piece, &shop(&["air_still"]), &sought(55.0, 62.0));
        assert_eq!(nearest.limit, Limit::Margin);
        let (_, slowest) = nearest
            .words
            .split_once("The slowest of the list that would is ")
            .unwrap();
        assert!(slowest.contains(told), "{slowest}");
    }
}
