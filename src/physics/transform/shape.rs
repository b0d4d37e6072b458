//! How far a reaction has gone when it is a given multiple of its 1 % start time old.
//!
//! Both published shapes have the form `dX/ds = X^(e(1-X)) (1-X)^(eX)`, symmetric about one half.
//! The integral `s(X)` is evaluated in closed form (fitted here for X from 1e-4 to one half,
//! relative error under 2e-5); the inverse `X(s)` is a table with the exact slope at its knots.

use crate::numeric::order::{larger, smaller};
use std::borrow::Cow;
use std::sync::OnceLock;

/// The fraction that counts as the start of a reaction.
pub const START: f64 = 0.01;
/// The fraction that counts as the finish of a reaction.
pub const FINISH: f64 = 0.99;

/// A shape `dX/ds = X^(e(1-X)) (1-X)^(eX)` with its integral in closed form.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Exponent e.
    exponent: f64,
    /// Power of the leading term, 1 - e.
    lead: f64,
    /// Terms of the closed form for X up to one half.
    terms: [f64; 5],
}

/// Shape of ferrite and pearlite.
pub const STEEP: Shape = Shape {
    exponent: crate::sources::kirkaldy_venugopalan_1984::EXPONENT,
    lead: 1.0 - crate::sources::kirkaldy_venugopalan_1984::EXPONENT,
    terms: [-0.373193, 0.498193, -0.404331, -0.527669, 0.918711],
};

/// Shape of bainite at low carbon.
pub const SPREAD: Shape = Shape {
    exponent: crate::sources::li_1998::EXPONENT,
    lead: 1.0 - crate::sources::li_1998::EXPONENT,
    terms: [-0.164996, 0.247571, -0.113755, -0.206311, 0.394135],
};

impl Shape {
    /// `dX/ds` at a fraction.
    fn slope(&self, x: f64) -> f64 {
        if x <= 0.0 || x >= 1.0 {
            return 0.0;
        }
        (self.exponent * ((1.0 - x) * x.ln() + x * (1.0 - x).ln())).exp()
    }

    /// The integral up to one half or less.
    fn lower(&self, x: f64) -> f64 {
        if x <= 0.0 {
            return 0.0;
        }
        let ln_x = x.ln();
        let [a, b, c, d, e] = self.terms;
        let bracket = a + b * ln_x + x * (c + d * ln_x + x * e);
        (self.lead * ln_x).exp() * (1.0 / self.lead + x * bracket)
    }

    /// The integral from 0 to `x`, for x from 0 to 1.
    #[must_use]
    pub fn integral(&self, x: f64) -> f64 {
        if x <= 0.5 {
            self.lower(x)
        } else {
            2.0 * self.lower(0.5) - self.lower(1.0 - x.min(1.0))
        }
    }
}

/// A blend of the two shapes, as multiples of the 1 % start time, with the inverse tabulated.
#[derive(Debug, Clone)]
pub struct Progress {
    /// Ages per unit of the steep and of the spread integral.
    weights: [f64; 2],
    /// Age at which the reaction is complete, in multiples of the start time.
    complete_age: f64,
    step: f64,
    /// Fraction and its slope with age at equal steps of age.
    knots: Vec<[f64; 2]>,
}

/// Part of the steep shape in bainite of much carbon: the measured finishes of 100Cr6 come 8.5 starts
/// (geometric mean) after the beginning.
pub(super) const STEEP_BAINITE_PART: f64 = 0.8;

/// Cells of the inverse table, an even number.
const CELLS: usize = 96;

impl Progress {
    /// The shape of ferrite and pearlite.
    pub(super) fn steep() -> &'static Self {
        static STEEP: OnceLock<Progress> = OnceLock::new();
        STEEP.get_or_init(|| Self::new(1.0))
    }

    /// As [`Progress::new`]; that of most tool steels is made once.
    pub(super) fn blended(steep_weight: f64) -> Cow<'static, Self> {
        static OF_MUCH_CARBON: OnceLock<Progress> = OnceLock::new();
        if steep_weight == STEEP_BAINITE_PART {
            Cow::Borrowed(OF_MUCH_CARBON.get_or_init(|| Self::new(STEEP_BAINITE_PART)))
        } else {
            Cow::Owned(Self::new(steep_weight))
        }
    }

    /// `steep_weight` from 0 (spread shape) to 1 (steep shape) of the age at equal fraction.
    #[must_use]
    pub fn new(steep_weight: f64) -> Self {
        let steep_weight = steep_weight.clamp(0.0, 1.0);
        let mut progress = Self {
            weights: [
                steep_weight / STEEP.integral(START),
                (1.0 - steep_weight) / SPREAD.integral(START),
            ],
            complete_age: 0.0,
            step: 0.0,
            knots: Vec::with_capacity(CELLS + 1),
        };
        progress.complete_age = progress.age(1.0);
        progress.step = progress.complete_age / CELLS as f64;
        let mut knot = [0.0, 0.0];
        progress.knots.push(knot);
        for cell in 1..=CELLS / 2 {
            knot = progress.invert(progress.step * cell as f64, knot);
            progress.knots.push(knot);
        }
        // Both shapes are symmetric about one half.
        for cell in (0..CELLS / 2).rev() {
            if let Some(&[fraction, slope]) = progress.knots.get(cell) {
                progress.knots.push([1.0 - fraction, slope]);
            }
        }
        progress
    }

    /// The shapes that take part, with their ages per unit of the integral.
    fn parts(&self) -> impl Iterator<Item = (Shape, f64)> {
        [STEEP, SPREAD]
            .into_iter()
            .zip(self.weights)
            .filter(|(_, weight)| *weight > 0.0)
    }

    /// Age, in multiples of the 1 % start time, at which the fraction is reached.
    #[must_use]
    pub fn age(&self, fraction: f64) -> f64 {
        self.parts()
            .map(|(shape, weight)| weight * shape.integral(fraction))
            .sum()
    }

    /// Slope of the fraction with age.
    fn slope(&self, fraction: f64) -> f64 {
        let mut age_per_fraction = 0.0;
        for (shape, weight) in self.parts() {
            let slope = shape.slope(fraction);
            if slope <= 0.0 {
                return 0.0;
            }
            age_per_fraction += weight / slope;
        }
        1.0 / age_per_fraction
    }

    /// Fraction and slope at an age, from those of the knot before: Newton steps kept in a
    /// bracket, as the age rises with the fraction.
    fn invert(&self, age: f64, [from, from_slope]: [f64; 2]) -> [f64; 2] {
        let (mut low, mut high) = (from, 1.0);
        let mut fraction = (from + from_slope * self.step).max(1e-6).min(high);
        for _ in 0..40 {
            let error = self.age(fraction) - age;
            if error > 0.0 {
                high = fraction;
            } else {
                low = fraction;
            }
            let slope = self.slope(fraction);
            if error.abs() < 1e-9 * self.complete_age {
                return [fraction, slope];
            }
            let next = fraction - error * slope;
            fraction = if next > low && next < high {
                next
            } else {
                0.5 * (low + high)
            };
        }
        [fraction, self.slope(fraction)]
    }

    /// Age at which the reaction is complete, in multiples of the 1 % start time.
    #[must_use]
    pub const fn complete_age(&self) -> f64 {
        self.complete_age
    }

    /// Fraction reached at an age given in multiples of the 1 % start time.
    #[must_use]
    pub fn fraction(&self, age: f64) -> f64 {
        let place = age / self.step;
        if place.is_nan() || place <= 0.0 {
            return 0.0;
        }
        if age >= self.complete_age {
            return 1.0;
        }
        let cell = place as usize;
        let (Some(&[x0, m0]), Some(&[x1, m1])) = (self.knots.get(cell), self.knots.get(cell + 1))
        else {
            return 1.0;
        };
        let u = place - cell as f64;
        let v = 1.0 - u;
        let x = v * v * ((1.0 + 2.0 * u) * x0 + u * self.step * m0)
            + u * u * ((1.0 + 2.0 * v) * x1 - v * self.step * m1);
        larger(0.0, smaller(x, 1.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Quadrature in w = X^(1-e), which removes the end singularity.
    fn quadrature(shape: &Shape, x: f64) -> f64 {
        let n = 4000;
        let p = 1.0 / shape.lead;
        let top = x.powf(shape.lead);
        let f = |w: f64| {
            if w <= 0.0 {
                return p;
            }
            let x = w.powf(p);
            // dX = p w^(p-1) dw, and w^(p-1) = X^e.
            p * x.powf(shape.exponent) / shape.slope(x)
        };
        let h = top / f64::from(n);
        (0..n)
            .map(|i| {
                let a = h * f64::from(i);
                h / 6.0 * (f(a) + 4.0 * f(a + h / 2.0) + f(a + h))
            })
            .sum()
    }

    #[test]
    fn closed_form_agrees_with_quadrature() {
        for shape in [STEEP, SPREAD] {
            let half = quadrature(&shape, 0.5);
            for x in [1e-4, 1e-3, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5] {
                let reference = quadrature(&shape, x);
                assert!((shape.integral(x) / reference - 1.0).abs() < 3e-5, "{x}");
                let upper = 2.0 * half - reference;
                assert!((shape.integral(1.0 - x) / upper - 1.0).abs() < 3e-5, "{x}");
            }
        }
    }

    /// Values of the notes.
    #[test]
    fn tabulated_integrals() {
        for (x, value) in [(0.01, 0.1043), (0.5, 1.0259), (0.99, 1.9474)] {
            assert!((SPREAD.integral(x) - value).abs() < 3e-4, "{x}");
        }
        for (x, value) in [(0.01, 0.641), (0.5, 2.180), (0.99, 3.718)] {
            assert!((STEEP.integral(x) - value).abs() < 1e-3, "{x}");
        }
    }

    #[test]
    fn inverse_returns_the_fraction() {
        for weight in [0.0, 0.3, 1.0] {
            let progress = Progress::new(weight);
            for i in 1..200 {
                let x = f64::from(i) / 200.0;
                let back = progress.fraction(progress.age(x));
                assert!((back - x).abs() < 2e-4, "{weight} {x} {back}");
            }
            assert!((progress.age(START) - 1.0).abs() < 1e-12);
            assert_eq!(progress.fraction(0.0), 0.0);
            assert_eq!(progress.fraction(f64::NAN), 0.0);
            assert_eq!(progress.fraction(1e300), 1.0);
        }
    }

    #[test]
    fn fraction_never_falls_with_age() {
        for weight in [0.0, 1.0] {
            let progress = Progress::new(weight);
            let mut last = 0.0;
            for i in 0..5000 {
                let x = progress.fraction(progress.complete_age() * f64::from(i) / 4990.0);
                assert!(x >= last);
                last = x;
            }
        }
    }
}
