//! Is the quench fast enough: the time it takes, the time it may take, and how far that is open.

use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::numeric::formula::{Formula, Number};
use crate::route::quenched::judged_curve;
use crate::route::verdict::HARDENED;
use crate::sources::isothermal_fit as fit;
use crate::transform::Product;
use recalesce_texts::route::why::{self as shared, margin as texts};

/// Accuracy of the factor, as a part of it.
const FACTOR_WITHIN: f64 = 5e-4;
/// Beyond this the factor is none that solves anything.
const FAR: f64 = 0.02;

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::TimeTaken => time_taken(w)?,
        Quantity::TimeAllowed => {
            let margin = &w.quench()?.margin;
            let passing_s = margin.arrival_s - margin.clock_s;
            Derivation::new(texts::TIME_ALLOWED, "t_may", passing_s * margin.factor, "s")
                .by(passing(w)?, |x| x.get("t") * x.get("f"))
                .how(texts::TIME_ALLOWED_HOW)
        }
        Quantity::Factor => factor(w)?,
        Quantity::FactorEnd { is_least } => factor_end(is_least, w)?,
        Quantity::Seconds => seconds(w)?,
        _ => return None,
    })
}

fn time_taken(w: &Workings<'_>) -> Option<Derivation> {
    let margin = &w.quench()?.margin;
    Some(
        Derivation::new(
            texts::TIME_TAKEN,
            "t",
            margin.arrival_s - margin.clock_s,
            "s",
        )
        .by(
            vec![
                given("t_n", texts::PASSES_NOSE, margin.arrival_s, "s"),
                given("t_A", texts::PASSES_A1, margin.clock_s, "s"),
            ],
            |x| x.get("t_n") - x.get("t_A"),
        )
        .how(texts::time_taken_how(margin.product.name(), margin.nose_c))
        .errs(texts::TIME_TAKEN_ERROR),
    )
}

fn passing(w: &Workings<'_>) -> Option<Vec<Input>> {
    let margin = &w.quench()?.margin;
    Some(vec![
        w.input(
            "t",
            texts::TAKEN,
            margin.arrival_s - margin.clock_s,
            "s",
            Quantity::TimeTaken,
        ),
        w.input(
            "f",
            texts::FACTOR_SLOWER,
            margin.factor,
            "",
            Quantity::Factor,
        ),
    ])
}

fn seconds(w: &Workings<'_>) -> Option<Derivation> {
    let margin = &w.quench()?.margin;
    let mut inputs = passing(w)?;
    let may = inputs.iter().map(|input| input.symbol.value).product();
    inputs.truncate(1);
    inputs.push(w.input("t_may", texts::ALLOWED, may, "s", Quantity::TimeAllowed));
    Some(
        Derivation::new(texts::SECONDS_TO_SPARE, "Δt", margin.seconds, "s")
            .by(inputs, |x| x.get("t_may") - x.get("t"))
            .source(&[&fit::SOURCE])
            .errs(fit::NOSES_LEFT_OUT.words()),
    )
}

fn factor(w: &Workings<'_>) -> Option<Derivation> {
    let quench = w.quench()?;
    let mut inputs = Vec::new();
    for curve in &quench.isothermal.products {
        let product = Product::ALL
            .into_iter()
            .find(|p| curve.product == (*p).into());
        if let Some(product) = product {
            inputs.push(w.input(
                format!("t_{}", product.name()),
                shared::nose_of(product.name()),
                curve.nose_s,
                "s",
                Quantity::NoseTime(product),
            ));
        }
    }
    let factor = quench.margin.factor;
    let derivation = Derivation::new(texts::FACTOR, "f", factor, "")
        .from(inputs)
        .how(texts::factor_how())
        .source(&[&fit::SOURCE])
        .errs(fit::HALF_RATES_LEFT_OUT.words());
    let (kinetics, curve) = (
        w.kinetics()?.clone(),
        judged_curve(w.route, w.outcome, w.kinetics()?)?,
    );
    let stretched = |factor: f64| {
        curve
            .time_s
            .iter()
            .map(|time| factor * time)
            .collect::<Vec<_>>()
    };
    let finer = kinetics
        .along(&stretched(factor), &curve.temperature_c)
        .ok()?;
    let finer = finer.fractions.hardened();
    let hardens = move |factor: f64| {
        let time_s: Vec<f64> = curve.time_s.iter().map(|time| factor * time).collect();
        let found = kinetics.hardened(&time_s, &curve.temperature_c);
        found.unwrap_or(f64::NAN)
    };
    let zero =
        Formula::symbol("f", factor).curve("h", hardens.clone()) - Formula::constant(HARDENED);
    let within = [-FACTOR_WITHIN, FACTOR_WITHIN]
        .map(|off| (hardens(factor * (1.0 + off)) - hardens(factor)).abs())
        .into_iter()
        .fold(0.0, f64::max);
    // A quench that is faster or slower than is sought has its factor at the end of the range.
    if zero.evaluate().abs() > FAR {
        return Some(derivation);
    }
    Some(derivation.solves(zero, within, texts::factor_solves(finer)))
}

fn factor_end(is_least: bool, w: &Workings<'_>) -> Option<Derivation> {
    let margin = &w.quench()?.margin;
    let pick = |[least, most]: [f64; 2]| if is_least { least } else { most };
    let mut inputs = vec![w.input(
        "f",
        texts::FACTOR_EXPECTED,
        margin.factor,
        "",
        Quantity::Factor,
    )];
    for (i, (name, band)) in margin.sources.known().enumerate() {
        inputs.push(given(
            format!("b_{}", i + 1),
            texts::factor_on_it_by(name),
            pick(band),
            "",
        ));
    }
    let count = inputs.len() - 1;
    let title = if is_least {
        texts::LEAST_FACTOR
    } else {
        texts::MOST_FACTOR
    };
    Some(
        Derivation::new(title, "f_end", pick(margin.factor_band), "")
            .by(inputs, |x| {
                let squares = (1..=count).map(|i| x.get(&format!("b_{i}")).ln().powi(2));
                let sum = squares.reduce(|sum, square| sum + square);
                let width = sum.unwrap_or(Formula::Constant(0.0)).sqrt();
                x.get("f") * if is_least { -width } else { width }.exp()
            })
            .how(texts::FACTOR_END_HOW)
            .errs(texts::FACTOR_END_ERROR),
    )
}
