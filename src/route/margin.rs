//! How far a quench is from failing, what the band of that comes of, and the same of another quenchant.

use crate::heat::{CoolingCurve, MediumTitle};
use crate::transform::Product;
use crate::units::format_fixed;
use recalesce_texts::route::outcome as texts;
use serde::{Deserialize, Serialize};

/// How far the quench is from failing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Margin {
    /// The word that the band allows.
    pub verdict: Verdict,
    /// Factor by which the whole quench may be slower and still leave 95 % of the austenite to
    /// turn to martensite; below 1 it is already too slow.
    pub factor: f64,
    /// The least and the largest that the factor may be, nine times in ten.
    pub factor_band: [f64; 2],
    /// What that band comes of.
    pub sources: MarginSources,
    /// Seconds to spare at the nose, negative when it misses.
    pub seconds: f64,
    /// Half width of the band of the seconds.
    pub seconds_band: f64,
    /// Temperature of the nose, °C.
    pub nose_c: f64,
    /// Time at which the deciding place passes A1, s from leaving the furnace: the clock of the
    /// isothermal curves starts here.
    pub clock_s: f64,
    /// Time at which the deciding place passes the nose, s from leaving the furnace.
    pub arrival_s: f64,
    /// Product that limits.
    pub product: Product,
}

impl Margin {
    /// The least and the most seconds to spare at the nose, nine times in ten: not as far on both
    /// sides, as the band is one of a factor.
    #[must_use]
    pub fn seconds_range(&self) -> [f64; 2] {
        let passing_s = self.arrival_s - self.clock_s;
        self.factor_band.map(|factor| passing_s * (factor - 1.0))
    }

    /// The same in words.
    pub(super) fn range_words(&self) -> String {
        let [least, most] = self.seconds_range().map(|seconds| format_fixed(seconds, 1));
        texts::margin_range(&least, &most)
    }
}

/// What the band of a margin comes of: factors on it at the ends of each thing's own band. The
/// quenchant and the model's nose have one always; chemistry where the steel is known by its grade
/// alone, the soak where the models reach to an end of the furnace's band.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MarginSources {
    /// Heat transfer of the quenchant.
    pub heat_transfer: [f64; 2],
    /// Time of the nose: error of the model, with grain and carbon in solution.
    pub nose: [f64; 2],
    /// Heats of the grade from lean to rich.
    pub chemistry: Option<[f64; 2]>,
    /// The soak from the coldest to the hottest of the furnace; from 0 where the coldest leaves no austenite that
    /// the models know.
    pub soak: Option<[f64; 2]>,
}

impl MarginSources {
    /// Each that is known, with its name in a sentence.
    pub fn known(&self) -> impl Iterator<Item = (&'static str, [f64; 2])> {
        [
            (texts::BY_HEAT_TRANSFER, Some(self.heat_transfer)),
            (texts::BY_NOSE, Some(self.nose)),
            (texts::BY_HEAT_OF_STEEL, self.chemistry),
            (texts::BY_FURNACE, self.soak),
        ]
        .into_iter()
        .filter_map(|(name, band)| Some((name, band?)))
    }

    /// The one that is widest.
    #[must_use]
    pub fn widest(&self) -> &'static str {
        let width = |[least, most]: [f64; 2]| most / least;
        self.known()
            .max_by(|a, b| width(a.1).total_cmp(&width(b.1)))
            .map_or("", |(name, _)| name)
    }

    /// All of them: they are independent, so the logarithms add in quadrature, each side by itself.
    pub(super) fn together(&self) -> [f64; 2] {
        let side = |pick: fn([f64; 2]) -> f64| {
            let squares = self.known().map(|(_, band)| pick(band).ln().powi(2));
            squares.sum::<f64>().sqrt()
        };
        [
            (-side(|[least, _]| least)).exp(),
            side(|[_, most]| most).exp(),
        ]
    }
}

/// A verdict on the quench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Fast enough over the whole band.
    Holds,
    /// The band reaches the line.
    Narrow,
    /// Too slow over the whole band.
    Misses,
}

/// Another quenchant for the same section.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Neighbour {
    /// Its name in the list.
    pub name: String,
    /// Its title for sentences.
    pub title: MediumTitle,
    /// Seconds to spare at the nose, negative when it misses.
    pub seconds: f64,
    /// Factor by which it may be slower and still harden the section.
    pub factor: f64,
    /// Its verdict.
    pub verdict: Verdict,
    /// Whether it is so harsh for the carbon in solution that the piece may crack.
    pub may_crack: bool,
    /// Its cooling curve at the deciding place.
    pub curve: CoolingCurve,
}

impl Neighbour {
    /// What has to be said with its name where it is offered, for the end of a sentence; a dot alone
    /// where nothing has.
    #[must_use]
    pub fn reservation(&self) -> &'static str {
        match (self.verdict, self.may_crack) {
            (Verdict::Holds, false) => texts::NO_RESERVATION,
            (Verdict::Holds, true) => texts::MAY_CRACK,
            (_, false) => texts::ONLY_JUST,
            (_, true) => texts::ONLY_JUST_AND_MAY_CRACK,
        }
    }
}
