use super::{Derivation, Quantity, why};
use crate::heat::MediumChoice;
use crate::route::{Cold, NumberKey, Outcome, Route, Step, Temper, run};
use crate::steel::{Element, find};
use crate::transform::Product;
use std::collections::HashMap;

fn route_of(designation: &str, medium: &str, soak_c: f64) -> Route {
    let mut route = Route::example();
    route.take_grade(find(designation).unwrap());
    route.soak.temperature_c = soak_c;
    route.quench.medium = MediumChoice::Named(medium.to_owned());
    route
}

/// Carbon steel, bearing and tool steels, one that misses its nose, one with ferrite left, and two that
/// are told by the table of their grade.
fn routes() -> Vec<Route> {
    let mut with_cold = route_of("52100", "oil_fast", 840.0);
    with_cold.cold = Some(Cold {
        snap: None,
        ..Cold::FIRST_OFFERED
    });
    let mut snapped = with_cold.clone();
    snapped.cold = Some(Cold {
        snap: Some(Cold::SNAP_FIRST_OFFERED),
        ..Cold::FIRST_OFFERED
    });
    let mut tempered_twice = route_of("O1", "oil_fast", 800.0);
    tempered_twice.tempers = vec![
        Temper {
            temperature_c: 180.0,
            time_min: 60.0,
        },
        Temper {
            temperature_c: 220.0,
            time_min: 90.0,
        },
    ];
    let mut by_table = route_of("D2", "air_still", 1010.0);
    for temper in &mut by_table.tempers {
        temper.temperature_c = 250.0;
    }
    vec![
        Route::example(),
        Route::whole_example(),
        route_of("1045", "oil_fast", 850.0),
        route_of("1045", "oil_fast", 760.0),
        route_of("1084", "oil_fast", 815.0),
        with_cold,
        snapped,
        tempered_twice,
        route_of("A2", "air_still", 960.0),
        by_table,
    ]
}

/// Everything that the final hardness leads back to.
fn walked(route: &Route, outcome: &Outcome) -> HashMap<NumberKey, Derivation> {
    let mut found = HashMap::new();
    let mut next = vec![
        NumberKey::FinalHardness,
        NumberKey::Margin,
        NumberKey::ColdTreatment,
        NumberKey::Skin,
        NumberKey::Behind(Quantity::FinalBand),
        NumberKey::Behind(Quantity::Hardened),
        NumberKey::Behind(Quantity::A1),
        NumberKey::Behind(Quantity::SecondPhase),
        NumberKey::Behind(Quantity::Bs),
        NumberKey::Behind(Quantity::AllowedCarbon),
        NumberKey::Behind(Quantity::FactorEnd { is_least: true }),
        NumberKey::Behind(Quantity::FactorEnd { is_least: false }),
    ];
    while let Some(key) = next.pop() {
        if found.contains_key(&key) {
            continue;
        }
        let Some(derivation) = why(key, route, outcome) else {
            continue;
        };
        next.extend(derivation.inputs.iter().filter_map(|input| input.came_from));
        found.insert(key, derivation);
    }
    found
}

/// The formula that is shown, evaluated, is the number of the outcome, for every number that the last
/// one leads back to; and each thing that goes in has the value that it has where it is itself opened.
#[test]
fn what_is_shown_is_what_was_computed() {
    let mut most = 0;
    for route in routes() {
        let outcome = run(&route).unwrap();
        let all = walked(&route, &outcome);
        let mut evaluated = 0;
        let mut solved = 0;
        for (key, derivation) in &all {
            let value = derivation.symbol.value;
            assert!(value.is_finite(), "{key:?}");
            if let Some(formula) = &derivation.formula {
                let found = formula.evaluate();
                let off = (found - value).abs();
                assert!(
                    off <= 1e-9 * value.abs().max(1e-6),
                    "{:?} {key:?}: {} gives {found}, the outcome has {value}",
                    route.grade,
                    formula.plain()
                );
                evaluated += 1;
                // With the digits that are shown it is the same within the last of them.
                let rough = formula.evaluate_with(&|symbol| {
                    let digits = 10_f64.powf(4.0 - symbol.value.abs().log10().floor() - 1.0);
                    if digits.is_finite() {
                        (symbol.value * digits).round() / digits
                    } else {
                        symbol.value
                    }
                });
                assert!(
                    (rough - value).abs() <= 0.02 * value.abs().max(0.05),
                    "{key:?}: {rough} {value}"
                );
                for symbol in formula.symbols() {
                    let is_told = |input: &super::Input| input.symbol == *symbol;
                    assert!(derivation.inputs.iter().any(is_told), "{key:?} {symbol:?}");
                }
            }
            if let Some(balance) = &derivation.balance {
                let left = balance.left();
                assert!(
                    left.abs() <= balance.within,
                    "{:?} {key:?}: {} leaves {left}, {} are allowed",
                    route.grade,
                    balance.zero.plain(),
                    balance.within
                );
                solved += 1;
            }
            for input in &derivation.inputs {
                let behind = input.came_from.and_then(|key| all.get(&key));
                if let Some(behind) = behind
                    && !input.name.contains("that counts")
                    && !is_another_share(input.symbol.name.as_ref())
                {
                    let off = (behind.symbol.value - input.symbol.value).abs();
                    assert!(
                        off <= 1e-9 * behind.symbol.value.abs().max(1e-3),
                        "{key:?} takes {} for {}",
                        input.symbol.value,
                        behind.symbol.value
                    );
                }
            }
        }
        println!(
            "{:?}: {} numbers, {evaluated} by formula, {solved} that solve an equation",
            route.grade,
            all.len()
        );
        most = most.max(evaluated);
    }
    assert!(most >= 30, "{most}");
}

/// Carbide is told of the piece after the soak; with what comes out on grain boundaries, or beside
/// ferrite, the share that goes in is another one.
fn is_another_share(symbol: &str) -> bool {
    symbol == "x_K"
}

#[test]
fn the_final_hardness_leads_back_to_the_composition() {
    for route in routes() {
        let outcome = run(&route).unwrap();
        let all = walked(&route, &outcome);
        let is_table = matches!(route.grade.as_deref(), Some("A2" | "D2"));
        let carbon = NumberKey::Behind(Quantity::Content(Element::C));
        assert!(is_table || all.contains_key(&carbon), "{:?}", route.grade);
        assert!(
            all.contains_key(&NumberKey::FinalHardness),
            "{:?} {}",
            route.grade,
            route.soak.temperature_c
        );
    }
}

#[test]
fn numbers_found_by_steps_solve_their_equation() {
    for (designation, medium, soak_c) in [
        ("52100", "oil_medium", 830.0),
        ("1045", "oil_fast", 850.0),
        ("1084", "oil_slow", 815.0),
        ("4140", "oil_fast", 860.0),
    ] {
        let route = route_of(designation, medium, soak_c);
        let outcome = run(&route).unwrap();
        let derivation = |quantity| why(NumberKey::Behind(quantity), &route, &outcome).unwrap();
        for quantity in [Quantity::A1, Quantity::SecondPhase, Quantity::Factor] {
            let found = derivation(quantity);
            let balance = found.balance.as_ref();
            let balance = balance.unwrap_or_else(|| panic!("{designation} {quantity:?}"));
            assert!(balance.left().abs() <= balance.within);
            // Another number does not solve it.
            let other = |symbol: &crate::numeric::formula::Symbol| 1.01 * symbol.value;
            let off = balance.zero.evaluate_with(&other);
            assert!(
                off.is_nan() || off.abs() > balance.within,
                "{designation} {quantity:?} {off}"
            );
        }
        for product in [Product::Pearlite, Product::Bainite] {
            let part = derivation(Quantity::Part(product));
            let is_told = part.formula.is_some() || part.balance.is_some();
            assert!(is_told, "{designation} {product:?}");
            let age = derivation(Quantity::Age(product));
            assert!(
                age.balance.is_some() || age.symbol.value == 0.0,
                "{designation} {product:?}"
            );
            if part.symbol.value > 0.0 {
                let hv = derivation(Quantity::ProductHv(product));
                assert!(hv.formula.is_some(), "{designation} {product:?}");
            }
        }
        assert!(
            derivation(Quantity::ProductHv(Product::Ferrite))
                .formula
                .is_some()
        );
    }
}

#[test]
fn formulas_are_typeset() {
    let route = Route::example();
    let outcome = run(&route).unwrap();
    let ms = why(NumberKey::Behind(Quantity::Ms), &route, &outcome).unwrap();
    let typeset = ms.typeset().unwrap();
    assert!(typeset.letters[0].starts_with("<msub><mi>M</mi><mi>s</mi></msub><mo>=</mo>"));
    assert!(typeset.plain.starts_with("M s = 565 − 600 · (1 − exp("));
    assert_eq!(typeset.letters.len(), typeset.values.len());
    assert!(
        ms.rows()
            .iter()
            .any(|(term, text)| *term == "source" && text.contains("read in"))
    );
    let none = NumberKey::Behind(Quantity::Fall(99));
    assert!(why(none, &route, &outcome).is_none());
    let snap = NumberKey::Behind(Quantity::Hv(Step::Snap));
    assert!(why(snap, &route, &outcome).is_none());
}
