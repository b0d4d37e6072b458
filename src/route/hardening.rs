//! From austenite to hardness: what one cooling curve and a cold bath make of it.

use super::outcome::{Stage, Step};
use super::plan::{Cold, Route};
use super::snap::Snapped;
use super::trial::Deviation;
use crate::hardness::{self, AS_QUENCHED_BAND_HRC, AsQuenched, AutoTempered, Hardness};
use crate::heat::CoolingCurve;
use crate::soak::{BoundaryCarbide, BoundaryFilms, SoakPoint};
use crate::sources::isothermal_fit::{START_TIMES, StartTime};
use crate::steel::{Composition, OutOfRange};
use crate::transform::{
    Austenite, BarPoint, ColdStep, ContinuousCooling, Formed, Fractions, Kinetics, TurningPiece,
    WarmStay, cold_treated, measured_heat,
};

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
    /// For the hardening of a route: as an end-quench test of its heat shows, and as earlier runs have
    /// taught.
    pub(super) fn of(route: &Route) -> Self {
        let of_heat = Self::of_heat(&route.composition, &route.end_quench);
        of_heat.with(&route.taught().off)
    }

    /// The same, with what else is off.
    pub(super) fn with(self, off: &Deviation) -> Self {
        Self {
            ln_later: self.ln_later + off.nose_time_factor.ln(),
            ms_k: self.ms_k + off.ms_k,
        }
    }

    /// The same with transformations that begin later by a factor.
    pub(super) fn later_by(self, factor: f64) -> Self {
        Self {
            ln_later: self.ln_later + factor.ln(),
            ..self
        }
    }

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
    /// Carbide on the grain boundaries of what was austenite.
    pub(super) films: BoundaryCarbide,
    pub(crate) hardness: Hardness,
    coldest_c: f64,
    formed: Formed,
    auto_tempered: AutoTempered,
    dissolved: Composition,
    /// The snap temper before the cold bath that it left, if it went through one.
    pub(super) snapped: Option<Snapped>,
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
    /// sooner as the test shows, and as earlier runs have taught.
    pub(super) fn of_route(
        route: &Route,
        end: &SoakPoint,
        dissolved: &Composition,
    ) -> Result<Self, OutOfRange> {
        Self::off_by(end, dissolved, route.quench.end_c, &KineticsOff::of(route))
    }

    /// The same in a step before hardening, of which runs teach nothing.
    pub(super) fn before_hardening(
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
        let hardened = self.hardened(
            with_ferrite(&transformed.fractions, self.ferrite_left),
            curve.temperature_c.last().copied().unwrap_or(self.wait_c),
            transformed.formed,
            AutoTempered::along(&transformed.history),
        )?;
        Ok(Hardened {
            films: transformed.boundary_carbide,
            ..hardened
        })
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

    /// What the piece consists of at the end of a cooling curve.
    pub(super) fn formed_along(&self, curve: &CoolingCurve) -> Result<Fractions, OutOfRange> {
        let transformed = self.kinetics.along(&curve.time_s, &curve.temperature_c)?;
        Ok(with_ferrite(&transformed.fractions, self.ferrite_left))
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

    /// A cold bath as the law of martensite takes it.
    pub(super) fn cold_step(&self, quenched: &Hardened, cold: &Cold) -> ColdStep {
        ColdStep {
            coldest_before_c: quenched.coldest_c,
            cold_c: cold.temperature_c,
            delay_s: 60.0 * cold.delay_min,
            wait_c: self.wait_c,
            snap: cold.snap.map(|snap| WarmStay {
                temperature_c: snap.temperature_c,
                time_s: 60.0 * snap.time_min,
            }),
        }
    }

    /// The same piece after a cold bath.
    pub(super) fn cold(
        &self,
        steel: &Composition,
        quenched: &Hardened,
        cold: &Cold,
    ) -> Result<Hardened, OutOfRange> {
        let step = self.cold_step(quenched, cold);
        let austenite = self.kinetics.austenite();
        let coldest_c = cold.temperature_c.min(quenched.coldest_c);
        if let Some(snap) = &cold.snap {
            let snapped = Snapped::of(steel, austenite, quenched, snap, &step)?;
            return Ok(Hardened {
                fractions: snapped.fractions,
                hardness: snapped.hardness,
                coldest_c,
                snapped: Some(snapped),
                ..*quenched
            });
        }
        let fractions = cold_treated(&quenched.fractions, austenite, &step)?;
        self.hardened(
            fractions,
            coldest_c,
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
            films: BoundaryCarbide::default(),
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
            snapped: None,
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
    pub(super) fn as_quenched(&self) -> AsQuenched {
        AsQuenched {
            constituents: self
                .snapped
                .map_or(self.fractions, |snapped| snapped.quenched),
            dissolved: self.dissolved,
            formed: self.formed,
            auto_tempered: self.auto_tempered,
            snap: self.snapped.map(|snapped| snapped.tempered),
        }
    }

    /// How far its hardness may be off beside the models' band, HRC.
    pub(super) fn open_hrc(&self) -> f64 {
        self.snapped.map_or(0.0, |snapped| snapped.open_hrc)
    }

    /// The piece as a step of the outcome.
    pub(super) fn stage(&self, step: Step) -> Stage {
        Stage {
            step,
            fractions: Some(self.fractions),
            hardness: Some(self.hardness),
            band_hrc: self
                .snapped
                .map_or(AS_QUENCHED_BAND_HRC, |snapped| snapped.stage.band_hrc)
                .hypot(self.open_hrc()),
            band_off_hrc: 0.0,
            quench_swing_hrc: [0.0; 2],
        }
    }
}
