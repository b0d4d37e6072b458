use super::*;
use crate::heat::{Leave, MediumChoice, Section};
use crate::route::{
    Cold, Deviation, Left, NextBath, PriorStep, SlowCooling, Taught, Temper, Work, run,
};

fn card_of(route: &Route) -> Card {
    card(
        route,
        &run(route).unwrap(),
        TemperatureScale::Celsius,
        LengthUnit::Millimetre,
    )
}

fn titles(card: &Card) -> Vec<&str> {
    card.rows.iter().map(|row| row.title.as_str()).collect()
}

/// A text without no-break spaces.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// The example with each kind of step before hardening, and two baths.
fn whole() -> Route {
    let mut route = Route::example();
    route.prior = Work::ALL
        .into_iter()
        .zip([1100.0, 900.0, 820.0, 780.0, 690.0, 600.0])
        .map(|(work, temperature_c)| PriorStep {
            work,
            temperature_c,
            time_min: 10.0,
            cooling: match work {
                Work::SlowAnneal => SlowCooling::Furnace {
                    rate_k_per_h: 20.0,
                    until_c: 650.0,
                },
                _ => SlowCooling::still_air(),
            },
        })
        .collect();
    route.quench.then = vec![NextBath {
        leave: Leave::AfterS(6.0),
        medium: MediumChoice::Named("air_still".to_owned()),
        agitation: 1.0,
    }];
    route
}

#[test]
fn the_example_has_a_row_for_each_step() {
    let card = card_of(&Route::example());
    assert_eq!(card.title, "Marking knife, 52100");
    assert_eq!(
        titles(&card),
        [
            "Soak",
            "Quench",
            "Test",
            "Cold",
            "Temper\u{a0}1",
            "Temper\u{a0}2"
        ]
    );
    assert!(plain(&card.sentence).ends_with("medium oil at 50 °C. Aim: 61 to 63 HRC."));
    assert_eq!(plain(&card.rows[0].set), "830 °C");
    assert_eq!(plain(&card.rows[0].detail), "±8 °C, 12 min");
    assert_eq!(card.rows[0].colour, Some(StepColour::Glow(830.0)));
    assert_eq!(plain(&card.rows[1].detail), "50 °C, 1.0 s from furnace");
    assert!(card.rows[2].look_for.contains("skate all over"));
    assert_eq!(card.rows[5].colour, Some(StepColour::Oxide(190.0)));
    let after: Vec<&str> = card.expected.iter().map(|row| row.after.as_str()).collect();
    assert_eq!(after, ["quench", "cold", "temper 1", "temper 2"]);
    assert_eq!(card.unknown, None);
    assert_eq!(card.depth.title, "Hardened height");
}

#[test]
fn a_snap_temper_has_a_row_of_its_own_before_the_cold() {
    let mut route = Route::example();
    if let Some(cold) = &mut route.cold {
        cold.snap = Some(Cold::SNAP_FIRST_OFFERED);
    }
    let card = card_of(&route);
    assert_eq!(
        titles(&card),
        [
            "Soak",
            "Quench",
            "Test",
            "Snap temper",
            "Cold",
            "Temper\u{a0}1",
            "Temper\u{a0}2"
        ]
    );
    let snap = &card.rows[3];
    assert_eq!(plain(&snap.set), "150 °C");
    assert_eq!(plain(&snap.detail), "±8 °C, 1 h");
    assert!(snap.after.is_some());
    assert_eq!(snap.colour, Some(StepColour::Oxide(150.0)));
    assert!(plain(&card.rows[4].look_for).starts_with("No more than 10 min at room"));
    assert_eq!(card.expected[1].after, "snap temper");
    assert!(
        snap.cautions
            .iter()
            .any(|c| c.contains("snap temper may keep"))
    );
}

#[test]
fn every_kind_of_step_has_its_row_with_cooling_and_check() {
    let card = card_of(&whole());
    assert_eq!(
        titles(&card),
        [
            "Forge",
            "Normalise",
            "Refine",
            "Anneal, slow cooled",
            "Anneal below A1",
            "Stress relief",
            "Soak",
            "Quench",
            "Then into",
            "Test",
            "Cold",
            "Temper\u{a0}1",
            "Temper\u{a0}2"
        ]
    );
    let row = |i: usize| &card.rows[i];
    assert_eq!(
        plain(&row(0).detail),
        "±25 °C, down to 900 °C, 2 heats of 10 min"
    );
    assert!(row(1).look_for.contains("still air until black"));
    assert!(row(2).look_for.contains("Straighten while"));
    assert!(!row(1).look_for.contains("Straighten"));
    assert!(plain(&row(3).look_for).contains("down by 20 °C an hour to 650 °C"));
    assert!(row(4).look_for.contains("Trust the thermocouple"));
    for early in &card.rows[..6] {
        assert!(early.look_for.contains(" Cold, it "), "{}", early.title);
        assert!(early.after.is_some(), "{}", early.title);
    }
    assert_eq!(row(7).after, None);
    assert_eq!(plain(&row(8).detail), "after 6.0 s");
    assert!(row(8).look_for.contains("hand warm"));
    assert_eq!(card.expected.len(), 4);
}

/// The rows that bring a caution with these words.
fn bringing<'a>(card: &'a Card, words: &str) -> Vec<&'a str> {
    let brings = |row: &&CardRow| row.cautions.iter().any(|line| line.contains(words));
    let rows = card.rows.iter().filter(brings);
    rows.map(|row| row.title.as_str()).collect()
}

#[test]
fn what_a_step_brings_stands_with_it_and_once() {
    let example = card_of(&Route::example());
    assert_eq!(bringing(&example, "Oil burns"), ["Quench"]);
    assert_eq!(bringing(&example, "Dry ice"), ["Cold"]);
    for words in ["Tongs", "respirator"] {
        assert!(example.before_start.iter().any(|line| line.contains(words)));
    }
    for words in ["carbon monoxide", "galvanised"] {
        assert!(bringing(&example, words).is_empty(), "{words}");
        assert_eq!(bringing(&card_of(&whole()), words), ["Forge"], "{words}");
    }
    let mut salt = Route::example();
    salt.cold = None;
    salt.quench.medium = MediumChoice::Named("salt200_still".to_owned());
    let card = card_of(&salt);
    assert_eq!(bringing(&card, "Molten salt"), ["Quench"]);
    assert!(bringing(&card, "Dry ice").is_empty());
    // A bath that a step before hardening has first.
    let mut oil = Route::example();
    oil.prior = vec![PriorStep {
        work: Work::Normalise,
        temperature_c: 880.0,
        time_min: 5.0,
        cooling: SlowCooling::Medium {
            medium: oil.quench.medium.clone(),
        },
    }];
    assert_eq!(bringing(&card_of(&oil), "Oil burns"), ["Normalise"]);
}

/// Common practice, no source: a piece is moved in every liquid, in salt and oil under the surface.
#[test]
fn a_piece_is_moved_in_every_liquid() {
    let entry = |medium: &str, agitation: f64| {
        let mut route = Route::example();
        route.quench.medium = MediumChoice::Named(medium.to_owned());
        route.quench.agitation = agitation;
        let quench = card_of(&route).rows.into_iter();
        let mut rows = quench.filter(|row| row.title == "Quench");
        rows.next().unwrap().look_for
    };
    for medium in ["water20", "brine10", "polymer15", "oil_fast", "oil_marq150"] {
        let still = entry(medium, 1.0);
        assert!(still.contains("up and down, not sideways"), "{still}");
        assert!(still.contains("the numbers are those of a still bath"));
        assert!(!entry(medium, 1.4).contains("still bath"), "{medium}");
    }
    for medium in ["oil_fast", "salt200_still"] {
        assert!(entry(medium, 1.0).contains("under the surface"), "{medium}");
    }
    assert!(!entry("salt200_agit_wet", 1.0).contains("still bath"));
    assert!(!entry("air_still", 1.0).contains("up and down"));
}

/// Every caution of the outcome stands on the card.
#[test]
fn no_caution_is_left_out() {
    let mut route = whole();
    route.soak.temperature_c = 960.0;
    route.soak.time_min = 60.0;
    route.quench.then.clear();
    route.quench.medium = MediumChoice::Named("water20".to_owned());
    route.cold = None;
    let mut hot_temper = route.clone();
    hot_temper.tempers[1].temperature_c = 300.0;
    route.tempers.clear();
    for route in [route, hot_temper, whole()] {
        let outcome = run(&route).unwrap();
        let card = card_of(&route);
        for caution in &outcome.cautions {
            let text = crate::route::caution_text(
                caution,
                TemperatureScale::Celsius,
                LengthUnit::Millimetre,
            );
            assert!(!bringing(&card, &text).is_empty(), "{text}");
        }
    }
}

#[test]
fn what_is_wrong_with_a_step_stands_with_it() {
    let mut route = whole();
    assert!(bringing(&card_of(&route), "steel burns").is_empty());
    route.prior[1].temperature_c = 1245.0;
    assert_eq!(bringing(&card_of(&route), "steel burns"), ["Normalise"]);
}

#[test]
fn a_network_is_told_once_where_it_begins() {
    for grade in ["52100", "O1", "1095", "142WV13"] {
        let mut route = Route::example();
        route.take_handbook(crate::steel::find(grade).unwrap());
        let card = card_of(&route);
        let rows = card.rows.iter();
        let told = rows.filter(|row| row.look_for.contains("grain boundaries"));
        assert!(told.count() <= 1, "{grade}");
    }
}

#[test]
fn the_furnace_is_set_for_what_it_is_off() {
    let mut route = Route::example();
    route.furnace_offset_k = 6.0;
    let row = &card_of(&route).rows[0];
    assert_eq!(plain(&row.set), "824 °C");
    assert_eq!(plain(&row.detail), "for 830 °C in the piece; ±8 °C, 12 min");
    assert_eq!(row.colour, Some(StepColour::Glow(830.0)));
    route.prior = vec![PriorStep {
        work: Work::Normalise,
        temperature_c: 885.0,
        time_min: 10.0,
        cooling: SlowCooling::still_air(),
    }];
    assert_eq!(plain(&card_of(&route).rows[0].set), "879 °C");
}

#[test]
fn a_quench_that_is_too_slow_is_told_with_what_would_do() {
    let mut route = Route::example();
    route.section = Section::Plate { thickness_mm: 30.0 };
    route.quench.medium = MediumChoice::Named("oil_slow".to_owned());
    let card = card_of(&route);
    assert_eq!(card.depth.title, "Hardened depth");
    assert!(
        card.depth
            .words
            .starts_with("The quench misses at the centre")
    );
    assert!(card.rows[2].look_for.contains("A file will bite"));
    assert!(card.rows[1].look_for.contains("Narrow side first"));
    // A file meets the surface, which water hardens; nor does more of it harden than the card says.
    route.take_grade(crate::steel::find("1045").unwrap());
    route.section = Section::Round { diameter_mm: 80.0 };
    route.quench.medium = MediumChoice::Named("water20".to_owned());
    let card = card_of(&route);
    let test = &card.rows[2].look_for;
    assert!(test.contains("says nothing of the centre"), "{test}");
    let depth = &card.depth.words;
    assert!(
        depth.contains("Up to ") && !depth.contains("takes a faster quench"),
        "{depth}"
    );
}

#[test]
fn numbers_that_no_model_gives_are_told_as_unknown() {
    let mut route = Route::example();
    // Of which the kinetics know nothing.
    route.take_grade(crate::steel::find("D2").unwrap());
    let outcome = run(&route).unwrap();
    let card = card(
        &route,
        &outcome,
        TemperatureScale::Fahrenheit,
        LengthUnit::Inch,
    );
    assert!(card.unknown.is_some());
    assert!(card.expected.iter().any(|row| row.hardness == "–"));
    assert!(card.rows[2].look_for.starts_with("No number can be given"));
}

#[test]
fn the_card_follows_the_units() {
    let route = whole();
    let card = card(
        &route,
        &run(&route).unwrap(),
        TemperatureScale::Fahrenheit,
        LengthUnit::Inch,
    );
    let all = format!("{card:?}");
    assert!(!all.contains("°C") && !all.contains("mm at"), "{all}");
    assert!(plain(&card.rows[3].look_for).contains("down by 36 °F an hour to 1202 °F"));
}

#[test]
fn a_bath_at_another_temperature_is_told() {
    let mut route = Route::example();
    route.quench.medium = route.quench.medium.with_bath(65.0);
    let card = card_of(&route);
    assert!(
        plain(&card.sentence).contains("medium oil, 65 °C"),
        "{}",
        card.sentence
    );
    assert_eq!(plain(&card.rows[1].set), "medium oil, 65 °C");
    assert_eq!(plain(&card.rows[1].detail), "1.0 s from furnace");
}

/// Common practice, no source: air-hardening steel is brought up in stages and kept from the air; plain
/// steel goes straight in.
#[test]
fn high_alloy_steel_is_brought_up_in_stages_and_kept_from_air() {
    let told = |grade: &str| {
        let mut route = Route::example();
        route.take_handbook(crate::steel::find(grade).unwrap());
        let card = card_of(&route);
        let soak = card.rows.iter().find(|row| row.title == "Soak").unwrap();
        let cautions = card.rows.iter().flat_map(|row| row.cautions.clone());
        (
            plain(&soak.look_for),
            cautions.collect::<Vec<_>>().join(" "),
        )
    };
    let (d2, air) = told("D2");
    assert!(d2.contains("even at 650 °C, then at 815 °C"), "{d2}");
    assert!(air.contains("foil") && air.contains("edges cut"), "{air}");
    // Whatever one's own quenchant is made of.
    assert!(air.contains("Before any liquid it comes off"), "{air}");
    let (a2, _) = told("A2");
    assert!(a2.contains("even at 650 °C first"), "{a2}");
    let (plain, air) = told("1084");
    assert!(!plain.contains("even at"), "{plain}");
    assert!(!air.contains("foil"), "{air}");
}

#[test]
fn the_cold_row_says_when_the_core_is_cold() {
    let card = card_of(&Route::example());
    let cold = card.rows.iter().find(|row| row.title == "Cold").unwrap();
    assert!(
        cold.look_for.contains("The core takes about"),
        "{}",
        cold.look_for
    );
}

/// The oven as it was learnt brings the piece into the range, the temper asked for does not.
#[test]
fn a_temper_that_only_the_oven_makes_embrittling_is_cautioned_on_its_row() {
    let mut asked = Route::example();
    asked.take_grade(crate::steel::find("5160").unwrap());
    let [from_c, _] = crate::hardness::embrittling_range_c(&asked.composition);
    asked.tempers = vec![
        Temper {
            temperature_c: from_c - 60.0,
            time_min: 60.0,
        },
        Temper {
            temperature_c: from_c - 10.0,
            time_min: 60.0,
        },
    ];
    let off = Deviation {
        temper_k: 20.0,
        ..Deviation::default()
    };
    let real = Route {
        taught: Some(Taught::new(off, Left::default())),
        ..asked.clone()
    };
    let card = card(
        &asked,
        &run(&real).unwrap(),
        TemperatureScale::Celsius,
        LengthUnit::Millimetre,
    );
    let row = card
        .rows
        .iter()
        .find(|row| row.title == "Temper\u{a0}2")
        .unwrap();
    let cautioned = row
        .cautions
        .iter()
        .any(|words| words.contains("embrittling range"));
    assert!(cautioned, "{:?}", row.cautions);
}
