//! Logbooks as files: what is read, what is refused, what an import would change.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::chart::{LoggedHardness, Palette, logbook_chart, svg};
use recalesce::hardness::Scale;
use recalesce::route::{Deviation, Left, MODELS, Route, Taught, run};
use recalesce::save::logbook::{
    After, Day, Differing, Filter, Id, LARGEST_LOGBOOK_BYTES, LoadedLogbook, Logbook, LogbookError,
    MOST_RUNS, Merge, Order, Photo, Predicted, Reading, Run, UseTest, agreement, beside, list,
    read_logbook, write_csv, write_logbook,
};
use recalesce::save::{ReadError, VERSION, read};
use recalesce::units::{LengthUnit, TemperatureScale};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const SAVED: &str = include_str!("saved/v5_logbook.json");

const SAVED_V7: &str = include_str!("saved/v7_logbook.json");
const SAVED_V8: &str = include_str!("saved/v8_logbook.json");

fn id(text: &str) -> Id {
    Id::try_from(text.to_owned()).expect("an id")
}

fn day(text: &str) -> Day {
    Day::parse(text).expect("a day")
}

/// A run with one reading as tempered, predicted at 60 ± 2 HRC.
fn measured(name: &str, piece: &str, grade: &str, on: &str, hrc: f64) -> Run {
    let route = Route {
        piece: piece.to_owned(),
        grade: Some(grade.to_owned()),
        ..Route::example()
    };
    let mut run = Run::of(id(name), day(on), route, None);
    run.predicted = Some(Predicted {
        hrc: 60.0,
        band_hrc: 2.0,
        band_off_hrc: 0.0,
        place: None,
        outside: None,
        model: "0.1.0".to_owned(),
        is_taught: false,
    });
    run.readings.push(Reading {
        value: hrc,
        scale: Scale::Hrc,
        place: "edge".to_owned(),
        after: After::Temper,
    });
    run
}

fn book(runs: impl IntoIterator<Item = Run>) -> Logbook {
    let mut book = Logbook::default();
    for run in runs {
        book.put(run).expect("a run that makes sense");
    }
    book
}

fn four() -> Logbook {
    book([
        measured("a", "Marking knife", "O1", "2026-03-02", 61.0),
        measured("b", "Chisel, 12 mm", "O1", "2026-01-15", 57.0),
        measured("c", "Plane iron", "A2", "2026-02-20", 60.5),
        Run::of(id("d"), day("2026-04-01"), Route::example(), None),
    ])
}

fn ids(book: &Logbook, filter: &Filter, order: Order) -> String {
    let listed = list(book, filter, order);
    listed.iter().map(|l| l.run.id.as_str()).collect()
}

/// The saved logbook with a change to its JSON.
fn changed(change: impl FnOnce(&mut Value)) -> String {
    let mut value: Value = serde_json::from_str(SAVED).expect("JSON");
    change(&mut value);
    value.to_string()
}

/// Version 7 added the coupon; all else is as version 5 has it.
#[test]
fn a_logbook_of_version_7_has_a_coupon() {
    let [before, now] = [SAVED, SAVED_V7].map(|text| read_logbook(text).expect("a logbook"));
    let told: Vec<&str> = now.book.runs().map(|run| run.coupon.as_str()).collect();
    assert_eq!(told.iter().filter(|told| !told.is_empty()).count(), 1);
    for (was, run) in before.book.runs().zip(now.book.runs()) {
        let without = Run {
            coupon: String::new(),
            ..run.clone()
        };
        assert_eq!(*was, without);
    }
    let text = write_logbook(now.book.runs(), &now.photos).expect("text");
    let read = read_logbook(&text).expect("a logbook");
    assert_eq!((read.book, read.photos), (now.book, now.photos));
}

/// Version 8 tells of a prediction whether what had been learnt was counted with.
#[test]
fn a_logbook_of_version_8_tells_whether_a_prediction_was_taught() {
    let [before, now] = [SAVED_V7, SAVED_V8].map(|text| read_logbook(text).expect("a logbook"));
    let is_taught = |loaded: &LoadedLogbook| -> Vec<bool> {
        let predicted = loaded.book.runs().filter_map(|run| run.predicted.as_ref());
        predicted.map(|predicted| predicted.is_taught).collect()
    };
    assert!(is_taught(&before).iter().all(|is| !is));
    assert_eq!(is_taught(&now).iter().filter(|is| **is).count(), 1);
    let text = write_logbook(now.book.runs(), &now.photos).expect("text");
    assert_eq!(text.matches("is_taught").count(), 1);
    assert_eq!(read_logbook(&text).expect("a logbook"), now);
    // A table and two runs side by side tell it as well.
    let table = write_csv(&list(&now.book, &Filter::default(), Order::Day));
    let column = table.lines().next().expect("a head").split(',').count();
    assert!(table.starts_with("id,day,") && column == 42);
    let taught = table.lines().filter(|line| line.ends_with(",true,0,"));
    assert_eq!(taught.count(), 1);
    let taught = now.book.get(&id("knife-1")).expect("the knife");
    let other = now.book.runs().find(|run| run.id != taught.id);
    let rows = beside(
        [taught, other.expect("another run")],
        TemperatureScale::Celsius,
        LengthUnit::Millimetre,
    );
    let row = rows
        .iter()
        .find(|row| row.name == "Predicted with what the logbook had taught");
    assert!(row.expect("a row").texts.contains(&"yes".to_owned()));
}

/// The outcome of a route as its pieces go through it is kept as that, and the route as planned.
#[test]
fn a_run_keeps_whether_what_was_learnt_was_counted_with() {
    let planned = Route::example();
    let off = Deviation {
        tempered_hrc: -1.0,
        ..Deviation::default()
    };
    let taught = Route {
        taught: Some(Taught::new(off, Left::default())),
        ..planned.clone()
    };
    let logged = |route: Route| {
        let outcome = run(&route).expect("an outcome");
        Run::of(id("a"), day("2026-11-27"), route, Some(&outcome))
    };
    let [plain, with] = [planned.clone(), taught].map(logged);
    assert_eq!((&plain.route, &with.route), (&planned, &planned));
    let [plain, with] = [plain, with].map(|run| run.predicted.expect("a prediction"));
    assert_eq!((plain.is_taught, with.is_taught), (false, true));
    assert!(with.hrc < plain.hrc - 0.9);
}

#[test]
fn a_saved_logbook_is_read_in_full_and_written_back() {
    let loaded = read_logbook(SAVED).expect("a logbook");
    assert_eq!(loaded.rejected, Vec::<String>::new());
    assert_eq!(loaded.book.len(), 3);
    let knife = loaded.book.get(&id("knife-1")).expect("the knife");
    assert_eq!(knife.route.piece, "Marking knife <b>of a made-up shop</b>");
    assert_eq!(knife.measured_hrc(), Some(61.25));
    assert_eq!(knife.fracture_grain_astm, Some(9.0));
    assert_eq!(knife.use_tests[0].unit, "cuts");
    assert_eq!(loaded.photos.len(), 1);
    let text = write_logbook(loaded.book.runs(), &loaded.photos).expect("a text");
    assert_eq!(read_logbook(&text).expect("a logbook"), loaded);
}

#[test]
fn a_run_keeps_what_was_predicted() {
    let route = Route::example();
    let outcome = run(&route).expect("an outcome");
    let logged = Run::of(id("a"), day("2026-11-27"), route, Some(&outcome));
    let predicted = logged.predicted.expect("a prediction");
    let last = outcome.stages.last().expect("a stage");
    assert_eq!(Some(predicted.hrc), last.hardness.and_then(|h| h.hrc()));
    assert_eq!(predicted.band_hrc, last.band_hrc);
    assert_eq!(predicted.model, MODELS);
}

#[test]
fn what_is_measured_is_the_mean_after_the_last_step() {
    let mut run = measured("a", "iron", "A2", "2026-11-27", 60.0);
    let mut read = |value, scale, after| {
        run.readings.push(Reading {
            value,
            scale,
            place: String::new(),
            after,
        });
        run.measured_hrc().expect("a mean")
    };
    assert_eq!(read(62.0, Scale::Hrc, After::Temper), 61.0);
    assert_eq!(read(66.0, Scale::Hrc, After::Quench), 61.0, "not the last");
    assert_eq!(read(90.0, Scale::Hrb, After::Temper), 61.0, "no HRC");
    let with_vickers = read(720.0, Scale::Hv, After::Temper);
    assert!((with_vickers - 61.0).abs() < 0.2, "{with_vickers}");
    run.route.tempers.clear();
    run.route.cold = None;
    assert_eq!(run.measured_hrc(), Some(66.0));
}

#[test]
fn runs_are_filtered_and_sorted() {
    let book = four();
    let all = Filter::default();
    assert_eq!(ids(&book, &all, Order::Day), "dacb");
    assert_eq!(ids(&book, &all, Order::Piece), "bdac");
    assert_eq!(ids(&book, &all, Order::Difference), "bacd");
    let of_grade = Filter {
        grade: Some("O1".to_owned()),
        ..Filter::default()
    };
    assert_eq!(ids(&book, &of_grade, Order::Day), "ab");
    let piece = Filter {
        piece: " CHISEL ".to_owned(),
        ..Filter::default()
    };
    assert_eq!(ids(&book, &piece, Order::Day), "b");
    let days = Filter {
        from: Some(day("2026-02-20")),
        to: Some(day("2026-03-02")),
        ..Filter::default()
    };
    assert_eq!(ids(&book, &days, Order::Day), "ac");
    let with_hardness = Filter {
        is_measured: true,
        ..Filter::default()
    };
    assert_eq!(ids(&book, &with_hardness, Order::Day), "acb");
}

#[test]
fn runs_are_told_against_their_predictions() {
    let book = four();
    let listed = list(&book, &Filter::default(), Order::Day);
    let told = agreement(&listed).expect("three runs");
    assert_eq!((told.runs, told.inside_band), (3, 2));
    assert_eq!((told.least_hrc, told.most_hrc), (-3.0, 1.0));
    assert!((told.mean_hrc + 0.5).abs() < 1e-12);
    assert_eq!(agreement(&[]), None);
}

#[test]
fn runs_are_drawn_about_the_line_of_agreement() {
    let logged = |predicted_hrc, measured_hrc| LoggedHardness {
        predicted_hrc,
        range_hrc: [predicted_hrc - 2.0, predicted_hrc + 2.0],
        measured_hrc,
    };
    let size = [362.0, 300.0];
    assert!(logbook_chart(&[], size).is_none());
    let scene = logbook_chart(&[logged(60.0, 57.0), logged(61.0, 61.6)], size).expect("a chart");
    assert!(
        scene.summary.contains("2 logged runs: 1 inside the band")
            && scene.summary.ends_with("on average 1.2\u{a0}HRC softer."),
        "{}",
        scene.summary
    );
    let document = svg::document(&scene, &Palette::DARK).expect("a drawing");
    for words in ["measured, HRC", "predicted, HRC", "as predicted"] {
        assert!(document.contains(words), "{words}");
    }
    // Two axes of one range, so that the line of agreement runs from corner to corner.
    assert_eq!(scene.plane.x.low(), scene.plane.y.low());
    assert_eq!(scene.plane.x.high(), scene.plane.y.high());
    for width in [1.0, 40.0, 2000.0] {
        assert!(logbook_chart(&[logged(60.0, 60.0); 500], [width, 200.0]).is_some());
    }
}

#[test]
fn an_import_says_what_it_would_change_and_overwrites_only_when_asked() {
    let own = four();
    let mut other = measured("b", "Chisel, 12 mm", "O1", "2026-01-15", 58.0);
    other.notes = "from the other bench".to_owned();
    let file = book([
        own.get(&id("a")).expect("a").clone(),
        other.clone(),
        measured("e", "Drawknife", "O1", "2026-05-05", 59.0),
    ]);
    let merge = Merge::of(&own, &file);
    assert_eq!(
        (merge.new.len(), merge.differing.len(), merge.same),
        (1, 1, 1)
    );
    let after = |differing| {
        let mut merged = own.clone();
        for run in merge.taken(&own, differing) {
            merged.put(run).expect("room");
        }
        merged
    };
    let left = after(Differing::Leave);
    assert_eq!((left.len(), left.get(&id("b"))), (5, own.get(&id("b"))));
    let replaced = after(Differing::Replace);
    assert_eq!((replaced.len(), replaced.get(&id("b"))), (5, Some(&other)));
    let both = after(Differing::KeepBoth);
    assert_eq!((both.len(), both.get(&id("b"))), (6, own.get(&id("b"))));
    let beside = both.get(&id("b-2")).expect("the other");
    assert_eq!(beside.notes, other.notes);
}

#[test]
fn a_full_logbook_says_so_and_still_takes_changes() {
    let mut book = Logbook::default();
    for n in 0..MOST_RUNS {
        let run = Run::of(
            id(&n.to_string()),
            day("2026-01-01"),
            Route::example(),
            None,
        );
        book.put(run).expect("room");
    }
    let more = Run::of(id("more"), day("2026-01-01"), Route::example(), None);
    assert_eq!(book.put(more), Err(LogbookError::Full));
    let changed = measured("7", "iron", "A2", "2026-01-02", 60.0);
    assert!(book.put(changed).expect("a change").is_some());
}

#[test]
fn bad_files_are_refused_with_the_reason() {
    let refused = |text: &str| read_logbook(text).expect_err("no logbook");
    for cut in [1, SAVED.len() / 3, SAVED.len() - 3] {
        assert!(matches!(refused(&SAVED[..cut]), ReadError::CutShort { .. }));
    }
    assert!(matches!(refused("<html>"), ReadError::NotJson { .. }));
    assert_eq!(refused("[]"), ReadError::NotOurs);
    let newer = changed(|v| v["version"] = json!(VERSION + 1));
    assert_eq!(refused(&newer), ReadError::Newer { found: VERSION + 1 });
    let other = changed(|v| v["kind"] = json!("shelf"));
    assert!(matches!(refused(&other), ReadError::Kind { .. }));
    assert!(matches!(read(SAVED), Err(ReadError::Kind { .. })));
    let no_list = changed(|v| v["runs"] = json!({}));
    assert!(matches!(
        refused(&no_list),
        ReadError::Field { field: "runs", .. }
    ));
    let unknown = changed(|v| v["owner"] = json!("x"));
    assert!(matches!(refused(&unknown), ReadError::UnknownField { .. }));
    let long = " ".repeat(LARGEST_LOGBOOK_BYTES + 1);
    assert!(matches!(refused(&long), ReadError::TooLarge { .. }));
}

#[test]
fn a_bad_run_among_good_ones_is_told_and_the_others_are_read() {
    type Change = fn(&mut Value);
    let changes: [(Change, &str); 13] = [
        (|run| run["id"] = json!("../etc"), "an id has 1 to 40"),
        (|run| run["day"] = json!("2026-02-30"), "is no day"),
        (
            |run| run["route"]["soak"]["temperature_c"] = json!(1e9),
            "route.soak.temperature_c",
        ),
        (
            |run| run["readings"][0]["value"] = json!(-5),
            "readings[0].value",
        ),
        (
            |run| run["readings"][0]["value"] = json!("61"),
            "invalid type",
        ),
        (
            |run| run["readings"][0]["scale"] = json!("shore"),
            "unknown variant",
        ),
        (
            |run| run["readings"] = json!(vec![run["readings"][0].clone(); 101]),
            "100 are allowed",
        ),
        (
            |run| run["fracture_grain_astm"] = json!(99),
            "fracture_grain_astm",
        ),
        (
            |run| run["austenite_vol_percent"] = json!(101),
            "101\u{a0}vol",
        ),
        (
            |run| run["notes"] = json!("x".repeat(4001)),
            "4001 characters",
        ),
        (
            |run| run["predicted"]["hrc"] = json!(1e300),
            "predicted.hrc",
        ),
        (|run| run["photos"] = json!(["<img>"]), "an id has 1 to 40"),
        (|run| run["weight"] = json!(1), "unknown field"),
    ];
    for (change, words) in changes {
        let text = changed(|v| change(&mut v["runs"][0]));
        let loaded = read_logbook(&text).expect("the other runs");
        assert_eq!(loaded.book.len(), 2, "{words}");
        assert_eq!(loaded.rejected.len(), 1, "{words}");
        let told = &loaded.rejected[0];
        assert!(
            told.starts_with("run 1: ") && told.contains(words),
            "{told}"
        );
    }
    let twice = changed(|v| v["runs"][1] = v["runs"][0].clone());
    let loaded = read_logbook(&twice).expect("the other runs");
    assert_eq!(loaded.rejected, ["run 2: the id “knife-1” occurs twice"]);
    let no_photo = changed(|v| v["photos"][0]["jpeg_base64"] = json!("PHN2Zz4="));
    let loaded = read_logbook(&no_photo).expect("the runs");
    assert_eq!((loaded.book.len(), loaded.photos.len()), (3, 0));
    assert_eq!(loaded.rejected.len(), 1);
}

#[test]
fn markup_is_only_ever_text() {
    let loaded = read_logbook(SAVED).expect("a logbook");
    let text = write_csv(&list(&loaded.book, &Filter::default(), Order::Day));
    assert!(text.contains("Marking knife <b>of a made-up shop</b>"));
}

fn any_text() -> impl Strategy<Value = String> {
    proptest::collection::vec(any::<char>(), 0..40).prop_map(String::from_iter)
}

prop_compose! {
    fn any_run()(
        name in "[a-z0-9-]{1,40}",
        year in 1900_u16..3000, month in 1_u8..=12, date in 1_u8..=28,
        hrc in 0.0..72.0,
        piece in any_text(), notes in any_text(), place in any_text(), test in any_text(),
        result in -1e9..1e9,
    ) -> Run {
        let on = format!("{year:04}-{month:02}-{date:02}");
        let mut run = measured(&name, &piece, "O1", &on, hrc);
        run.notes = notes;
        run.readings[0].place = place;
        run.use_tests.push(UseTest { name: test, value: result, unit: String::new() });
        run
    }
}

proptest! {
    #[test]
    fn whatever_is_kept_is_read_back(runs in proptest::collection::vec(any_run(), 0..5)) {
        let book = book(runs);
        let photo = Photo::try_from("/9j/4AAQ".to_owned()).expect("a photo");
        let photos = BTreeMap::from([(id("p"), photo)]);
        let text = write_logbook(book.runs(), &photos).expect("a text");
        let loaded = read_logbook(&text).expect("a logbook");
        prop_assert_eq!(loaded.rejected.len(), 0);
        prop_assert_eq!(&loaded.book, &book);
        // No run of these has a photo, so none comes along.
        prop_assert!(loaded.photos.is_empty());
        let merge = Merge::of(&book, &loaded.book);
        prop_assert_eq!((merge.new.len(), merge.differing.len()), (0, 0));
    }

    #[test]
    fn a_table_has_a_line_per_run(runs in proptest::collection::vec(any_run(), 0..5)) {
        let book = book(runs);
        let text = write_csv(&list(&book, &Filter::default(), Order::Day));
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let columns = reader.headers().expect("columns").len();
        let mut rows = 0;
        for row in reader.records() {
            prop_assert_eq!(row.expect("a row").len(), columns);
            rows += 1;
        }
        prop_assert_eq!(rows, book.len());
    }

    #[test]
    fn no_text_makes_the_reader_stumble(text in any_text()) {
        prop_assert!(read_logbook(&text).is_err());
    }

    #[test]
    fn a_damaged_file_is_read_or_refused(
        at in 0..SAVED.len(),
        len in 0_usize..30,
        with in prop_oneof![
            Just(""), Just("null"), Just("-1e308"), Just("\""), Just("{"), Just("[]"), Just("<b>"),
        ],
    ) {
        let mut bytes = SAVED.as_bytes().to_vec();
        let end = (at + len).min(bytes.len());
        bytes.splice(at..end, with.bytes());
        // What is read makes sense, so it can be written and read again.
        if let Ok(loaded) = read_logbook(&String::from_utf8_lossy(&bytes)) {
            let text = write_logbook(loaded.book.runs(), &loaded.photos).expect("a text");
            prop_assert_eq!(read_logbook(&text).expect("a logbook").book, loaded.book);
        }
    }
}
