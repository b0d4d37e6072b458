//! Of which furnace a correction tells.

use super::*;
use crate::advise::learn::simulated::{estimated, logged, plate, reading};
use crate::advise::{LearnRun, Learned, Quenchant};
use crate::heat::MediumChoice;
use crate::route::{MODELS, Step, Thermocouple};

fn furnace(name: &str) -> Furnace {
    Furnace {
        name: name.to_owned(),
        least_c: 100.0,
        most_c: 1100.0,
        band_k: 6.0,
        offset_k: 0.0,
        thermocouple: Thermocouple::Checked,
        holds: true,
    }
}

fn shop(furnaces: Vec<Furnace>) -> Shop {
    Shop {
        furnaces,
        quenchants: vec![Quenchant {
            medium: MediumChoice::Named("oil_fast".to_owned()),
            agitation: 1.0,
        }],
        ..Shop::default()
    }
}

fn in_kiln() -> Route {
    Route {
        furnace_band_k: 6.0,
        thermocouple: Thermocouple::Checked,
        ..plate("52100", 3.0, &[180.0])
    }
}

fn offset_of(owner: Owner, furnaces: Vec<Furnace>) -> Correction {
    Correction {
        is_on: true,
        models: Some(MODELS.to_owned()),
        furnaces,
        learnt: vec![Corrected {
            kind: UnknownKind::FurnaceOffset,
            owner,
            value: 12.0,
            left_part: 0.5,
            runs: 4,
            tempers_c: None,
            half_band: Some(5.0),
            entangled_with: Vec::new(),
        }],
    }
}

fn soak_k(correction: &Correction, route: &Route) -> Option<f64> {
    correction.taught(route).map(|taught| taught.off.soak_k)
}

#[test]
fn what_was_learnt_of_an_unnamed_furnace_acts_on_no_other() {
    let route = in_kiln();
    let of_none = offset_of(Owner::Furnace(None), vec![furnace("kiln")]);
    let another = Route {
        furnace_band_k: 40.0,
        ..route.clone()
    };
    for route in [&route, &another] {
        assert_eq!(soak_k(&of_none, route), None);
        assert!(of_none.words(route, TemperatureScale::Celsius).is_empty());
    }
    let of_kiln = offset_of(Owner::Furnace(Some(0)), vec![furnace("kiln")]);
    assert_eq!(soak_k(&of_kiln, &route), Some(12.0));
    assert_eq!(soak_k(&of_kiln, &another), None);
}

/// A route tells of a furnace its band and its thermocouple: of two that share them it may be either.
#[test]
fn of_two_furnaces_alike_a_route_tells_neither() {
    let route = in_kiln();
    let both = vec![furnace("kiln"), furnace("other kiln")];
    let of_first = offset_of(Owner::Furnace(Some(0)), both.clone());
    assert_eq!(soak_k(&of_first, &route), None);
    // Where the furnace is known it is that one's alone.
    let shop = shop(both.clone());
    let known = |place: usize| of_first.taught_in(&shop, &shop.furnaces[place], &route);
    assert_eq!(known(0).map(|taught| taught.off.soak_k), Some(12.0));
    assert_eq!(known(1), None);
    let offsets = of_first.set_right(&shop).furnaces;
    assert_eq!([offsets[0].offset_k, offsets[1].offset_k], [12.0, 0.0]);
    // What is not told from something else sets no furnace, and acts on what it is set to.
    let mut entangled = of_first.clone();
    entangled.learnt[0].entangled_with = vec![UnknownKind::QuenchedHardness];
    assert_eq!(entangled.set_right(&shop), shop);
    let taught = entangled.taught_in(&shop, &shop.furnaces[0], &route);
    assert_eq!(taught.map(|taught| taught.off.soak_k), Some(12.0));
    // One that does not reach the soak is not meant.
    let mut cooler = both;
    cooler[1].most_c = 700.0;
    let of_first = offset_of(Owner::Furnace(Some(0)), cooler);
    assert_eq!(soak_k(&of_first, &route), Some(12.0));
}

/// What may be learnt of a furnace is what a route may say of it.
#[test]
fn the_offset_of_a_furnace_is_one_that_a_route_may_have() {
    let mut route = in_kiln();
    route.soak.temperature_c = 800.0;
    for (value, is_allowed) in [
        (-100.0, true),
        (100.0, true),
        (-150.0, false),
        (150.0, false),
    ] {
        let mut correction = offset_of(Owner::Furnace(Some(0)), vec![furnace("kiln")]);
        correction.learnt[0].value = value;
        assert_eq!(correction.check().is_ok(), is_allowed, "{value}");
        // Whatever is put to it, the route as its pieces go through it is one.
        let taught = Route {
            taught: correction.taught(&route),
            ..route.clone()
        };
        let as_taught = taught.as_taught();
        assert_eq!(as_taught.furnace_offset_k, f64::clamp(value, -100.0, 100.0));
        assert_eq!(crate::route::validate(&as_taught), Ok(()));
    }
}

#[test]
fn of_two_furnaces_alike_nothing_is_learnt() {
    let run = logged(&in_kiln(), vec![reading(62.0, Step::Quench)]);
    let learned = |furnaces: Vec<Furnace>| -> Learned {
        let shop = shop(furnaces);
        estimated(LearnRun::new(std::slice::from_ref(&run), Some(&shop), None).unwrap())
    };
    let of_furnace = |found: &Learned| {
        let all = found.unknowns.iter();
        all.filter(|learnt| learnt.kind == UnknownKind::FurnaceOffset)
            .count()
    };
    let one = learned(vec![furnace("kiln")]);
    let two = learned(vec![furnace("kiln"), furnace("other kiln")]);
    assert_eq!([of_furnace(&one), of_furnace(&two)], [1, 0]);
    // It is as open about a piece; slopes are taken over another step.
    let [one, two] = [one, two].map(|found| found.prediction.unwrap().before);
    approx::assert_abs_diff_eq!(one.most - one.least, two.most - two.least, epsilon = 1e-3);
}

/// The error of one version of the models says nothing of the next: it acts nowhere, and is kept.
#[test]
fn what_was_learnt_with_another_version_of_the_models_does_not_act() {
    let route = in_kiln();
    let now = offset_of(Owner::Furnace(Some(0)), vec![furnace("kiln")]);
    assert!(now.acts() && soak_k(&now, &route).is_some());
    for models in [None, Some("1".to_owned()), Some("999".to_owned())] {
        let other = Correction {
            models,
            ..now.clone()
        };
        assert!(other.is_on && !other.acts());
        assert_eq!(other.taught(&route), None);
        assert!(other.words(&route, TemperatureScale::Celsius).is_empty());
        let shop = shop(vec![furnace("kiln")]);
        assert_eq!(other.set_right(&shop), shop);
        let text = serde_json::to_string(&other).unwrap();
        assert_eq!(serde_json::from_str::<Correction>(&text).unwrap(), other);
    }
    // What is learnt is of this one.
    let run = logged(&route, vec![reading(62.0, Step::Quench)]);
    let found = estimated(LearnRun::new(&[run], None, None).unwrap());
    assert!(found.correction().is_of_these_models());
}

/// The line that tells of it says where it does not reach, or only in part.
#[test]
fn a_temper_that_it_was_not_learnt_of_is_told() {
    let hardness = |tempers_c| {
        let route = in_kiln();
        let kind = UnknownKind::TemperedHardness;
        Correction {
            learnt: vec![Corrected {
                kind,
                owner: Owner::of(kind, &route, &[]).unwrap(),
                value: -1.0,
                left_part: 0.5,
                runs: 4,
                tempers_c,
                half_band: None,
                entangled_with: Vec::new(),
            }],
            ..offset_of(Owner::Furnace(None), Vec::new())
        }
    };
    let tempered_at = |temper_c: f64| {
        let mut route = in_kiln();
        route.tempers[0].temperature_c = temper_c;
        route
    };
    let learnt = hardness(Some([170.0, 200.0]));
    let said = |temper_c, scale| {
        let [words] = &learnt.words(&tempered_at(temper_c), scale)[..] else {
            panic!("one thing is told");
        };
        words.replace('\u{a0}', " ")
    };
    let celsius = TemperatureScale::Celsius;
    assert!(said(180.0, celsius).ends_with("the band is narrower by 50 %)."));
    assert!(said(275.0, celsius).ends_with(
        "It was learnt from tempers of 170 °C to 200 °C and acts only in part, 50 %, on this one at 275 °C."
    ));
    // What does not reach it is not counted with, and it is said why.
    let far = tempered_at(500.0);
    let left_out = |route: &Route, scale| {
        let told = learnt.left_out_of(std::iter::once(route), scale);
        told.join(" ").replace('\u{a0}', " ")
    };
    assert!(learnt.words(&far, celsius).is_empty());
    assert_eq!(
        left_out(&far, TemperatureScale::Fahrenheit),
        "The hardness after tempering of the heat of own steel was learnt from tempers of 338 °F to 392 °F and does not reach this temper at 932 °F."
    );
    assert_eq!(left_out(&tempered_at(275.0), celsius), "");
    let untempered = Route {
        tempers: Vec::new(),
        ..far.clone()
    };
    assert!(learnt.words(&untempered, celsius).is_empty());
    assert_eq!(left_out(&untempered, celsius), "");
    let [near, far] = [180.0, 500.0].map(tempered_at);
    let both = learnt.words_of([&near, &far].into_iter(), celsius);
    assert_eq!(both.len(), 1);
    assert!(
        learnt
            .left_out_of([&near, &far].into_iter(), celsius)
            .is_empty()
    );
    let neither = learnt.left_out_of([&far, &far].into_iter(), celsius);
    assert!(
        neither[0].ends_with("does not reach these tempers."),
        "{neither:?}"
    );
    assert!(
        learnt
            .words_of([&far, &far].into_iter(), celsius)
            .is_empty()
    );
    assert!(learnt.taught(&tempered_at(180.0)).is_some());
    assert_eq!(learnt.taught(&tempered_at(500.0)), None);
    // Without a range it acts on all alike, as what was learnt of anything else.
    let all = hardness(None).taught(&tempered_at(500.0)).unwrap();
    assert_eq!(all.off.tempered_hrc, -1.0);
    for wrong in [[200.0, 170.0], [f64::NAN, 200.0], [170.0, 2000.0]] {
        assert!(hardness(Some(wrong)).check().is_err());
    }
    assert!(learnt.check().is_ok());
}

/// An offset that was learnt and does not act says why; that the route is for another furnace needs no
/// words.
#[test]
fn a_furnace_that_is_left_out_is_told_with_the_reason() {
    let celsius = TemperatureScale::Celsius;
    let said = |correction: &Correction, route: &Route| {
        let told = correction.left_out_of(std::iter::once(route), celsius);
        told.join(" ").replace('\u{a0}', " ")
    };
    let route = in_kiln();
    let kiln = || furnace("kiln");
    let of_first = |furnaces| offset_of(Owner::Furnace(Some(0)), furnaces);
    assert_eq!(said(&of_first(vec![kiln()]), &route), "");
    let both = of_first(vec![kiln(), furnace("other kiln")]);
    assert_eq!(
        said(&both, &route),
        "Nothing of a furnace is counted with: the furnace “kiln” and the furnace “other kiln” have the same band and thermocouple, and the route may be for either."
    );
    let mut other = furnace("other kiln");
    other.band_k = 20.0;
    let two = of_first(vec![kiln(), other]);
    let in_other = Route {
        furnace_band_k: 20.0,
        ..route.clone()
    };
    assert_eq!([said(&two, &route), said(&two, &in_other)], ["", ""]);
    let wide = Route {
        furnace_band_k: 8.0,
        ..route.clone()
    };
    let one = of_first(vec![kiln()]);
    assert_eq!(
        said(&one, &wide),
        "What was learnt of the furnace “kiln” is left out: its band is ±6 °C, and the route has ±8 °C."
    );
    let by_another = Route {
        thermocouple: Thermocouple::TypeKClass2,
        ..route.clone()
    };
    assert!(said(&one, &by_another).ends_with("the route has another thermocouple."));
    let mut hot = route.clone();
    hot.soak.temperature_c = 1180.0;
    assert!(said(&one, &hot).ends_with("it cannot be set for this soak."));
    let of_none = offset_of(Owner::Furnace(None), Vec::new());
    assert!(said(&of_none, &route).contains("it is none of the shop."));
    let off = Correction {
        is_on: false,
        ..both
    };
    assert_eq!(said(&off, &route), "");
}
