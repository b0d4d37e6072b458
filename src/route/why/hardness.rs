//! Hardness as quenched, after the cold bath, and the band at the end.

use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::hardness::{
    Aggregate, Beside, Hardness, Mixed, Soft, aggregate_hv_of, as_quenched_martensite_hrc, beside,
    eutectoid_over_ferrite_hv, ferrite_hv_of, is_bainite_alone, martensite_alone_hv, mixed_hv,
    pearlite_part_of, usual_austenite,
};
use crate::numeric::formula::Formula;
use crate::route::outcome::Step;
use crate::sources::astm_a255_hardness::{self, FULL_MARTENSITE, hrc_of};
use crate::sources::grange_1961::{self, ae1_c_of};
use crate::sources::{astm_e140, eutectoid_isothermal, krauss_1999, maynier_1978, pickering_1978};
use crate::steel::Element;
use crate::transform::{Fractions, Product};
use recalesce_texts::route::why::{self as shared, hardness as texts};

/// Carbon up to which the standard's polynomial is used, wt %.
const POLYNOMIAL_TO_WT: f64 = 0.60;

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    match quantity {
        Quantity::MartensiteHrc => martensite_hrc(w),
        Quantity::MartensiteHv(step) => martensite_hv(step, w),
        Quantity::AloneHv(step @ (Step::Quench | Step::Cold)) => alone_hv(step, w),
        Quantity::ProductHv(product) => product_hv(product, w),
        Quantity::Hv(step @ (Step::Quench | Step::Cold)) => mixture_hv(step, w),
        Quantity::Hrc(step) => hrc(step, w),
        Quantity::FinalBand => final_band(w),
        _ => None,
    }
}

pub(super) fn hrc_of_hv(hv: f64) -> f64 {
    Hardness { hv }.hrc_carried()
}

pub(super) fn hv_of_hrc(hrc: f64) -> f64 {
    Hardness::from_hrc_carried(hrc).hv
}

fn of_carbon(carbon_wt: f64) -> f64 {
    as_quenched_martensite_hrc(carbon_wt).unwrap_or(f64::NAN)
}

fn carbon(w: &Workings<'_>) -> Input {
    w.input(
        "C",
        texts::CARBON_IN_SOLUTION,
        w.dissolved().c,
        "wt %",
        Quantity::Dissolved(Element::C),
    )
}

fn martensite_hrc(w: &Workings<'_>) -> Option<Derivation> {
    let carbon_wt = w.dissolved().c;
    let value = as_quenched_martensite_hrc(carbon_wt).ok()?;
    let derivation = Derivation::new(texts::MARTENSITE_BY_CARBON, "H_C", value, "HRC")
        .by(vec![carbon(w)], |x| {
            if carbon_wt <= POLYNOMIAL_TO_WT {
                hrc_of(&FULL_MARTENSITE, x.get("C"))
            } else {
                x.get("C").curve(texts::PLATEAU, of_carbon)
            }
        })
        .valid(texts::MARTENSITE_BY_CARBON_VALIDITY)
        .errs(texts::MARTENSITE_BY_CARBON_ERROR);
    Some(if carbon_wt <= POLYNOMIAL_TO_WT {
        derivation
            .how(texts::MARTENSITE_BY_CARBON_HOW)
            .source(&[&astm_a255_hardness::SOURCE])
    } else {
        derivation
            .how(texts::ON_PLATEAU_HOW)
            .source(&[&krauss_1999::SOURCE, &astm_a255_hardness::SOURCE])
    })
}

fn martensite_hv(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let (_, parts) = w.quenched_parts(step)?;
    let hrc = as_quenched_martensite_hrc(w.dissolved().c).ok()?;
    Some(
        Derivation::new(texts::MARTENSITE_AS_IT_IS, "H_M", parts.martensite_hv, "HV")
            .by(
                vec![
                    w.input("H_C", texts::BY_CARBON, hrc, "HRC", Quantity::MartensiteHrc),
                    given("a", texts::TEMPERED_ON_WAY_DOWN, parts.fall_hrc, "HRC"),
                ],
                |x| (x.get("H_C") - x.get("a")).curve("HV", hv_of_hrc),
            )
            .how(texts::MARTENSITE_AS_IT_IS_HOW)
            .source(&[&astm_e140::SOURCE]),
    )
}

fn alone_hv(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let (_, parts) = w.quenched_parts(step)?;
    let value = martensite_alone_hv(parts.martensite_hv, parts.usual_austenite);
    Some(
        Derivation::new(texts::WITHOUT_AUSTENITE, "HV_M", value, "HV")
            .by(
                vec![
                    w.input(
                        "H_M",
                        texts::WITH_USUAL_AUSTENITE,
                        parts.martensite_hv,
                        "HV",
                        Quantity::MartensiteHv(step),
                    ),
                    given(
                        "u",
                        texts::USUAL_AUSTENITE,
                        usual_austenite(w.dissolved().c),
                        "",
                    ),
                ],
                |x| martensite_alone_hv(x.get("H_M"), x.get("u")),
            )
            .how(texts::WITHOUT_AUSTENITE_HOW)
            .source(&[&krauss_1999::SOURCE]),
    )
}

/// Elements that harden ferrite, and those that move its A1.
const IN_FERRITE: [Element; 6] = [
    Element::Mn,
    Element::Si,
    Element::Ni,
    Element::Cr,
    Element::Mo,
    Element::V,
];
const OF_A1: [Element; 4] = [Element::Mn, Element::Si, Element::Cr, Element::Ni];

fn product_hv(product: Product, w: &Workings<'_>) -> Option<Derivation> {
    let (piece, parts) = w.quenched_parts(Step::Quench)?;
    let [bainite_hv, pearlite_hv, ferrite_hv] = parts.soft_hv;
    let title = texts::of_product(product.name());
    let told = |value| Derivation::new(title, "HV", value, "HV").valid(texts::PRODUCT_VALIDITY);
    let (value, formed) = match product {
        Product::Bainite => (bainite_hv, piece.formed.bainite),
        Product::Pearlite => (pearlite_hv, piece.formed.pearlite),
        Product::Ferrite => {
            return Some(
                told(ferrite_hv)
                    .by(w.dissolved_inputs(&IN_FERRITE), |x| {
                        ferrite_hv_of(|element| x.content(element))
                    })
                    .how(texts::FERRITE_HOW)
                    .source(&[&maynier_1978::SOURCE, &pickering_1978::SOURCE]),
            );
        }
    };
    let Some(formed) = formed else {
        return Some(told(value).how(texts::NONE_OF_IT));
    };
    let is_bainite = is_bainite_alone(formed.temperature_c);
    let mut inputs = vec![
        w.input(
            "HV_F",
            texts::ITS_FERRITE,
            ferrite_hv,
            "HV",
            Quantity::ProductHv(Product::Ferrite),
        ),
        given("T", texts::FORMED_AT, formed.temperature_c, "°C"),
        given("C", texts::FORMED_FROM_CARBON, formed.carbon_wt, "wt %"),
    ];
    if !is_bainite {
        inputs.extend(w.dissolved_inputs(&OF_A1));
    }
    let derivation = told(value).by(inputs, |x| {
        let pearlite = (!is_bainite).then(|| pearlite_part_of(x.get("T")));
        aggregate_hv_of(
            Aggregate {
                ferrite_hv: x.get("HV_F"),
                formed_c: x.get("T"),
                carbon_wt: x.get("C"),
                a1_c: ae1_c_of(|element| x.content(element)),
            },
            pearlite,
            |formed_c| formed_c.curve("ΔHV", eutectoid_over_ferrite_hv),
        )
    });
    Some(
        derivation
            .how(texts::AGGREGATE_HOW)
            .source(&[&eutectoid_isothermal::SOURCE, &grange_1961::SOURCE]),
    )
}

/// Constituents of a mixture with the hardness of the soft ones.
pub(super) fn mixture_inputs(
    w: &Workings<'_>,
    x: &Fractions,
    soft_hv: [f64; 3],
    origin: [Option<Quantity>; 2],
) -> Vec<Input> {
    let part = |symbol: &'static str, name: &str, value: f64, from: Option<Quantity>| match from {
        Some(quantity) => w.input(symbol, name, value, "", quantity),
        None => given(symbol, name, value, ""),
    };
    let [martensite, austenite] = origin;
    let [bainite_hv, pearlite_hv, ferrite_hv] = soft_hv;
    vec![
        part("x_M", shared::MARTENSITE, x.martensite, martensite),
        part("x_A", shared::RETAINED_AUSTENITE, x.austenite, austenite),
        part(
            "x_K",
            shared::CARBIDE,
            x.carbide,
            Some(Quantity::CarbideVolume),
        ),
        part(
            "x_B",
            shared::BAINITE,
            x.bainite,
            Some(Quantity::Part(Product::Bainite)),
        ),
        part(
            "x_P",
            shared::PEARLITE,
            x.pearlite,
            Some(Quantity::Part(Product::Pearlite)),
        ),
        part(
            "x_F",
            shared::FERRITE,
            x.ferrite,
            Some(Quantity::Part(Product::Ferrite)),
        ),
        w.input(
            "HV_B",
            shared::BAINITE,
            bainite_hv,
            "HV",
            Quantity::ProductHv(Product::Bainite),
        ),
        w.input(
            "HV_P",
            shared::PEARLITE,
            pearlite_hv,
            "HV",
            Quantity::ProductHv(Product::Pearlite),
        ),
        w.input(
            "HV_F",
            shared::FERRITE,
            ferrite_hv,
            "HV",
            Quantity::ProductHv(Product::Ferrite),
        ),
    ]
}

/// Bainite, pearlite and ferrite of a mixture, beside martensite of a hardness.
pub(super) fn soft(x: &super::Letters<'_>, beside: Beside, limit_hv: &Formula) -> Soft<Formula> {
    Soft::of(
        beside,
        ["x_B", "x_P", "x_F"].map(|name| x.get(name)),
        ["HV_B", "HV_P", "HV_F"].map(|name| x.get(name)),
        limit_hv,
    )
}

fn mixture_hv(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let value = w.hardness(step)?.hv;
    let (piece, parts) = w.quenched_parts(step)?;
    let alone = martensite_alone_hv(parts.martensite_hv, parts.usual_austenite);
    let is_quench = step == Step::Quench;
    let mut inputs = mixture_inputs(
        w,
        &piece.constituents,
        parts.soft_hv,
        [
            is_quench.then_some(Quantity::Martensite),
            Some(Quantity::Austenite(step)),
        ],
    );
    inputs.push(w.input("HV_M", texts::ALONE, alone, "HV", Quantity::AloneHv(step)));
    inputs.push(given(
        "HV_0",
        texts::BEFORE_TEMPERED_BY_ITSELF,
        parts.quenched_hv,
        "HV",
    ));
    let title = if is_quench {
        texts::AS_QUENCHED
    } else {
        texts::AFTER_COLD
    };
    Some(
        Derivation::new(title, "HV", value, "HV")
            .by(inputs, |x| {
                mixed_hv(Mixed {
                    martensite: x.get("x_M"),
                    alone_hv: x.get("HV_M"),
                    fresh: Formula::Constant(0.0),
                    fresh_hv: x.get("HV_M"),
                    austenite: x.get("x_A"),
                    carbide: x.get("x_K"),
                    soft: soft(x, beside(&piece.constituents, 0.0), &x.get("HV_0")),
                })
            })
            .how(texts::MIXTURE)
            .source(&[&krauss_1999::SOURCE])
            .errs(texts::MIXTURE_ERROR),
    )
}

fn hrc(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let hardness = w.hardness(step)?;
    let title = match step {
        Step::Temper(count) => shared::hardness_after_temper(count),
        Step::Cold => texts::AFTER_COLD.to_owned(),
        Step::Snap => texts::AFTER_SNAP.to_owned(),
        Step::Soak | Step::Quench => texts::AS_QUENCHED.to_owned(),
    };
    let value = hardness.hrc()?;
    Some(
        Derivation::new(title, "HRC", value, "HRC")
            .by(
                vec![w.input(
                    "HV",
                    texts::VICKERS_HARDNESS,
                    hardness.hv,
                    "HV",
                    Quantity::Hv(step),
                )],
                |x| x.get("HV").curve("HRC", hrc_of_hv),
            )
            .how(texts::HV_TO_HRC_HOW)
            .source(&[&astm_e140::SOURCE])
            .valid(texts::HV_TO_HRC_VALIDITY),
    )
}

fn final_band(w: &Workings<'_>) -> Option<Derivation> {
    let mut stages = w.outcome.stages.iter().rev();
    let last = stages.find(|stage| stage.hardness.is_some())?;
    let [model_hrc, open_hrc] = w.model_band_hrc(last.step)?;
    let quenched = w.hardness(Step::Quench);
    let [softer_hrc, harder_hrc] = last.quench_swing_hrc;
    let swing_hrc = quenched.map_or(0.0, |quenched| w.outcome.furnace.swing_hrc(quenched));
    Some(
        Derivation::new(texts::FINAL_BAND, "b", last.band_hrc, "HRC")
            .by(
                vec![
                    given("b_m", texts::ERROR_OF_MODELS, model_hrc, "HRC"),
                    given("b_o", texts::SNAP_LEAVES_OPEN, open_hrc, "HRC"),
                    given("b_f", texts::FURNACE_MOVES, swing_hrc, "HRC"),
                    given("b_s", texts::QUENCH_SOFTENS, softer_hrc, "HRC"),
                    given("b_h", texts::QUENCH_HARDENS, harder_hrc, "HRC"),
                ],
                |x| {
                    use crate::numeric::formula::Number;
                    let square = |name: &str| x.get(name).powi(2);
                    let even = || square("b_m") + square("b_o") + square("b_f");
                    let side = |name: &str| (even() + square(name)).sqrt();
                    (side("b_s") + side("b_h")) / Formula::Constant(2.0)
                },
            )
            .how(texts::FINAL_BAND_HOW),
    )
}
