//! What the hardness of a piece is made of, number by number: for who asks why.

use super::mixing::martensite_alone_hv;
use super::mixture::Parts;
use super::stages::{Law, anchor_k};
use super::tempering::{Knowledge, Tempering};
use super::{AutoTempered, Hardness};
use crate::sources::tool_steel_tempering::GradeTable;
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Formed, Fractions};

/// Hardness of the constituents of a piece as quenched, HV.
#[derive(Debug, Clone, Copy)]
pub struct QuenchedParts {
    /// Martensite with its usual austenite, by its carbon.
    pub quenched_hv: f64,
    /// The same after what it has tempered on the way down.
    pub martensite_hv: f64,
    /// What it has tempered on the way down, HRC.
    pub fall_hrc: f64,
    /// Austenite that the hardness by carbon holds already, volume fraction.
    pub usual_austenite: f64,
    /// Bainite, pearlite and ferrite.
    pub soft_hv: [f64; 3],
}

impl QuenchedParts {
    /// Of a piece as quenched.
    ///
    /// # Errors
    /// As [`super::mixture`].
    pub fn of(
        dissolved: &Composition,
        constituents: &Fractions,
        formed: &Formed,
        auto: &AutoTempered,
    ) -> Result<Self, OutOfRange> {
        let parts = Parts::of(dissolved, constituents, formed)?;
        let fall_hrc = auto.fall_hrc(dissolved).unwrap_or(0.0).max(0.0);
        let quenched = Hardness {
            hv: parts.quenched_hv,
        };
        let fallen = Hardness::from_hrc_carried(quenched.hrc_carried() - fall_hrc);
        Ok(Self {
            quenched_hv: parts.quenched_hv,
            martensite_hv: if fall_hrc > 0.0 {
                fallen.hv.min(parts.quenched_hv)
            } else {
                parts.quenched_hv
            },
            fall_hrc,
            usual_austenite: parts.usual_austenite,
            soft_hv: soft_of(&parts),
        })
    }
}

const fn soft_of(parts: &Parts) -> [f64; 3] {
    [parts.bainite_hv, parts.pearlite_hv, parts.ferrite_hv]
}

/// What a piece is after a temper, and what makes it so.
#[derive(Debug, Clone, Copy)]
pub struct TemperedParts {
    /// Hardness of martensite before any temper, with its usual austenite, HRC.
    pub quenched_hrc: f64,
    /// Hardness of ferrite, pearlite and bainite, HV, in the order bainite, pearlite, ferrite.
    pub soft_hv: [f64; 3],
    /// Constituents before the tempers; what the cold or the cooling turned later is not austenite here.
    pub constituents: Fractions,
    /// Martensite that has formed since, volume fraction.
    pub fresh_martensite: f64,
    /// Part of the austenite that has not decomposed.
    pub undecomposed: f64,
    /// Temperature at which half of the austenite is left after an hour, K.
    pub anchor_k: f64,
    /// How the martensite softens.
    pub softening: Softening,
}

/// How martensite softens.
#[derive(Debug, Clone, Copy)]
pub enum Softening {
    /// By the law of three stages.
    Stages {
        /// Reduced times so far, s.
        reduced_s: [f64; 3],
        /// Reduced times of the martensite that has formed since, s.
        fresh_reduced_s: [f64; 3],
        /// Middles of the stages, decimal logarithms of reduced seconds.
        middle: [f64; 3],
        /// Whole falls of the stages, HRC.
        whole_hrc: [f64; 3],
        /// What alloying holds, HRC.
        held_hrc: f64,
        /// Falls so far, all stages together, HRC: of the old martensite and of that formed since.
        fall_hrc: [f64; 2],
        /// Usual austenite that is left in the measured fall, volume fraction.
        usual_austenite: f64,
        /// Hardness of the tempered martensite without it, HV.
        alone_hv: f64,
        /// The same of the martensite that has formed since, HV.
        fresh_hv: f64,
    },
    /// By the table of the grade.
    Table {
        /// The table.
        table: &'static GradeTable,
        /// Hollomon-Jaffe parameter so far; none before any temper.
        parameter: Option<f64>,
    },
}

impl Tempering {
    /// What the piece is now, and what makes it so.
    #[must_use]
    pub fn parts(&self) -> TemperedParts {
        TemperedParts {
            quenched_hrc: self.quenched_hrc,
            soft_hv: soft_of(&self.parts),
            constituents: self.constituents,
            fresh_martensite: self.fresh_martensite,
            undecomposed: self.undecomposed,
            anchor_k: anchor_k(self.silicon_wt),
            softening: match self.knowledge {
                Knowledge::Fitted(law) => self.in_stages(&law),
                Knowledge::Table(table) => Softening::Table {
                    table,
                    parameter: self.parameter.value,
                },
            },
        }
    }

    fn in_stages(&self, law: &Law) -> Softening {
        let usual = self.parts.usual_austenite * self.undecomposed;
        let falls = [&self.stages, &self.fresh_stages].map(|stages| law.drop_hrc(stages));
        let [alone_hv, fresh_hv] = falls.map(|fall_hrc| {
            let measured = Hardness::from_hrc_carried(self.quenched_hrc - fall_hrc);
            martensite_alone_hv(measured.hv, usual)
        });
        Softening::Stages {
            reduced_s: self.stages.reduced_s,
            fresh_reduced_s: self.fresh_stages.reduced_s,
            middle: law.middle,
            whole_hrc: law.fall_hrc,
            held_hrc: law.held_hrc,
            fall_hrc: falls,
            usual_austenite: usual,
            alone_hv,
            fresh_hv,
        }
    }
}
