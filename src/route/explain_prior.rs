//! What stands behind the numbers of the piece after a step before hardening.

use super::explain::{Explanation, grain_error, refused};
use super::outcome::Outcome;
use super::plan::Route;
use super::prior::{PieceState, PriorOutcome, prior_line, soft_hardness_words};
use crate::sources::{annealed_fit, normalised_bars};
use crate::units::{TemperatureScale, format_fixed, format_hv, format_percent};
use recalesce_texts::page::outcome as constituents;
use recalesce_texts::route::explain::{GRAIN_BASIS, KNOWN, SOURCE, TAKES_IN, VALID};
use recalesce_texts::route::explain_prior as texts;

/// A step with what it has left, or why that is not known.
fn left_by<'a>(
    title: &'static str,
    step: usize,
    route: &Route,
    outcome: &'a Outcome,
    scale: TemperatureScale,
) -> Result<(&'a PriorOutcome, &'a PieceState, String), Explanation> {
    let (Some(planned), Some(done)) = (route.prior.get(step), outcome.prior.get(step)) else {
        return Err(refused(title, texts::NO_SUCH_STEP.to_owned()));
    };
    let Some(state) = done.state.given() else {
        let reason = done.state.refusal().map(|reason| reason.words(scale));
        return Err(refused(title, reason.unwrap_or_default()));
    };
    let settings = texts::step(planned.work.title(), &prior_line(planned, scale));
    Ok((done, state, settings))
}

/// Hardness after a step.
pub(super) fn hardness(
    step: usize,
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Explanation {
    let (_, state, settings) = match left_by(texts::HARDNESS, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let (Some(figure), Some(hardness)) = (soft_hardness_words(state), state.hardness) else {
        return refused(texts::HARDNESS, texts::NO_HARDNESS.to_owned());
    };
    let parts = state.fractions.map_or_else(Vec::new, |x| {
        [
            (constituents::FERRITE, x.ferrite),
            (constituents::PEARLITE, x.pearlite),
            (constituents::BAINITE, x.bainite),
            (constituents::MARTENSITE, x.martensite),
            (constituents::AUSTENITE, x.austenite),
            (constituents::CARBIDE, x.carbide),
        ]
        .into_iter()
        .filter(|(_, part)| *part > 0.005)
        .map(|(name, part)| texts::constituent(&format_percent(part), name))
        .collect::<Vec<_>>()
    });
    Explanation {
        title: texts::HARDNESS.to_owned(),
        figure,
        band: format!(
            "{}\u{a0}±\u{a0}{}",
            format_hv(hardness.hv),
            format_fixed(state.band_hv, 0)
        ),
        equation: texts::hardness_law(&parts, &format_fixed(state.structure.carbide_radius_um, 2)),
        rows: vec![
            (TAKES_IN, settings),
            (SOURCE, texts::HARDNESS_BASIS.to_owned()),
            (VALID, texts::HARDNESS_VALIDITY.to_owned()),
            (
                KNOWN,
                texts::hardness_error(
                    &annealed_fit::LEFT_OUT.words(),
                    &format_fixed(annealed_fit::BAND_HV, 0),
                    (
                        normalised_bars::BARS,
                        &format_fixed(normalised_bars::BAND_HV, 0),
                        &format_fixed(normalised_bars::MEAN_HARDER_HV, 0),
                    ),
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
    let (done, _, settings) = match left_by(texts::GRAIN, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let Some(heat) = done.heated else {
        return refused(texts::GRAIN, texts::NO_GRAIN.to_owned());
    };
    Explanation {
        title: texts::GRAIN.to_owned(),
        figure: format!("ASTM\u{a0}{}", format_fixed(heat.grain_astm, 1)),
        band: texts::from_boundary_to_boundary(&format_fixed(heat.grain_um, 0)),
        equation: texts::GRAIN_LAW.to_owned(),
        rows: vec![
            (TAKES_IN, settings),
            (SOURCE, texts::grain_basis(GRAIN_BASIS)),
            (KNOWN, texts::grain_error(&grain_error())),
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
    let (_, state, settings) = match left_by(texts::CARBIDE, step, route, outcome, scale) {
        Ok(left) => left,
        Err(refusal) => return refusal,
    };
    let structure = &state.structure;
    let um = |radius_um: f64| format!("{}\u{a0}µm", format_fixed(2.0 * radius_um, 2));
    Explanation {
        title: texts::CARBIDE.to_owned(),
        figure: um(structure.carbide_radius_um),
        band: texts::carbide_band(
            &format_percent(structure.left_over_part),
            &um(structure.left_over_radius_um),
        ),
        equation: texts::CARBIDE_LAW.to_owned(),
        rows: vec![
            (TAKES_IN, settings),
            (SOURCE, texts::CARBIDE_BASIS.to_owned()),
            (KNOWN, texts::CARBIDE_ERROR.to_owned()),
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
