//! What the model said of a run, and what was measured at the same place.

use super::place;
use super::run::{After, Reading, Run, is_default};
use crate::advise::{ReadAt, is_outside};
use crate::heat::Place;
use crate::route::{MODELS, Outcome, Route, Stage, Step, UNEVEN_HRC, hrc_range};
use crate::units::format_fixed;
use serde::{Deserialize, Serialize};

/// Hardness after the last step as the model said on the day of the run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Predicted {
    /// Hardness of the place that decides, HRC; of what is reached from outside where the former is too soft for
    /// the C scale.
    pub hrc: f64,
    /// Half width of the band that covers nine in ten, HRC.
    pub band_hrc: f64,
    /// How far the middle of the band lies above the hardness, HRC.
    #[serde(default, skip_serializing_if = "is_default")]
    pub band_off_hrc: f64,
    /// Of which place it is; none where all are alike.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "place")]
    pub place: Option<Place>,
    /// The same of what is reached from outside, where places differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outside: Option<PredictedAt>,
    /// Version of the models.
    pub model: String,
    /// Whether what the logbook had taught was counted with.
    #[serde(default, skip_serializing_if = "is_default")]
    pub is_taught: bool,
}

/// What is predicted of one place.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PredictedAt {
    /// Which; none where all are alike.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "place")]
    pub place: Option<Place>,
    /// Hardness, HRC.
    pub hrc: f64,
    /// Half width of the band that covers nine in ten, HRC.
    pub band_hrc: f64,
    /// How far the middle of the band lies above the hardness, HRC.
    #[serde(default, skip_serializing_if = "is_default")]
    pub band_off_hrc: f64,
}

/// What is predicted of a place, and the mean of what was read there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compared {
    /// What is predicted.
    pub predicted: PredictedAt,
    /// The mean after the last step of the route, HRC; none where nothing was read there.
    pub measured_hrc: Option<f64>,
}

impl PredictedAt {
    fn of(place: Option<Place>, stage: &Stage) -> Option<Self> {
        Some(Self {
            place,
            hrc: stage.hrc()?,
            band_hrc: stage.band_hrc,
            band_off_hrc: stage.band_off_hrc,
        })
    }

    /// Between which hardness it is nine times in ten, HRC.
    #[must_use]
    pub fn range_hrc(&self) -> [f64; 2] {
        hrc_range(self.hrc, self.band_hrc, self.band_off_hrc)
    }

    /// The hardness with its band, without a unit: `61.0 ± 1.5`, or `57.6, 47–62` where the sides differ.
    #[must_use]
    pub fn words(&self) -> String {
        let hrc = format_fixed(self.hrc, 1);
        if self.band_off_hrc.abs() < UNEVEN_HRC {
            return format!("{hrc}\u{a0}±\u{a0}{}", format_fixed(self.band_hrc, 1));
        }
        let [least, most] = self.range_hrc().map(|end| format_fixed(end, 0));
        format!("{hrc}, {least}\u{2013}{most}")
    }
}

impl Compared {
    /// Measured minus predicted, HRC.
    #[must_use]
    pub fn difference_hrc(&self) -> Option<f64> {
        Some(self.measured_hrc? - self.predicted.hrc)
    }

    /// Whether the band reaches what was measured.
    #[must_use]
    pub fn is_inside(&self) -> Option<bool> {
        let [least, most] = self.predicted.range_hrc();
        Some((least..=most).contains(&self.measured_hrc?))
    }
}

impl Predicted {
    /// What an outcome predicts after the last step of its route, which holds what runs have taught where
    /// the outcome counts with it; none where that hardness is not known, or is none on the C scale at either
    /// place.
    #[must_use]
    pub fn of(route: &Route, outcome: &Outcome) -> Option<Self> {
        let step = match After::last_of(route) {
            After::Temper => Step::Temper(route.tempers.len()),
            After::Cold => Step::Cold,
            After::Quench => Step::Quench,
        };
        let at = |place, stages: &[Stage]| {
            let last = stages.iter().find(|stage| stage.step == step)?;
            PredictedAt::of(place, last)
        };
        let outside = outcome.outside.as_ref();
        let place = outside.and_then(|_| outcome.quench.named_place());
        let outside = outside.and_then(|outside| at(Some(outside.place), &outside.stages));
        let deciding = at(place, &outcome.stages);
        let first = deciding.or(outside)?;
        Some(Self {
            hrc: first.hrc,
            band_hrc: first.band_hrc,
            band_off_hrc: first.band_off_hrc,
            place: first.place,
            outside: outside.filter(|_| deciding.is_some()),
            model: MODELS.to_owned(),
            is_taught: route.taught.is_some(),
        })
    }

    /// Of the place that is told first.
    pub(super) const fn first(&self) -> PredictedAt {
        PredictedAt {
            place: self.place,
            hrc: self.hrc,
            band_hrc: self.band_hrc,
            band_off_hrc: self.band_off_hrc,
        }
    }
}

impl Run {
    /// What is predicted, place by place, with what was read there; what was read of neither place is left out.
    /// Where all places are alike it counts wherever it was read.
    #[must_use]
    pub fn compared(&self) -> Vec<Compared> {
        let Some(predicted) = &self.predicted else {
            return Vec::new();
        };
        let told = std::iter::once(predicted.first()).chain(predicted.outside);
        let compared = |predicted: PredictedAt| Compared {
            predicted,
            measured_hrc: self.mean_hrc(|reading| {
                let Some(place) = predicted.place else {
                    return true;
                };
                self.is_read_at(reading, place)
            }),
        };
        told.map(compared).collect()
    }

    /// What a list tells of the run: what was measured outside, where a tester reaches, and else what was
    /// measured where the piece decides.
    #[must_use]
    pub fn compared_first(&self) -> Option<Compared> {
        let all = self.compared();
        let mut measured = all.iter().rev();
        let measured = measured.find(|compared| compared.measured_hrc.is_some());
        measured.or(all.first()).copied()
    }

    /// Mean of the readings after the last step of the route, HRC: of those that are compared with the
    /// prediction or, where none is, of all. Readings that have no number on the C scale are left out.
    #[must_use]
    pub fn measured_hrc(&self) -> Option<f64> {
        let compared = self.compared_first();
        let compared_hrc = compared.and_then(|compared| compared.measured_hrc);
        compared_hrc.or_else(|| self.mean_hrc(|_| true))
    }

    /// Measured minus predicted, HRC.
    #[must_use]
    pub fn difference_hrc(&self) -> Option<f64> {
        self.compared_first()?.difference_hrc()
    }

    /// Whether a reading is one of a place.
    fn is_read_at(&self, reading: &Reading, place: Place) -> bool {
        let told = match is_outside(place) {
            true => ReadAt::Outside,
            false => ReadAt::Deciding,
        };
        ReadAt::of(&reading.place, self.route.section) == told
    }

    /// Where readings after the last step were taken that are compared with nothing.
    #[must_use]
    pub fn read_elsewhere(&self) -> Vec<&str> {
        let compared = self.compared();
        let places = || compared.iter().map(|at| at.predicted.place);
        let is_compared = |reading: &&Reading| {
            places().any(|place| place.is_none_or(|place| self.is_read_at(reading, place)))
        };
        let last = After::last_of(&self.route);
        let mut found: Vec<&str> = Vec::new();
        let read = self.readings.iter().filter(|reading| reading.after == last);
        for reading in read.filter(|reading| !is_compared(reading)) {
            let place = reading.place.trim();
            if !compared.is_empty() && !found.contains(&place) {
                found.push(place);
            }
        }
        found
    }

    fn mean_hrc(&self, counts: impl Fn(&Reading) -> bool) -> Option<f64> {
        let last = After::last_of(&self.route);
        let read = self.readings.iter();
        let read = read.filter(|reading| reading.after == last && counts(reading));
        let (sum, count) = read
            .filter_map(Reading::hrc)
            .fold((0.0, 0.0), |(sum, count), hrc| (sum + hrc, count + 1.0));
        (count > 0.0).then_some(sum / count)
    }
}
