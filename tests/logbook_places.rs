//! What was measured on a piece that does not harden through is laid beside what is predicted where it was
//! read.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::hardness::Scale;
use recalesce::heat::{Grind, MediumChoice, Place, Section};
use recalesce::route::{Outcome, Route, run};
use recalesce::save::logbook::{
    After, Compared, Day, Filter, Id, Order, Reading, Run, agreement, beside, list, read_logbook,
    write_csv, write_logbook,
};
use recalesce::steel::find;
use recalesce::units::{LengthUnit, TemperatureScale};

const SAVED: &str = include_str!("saved/v9_logbook.json");

fn of(designation: &str, section: Section, medium: &str) -> (Route, Outcome) {
    let mut route = Route::example();
    route.take_grade(find(designation).expect("a grade"));
    route.section = section;
    route.quench.medium = MediumChoice::Named(medium.to_owned());
    let outcome = run(&route).expect("an outcome");
    (route, outcome)
}

/// Hard at the edge, partly pearlite at the spine.
fn blade() -> (Route, Outcome) {
    let section = Section::Blade {
        edge_mm: 0.5,
        spine_mm: 4.0,
        height_mm: 30.0,
        grind: Grind::Straight,
    };
    of("1095", section, "oil_medium")
}

fn logged((route, outcome): &(Route, Outcome), readings: &[(&str, f64)]) -> Run {
    let day = Day::parse("2026-11-20").expect("a day");
    let id = Id::try_from("one".to_owned()).expect("an id");
    let mut run = Run::of(id, day, route.clone(), Some(outcome));
    let reading = |(place, hrc): &(&str, f64)| Reading {
        value: *hrc,
        scale: Scale::Hrc,
        place: (*place).to_owned(),
        after: After::Temper,
    };
    run.readings = readings.iter().map(reading).collect();
    run
}

fn measured(compared: &[Compared]) -> Vec<Option<f64>> {
    compared.iter().map(|place| place.measured_hrc).collect()
}

#[test]
fn each_reading_is_laid_beside_the_place_it_was_taken_at() {
    let blade = blade();
    let run = logged(&blade, &[]);
    let predicted = run.predicted.clone().expect("a prediction");
    let edge = predicted.outside.expect("the edge");
    assert_eq!(edge.place, Some(Place::Edge));
    assert!(predicted.place.is_some_and(|place| place != Place::Edge));
    let judged = blade.1.judged_stages().last().expect("a stage");
    assert_eq!(Some(edge.hrc), judged.hrc());
    assert!(edge.hrc > predicted.hrc + 5.0, "{predicted:?}");
    assert_eq!(measured(&run.compared()), [None, None]);
    assert_eq!((run.measured_hrc(), run.difference_hrc()), (None, None));

    let spine = predicted.hrc + 0.5;
    let words = [
        ("edge", edge.hrc - 1.0),
        ("spine", spine),
        ("face of the spine", 30.0),
    ];
    let run = logged(&blade, &words);
    assert_eq!(
        measured(&run.compared()),
        [Some(spine), Some(edge.hrc - 1.0)]
    );
    // A list tells the edge, which is what is judged.
    assert!((run.difference_hrc().expect("a difference") + 1.0).abs() < 1e-9);
    let inside: Vec<_> = run.compared().iter().map(Compared::is_inside).collect();
    assert_eq!(inside, [Some(true), Some(true)]);

    assert_eq!(run.read_elsewhere(), ["face of the spine"]);

    // What is read of neither is shown, and compared with nothing.
    let run = logged(&blade, &[("flank, at the face", 55.0)]);
    assert_eq!(
        (run.measured_hrc(), run.difference_hrc()),
        (Some(55.0), None)
    );
}

#[test]
fn of_a_piece_that_is_alike_throughout_every_reading_counts() {
    let plate = of("O1", Section::Plate { thickness_mm: 3.0 }, "oil_medium");
    let run = logged(&plate, &[("edge", 60.0), ("10 mm from it", 61.0)]);
    let predicted = run.predicted.as_ref().expect("a prediction");
    assert_eq!((predicted.place, predicted.outside), (None, None));
    assert_eq!(measured(&run.compared()), [Some(60.5)]);
    assert_eq!(run.read_elsewhere(), [""; 0]);
}

#[test]
fn a_bar_soft_inside_has_a_prediction_for_its_surface() {
    let bar = of("4140", Section::Round { diameter_mm: 60.0 }, "oil_medium");
    let run = logged(&bar, &[]);
    let predicted = run.predicted.clone().expect("a prediction");
    let surface = predicted.outside.expect("the surface");
    assert_eq!(predicted.place, Some(Place::Centre));
    assert_eq!(surface.place, Some(Place::Surface));
    assert!(surface.hrc > predicted.hrc + 1.0, "{predicted:?}");
    // A tester is set on the surface, unless it is told otherwise.
    let centre = ("centre, cut through", predicted.hrc);
    let run = logged(&bar, &[("", surface.hrc + 0.5), centre]);
    assert_eq!(
        measured(&run.compared()),
        [Some(predicted.hrc), Some(surface.hrc + 0.5)]
    );
    assert_eq!(
        run.compared_first().and_then(|at| at.is_inside()),
        Some(true)
    );
}

/// Where the inside is too soft for the C scale the surface alone is predicted, and what was read inside is not
/// laid beside it.
#[test]
fn a_bar_too_soft_inside_is_predicted_at_its_surface_alone() {
    let bar = of("1045", Section::Square { side_mm: 80.0 }, "water20");
    let run = logged(&bar, &[("centre", 24.0)]);
    let predicted = run.predicted.as_ref().expect("a prediction");
    assert_eq!(
        (predicted.place, predicted.outside),
        (Some(Place::Surface), None)
    );
    assert_eq!(measured(&run.compared()), [None]);
    assert_eq!(run.read_elsewhere(), ["centre"]);
    let run = logged(&bar, &[("", predicted.hrc - 1.0)]);
    assert!((run.difference_hrc().expect("a difference") + 1.0).abs() < 1e-9);
    assert_eq!(run.read_elsewhere(), [""; 0]);
}

/// A prediction that tells nonsense of places is refused.
#[test]
fn nonsense_about_places_is_refused() {
    for (was, is, field) in [
        (
            "\"band_off_hrc\": -1.0",
            "\"band_off_hrc\": 50.0",
            "band_off_hrc",
        ),
        (
            "\"place\": \"three_quarter\"",
            "\"place\": \"surface\"",
            "outside.place",
        ),
        (
            "\"place\": \"edge\",\n     \"hrc\"",
            "\"hrc\"",
            "outside.place",
        ),
        ("\"hrc\": 61.0", "\"hrc\": 161.0", "outside.hrc"),
    ] {
        let text = SAVED.replace(was, is);
        assert_ne!(text, SAVED, "{was}");
        let rejected = read_logbook(&text).expect("a logbook").rejected;
        assert!(rejected[0].contains(field), "{field}: {rejected:?}");
    }
}

/// The band of a place that may harden only in part reaches farther to one side than to the other.
#[test]
fn an_uneven_band_is_laid_as_it_lies() {
    let blade = blade();
    let run = logged(&blade, &[]);
    let spine = run.compared()[0].predicted;
    assert!(spine.band_off_hrc.abs() > 0.5, "{spine:?}");
    let [least, most] = spine.range_hrc();
    let last = blade.1.stages.last().expect("a stage");
    let told = last.hrc_range().expect("a band");
    assert!((told[0] - least).abs() < 1e-9 && (told[1] - most).abs() < 1e-9);
    for (hrc, is_inside) in [
        (least - 0.1, false),
        (least + 0.1, true),
        (most - 0.1, true),
        (most + 0.1, false),
    ] {
        let run = logged(&blade, &[("spine", hrc)]);
        assert_eq!(run.compared()[0].is_inside(), Some(is_inside), "{hrc}");
        let mut book = recalesce::save::logbook::Logbook::default();
        book.put(run).expect("a run");
        let told = agreement(&list(&book, &Filter::default(), Order::Day));
        assert_eq!(
            told.map(|told| told.inside_band),
            Some(usize::from(is_inside))
        );
    }
    assert!(spine.words().contains('\u{2013}'), "{}", spine.words());
}

/// Version 9 tells of a prediction which place it is of, and the same of what is reached from outside.
#[test]
fn a_logbook_of_version_9_tells_places() {
    let loaded = read_logbook(SAVED).expect("a logbook");
    assert_eq!(loaded.rejected, Vec::<String>::new());
    let id = Id::try_from("drawknife-1".to_owned()).expect("an id");
    let knife = loaded.book.get(&id).expect("the drawknife");
    assert_eq!(measured(&knife.compared()), [Some(44.5), Some(60.5)]);
    assert_eq!(knife.difference_hrc(), Some(-0.5));
    let text = write_logbook(loaded.book.runs(), &loaded.photos).expect("text");
    assert_eq!(read_logbook(&text).expect("a logbook"), loaded);
    let nowhere = SAVED.replace("\"three_quarter\"", "\"hilt\"");
    let rejected = read_logbook(&nowhere).expect("a logbook").rejected;
    assert!(
        rejected[0].contains("“hilt” is no place of a piece"),
        "{rejected:?}"
    );
    // A table and two runs side by side tell it as well.
    let table = write_csv(&list(&loaded.book, &Filter::default(), Order::Day));
    let mut rows = table.lines();
    let head = rows.next().expect("a head");
    assert!(head.ends_with(",predicted_band_off_hrc,predicted_at"));
    let row = rows
        .find(|row| row.starts_with("drawknife-1,"))
        .expect("its row");
    assert!(row.contains(",61,2,5,60.5,-0.5,"), "{row}");
    assert!(row.ends_with(",false,0,edge"), "{row}");
    let other = loaded.book.runs().find(|run| run.id != knife.id);
    let rows = beside(
        [knife, other.expect("another run")],
        TemperatureScale::Celsius,
        LengthUnit::Millimetre,
    );
    let told = rows.iter().find(|row| row.name == "Predicted at");
    assert_eq!(told.expect("a row").texts, ["cutting edge", "–"]);
    let figure = rows.iter().find(|row| row.name == "Predicted, HRC");
    assert_eq!(figure.expect("a row").texts[0], "61.0");
}
