//! When and where the austenite begins to turn: martensite, bainite, and the noses.

use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::numeric::formula::{Formula, Number};
use crate::sources::andrews_1965::{self, ac3_c_of};
use crate::sources::grange_1961::{self, ae1_c_of};
use crate::sources::isothermal_fit::{self as fit, START_TIMES, start_rate_of};
use crate::sources::lee_park_2013;
use crate::sources::van_bohemen_2012::{self, bs_c_of};
use crate::steel::Element;
use crate::transform::{Product, carbide_factor, counted, ms_of_content};

pub(super) const MS_ELEMENTS: [Element; 6] = [
    Element::C,
    Element::Mn,
    Element::Si,
    Element::Cr,
    Element::Ni,
    Element::Mo,
];
const START_ELEMENTS: [Element; 8] = [
    Element::C,
    Element::Mn,
    Element::Si,
    Element::Ni,
    Element::Cr,
    Element::Mo,
    Element::W,
    Element::V,
];
const START_VALIDITY: &str =
    "0.15 to 1.15 % C, up to 2.1 % Mn, 2 % Cr, 3.5 % Ni, 0.6 % Mo in solution";
pub(super) const MS_VALIDITY: &str =
    "0.1 to 1.3 % C, up to 2.5 % Mn or Cr, 2.3 % Si, 3.5 % Ni, 0.8 % Mo in solution";
pub(super) const MS_ERROR: &str = "18 K (rms) up to 0.7 % C in solution, 33 K above";

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::Ms => ms(w)?,
        Quantity::Bs => bs(w)?,
        Quantity::UpperLimit(product) => upper_limit(product, w)?,
        Quantity::StartTerm(product) => start_term(product, w)?,
        Quantity::NoseTime(product) => nose_time(product, w)?,
        _ => return None,
    })
}

fn grain(w: &Workings<'_>) -> Input {
    w.input(
        "G",
        "grain number",
        w.outcome.soak.end.grain_astm,
        "ASTM",
        Quantity::Grain,
    )
}

fn ms(w: &Workings<'_>) -> Option<Derivation> {
    let mut inputs = w.dissolved_inputs(&MS_ELEMENTS);
    inputs.push(grain(w));
    Some(
        Derivation::new("Start of martensite", "M_s", w.kinetics()?.ms_c(), "°C")
            .by(inputs, |x| {
                ms_of_content(|element| x.content(element), x.get("G"))
            })
            .how("Of what is dissolved, not of the steel; a coarser grain begins sooner.")
            .source(&[&van_bohemen_2012::SOURCE, &lee_park_2013::SOURCE])
            .valid(MS_VALIDITY)
            .errs(MS_ERROR),
    )
}

/// Contents with which the kinetics count.
fn counted_inputs(elements: &[Element], w: &Workings<'_>) -> Vec<Input> {
    let steel = counted(w.dissolved());
    super::contents(
        elements,
        &steel,
        "that counts, at least what scrap leaves",
        |element| w.key(Quantity::Dissolved(element)),
    )
}

fn bs(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new("Start of bainite", "B_s", w.kinetics()?.bs_c(), "°C")
            .by(counted_inputs(&MS_ELEMENTS, w), |x| {
                bs_c_of(|element| x.content(element))
            })
            .source(&[&van_bohemen_2012::SOURCE])
            .valid(MS_VALIDITY)
            .errs("19 K (rms) on 76 measured starts; this formula is recalled from memory"),
    )
}

fn upper_limit(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let (.., limit_c) = w.kinetics()?.start_law(product);
    Some(match product {
        Product::Ferrite => {
            let elements = [
                Element::C,
                Element::Ni,
                Element::Si,
                Element::V,
                Element::Mo,
                Element::W,
                Element::Mn,
                Element::Cr,
            ];
            Derivation::new("Upper limit of ferrite", "T_0", limit_c, "°C")
                .by(counted_inputs(&elements, w), |x| ac3_c_of(|element| x.content(element)))
                .how("A closed form in place of the computed A3: see the source file of the fit for what it costs.")
                .source(&[&andrews_1965::SOURCE])
                .valid("carbon under 0.6 %, low alloy")
                .errs("16 K")
        }
        Product::Pearlite => {
            let elements = [Element::Mn, Element::Si, Element::Cr, Element::Ni];
            Derivation::new("Upper limit of pearlite", "T_0", limit_c, "°C")
                .by(counted_inputs(&elements, w), |x| {
                    ae1_c_of(|element| x.content(element))
                })
                .how("A1 by a closed form, printed in °F; the clock of the quench starts here.")
                .source(&[&grange_1961::SOURCE])
                .valid("low alloy")
        }
        Product::Bainite => Derivation {
            title: "Upper limit of bainite".to_owned(),
            ..bs(w)?
        },
    })
}

fn start_term(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let kinetics = w.kinetics()?;
    let (_, ln_front, _) = kinetics.start_law(product);
    let law = *START_TIMES.get(match product {
        Product::Ferrite => 0,
        Product::Pearlite => 1,
        Product::Bainite => 2,
    })?;
    let mut inputs = counted_inputs(&START_ELEMENTS, w);
    inputs.push(grain(w));
    let later = w.later();
    if later != 0.0 {
        inputs.push(given(
            "l",
            "later by the end-quench test of the heat, as a logarithm",
            later,
            "",
        ));
    }
    let carbide = kinetics.austenite().undissolved_carbide_volume_fraction;
    if product == Product::Pearlite {
        inputs.push(w.input("x_K", "carbide left", carbide, "", Quantity::CarbideVolume));
    }
    Some(
        Derivation::new(
            format!(
                "What steel and grain make of the start of {}",
                product.name()
            ),
            "p",
            -ln_front,
            "",
        )
        .by(inputs, |x| {
            let term = law.composition_term_of(|element| x.content(element), x.get("G"));
            let term = if later == 0.0 {
                term
            } else {
                term + x.get("l")
            };
            if product == Product::Pearlite {
                term + carbide_factor(x.get("x_K")).ln()
            } else {
                term
            }
        })
        .how(
            "A logarithm of seconds; every element that is in solution slows it by its own factor.",
        )
        .source(&[&fit::SOURCE])
        .valid(START_VALIDITY)
        .errs(fit::NOSES_LEFT_OUT.words()),
    )
}

fn nose_time(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let kinetics = w.kinetics()?;
    let curves = &w.quench()?.isothermal.products;
    let curve = curves
        .iter()
        .find(|curve| curve.product == product.into())?;
    let (activation_k, ln_front, limit_c) = kinetics.start_law(product);
    Some(
        Derivation::new(
            format!("Nose of {}", product.name()),
            "t_nose",
            curve.nose_s,
            "s",
        )
        .by(
            vec![
                w.input(
                    "p",
                    "what steel and grain make of it",
                    -ln_front,
                    "",
                    Quantity::StartTerm(product),
                ),
                given("T", "temperature of the nose", curve.nose_c, "°C"),
                w.input(
                    "T_0",
                    "upper limit",
                    limit_c,
                    "°C",
                    Quantity::UpperLimit(product),
                ),
            ],
            |x| {
                let rate = start_rate_of(activation_k, -x.get("p"), &x.get("T"), x.get("T_0"));
                Formula::constant(1.0) / rate
            },
        )
        .how("The time to the first per cent at constant temperature, where it is shortest.")
        .source(&[&fit::SOURCE])
        .valid(START_VALIDITY)
        .errs(fit::NOSES_LEFT_OUT.words()),
    )
}
