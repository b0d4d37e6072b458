//! From the soaked piece to the finished one at the place that decides: its quench, the curve by
//! which the margin is judged, and the steps after it. The whole outcome and a trial share it.

use super::baths::{Baths, until_arrival};
use super::hardening::{Hardened, Hardening};
use super::outcome::{Outcome, Stage, Step};
use super::plan::{Route, Temper};
use super::settled::settled_c;
use super::tempering::Tempering;
use crate::heat::{Cooled, CoolingCurve, HeatError, Quenching, cool, cool_turning};
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Fractions, Kinetics};
use std::borrow::Cow;

/// Bainite that makes a stay in a hot bath a hold for bainite, as a fraction of the matrix.
const HOLD_BAINITE: f64 = 0.1;
/// Hardened fraction above which so little has formed that its heat does not count.
const NOTHING_FORMED: f64 = 0.995;

/// A soaked piece after its quench.
pub(super) struct QuenchedPiece {
    /// Its austenite, or why no model covers it: its cooling is known all the same.
    pub(super) hardening: Result<Hardening, OutOfRange>,
    /// How it has cooled.
    pub(super) cooled: Cooled,
    /// The place that decides; none where the cooling has no curve.
    pub(super) quenched: Result<Option<Hardened>, OutOfRange>,
}

impl QuenchedPiece {
    /// Quenches an austenite.
    pub(super) fn of(
        hardening: Result<Hardening, OutOfRange>,
        quench: &Quenching<'_>,
    ) -> Result<Self, HeatError> {
        let cooled = match &hardening {
            Ok(hardening) => cool_turning(quench, &mut hardening.turning())?,
            Err(_) => cool(quench)?,
        };
        let quenched = match (&hardening, cooled.slowest()) {
            (Ok(hardening), Some(curve)) => hardening.quench(curve).map(Some),
            (Ok(_), None) => Ok(None),
            (Err(refusal), _) => Err(refusal.clone()),
        };
        Ok(Self {
            hardening,
            cooled,
            quenched,
        })
    }
}

/// The bath in which a curve passes Ms, °C, counted from zero.
pub(super) fn bath_at_ms(cooled: &Cooled, curve: &CoolingCurve, ms_c: f64) -> usize {
    let ms_s = curve.time_to_c(ms_c).unwrap_or(f64::INFINITY);
    let changes_s = &cooled.changes_s;
    changes_s.partition_point(|change_s| *change_s <= ms_s)
}

/// The curves by which the margins of a quench are judged.
pub(super) struct Judged<'a> {
    /// Temperature of the bath above Ms in which the piece is held for bainite, °C, if any.
    pub(super) held_c: Option<f64>,
    /// The bath in which the deciding place passes Ms, counted from zero.
    pub(super) bath_at_ms: usize,
    /// The curves of all places, without heat of what forms.
    curves: Cow<'a, [CoolingCurve]>,
    deciding: usize,
}

impl<'a> Judged<'a> {
    /// Those of a cooling; curve and constituents are of the deciding place.
    pub(super) fn of(
        quench: &Quenching<'_>,
        baths: &Baths,
        kinetics: &Kinetics,
        cooled: &'a Cooled,
        curve: &CoolingCurve,
        fractions: &Fractions,
    ) -> Self {
        let ms_c = kinetics.ms_c();
        let held_c = baths
            .held_c(ms_c)
            .filter(|_| fractions.bainite_of_matrix() >= HOLD_BAINITE);
        Self {
            held_c,
            bath_at_ms: bath_at_ms(cooled, curve, ms_c),
            curves: without_heat(quench, fractions, kinetics, baths)
                .map_or(Cow::Borrowed(&cooled.curves), Cow::Owned),
            deciding: cooled.slowest,
        }
    }

    /// The curve of a place, counted as those of the cooling, as far as the arrival in a bath in
    /// which it is held.
    pub(super) fn curve(&self, place: usize) -> Option<Cow<'_, CoolingCurve>> {
        let curve = self.curves.get(place)?;
        Some(match self.held_c {
            Some(bath_c) => Cow::Owned(until_arrival(curve, bath_c)),
            None => Cow::Borrowed(curve),
        })
    }

    /// That of the place that decides.
    pub(super) fn deciding(&self) -> Option<Cow<'_, CoolingCurve>> {
        self.curve(self.deciding)
    }
}

/// The curve of the place that decides as its margin is judged on it, from those of the outcome.
pub(super) fn judged_curve(
    route: &Route,
    outcome: &Outcome,
    kinetics: &Kinetics,
) -> Option<CoolingCurve> {
    let baths = Baths::of(&route.quench).ok()?;
    let fractions = &outcome.quench.transformed.given()?.fractions;
    let ms_c = kinetics.ms_c();
    let deciding = outcome.quench.deciding;
    let quench = baths.quenching(route);
    let curve = match without_heat(&quench, fractions, kinetics, &baths) {
        Some(curves) => curves.get(deciding)?.clone(),
        None => outcome.quench.deciding_curve()?.clone(),
    };
    let held_c = baths
        .held_c(ms_c)
        .filter(|_| fractions.bainite_of_matrix() >= HOLD_BAINITE);
    Some(match held_c {
        Some(bath_c) => until_arrival(&curve, bath_c),
        None => curve,
    })
}

/// The cooling curves as they would be without heat of pearlite and bainite: what could be slower or
/// has to be faster is told from them, since on a quench that just hardens there is none. None where
/// next to nothing has formed at the place that decides, and the two are the same. They end where what
/// martensite can form is settled.
fn without_heat(
    quench: &Quenching<'_>,
    fractions: &Fractions,
    kinetics: &Kinetics,
    baths: &Baths,
) -> Option<Vec<CoolingCurve>> {
    if fractions.hardened() > NOTHING_FORMED {
        return None;
    }
    let quench = Quenching {
        end_c: settled_c(kinetics, baths, quench.end_c),
        martensite_start_c: Some(kinetics.ms_c()),
        ..quench.clone()
    };
    cool(&quench).ok().map(|cooled| cooled.curves)
}

/// The piece after cold bath and tempers.
pub(super) struct Finished {
    /// Constituents and hardness after each step from the quench on, as far as they are known.
    pub(super) stages: Vec<Stage>,
    /// What goes into the first temper.
    pub(super) ready: Option<Hardened>,
    /// The tempers.
    pub(super) tempering: Result<Tempering, OutOfRange>,
}

impl Finished {
    /// Tempers a piece as quenched or, where it went into the cold, after that.
    pub(super) fn of(
        steel: &Composition,
        quenched: Option<&Hardened>,
        chilled: Option<&Hardened>,
        tempers: &[Temper],
    ) -> Self {
        let ready = chilled.or(quenched).copied();
        let tempering = Tempering::of(steel, tempers, ready.as_ref());
        let quenched = quenched.map(|piece| piece.stage(Step::Quench));
        let snapped = chilled.and_then(|piece| piece.snapped);
        let chilled = chilled.map(|piece| piece.stage(Step::Cold));
        let mut stages: Vec<Stage> = quenched
            .into_iter()
            .chain(snapped.map(|snapped| snapped.stage))
            .chain(chilled)
            .collect();
        if let Ok(tempering) = &tempering {
            stages.extend(tempering.stages());
        }
        Self {
            stages,
            ready,
            tempering,
        }
    }
}
