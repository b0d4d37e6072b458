//! What becomes ferrite, pearlite and bainite on the way down, by how old each has grown.

use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::heat::CoolingCurve;
use crate::numeric::formula::{Formula, Number};
use crate::sources::isothermal_fit as fit;
use crate::sources::{kirkaldy_venugopalan_1984, li_1998};
use crate::transform::{Kinetics, Product};
use recalesce_texts::route::why::{self as shared, parts as texts};

/// How far an age may be from the sum of small holds, as a part of it.
const AGE_WITHIN: f64 = 0.01;
/// Longest hold of that sum, K and as a part of the time between two points of the curve.
const HOLD_K: f64 = 0.25;
const MOST_HOLDS: f64 = 400.0;
/// How far a share may be from the one found in finer steps.
const SHARE_WITHIN: f64 = 0.005;
/// Into how many pieces the finer steps divide each piece of the curve.
const FINER: f64 = 8.0;

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::Part(product) => part(product, w)?,
        Quantity::Age(product) => age(product, w)?,
        _ => return None,
    })
}

const fn symbol(product: Product) -> &'static str {
    match product {
        Product::Ferrite => "x_F",
        Product::Pearlite => "x_P",
        Product::Bainite => "x_B",
    }
}

const fn place(product: Product) -> usize {
    match product {
        Product::Ferrite => 0,
        Product::Pearlite => 1,
        Product::Bainite => 2,
    }
}

/// The curve with each of its pieces divided into so many.
fn divided(curve: &CoolingCurve, pieces: f64) -> [Vec<f64>; 2] {
    let count = pieces.clamp(1.0, 100.0) as u32;
    [&curve.time_s, &curve.temperature_c].map(|column| {
        let between = column.windows(2).flat_map(|pair| {
            let (from, to) = match pair {
                [from, to] => (*from, *to),
                _ => (f64::NAN, f64::NAN),
            };
            (0..count).map(move |i| from + (to - from) * f64::from(i) / f64::from(count))
        });
        between.chain(column.last().copied()).collect()
    })
}

fn part(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let fractions = &w.quench()?.fractions;
    let transformed = w.transformed.as_ref()?;
    let kinetics = w.kinetics()?;
    let title = texts::after_quench(product.name());
    let derivation = Derivation::new(title, symbol(product), fractions.of(product), "")
        .source(&[
            &fit::SOURCE,
            &kirkaldy_venugopalan_1984::SOURCE,
            &li_1998::SOURCE,
        ])
        .errs(fit::HALF_RATES_LEFT_OUT.words());
    let age = *transformed.ages.get(place(product))?;
    let mut inputs = vec![w.input(
        "S",
        texts::age_at_end(product.name()),
        age,
        "",
        Quantity::Age(product),
    )];
    let left = w.outcome.soak.end.ferrite_volume_fraction.clamp(0.0, 1.0);
    let carbide = kinetics.austenite().undissolved_carbide_volume_fraction;
    let films = transformed.boundary_carbide.volume_fraction;
    let not_austenite = [
        ("u_F", texts::FERRITE_OF_SOAK, left),
        ("u_K", texts::CARBIDE_OF_REST, carbide),
        ("u_B", texts::BOUNDARY_CARBIDE, films),
    ];
    let there = not_austenite.into_iter().filter(|(.., part)| *part > 0.0);
    let there: Vec<_> = there.collect();
    inputs.extend(
        there
            .iter()
            .map(|(symbol, name, part)| given(*symbol, *name, *part, "")),
    );
    let limit = kinetics.ferrite_limit();
    let is_ferrite = product == Product::Ferrite;
    if is_ferrite {
        inputs.push(given("l", texts::FERRITE_LIMIT, limit, ""));
    }
    let austenite = |x: &super::Letters<'_>| {
        let parts = there
            .iter()
            .map(|(symbol, ..)| Formula::constant(1.0) - x.get(symbol));
        parts.reduce(|product, part| product * part)
    };
    let others = Product::ALL.into_iter().filter(|other| *other != product);
    let is_alone = others
        .map(|other| transformed.fractions.of(other))
        .all(|part| part == 0.0);
    if is_alone {
        let shape = kinetics.clone();
        let of_age = move |age| shape.fraction_at_age(product, age);
        let law = |x: &super::Letters<'_>| {
            let mut part = x.get("S").curve("F", of_age);
            if is_ferrite {
                part = x.get("l") * part;
            }
            if let Some(austenite) = austenite(x) {
                part = austenite * part;
            }
            if is_ferrite && left > 0.0 {
                part = x.get("u_F") + part;
            }
            part
        };
        return Some(derivation.by(inputs, law).how(texts::alone_how()));
    }
    let (kinetics, curve) = (kinetics.clone(), w.curve()?.clone());
    let finer = move |pieces: f64| {
        let [time_s, temperature_c] = divided(&curve, pieces);
        let found = kinetics.along(&time_s, &temperature_c);
        found.map_or(f64::NAN, |found| found.fractions.of(product))
    };
    let share = Formula::symbol("y", transformed.fractions.of(product));
    Some(
        derivation
            .from(inputs)
            .how(texts::beside_others_how())
            .solves(
                share - Formula::symbol("n", FINER).curve("y", finer),
                SHARE_WITHIN,
                texts::SHARE_SOLVES,
            ),
    )
}

/// Start times that pass along a curve, as a sum of short holds.
fn summed(kinetics: &Kinetics, product: Product, ms_c: f64, curve: &CoolingCurve) -> f64 {
    let mut sum = 0.0;
    let pieces = curve.time_s.windows(2).zip(curve.temperature_c.windows(2));
    for (time, temperature) in pieces {
        let (&[from_s, to_s], &[from_c, to_c]) = (time, temperature) else {
            continue;
        };
        let count = ((to_c - from_c).abs() / HOLD_K)
            .ceil()
            .clamp(1.0, MOST_HOLDS) as u32;
        for i in 0..count {
            let here_c = from_c + (to_c - from_c) * (f64::from(i) + 0.5) / f64::from(count);
            // Once martensite has begun the rest is left to it.
            if here_c < ms_c {
                return sum;
            }
            sum += (to_s - from_s) / f64::from(count) / kinetics.start_s(product, here_c);
        }
    }
    sum
}

fn age(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let transformed = w.transformed.as_ref()?;
    let value = *transformed.ages.get(place(product))?;
    let nose = w
        .quench()?
        .isothermal
        .products
        .iter()
        .find(|curve| curve.product == product.into());
    let mut inputs: Vec<Input> = Vec::new();
    if let Some(curve) = nose {
        inputs.push(w.input(
            "t_nose",
            shared::nose_of(product.name()),
            curve.nose_s,
            "s",
            Quantity::NoseTime(product),
        ));
    }
    let (kinetics, curve) = (w.kinetics()?.clone(), w.curve()?.clone());
    let title = texts::age_after_quench(product.name());
    let derivation = Derivation::new(title, "S", value, "")
        .from(inputs)
        .how(texts::AGE_HOW)
        .source(&[&fit::SOURCE])
        .errs(fit::NOSES_LEFT_OUT.words());
    if value <= 0.0 {
        return Some(derivation);
    }
    let ms_c = transformed.ms_c;
    let sum = move |_| summed(&kinetics, product, ms_c, &curve);
    Some(derivation.solves(
        Formula::symbol("S", value) - Formula::constant(HOLD_K).curve("Σ", sum),
        (AGE_WITHIN * value).max(1e-9),
        texts::AGE_SOLVES,
    ))
}
