//! What is written comes back as it was, and every route has a card.

use super::any_route::{any_route, any_text};
use super::shelf;
use proptest::prelude::*;
use recalesce::route::{card, run};
use recalesce::save::{MOST_ROUTES, Shelf, WriteError, read, read_bench, write_bench, write_shelf};
use recalesce::units::{LengthUnit, TemperatureScale};

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
}
