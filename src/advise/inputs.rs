//! What is open about a route, each part with its distribution, where that comes from, and what
//! part of the pipeline it enters.

use super::case::Case;
use super::error::{AdviseError, check};
use super::law::{Law, NINE_IN_TEN, cut_normal};
use crate::hardness::AS_QUENCHED_BAND_HRC;
use crate::route::{NOSE_BAND, Route, Step, Taught, Trial};
use crate::steel::{Composition, Element, Grade, OpenContent};
use recalesce_texts::advise::inputs as texts;
use serde::{Deserialize, Serialize};

/// What a route does not tell of its own uncertainty.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Tolerances {
    /// How far the piece may be from a temper's temperature, K either way: 0 to 100. Where it is not
    /// told, the temper is done in the furnace of the soak, and as far off as that may be there.
    pub temper_band_k: Option<f64>,
    /// How far every thickness may be from the one told, mm either way: 0 to 5.
    pub thickness_band_mm: f64,
    /// How far a content may be from that of a certificate, either way as a part of it, nine times
    /// in ten: 0 to 0.5.
    pub certificate_part: f64,
}

impl Default for Tolerances {
    /// Expert values: a piece ground to a tenth of a millimetre, and contents of one heat that two
    /// laboratories find within three per cent.
    fn default() -> Self {
        Self {
            temper_band_k: None,
            thickness_band_mm: 0.1,
            certificate_part: 0.03,
        }
    }
}

impl Tolerances {
    pub(super) fn check(&self) -> Result<(), AdviseError> {
        if let Some(band_k) = self.temper_band_k {
            check("temper_band_k", band_k, (0.0, 100.0), "K")?;
        }
        check(
            "thickness_band_mm",
            self.thickness_band_mm,
            (0.0, 5.0),
            "mm",
        )?;
        check("certificate_part", self.certificate_part, (0.0, 0.5), "")
    }
}

/// Something that is open about a route.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Input {
    /// What the heat consists of, of a steel known by its grade.
    Chemistry,
    /// What the heat consists of, within the tolerance of its certificate.
    Certificate,
    /// Control and evenness of the furnace at the soak.
    Furnace,
    /// The thermocouple that the furnace goes by.
    Thermocouple,
    /// Thickness of the piece.
    Thickness,
    /// Heat transfer of the quenchant.
    HeatTransfer,
    /// The model's time of the nose.
    Nose,
    /// The model's start of martensite.
    Ms,
    /// The model's hardness before the first temper.
    QuenchedHardness,
    /// Temperature of the tempers.
    TemperOven,
    /// The model's hardness after a temper.
    TemperedHardness,
}

impl Input {
    /// Its name inside a sentence.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chemistry => texts::CHEMISTRY,
            Self::Certificate => texts::CERTIFICATE,
            Self::Furnace => texts::FURNACE,
            Self::Thermocouple => texts::THERMOCOUPLE,
            Self::Thickness => texts::THICKNESS,
            Self::HeatTransfer => texts::HEAT_TRANSFER,
            Self::Nose => texts::NOSE,
            Self::Ms => texts::MARTENSITE_START,
            Self::QuenchedHardness => texts::QUENCHED_HARDNESS,
            Self::TemperOven => texts::TEMPER_OVEN,
            Self::TemperedHardness => texts::TEMPERED_HARDNESS,
        }
    }

    /// Whether the shop can do anything about it by better work: neither about the models nor about
    /// the heat that it bought.
    #[must_use]
    pub(super) const fn is_in_shops_hands(self) -> bool {
        !self.is_of_model() && !matches!(self, Self::Chemistry | Self::Certificate)
    }

    /// Whether it is an error of the models, which no shop can do anything about.
    #[must_use]
    pub const fn is_of_model(self) -> bool {
        matches!(
            self,
            Self::Nose | Self::Ms | Self::QuenchedHardness | Self::TemperedHardness
        )
    }
}

/// A content of the steel that is open.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Content {
    /// Symbol of the element.
    pub element: &'static str,
    /// Least, wt %.
    pub least_wt: f64,
    /// As likely above as below, wt %.
    pub usual_wt: f64,
    /// Most, wt %.
    pub most_wt: f64,
}

/// How something open is distributed. All are independent of each other.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Distribution {
    /// A deviation, in the unit told beside it, or a factor.
    Scalar(Law),
    /// Contents, each by itself: on each side of the usual one half of a normal distribution, of
    /// which the limit lies where nine in ten would, and which ends there.
    Contents {
        /// Which.
        contents: Vec<Content>,
    },
}

/// Something open, with its distribution.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OpenInput {
    /// What.
    pub input: Input,
    /// How it is distributed.
    #[serde(flatten)]
    pub distribution: Distribution,
    /// Unit of the deviation; empty for a factor.
    pub unit: &'static str,
    /// Where that comes from.
    pub source: &'static str,
}

impl OpenInput {
    /// Coordinates that a case of it takes.
    pub(super) fn coordinates(&self) -> usize {
        match &self.distribution {
            Distribution::Scalar(_) => 1,
            Distribution::Contents { contents } => contents.len(),
        }
    }

    /// Its law, where it is one number.
    pub(super) const fn law(&self) -> Option<&Law> {
        match &self.distribution {
            Distribution::Scalar(law) => Some(law),
            Distribution::Contents { .. } => None,
        }
    }

    /// Puts it into a case, at coordinates above 0 and below 1.
    pub(super) fn enter(&self, case: &mut Case, at: &[f64]) {
        let law = match &self.distribution {
            Distribution::Contents { contents } => {
                for (content, part) in contents.iter().zip(at) {
                    content.enter(&mut case.steel, *part);
                }
                return;
            }
            Distribution::Scalar(law) => law,
        };
        let value = law.value(at.first().copied().unwrap_or(0.5));
        let off = &mut case.off;
        match self.input {
            Input::Chemistry | Input::Certificate => {}
            Input::Furnace | Input::Thermocouple => off.soak_k += value,
            Input::Thickness => off.thickness_mm += value,
            Input::HeatTransfer => off.heat_transfer_factor *= value,
            Input::Nose => off.nose_time_factor *= value,
            Input::Ms => off.ms_k += value,
            Input::QuenchedHardness => off.quenched_hrc += value,
            Input::TemperOven => off.temper_k += value,
            Input::TemperedHardness => off.tempered_hrc += value,
        }
    }
}

impl Content {
    fn enter(&self, steel: &mut Composition, part: f64) {
        let Some(element) = Element::ALL
            .into_iter()
            .find(|e| e.symbol() == self.element)
        else {
            return;
        };
        let way = cut_normal(part, NINE_IN_TEN) / NINE_IN_TEN;
        let limit_wt = if way < 0.0 {
            self.least_wt
        } else {
            self.most_wt
        };
        steel.set(
            element,
            self.usual_wt + way.abs() * (limit_wt - self.usual_wt),
        );
    }
}

/// Root mean square error of the start of martensite, K, below and above a content of carbon in
/// solution, wt %: that of the project's score.
const MS_RMS_K: [f64; 2] = [18.0, 33.0];
const MS_CARBON_WT: f64 = 0.7;

/// All that is open about a route whose planned trial is known, in the order of the route. Of what
/// earlier runs have taught, what is left.
pub(super) fn open_inputs(
    route: &Route,
    planned: &Trial,
    tolerances: &Tolerances,
) -> Result<Vec<OpenInput>, AdviseError> {
    let Taught { off, left, .. } = route.taught();
    let soak_c = route.soak.temperature_c + off.soak_k;
    let limits = |half_width| Law::Uniform { half_width };
    let heat_transfer = Law::of_band_factor(widest_band_factor(route, planned.bath_at_ms)?);
    let ms_sd = MS_RMS_K[usize::from(planned.soak.carbon_wt > MS_CARBON_WT)];
    let mut scalars = vec![
        (
            Input::Furnace,
            limits(route.furnace_band_k).narrowed(left.furnace),
            "K",
            texts::FURNACE_BAND,
        ),
        (
            Input::Thermocouple,
            limits(route.thermocouple.tolerance_k(soak_c)).narrowed(left.thermocouple),
            "K",
            texts::THERMOCOUPLE_CLASS,
        ),
        (
            Input::Thickness,
            limits(tolerances.thickness_band_mm),
            "mm",
            texts::PIECE_TOLERANCE,
        ),
        (
            Input::HeatTransfer,
            heat_transfer.narrowed(left.heat_transfer),
            "",
            texts::QUENCHANT_BAND,
        ),
        (
            Input::Nose,
            Law::of_band_factor(NOSE_BAND).narrowed(left.nose),
            "",
            texts::NOSE_ERROR,
        ),
        (
            Input::Ms,
            Law::Normal { sd: ms_sd }.narrowed(left.ms),
            "K",
            texts::MARTENSITE_START_ERROR,
        ),
        (
            Input::QuenchedHardness,
            Law::normal_of_band(AS_QUENCHED_BAND_HRC).narrowed(left.quenched),
            "HRC",
            texts::QUENCHED_HARDNESS_ERROR,
        ),
    ];
    let snap = route.cold.as_ref().and_then(|cold| cold.snap.as_ref());
    if let Some(temper) = route.tempers.first().or(snap) {
        let of_temper_k = route.thermocouple.tolerance_k(temper.temperature_c);
        let own_k = route.furnace_band_k.hypot(of_temper_k);
        let oven = limits(tolerances.temper_band_k.unwrap_or(own_k)).narrowed(left.temper);
        scalars.push((Input::TemperOven, oven, "K", texts::OVEN_BAND));
    }
    let tempered = planned
        .finished(route)
        .filter(|stage| matches!(stage.step, Step::Temper(_)));
    if let Some(stage) = tempered {
        let hardness = Law::normal_of_band(stage.band_hrc).narrowed(left.tempered);
        scalars.push((
            Input::TemperedHardness,
            hardness,
            "HRC",
            texts::TEMPERED_HARDNESS_ERROR,
        ));
    }
    let contents = open_contents(route, tolerances);
    let chemistry = (!contents.is_empty()).then(|| chemistry(route, contents));
    let open = scalars.into_iter().filter(|(_, law, ..)| law.is_open());
    let scalars = open.map(|(input, law, unit, source)| OpenInput {
        input,
        distribution: Distribution::Scalar(law),
        unit,
        source,
    });
    Ok(chemistry.into_iter().chain(scalars).collect())
}

fn chemistry(route: &Route, contents: Vec<Content>) -> OpenInput {
    let (input, source) = if grade_contents(route).is_some() {
        (Input::Chemistry, texts::GRADE_LIMITS)
    } else {
        (Input::Certificate, texts::CERTIFICATE_TOLERANCE)
    };
    OpenInput {
        input,
        distribution: Distribution::Contents { contents },
        unit: "wt %",
        source,
    }
}

/// Contents that a steel known by its grade alone leaves open; none where a certificate or a test of
/// the heat tells more.
fn grade_contents(route: &Route) -> Option<Vec<OpenContent>> {
    Some(only_known_grade(route)?.open_contents().collect())
}

/// The grade of a steel of which nothing more is known; none where a certificate or a test of the
/// heat tells more.
pub(super) fn only_known_grade(route: &Route) -> Option<&'static Grade> {
    let grade = route.listed_grade()?;
    (grade.nominal == route.composition && route.end_quench.is_empty()).then_some(grade)
}

fn open_contents(route: &Route, tolerances: &Tolerances) -> Vec<Content> {
    let of_certificate = || {
        let alloying = Element::ALL
            .into_iter()
            .filter(|element| !matches!(element, Element::P | Element::S));
        let contents = alloying.map(|element| {
            let usual_wt = route.composition.get(element);
            OpenContent {
                element,
                least_wt: usual_wt * (1.0 - tolerances.certificate_part),
                usual_wt,
                most_wt: (usual_wt * (1.0 + tolerances.certificate_part)).min(element.largest_wt()),
            }
        });
        contents.collect()
    };
    let contents: Vec<OpenContent> = grade_contents(route).unwrap_or_else(of_certificate);
    contents
        .iter()
        .filter(|content| content.most_wt > content.least_wt)
        .map(|content| Content {
            element: content.element.symbol(),
            least_wt: content.least_wt,
            usual_wt: content.usual_wt,
            most_wt: content.most_wt,
        })
        .collect()
}

/// The widest band factor of the baths of a route up to one of them, counted from zero.
fn widest_band_factor(route: &Route, last: usize) -> Result<f64, AdviseError> {
    let later = route.quench.then.iter().map(|bath| &bath.medium);
    let mut widest = 1.0_f64;
    for medium in std::iter::once(&route.quench.medium).chain(later.take(last)) {
        widest = widest.max(medium.resolve()?.h_band_factor);
    }
    Ok(widest)
}

#[cfg(test)]
#[path = "inputs_tests.rs"]
mod tests;
