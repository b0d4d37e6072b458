//! A step below A1: carbide ripens, lamellae break up, martensite tempers.

use super::state::{PieceState, Settled, first_grain_on_spheroids_um, mean_radius_um};
use super::step::PriorStep;
use crate::hardness::{self, Hardness, TemperStep, temper};
use crate::route::plan::Route;
use crate::soak::{Ripening, Structure};
use crate::steel::OutOfRange;
use crate::transform::Fractions;

/// From here on martensite becomes ferrite with round carbide, °C. Expert value.
const NO_MARTENSITE_FROM_C: f64 = 550.0;
/// Half the width of ferrite between fine spheroids, µm. Expert value.
const SPHEROID_HALF_WIDTH_UM: f64 = 4.0;

/// Holds the piece below A1.
pub(super) fn held(
    route: &Route,
    step: &PriorStep,
    before: &PieceState,
    settled: &Settled,
) -> Result<PieceState, OutOfRange> {
    let steel = &route.composition;
    let time_s = 60.0 * step.time_min;
    let ripening = Ripening::held(steel, step.temperature_c, time_s)?;
    let structure = ripened(&before.structure, ripening);
    // How much of the carbide has gone over into rounder and larger ones.
    let fine_um = before.structure.carbide_radius_um;
    let changed = 1.0 - (fine_um / structure.carbide_radius_um).powi(3);
    let is_soft = step.temperature_c >= NO_MARTENSITE_FROM_C;
    let fractions = before
        .fractions
        .map(|x| softened(&x, settled.carbide_volume_fraction, changed, is_soft));
    let hard = before.fractions.map_or(1.0, |x| x.martensite + x.austenite);
    let all = settled.carbide_volume_fraction;
    let annealed_hv = |structure: &Structure| {
        hardness::annealed(steel, all, mean_radius_um(structure)).map(|h| h.hv)
    };
    let mut hardened = before.hardened.clone();
    let hardness = if let Some((start, steps)) = hardened.as_mut().filter(|_| !is_soft) {
        steps.push(TemperStep {
            temperature_c: step.temperature_c,
            time_s,
        });
        let tempered = temper(start, steel, steps).ok();
        tempered
            .and_then(|all| Some(all.last()?.hardness))
            .or(before.hardness)
    } else if !is_soft && hard > 0.0 {
        // Martensite of which no more is known keeps its hardness, known or not.
        before.hardness
    } else {
        let (from_hv, to_hv) = (annealed_hv(&before.structure)?, annealed_hv(&structure)?);
        let soft_hv = before.hardness.map_or(to_hv, |h| h.hv * (to_hv / from_hv));
        Some(Hardness {
            hv: hard * to_hv + (1.0 - hard) * soft_hv,
        })
    };
    if is_soft {
        hardened = None;
    }
    // From here on carbon of martensite comes out as carbide.
    let comes_out_wt = if is_soft {
        before.carbon_in_solution_wt
    } else {
        0.0
    };
    let pearlite = |x: Option<Fractions>| x.map_or(0.0, |x| x.pearlite);
    // What is uncertain about lamellae goes with them.
    let gone = (pearlite(before.fractions) - pearlite(fractions)).max(0.0);
    let gone_hv = gone * (hardness::SLOW_PEARLITE_BAND_HV - hardness::ANNEALED_BAND_HV);
    Ok(PieceState {
        fractions,
        structure,
        carbon_in_carbide_wt: before.carbon_in_carbide_wt + comes_out_wt,
        carbon_in_solution_wt: before.carbon_in_solution_wt - comes_out_wt,
        hardness,
        band_hv: (before.band_hv - gone_hv).max(hardness::ANNEALED_BAND_HV),
        hardened,
        ..before.clone()
    })
}

fn ripened(before: &Structure, ripening: Ripening) -> Structure {
    let fine_um = ripening.radius_um(before.carbide_radius_um);
    let new = 1.0 - (before.carbide_radius_um / fine_um).powi(3);
    let mix = |old: f64, round: f64| old + (round - old) * new;
    Structure {
        carbide_radius_um: fine_um,
        left_over_radius_um: ripening.radius_um(before.left_over_radius_um),
        carbide_enrichment: ripening.enrichment(before.carbide_enrichment),
        ferrite_half_width_um: mix(before.ferrite_half_width_um, SPHEROID_HALF_WIDTH_UM),
        first_grain_um: mix(before.first_grain_um, first_grain_on_spheroids_um(fine_um)),
        ..*before
    }
}

/// Constituents after a hold: what has gone over is ferrite with carbide.
fn softened(before: &Fractions, all: f64, changed: f64, is_soft: bool) -> Fractions {
    let gone = |part: f64, is_hard: bool| match (is_hard, is_soft) {
        (true, true) => part,
        (true, false) => 0.0,
        (false, _) => part * changed,
    };
    let pearlite = gone(before.pearlite, false);
    let bainite = gone(before.bainite, false);
    let martensite = gone(before.martensite, true);
    let austenite = gone(before.austenite, true);
    let moved = pearlite + bainite + martensite + austenite;
    let carrying = before.pearlite + before.bainite + before.martensite + before.austenite;
    let carbide = if carrying > 0.0 {
        (all - before.carbide).clamp(0.0, carrying) * moved / carrying
    } else {
        0.0
    };
    Fractions {
        ferrite: before.ferrite + moved - carbide,
        pearlite: before.pearlite - pearlite,
        bainite: before.bainite - bainite,
        martensite: before.martensite - martensite,
        austenite: before.austenite - austenite,
        carbide: before.carbide + carbide,
    }
}
