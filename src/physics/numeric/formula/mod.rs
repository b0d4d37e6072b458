//! Laws that are computed with numbers and told as formulas.
//!
//! A law written over [`Number`] is one function for both: with `f64` it is the computation, with
//! [`Formula`] the same lines leave the tree of what they compute, which can be typeset and evaluated
//! again. So what is shown cannot drift from what is done.

mod typeset;

use std::borrow::Cow;
use std::fmt;
use std::ops::{Add, Div, Mul, Neg, Sub};
use std::sync::Arc;

/// A number with the four digits that count.
#[must_use]
pub fn short(value: f64) -> String {
    typeset::short(value, typeset::DIGITS)
}

/// What a law can be computed with.
pub trait Number:
    Clone
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
{
    /// A constant of the law.
    fn constant(value: f64) -> Self;
    /// e to this power.
    #[must_use]
    fn exp(self) -> Self;
    /// 2 to this power.
    #[must_use]
    fn exp2(self) -> Self;
    /// Natural logarithm.
    #[must_use]
    fn ln(self) -> Self;
    /// Decimal logarithm.
    #[must_use]
    fn log10(self) -> Self;
    /// Square root.
    #[must_use]
    fn sqrt(self) -> Self;
    /// To a whole power.
    #[must_use]
    fn powi(self, exponent: i32) -> Self;
    /// The smaller of two.
    #[must_use]
    fn min(self, other: Self) -> Self;
    /// The larger of two.
    #[must_use]
    fn max(self, other: Self) -> Self;
}

impl Number for f64 {
    fn constant(value: f64) -> Self {
        value
    }

    fn exp(self) -> Self {
        Self::exp(self)
    }

    fn exp2(self) -> Self {
        Self::exp2(self)
    }

    fn ln(self) -> Self {
        Self::ln(self)
    }

    fn log10(self) -> Self {
        Self::log10(self)
    }

    fn sqrt(self) -> Self {
        Self::sqrt(self)
    }

    fn powi(self, exponent: i32) -> Self {
        Self::powi(self, exponent)
    }

    fn min(self, other: Self) -> Self {
        Self::min(self, other)
    }

    fn max(self, other: Self) -> Self {
        Self::max(self, other)
    }
}

/// A letter of a formula with its value. What follows a `_` in its name stands low.
#[derive(Debug, Clone, PartialEq)]
pub struct Symbol {
    /// Its name.
    pub name: Cow<'static, str>,
    /// Its value, in the unit in which the formula counts.
    pub value: f64,
}

/// An operation between two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Between {
    /// Sum.
    Plus,
    /// Difference.
    Minus,
    /// Product.
    Times,
    /// Quotient.
    Over,
    /// The smaller.
    Least,
    /// The larger.
    Most,
}

/// A function that is told by its name: a curve through the points of a table, or what a model answers.
#[derive(Clone)]
pub struct Curve {
    name: &'static str,
    at: Arc<dyn Fn(f64) -> f64 + Send + Sync>,
}

impl fmt::Debug for Curve {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}

/// A function of one.
#[derive(Debug, Clone)]
pub enum Of {
    /// The negative.
    Negative,
    /// e to the power.
    Exp,
    /// 2 to the power.
    Exp2,
    /// Natural logarithm.
    Ln,
    /// Decimal logarithm.
    Log10,
    /// Square root.
    Root,
    /// To a whole power.
    Power(i32),
    /// One that is told by its name.
    Curve(Curve),
}

/// The tree of what a law computes.
#[derive(Debug, Clone)]
pub enum Formula {
    /// A constant of the law.
    Constant(f64),
    /// What it takes in.
    Symbol(Symbol),
    /// An operation between two.
    Pair(Between, Box<[Self; 2]>),
    /// A function of one.
    One(Of, Box<Self>),
}

impl Formula {
    /// A letter with its value.
    #[must_use]
    pub fn symbol(name: impl Into<Cow<'static, str>>, value: f64) -> Self {
        Self::Symbol(Symbol {
            name: name.into(),
            value,
        })
    }

    /// A function that is told by its name, at this place.
    #[must_use]
    pub fn curve(
        self,
        name: &'static str,
        at: impl Fn(f64) -> f64 + Send + Sync + 'static,
    ) -> Self {
        let at = Arc::new(at);
        Self::One(Of::Curve(Curve { name, at }), Box::new(self))
    }

    fn pair(self, between: Between, other: Self) -> Self {
        Self::Pair(between, Box::new([self, other]))
    }

    fn one(self, of: Of) -> Self {
        Self::One(of, Box::new(self))
    }

    /// Its value.
    #[must_use]
    pub fn evaluate(&self) -> f64 {
        self.evaluate_with(&|symbol| symbol.value)
    }

    /// Its value where the letters are given.
    pub fn evaluate_with(&self, given: &dyn Fn(&Symbol) -> f64) -> f64 {
        match self {
            Self::Constant(value) => *value,
            Self::Symbol(symbol) => given(symbol),
            Self::Pair(between, sides) => {
                let [left, right] = sides.each_ref().map(|side| side.evaluate_with(given));
                match between {
                    Between::Plus => left + right,
                    Between::Minus => left - right,
                    Between::Times => left * right,
                    Between::Over => left / right,
                    Between::Least => left.min(right),
                    Between::Most => left.max(right),
                }
            }
            Self::One(of, inside) => {
                let x = inside.evaluate_with(given);
                match of {
                    Of::Negative => -x,
                    Of::Exp => x.exp(),
                    Of::Exp2 => x.exp2(),
                    Of::Ln => x.ln(),
                    Of::Log10 => x.log10(),
                    Of::Root => x.sqrt(),
                    Of::Power(exponent) => x.powi(*exponent),
                    Of::Curve(curve) => (curve.at)(x),
                }
            }
        }
    }

    /// Its letters, each once, in the order in which they stand.
    #[must_use]
    pub fn symbols(&self) -> Vec<&Symbol> {
        let mut found = Vec::new();
        self.collect(&mut found);
        found
    }

    fn collect<'a>(&'a self, found: &mut Vec<&'a Symbol>) {
        match self {
            Self::Constant(_) => {}
            Self::Symbol(symbol) => {
                if !found.iter().any(|other| other.name == symbol.name) {
                    found.push(symbol);
                }
            }
            Self::Pair(_, sides) => sides.iter().for_each(|side| side.collect(found)),
            Self::One(_, inside) => inside.collect(found),
        }
    }
}

impl Add for Formula {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        self.pair(Between::Plus, other)
    }
}

impl Sub for Formula {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self.pair(Between::Minus, other)
    }
}

impl Mul for Formula {
    type Output = Self;

    fn mul(self, other: Self) -> Self {
        self.pair(Between::Times, other)
    }
}

impl Div for Formula {
    type Output = Self;

    fn div(self, other: Self) -> Self {
        self.pair(Between::Over, other)
    }
}

impl Neg for Formula {
    type Output = Self;

    fn neg(self) -> Self {
        self.one(Of::Negative)
    }
}

impl Number for Formula {
    fn constant(value: f64) -> Self {
        Self::Constant(value)
    }

    fn exp(self) -> Self {
        self.one(Of::Exp)
    }

    fn exp2(self) -> Self {
        self.one(Of::Exp2)
    }

    fn ln(self) -> Self {
        self.one(Of::Ln)
    }

    fn log10(self) -> Self {
        self.one(Of::Log10)
    }

    fn sqrt(self) -> Self {
        self.one(Of::Root)
    }

    fn powi(self, exponent: i32) -> Self {
        self.one(Of::Power(exponent))
    }

    fn min(self, other: Self) -> Self {
        self.pair(Between::Least, other)
    }

    fn max(self, other: Self) -> Self {
        self.pair(Between::Most, other)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn law<N: Number>(x: N, y: N) -> N {
        let n = N::constant;
        (n(2.0) * x.clone() - y.clone().exp()).max(n(0.5)) / (n(1.0) + y.powi(3)).sqrt()
            + (-x).exp2().min(n(4.0))
    }

    #[test]
    fn a_traced_law_is_the_law() {
        for (x, y) in [(3.0, 0.2), (0.1, 1.0), (-5.0, 0.7)] {
            let traced = law(Formula::symbol("x", x), Formula::symbol("y_1", y));
            assert_eq!(traced.evaluate().to_bits(), law(x, y).to_bits());
            let names: Vec<_> = traced.symbols().iter().map(|s| s.name.clone()).collect();
            assert_eq!(names, ["x", "y_1"]);
        }
    }
}
