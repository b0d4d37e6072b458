//! Files of every version so far: what each adds, and that the older ones mean what they meant.

use super::{V1_SHELF, V5_BENCH, V6_BENCH, V7_BENCH, V8_BENCH, V9_BENCH, names, shelf};
use recalesce::heat::{Grind, Leave, MediumChoice, Section};
use recalesce::route::{MODELS, SlowCooling, Thermocouple};
use recalesce::save::{
    Kind, Preferences, ReadError, Theme, VERSION, read, read_bench, read_preferences, read_shop,
    write_bench, write_preferences, write_shelf, write_shop,
};
use recalesce::soak::StartingStructure;
use recalesce::units::{LengthUnit, TemperatureScale};
use serde_json::{Value, json};

const V1_BENCH: &str = include_str!("../saved/v1_bench.json");
const V2_SHELF: &str = include_str!("../saved/v2_shelf.json");
const V2_BENCH: &str = include_str!("../saved/v2_bench.json");
const V3_SHELF: &str = include_str!("../saved/v3_shelf.json");
const V3_BENCH: &str = include_str!("../saved/v3_bench.json");
const V3_BATHS: &str = include_str!("../saved/v3_baths.json");
const V4_SHELF: &str = include_str!("../saved/v4_shelf.json");
const V4_BENCH: &str = include_str!("../saved/v4_bench.json");
const V5_SHELF: &str = include_str!("../saved/v5_shelf.json");
const V6_SHELF: &str = include_str!("../saved/v6_shelf.json");
const V7_SHELF: &str = include_str!("../saved/v7_shelf.json");
const V8_SHELF: &str = include_str!("../saved/v8_shelf.json");
const V9_SHELF: &str = include_str!("../saved/v9_shelf.json");

const V1_PREFERENCES: &str = include_str!("../saved/v1_preferences.json");
const V2_PREFERENCES: &str = include_str!("../saved/v2_preferences.json");
const V3_PREFERENCES: &str = include_str!("../saved/v3_preferences.json");
const V4_PREFERENCES: &str = include_str!("../saved/v4_preferences.json");
const V5_PREFERENCES: &str = include_str!("../saved/v5_preferences.json");
const V6_PREFERENCES: &str = include_str!("../saved/v6_preferences.json");
const V7_PREFERENCES: &str = include_str!("../saved/v7_preferences.json");
const V8_PREFERENCES: &str = include_str!("../saved/v8_preferences.json");
const V9_PREFERENCES: &str = include_str!("../saved/v9_preferences.json");

const V7_SHOP: &str = include_str!("../saved/v7_shop.json");
const V8_SHOP: &str = include_str!("../saved/v8_shop.json");
const V9_SHOP: &str = include_str!("../saved/v9_shop.json");

#[test]
fn version_1_is_read_in_full() {
    let loaded = read(V1_SHELF).expect("the shelf of version 1");
    assert_eq!(loaded.kind, Kind::Shelf);
    assert_eq!(loaded.rejected, []);
    assert_eq!(
        names(&loaded.shelf),
        [
            "Marking knives",
            "Chisels, oil",
            "Plane irons",
            "Drawknife",
            "Centre punches"
        ]
    );
    let ids: Vec<u32> = loaded.shelf.items().iter().map(|i| i.id.0).collect();
    assert_eq!(ids, [1, 2, 4, 5, 7]);
    let knife = &loaded.shelf.items()[0].route;
    assert_eq!(knife.composition.cr, 1.45);
    assert_eq!(knife.soak.temperature_c, 845.0);
    assert_eq!(knife.cold.map(|c| c.temperature_c), Some(-75.0));
    assert_eq!(knife.tempers.len(), 2);
    let punch = &loaded.shelf.items()[4].route;
    assert_eq!(punch.piece, "Centre punch <b>own heat</b>");
    assert!(matches!(punch.quench.medium, MediumChoice::Own(_)));
    let bench = read_bench(V1_BENCH).expect("the bench of version 1");
    assert_eq!(&bench.route, knife);
}

#[test]
fn version_2_adds_to_the_furnace() {
    let knife = read_bench(V2_BENCH).expect("the bench of version 2").route;
    assert_eq!(knife.thermocouple, Thermocouple::TypeKClass2);
    assert_eq!(knife.furnace_offset_k, -4.5);
    let before = read_bench(V1_BENCH).expect("the bench of version 1").route;
    assert_eq!(before.thermocouple, Thermocouple::Checked);
    assert_eq!(before.furnace_offset_k, 0.0);
    let loaded = read(V2_SHELF).expect("the shelf of version 2");
    assert_eq!(loaded.rejected, []);
    assert_eq!(names(&loaded.shelf), names(&shelf()));
}

#[test]
fn version_3_adds_to_a_quenchant_of_the_users_own() {
    let quenchant = |text: &str| {
        let loaded = read(text).expect("a shelf");
        assert_eq!(loaded.rejected, []);
        match &loaded.shelf.items()[4].route.quench.medium {
            MediumChoice::Own(own) => own.clone(),
            other => panic!("{other:?}"),
        }
    };
    let own = quenchant(V3_SHELF);
    assert_eq!(own.figures.nickel_ball_s, Some(12.5));
    let medium = own.resolve().expect("a medium");
    assert_eq!(medium.title.to_string(), "Barrel by the door");
    assert_eq!(medium.h_band_factor, 1.42);
    for older in [V1_SHELF, V2_SHELF] {
        let own = quenchant(older);
        assert!(own.figures.is_empty());
        let medium = own.resolve().expect("a medium");
        assert_eq!(medium.title.to_string(), "Your own quenchant");
        assert_eq!(medium.h_band_factor, 1.3);
    }
    let bench = |text| read_bench(text).expect("a bench").route;
    assert_eq!(bench(V3_BENCH), bench(V2_BENCH));
}

#[test]
fn version_3_adds_baths_and_sections() {
    let iron = read_bench(V3_BATHS).expect("a bench").route;
    let [oil, air] = &iron.quench.then[..] else {
        panic!("{:?}", iron.quench.then);
    };
    assert_eq!((oil.leave, oil.agitation), (Leave::AfterS(1.5), 1.2));
    assert_eq!(oil.medium, MediumChoice::Named("oil_medium".to_owned()));
    assert_eq!(air.leave, Leave::AtC(230.0));
    let Section::Blade { grind, .. } = iron.section else {
        panic!("{:?}", iron.section);
    };
    assert_eq!(grind, Grind::Convex);
    let before = read_bench(V2_BENCH).expect("the bench of version 2").route;
    assert!(before.quench.then.is_empty());
    let square: Section =
        serde_json::from_value(json!({"shape": "square", "side_mm": 12.0})).expect("a section");
    assert_eq!(square, Section::Square { side_mm: 12.0 });
}

#[test]
fn version_4_adds_the_end_quench_test_of_the_heat() {
    let shaft = read_bench(V4_BENCH).expect("the bench of version 4").route;
    let points: Vec<[f64; 2]> = shaft
        .end_quench
        .iter()
        .map(|p| [p.distance_mm, p.hrc])
        .collect();
    assert_eq!(
        points,
        [[1.5, 56.5], [9.0, 54.0], [20.0, 45.5], [40.0, 38.0]]
    );
    let before = read_bench(V3_BENCH).expect("the bench of version 3").route;
    assert!(before.end_quench.is_empty());
}

#[test]
fn version_5_adds_the_steps_before_hardening() {
    let shaft = read_bench(V5_BENCH).expect("the bench of version 5").route;
    let kinds: Vec<&str> = shaft.prior.iter().map(|step| step.work.title()).collect();
    assert_eq!(kinds, ["Forge", "Normalise", "Anneal, slow cooled"]);
    assert_eq!(
        shaft.prior[2].cooling,
        SlowCooling::Furnace {
            rate_k_per_h: 20.0,
            until_c: 650.0
        }
    );
    assert_eq!(read(V4_SHELF).map(|l| l.rejected), Ok(vec![]));
    let before = read_bench(V4_BENCH).expect("the bench of version 4").route;
    assert!(before.prior.is_empty());
}

#[test]
fn version_6_adds_a_snap_temper_and_baths_at_another_temperature() {
    let punch = read_bench(V6_BENCH).expect("the bench of version 6").route;
    let snap = punch.cold.and_then(|cold| cold.snap);
    assert_eq!(
        snap.map(|snap| [snap.temperature_c, snap.time_min]),
        Some([160.0, 45.0])
    );
    let warm = punch.quench.medium.resolve().expect("a quenchant");
    assert_eq!((warm.name.as_str(), warm.bath_c), ("oil_fast", 65.0));
    assert_eq!(read(V5_SHELF).map(|l| l.rejected), Ok(vec![]));
    let before = read_bench(V5_BENCH).expect("the bench of version 5").route;
    assert!(before.cold.is_none_or(|cold| cold.snap.is_none()));
}

/// Of routes nothing is new; what is new of a logbook is read in `tests/logbook.rs`.
#[test]
fn version_7_has_the_routes_of_version_6_with_a_seed() {
    assert_eq!(read(V7_SHELF), read(V6_SHELF));
    let bench = read_bench(V7_BENCH).expect("the bench of version 7");
    let mut of_6 = read_bench(V6_BENCH).expect("the bench of version 6");
    assert_eq!((of_6.route.seed, bench.route.seed), (1, 3));
    of_6.route.seed = 3;
    assert_eq!(bench, of_6);
}

/// Of routes nothing is new; what is new of a logbook is read in `tests/logbook.rs`.
#[test]
fn version_8_has_the_routes_of_version_7() {
    assert_eq!(read(V8_SHELF), read(V7_SHELF));
    assert_eq!(read_bench(V8_BENCH), read_bench(V7_BENCH));
}

/// Of routes nothing is new; what is new of a logbook is read in `tests/logbook_places.rs`.
#[test]
fn version_9_has_the_routes_of_version_8() {
    assert_eq!(read(V9_SHELF), read(V8_SHELF));
    assert_eq!(read_bench(V9_BENCH), read_bench(V8_BENCH));
    assert_eq!(read_shop(V9_SHOP), read_shop(V8_SHOP));
}

/// What was learnt before its models were kept, or with other models than these, stays with the shop and does
/// not act, and is written as it was read; with these models it acts, at the tempers that taught it.
#[test]
fn what_was_learnt_with_other_models_does_not_act() {
    let of_now = V8_SHOP.replace("\"models\": \"2\"", &format!("\"models\": \"{MODELS}\""));
    assert_ne!(of_now, V8_SHOP);
    let v8 = read_shop(V8_SHOP)
        .expect("a shop")
        .learnt
        .expect("what was learnt");
    assert!(v8.is_on && !v8.acts());
    let [before, now] = [V7_SHOP, &of_now].map(|text| read_shop(text).expect("a shop"));
    assert_eq!((&before.fault, &now.fault), (&None, &None));
    assert_eq!(before.shop, now.shop);
    let [before, now] = [before, now].map(|kept| kept.learnt.expect("what was learnt"));
    assert!(before.is_on && now.is_on && before.learnt.len() == now.learnt.len());
    let route = |temper_c| {
        let mut route = read_bench(V8_BENCH).expect("the bench of version 8").route;
        route.furnace_band_k = 6.0;
        route.furnace_offset_k = 0.0;
        route.thermocouple = Thermocouple::Checked;
        route.tempers.truncate(1);
        route.tempers[0].temperature_c = temper_c;
        route
    };
    assert_eq!((before.acts(), before.taught(&route(180.0))), (false, None));
    let taught = |temper_c| now.taught(&route(temper_c)).expect("the furnace").off;
    let [within, far] = [180.0, 450.0].map(taught);
    assert_eq!((within.soak_k, far.soak_k), (-12.0, -12.0));
    assert_eq!((within.tempered_hrc, far.tempered_hrc), (-0.8, 0.0));
    for (text, learnt) in [(V7_SHOP, before), (V8_SHOP, v8), (&of_now, now)] {
        let kept = read_shop(text).expect("a shop");
        let written = write_shop(&kept.shop, Some(&learnt)).expect("text");
        let mut was: Value = serde_json::from_str(text).expect("JSON");
        was["version"] = json!(VERSION);
        assert_eq!(serde_json::from_str::<Value>(&written).expect("JSON"), was);
    }
}

/// The names of the structures, which files and questions hold: the three of version 1, then those
/// that version 2 added.
#[test]
fn structures_keep_their_names() {
    let names: Vec<Value> = StartingStructure::ALL.map(|start| json!(start)).to_vec();
    for name in ["spheroidised", "lamellar_pearlite", "fine_pearlite"] {
        assert!(names.contains(&json!(name)), "{name}");
    }
    for name in [
        "coarse_spheroidised",
        "subcritical_annealed",
        "medium_pearlite",
        "quenched_and_refined",
        "as_forged",
    ] {
        let mut knife = read_bench(V2_BENCH).expect("the bench of version 2").route;
        knife.start = serde_json::from_value(json!(name)).expect("a structure");
        let text = write_bench("Marking knives", &knife).expect("text");
        assert!(text.contains(&format!("\"start\":\"{name}\"")), "{name}");
        assert_eq!(read_bench(&text).map(|item| item.route), Ok(knife));
    }
    assert_eq!(names.len(), 8);
}

#[test]
fn what_is_written_is_what_was_read() {
    let shelf = read(V9_SHELF).expect("the shelf of version 9").shelf;
    let text = write_shelf(&shelf).expect("text");
    assert_eq!(read(&text).map(|l| l.shelf), Ok(shelf));
    let value: Value = serde_json::from_str(&text).expect("JSON");
    let original: Value = serde_json::from_str(V9_SHELF).expect("JSON");
    assert_eq!(value, original);
}

#[test]
fn preferences_of_every_version() {
    for newer in [
        V2_PREFERENCES,
        V3_PREFERENCES,
        V4_PREFERENCES,
        V5_PREFERENCES,
        V6_PREFERENCES,
        V7_PREFERENCES,
        V8_PREFERENCES,
        V9_PREFERENCES,
    ] {
        assert_eq!(read_preferences(newer), read_preferences(V1_PREFERENCES));
    }
    let preferences = read_preferences(V1_PREFERENCES).expect("preferences");
    assert_eq!(
        preferences,
        Preferences {
            temperature_scale: TemperatureScale::Fahrenheit,
            length_unit: LengthUnit::Inch,
            decimal_comma: None,
            theme: Theme::Dark,
        }
    );
    let with_comma = |decimal_comma| Preferences {
        decimal_comma,
        ..preferences
    };
    for preferences in [None, Some(true), Some(false)].map(with_comma) {
        let text = write_preferences(preferences).expect("text");
        assert_eq!(read_preferences(&text), Ok(preferences));
        // The page's first script looks for it before the program runs.
        let kept = preferences.decimal_comma;
        let written = kept.is_none_or(|is| text.contains(&format!("\"decimal_comma\":{is}")));
        assert!(written, "{text}");
    }
    assert!(matches!(
        read_preferences(V1_BENCH),
        Err(ReadError::Kind { .. })
    ));
    assert!(matches!(
        read_preferences(&V1_PREFERENCES.replace("dark", "<script>")),
        Err(ReadError::Field { .. })
    ));
}
