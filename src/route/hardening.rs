//! From austenite to hardness: what one cooling curve, a cold bath and the tempers make of it.

use super::outcome::{Stage, Step, TemperOutcome, TemperPoint};
use super::plan::{Cold, Route, Temper};
use crate::hardness::{
    self, AS_QUENCHED_BAND_HRC, AsQuenched, AutoTempered, Hardness, TemperStep, Tempered,
    embrittling_range_c, grade_table, temper_curve, temperatures_for, time_for,
};
use crate::heat::CoolingCurve;
use crate::soak::{BoundaryCarbide, BoundaryFilms, SoakPoint};
use crate::sources::isothermal_fit::{START_TIMES, StartTime};
use crate::steel::{Composition, OutOfRange};
use crate::transform::{
    Austenite, BarPoint, ColdStep, ContinuousCooling, Formed, Fractions, Kinetics, TurningPiece,
    cold_treated, measured_heat,
};

/// Temperatures of the temper chart, °C.
const CHART_C: (f64, f64) = (100.0, 700.0);
/// Points of the temper chart.
const CHART_POINTS: usize = 61;

/// An austenite with its kinetics, and the ferrite that the soak has left beside it.
pub(crate) struct Hardening {
    kinetics: Kinetics,
    dissolved: Composition,
    ferrite_left: f64,
    wait_c: f64,
}

/// How far the transformations of a steel are from what the model gives.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct KineticsOff {
    /// Logarithm of the factor by which ferrite, pearlite and bainite begin later.
    pub(super) ln_later: f64,
    /// Starts of martensite, K.
    pub(super) ms_k: f64,
}

impl KineticsOff {
    /// As an end-quench test of the heat shows; nothing where there is none.
    pub(super) fn of_heat(steel: &Composition, end_quench: &[BarPoint]) -> Self {
        if end_quench.is_empty() {
            return Self::default();
        }
        // A test that tells nothing is refused before it comes here.
        measured_heat(steel, end_quench).map_or_else(
            |_| Self::default(),
            |heat| Self {
                ln_later: heat.delay_factor.ln(),
                ms_k: 0.0,
            },
        )
    }
}

/// What a piece is after a step before the temper.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Hardened {
    pub(super) fractions: Fractions,
    pub(crate) hardness: Hardness,
    coldest_c: f64,
    formed: Formed,
    auto_tempered: AutoTempered,
    dissolved: Composition,
}

/// What has formed in a piece on its way down.
pub(super) struct CooledPiece {
    pub(super) fractions: Fractions,
    /// How its pearlite and bainite formed.
    pub(super) formed: Formed,
    /// Carbide on the grain boundaries of what was austenite.
    pub(super) films: BoundaryCarbide,
    /// The piece as hardened; none where its hardness is outside the models.
    pub(super) hardened: Option<Hardened>,
}

impl Hardening {
    /// The austenite that a soak leaves. The piece waits at the end of its quench, °C, for what
    /// follows.
    pub(crate) fn of(
        end: &SoakPoint,
        dissolved: &Composition,
        wait_c: f64,
    ) -> Result<Self, OutOfRange> {
        Self::off_by(end, dissolved, wait_c, &KineticsOff::default())
    }

    /// The same for the steel of a route: a heat with an end-quench test transforms as much later or
    /// sooner as the test shows.
    pub(super) fn of_route(
        route: &Route,
        end: &SoakPoint,
        dissolved: &Composition,
    ) -> Result<Self, OutOfRange> {
        let off = KineticsOff::of_heat(&route.composition, &route.end_quench);
        Self::off_by(end, dissolved, route.quench.end_c, &off)
    }

    /// The same where the kinetics are off from the model's.
    pub(super) fn off_by(
        end: &SoakPoint,
        dissolved: &Composition,
        wait_c: f64,
        off: &KineticsOff,
    ) -> Result<Self, OutOfRange> {
        let start_times = START_TIMES.map(|product| StartTime {
            constant: product.constant + off.ln_later,
            ..product
        });
        let ferrite_left = end.ferrite_volume_fraction.clamp(0.0, 1.0);
        let beside_ferrite = (1.0 - ferrite_left).max(f64::EPSILON);
        let austenite = Austenite {
            composition: *dissolved,
            grain_astm: end.grain_astm,
            undissolved_carbide_volume_fraction: (end.carbide_volume_fraction / beside_ferrite)
                .clamp(0.0, 1.0),
        };
        Ok(Self {
            kinetics: Kinetics::with_ms_off(&austenite, &start_times, off.ms_k)?,
            dissolved: *dissolved,
            ferrite_left,
            wait_c,
        })
    }

    /// The same with films of carbide by the balance of the steel, or with none.
    pub(super) fn with_films(self, films: Option<BoundaryFilms>) -> Self {
        Self {
            kinetics: self.kinetics.with_films(films),
            ..self
        }
    }

    pub(super) const fn kinetics(&self) -> &Kinetics {
        &self.kinetics
    }

    pub(super) fn into_kinetics(self) -> Kinetics {
        self.kinetics
    }

    /// What the nodes of the piece turn into as it cools.
    pub(crate) const fn turning(&self) -> TurningPiece<'_> {
        TurningPiece::new(&self.kinetics, self.ferrite_left)
    }

    /// The piece at the end of a cooling curve.
    pub(crate) fn quench(&self, curve: &CoolingCurve) -> Result<Hardened, OutOfRange> {
        let transformed = self.kinetics.along(&curve.time_s, &curve.temperature_c)?;
        self.hardened(
            with_ferrite(&transformed.fractions, self.ferrite_left),
            curve.temperature_c.last().copied().unwrap_or(self.wait_c),
            transformed.formed,
            AutoTempered::along(&transformed.history),
        )
    }

    /// What forms along a cooling curve, with the piece as hardened where its hardness is known.
    pub(super) fn cool(&self, curve: &CoolingCurve) -> Result<CooledPiece, OutOfRange> {
        let transformed = self.kinetics.along(&curve.time_s, &curve.temperature_c)?;
        let fractions = with_ferrite(&transformed.fractions, self.ferrite_left);
        let end_c = curve.temperature_c.last().copied().unwrap_or(self.wait_c);
        let auto_tempered = AutoTempered::along(&transformed.history);
        Ok(CooledPiece {
            fractions,
            formed: transformed.formed,
            films: transformed.boundary_carbide,
            hardened: self
                .hardened(fractions, end_c, transformed.formed, auto_tempered)
                .ok(),
        })
    }

    /// What the piece consists of at every point of a cooling curve.
    pub(super) fn history(&self, curve: &CoolingCurve) -> Result<Vec<Fractions>, OutOfRange> {
        let transformed = self.kinetics.along(&curve.time_s, &curve.temperature_c)?;
        let points = transformed.history.iter();
        Ok(points
            .map(|point| with_ferrite(&point.fractions, self.ferrite_left))
            .collect())
    }

    /// Hardness of what a cooling of the austenite gives, beside the ferrite that was left: its
    /// martensite tempers on the way down.
    pub(super) fn hardness_after(&self, cooling: &ContinuousCooling) -> Option<Hardness> {
        let fractions = with_ferrite(&cooling.fractions, self.ferrite_left);
        let auto_tempered = AutoTempered::along(&cooling.history);
        hardness::auto_tempered(&self.dissolved, &fractions, &cooling.formed, &auto_tempered).ok()
    }

    /// The same piece after a cold bath.
    pub(super) fn cold(&self, quenched: &Hardened, cold: &Cold) -> Result<Hardened, OutOfRange> {
        let step = ColdStep {
            coldest_before_c: quenched.coldest_c,
            cold_c: cold.temperature_c,
            delay_s: 60.0 * cold.delay_min,
            wait_c: self.wait_c,
        };
        let fractions = cold_treated(&quenched.fractions, self.kinetics.austenite(), &step)?;
        self.hardened(
            fractions,
            cold.temperature_c.min(quenched.coldest_c),
            quenched.formed,
            quenched
                .auto_tempered
                .among(quenched.fractions.martensite / fractions.martensite.max(f64::MIN_POSITIVE)),
        )
    }

    fn hardened(
        &self,
        fractions: Fractions,
        coldest_c: f64,
        formed: Formed,
        auto_tempered: AutoTempered,
    ) -> Result<Hardened, OutOfRange> {
        Ok(Hardened {
            fractions,
            hardness: hardness::auto_tempered(
                &self.dissolved,
                &fractions,
                &formed,
                &auto_tempered,
            )?,
            coldest_c,
            formed,
            auto_tempered,
            dissolved: self.dissolved,
        })
    }
}

/// Fractions of the piece when the austenite stood beside ferrite that the soak had left.
fn with_ferrite(fractions: &Fractions, ferrite_left: f64) -> Fractions {
    let rest = 1.0 - ferrite_left;
    Fractions {
        ferrite: ferrite_left + rest * fractions.ferrite,
        pearlite: rest * fractions.pearlite,
        bainite: rest * fractions.bainite,
        martensite: rest * fractions.martensite,
        austenite: rest * fractions.austenite,
        carbide: rest * fractions.carbide,
    }
}

impl Hardened {
    /// What its martensite has tempered on the way down, HRC.
    pub(super) fn auto_tempered_hrc(&self) -> Option<f64> {
        self.auto_tempered.fall_hrc(&self.dissolved)
    }

    /// The piece for what tempers it.
    pub(super) const fn as_quenched(&self) -> AsQuenched {
        AsQuenched {
            constituents: self.fractions,
            dissolved: self.dissolved,
            formed: self.formed,
            auto_tempered: self.auto_tempered,
        }
    }

    /// The piece as a step of the outcome.
    pub(super) const fn stage(&self, step: Step) -> Stage {
        Stage {
            step,
            fractions: Some(self.fractions),
            hardness: Some(self.hardness),
            band_hrc: AS_QUENCHED_BAND_HRC,
        }
    }
}

/// The tempers of a route.
pub(super) struct Tempering {
    start: AsQuenched,
    start_hrc: Option<f64>,
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
            is_table,
        })
    }

    /// Each temper as a step of the outcome.
    pub(super) fn stages(&self) -> impl Iterator<Item = Stage> + '_ {
        self.tempered.iter().enumerate().map(|(i, tempered)| Stage {
            step: Step::Temper(i + 1),
            fractions: (!self.is_table).then(|| self.after(tempered)),
            hardness: Some(tempered.hardness),
            band_hrc: tempered.band_hrc,
        })
    }

    /// Austenite that a temper has decomposed counts as tempered martensite.
    fn after(&self, tempered: &Tempered) -> Fractions {
        let before = &self.start.constituents;
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

    /// The temper chart: as many tempers as planned, all of the first one's time.
    pub(super) fn chart(&self, route: &Route) -> Result<TemperOutcome, OutOfRange> {
        let steel = &route.composition;
        let time_s = route.tempers.first().map_or(3600.0, |t| 60.0 * t.time_min);
        let count = u32::try_from(route.tempers.len().max(1)).unwrap_or(1);
        let (from_c, to_c) = CHART_C;
        let temperatures_c: Vec<f64> = (0..CHART_POINTS)
            .map(|i| from_c + (to_c - from_c) * i as f64 / (CHART_POINTS - 1) as f64)
            .collect();
        let curve: Vec<TemperPoint> =
            temper_curve(&self.start, steel, &temperatures_c, time_s, count)?
                .into_iter()
                .map(|point| TemperPoint {
                    temperature_c: point.temperature_c,
                    hrc: point.hrc,
                    band_hrc: point.band_hrc,
                })
                .collect();
        let middle_hrc = 0.5 * (route.target.least_hrc + route.target.most_hrc);
        let meets_target_c = temperatures_for(&self.start, steel, time_s, count, middle_hrc)?
            .into_iter()
            .map(|choice| choice.temperature_c)
            .collect();
        let meets_target_s = match route.tempers.first() {
            Some(temper) => time_for(&self.start, steel, temper.temperature_c, count, middle_hrc)?,
            None => None,
        };
        Ok(TemperOutcome {
            start_hrc: self
                .start_hrc
                .or_else(|| curve.first().map(|point| point.hrc))
                .unwrap_or_default(),
            curve,
            embrittling_c: embrittling_range_c(steel),
            meets_target_c,
            meets_target_s,
        })
    }
}

fn step_of(temper: &Temper) -> TemperStep {
    TemperStep {
        temperature_c: temper.temperature_c,
        time_s: 60.0 * temper.time_min,
    }
}
