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

    fn add_second(&mut self, i: usize, j: usize, value: f64) {
        let (low, high) = if i < j { (i, j) } else { (j, i) };
        self.hessian[low][high] += value;
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
#[derive(Debug, Clone)]
struct Product {
    shape: Shape,
    /// Variables in the product; those that the factor depends on come first.
    variables: [usize; 4],
    count: usize,
    /// Printed terms of each order.
    orders: Vec<&'static [Term]>,
    /// Their values at the temperature set.
    coefficients: Vec<f64>,
}

/// A sum of products.
#[derive(Debug, Clone, Default)]
pub(crate) struct Polynomial {
    products: Vec<Product>,
}

impl Polynomial {
    /// Collects the parameters of one kind whose constituents are all present.
    /// `place` gives the variable of a constituent on a sublattice, `None` when it fills the
    /// sublattice alone; `present` tells whether it is there at all.
    pub(crate) fn collect(
        parameters: &'static [Parameter],
        kind: Kind,
        present: impl Fn(usize, Component) -> bool,
        place: impl Fn(usize, Component) -> Option<usize>,
    ) -> Self {
        let mut polynomial = Self::default();
        let mut keys: Vec<&'static [&'static [Component]]> = Vec::new();
        for parameter in parameters.iter().filter(|p| p.kind == kind) {
            let all_there = parameter
                .sites
                .iter()
                .enumerate()
                .all(|(s, site)| site.iter().all(|c| present(s, *c)));
            if !all_there {
                continue;
            }
            if let Some(known) = keys.iter().position(|key| *key == parameter.sites) {
                polynomial.products[known].add_order(parameter);
                continue;
            }
            keys.push(parameter.sites);
            let mut variables = [0; 4];
            let mut count = 0;
            // interacting constituents first: the factor depends on them
            let mut sublattices: Vec<usize> = (0..parameter.sites.len()).collect();
            sublattices.sort_by_key(|s| std::cmp::Reverse(parameter.sites[*s].len()));
            for s in sublattices {
                for constituent in parameter.sites[s] {
                    if let (Some(variable), true) = (place(s, *constituent), count < 4) {
                        variables[count] = variable;
                        count += 1;
                    }
                }
            }
            let mut product = Product {
                shape: Shape::Constant,
                variables,
                count,
                orders: Vec::new(),
                coefficients: Vec::new(),
            };
            product.add_order(parameter);
            polynomial.products.push(product);
        }
        for (product, sites) in polynomial.products.iter_mut().zip(keys) {
            let interacting = sites.iter().map(|site| site.len()).max().unwrap_or(1);
            product.shape = match (product.orders.len(), interacting) {
                (..=1, _) => Shape::Constant,
                (_, 3) => Shape::Weighted,
                _ => Shape::Difference,
            };
            if product.shape == Shape::Weighted {
                product.orders.resize(3, &[]);
            }
            product.coefficients = vec![0.0; product.orders.len()];
        }
        polynomial
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.products.is_empty()
    }

    /// Evaluates the coefficients at a temperature.
    pub(crate) fn set_temperature(&mut self, at: &AtTemperature) {
        for product in &mut self.products {
            for (value, terms) in product.coefficients.iter_mut().zip(&product.orders) {
                *value = at.sum(terms);
            }
        }
    }

    /// Adds value, gradient and the upper triangle of the Hessian.
    pub(crate) fn add_to(&self, y: &[f64; MOST], out: &mut Derivatives) {
        for product in &self.products {
            product.add_to(y, out);
        }
    }
}

impl Product {
    fn add_order(&mut self, parameter: &Parameter) {
        if self.orders.len() <= parameter.order {
            self.orders.resize(parameter.order + 1, &[]);
        }
        self.orders[parameter.order] = parameter.terms;
    }

    fn add_to(&self, y: &[f64; MOST], out: &mut Derivatives) {
        match self.shape {
            Shape::Constant => {
                let factor = self.coefficients.first().copied().unwrap_or(0.0);
                self.add_product(y, factor, out);
            }
            Shape::Difference => {
                let [a, b, ..] = self.variables;
                let difference = y[a] - y[b];
                let (mut q, mut q1, mut q2) = (0.0, 0.0, 0.0);
                for coefficient in self.coefficients.iter().rev() {
                    q2 = q2 * difference + q1;
                    q1 = q1 * difference + q;
                    q = q * difference + coefficient;
                }
                let second = 2.0 * q2;
                let p = self.add_product(y, q, out);
                out.gradient[a] += p * q1;
                out.gradient[b] -= p * q1;
                out.hessian[a][a] += p * second;
                out.hessian[b][b] += p * second;
                out.add_second(a, b, -p * second);
                for (k, &v) in self.variables[..self.count].iter().enumerate() {
                    let rest = self.without(y, k) * q1;
                    add_mixed(out, v, a, rest);
                    add_mixed(out, v, b, -rest);
                }
            }
            Shape::Weighted => {
                let [a, b, c, _] = self.variables;
                let missing = (1.0 - y[a] - y[b] - y[c]) / 3.0;
                let (mut q, mut sum) = (0.0, 0.0);
                for (coefficient, v) in self.coefficients.iter().zip([a, b, c]) {
                    q += coefficient * (y[v] + missing);
                    sum += coefficient;
                }
                let p = self.add_product(y, q, out);
                for (coefficient, v) in self.coefficients.iter().zip([a, b, c]) {
                    let slope = coefficient - sum / 3.0;
                    out.gradient[v] += p * slope;
                    for (k, &w) in self.variables[..self.count].iter().enumerate() {
                        add_mixed(out, w, v, self.without(y, k) * slope);
                    }
                }
            }
        }
    }

    /// Product of all fractions but the one at place `k`.
    fn without(&self, y: &[f64; MOST], k: usize) -> f64 {
        let mut rest = 1.0;
        for (place, &v) in self.variables[..self.count].iter().enumerate() {
            if place != k {
                rest *= y[v];
            }
        }
        rest
    }

    /// Adds `factor` times the product and its derivatives as if the factor were constant;
    /// gives the product.
    fn add_product(&self, y: &[f64; MOST], factor: f64, out: &mut Derivatives) -> f64 {
        let [a, b, c, d] = self.variables;
        match self.count {
            0 => {
                out.value += factor;
                1.0
            }
            1 => {
                out.value += factor * y[a];
                out.gradient[a] += factor;
                y[a]
            }
            2 => {
                let p = y[a] * y[b];
                out.value += factor * p;
                out.gradient[a] += factor * y[b];
                out.gradient[b] += factor * y[a];
                out.add_second(a, b, factor);
                p
            }
            3 => {
                let (ya, yb, yc) = (y[a], y[b], y[c]);
                let p = ya * yb * yc;
                out.value += factor * p;
                out.gradient[a] += factor * yb * yc;
                out.gradient[b] += factor * ya * yc;
                out.gradient[c] += factor * ya * yb;
                out.add_second(a, b, factor * yc);
                out.add_second(a, c, factor * yb);
                out.add_second(b, c, factor * ya);
                p
            }
            _ => {
                let (ya, yb, yc, yd) = (y[a], y[b], y[c], y[d]);
                let (ab, cd) = (ya * yb, yc * yd);
                out.value += factor * ab * cd;
                out.gradient[a] += factor * yb * cd;
                out.gradient[b] += factor * ya * cd;
                out.gradient[c] += factor * ab * yd;
                out.gradient[d] += factor * ab * yc;
                out.add_second(a, b, factor * cd);
                out.add_second(c, d, factor * ab);
                out.add_second(a, c, factor * yb * yd);
                out.add_second(a, d, factor * yb * yc);
                out.add_second(b, c, factor * ya * yd);
                out.add_second(b, d, factor * ya * yc);
                ab * cd
            }
        }
    }
}

/// Adds the mixed part `u_i v_j + u_j v_i` of a product rule for one pair.
fn add_mixed(out: &mut Derivatives, i: usize, j: usize, value: f64) {
    if i == j {
        out.hessian[i][i] += 2.0 * value;
    } else {
        out.add_second(i, j, value);
    }
}
