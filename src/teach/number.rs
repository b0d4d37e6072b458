//! Numbers of a route and of what comes out of it that an experiment can ask for.

use crate::route::{Known, Outcome, Route};
use crate::transform::Fractions;
use recalesce_texts::teach::number as texts;
use serde::{Deserialize, Serialize};

/// A number of a route or of its outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Number {
    /// Temperature of the soak, °C.
    SoakC,
    /// Time at temperature, min.
    SoakMin,
    /// Thickness of the place that decides: of plate, round, square or the spine of a blade, mm.
    ThicknessMm,
    /// Temperature of the last temper, °C.
    TemperC,
    /// Carbon in solution, wt % of the austenite.
    CarbonWt,
    /// Undissolved carbide after the soak, vol %.
    CarbidePercent,
    /// ASTM grain number after the soak.
    GrainAstm,
    /// Factor by which the quench may be slower and still harden.
    MarginFactor,
    /// Start of martensite, °C.
    MsC,
    /// Martensite as quenched, vol %.
    MartensitePercent,
    /// Pearlite and bainite as quenched, vol %.
    PearliteAndBainitePercent,
    /// Hardness as quenched, HRC.
    QuenchedHrc,
    /// Retained austenite as quenched, vol %.
    QuenchedAustenitePercent,
    /// Hardness after the last step, HRC.
    FinalHrc,
    /// Retained austenite after the last step, vol %.
    FinalAustenitePercent,
    /// ASTM grain number of the last step before hardening.
    PriorGrainAstm,
    /// Thickness of carbide films on grain boundaries after the last step before hardening, µm.
    FilmUm,
    /// Half width of the band of the piece's temperature in the soak, K.
    FurnaceBandK,
    /// Half width of the band of hardness after the last step, HRC.
    FinalBandHrc,
}

impl Number {
    /// What a route and its outcome have; none where the models do not reach.
    #[must_use]
    pub fn of(self, route: &Route, outcome: &Outcome) -> Option<f64> {
        let quench = match &outcome.quench.transformed {
            Known::Given(quench) => Some(quench),
            Known::Refused { .. } => None,
        };
        let percent = |of: fn(&Fractions) -> f64| Some(100.0 * of(&quench?.fractions));
        let last = outcome.stages.last();
        let quenched = outcome
            .stages
            .iter()
            .find(|stage| stage.step == crate::route::Step::Quench);
        Some(match self {
            Self::SoakC => route.soak.temperature_c,
            Self::SoakMin => route.soak.time_min,
            Self::ThicknessMm => route.section.thickness_mm(),
            Self::TemperC => route.tempers.last()?.temperature_c,
            Self::CarbonWt => outcome.soak.end.carbon_wt,
            Self::CarbidePercent => 100.0 * outcome.soak.end.carbide_volume_fraction,
            Self::GrainAstm => outcome.soak.end.grain_astm,
            Self::MarginFactor => quench?.margin.factor,
            Self::MsC => quench?.ms_c,
            Self::MartensitePercent => percent(|f| f.martensite)?,
            Self::PearliteAndBainitePercent => percent(|f| f.pearlite + f.bainite)?,
            Self::QuenchedAustenitePercent => percent(|f| f.austenite)?,
            Self::QuenchedHrc => quenched?.hardness?.hrc_carried(),
            Self::FinalHrc => last?.hardness?.hrc_carried(),
            Self::FinalAustenitePercent => 100.0 * last?.fractions?.austenite,
            Self::PriorGrainAstm => outcome.prior.last()?.heated.as_ref()?.grain_astm,
            Self::FilmUm => 2.0 * outcome.prior.last()?.heated.as_ref()?.film_half_um,
            Self::FurnaceBandK => route.soak_band_k(),
            Self::FinalBandHrc => last?.band_hrc,
        })
    }

    /// Its name inside a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::SoakC => texts::SOAK,
            Self::SoakMin => texts::SOAK_TIME,
            Self::ThicknessMm => texts::THICKNESS,
            Self::TemperC => texts::TEMPER,
            Self::CarbonWt => texts::CARBON,
            Self::CarbidePercent => texts::CARBIDE,
            Self::GrainAstm => texts::GRAIN,
            Self::MarginFactor => texts::MARGIN,
            Self::MsC => texts::MARTENSITE_START,
            Self::MartensitePercent => texts::MARTENSITE,
            Self::PearliteAndBainitePercent => texts::PEARLITE_AND_BAINITE,
            Self::QuenchedHrc => texts::QUENCHED_HARDNESS,
            Self::QuenchedAustenitePercent => texts::QUENCHED_AUSTENITE,
            Self::FinalHrc => texts::FINAL_HARDNESS,
            Self::FinalAustenitePercent => texts::FINAL_AUSTENITE,
            Self::PriorGrainAstm => texts::PRIOR_GRAIN,
            Self::FilmUm => texts::FILM,
            Self::FurnaceBandK => texts::FURNACE_BAND,
            Self::FinalBandHrc => texts::FINAL_BAND,
        }
    }

    /// Its unit; empty for a factor.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::SoakC | Self::TemperC | Self::MsC => "°C",
            Self::SoakMin => "min",
            Self::ThicknessMm => "mm",
            Self::CarbonWt
            | Self::CarbidePercent
            | Self::MartensitePercent
            | Self::PearliteAndBainitePercent
            | Self::QuenchedAustenitePercent
            | Self::FinalAustenitePercent => "%",
            Self::GrainAstm | Self::PriorGrainAstm => "ASTM",
            Self::MarginFactor => "",
            Self::QuenchedHrc | Self::FinalHrc | Self::FinalBandHrc => "HRC",
            Self::FilmUm => "µm",
            Self::FurnaceBandK => "K",
        }
    }
}
