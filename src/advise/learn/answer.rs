//! What a logbook teaches, put together for the reader.

use super::correction::{Corrected, Correction};
use super::estimate::Estimate;
use super::logged::{NotUsed, Observed};
use super::model::{Model, by_piece};
use super::next::{NextMeasurement, Target, next_measurements};
use super::plan::{Linear, Measurable};
use super::run::{LearnRun, Piece};
use super::slot::Slot;
use super::unknown::{Owner, Unknown, UnknownKind};
use super::words::{entangled_words, learnt_words};
use crate::advise::law::NINE_IN_TEN;
use crate::advise::shop::Furnace;
use crate::route::{MODELS, hottest_temper_c};
use serde::{Deserialize, Serialize};

/// Correlation from which on two unknowns cannot be told apart: of the variance of either less than
/// half is its own (expert value).
const ENTANGLED: f64 = 0.7;
/// Weight below which a reading is an outlier: it lies 2.7 standard deviations off.
const OUTLIER_WEIGHT: f64 = 0.5;

/// Where a number lies.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// The most probable value; of a factor the median.
    pub mean: f64,
    /// One in twenty lies below.
    pub least: f64,
    /// One in twenty lies above.
    pub most: f64,
}

impl Band {
    const fn normal(mean: f64, sd: f64) -> Self {
        Self {
            mean,
            least: mean - NINE_IN_TEN * sd,
            most: mean + NINE_IN_TEN * sd,
        }
    }

    /// How far it may be off either way.
    fn half(self) -> f64 {
        0.5 * (self.most - self.least)
    }

    fn exp(self) -> Self {
        Self {
            mean: self.mean.exp(),
            least: self.least.exp(),
            most: self.most.exp(),
        }
    }
}

/// An unknown, before the logbook and after it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Learnt {
    /// What.
    pub kind: UnknownKind,
    /// Of what, inside a sentence.
    pub of: String,
    /// Of what.
    #[serde(skip)]
    pub owner: Owner,
    /// Its unit; empty for a factor.
    pub unit: &'static str,
    /// Before.
    pub before: Band,
    /// After.
    pub after: Band,
    /// Runs that tell of it.
    pub runs: usize,
    /// Part by which the band is narrower; of a factor that of its logarithm.
    pub narrower_part: f64,
    /// The coolest and the hottest temper, as asked, °C, after which it was read; of a hardness after
    /// tempering.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tempers_c: Option<[f64; 2]>,
    /// Where the band before comes from.
    pub source: &'static str,
    /// The same in a sentence.
    pub words: String,
}

/// Two unknowns of which the measurements so far do not tell which it is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Entangled {
    /// Places of the two in the list of unknowns.
    pub unknowns: [usize; 2],
    /// Their correlation, -1 to 1.
    pub correlation: f64,
    /// The same in a sentence.
    pub words: String,
}

/// What was measured of one kind on the piece of a run, beside what is computed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Compared {
    /// The run, by its place in the list.
    pub run: usize,
    /// Name of the run.
    pub name: String,
    /// What was measured: `quenched_hrc`, `cold_hrc`, `tempered_hrc` or `austenite_vol_percent`.
    pub what: &'static str,
    /// Mean of the readings.
    pub measured: f64,
    /// How many.
    pub readings: usize,
    /// As predicted before, with everything that can be off about the piece and its reading.
    pub before: Band,
    /// The same with what the logbook teaches.
    pub after: Band,
    /// Weight of the reading that counts least, 0 to 1.
    pub weight: f64,
    /// Whether that one lies so far off that it is an outlier.
    pub is_outlier: bool,
    /// Whether something was done otherwise than planned, as told in words: the models take the
    /// route as planned.
    pub is_told_otherwise: bool,
}

/// Hardness of the next piece of the route asked for, after its last step, HRC.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Prediction {
    /// Before the logbook.
    pub before: Band,
    /// With what it teaches.
    pub after: Band,
}

/// What a logbook teaches.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Learned {
    /// The unknowns.
    pub unknowns: Vec<Learnt>,
    /// Pairs of them that cannot be told apart.
    pub entangled: Vec<Entangled>,
    /// What was measured, beside what is computed.
    pub compared: Vec<Compared>,
    /// What teaches nothing, and why.
    pub not_used: Vec<NotUsed>,
    /// The route asked for; none where the models do not tell its hardness.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub prediction: Option<Prediction>,
    /// What could be measured next, that which would teach most first.
    pub next: Vec<NextMeasurement>,
    /// The furnaces of the shop.
    #[serde(skip)]
    furnaces: Vec<Furnace>,
}

impl Learned {
    /// What later predictions take from it, switched off.
    #[must_use]
    pub fn correction(&self) -> Correction {
        let kind_at = |place: usize| self.unknowns.get(place).map(|learnt| learnt.kind);
        let not_apart_from = |place: usize| {
            let others = self
                .entangled
                .iter()
                .filter_map(|pair| match pair.unknowns {
                    [a, b] if a == place => kind_at(b),
                    [a, b] if b == place => kind_at(a),
                    _ => None,
                });
            others.collect()
        };
        let corrected = |(place, learnt): (usize, &Learnt)| Corrected {
            kind: learnt.kind,
            owner: learnt.owner.clone(),
            value: learnt.kind.within_allowed(learnt.after.mean),
            left_part: 1.0 - learnt.narrower_part,
            runs: learnt.runs,
            tempers_c: learnt.tempers_c,
            half_band: (!learnt.kind.is_factor())
                .then(|| learnt.after.half())
                .map(|half| half.min(learnt.kind.widest())),
            entangled_with: not_apart_from(place),
        };
        Correction {
            is_on: false,
            models: Some(MODELS.to_owned()),
            furnaces: self.furnaces.clone(),
            learnt: self.unknowns.iter().enumerate().map(corrected).collect(),
        }
    }

    pub(super) fn of(run: &LearnRun, estimate: &Estimate) -> Self {
        let nothing = Estimate::of_nothing(estimate.at.len());
        let before = Stand {
            model: &run.model,
            linears: &run.before,
            straightened_at: &nothing.at,
            known: &nothing,
        };
        let after = Stand {
            model: &run.model,
            linears: &run.now,
            straightened_at: &run.now_at,
            known: estimate,
        };
        let unknowns = learnt(run, estimate);
        let pieces = run.pieces.iter().zip(&estimate.weights);
        Self {
            entangled: entangled(&unknowns, estimate),
            compared: pieces
                .flat_map(|(piece, weights)| compared(run, piece, weights, [&before, &after]))
                .collect(),
            not_used: run.not_used.clone(),
            prediction: before
                .finished(run.asked_plan)
                .zip(after.finished(run.asked_plan))
                .map(|(before, after)| Prediction { before, after }),
            next: if run.is_done() {
                next_measurements(run, estimate)
            } else {
                Vec::new()
            },
            unknowns,
            furnaces: run.model.furnaces().to_vec(),
        }
    }
}

/// What is computed and known at one time.
struct Stand<'a> {
    model: &'a Model,
    linears: &'a [Linear],
    straightened_at: &'a [f64],
    known: &'a Estimate,
}

impl Stand<'_> {
    /// What the mean of some readings on a piece of a plan should show, the variance of one of which
    /// is known.
    fn shown(&self, place: usize, what: Measurable, variance: f64) -> Option<Band> {
        let plan = self.model.plans.get(place)?;
        let linear = self.linears.get(place)?;
        let by = self.model.by(plan, linear, what);
        let anew: f64 = by_piece(plan, linear, what).iter().map(|by| by * by).sum();
        let sd = (self.known.variance_of(&by) + anew + variance)
            .max(0.0)
            .sqrt();
        Some(Band::normal(self.value(&by, linear.mean(what)?), sd))
    }

    /// Hardness of a piece of a plan after its last step, whatever the tester shows.
    fn finished(&self, place: usize) -> Option<Band> {
        let plan = self.model.plans.get(place)?;
        let linear = self.linears.get(place)?;
        let what = Measurable::finished(&plan.route);
        let half_hrc = Target::of(self.model, plan, linear)?.band_hrc(self.known);
        let by = self.model.by_hardness(plan, linear, what);
        let tester_hrc = plan.unknown(Slot::Tester).and_then(|tester| {
            let sd_hrc = self.model.unknowns.0.get(tester)?.sd;
            Some(sd_hrc * self.straightened_at.get(tester)?)
        });
        let hrc = linear.mean(what)? - tester_hrc.unwrap_or_default();
        Some(Band::normal(self.value(&by, hrc), half_hrc / NINE_IN_TEN))
    }

    /// A number that was computed where all was straightened, at what is known.
    fn value(&self, by: &[(usize, f64)], computed: f64) -> f64 {
        let at = |list: &[f64], place: usize| list.get(place).copied().unwrap_or_default();
        let moved = by.iter().map(|(place, by)| {
            by * (at(&self.known.at, *place) - at(self.straightened_at, *place))
        });
        computed + moved.sum::<f64>()
    }
}

fn learnt(run: &LearnRun, estimate: &Estimate) -> Vec<Learnt> {
    let all = run.model.unknowns.0.iter().zip(&estimate.at).enumerate();
    all.map(|(place, (unknown, z))| {
        let part = estimate.covariance.at(place, place).max(0.0).sqrt();
        let band = |z: f64, part: f64| {
            let band = Band::normal(unknown.from + unknown.sd * z, unknown.sd * part);
            if unknown.kind.is_factor() {
                band.exp()
            } else {
                band
            }
        };
        let (before, after) = (band(0.0, 1.0), band(*z, part));
        let narrower_part = (1.0 - part).max(0.0);
        let Unknown { kind, owner, .. } = unknown;
        let of = owner.name(run.model.furnaces(), run.scale);
        let tells = |piece: &&Piece| {
            let plan = run.model.plans.get(piece.plan);
            plan.zip(run.now.get(piece.plan))
                .is_some_and(|(plan, linear)| {
                    let by = |seen: &Observed| run.model.by(plan, linear, seen.what);
                    let mut all = piece.observed.iter().flat_map(by);
                    all.any(|(of, _)| of == place)
                })
        };
        Learnt {
            words: learnt_words(*kind, &of, [before, after], narrower_part, run.scale),
            kind: *kind,
            of,
            owner: owner.clone(),
            unit: kind.unit(),
            before,
            after,
            runs: run.pieces.iter().filter(tells).count(),
            narrower_part,
            tempers_c: (*kind == UnknownKind::TemperedHardness)
                .then(|| tempers_c(run, estimate, place))
                .flatten(),
            source: kind.source(),
        }
    })
    .collect()
}

/// The coolest and the hottest temper of the pieces that tell of a hardness after tempering, of each its
/// hottest. A reading that lies far off tells little, and of its temper nothing.
fn tempers_c(run: &LearnRun, estimate: &Estimate, place: usize) -> Option<[f64; 2]> {
    let pieces = run.pieces.iter().zip(&estimate.weights);
    let told = pieces.filter_map(|(piece, weights)| {
        let plan = run.model.plans.get(piece.plan)?;
        let is_of_it = plan.unknown(Slot::Tempered) == Some(place);
        let mut seen = piece.observed.iter().zip(weights);
        let is_told = seen
            .any(|(seen, weight)| seen.what == Measurable::Tempered && *weight >= OUTLIER_WEIGHT);
        hottest_temper_c(&plan.route.tempers).filter(|_| is_of_it && is_told)
    });
    told.fold(None, |range, at_c| {
        let [least_c, most_c] = range.unwrap_or([at_c, at_c]);
        Some([f64::min(least_c, at_c), f64::max(most_c, at_c)])
    })
}

fn entangled(unknowns: &[Learnt], estimate: &Estimate) -> Vec<Entangled> {
    let covariance = &estimate.covariance;
    let mut found = Vec::new();
    for (i, a) in unknowns.iter().enumerate() {
        for (j, b) in unknowns.iter().enumerate().skip(i + 1) {
            let variances = covariance.at(i, i) * covariance.at(j, j);
            let correlation = covariance.at(i, j) / variances.sqrt();
            if correlation.abs() >= ENTANGLED {
                found.push(Entangled {
                    unknowns: [i, j],
                    correlation,
                    words: entangled_words(a, b),
                });
            }
        }
    }
    crate::numeric::order::sort_by(&mut found, |a: &Entangled, b| {
        b.correlation.abs().total_cmp(&a.correlation.abs())
    });
    found
}

fn compared(
    run: &LearnRun,
    piece: &Piece,
    weights: &[f64],
    [before, after]: [&Stand<'_>; 2],
) -> Vec<Compared> {
    let logged = run.runs.get(piece.run);
    let reading_variance = run
        .model
        .plans
        .get(piece.plan)
        .map_or(0.0, |plan| plan.variances.anew.get(Slot::Tester));
    let of_kind = |what: Measurable| {
        let seen = piece.observed.iter().zip(weights);
        let seen: Vec<(&Observed, f64)> = seen
            .filter(|(seen, _)| seen.what == what)
            .map(|(seen, weight)| (seen, *weight))
            .collect();
        let (first, _) = seen.first()?;
        let readings = seen.len();
        let variance = first.variance(reading_variance) / readings as f64;
        let weight = seen
            .iter()
            .fold(1.0_f64, |least, (_, weight)| least.min(*weight));
        Some(Compared {
            run: piece.run,
            name: logged.map_or_else(String::new, |run| run.name.clone()),
            what: what.name(),
            measured: seen.iter().map(|(seen, _)| seen.value).sum::<f64>() / readings as f64,
            readings,
            before: before.shown(piece.plan, what, variance)?,
            after: after.shown(piece.plan, what, variance)?,
            weight,
            is_outlier: weight < OUTLIER_WEIGHT,
            is_told_otherwise: logged.is_some_and(|run| run.is_told_otherwise),
        })
    };
    Measurable::ALL.into_iter().filter_map(of_kind).collect()
}
