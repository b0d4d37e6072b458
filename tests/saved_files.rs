//! Files of every version so far, bad files, and what can be done to a shelf.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::heat::{
    Grind, LONGEST_TITLE, Leave, MediumChoice, OwnMedium, QuenchantFigures, Section, media,
};
use recalesce::route::{
    Cold, MODELS, NextBath, PriorStep, Quench, Route, SlowCooling, Soak, Target, Temper,
    Thermocouple, Work, card, run,
};
use recalesce::save::{
    Kind, LARGEST_FILE_BYTES, MOST_ROUTES, Preferences, ReadError, Shelf, ShelfError, Theme,
    WriteError, read, read_bench, read_link, read_preferences, read_shop, write_bench, write_link,
    write_preferences, write_shelf, write_shop,
};
use recalesce::soak::StartingStructure;
use recalesce::steel::{Composition, Element};
use recalesce::units::{LengthUnit, TemperatureScale};
use serde_json::{Value, json};

const V1_SHELF: &str = include_str!("saved/v1_shelf.json");
const V1_BENCH: &str = include_str!("saved/v1_bench.json");
const V1_PREFERENCES: &str = include_str!("saved/v1_preferences.json");
const V2_SHELF: &str = include_str!("saved/v2_shelf.json");
const V2_BENCH: &str = include_str!("saved/v2_bench.json");
const V2_PREFERENCES: &str = include_str!("saved/v2_preferences.json");
const V3_SHELF: &str = include_str!("saved/v3_shelf.json");
const V3_BENCH: &str = include_str!("saved/v3_bench.json");
const V3_PREFERENCES: &str = include_str!("saved/v3_preferences.json");
const V3_BATHS: &str = include_str!("saved/v3_baths.json");
const V4_SHELF: &str = include_str!("saved/v4_shelf.json");
const V4_BENCH: &str = include_str!("saved/v4_bench.json");
const V4_PREFERENCES: &str = include_str!("saved/v4_preferences.json");
const V5_SHELF: &str = include_str!("saved/v5_shelf.json");
const V5_BENCH: &str = include_str!("saved/v5_bench.json");
const V5_PREFERENCES: &str = include_str!("saved/v5_preferences.json");
const V6_SHELF: &str = include_str!("saved/v6_shelf.json");
const V6_BENCH: &str = include_str!("saved/v6_bench.json");
const V6_PREFERENCES: &str = include_str!("saved/v6_preferences.json");

const V7_SHELF: &str = include_str!("saved/v7_shelf.json");
const V7_BENCH: &str = include_str!("saved/v7_bench.json");
const V7_PREFERENCES: &str = include_str!("saved/v7_preferences.json");

const V8_SHELF: &str = include_str!("saved/v8_shelf.json");
const V8_BENCH: &str = include_str!("saved/v8_bench.json");
const V8_PREFERENCES: &str = include_str!("saved/v8_preferences.json");

const V8_LINK: &str = include_str!("saved/v8_link.txt");

const V7_SHOP: &str = include_str!("saved/v7_shop.json");
const V8_SHOP: &str = include_str!("saved/v8_shop.json");

const V7_LINK: &str = include_str!("saved/v7_link.txt");

const V6_LINK: &str = include_str!("saved/v6_link.txt");

const V5_LINKS: &str = include_str!("saved/v5_links.txt");

fn shelf() -> Shelf {
    read(V1_SHELF).expect("the shelf of version 1").shelf
}

fn names(shelf: &Shelf) -> Vec<&str> {
    shelf.items().iter().map(|i| i.name.as_str()).collect()
}

/// The shelf of version 1 with a change to its JSON.
fn changed(change: impl FnOnce(&mut Value)) -> String {
    let mut value: Value = serde_json::from_str(V1_SHELF).expect("JSON");
    change(&mut value);
    value.to_string()
}

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
        was["version"] = json!(8);
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
    let shelf = read(V8_SHELF).expect("the shelf of version 8").shelf;
    let text = write_shelf(&shelf).expect("text");
    assert_eq!(read(&text).map(|l| l.shelf), Ok(shelf));
    let value: Value = serde_json::from_str(&text).expect("JSON");
    let original: Value = serde_json::from_str(V8_SHELF).expect("JSON");
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

#[test]
fn a_cut_file_is_told_as_cut() {
    for end in 1..V1_SHELF.trim_end().len() {
        if let Some(cut) = V1_SHELF.get(..end) {
            assert!(
                matches!(read(cut), Err(ReadError::CutShort { .. })),
                "cut at {end}: {:?}",
                read(cut)
            );
        }
    }
}

#[test]
fn each_bad_envelope_has_its_own_words() {
    let cases = [
        ("[]", "lacks \"format\": \"recalesce\""),
        ("{\"format\":\"other\",\"version\":1}", "lacks \"format\""),
        ("hello", "line 1, column 1"),
        ("", "cut short"),
        ("{\"format\":\"recalesce\"}", "“version” is missing"),
        (
            "{\"format\":\"recalesce\",\"version\":\"1\"}",
            "version is \"1\"",
        ),
        ("{\"format\":\"recalesce\",\"version\":0}", "version is 0"),
        (
            "{\"format\":\"recalesce\",\"version\":1.5}",
            "version is 1.5",
        ),
        (
            "{\"format\":\"recalesce\",\"version\":99,\"anything\":[]}",
            "made by a newer version",
        ),
        (
            "{\"format\":\"recalesce\",\"version\":1}",
            "“kind” is missing",
        ),
        (
            "{\"format\":\"recalesce\",\"version\":1,\"kind\":\"logbook\",\"routes\":[]}",
            "holds \"logbook\"",
        ),
        (
            "{\"format\":\"recalesce\",\"version\":1,\"kind\":\"shelf\",\"routes\":7}",
            "“routes” is not a list",
        ),
        (
            "{\"format\":\"recalesce\",\"version\":1,\"kind\":\"shelf\",\"routes\":[],\"x\":1}",
            "field “x”",
        ),
    ];
    for (text, words) in cases {
        let message = read(text).map_err(|e| e.to_string());
        assert!(
            message.as_ref().is_err_and(|m| m.contains(words)),
            "{text}: {message:?}"
        );
    }
    assert!(matches!(
        read(&" ".repeat(LARGEST_FILE_BYTES + 1)),
        Err(ReadError::TooLarge { .. })
    ));
    assert!(matches!(
        read(&"[".repeat(100_000)),
        Err(ReadError::NotJson { .. } | ReadError::CutShort { .. })
    ));
    assert!(matches!(read_bench(V1_SHELF), Err(ReadError::Kind { .. })));
    let two = V1_SHELF.replace("\"shelf\"", "\"bench\"");
    assert!(matches!(
        read(&two),
        Err(ReadError::TooMany { most: 1, .. })
    ));
    let many = changed(|v| {
        let route = v["routes"][0].clone();
        v["routes"] = Value::Array(vec![route; MOST_ROUTES + 1]);
    });
    assert!(matches!(read(&many), Err(ReadError::TooMany { .. })));
}

#[test]
fn a_byte_order_mark_is_no_fault() {
    assert!(read(&format!("\u{feff}{V1_SHELF}")).is_ok());
}

#[test]
fn bad_routes_are_told_and_good_ones_kept() {
    let text = changed(|v| {
        v["routes"][1]["route"]["soak"]["temperature_c"] = json!(84500.0);
        v["routes"][2]["route"]["soak"]["temperature_c"] = json!("hot");
        v["routes"][3] = json!(null);
    });
    let loaded = read(&text).expect("a readable file");
    assert_eq!(names(&loaded.shelf), ["Marking knives", "Centre punches"]);
    let places: Vec<usize> = loaded.rejected.iter().map(|(i, _)| *i).collect();
    assert_eq!(places, [1, 2, 3]);
    assert!(
        loaded.rejected[0].1.contains("84500"),
        "{:?}",
        loaded.rejected
    );
    assert!(
        loaded.rejected[1].1.contains("\"hot\""),
        "{:?}",
        loaded.rejected
    );
}

#[test]
fn absurd_numbers_are_refused_wherever_they_stand() {
    let own = |field: &str, value: Value| json!({"h_w_m2k": [[70.0, 300.0], [850.0, 600.0]], "bath_c": 50.0, field: value});
    let absurd = [
        ("/composition/c", json!(-1.0)),
        ("/composition/cr", json!(1e300)),
        ("/section/thickness_mm", json!(0.0)),
        ("/furnace_band_k", json!(1e9)),
        ("/soak/temperature_c", json!(499.0)),
        ("/soak/time_min", json!(-1.0)),
        ("/quench/agitation", json!(0.0)),
        ("/quench/air_delay_s", json!(121.0)),
        ("/quench/end_c", json!(-273.0)),
        ("/quench/medium", json!({"h_w_m2k": [], "bath_c": 20.0})),
        ("/quench/medium", json!("quicksilver")),
        ("/quench/medium", own("title", json!("x".repeat(61)))),
        ("/quench/medium", own("h_band_factor", json!(0.5))),
        (
            "/quench/medium",
            own("figures", json!({"nickel_ball_s": 1e9})),
        ),
        ("/cold/temperature_c", json!(-250.0)),
        ("/tempers/0/temperature_c", json!(800.0)),
        ("/tempers/1/time_min", json!(1e7)),
        ("/target/least_hrc", json!(69.0)),
        ("/piece", json!("x".repeat(201))),
        ("/soak", json!([])),
        ("/start", json!("molten")),
    ];
    for (field, value) in absurd {
        let text = changed(|v| {
            *v.pointer_mut(&format!("/routes/0/route{field}"))
                .expect("field") = value;
        });
        let loaded = read(&text).expect("a readable file");
        assert_eq!(loaded.rejected.len(), 1, "{field}");
        assert_eq!(loaded.shelf.items().len(), 4, "{field}");
    }
    // Beyond the largest number there is.
    let text = V1_SHELF.replacen("845.0", "1e999", 1);
    assert!(matches!(read(&text), Err(ReadError::NotJson { .. })));
}

#[test]
fn a_script_in_a_name_is_text() {
    let script = "<script>alert(1)</script>\"'\u{202e}\0";
    let text = changed(|v| v["routes"][0]["name"] = json!(script));
    let loaded = read(&text).expect("a readable file");
    assert_eq!(loaded.shelf.items()[0].name, script);
    let again = write_shelf(&loaded.shelf).expect("text");
    assert_eq!(read(&again).map(|l| l.shelf), Ok(loaded.shelf));
}

#[test]
fn names_and_identities_become_unique() {
    let text = changed(|v| {
        v["routes"][1] = v["routes"][0].clone();
        v["routes"][2]["name"] = json!("  ");
        v["routes"][3]["name"] = json!("x".repeat(201));
    });
    let loaded = read(&text).expect("a readable file");
    assert_eq!(
        names(&loaded.shelf),
        [
            "Marking knives",
            "Marking knives (2)",
            "Plane iron",
            "Centre punches"
        ]
    );
    assert_eq!(loaded.rejected.len(), 1);
    let mut ids: Vec<_> = loaded.shelf.items().iter().map(|i| i.id).collect();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), 4);
}

#[test]
fn a_deletion_can_be_undone() {
    let mut shelf = shelf();
    let before = shelf.clone();
    let id = shelf.items()[2].id;
    let deleted = shelf.delete(id).expect("deleted");
    assert_eq!(deleted.name(), "Plane irons");
    assert_eq!(shelf.items().len(), 4);
    assert_eq!(shelf.delete(id), Err(ShelfError::Gone));
    assert_eq!(shelf.restore(deleted), Ok(id));
    assert_eq!(shelf, before);
}

#[test]
fn a_deletion_can_be_undone_after_other_changes() {
    let mut shelf = shelf();
    let last = shelf.items()[4].clone();
    let deleted = shelf.delete(last.id).expect("deleted");
    let new = shelf.add(&last.name, last.route.clone()).expect("added");
    let restored = shelf.restore(deleted).expect("restored");
    assert_ne!(new, restored);
    assert_eq!(names(&shelf)[4..], ["Centre punches (2)", "Centre punches"]);
}

#[test]
fn routes_are_renamed_copied_and_moved() {
    let mut shelf = shelf();
    let [first, second] = [shelf.items()[0].id, shelf.items()[1].id];
    assert_eq!(shelf.rename(first, " Knives "), Ok(()));
    assert_eq!(shelf.rename(first, "Knives"), Ok(()));
    assert_eq!(shelf.rename(first, " "), Err(ShelfError::EmptyName));
    assert_eq!(
        shelf.rename(second, "Knives"),
        Err(ShelfError::NameTaken {
            name: "Knives".to_owned()
        })
    );
    assert_eq!(
        shelf.rename(second, &"x".repeat(201)),
        Err(ShelfError::LongName { length: 201 })
    );
    let copy = shelf.duplicate(first).expect("copied");
    let again = shelf.duplicate(copy).expect("copied");
    assert_eq!(names(&shelf)[..3], ["Knives", "Knives (2)", "Knives (3)"]);
    shelf.move_up(first).expect("stays first");
    shelf.move_down(first).expect("moved");
    shelf.move_to(again, usize::MAX).expect("moved");
    assert_eq!(
        names(&shelf),
        [
            "Knives (2)",
            "Knives",
            "Chisels, oil",
            "Plane irons",
            "Drawknife",
            "Centre punches",
            "Knives (3)"
        ]
    );
}

#[test]
fn a_shelf_takes_another_in() {
    let mut mine = shelf();
    let imported = mine.import(shelf());
    assert_eq!(imported.added.len(), 5);
    assert_eq!(imported.left_out, 0);
    assert_eq!(names(&mine)[5], "Marking knives (2)");
    while mine.import(shelf()).left_out == 0 {}
    assert_eq!(mine.items().len(), MOST_ROUTES);
    let route = mine.items()[0].route.clone();
    assert_eq!(mine.add("One more", route), Err(ShelfError::Full));
}

#[test]
fn long_names_make_room_for_their_number() {
    let mut shelf = shelf();
    let route = shelf.items()[0].route.clone();
    let long = "é".repeat(200);
    for _ in 0..3 {
        shelf.add(&long, route.clone()).expect("added");
    }
    let last = &shelf.items()[7].name;
    assert!(last.ends_with(" (3)") && last.chars().count() <= 200);
}

#[test]
fn only_what_can_be_read_back_is_written() {
    let mut route = shelf().items()[0].route.clone();
    route.soak.temperature_c = f64::NAN;
    assert!(matches!(
        write_bench("Knife", &route),
        Err(WriteError::Route(e)) if e.field == "soak.temperature_c"
    ));
    let mut large = Shelf::default();
    let mut route = shelf().items()[4].route.clone();
    route.piece = "\u{1}".repeat(200);
    for _ in 0..MOST_ROUTES {
        large
            .add(&"\u{1}".repeat(180), route.clone())
            .expect("added");
    }
    assert!(matches!(
        write_shelf(&large),
        Err(WriteError::TooLarge { .. })
    ));
}

/// Numbers as controls and typed values give them.
fn thousandths(least: f64, most: f64) -> impl Strategy<Value = f64> {
    (least..most).prop_map(|value| (1000.0 * value).round() / 1000.0)
}

fn any_composition() -> impl Strategy<Value = Composition> {
    prop::array::uniform10(0.0..1.0f64).prop_map(|part| {
        let mut steel = Composition::default();
        for (element, part) in Element::ALL.into_iter().zip(part) {
            // Half of each limit keeps the sum below the largest allowed.
            let content_wt = 0.5 * part * element.largest_wt();
            steel.set(element, (1e4 * content_wt).round() / 1e4);
        }
        steel
    })
}

fn any_section() -> impl Strategy<Value = Section> {
    prop_oneof![
        thousandths(0.2, 200.0).prop_map(|thickness_mm| Section::Plate { thickness_mm }),
        thousandths(0.2, 300.0).prop_map(|diameter_mm| Section::Round { diameter_mm }),
        thousandths(0.2, 200.0).prop_map(|side_mm| Section::Square { side_mm }),
        (
            thousandths(0.1, 5.0),
            thousandths(5.0, 20.0),
            thousandths(5.0, 150.0),
            prop_oneof![Just(Grind::Straight), Just(Grind::Convex)],
        )
            .prop_map(|(edge_mm, spine_mm, height_mm, grind)| {
                Section::Blade {
                    edge_mm,
                    spine_mm,
                    height_mm,
                    grind,
                }
            }),
    ]
}

fn any_medium() -> impl Strategy<Value = MediumChoice> {
    prop_oneof![
        prop::sample::select(media()).prop_map(|m| MediumChoice::Named(m.name.clone())),
        (prop::sample::select(media()), 0.0..=1.0_f64).prop_map(|(m, share)| {
            let range = m.bath_range().expect("a range");
            let bath_c = range.least_c + (share * (range.most_c - range.least_c)).round();
            MediumChoice::Named(m.name.clone()).with_bath(bath_c)
        }),
        (
            prop::collection::vec(thousandths(10.0, 1e4), 2..20),
            thousandths(-20.0, 300.0),
            any::<bool>(),
            prop::option::of(any_title()),
            prop::option::of(thousandths(1.0, 10.0)),
            prop::option::of(thousandths(0.0, 1e4)),
        )
            .prop_map(
                |(h, bath_c, radiation, title, h_band_factor, nickel_ball_s)| MediumChoice::Own(
                    OwnMedium {
                        h_w_m2k: h
                            .into_iter()
                            .enumerate()
                            .map(|(i, h)| [50.0 * i as f64, h])
                            .collect(),
                        bath_c,
                        radiation,
                        title,
                        h_band_factor,
                        figures: QuenchantFigures {
                            nickel_ball_s,
                            ..QuenchantFigures::default()
                        },
                    }
                )
            ),
    ]
}

fn any_title() -> impl Strategy<Value = String> {
    prop::collection::vec(any::<char>(), 0..LONGEST_TITLE).prop_map(|c| c.into_iter().collect())
}

fn any_text() -> impl Strategy<Value = String> {
    prop::collection::vec(any::<char>(), 0..40).prop_map(|c| c.into_iter().collect())
}

prop_compose! {
    fn any_next_bath()(
        leave in prop_oneof![
            thousandths(0.0, 86_400.0).prop_map(Leave::AfterS),
            thousandths(601.0, 900.0).prop_map(Leave::AtC),
        ],
        medium in any_medium(),
        agitation in thousandths(0.1, 5.0),
    ) -> NextBath {
        NextBath { leave, medium, agitation }
    }
}

prop_compose! {
    fn any_prior_step()(
        work in prop::sample::select(Work::ALL.to_vec()),
        (temperature_c, time_min) in (thousandths(901.0, 1250.0), thousandths(0.0, 60_000.0)),
        cooling in prop_oneof![
            Just(SlowCooling::still_air()),
            (thousandths(1.0, 5000.0), thousandths(20.0, 900.0)).prop_map(
                |(rate_k_per_h, until_c)| SlowCooling::Furnace { rate_k_per_h, until_c },
            ),
        ],
    ) -> PriorStep {
        PriorStep { work, temperature_c, time_min, cooling }
    }
}

prop_compose! {
    fn any_route()(
        piece in any_text(),
        grade in prop::option::of(any_text()),
        composition in any_composition(),
        start in prop::sample::select(StartingStructure::ALL.to_vec()),
        prior in prop::collection::vec(any_prior_step(), 0..6),
        section in any_section(),
        (furnace_band_k, furnace_offset_k) in (thousandths(0.0, 100.0), thousandths(-100.0, 100.0)),
        thermocouple in prop::sample::select(Thermocouple::ALL.to_vec()),
        (soak_c, soak_min) in (thousandths(500.0, 1300.0), thousandths(0.0, 60_000.0)),
        medium in any_medium(),
        (agitation, air_delay_s, end_c) in (thousandths(0.1, 5.0), thousandths(0.0, 120.0), thousandths(-200.0, 400.0)),
        then in prop::collection::vec(any_next_bath(), 0..=3),
        cold in prop::option::of((
            thousandths(-200.0, 20.0),
            thousandths(0.0, 60_000.0),
            thousandths(0.0, 60_000.0),
            prop::option::of((thousandths(120.0, 200.0), thousandths(5.0, 480.0))),
        )),
        tempers in prop::collection::vec((thousandths(20.0, 750.0), thousandths(0.0, 60_000.0)), 0..6),
        (least_hrc, most_hrc) in (thousandths(20.0, 45.0), thousandths(45.0, 70.0)),
        seed in any::<u32>(),
    ) -> Route {
        Route {
            piece,
            grade,
            composition,
            end_quench: Vec::new(),
            start,
            prior,
            section,
            furnace_band_k,
            thermocouple,
            furnace_offset_k,
            soak: Soak { temperature_c: soak_c, time_min: soak_min },
            quench: Quench { medium, agitation, air_delay_s, end_c, then },
            cold: cold.map(|(temperature_c, time_min, delay_min, snap)| Cold {
                temperature_c,
                time_min,
                delay_min,
                snap: snap.map(|(temperature_c, time_min)| Temper { temperature_c, time_min }),
            }),
            tempers: tempers
                .into_iter()
                .map(|(temperature_c, time_min)| Temper { temperature_c, time_min })
                .collect(),
            target: Target { least_hrc, most_hrc },
            seed,
            taught: None,
        }
    }
}

#[test]
fn links_of_version_7_are_read() {
    let bench = read_bench(V7_BENCH).expect("the bench of version 7").route;
    assert_eq!(read_link(V7_LINK.trim_end()), Ok(bench));
}

#[test]
fn links_of_version_8_are_read() {
    let bench = read_bench(V8_BENCH).expect("the bench of version 8").route;
    assert_eq!(read_link(V8_LINK.trim_end()), Ok(bench.clone()));
    assert_eq!(write_link(&bench), Ok(V8_LINK.trim_end().to_owned()));
}

#[test]
fn links_of_version_6_are_read() {
    let bench = read_bench(V6_BENCH).expect("the bench of version 6").route;
    assert_eq!(read_link(V6_LINK.trim_end()), Ok(bench));
}

#[test]
fn links_of_version_5_are_read() {
    let bench = read_bench(V5_BENCH).expect("the bench of version 5").route;
    let routes: Vec<Route> = V5_LINKS
        .lines()
        .map(|link| read_link(link).expect("a link of version 5"))
        .collect();
    assert_eq!(routes[0].piece, "marking knife");
    assert_eq!(routes[0].soak.temperature_c, 830.0);
    assert_eq!(routes[1], bench);
    assert_eq!(routes.len(), 2);
}

/// A route with long curves of the user's own may be too long for a link; any other comes back.
fn through_a_link(route: &Route) -> Option<Route> {
    match write_link(route) {
        Ok(link) => Some(read_link(&link).expect("a link just written")),
        Err(WriteError::LongLink { .. }) => None,
        Err(error) => panic!("{error}"),
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn every_route_has_a_card(route in any_route()) {
        if let Ok(outcome) = run(&route) {
            for (scale, length) in [
                (TemperatureScale::Celsius, LengthUnit::Millimetre),
                (TemperatureScale::Fahrenheit, LengthUnit::Inch),
            ] {
                let card = card(&route, &outcome, scale, length);
                prop_assert!(card.rows.len() >= 3 + route.prior.len() + route.tempers.len());
                prop_assert!(card.rows.iter().all(|row| !row.look_for.is_empty()));
                prop_assert!(!card.depth.words.is_empty());
                let text = format!("{card:?}");
                prop_assert!(!text.contains("NaN"));
            }
        }
    }
}

proptest! {
    #[test]
    fn every_route_comes_back_from_its_link(route in any_route()) {
        if let Some(back) = through_a_link(&route) {
            prop_assert_eq!(back, route);
        }
    }

    /// Bits that no route needs are left in the last two bytes, the last three letters: changed there, a link
    /// may still give its own route, and never another.
    #[test]
    fn damaged_links_give_no_other_route(place in 0usize..400, letter in "[A-Za-z0-9_.-]") {
        let link = V5_LINKS.lines().nth(1).unwrap_or_default();
        let mut damaged: Vec<String> = link.chars().map(String::from).collect();
        let place = place % damaged.len();
        let is_same = damaged[place] == letter;
        let is_last = place + 3 >= damaged.len();
        damaged[place] = letter;
        let read = read_link(&damaged.concat());
        prop_assert!(is_last || read.is_ok() == is_same);
        if let Ok(route) = read {
            prop_assert_eq!(Ok(route), read_link(link));
        }
    }

    #[test]
    fn any_text_is_a_link_or_refused(text in any::<String>()) {
        prop_assert!(read_link(&text).is_err());
        let link = format!("5.{text}");
        prop_assert!(read_link(&link).is_err());
    }

    #[test]
    fn every_route_comes_back_exactly(name in any_text(), route in any_route()) {
        let text = write_bench(&name, &route).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let back = read_bench(&text).map_err(|e| TestCaseError::fail(e.to_string()))?;
        prop_assert_eq!(back.route, route);
    }

    /// Numbers of more digits than anyone types may lose their last bit in reading.
    #[test]
    fn every_number_comes_back_to_the_last_bit(time_min in 0.0..60_000.0f64) {
        let mut route = shelf().items()[0].route.clone();
        route.soak.time_min = time_min;
        let text = write_bench("", &route).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let back = read_bench(&text).map_err(|e| TestCaseError::fail(e.to_string()))?;
        let error = (back.route.soak.time_min - time_min).abs();
        prop_assert!(error <= 2.0 * f64::EPSILON * time_min);
    }

    #[test]
    fn every_shelf_comes_back_exactly(
        routes in prop::collection::vec((any_text(), any_route()), 0..6)
    ) {
        let mut shelf = Shelf::default();
        for (name, route) in routes {
            prop_assert!(shelf.add(&name, route).is_ok());
        }
        let text = write_shelf(&shelf).map_err(|e| TestCaseError::fail(e.to_string()))?;
        prop_assert_eq!(read(&text).map(|l| l.shelf), Ok(shelf));
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>()) {
        prop_assert!(read(&text).is_err());
        prop_assert!(read_preferences(&text).is_err());
    }

    #[test]
    fn damaged_files_never_panic(
        place in 0..V1_SHELF.len(),
        length in 0usize..40,
        patch in any::<String>(),
    ) {
        let (end, damaged) = (place + length, V1_SHELF);
        if let (Some(before), Some(after)) = (damaged.get(..place), damaged.get(end..))
            && let Ok(loaded) = read(&format!("{before}{patch}{after}"))
        {
            prop_assert_eq!(loaded.shelf.items().len() + loaded.rejected.len(), 5);
            prop_assert!(write_shelf(&loaded.shelf).is_ok());
        }
    }

    #[test]
    fn any_changed_number_leaves_only_sensible_routes(number in any::<f64>(), place in 0usize..40) {
        // The place-th number of the file becomes any number at all.
        let text = V1_SHELF
            .match_indices(": ")
            .filter(|(at, _)| {
                V1_SHELF[at + 2..].starts_with(|c: char| c.is_ascii_digit() || c == '-')
            })
            .nth(place + 1)
            .map(|(at, _)| {
                let end = V1_SHELF[at + 2..].find([',', '\n']).unwrap_or(0) + at + 2;
                format!("{}{number:e}{}", &V1_SHELF[..at + 2], &V1_SHELF[end..])
            });
        if let Some(Ok(loaded)) = text.map(|t| read(&t)) {
            for item in loaded.shelf.items() {
                prop_assert_eq!(recalesce::route::validate(&item.route), Ok(()));
            }
        }
    }
}
