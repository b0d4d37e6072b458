//! From the austenite to what the quench makes of it.

use super::starts::MS_ELEMENTS;
use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::numeric::formula::{Formula, Number};
use crate::route::outcome::Step;
use crate::route::plan::Cold;
use crate::sources::{koistinen_marburger_1959, van_bohemen_2012};
use crate::transform::{Product, left_at_of, rate_parameter_of, stabilisation_k};
use recalesce_texts::route::why::{self as shared, quench as texts, starts};

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::MsOfRest => {
            let ms_c = w.transformed.as_ref()?.ms_c;
            Derivation::new(texts::MS_OF_REST, "M_s", ms_c, "°C")
                .from(vec![w.input(
                    "M_s0",
                    texts::MS_OF_WHOLE,
                    w.kinetics()?.ms_c(),
                    "°C",
                    Quantity::Ms,
                )])
                .how(texts::MS_OF_REST_HOW)
                .errs(starts::MS_ERROR)
        }
        Quantity::RateParameter => Derivation::new(texts::RATE_PARAMETER, "α", rate(w), "1/K")
            .by(w.dissolved_inputs(&MS_ELEMENTS), |x| {
                rate_parameter_of(|element| x.content(element))
            })
            .how(texts::RATE_PARAMETER_HOW)
            .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
            .valid(starts::MS_VALIDITY)
            .errs(texts::RATE_PARAMETER_ERROR),
        Quantity::Martensite => martensite(w)?,
        Quantity::Austenite(Step::Quench) => austenite(w)?,
        Quantity::Austenite(Step::Cold) => after_cold(w)?,
        Quantity::Hardened => hardened(w)?,
        _ => return None,
    })
}

fn rate(w: &Workings<'_>) -> f64 {
    crate::transform::rate_parameter_per_k(w.dissolved())
}

/// What each product of diffusion and carbide take of the piece.
fn taken(w: &Workings<'_>) -> Option<Vec<Input>> {
    let x = &w.quench()?.fractions;
    Some(vec![
        w.input(
            "x_F",
            shared::FERRITE,
            x.ferrite,
            "",
            Quantity::Part(Product::Ferrite),
        ),
        w.input(
            "x_P",
            shared::PEARLITE,
            x.pearlite,
            "",
            Quantity::Part(Product::Pearlite),
        ),
        w.input(
            "x_B",
            shared::BAINITE,
            x.bainite,
            "",
            Quantity::Part(Product::Bainite),
        ),
        w.input(
            "x_K",
            texts::CARBIDE_WITH_BOUNDARIES,
            x.carbide,
            "",
            Quantity::CarbideVolume,
        ),
    ])
}

/// What goes into martensite and retained austenite.
fn below_ms(w: &Workings<'_>) -> Option<Vec<Input>> {
    let coldest_c = w
        .curve()?
        .temperature_c
        .iter()
        .copied()
        .fold(f64::INFINITY, f64::min);
    let mut inputs = taken(w)?;
    inputs.push(w.input(
        "α",
        shared::RATE_PARAMETER,
        rate(w),
        "1/K",
        Quantity::RateParameter,
    ));
    inputs.push(w.input(
        "M_s",
        texts::MS_OF_WHAT_IS_LEFT,
        w.transformed.as_ref()?.ms_c,
        "°C",
        Quantity::MsOfRest,
    ));
    inputs.push(given("T", texts::COLDEST_OF_QUENCH, coldest_c, "°C"));
    Some(inputs)
}

fn rest(x: &super::Letters<'_>) -> Formula {
    Formula::constant(1.0) - x.get("x_F") - x.get("x_P") - x.get("x_B") - x.get("x_K")
}

fn austenite(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new(
            texts::RETAINED_AUSTENITE,
            "x_A",
            w.quench()?.fractions.austenite,
            "",
        )
        .by(below_ms(w)?, |x| {
            rest(x) * left_at_of(x.get("α"), x.get("M_s"), x.get("T"))
        })
        .how(texts::BELOW_MS_HOW)
        .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
        .valid(starts::MS_VALIDITY)
        .errs(texts::AUSTENITE_ERROR),
    )
}

fn martensite(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new(
            texts::MARTENSITE,
            "x_M",
            w.quench()?.fractions.martensite,
            "",
        )
        .by(below_ms(w)?, |x| {
            let left = left_at_of(x.get("α"), x.get("M_s"), x.get("T"));
            rest(x) * (Formula::constant(1.0) - left)
        })
        .how(texts::BELOW_MS_HOW)
        .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
        .valid(starts::MS_VALIDITY)
        .errs(texts::AUSTENITE_ERROR),
    )
}

fn after_cold(w: &Workings<'_>) -> Option<Derivation> {
    let cold = w.outcome.cold.given()?;
    let planned = w.route.cold.unwrap_or(Cold::FIRST_OFFERED);
    let step = w
        .hardening
        .as_ref()?
        .cold_step(w.quenched.as_ref()?, &planned);
    let lag_k = stabilisation_k(w.dissolved().c, &step);
    let before_x = cold.austenite_before;
    let before = match cold.snap {
        Some(_) => given("x_0", texts::AUSTENITE_AFTER_SNAP, before_x, ""),
        None => w.input(
            "x_0",
            shared::AUSTENITE_BEFORE,
            before_x,
            "",
            Quantity::Austenite(Step::Quench),
        ),
    };
    Some(
        Derivation::new(texts::AUSTENITE_AFTER_COLD, "x_A", cold.austenite_after, "")
            .by(
                vec![
                    before,
                    w.input(
                        "α",
                        shared::RATE_PARAMETER,
                        rate(w),
                        "1/K",
                        Quantity::RateParameter,
                    ),
                    given("T_0", texts::COLDEST_SO_FAR, step.coldest_before_c, "°C"),
                    given("L", texts::LAG, lag_k, "K"),
                    given("T", texts::COLD_BATH, cold.temperature_c, "°C"),
                ],
                |x| x.get("x_0") * left_at_of(x.get("α"), x.get("T_0") - x.get("L"), x.get("T")),
            )
            .how(texts::AFTER_COLD_HOW)
            .source(&[
                &crate::sources::harris_cohen_1949::SOURCE,
                &koistinen_marburger_1959::SOURCE,
            ])
            .errs(texts::AFTER_COLD_ERROR),
    )
}

fn hardened(w: &Workings<'_>) -> Option<Derivation> {
    let x = w.quench()?.fractions;
    let mut inputs = vec![
        w.input(
            "x_M",
            shared::MARTENSITE,
            x.martensite,
            "",
            Quantity::Martensite,
        ),
        w.input(
            "x_A",
            shared::RETAINED_AUSTENITE,
            x.austenite,
            "",
            Quantity::Austenite(Step::Quench),
        ),
    ];
    inputs.extend(taken(w)?.into_iter().take(3));
    Some(
        Derivation::new(texts::HOW_MUCH_HARDENED, "h", x.hardened(), "")
            .by(inputs, |x| {
                let hard = || x.get("x_M") + x.get("x_A");
                hard() / (hard() + x.get("x_F") + x.get("x_P") + x.get("x_B"))
            })
            .how(texts::HARDENED_HOW),
    )
}
