//! The stages of tempering: what each takes of the hardness of martensite, and how far it has gone.

use super::workings::Workings;
use super::{Derivation, Input, Quantity, given};
use crate::hardness::{
    Softening, TemperedParts, fall_hrc_of, held_hrc_of, middle_of, reduced_s_of, whole_fall_hrc_of,
};
use crate::numeric::formula::Number;
use crate::sources::tempering_stages::{self, STAGES};
use crate::steel::Element;
use recalesce_texts::route::why::{self as shared, temper as texts};

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    match quantity {
        Quantity::Held => held(w),
        Quantity::WholeFall(stage) => whole_fall(stage, w),
        Quantity::Middle(stage) => middle(stage, w),
        Quantity::Reduced { temper, stage } => reduced(temper, stage, w),
        Quantity::StageFall { temper, stage } => stage_fall(temper, stage, w),
        Quantity::Fall(temper) => fall(temper, w),
        _ => None,
    }
}

/// Law of the stages after so many tempers.
pub(super) struct InStages {
    pub(super) parts: TemperedParts,
    reduced_s: [f64; 3],
    middle: [f64; 3],
    whole_hrc: [f64; 3],
    held_hrc: f64,
    pub(super) fall_hrc: f64,
    pub(super) usual: f64,
    pub(super) alone_hv: f64,
    pub(super) fresh_hv: f64,
}

pub(super) fn in_stages(count: usize, w: &Workings<'_>) -> Option<InStages> {
    let (_, parts) = w.tempered(count)?;
    match parts.softening {
        Softening::Stages {
            reduced_s,
            middle,
            whole_hrc,
            held_hrc,
            fall_hrc: [fall_hrc, _],
            usual_austenite: usual,
            alone_hv,
            fresh_hv,
            ..
        } => Some(InStages {
            parts,
            reduced_s,
            middle,
            whole_hrc,
            held_hrc,
            fall_hrc,
            usual,
            alone_hv,
            fresh_hv,
        }),
        Softening::Table { .. } => None,
    }
}

const fn name_of(stage: usize) -> &'static str {
    match stage {
        0 => texts::TRANSITION_CARBIDE,
        1 => texts::CEMENTITE,
        _ => texts::COARSENING,
    }
}

fn fitted(derivation: Derivation) -> Derivation {
    derivation
        .source(&[&tempering_stages::SOURCE])
        .valid(texts::STAGE_VALIDITY)
        .errs(tempering_stages::LEFT_OUT.words())
}

/// Contents as they count in tempering.
fn counted(elements: impl Iterator<Item = Element>, w: &Workings<'_>) -> Vec<Input> {
    let steel = &w.route.composition;
    let counts = |element: Element| match element {
        Element::Mo => {
            let (share, most_wt) = tempering_stages::TUNGSTEN_AS_MOLYBDENUM;
            steel.mo + (share * steel.w).min(most_wt)
        }
        Element::V => steel.v.min(tempering_stages::LARGEST_VANADIUM_EFFECT_WT),
        other => steel.get(other),
    };
    let input = |element: Element| {
        w.input(
            element.symbol(),
            texts::counted(element.name()),
            counts(element),
            "wt %",
            Quantity::Content(element),
        )
    };
    elements.map(input).collect()
}

fn held(w: &Workings<'_>) -> Option<Derivation> {
    let elements = tempering_stages::HELD_HRC
        .iter()
        .map(|(element, _)| *element);
    let derivation = Derivation::new(texts::HELD, "s", in_stages(0, w)?.held_hrc, "HRC")
        .by(counted(elements, w), |x| {
            held_hrc_of(|element| x.content(element))
        })
        .how(texts::COUNTED_HOW);
    Some(fitted(derivation))
}

fn whole_fall(stage: usize, w: &Workings<'_>) -> Option<Derivation> {
    let stages = in_stages(0, w)?;
    let law = STAGES.get(stage)?;
    let derivation = Derivation::new(
        texts::whole_fall(name_of(stage)),
        format!("A_{}", stage + 1),
        *stages.whole_hrc.get(stage)?,
        "HRC",
    )
    .by(
        vec![
            w.input(
                "C_0",
                shared::CARBON_OF_STEEL,
                w.route.composition.c,
                "wt %",
                Quantity::Content(Element::C),
            ),
            w.input(
                "s",
                texts::ALLOYING_HOLDS,
                stages.held_hrc,
                "HRC",
                Quantity::Held,
            ),
        ],
        |x| whole_fall_hrc_of(law, x.get("C_0"), x.get("s")),
    );
    Some(fitted(derivation))
}

fn middle(stage: usize, w: &Workings<'_>) -> Option<Derivation> {
    let delays: &[(Element, f64)] = match stage {
        1 => &tempering_stages::CEMENTITE_DELAY,
        2 => &tempering_stages::COARSENING_DELAY,
        _ => &[],
    };
    let carbon = (stage == 2).then_some(Element::C);
    let elements = delays.iter().map(|(element, _)| *element).chain(carbon);
    let derivation = Derivation::new(
        texts::middle(name_of(stage)),
        format!("m_{}", stage + 1),
        *in_stages(0, w)?.middle.get(stage)?,
        "",
    )
    .by(counted(elements, w), |x| {
        middle_of(stage, |element| x.content(element))
    })
    .how(texts::middle_how());
    Some(fitted(derivation))
}

fn reduced(temper: usize, stage: usize, w: &Workings<'_>) -> Option<Derivation> {
    let before = *in_stages(temper, w)?.reduced_s.get(stage)?;
    let after = *in_stages(temper + 1, w)?.reduced_s.get(stage)?;
    let law = STAGES.get(stage)?;
    let step = w.route.tempers.get(temper)?;
    let earlier = match temper.checked_sub(1) {
        Some(temper) => w.input(
            "z_0",
            texts::REDUCED_BEFORE,
            before,
            "s",
            Quantity::Reduced { temper, stage },
        ),
        None => given("z_0", texts::REDUCED_IN_QUENCH, before, "s"),
    };
    let derivation = Derivation::new(texts::reduced(name_of(stage), temper + 1), "z", after, "s")
        .by(
            vec![
                earlier,
                given("t", texts::TIME_OF_TEMPER, 60.0 * step.time_min, "s"),
                given("T", texts::TEMPERATURE_OF_TEMPER, step.temperature_c, "°C"),
            ],
            |x| x.get("z_0") + reduced_s_of(law, x.get("T"), x.get("t")),
        )
        .how(texts::REDUCED_HOW);
    Some(fitted(derivation))
}

fn stage_fall(temper: usize, stage: usize, w: &Workings<'_>) -> Option<Derivation> {
    let stages = in_stages(temper + 1, w)?;
    let law = STAGES.get(stage)?;
    let (whole, middle, reduced_s) = (
        *stages.whole_hrc.get(stage)?,
        *stages.middle.get(stage)?,
        *stages.reduced_s.get(stage)?,
    );
    let value = fall_hrc_of(law, whole, middle, reduced_s.log10());
    let derivation = Derivation::new(
        texts::stage_fall(name_of(stage), temper + 1),
        format!("F_{}", stage + 1),
        value,
        "HRC",
    )
    .by(
        vec![
            w.input(
                "A",
                texts::WHOLE_FALL,
                whole,
                "HRC",
                Quantity::WholeFall(stage),
            ),
            w.input(
                "m",
                texts::MIDDLE_OF_STAGE,
                middle,
                "",
                Quantity::Middle(stage),
            ),
            w.input(
                "z",
                texts::REDUCED_TIME,
                reduced_s,
                "s",
                Quantity::Reduced { temper, stage },
            ),
        ],
        |x| fall_hrc_of(law, x.get("A"), x.get("m"), x.get("z").log10()),
    );
    Some(fitted(derivation))
}

fn fall(temper: usize, w: &Workings<'_>) -> Option<Derivation> {
    let stages = in_stages(temper + 1, w)?;
    let each = (0..STAGES.len()).filter_map(|stage| {
        let law = STAGES.get(stage)?;
        let value = fall_hrc_of(
            law,
            *stages.whole_hrc.get(stage)?,
            *stages.middle.get(stage)?,
            stages.reduced_s.get(stage)?.log10(),
        );
        Some(w.input(
            format!("F_{}", stage + 1),
            name_of(stage),
            value,
            "HRC",
            Quantity::StageFall { temper, stage },
        ))
    });
    let inputs: Vec<Input> = each.collect();
    let derivation = Derivation::new(texts::fall(temper + 1), "F", stages.fall_hrc, "HRC")
        .by(inputs, |x| x.get("F_1") + x.get("F_2") + x.get("F_3"));
    Some(fitted(derivation))
}
