//! Which measurement would teach most: by how much each would narrow the hardness of the next piece
//! of a route, whatever comes out of it.

use super::estimate::{Estimate, Row, scatter};
use super::model::{Model, by_piece};
use super::plan::{Linear, Measurable, Plan};
use super::run::LearnRun;
use super::slot::Slot;
use crate::advise::law::NINE_IN_TEN;
use crate::heat::Section;
use crate::route::{Route, Thermocouple};
use crate::sources::jcgm_2008;
use crate::units::LengthUnit;
use serde::Serialize;

/// Thicknesses of coupons, as factors on the thickness of the piece (expert values).
const COUPONS: [f64; 5] = [0.5, 1.5, 2.0, 3.0, 4.5];
/// Readings on one piece whose mean is taken (expert value).
const READINGS: f64 = 3.0;
/// Hardness of a test block is known to this, HRC either way, nine in ten (expert value).
const BLOCK_HRC: f64 = 0.5;
/// Temperature in a furnace is known to this beside its thermocouple, K either way: where the piece
/// lies, and the wait until it is steady (expert value).
const SURVEY_K: f64 = 2.0;

/// Something that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "measure", rename_all = "snake_case")]
pub enum Measurement {
    /// Hardness as quenched of a plate of another thickness, in the soak and the quench of the
    /// route, three readings at the centre of the cut.
    Coupon {
        /// Its thickness, mm.
        thickness_mm: f64,
    },
    /// Hardness of the next piece of the route as quenched, three readings.
    AsQuenched,
    /// Hardness of the next piece after its cold bath, three readings.
    AfterCold,
    /// Hardness of the next piece after its last temper, three readings.
    AsTempered,
    /// One more reading on the piece of a run.
    AnotherReading {
        /// The run, by its place in the list.
        run: usize,
    },
    /// A survey of the furnace at the soak with a second thermocouple, type K of class 1.
    FurnaceSurvey,
    /// The same of the oven at the first temper.
    TemperOvenSurvey,
    /// The tester on a test block, three readings.
    TestBlock,
}

/// What a measurement would teach.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NextMeasurement {
    /// Which.
    #[serde(flatten)]
    pub measurement: Measurement,
    /// Half of the band of the next piece's finished hardness after it, nine in ten, HRC.
    pub band_hrc: f64,
    /// What it takes off that half, HRC.
    pub narrower_hrc: f64,
    /// The same in a sentence.
    pub words: String,
}

/// A measurement on a piece that has a plan of its own.
#[derive(Clone)]
pub(super) struct Candidate {
    measurement: Measurement,
    plan: usize,
    what: Measurable,
}

/// Measurements on pieces that the models have to be asked about.
pub(super) fn candidates(model: &mut Model, asked: usize, route: &Route) -> Vec<Candidate> {
    let thickness_mm = match route.section {
        Section::Plate { thickness_mm } => thickness_mm,
        Section::Round { diameter_mm } => diameter_mm,
        Section::Square { side_mm } => side_mm,
        Section::Blade { spine_mm, .. } => spine_mm,
    };
    let mut found: Vec<Candidate> = Vec::new();
    for factor in COUPONS {
        let coupon = Section::Plate {
            thickness_mm: factor * thickness_mm,
        }
        .within_covered();
        let Section::Plate { thickness_mm } = coupon else {
            continue;
        };
        let plan = model.like(asked, |route| {
            route.section = coupon;
            route.cold = None;
            route.tempers.clear();
        });
        found.extend(plan.map(|plan| Candidate {
            measurement: Measurement::Coupon { thickness_mm },
            plan,
            what: Measurable::Quenched,
        }));
    }
    let cold = route
        .cold
        .map(|_| (Measurement::AfterCold, Measurable::Chilled));
    let tempered = route
        .tempers
        .first()
        .map(|_| (Measurement::AsTempered, Measurable::Tempered));
    let quenched = Some((Measurement::AsQuenched, Measurable::Quenched));
    found.extend(
        [quenched, cold, tempered]
            .into_iter()
            .flatten()
            .map(|(measurement, what)| Candidate {
                measurement,
                plan: asked,
                what,
            }),
    );
    found
}

/// The hardness of the next piece of the route asked for.
pub(super) struct Target {
    /// How it changes with the unknowns, in their standard deviations.
    by: Vec<(usize, f64)>,
    /// Variance of what is anew in each piece.
    anew: f64,
}

impl Target {
    pub(super) fn of(model: &Model, plan: &Plan, linear: &Linear) -> Option<Self> {
        let what = Measurable::finished(&plan.route);
        linear.mean(what)?;
        let anew = by_piece(plan, linear, what);
        Some(Self {
            by: model.by_hardness(plan, linear, what),
            anew: anew.iter().map(|by| by * by).sum(),
        })
    }

    /// Half of its band, nine in ten, HRC.
    pub(super) fn band_hrc(&self, estimate: &Estimate) -> f64 {
        band(self.variance(estimate))
    }

    fn variance(&self, estimate: &Estimate) -> f64 {
        estimate.variance_of(&self.by) + self.anew
    }

    /// Its variance after another measurement: of normal errors it does not depend on what comes
    /// out.
    fn variance_after(&self, estimate: &Estimate, row: &Row) -> f64 {
        let shared = estimate.covariance_of(&self.by, &row.by);
        let of_row = estimate.variance_of(&row.by) + scatter(row);
        self.variance(estimate) - shared * shared / of_row
    }
}

fn band(variance: f64) -> f64 {
    NINE_IN_TEN * variance.max(0.0).sqrt()
}

/// What each measurement would teach, that which would teach most first; of coupons the best.
pub(super) fn next_measurements(run: &LearnRun, estimate: &Estimate) -> Vec<NextMeasurement> {
    let model = &run.model;
    let asked = model.plans.get(run.asked_plan);
    let linear = run.now.get(run.asked_plan);
    let Some((plan, target)) = asked
        .zip(linear)
        .and_then(|(plan, linear)| Some((plan, Target::of(model, plan, linear)?)))
    else {
        return Vec::new();
    };
    let mut found: Vec<(Measurement, f64)> = Vec::new();
    for candidate in &run.candidates {
        let row = model
            .plans
            .get(candidate.plan)
            .zip(run.now.get(candidate.plan))
            .and_then(|(plan, linear)| piece_row(model, plan, linear, candidate.what));
        found.extend(row.map(|row| (candidate.measurement, target.variance_after(estimate, &row))));
    }
    for (measurement, slot, variance) in direct(plan) {
        let row = plan.unknown(slot).and_then(|place| {
            Some(Row {
                misfit: 0.0,
                variance,
                by: vec![(place, model.unknowns.0.get(place)?.sd)],
                by_piece: Vec::new(),
            })
        });
        found.extend(row.map(|row| (measurement, target.variance_after(estimate, &row))));
    }
    found.extend(another_reading(run, &target));
    ranked(found, &target, estimate, run.length)
}

fn ranked(
    mut found: Vec<(Measurement, f64)>,
    target: &Target,
    estimate: &Estimate,
    length: LengthUnit,
) -> Vec<NextMeasurement> {
    crate::numeric::order::sort_by(&mut found, |a, b| a.1.total_cmp(&b.1));
    let mut has_coupon = false;
    found.retain(|(measurement, _)| {
        let is_coupon = matches!(measurement, Measurement::Coupon { .. });
        let is_kept = !is_coupon || !has_coupon;
        has_coupon |= is_coupon;
        is_kept
    });
    let now_hrc = target.band_hrc(estimate);
    found
        .into_iter()
        .map(|(measurement, variance)| {
            let band_hrc = band(variance);
            let narrower_hrc = (now_hrc - band_hrc).max(0.0);
            NextMeasurement {
                measurement,
                band_hrc,
                narrower_hrc,
                words: measurement.words(now_hrc, band_hrc, length),
            }
        })
        .collect()
}

/// The mean of some readings on one piece of a plan.
fn piece_row(model: &Model, plan: &Plan, linear: &Linear, what: Measurable) -> Option<Row> {
    linear.mean(what)?;
    Some(Row {
        misfit: 0.0,
        variance: plan.variances.anew.get(Slot::Tester) / READINGS,
        by: model.by(plan, linear, what),
        by_piece: by_piece(plan, linear, what),
    })
}

/// Measurements of an unknown itself, with their variances.
fn direct(plan: &Plan) -> Vec<(Measurement, Slot, f64)> {
    let survey = |at_c: f64| {
        let thermocouple_k = Thermocouple::TypeKClass1.tolerance_k(at_c);
        let sd_k = jcgm_2008::sd_between_limits(thermocouple_k.hypot(SURVEY_K));
        sd_k * sd_k
    };
    let soak_c = plan.route.soak.temperature_c;
    let block =
        (BLOCK_HRC / NINE_IN_TEN).powi(2) + plan.variances.anew.get(Slot::Tester) / READINGS;
    let mut found = vec![
        (Measurement::FurnaceSurvey, Slot::Soak, survey(soak_c)),
        (Measurement::TestBlock, Slot::Tester, block),
    ];
    found.extend(plan.route.tempers.first().map(|temper| {
        let at_c = temper.temperature_c;
        (Measurement::TemperOvenSurvey, Slot::Temper, survey(at_c))
    }));
    found
}

/// One more reading on the last piece that was measured, of the route asked for where there is one.
fn another_reading(run: &LearnRun, target: &Target) -> Option<(Measurement, f64)> {
    let is_asked = |piece: &super::run::Piece| piece.plan == run.asked_plan;
    let place = run
        .pieces
        .iter()
        .rposition(is_asked)
        .or_else(|| run.pieces.len().checked_sub(1))?;
    let estimate = run.re_estimate(&run.rows_with_another(place)?)?;
    let measurement = Measurement::AnotherReading {
        run: run.pieces.get(place)?.run,
    };
    Some((measurement, target.variance(&estimate)))
}
