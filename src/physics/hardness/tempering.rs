//! Tempering as state advanced through holds and ramps.
//!
//! The fitted fall ([`crate::sources::tempering_stages`]) comes off the as-quenched hardness of
//! martensite; bainite and pearlite soften once tempered martensite is as soft as they are; carbide
//! strengthens in proportion to its martensite. Retained austenite decomposes by first-order
//! kinetics into what counts as the same tempered martensite, or becomes fresh martensite with a
//! history of its own when the piece is cooled further. Steels with a supplier table follow it.

use super::auto_temper::AutoTempered;
use super::grade_table::{Parameter, grade_table};
use super::martensite::usual_austenite;
use super::mixing::{Mixed, evenly_hard, martensite_alone_hv, mixed_hv};
use super::mixture::Parts;
use super::stages::{Law, Stages, austenite_half_lives};
use super::{AS_QUENCHED_BAND_HRC, Hardness};
use crate::numeric::interpolate::linear_held;
use crate::sources::tempering_stages::{
    BEYOND_DATA_FACTOR, COVERED, NINE_IN_TEN_HRC, RANGE, TEMPERATURE_C, TIME_S,
};
use crate::sources::tool_steel_tempering::GradeTable;
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Formed, Fractions};
use recalesce_texts::hardness as texts;
use serde::{Deserialize, Serialize};

/// A piece as quenched, before tempering.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AsQuenched {
    /// Volume fractions.
    pub constituents: Fractions,
    /// What the austenite held before the quench, wt %.
    pub dissolved: Composition,
    /// How the pearlite and the bainite among them formed.
    pub formed: Formed,
    /// What its martensite has tempered on the way down.
    pub auto_tempered: AutoTempered,
    /// A temper between the quench and a cold bath, if any: the fractions are those before it.
    pub snap: Option<SnapTempered>,
}

/// A temper between the quench and a cold bath, and what the bath has turned after it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SnapTempered {
    /// The temper.
    pub step: TemperStep,
    /// Austenite that the bath has turned, volume fraction of the piece: fresh martensite.
    pub turned: f64,
}

impl AsQuenched {
    /// Carbon beyond which quenched hardness is flat and carbide stays undissolved, wt %.
    const LARGEST_DISSOLVED_WT: f64 = 1.0;

    /// The steel fully quenched to room temperature: martensite with the austenite that
    /// plain-carbon steel of its carbon keeps.
    #[must_use]
    pub fn fully_martensitic(steel: &Composition) -> Self {
        let dissolved = steel.with_carbon(steel.c.min(Self::LARGEST_DISSOLVED_WT));
        let austenite = usual_austenite(dissolved.c);
        Self {
            constituents: Fractions {
                martensite: 1.0 - austenite,
                austenite,
                ..Fractions::default()
            },
            dissolved,
            formed: Formed::default(),
            auto_tempered: AutoTempered::default(),
            snap: None,
        }
    }
}

/// One temper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperStep {
    /// Temperature, °C: 100 to 710.
    pub temperature_c: f64,
    /// Time at temperature, s: 10 s to 32 h.
    pub time_s: f64,
}

impl TemperStep {
    fn check(&self) -> Result<(), OutOfRange> {
        const MODEL: &str = texts::TEMPERING;
        OutOfRange::check(
            MODEL,
            texts::TEMPERATURE,
            "°C",
            self.temperature_c,
            TEMPERATURE_C,
        )?;
        OutOfRange::check(MODEL, texts::TIME, "s", self.time_s, TIME_S)
    }
}

/// A piece after a temper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Tempered {
    /// Hardness.
    pub hardness: Hardness,
    /// Half-width of the band, HRC: nine of ten measured rows of heats left out of the fit lie
    /// inside.
    pub band_hrc: f64,
    /// Retained austenite left, volume fraction; none where only a table is known.
    pub retained_austenite_volume_fraction: Option<f64>,
}

/// One point of hardness against tempering temperature.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct CurvePoint {
    /// Tempering temperature, °C.
    pub temperature_c: f64,
    /// Vickers hardness, kgf/mm².
    pub hv: f64,
    /// HRC, carried on below 20 as in [`Hardness::hrc_carried`].
    pub hrc: f64,
    /// Half-width of the band, HRC, nine in ten.
    pub band_hrc: f64,
}

/// What is known about how a steel tempers.
#[derive(Debug, Clone, Copy)]
pub(super) enum Knowledge {
    Fitted(Law),
    Table(&'static GradeTable),
}

/// A piece between quench and use, with its tempering history.
#[derive(Debug, Clone, Copy)]
pub struct Tempering {
    pub(super) knowledge: Knowledge,
    pub(super) parts: Parts,
    pub(super) quenched_hrc: f64,
    pub(super) silicon_wt: f64,
    band_factor: f64,
    pub(super) constituents: Fractions,
    /// Share of the austenite left by decomposition so far.
    pub(super) undecomposed: f64,
    pub(super) fresh_martensite: f64,
    pub(super) stages: Stages,
    pub(super) fresh_stages: Stages,
    pub(super) parameter: Parameter,
    pub(super) hottest_c: Option<f64>,
    auto_fall_hrc: f64,
}

impl Tempering {
    /// The piece before its first temper: as quenched, or after a snap temper and the cold bath.
    /// `steel` is the whole composition: carbide counts in tempering.
    ///
    /// # Errors
    /// A composition that neither the fitted law nor a grade table covers, a mixture that
    /// [`super::mixture`] refuses, or a snap temper that [`Self::hold`] refuses.
    pub fn new(start: &AsQuenched, steel: &Composition) -> Result<Self, OutOfRange> {
        let knowledge = match grade_table(steel) {
            Some(table) => Knowledge::Table(table),
            None => {
                RANGE.check(steel)?;
                Knowledge::Fitted(Law::of(steel))
            }
        };
        let parts = Parts::of(&start.dissolved, &start.constituents, &start.formed)?;
        let mut piece = Self {
            knowledge,
            parts,
            quenched_hrc: Hardness {
                hv: parts.quenched_hv,
            }
            .hrc_carried(),
            silicon_wt: steel.si,
            band_factor: if COVERED.check(steel).is_ok() {
                1.0
            } else {
                BEYOND_DATA_FACTOR
            },
            constituents: start.constituents,
            undecomposed: 1.0,
            fresh_martensite: 0.0,
            stages: start.auto_tempered.mean(),
            fresh_stages: Stages::default(),
            parameter: Parameter::default(),
            hottest_c: None,
            auto_fall_hrc: start
                .auto_tempered
                .fall_hrc(&start.dissolved)
                .unwrap_or(0.0),
        };
        if let Some(snap) = &start.snap {
            piece.hold(&snap.step)?;
            piece.cool_further(snap.turned);
        }
        Ok(piece)
    }

    /// Holds the piece at a temperature.
    ///
    /// # Errors
    /// Temperature outside 100 to 710 °C or time outside 10 s to 32 h.
    pub fn hold(&mut self, step: &TemperStep) -> Result<(), OutOfRange> {
        step.check()?;
        self.advance(step.temperature_c, step.time_s);
        Ok(())
    }

    /// Heats or cools the piece at a steady rate, in steps of at most 5 K.
    ///
    /// # Errors
    /// An end outside -200 to 710 °C, or a time that is negative or above 32 h.
    pub fn ramp(&mut self, from_c: f64, to_c: f64, time_s: f64) -> Result<(), OutOfRange> {
        const MODEL: &str = texts::TEMPERING_RAMP;
        for end_c in [from_c, to_c] {
            OutOfRange::check(
                MODEL,
                texts::TEMPERATURE,
                "°C",
                end_c,
                (-200.0, TEMPERATURE_C.1),
            )?;
        }
        OutOfRange::check(MODEL, texts::TIME, "s", time_s, (0.0, TIME_S.1))?;
        let count = ((to_c - from_c).abs() / 5.0).ceil().max(1.0);
        for i in 0..count as u32 {
            let share = (f64::from(i) + 0.5) / count;
            self.advance(from_c + share * (to_c - from_c), time_s / count);
        }
        Ok(())
    }

    /// Turns austenite into fresh, untempered martensite: a cold step or the cooling after a
    /// temper. `volume_fraction` is of the piece; what is not there cannot turn.
    pub fn cool_further(&mut self, volume_fraction: f64) {
        let left = self.constituents.austenite * self.undecomposed;
        if left <= 0.0 {
            return;
        }
        let turned = volume_fraction.clamp(0.0, left);
        self.fresh_martensite += turned;
        self.constituents.austenite -= turned / self.undecomposed;
    }

    fn advance(&mut self, temperature_c: f64, time_s: f64) {
        self.stages.hold(temperature_c, time_s);
        if self.fresh_martensite > 0.0 {
            self.fresh_stages.hold(temperature_c, time_s);
        }
        self.undecomposed *= f64::exp2(-austenite_half_lives(
            self.silicon_wt,
            temperature_c,
            time_s,
        ));
        if matches!(self.knowledge, Knowledge::Table(_)) {
            self.parameter.hold(temperature_c, time_s);
        }
        self.hottest_c = Some(
            self.hottest_c
                .map_or(temperature_c, |hottest| hottest.max(temperature_c)),
        );
    }

    /// Hardness, its band and the austenite left now.
    ///
    /// # Errors
    /// A temper outside the points of the grade's table.
    pub fn now(&self) -> Result<Tempered, OutOfRange> {
        let Some(hottest_c) = self.hottest_c else {
            return Ok(Tempered {
                hardness: self.mix_fitted(self.auto_fall_hrc, 0.0),
                band_hrc: AS_QUENCHED_BAND_HRC,
                retained_austenite_volume_fraction: Some(self.constituents.austenite),
            });
        };
        match self.knowledge {
            Knowledge::Fitted(law) => {
                let band =
                    linear_held(&NINE_IN_TEN_HRC, hottest_c).unwrap_or(NINE_IN_TEN_HRC[3][1]);
                Ok(Tempered {
                    hardness: self
                        .mix_fitted(law.drop_hrc(&self.stages), law.drop_hrc(&self.fresh_stages)),
                    band_hrc: band * self.band_factor,
                    retained_austenite_volume_fraction: Some(
                        self.constituents.austenite * self.undecomposed,
                    ),
                })
            }
            Knowledge::Table(table) => {
                let hrc = self.parameter.hrc(table)?.unwrap_or(self.quenched_hrc);
                Ok(Tempered {
                    hardness: self.mix_table(Hardness::from_hrc_carried(hrc).hv),
                    band_hrc: table.band_hrc,
                    retained_austenite_volume_fraction: None,
                })
            }
        }
    }

    fn mix_fitted(&self, drop_hrc: f64, fresh_drop_hrc: f64) -> Hardness {
        let x = &self.constituents;
        // The measured fall holds the usual austenite, which decomposes as any other.
        let usual = self.parts.usual_austenite * self.undecomposed;
        let tempered_hv = |drop: f64| Hardness::from_hrc_carried(self.quenched_hrc - drop).hv;
        let measured_hv = tempered_hv(drop_hrc);
        let alone = martensite_alone_hv(measured_hv, usual);
        let fresh = if self.fresh_martensite > 0.0 {
            martensite_alone_hv(tempered_hv(fresh_drop_hrc), usual)
        } else {
            alone
        };
        let left = x.austenite * self.undecomposed;
        let decomposed = x.austenite - left;
        Hardness {
            hv: mixed_hv(Mixed {
                martensite: x.martensite + decomposed,
                alone_hv: alone,
                fresh: self.fresh_martensite,
                fresh_hv: fresh,
                austenite: left,
                carbide: x.carbide,
                soft: self.parts.soft(x, self.fresh_martensite, measured_hv),
            }),
        }
    }

    /// The table is for the hardened piece, austenite and carbide included.
    fn mix_table(&self, table_hv: f64) -> Hardness {
        let x = &self.constituents;
        let hard = x.martensite + x.austenite + self.fresh_martensite + x.carbide;
        let soft = self.parts.soft(x, self.fresh_martensite, table_hv);
        evenly_hard(hard, table_hv, soft)
    }
}

/// The piece after each of the tempers, in order.
///
/// `steel` is the whole composition of the steel, wt %. Used for 0.20 to 1.50 % C with Mn to
/// 2.1, Si to 2.2, Ni to 4, Cr to 1.6, Mo to 0.5, V to 0.4, W to 4.5 %; A2, D2, S7, 420, 440C, X65Cr13
/// and X50CrMoV15 by table.
///
/// # Errors
/// A steel outside both, a temper outside 100 to 710 °C or 10 s to 32 h or outside the grade's
/// table, or a mixture that [`super::mixture`] refuses.
pub fn temper(
    start: &AsQuenched,
    steel: &Composition,
    steps: &[TemperStep],
) -> Result<Vec<Tempered>, OutOfRange> {
    let mut piece = Tempering::new(start, steel)?;
    steps
        .iter()
        .map(|step| {
            piece.hold(step)?;
            piece.now()
        })
        .collect()
}

/// Hardness against tempering temperature after `tempers` equal tempers of `time_s` each.
/// Temperatures that the law or the grade's table does not cover leave no point.
///
/// # Errors
/// A steel that neither covers, a time outside 10 s to 32 h, or a mixture that [`super::mixture`]
/// refuses.
pub fn temper_curve(
    start: &AsQuenched,
    steel: &Composition,
    temperatures_c: &[f64],
    time_s: f64,
    tempers: u32,
) -> Result<Vec<CurvePoint>, OutOfRange> {
    OutOfRange::check(texts::TEMPERING, texts::TIME, "s", time_s, TIME_S)?;
    let piece = Tempering::new(start, steel)?;
    let all_s = time_s * f64::from(tempers.max(1));
    let covered = temperatures_c
        .iter()
        .filter(|t| (TEMPERATURE_C.0..=TEMPERATURE_C.1).contains(*t));
    Ok(covered
        .filter_map(|&temperature_c| {
            let mut piece = piece;
            // Equal tempers add up to one hold of their time: the state is additive.
            piece.advance(temperature_c, all_s);
            let tempered = piece.now().ok()?;
            Some(CurvePoint {
                temperature_c,
                hv: tempered.hardness.hv,
                hrc: tempered.hardness.hrc_carried(),
                band_hrc: tempered.band_hrc,
            })
        })
        .collect())
}
