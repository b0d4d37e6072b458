//! A logbook of a thousand runs: what a change of the filter costs, and what opening it costs.

use criterion::Criterion;
use recalesce::hardness::Scale;
use recalesce::route::Route;
use recalesce::save::logbook::{
    After, Day, Filter, Id, Logbook, Order, Predicted, Reading, Run, agreement, list, read_logbook,
    write_csv, write_logbook,
};
use std::collections::BTreeMap;
use std::hint::black_box;

const RUNS: usize = 1000;
const GRADES: [&str; 4] = ["O1", "A2", "52100", "1095"];
const PIECES: [&str; 3] = ["Marking knife", "Chisel, 12 mm", "Plane iron"];

/// A made-up logbook: each run with three readings, one of them in Vickers.
fn thousand() -> Logbook {
    let mut book = Logbook::default();
    for n in 0..RUNS {
        let route = Route {
            piece: PIECES[n % PIECES.len()].to_owned(),
            grade: Some(GRADES[n % GRADES.len()].to_owned()),
            ..Route::example()
        };
        let day = format!("2026-{:02}-{:02}", 1 + n % 12, 1 + n % 28);
        let id = Id::try_from(format!("run-{n}")).expect("an id");
        let mut run = Run::of(id, Day::parse(&day).expect("a day"), route, None);
        run.predicted = Some(Predicted {
            hrc: 60.0,
            band_hrc: 2.0,
            band_off_hrc: 0.0,
            place: None,
            outside: None,
            model: "0.1.0".to_owned(),
            is_taught: false,
        });
        let hrc = 58.0 + (n % 40) as f64 / 10.0;
        for (value, scale) in [
            (hrc, Scale::Hrc),
            (hrc + 0.5, Scale::Hrc),
            (690.0, Scale::Hv),
        ] {
            run.readings.push(Reading {
                value,
                scale,
                place: "edge".to_owned(),
                after: After::Temper,
            });
        }
        book.put(run).expect("room");
    }
    book
}

fn main() {
    let mut c = Criterion::default().configure_from_args();
    let book = thousand();
    let filter = Filter {
        piece: "knife".to_owned(),
        is_measured: true,
        ..Filter::default()
    };
    for (name, filter, order) in [
        ("all, by difference", Filter::default(), Order::Difference),
        ("all, by piece", Filter::default(), Order::Piece),
        ("a piece, by day", filter, Order::Day),
    ] {
        c.bench_function(&format!("logbook: list {name}"), |b| {
            b.iter(|| {
                let listed = list(black_box(&book), black_box(&filter), order);
                (agreement(&listed), listed.len())
            });
        });
    }
    let text = write_logbook(book.runs(), &BTreeMap::new()).expect("a text");
    c.bench_function("logbook: read the file", |b| {
        b.iter(|| read_logbook(black_box(&text)));
    });
    c.bench_function("logbook: write the table", |b| {
        b.iter(|| write_csv(&list(black_box(&book), &Filter::default(), Order::Day)));
    });
    c.final_summary();
}
