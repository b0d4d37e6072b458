//! What a coupon leaves open, in words.

use super::likelihood::Together;
use crate::heat::{Medium, MediumTitle};
use recalesce_texts::advise::coupon as texts;
use recalesce_texts::grammar::inside_a_sentence;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Something to know about a quenchant that was found from a coupon.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum CouponNote {
    /// The shape of the curve is assumed.
    ShapeOf {
        /// Title of the quenchant of the list, inside a sentence.
        like: String,
        /// Factor on its still bath.
        factor: f64,
    },
    /// Any faster quench explains it too.
    AtLeast {
        /// The least factor.
        factor: f64,
        /// The factor taken.
        taken: f64,
        /// How well it is known.
        band: f64,
    },
    /// Any slower quench explains it too.
    AtMost {
        /// The largest factor.
        factor: f64,
        /// The factor taken.
        taken: f64,
        /// How well it is known.
        band: f64,
    },
    /// Centre and surface ask for different quenches.
    AtOdds,
    /// How well it is known.
    Band {
        /// Either way, as a factor.
        factor: f64,
        /// The same for the steel of the coupon.
        same_steel: Option<f64>,
    },
}

impl Together {
    /// What to know of the quenchant.
    pub(super) fn notes(&self, listed: &Medium, taken: f64, band: f64) -> Vec<CouponNote> {
        let mut notes = vec![CouponNote::ShapeOf {
            like: in_words(&listed.title),
            factor: taken,
        }];
        if self.is_at_odds {
            notes.push(CouponNote::AtOdds);
        }
        notes.push(match (self.factor.least, self.factor.most) {
            (Some(factor), None) => CouponNote::AtLeast {
                factor,
                taken,
                band,
            },
            (None, Some(factor)) => CouponNote::AtMost {
                factor,
                taken,
                band,
            },
            _ => CouponNote::Band {
                factor: band,
                same_steel: self.same_steel.band_factor(),
            },
        });
        notes
    }
}

fn in_words(title: &MediumTitle) -> String {
    inside_a_sentence(&title.to_string())
}

impl fmt::Display for CouponNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = match self {
            Self::ShapeOf { like, factor } => texts::shape_of(like, *factor),
            Self::AtLeast {
                factor,
                taken,
                band,
            } => texts::at_least(*factor, *taken, *band),
            Self::AtMost {
                factor,
                taken,
                band,
            } => texts::at_most(*factor, *taken, *band),
            Self::AtOdds => texts::AT_ODDS.to_owned(),
            Self::Band { factor, same_steel } => match same_steel {
                Some(same) => texts::known_within_for_same_steel(*factor, *same),
                None => texts::known_within(*factor),
            },
        };
        f.write_str(&words)
    }
}
