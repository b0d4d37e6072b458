//! What a number solves that was found by steps: the equation with the number put in, and what is left of
//! it.

use super::Derivation;
use crate::numeric::formula::Formula;
use crate::route::why::Typeset;
use recalesce_texts::route::why::balance as texts;
use std::borrow::Cow;

/// An equation that a number solves.
#[derive(Debug, Clone)]
pub struct Balance {
    /// What is zero where the number is the right one.
    pub zero: Formula,
    /// How far from zero it may be by the accuracy of what found the number.
    pub within: f64,
    /// What it says, in words.
    pub words: Cow<'static, str>,
}

impl Balance {
    /// What is left of it with the number put in.
    #[must_use]
    pub fn left(&self) -> f64 {
        self.zero.evaluate()
    }

    /// The equation in MathML, with letters and with values, and in plain text.
    #[must_use]
    pub fn typeset(&self) -> Typeset {
        let ended = |mut pieces: Vec<String>, right: &str| {
            if let Some(last) = pieces.last_mut() {
                last.push_str(&format!("<mo>=</mo><mn>{right}</mn>"));
            }
            pieces
        };
        Typeset {
            letters: ended(self.zero.mathml(), "0"),
            values: ended(self.zero.mathml_of_values(), &small(self.left())),
            plain: format!("{} = 0", self.zero.plain()),
        }
    }

    /// What it says, what is left, and how much may be.
    #[must_use]
    pub fn told(&self) -> String {
        texts::put_in(&self.words, &small(self.left()), &small(self.within))
    }
}

/// A number next to nothing, with two digits.
fn small(value: f64) -> String {
    let decimals = if value == 0.0 {
        0
    } else {
        (1.0 - value.abs().log10().floor()).clamp(0.0, 12.0) as usize
    };
    format!("{value:.decimals$}").replace('-', "\u{2212}")
}

impl Derivation {
    pub(super) fn solves(
        mut self,
        zero: Formula,
        within: f64,
        words: impl Into<Cow<'static, str>>,
    ) -> Self {
        self.balance = Some(Balance {
            zero,
            within,
            words: words.into(),
        });
        self
    }
}
