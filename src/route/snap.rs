//! A snap temper: a short, low temper between the quench and the cold bath, which takes the worst of
//! the stress before the cold. The martensite that is there tempers, and the austenite beside it is
//! stabilised as by a long wait, so that the cold finds less of it to turn.

use super::hardening::Hardened;
use super::outcome::{Stage, Step};
use super::plan::Temper;
use super::tempering::{after_temper, step_of};
use crate::hardness::{AS_QUENCHED_BAND_HRC, Hardness, SnapTempered, Tempering};
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Austenite, ColdStep, Fractions, cold_treated_with_lag, stabilisation_k};

/// A lag that is only known as a trend may be so many times what the trend gives. Expert value: no
/// measured one of a snap temper is known; it is not less than that of the wait alone.
const MOST_LAG_FACTOR: f64 = 2.0;

/// A piece that went through a snap temper and a cold bath.
#[derive(Debug, Clone, Copy)]
pub(super) struct Snapped {
    /// What the piece consisted of before the snap temper.
    pub(super) quenched: Fractions,
    /// The snap temper, and what the cold turned after it.
    pub(super) tempered: SnapTempered,
    /// The piece after the snap temper.
    pub(super) stage: Stage,
    /// What it consists of after the cold bath.
    pub(super) fractions: Fractions,
    /// Its hardness then.
    pub(super) hardness: Hardness,
    /// How far that may be off for not knowing how much is stabilised, HRC.
    pub(super) open_hrc: f64,
    /// Austenite after the cold bath where no more is stabilised than by the wait, and where as much
    /// is as may be, volume fraction.
    pub(super) austenite_between: [f64; 2],
}

impl Snapped {
    /// Takes a quenched piece through a snap temper and a cold step after it.
    ///
    /// # Errors
    /// A steel, a temper or a cold step outside the models.
    pub(super) fn of(
        steel: &Composition,
        austenite: &Austenite,
        quenched: &Hardened,
        snap: &Temper,
        cold: &ColdStep,
    ) -> Result<Self, OutOfRange> {
        let step = step_of(snap);
        let mut warm = Tempering::new(&quenched.as_quenched(), steel)?;
        warm.hold(&step)?;
        let tempered = warm.now()?;
        let between = after_temper(&quenched.fractions, &tempered);
        let chilled = |lag_k: f64| {
            let fractions = cold_treated_with_lag(&between, austenite, cold, lag_k)?;
            let turned = between.austenite - fractions.austenite;
            let mut piece = warm;
            piece.cool_further(turned);
            Ok((fractions, turned, piece.now()?.hardness))
        };
        let carbon_wt = austenite.composition.c;
        let lag_k = stabilisation_k(carbon_wt, cold);
        let wait_only = ColdStep {
            snap: None,
            ..*cold
        };
        let (fractions, turned, hardness) = chilled(lag_k)?;
        let ends = [
            chilled(stabilisation_k(carbon_wt, &wait_only))?,
            chilled(MOST_LAG_FACTOR * lag_k)?,
        ];
        Ok(Self {
            quenched: quenched.fractions,
            tempered: SnapTempered { step, turned },
            stage: Stage {
                step: Step::Snap,
                fractions: Some(between),
                hardness: Some(tempered.hardness),
                band_hrc: tempered.band_hrc.max(AS_QUENCHED_BAND_HRC),
                band_off_hrc: 0.0,
                quench_swing_hrc: [0.0; 2],
            },
            fractions,
            hardness,
            open_hrc: ends
                .map(|(_, _, end)| (end.hrc_carried() - hardness.hrc_carried()).abs())
                .into_iter()
                .fold(0.0, f64::max),
            austenite_between: ends.map(|(fractions, ..)| fractions.austenite),
        })
    }
}
