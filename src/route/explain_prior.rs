//! What stands behind the numbers of the piece after a step before hardening.

use super::explain::{
    Explanation, GRAIN_BASIS, KNOWN, SOURCE, TAKES_IN, VALID, grain_error, refused,
};
use super::outcome::Outcome;
use super::plan::Route;
use super::prior::{PieceState, PriorOutcome, prior_line, soft_hardness_words};
use crate::sources::annealed_fit;
use crate::units::{TemperatureScale, format_fixed, format_hv, format_percent};

/// A step with what it has left, or why that is not known.
fn left_by<'a>(
    title: &'static str,
    step: usize,
    route: &Route,
    outcome: &'a Outcome,
    scale: TemperatureScale,
) -> Result<(&'a PriorOutcome, &'a PieceState, String), Explanation> {
    let (Some(planned), Some(done)) = (route.prior.get(step), outcome.prior.get(step)) else {
        return Err(refused(title, "The route has no such step.".to_owned()));
    };
    let Some(state) = done.state.given() else {
        let reason = done.state.refusal().map(|reason| reason.words(scale));
        return Err(refused(title, reason.unwrap_or_default()));
    };
    let settings = format!("{} {}", planned.work.title(), prior_line(planned, scale));
    Ok((done, state, settings))
}

/// Hardness after a step.
pub(super) fn hardness(
    step: usize,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    const TITLE: &str = "Hardness after the step";
    let (_, state, settings) = match left_by(TITLE, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let (Some(figure), Some(hardness)) = (soft_hardness_words(state), state.hardness) else {
        return refused(
            TITLE,
            "No model tells the hardness of what forms.".to_owned(),
        );
    };
    let parts = state.fractions.map_or_else(String::new, |x| {
        [
            ("ferrite", x.ferrite),
            ("pearlite", x.pearlite),
            ("bainite", x.bainite),
            ("martensite", x.martensite),
            ("austenite", x.austenite),
            ("carbide", x.carbide),
        ]
        .into_iter()
        .filter(|(_, part)| *part > 0.005)
        .map(|(name, part)| format!("{} {name}", format_percent(part)))
        .collect::<Vec<_>>()
        .join(", ")
    });
    Explanation {
        title: TITLE.to_owned(),
        figure,
        band: format!("{} ± {}", format_hv(hardness.hv), format_fixed(state.band_hv, 0)),
        equation: format!(
            "each constituent by its part; ferrite with round carbide: HV = ferrite + k / √λ, λ = 4/3 r (1 − f) / f\n{parts}; r = {}\u{a0}µm",
            format_fixed(state.structure.carbide_radius_um, 2)
        ),
        rows: vec![
            (TAKES_IN, settings),
            (
                SOURCE,
                "pearlite, bainite and ferrite as after a quench; round carbide fitted by this project to the usual hardness of three steels annealed at the mill, from memory".to_owned(),
            ),
            (VALID, "carbon and low-alloy steel; carbide up to 60 % by volume".to_owned()),
            (
                KNOWN,
                format!(
                    "round carbide: {}; ±{} HV against the hardest that standards allow as annealed, from memory",
                    annealed_fit::LEFT_OUT.words(),
                    format_fixed(annealed_fit::BAND_HV, 0)
                ),
            ),
        ],
    }
}

/// Grain of the heat of a step.
pub(super) fn grain(
    step: usize,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    const TITLE: &str = "Austenite grain of the step";
    let (done, _, settings) = match left_by(TITLE, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let Some(heat) = done.heated else {
        return refused(
            TITLE,
            "Below A1 no austenite forms, and no grain of it.".to_owned(),
        );
    };
    Explanation {
        title: TITLE.to_owned(),
        figure: format!("ASTM\u{a0}{}", format_fixed(heat.grain_astm, 1)),
        band: format!("{}\u{a0}µm from boundary to boundary", format_fixed(heat.grain_um, 0)),
        equation: "it begins as fine as the structure before and its old grain let it, and grows as far as carbide lets it".to_owned(),
        rows: vec![
            (TAKES_IN, settings),
            (
                SOURCE,
                format!("{GRAIN_BASIS}; the first grain, and grain under the hammer, are expert values"),
            ),
            (KNOWN, format!("{}; more after forging", grain_error())),
        ],
    }
}

/// Carbide after a step.
pub(super) fn carbide(
    step: usize,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    const TITLE: &str = "Carbide after the step";
    let (_, state, settings) = match left_by(TITLE, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let structure = &state.structure;
    let um = |radius_um: f64| format!("{}\u{a0}µm", format_fixed(2.0 * radius_um, 2));
    Explanation {
        title: TITLE.to_owned(),
        figure: um(structure.carbide_radius_um),
        band: format!(
            "across; {} of it is left over from before, {}",
            format_percent(structure.left_over_part),
            um(structure.left_over_radius_um)
        ),
        equation: "above A1: what the soak leaves, and what forms on cooling, by how far below A1\nbelow A1: r³ = r₀³ + k t, slower with chromium and its like".to_owned(),
        rows: vec![
            (TAKES_IN, settings),
            (
                SOURCE,
                "films on boundaries after Zener (1949); rates of ripening, and spacing of pearlite by how far below A1 it forms, are expert values of this project".to_owned(),
            ),
            (KNOWN, "about a factor 1.5 in size".to_owned()),
        ],
    }
}

#[cfg(test)]
mod tests {
    use crate::route::{NumberKey, Route, explain, run};
    use crate::units::TemperatureScale;

    #[test]
    fn numbers_of_every_step_are_explained() {
        let route = Route::whole_example();
        let outcome = run(&route).unwrap();
        for step in 0..route.prior.len() {
            for key in [
                NumberKey::StepHardness(step),
                NumberKey::StepGrain(step),
                NumberKey::StepCarbide(step),
            ] {
                let why = explain(key, &route, &outcome, TemperatureScale::Celsius);
                assert!(!why.equation.is_empty() && !why.title.is_empty());
                let is_below_a1 = outcome.prior[step].heated.is_none();
                if key != NumberKey::StepGrain(step) || !is_below_a1 {
                    assert!(why.rows.len() >= 3, "{key:?}: {why:?}");
                }
            }
        }
        let beyond = NumberKey::StepHardness(99);
        let why = explain(beyond, &route, &outcome, TemperatureScale::Celsius);
        assert_eq!(why.figure, "–");
    }
}
