//! The pipeline from a route to its outcome.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::route::{Route, caution_text, run, sentences};
use recalesce::units::TemperatureScale;

#[test]
fn the_example_is_told_in_sentences() {
    let route = Route::example();
    let outcome = run(&route).expect("the example runs");
    for sentence in sentences(&route, &outcome) {
        println!("{:?} {}", sentence.tone, sentence.text());
    }
    for caution in &outcome.cautions {
        println!("- {}", caution_text(caution, TemperatureScale::Celsius));
    }
    println!("{:#?}", outcome.stages);
    println!("{:#?}", outcome.influences);
    println!("{:#?}", outcome.furnace);
    println!("{:#?}", outcome.critical);
    if let Some(q) = outcome.quench.transformed.given() {
        println!("{:?} {:?} {:?} {} {} {}", q.margin, q.thickest_mm, q.hardened_height_mm, q.ms_c, q.m50_c, q.m90_c);
        println!("{:?} {:?}", q.next_slower.as_ref().map(|n| (&n.title, n.seconds)), q.slowest_medium.as_ref().map(|n| (&n.title, n.seconds)));
    }
    for (i, _) in (0..3).enumerate() {
        let t = std::time::Instant::now();
        for _ in 0..20 { let _ = run(&route); }
        println!("{i} {:?} per run", t.elapsed() / 20);
    }
}
