//! The numbers on the way from composition to hardness, and under what each is opened.

use crate::route::outcome::{Outcome, Step};
use crate::route::sentence::NumberKey;
use crate::steel::Element;
use crate::transform::Product;

/// A number on the way from composition to hardness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Content of the steel.
    Content(Element),
    /// Where austenite begins.
    A1,
    /// Where the second phase ends.
    SecondPhase,
    /// Carbon that equilibrium allows in the austenite at the soak.
    AllowedCarbon,
    /// What is dissolved in the austenite after the soak.
    Dissolved(Element),
    /// Mass fraction of carbide after the soak.
    CarbideMass,
    /// Its volume fraction.
    CarbideVolume,
    /// Mean intercept of the austenite grain.
    Intercept,
    /// ASTM number of the austenite grain.
    Grain,
    /// Start of martensite.
    Ms,
    /// Start of martensite of the austenite that is left at the place that decides.
    MsOfRest,
    /// Start of bainite.
    Bs,
    /// Rate parameter of martensite.
    RateParameter,
    /// Temperature at and above which a product does not form.
    UpperLimit(Product),
    /// What composition and grain make of its start time, as a logarithm.
    StartTerm(Product),
    /// Its shortest start time.
    NoseTime(Product),
    /// Time that the deciding place takes from A1 to the nose.
    TimeTaken,
    /// Time that it may take.
    TimeAllowed,
    /// Factor by which the quench may be slower.
    Factor,
    /// The least and the most that the factor may be.
    FactorEnd {
        /// Whether the least.
        is_least: bool,
    },
    /// Seconds to spare.
    Seconds,
    /// Volume fraction of a product of diffusion after the quench.
    Part(Product),
    /// Its age after the quench, in multiples of its 1 % start time.
    Age(Product),
    /// Volume fraction of martensite after the quench.
    Martensite,
    /// Volume fraction of retained austenite after a step.
    Austenite(Step),
    /// How much of the austenite hardened.
    Hardened,
    /// Hardness of martensite by its carbon.
    MartensiteHrc,
    /// Hardness of martensite after it has tempered on the way down.
    MartensiteHv(Step),
    /// The same without its usual austenite.
    AloneHv(Step),
    /// Hardness of a product of diffusion.
    ProductHv(Product),
    /// Hardness after a step, HV.
    Hv(Step),
    /// Hardness after a step, HRC.
    Hrc(Step),
    /// What alloying holds against tempering.
    Held,
    /// Whole fall of a stage of tempering, counted from zero.
    WholeFall(usize),
    /// Middle of a stage.
    Middle(usize),
    /// Reduced time of a stage after a temper, both counted from zero.
    Reduced {
        /// The temper.
        temper: usize,
        /// The stage.
        stage: usize,
    },
    /// Fall of a stage after a temper.
    StageFall {
        /// The temper.
        temper: usize,
        /// The stage.
        stage: usize,
    },
    /// Fall by all stages after a temper.
    Fall(usize),
    /// Hollomon-Jaffe parameter after a temper.
    Parameter(usize),
    /// Half width of the band of the final hardness.
    FinalBand,
    /// Depth without carbon after the soak.
    Decarburised,
    /// Thickness of the scale.
    Scale,
    /// Stock to leave for grinding.
    Stock,
}

impl Quantity {
    /// Under what it is opened: numbers of sentences are explained in words too.
    pub(super) fn key(self, outcome: &Outcome) -> NumberKey {
        let last = outcome.stages.iter().rev().find(|s| s.hardness.is_some());
        match self {
            Self::Dissolved(Element::C) => NumberKey::DissolvedCarbon,
            Self::CarbideVolume => NumberKey::CarbideLeft,
            Self::Grain => NumberKey::Grain,
            Self::Seconds => NumberKey::Margin,
            Self::Austenite(Step::Quench) => NumberKey::RetainedAustenite,
            Self::Austenite(Step::Cold) => NumberKey::ColdTreatment,
            Self::Stock => NumberKey::Skin,
            Self::Hrc(step) if last.is_some_and(|stage| stage.step == step) => {
                NumberKey::FinalHardness
            }
            other => NumberKey::Behind(other),
        }
    }

    /// What is meant by a key; none for numbers that are explained in words alone.
    pub(super) fn of(key: NumberKey, outcome: &Outcome) -> Option<Self> {
        Some(match key {
            NumberKey::DissolvedCarbon => Self::Dissolved(Element::C),
            NumberKey::CarbideLeft => Self::CarbideVolume,
            NumberKey::Grain => Self::Grain,
            NumberKey::Margin => Self::Seconds,
            NumberKey::RetainedAustenite => Self::Austenite(Step::Quench),
            NumberKey::ColdTreatment => Self::Austenite(Step::Cold),
            NumberKey::Skin => Self::Stock,
            NumberKey::FinalHardness => {
                let mut stages = outcome.stages.iter().rev();
                Self::Hrc(stages.find(|stage| stage.hardness.is_some())?.step)
            }
            NumberKey::Behind(quantity) => quantity,
            NumberKey::NextSlower
            | NumberKey::HeatingUp
            | NumberKey::Overheated
            | NumberKey::StepHardness(_)
            | NumberKey::StepGrain(_)
            | NumberKey::StepCarbide(_) => return None,
        })
    }
}
