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
use recalesce_texts::route::why::{self as shared, starts as texts};

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
        texts::GRAIN_NUMBER,
        w.outcome.soak.end.grain_astm,
        "ASTM",
        Quantity::Grain,
    )
}

fn ms(w: &Workings<'_>) -> Option<Derivation> {
    let mut inputs = w.dissolved_inputs(&MS_ELEMENTS);
    inputs.push(grain(w));
    Some(
        Derivation::new(texts::MS, "M_s", w.kinetics()?.ms_c(), "°C")
            .by(inputs, |x| {
                ms_of_content(|element| x.content(element), x.get("G"))
            })
            .how(texts::MS_HOW)
            .source(&[&van_bohemen_2012::SOURCE, &lee_park_2013::SOURCE])
            .valid(texts::MS_VALIDITY)
            .errs(texts::MS_ERROR),
    )
}

/// Contents with which the kinetics count.
fn counted_inputs(elements: &[Element], w: &Workings<'_>) -> Vec<Input> {
    let steel = counted(w.dissolved());
    super::contents(elements, &steel, texts::counted, |element| {
        w.key(Quantity::Dissolved(element))
    })
}

fn bs(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new(texts::BS, "B_s", w.kinetics()?.bs_c(), "°C")
            .by(counted_inputs(&MS_ELEMENTS, w), |x| {
                bs_c_of(|element| x.content(element))
            })
            .source(&[&van_bohemen_2012::SOURCE])
            .valid(texts::MS_VALIDITY)
            .errs(texts::BS_ERROR),
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
            Derivation::new(texts::FERRITE_LIMIT, "T_0", limit_c, "°C")
                .by(counted_inputs(&elements, w), |x| {
                    ac3_c_of(|element| x.content(element))
                })
                .how(texts::FERRITE_LIMIT_HOW)
                .source(&[&andrews_1965::SOURCE])
                .valid(texts::FERRITE_LIMIT_VALIDITY)
                .errs(texts::FERRITE_LIMIT_ERROR)
        }
        Product::Pearlite => {
            let elements = [Element::Mn, Element::Si, Element::Cr, Element::Ni];
            Derivation::new(texts::PEARLITE_LIMIT, "T_0", limit_c, "°C")
                .by(counted_inputs(&elements, w), |x| {
                    ae1_c_of(|element| x.content(element))
                })
                .how(texts::PEARLITE_LIMIT_HOW)
                .source(&[&grange_1961::SOURCE])
                .valid(texts::PEARLITE_LIMIT_VALIDITY)
        }
        Product::Bainite => Derivation {
            title: texts::BAINITE_LIMIT.to_owned(),
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
        inputs.push(given("l", texts::LATER_BY_END_QUENCH, later, ""));
    }
    let carbide = kinetics.austenite().undissolved_carbide_volume_fraction;
    if product == Product::Pearlite {
        inputs.push(w.input(
            "x_K",
            shared::CARBIDE_LEFT,
            carbide,
            "",
            Quantity::CarbideVolume,
        ));
    }
    Some(
        Derivation::new(texts::start_term(product.name()), "p", -ln_front, "")
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
            .how(texts::START_TERM_HOW)
            .source(&[&fit::SOURCE])
            .valid(texts::START_VALIDITY)
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
            texts::nose_time(product.name()),
            "t_nose",
            curve.nose_s,
            "s",
        )
        .by(
            vec![
                w.input(
                    "p",
                    texts::STEEL_AND_GRAIN,
                    -ln_front,
                    "",
                    Quantity::StartTerm(product),
                ),
                given("T", texts::TEMPERATURE_OF_NOSE, curve.nose_c, "°C"),
                w.input(
                    "T_0",
                    texts::UPPER_LIMIT,
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
        .how(texts::NOSE_TIME_HOW)
        .source(&[&fit::SOURCE])
        .valid(texts::START_VALIDITY)
        .errs(fit::NOSES_LEFT_OUT.words()),
    )
}
