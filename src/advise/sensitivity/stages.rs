//! Cases that share what comes before the part of the pipeline in which they differ.

use crate::advise::case::Case;
use crate::advise::spread::{austenite, hrc};
use crate::route::{
    QuenchedTrial, Route, RouteError, Step, TrialSteel, compared_section, finished_stage,
};
use crate::soak::SoakEnd;
use std::rc::Rc;

/// The numbers whose spread is divided up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Numbers {
    pub(super) quenched_hrc: Option<f64>,
    pub(super) final_hrc: Option<f64>,
    pub(super) final_austenite: Option<f64>,
}

/// A case with all that was computed on the way to its numbers.
pub(super) struct Staged {
    case: Case,
    steel: Rc<TrialSteel>,
    soaked: SoakEnd,
    quenched: Rc<QuenchedTrial>,
    pub(super) numbers: Numbers,
}

impl Staged {
    /// Computes a case, going on from others where they are the same up to there. A blade is
    /// quenched as the plate of its spine, where its deciding place lies.
    pub(super) fn of(
        route: &Route,
        planned: &Rc<TrialSteel>,
        case: Case,
        others: &[&Self],
    ) -> Result<Self, RouteError> {
        let same_steel = |other: &&&Self| other.case.steel == case.steel;
        let steel = match others.iter().find(same_steel) {
            Some(other) => Rc::clone(&other.steel),
            None if *planned.composition() == case.steel => Rc::clone(planned),
            None => Rc::new(planned.another_heat(&case.steel)?),
        };
        let off = &case.off;
        let soak_c = route.soak.temperature_c + off.soak_k;
        let same_soak = |other: &&&Self| same_steel(other) && other.case.off.soak_k == off.soak_k;
        let soaked = match others.iter().find(same_soak) {
            Some(other) => other.soaked,
            None => steel.at(soak_c)?.end(60.0 * route.soak.time_min)?,
        };
        let same_quench = |other: &&&Self| {
            let theirs = &other.case.off;
            same_soak(other)
                && theirs.thickness_mm == off.thickness_mm
                && theirs.heat_transfer_factor == off.heat_transfer_factor
                && theirs.nose_time_factor == off.nose_time_factor
                && theirs.ms_k == off.ms_k
        };
        let quenched = match others.iter().find(same_quench) {
            Some(other) => Rc::clone(&other.quenched),
            None => {
                let section = compared_section(route.section);
                Rc::new(steel.quench(&soaked, soak_c, section, &route.quench, off)?)
            }
        };
        let stages = quenched.finish(route.cold.as_ref(), &route.tempers, off);
        let first = stages.iter().find(|stage| stage.step == Step::Quench);
        let last = finished_stage(&stages, route.cold.as_ref(), &route.tempers);
        let numbers = Numbers {
            quenched_hrc: first.and_then(hrc),
            final_hrc: last.and_then(hrc),
            final_austenite: last.and_then(austenite),
        };
        Ok(Self {
            case,
            steel,
            soaked,
            quenched,
            numbers,
        })
    }
}
