//! Files that are bad: what is wrong is told, and what is good is kept.

use super::{V1_SHELF, changed, names};
use proptest::prelude::*;
use recalesce::save::{
    LARGEST_FILE_BYTES, MOST_ROUTES, ReadError, read, read_bench, read_preferences, write_shelf,
};
use serde_json::{Value, json};

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

proptest! {
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
