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

/// Carbon up to which the standard's polynomial is used, wt %.
const POLYNOMIAL_TO_WT: f64 = 0.60;
pub(super) const MIXTURE: &str = "Hard constituents by their volume, carbide a fifth harder than its martensite; soft ones by theirs. Between both the harmonic mean: what is soft yields first.";

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
        "carbon in solution",
        w.dissolved().c,
        "wt %",
        Quantity::Dissolved(Element::C),
    )
}

fn martensite_hrc(w: &Workings<'_>) -> Option<Derivation> {
    let carbon_wt = w.dissolved().c;
    let value = as_quenched_martensite_hrc(carbon_wt).ok()?;
    let derivation = Derivation::new("Hardness of martensite by its carbon", "H_C", value, "HRC")
        .by(vec![carbon(w)], |x| {
            if carbon_wt <= POLYNOMIAL_TO_WT {
                hrc_of(&FULL_MARTENSITE, x.get("C"))
            } else {
                x.get("C").curve("plateau", of_carbon)
            }
        })
        .valid("0.10 to 1.40 % C in solution")
        .errs("1.2 HRC on the check rows");
    Some(if carbon_wt <= POLYNOMIAL_TO_WT {
        derivation
            .how("As quenched to room temperature, with its usual austenite.")
            .source(&[&astm_a255_hardness::SOURCE])
    } else {
        derivation
            .how("As quenched to room temperature, with its usual austenite: a smooth curve through the points of the plateau.")
            .source(&[&krauss_1999::SOURCE, &astm_a255_hardness::SOURCE])
    })
}

fn martensite_hv(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let (_, parts) = w.quenched_parts(step)?;
    let hrc = as_quenched_martensite_hrc(w.dissolved().c).ok()?;
    Some(
        Derivation::new("Hardness of the martensite as it is", "H_M", parts.martensite_hv, "HV")
            .by(
                vec![
                    w.input("H_C", "hardness by its carbon", hrc, "HRC", Quantity::MartensiteHrc),
                    given("a", "what it has tempered on the way down", parts.fall_hrc, "HRC"),
                ],
                |x| (x.get("H_C") - x.get("a")).curve("HV", hv_of_hrc),
            )
            .how("HRC to HV by the standard's table. Martensite that forms first is warm for longest and tempers a little by itself.")
            .source(&[&astm_e140::SOURCE]),
    )
}

fn alone_hv(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let (_, parts) = w.quenched_parts(step)?;
    let value = martensite_alone_hv(parts.martensite_hv, parts.usual_austenite);
    Some(
        Derivation::new("Hardness of martensite without austenite", "HV_M", value, "HV")
            .by(
                vec![
                    w.input("H_M", "hardness with its usual austenite", parts.martensite_hv, "HV", Quantity::MartensiteHv(step)),
                    given("u", "usual austenite at this carbon", usual_austenite(w.dissolved().c), ""),
                ],
                |x| martensite_alone_hv(x.get("H_M"), x.get("u")),
            )
            .how("The measured hardness of martensite holds the austenite that plain steel of its carbon keeps; here it is taken out again, so that it does not count twice.")
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
    let title = format!("Hardness of {}", product.name());
    let told = |value| {
        Derivation::new(title, "HV", value, "HV")
            .valid("up to 2.1 % Mn, 2.2 % Si, 4 % Ni, 3 % Cr, 1 % Mo")
    };
    let (value, formed) = match product {
        Product::Bainite => (bainite_hv, piece.formed.bainite),
        Product::Pearlite => (pearlite_hv, piece.formed.pearlite),
        Product::Ferrite => {
            return Some(
                told(ferrite_hv)
                    .by(w.dissolved_inputs(&IN_FERRITE), |x| {
                        ferrite_hv_of(|element| x.content(element))
                    })
                    .how("Iron, hardened by what it holds in solution.")
                    .source(&[&maynier_1978::SOURCE, &pickering_1978::SOURCE]),
            );
        }
    };
    let Some(formed) = formed else {
        return Some(told(value).how("There is none of it."));
    };
    let is_bainite = is_bainite_alone(formed.temperature_c);
    let mut inputs = vec![
        w.input(
            "HV_F",
            "its ferrite",
            ferrite_hv,
            "HV",
            Quantity::ProductHv(Product::Ferrite),
        ),
        given(
            "T",
            "mean temperature at which it formed",
            formed.temperature_c,
            "°C",
        ),
        given(
            "C",
            "carbon of the austenite it formed from",
            formed.carbon_wt,
            "wt %",
        ),
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
    let words = "The colder it forms the finer it is: ΔHV is how much harder than its ferrite the diagram of eutectoid steel has what forms at that temperature, for pearlite at the same distance below A1; carbon sets how much carbide lies in it.";
    Some(
        derivation
            .how(words)
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
        part("x_M", "martensite", x.martensite, martensite),
        part("x_A", "retained austenite", x.austenite, austenite),
        part("x_K", "carbide", x.carbide, Some(Quantity::CarbideVolume)),
        part(
            "x_B",
            "bainite",
            x.bainite,
            Some(Quantity::Part(Product::Bainite)),
        ),
        part(
            "x_P",
            "pearlite",
            x.pearlite,
            Some(Quantity::Part(Product::Pearlite)),
        ),
        part(
            "x_F",
            "ferrite",
            x.ferrite,
            Some(Quantity::Part(Product::Ferrite)),
        ),
        w.input(
            "HV_B",
            "bainite",
            bainite_hv,
            "HV",
            Quantity::ProductHv(Product::Bainite),
        ),
        w.input(
            "HV_P",
            "pearlite",
            pearlite_hv,
            "HV",
            Quantity::ProductHv(Product::Pearlite),
        ),
        w.input(
            "HV_F",
            "ferrite",
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
    inputs.push(w.input(
        "HV_M",
        "martensite without austenite",
        alone,
        "HV",
        Quantity::AloneHv(step),
    ));
    inputs.push(given(
        "HV_0",
        "martensite before it has tempered by itself",
        parts.quenched_hv,
        "HV",
    ));
    let title = if is_quench {
        "Hardness as quenched"
    } else {
        "Hardness after the cold bath"
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
            .how(MIXTURE)
            .source(&[&krauss_1999::SOURCE])
            .errs("2 HRC, nine times in ten, for these constituents, from the spread of handbook values; the harder part of a half-hardened piece comes out up to 5 HRC too hard or soft"),
    )
}

fn hrc(step: Step, w: &Workings<'_>) -> Option<Derivation> {
    let hardness = w.hardness(step)?;
    let title = match step {
        Step::Temper(count) => format!("Hardness after temper {count}"),
        Step::Cold => "Hardness after the cold bath".to_owned(),
        Step::Snap => "Hardness after the snap temper".to_owned(),
        Step::Soak | Step::Quench => "Hardness as quenched".to_owned(),
    };
    let value = hardness.hrc()?;
    Some(
        Derivation::new(title, "HRC", value, "HRC")
            .by(
                vec![w.input(
                    "HV",
                    "Vickers hardness",
                    hardness.hv,
                    "HV",
                    Quantity::Hv(step),
                )],
                |x| x.get("HV").curve("HRC", hrc_of_hv),
            )
            .how("HV to HRC by the standard's table, a smooth curve between its rows.")
            .source(&[&astm_e140::SOURCE])
            .valid("20 to 68 HRC, not for austenitic steel"),
    )
}

fn final_band(w: &Workings<'_>) -> Option<Derivation> {
    let mut stages = w.outcome.stages.iter().rev();
    let last = stages.find(|stage| stage.hardness.is_some())?;
    let [model_hrc, open_hrc] = w.model_band_hrc(last.step)?;
    let quenched = w.hardness(Step::Quench).and_then(Hardness::hrc);
    let ends = [
        w.outcome.furnace.hrc_at_coldest,
        w.outcome.furnace.hrc_at_hottest,
    ];
    let swing_hrc = ends
        .into_iter()
        .flatten()
        .filter_map(|end_hrc| Some((end_hrc - quenched?).abs()))
        .fold(0.0, f64::max);
    Some(
        Derivation::new(
            "Half width of the band at the end",
            "b",
            last.band_hrc,
            "HRC",
        )
        .by(
            vec![
                given(
                    "b_m",
                    "error of the models, nine times in ten",
                    model_hrc,
                    "HRC",
                ),
                given("b_o", "what a snap temper leaves open", open_hrc, "HRC"),
                given(
                    "b_f",
                    "what the furnace's band moves as quenched",
                    swing_hrc,
                    "HRC",
                ),
            ],
            |x| {
                use crate::numeric::formula::Number;
                let square = |name: &str| x.get(name).powi(2);
                (square("b_m") + square("b_o") + square("b_f")).sqrt()
            },
        )
        .how("Independent of each other, so they add in quadrature."),
    )
}
