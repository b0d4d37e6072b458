//! The tempers: hardness and austenite after each.

use super::hardness::{hv_of_hrc, mixture_inputs, soft};
use super::stages::in_stages;
use super::workings::Workings;
use super::{Derivation, Quantity, given};
use crate::hardness::{
    Mixed, Softening, TemperedParts, beside, equivalent_c_of, half_lives_of, hollomon_jaffe_of,
    martensite_alone_hv, mixed_hv,
};
use crate::numeric::formula::Number;
use crate::route::outcome::Step;
use crate::sources::{
    astm_e140, jimenez_melero_2013, krauss_1999, tempering_stages, tool_steel_tempering,
};
use crate::transform::Fractions;
use recalesce_texts::route::why::{self as shared, temper as texts};

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    match quantity {
        Quantity::Parameter(temper) => parameter(temper, w),
        Quantity::AloneHv(Step::Temper(count)) => alone(count, w),
        Quantity::Austenite(Step::Temper(count)) => austenite(count, w),
        Quantity::Hv(Step::Temper(count)) => hv(count, w),
        _ => None,
    }
}

fn alone(count: usize, w: &Workings<'_>) -> Option<Derivation> {
    let stages = in_stages(count, w)?;
    let temper = count.checked_sub(1)?;
    Some(
        Derivation::new(texts::alone(count), "HV_M", stages.alone_hv, "HV")
            .by(
                vec![
                    w.input(
                        "H_C",
                        texts::MARTENSITE_BY_CARBON,
                        stages.parts.quenched_hrc,
                        "HRC",
                        Quantity::MartensiteHrc,
                    ),
                    w.input(
                        "F",
                        texts::TEMPERING_TAKES,
                        stages.fall_hrc,
                        "HRC",
                        Quantity::Fall(temper),
                    ),
                    given("u", texts::USUAL_AUSTENITE_LEFT, stages.usual, ""),
                ],
                |x| {
                    martensite_alone_hv(
                        (x.get("H_C") - x.get("F")).curve("HV", hv_of_hrc),
                        x.get("u"),
                    )
                },
            )
            .how(texts::ALONE_HOW)
            .source(&[&tempering_stages::SOURCE, &astm_e140::SOURCE])
            .errs(tempering_stages::LEFT_OUT.words()),
    )
}

fn austenite(count: usize, w: &Workings<'_>) -> Option<Derivation> {
    let temper = count.checked_sub(1)?;
    let step = w.route.tempers.get(temper)?;
    let [before, after] = [temper, count].map(|count| {
        let stages = in_stages(count, w)?;
        Some(stages.parts.constituents.austenite * stages.parts.undecomposed)
    });
    let (before, after) = (before?, after?);
    let came_from = match temper {
        0 => Quantity::Austenite(w.before_tempers()),
        count => Quantity::Austenite(Step::Temper(count)),
    };
    let anchor_k = in_stages(count, w)?.parts.anchor_k;
    Some(
        Derivation::new(texts::austenite(count), "x_A", after, "")
            .by(
                vec![
                    w.input("x_0", shared::AUSTENITE_BEFORE, before, "", came_from),
                    given("T_h", texts::HALF_LEFT_AFTER_HOUR, anchor_k, "K"),
                    given("T", texts::TEMPERATURE_OF_TEMPER, step.temperature_c, "°C"),
                    given("t", texts::TIME_OF_TEMPER, 60.0 * step.time_min, "s"),
                ],
                |x| {
                    let half_lives = half_lives_of(x.get("T_h"), x.get("T"), x.get("t"));
                    x.get("x_0") * (-half_lives).exp2()
                },
            )
            .source(&[&jimenez_melero_2013::SOURCE])
            .errs(texts::AUSTENITE_ERROR),
    )
}

fn hv(count: usize, w: &Workings<'_>) -> Option<Derivation> {
    let value = w.hardness(Step::Temper(count))?.hv;
    let (_, parts) = w.tempered(count)?;
    let title = shared::hardness_after_temper(count);
    let Some(stages) = in_stages(count, w) else {
        return table_hv(count, value, &parts, w);
    };
    let x = &parts.constituents;
    let left = x.austenite * parts.undecomposed;
    let now = Fractions {
        martensite: x.martensite + (x.austenite - left),
        austenite: left,
        ..*x
    };
    let tempered_hv = hv_of_hrc(parts.quenched_hrc - stages.fall_hrc);
    let is_known = w.hardening.is_some();
    let origin = is_known.then_some(Quantity::Austenite(Step::Temper(count)));
    let mut inputs = mixture_inputs(w, &now, parts.soft_hv, [None, origin]);
    inputs.push(w.input(
        "HV_M",
        texts::TEMPERED_ALONE,
        stages.alone_hv,
        "HV",
        Quantity::AloneHv(Step::Temper(count)),
    ));
    inputs.push(given(
        "x_N",
        texts::FRESH_MARTENSITE,
        parts.fresh_martensite,
        "",
    ));
    inputs.push(given("HV_N", texts::THAT_MARTENSITE, stages.fresh_hv, "HV"));
    inputs.push(given(
        "HV_0",
        texts::TEMPERED_WITH_AUSTENITE,
        tempered_hv,
        "HV",
    ));
    Some(
        Derivation::new(title, "HV", value, "HV")
            .by(inputs, |x| {
                mixed_hv(Mixed {
                    martensite: x.get("x_M"),
                    alone_hv: x.get("HV_M"),
                    fresh: x.get("x_N"),
                    fresh_hv: x.get("HV_N"),
                    austenite: x.get("x_A"),
                    carbide: x.get("x_K"),
                    soft: soft(x, beside(&now, parts.fresh_martensite), &x.get("HV_0")),
                })
            })
            .how(texts::mixture_how())
            .source(&[&krauss_1999::SOURCE, &tempering_stages::SOURCE])
            .valid(texts::STAGE_VALIDITY)
            .errs(tempering_stages::LEFT_OUT.words()),
    )
}

/// The temperature at which the table is read, and its hardness there.
fn table_hv(
    count: usize,
    value: f64,
    parts: &TemperedParts,
    w: &Workings<'_>,
) -> Option<Derivation> {
    let Softening::Table { table, parameter } = parts.softening else {
        return None;
    };
    let parameter = parameter?;
    let temper = count.checked_sub(1)?;
    let equivalent_c = equivalent_c_of(parameter, table.time_h);
    Some(
        Derivation::new(shared::hardness_after_temper(count), "HV", value, "HV")
            .from(vec![
                w.input(
                    "P",
                    texts::PARAMETER_THAT_IS_READ,
                    parameter,
                    "",
                    Quantity::Parameter(temper),
                ),
                given("T_e", texts::TEMPER_OF_TABLE, equivalent_c, "°C"),
            ])
            .how(texts::table_how(table.grade, table.time_h))
            .source(&[&tool_steel_tempering::SOURCE])
            .errs(table.error_words()),
    )
}

fn parameter(temper: usize, w: &Workings<'_>) -> Option<Derivation> {
    let value_of = |count: usize| match w.tempered(count)?.1.softening {
        Softening::Table { table, parameter } => Some((table, parameter?)),
        Softening::Stages { .. } => None,
    };
    let step = w.route.tempers.get(temper)?;
    let (table, after) = value_of(temper + 1)?;
    let temperature_k = step.temperature_c + 273.15;
    let before_h = value_of(temper).map_or(0.0, |(_, before)| {
        f64::powf(
            10.0,
            before / temperature_k - tool_steel_tempering::HOLLOMON_JAFFE_HOURS,
        )
    });
    Some(
        Derivation::new(texts::parameter(temper + 1), "P", after, "")
            .by(
                vec![
                    given("T", texts::TEMPERATURE_OF_TEMPER, temperature_k, "K"),
                    given("t_0", texts::WENT_BEFORE, before_h, "h"),
                    given("t", texts::TIME_OF_TEMPER, step.time_min / 60.0, "h"),
                ],
                |x| hollomon_jaffe_of(x.get("T"), x.get("t_0") + x.get("t")),
            )
            .source(&[&tool_steel_tempering::SOURCE])
            .errs(table.error_words()),
    )
}
