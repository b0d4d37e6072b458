//! From the austenite to what the quench makes of it.

use super::starts::{MS_ELEMENTS, MS_ERROR, MS_VALIDITY};
use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::numeric::formula::{Formula, Number};
use crate::route::outcome::Step;
use crate::route::plan::Cold;
use crate::sources::{koistinen_marburger_1959, van_bohemen_2012};
use crate::transform::{Product, left_at_of, rate_parameter_of, stabilisation_k};

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::MsOfRest => {
            let ms_c = w.transformed.as_ref()?.ms_c;
            Derivation::new("Start of martensite of the austenite left", "M_s", ms_c, "°C")
                .from(vec![w.input("M_s0", "start of martensite of the whole", w.kinetics()?.ms_c(), "°C", Quantity::Ms)])
                .how("The same law for the austenite that is left: ferrite that has formed before drives its carbon into it, carbide on grain boundaries takes some out.")
                .errs(MS_ERROR)
        }
        Quantity::RateParameter => {
            Derivation::new("Rate parameter of martensite", "α", rate(w), "1/K")
                .by(w.dissolved_inputs(&MS_ELEMENTS), |x| {
                    rate_parameter_of(|element| x.content(element))
                })
                .how("The mean of two published values, which together miss retained austenite by less than either.")
                .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
                .valid(MS_VALIDITY)
                .errs("retained austenite 1.5 vol % on plain steels, up to 4 vol % otherwise")
        }
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
            "ferrite",
            x.ferrite,
            "",
            Quantity::Part(Product::Ferrite),
        ),
        w.input(
            "x_P",
            "pearlite",
            x.pearlite,
            "",
            Quantity::Part(Product::Pearlite),
        ),
        w.input(
            "x_B",
            "bainite",
            x.bainite,
            "",
            Quantity::Part(Product::Bainite),
        ),
        w.input(
            "x_K",
            "carbide, with that on grain boundaries",
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
        "rate parameter",
        rate(w),
        "1/K",
        Quantity::RateParameter,
    ));
    inputs.push(w.input(
        "M_s",
        "start of martensite of what is left",
        w.transformed.as_ref()?.ms_c,
        "°C",
        Quantity::MsOfRest,
    ));
    inputs.push(given(
        "T",
        "coldest temperature of the quench",
        coldest_c,
        "°C",
    ));
    Some(inputs)
}

fn rest(x: &super::Letters<'_>) -> Formula {
    Formula::constant(1.0) - x.get("x_F") - x.get("x_P") - x.get("x_B") - x.get("x_K")
}

const MARTENSITE: &str = "What is still austenite at Ms turns by the law of martensite: only cooling goes on with it, not time.";

fn austenite(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new(
            "Retained austenite",
            "x_A",
            w.quench()?.fractions.austenite,
            "",
        )
        .by(below_ms(w)?, |x| {
            rest(x) * left_at_of(x.get("α"), x.get("M_s"), x.get("T"))
        })
        .how(MARTENSITE)
        .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
        .valid(MS_VALIDITY)
        .errs("1.5 vol % on plain steels, up to 4 vol % otherwise"),
    )
}

fn martensite(w: &Workings<'_>) -> Option<Derivation> {
    Some(
        Derivation::new("Martensite", "x_M", w.quench()?.fractions.martensite, "")
            .by(below_ms(w)?, |x| {
                let left = left_at_of(x.get("α"), x.get("M_s"), x.get("T"));
                rest(x) * (Formula::constant(1.0) - left)
            })
            .how(MARTENSITE)
            .source(&[&koistinen_marburger_1959::SOURCE, &van_bohemen_2012::SOURCE])
            .valid(MS_VALIDITY)
            .errs("1.5 vol % on plain steels, up to 4 vol % otherwise"),
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
        Some(_) => given(
            "x_0",
            "retained austenite after the snap temper",
            before_x,
            "",
        ),
        None => w.input(
            "x_0",
            "retained austenite before",
            before_x,
            "",
            Quantity::Austenite(Step::Quench),
        ),
    };
    Some(
        Derivation::new("Retained austenite after the cold bath", "x_A", cold.austenite_after, "")
            .by(
                vec![
                    before,
                    w.input("α", "rate parameter", rate(w), "1/K", Quantity::RateParameter),
                    given("T_0", "coldest temperature so far", step.coldest_before_c, "°C"),
                    given("L", "lag by waiting at room, and warm", lag_k, "K"),
                    given("T", "cold bath", cold.temperature_c, "°C"),
                ],
                |x| x.get("x_0") * left_at_of(x.get("α"), x.get("T_0") - x.get("L"), x.get("T")),
            )
            .how("The law of martensite goes on from the coldest temperature so far, less a lag by waiting.")
            .source(&[&crate::sources::harris_cohen_1949::SOURCE, &koistinen_marburger_1959::SOURCE])
            .errs("a trend; the numbers of the stabilisation are from memory"),
    )
}

fn hardened(w: &Workings<'_>) -> Option<Derivation> {
    let x = w.quench()?.fractions;
    let mut inputs = vec![
        w.input("x_M", "martensite", x.martensite, "", Quantity::Martensite),
        w.input(
            "x_A",
            "retained austenite",
            x.austenite,
            "",
            Quantity::Austenite(Step::Quench),
        ),
    ];
    inputs.extend(taken(w)?.into_iter().take(3));
    Some(
        Derivation::new("How much hardened", "h", x.hardened(), "")
            .by(inputs, |x| {
                let hard = || x.get("x_M") + x.get("x_A");
                hard() / (hard() + x.get("x_F") + x.get("x_P") + x.get("x_B"))
            })
            .how("Martensite and the austenite that it left, of all but carbide."),
    )
}
