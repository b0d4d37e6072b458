//! The tempers of a route, and the chart of them.

use super::hardening::Hardened;
use super::outcome::{Stage, Step, TemperOutcome, TemperPoint};
use super::plan::{Route, Temper};
use crate::hardness::{
    self, AsQuenched, TemperStep, Tempered, embrittling_range_c, grade_table, temper_curve,
    temperatures_for_each, time_for,
};
use crate::steel::{Composition, OutOfRange};
use crate::transform::Fractions;

/// Temperatures of the temper chart, °C.
const CHART_C: (f64, f64) = (100.0, 700.0);
/// Points of the temper chart.
const CHART_POINTS: usize = 61;

/// The tempers of a route.
pub(super) struct Tempering {
    start: AsQuenched,
    start_hrc: Option<f64>,
    /// How far the piece before the first temper may be off beside the models' band, HRC.
    open_hrc: f64,
    tempered: Vec<Tempered>,
    /// Whether constituents are followed, or only a grade's table is known.
    is_table: bool,
}

impl Tempering {
    /// Tempers the piece that left the quench and the cold bath; where the quench is not known, a
    /// grade with a tempering table is tempered as hardened through.
    pub(super) fn of(
        steel: &Composition,
        tempers: &[Temper],
        ready: Option<&Hardened>,
    ) -> Result<Self, OutOfRange> {
        let is_table = grade_table(steel).is_some();
        let start = ready.map_or_else(
            || AsQuenched::fully_martensitic(steel),
            Hardened::as_quenched,
        );
        let steps: Vec<TemperStep> = tempers.iter().map(step_of).collect();
        Ok(Self {
            tempered: hardness::temper(&start, steel, &steps)?,
            start,
            start_hrc: ready.and_then(|piece| piece.hardness.hrc()),
            open_hrc: ready.map_or(0.0, Hardened::open_hrc),
            is_table,
        })
    }

    /// Each temper as a step of the outcome.
    pub(super) fn stages(&self) -> impl Iterator<Item = Stage> + '_ {
        self.tempered.iter().enumerate().map(|(i, tempered)| Stage {
            step: Step::Temper(i + 1),
            fractions: (!self.is_table).then(|| after_temper(&self.start.constituents, tempered)),
            hardness: Some(tempered.hardness),
            band_hrc: tempered.band_hrc.hypot(self.open_hrc),
            band_off_hrc: 0.0,
            quench_swing_hrc: [0.0; 2],
        })
    }

    /// Points of the temper chart: as many tempers as planned, all of the first one's time.
    pub(super) fn curve(&self, route: &Route) -> Result<Vec<TemperPoint>, OutOfRange> {
        let (time_s, count) = alike(route);
        let (from_c, to_c) = CHART_C;
        // The chart is over temperatures as they are asked.
        let taught = route.taught();
        let hotter_k = route.moved_tempers_k();
        let temperatures_c: Vec<f64> = (0..CHART_POINTS)
            .map(|i| from_c + (to_c - from_c) * i as f64 / (CHART_POINTS - 1) as f64 + hotter_k)
            .collect();
        let curve = temper_curve(
            &self.start,
            &route.composition,
            &temperatures_c,
            time_s,
            count,
        )?;
        let points = curve.into_iter().map(|point| {
            let taught = taught.as_made_at(point.temperature_c);
            TemperPoint {
                temperature_c: point.temperature_c - hotter_k,
                hrc: point.hrc + taught.off.tempered_hrc,
                band_hrc: (taught.left.tempered * point.band_hrc).hypot(self.open_hrc),
                band_off_hrc: 0.0,
            }
        });
        Ok(points.collect())
    }

    /// The temper chart.
    pub(super) fn chart(&self, route: &Route) -> Result<TemperOutcome, OutOfRange> {
        let steel = &route.composition;
        let (time_s, count) = alike(route);
        let taught = route.taught();
        let hotter_k = route.moved_tempers_k();
        let curve = self.curve(route)?;
        let middle_hrc = 0.5 * (route.target.least_hrc + route.target.most_hrc);
        let wanted_hrc = |temper_c| middle_hrc - taught.as_made_at(temper_c).off.tempered_hrc;
        let meets_target_c = temperatures_for_each(&self.start, steel, time_s, count, wanted_hrc)?
            .into_iter()
            .map(|choice| choice.temperature_c - hotter_k)
            .collect();
        let meets_target_s = match route.tempers.first() {
            Some(&Temper { temperature_c, .. }) => {
                let wanted_hrc = wanted_hrc(temperature_c);
                time_for(&self.start, steel, temperature_c, count, wanted_hrc)?
            }
            None => None,
        };
        Ok(TemperOutcome {
            start_hrc: self
                .start_hrc
                .map(|hrc| hrc + taught.off.quenched_hrc)
                .or_else(|| curve.first().map(|point| point.hrc))
                .unwrap_or_default(),
            curve,
            embrittling_c: embrittling_range_c(steel).map(|c| c - hotter_k),
            meets_target_c,
            meets_target_s,
        })
    }
}

/// Time, s, and number of the tempers of a chart.
fn alike(route: &Route) -> (f64, u32) {
    let time_s = route.tempers.first().map_or(3600.0, |t| 60.0 * t.time_min);
    (
        time_s,
        u32::try_from(route.tempers.len().max(1)).unwrap_or(1),
    )
}

/// What a piece consists of after tempering: austenite that has decomposed counts as tempered
/// martensite.
pub(super) fn after_temper(before: &Fractions, tempered: &Tempered) -> Fractions {
    let left = tempered
        .retained_austenite_volume_fraction
        .unwrap_or(before.austenite)
        .clamp(0.0, before.austenite);
    Fractions {
        martensite: before.martensite + before.austenite - left,
        austenite: left,
        ..*before
    }
}

pub(super) fn step_of(temper: &Temper) -> TemperStep {
    TemperStep {
        temperature_c: temper.temperature_c,
        time_s: 60.0 * temper.time_min,
    }
}
