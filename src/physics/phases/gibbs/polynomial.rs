//! Polynomials in site fractions with gradient and Hessian: the shape that end-members and
//! interactions of the compound energy formalism share.

use super::parameters::{Component, Kind, Parameter, Term};
use super::temperature::AtTemperature;

/// Most variables (site fractions) that any phase has: M23C6 with all elements.
pub(crate) const MOST: usize = 12;

/// Value, gradient and Hessian in site fractions.
#[derive(Debug, Clone)]
pub(crate) struct Derivatives {
    pub(crate) value: f64,
    pub(crate) gradient: [f64; MOST],
    /// Symmetric; both triangles are filled by [`Polynomial::add_to`]'s caller.
    pub(crate) hessian: [[f64; MOST]; MOST],
}

impl Derivatives {
    pub(crate) const ZERO: Self = Self {
        value: 0.0,
        gradient: [0.0; MOST],
        hessian: [[0.0; MOST]; MOST],
    };

    /// Sets the part used by `count` variables to zero.
    pub(crate) fn clear(&mut self, count: usize) {
        self.value = 0.0;
        self.gradient[..count].fill(0.0);
        for row in &mut self.hessian[..count] {
            row[..count].fill(0.0);
        }
    }

    /// Adds to the upper triangle at a place that [`pair`] gave.
    #[inline(always)]
    fn add_second(&mut self, pair: u8, value: f64) {
        if let Some(entry) = self.hessian.as_flattened_mut().get_mut(usize::from(pair)) {
            *entry += value;
        }
    }

    /// Copies the upper triangle, which terms add to, into the lower.
    pub(crate) fn mirror(&mut self, count: usize) {
        for i in 1..count {
            for j in 0..i {
                self.hessian[i][j] = self.hessian[j][i];
            }
        }
    }
}

/// Place of two variables in the upper triangle of the Hessian, row after row.
fn pair(i: usize, j: usize) -> u8 {
    (i.min(j) * MOST + i.max(j)) as u8
}

/// How the factor beside the product of site fractions depends on them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Shape {
    /// A constant.
    Constant,
    /// A power series in the difference of the first two fractions.
    Difference,
    /// A linear function of the first three fractions, each order weighted to its own.
    Weighted,
}

/// One product of site fractions with its factor.
#[derive(Debug, Clone, Copy)]
struct Product {
    shape: Shape,
    /// Variables in the product; those that the factor depends on come first.
    variables: [usize; 4],
    count: usize,
    /// Places of the pairs of its variables: ab, ac, ad, bc, bd, cd.
    pairs: [u8; 6],
    /// Place of the first of its coefficients, and how many there are, one for each order.
    first: usize,
    orders: usize,
}

/// A sum of products.
#[derive(Debug, Clone, Default)]
pub(crate) struct Polynomial {
    products: Vec<Product>,
    /// Printed terms of every coefficient.
    terms: Vec<&'static [Term]>,
    /// Their values at the temperature set.
    coefficients: Vec<f64>,
}

impl Polynomial {
    /// Collects the parameters of one kind whose constituents are all present; the orders of one
    /// product follow one another.
    /// `place` gives the variable of a constituent on a sublattice, `None` when it fills the
    /// sublattice alone; `present` tells whether it is there at all.
    pub(crate) fn collect(
        parameters: &'static [Parameter],
        kind: Kind,
        present: impl Fn(usize, Component) -> bool,
        place: impl Fn(usize, Component) -> Option<usize>,
    ) -> Self {
        let mut polynomial = Self::default();
        let mut parameters = parameters.iter().filter(|p| p.kind == kind).peekable();
        while let Some(parameter) = parameters.next() {
            let sites = parameter.sites;
            let first = polynomial.terms.len();
            let mut sublattices = sites.iter().enumerate();
            let is_there = sublattices.all(|(s, site)| site.iter().all(|c| present(s, *c)));
            if is_there {
                polynomial.add_order(first, parameter);
            }
            while let Some(further) = parameters.next_if(|p| p.sites == sites) {
                if is_there {
                    polynomial.add_order(first, further);
                }
            }
            if !is_there {
                continue;
            }
            let interacting = sites.iter().map(|site| site.len()).max().unwrap_or(1);
            let shape = match (polynomial.terms.len() - first, interacting) {
                (..=1, _) => Shape::Constant,
                (_, 3) => Shape::Weighted,
                _ => Shape::Difference,
            };
            if shape == Shape::Weighted {
                polynomial.terms.resize(first + 3, &[]);
            }
            let (variables, count) = variables(sites, &place);
            let [a, b, c, d] = variables;
            let pairs = [(a, b), (a, c), (a, d), (b, c), (b, d), (c, d)];
            polynomial.products.push(Product {
                shape,
                variables,
                count,
                pairs: pairs.map(|(i, j)| pair(i, j)),
                first,
                orders: polynomial.terms.len() - first,
            });
        }
        polynomial.coefficients = vec![0.0; polynomial.terms.len()];
        polynomial
    }

    /// Adds the terms of one order to the product whose coefficients begin at `first`.
    fn add_order(&mut self, first: usize, parameter: &Parameter) {
        let place = first + parameter.order;
        if self.terms.len() <= place {
            self.terms.resize(place + 1, &[]);
        }
        self.terms[place] = parameter.terms;
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.products.is_empty()
    }

    /// Evaluates the coefficients at a temperature.
    pub(crate) fn set_temperature(&mut self, at: &AtTemperature) {
        for (value, terms) in self.coefficients.iter_mut().zip(&self.terms) {
            *value = at.sum(terms);
        }
    }

    /// Adds value, gradient and the upper triangle of the Hessian.
    pub(crate) fn add_to(&self, y: &[f64; MOST], out: &mut Derivatives) {
        for product in &self.products {
            let coefficients = &self.coefficients[product.first..product.first + product.orders];
            product.add_to(coefficients, y, out);
        }
    }
}

/// The variables of a product, interacting constituents first: the factor depends on them.
fn variables(
    sites: &[&[Component]],
    place: impl Fn(usize, Component) -> Option<usize>,
) -> ([usize; 4], usize) {
    let (mut variables, mut count) = ([0; 4], 0);
    let most = sites.iter().map(|site| site.len()).max().unwrap_or(0);
    for interacting in (1..=most).rev() {
        let sublattices = sites.iter().enumerate();
        for (s, site) in sublattices.filter(|(_, site)| site.len() == interacting) {
            for constituent in *site {
                if let (Some(variable), true) = (place(s, *constituent), count < 4) {
                    variables[count] = variable;
                    count += 1;
                }
            }
        }
    }
    (variables, count)
}

impl Product {
    fn add_to(&self, coefficients: &[f64], y: &[f64; MOST], out: &mut Derivatives) {
        match self.shape {
            Shape::Constant => {
                let factor = coefficients.first().copied().unwrap_or(0.0);
                self.add_product(y, factor, out);
            }
            Shape::Difference => {
                let [a, b, ..] = self.variables;
                let [ab, ac, ad, bc, bd, _] = self.pairs;
                let difference = y[a] - y[b];
                let (mut q, mut q1, mut q2) = (0.0, 0.0, 0.0);
                for coefficient in coefficients.iter().rev() {
                    q2 = q2 * difference + q1;
                    q1 = q1 * difference + q;
                    q = q * difference + coefficient;
                }
                let Multiplied { whole, without } = self.add_product(y, q, out);
                let second = 2.0 * whole * q2;
                out.gradient[a] += whole * q1;
                out.gradient[b] -= whole * q1;
                out.hessian[a][a] += second + 2.0 * without[0] * q1;
                out.hessian[b][b] += second - 2.0 * without[1] * q1;
                out.add_second(ab, (without[1] - without[0]) * q1 - second);
                if self.count > 2 {
                    out.add_second(ac, without[2] * q1);
                    out.add_second(bc, -without[2] * q1);
                }
                if self.count > 3 {
                    out.add_second(ad, without[3] * q1);
                    out.add_second(bd, -without[3] * q1);
                }
            }
            Shape::Weighted => {
                let [a, b, c, _] = self.variables;
                let [ab, ac, ad, bc, bd, cd] = self.pairs;
                let missing = (1.0 - y[a] - y[b] - y[c]) / 3.0;
                let (mut q, mut sum) = (0.0, 0.0);
                for (coefficient, v) in coefficients.iter().zip([a, b, c]) {
                    q += coefficient * (y[v] + missing);
                    sum += coefficient;
                }
                let Multiplied { whole, without } = self.add_product(y, q, out);
                let mut slopes = [0.0; 3];
                for (slope, coefficient) in slopes.iter_mut().zip(coefficients) {
                    *slope = coefficient - sum / 3.0;
                }
                for (k, v) in [a, b, c].into_iter().enumerate() {
                    out.gradient[v] += whole * slopes[k];
                    out.hessian[v][v] += 2.0 * without[k] * slopes[k];
                }
                for (place, k, l) in [(ab, 0, 1), (ac, 0, 2), (bc, 1, 2)] {
                    out.add_second(place, without[k] * slopes[l] + without[l] * slopes[k]);
                }
                if self.count > 3 {
                    for (place, slope) in [ad, bd, cd].into_iter().zip(slopes) {
                        out.add_second(place, without[3] * slope);
                    }
                }
            }
        }
    }

    /// Adds `factor` times the product and its derivatives as if the factor were constant.
    fn add_product(&self, y: &[f64; MOST], factor: f64, out: &mut Derivatives) -> Multiplied {
        let [a, b, c, d] = self.variables;
        let [ab, ac, ad, bc, bd, cd] = self.pairs;
        let mut without = [1.0; 4];
        let whole = match self.count {
            0 => 1.0,
            1 => y[a],
            2 => {
                without = [y[b], y[a], 1.0, 1.0];
                out.add_second(ab, factor);
                y[a] * y[b]
            }
            3 => {
                let (ya, yb, yc) = (y[a], y[b], y[c]);
                without = [yb * yc, ya * yc, ya * yb, 1.0];
                out.add_second(ab, factor * yc);
                out.add_second(ac, factor * yb);
                out.add_second(bc, factor * ya);
                ya * without[0]
            }
            _ => {
                let (ya, yb, yc, yd) = (y[a], y[b], y[c], y[d]);
                let (first, last) = (ya * yb, yc * yd);
                without = [yb * last, ya * last, first * yd, first * yc];
                out.add_second(ab, factor * last);
                out.add_second(ac, factor * yb * yd);
                out.add_second(ad, factor * yb * yc);
                out.add_second(bc, factor * ya * yd);
                out.add_second(bd, factor * ya * yc);
                out.add_second(cd, factor * first);
                first * last
            }
        };
        out.value += factor * whole;
        for (v, without) in self.variables.iter().zip(without).take(self.count) {
            out.gradient[*v] += factor * without;
        }
        Multiplied { whole, without }
    }
}

/// A product of site fractions, and the same without each of them.
struct Multiplied {
    whole: f64,
    without: [f64; 4],
}
