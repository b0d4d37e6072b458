//! What measurements tell of unknowns where everything is straight: the most probable values and
//! their covariance, with readings that lie far off weighed down. No steel in it.
//!
//! The unknowns are in units of their standard deviations before anything was measured. What is
//! measured on one piece shares what is off about this very piece: its covariance.

use crate::numeric::dense::Singular;
use crate::numeric::symmetric::{Cholesky, Symmetric};
use crate::sources::holland_welsch_1977::huber_weight;

/// Most rounds of weighing, and the change of an unknown, in its standard deviations, below which
/// they have settled.
const MOST_ROUNDS: usize = 60;
const SETTLED: f64 = 1e-7;

/// A measurement.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    /// Measured less computed at the place where all was straightened.
    pub(super) misfit: f64,
    /// Variance of the measurement by itself.
    pub(super) variance: f64,
    /// Change of what is computed by each unknown that it depends on.
    pub(super) by: Vec<(usize, f64)>,
    /// Change by each of what is off about this piece alone, times its standard deviation.
    pub(super) by_piece: Vec<f64>,
}

/// The measurements on one piece.
pub(super) type Rows = Vec<Row>;

/// Whether what lies far off is weighed down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Weighing {
    /// As far as it lies off.
    Robust,
    /// Everything counts fully.
    #[cfg(test)]
    Plain,
}

/// What measurements tell.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Estimate {
    /// The most probable values, in standard deviations before.
    pub(super) at: Vec<f64>,
    /// Their covariance.
    pub(super) covariance: Symmetric,
    /// Weight of each measurement on each piece, 0 to 1.
    pub(super) weights: Vec<Vec<f64>>,
}

impl Estimate {
    /// What is known of so many unknowns before anything is measured.
    pub(super) fn of_nothing(unknowns: usize) -> Self {
        Self {
            at: vec![0.0; unknowns],
            covariance: Symmetric::unit(unknowns),
            weights: Vec::new(),
        }
    }

    /// What pieces tell of so many unknowns; `straightened_at` is where.
    ///
    /// # Errors
    /// Measurements that are no numbers.
    pub(super) fn of(
        pieces: &[Rows],
        straightened_at: &[f64],
        weighing: Weighing,
    ) -> Result<Self, Singular> {
        let factors: Result<Vec<Cholesky>, Singular> = pieces
            .iter()
            .map(|rows| covariance(rows).cholesky())
            .collect();
        let factors = factors?;
        let mut at = straightened_at.to_vec();
        let mut round = 0;
        loop {
            let weights: Vec<Vec<f64>> = pieces
                .iter()
                .map(|rows| weigh(rows, &at, straightened_at, weighing))
                .collect();
            let mut normal = Normal::of(at.len());
            for ((rows, factor), weights) in pieces.iter().zip(&factors).zip(&weights) {
                normal.add(rows, factor, weights, straightened_at);
            }
            let factor = normal.matrix.cholesky()?;
            let mut next = normal.right;
            factor.solve(&mut next);
            let change = next
                .iter()
                .zip(&at)
                .fold(0.0_f64, |most, (next, at)| most.max((next - at).abs()));
            at = next;
            round += 1;
            if change < SETTLED || round >= MOST_ROUNDS {
                return Ok(Self {
                    at,
                    covariance: factor.inverse(),
                    weights,
                });
            }
        }
    }

    /// Variance of what changes with the unknowns by so much.
    pub(super) fn variance_of(&self, by: &[(usize, f64)]) -> f64 {
        self.covariance_of(by, by)
    }

    /// Covariance of two numbers that change with the unknowns by so much.
    pub(super) fn covariance_of(&self, a: &[(usize, f64)], b: &[(usize, f64)]) -> f64 {
        a.iter()
            .flat_map(|(i, a)| b.iter().map(move |(j, b)| (*i, *j, a * b)))
            .map(|(i, j, product)| product * self.covariance.at(i, j))
            .sum()
    }
}

/// Sum of squares that an estimate makes least, for misfits at other values of the unknowns.
pub(super) fn squares(pieces: &[Rows], weights: &[Vec<f64>], at: &[f64]) -> Result<f64, Singular> {
    let mut sum: f64 = at.iter().map(|z| z * z).sum();
    for (rows, weights) in pieces.iter().zip(weights) {
        let mut misfits: Vec<f64> = rows
            .iter()
            .zip(weights)
            .map(|(row, weight)| weight.sqrt() * row.misfit)
            .collect();
        covariance(rows).cholesky()?.whiten(&mut misfits);
        sum += misfits.iter().map(|misfit| misfit * misfit).sum::<f64>();
    }
    Ok(sum)
}

/// Covariance of what is measured on a piece, where the unknowns are known.
fn covariance(rows: &Rows) -> Symmetric {
    let mut covariance = Symmetric::zero(rows.len());
    for (i, row) in rows.iter().enumerate() {
        for (j, other) in rows.iter().take(i + 1).enumerate() {
            let shared = row.by_piece.iter().zip(&other.by_piece);
            covariance.add(i, j, shared.map(|(a, b)| a * b).sum());
        }
        covariance.add(i, i, row.variance);
    }
    covariance
}

/// Variance of a measurement, where the unknowns are known.
pub(super) fn scatter(row: &Row) -> f64 {
    row.variance + row.by_piece.iter().map(|by| by * by).sum::<f64>()
}

fn weigh(rows: &Rows, at: &[f64], straightened_at: &[f64], weighing: Weighing) -> Vec<f64> {
    let weight = |row: &Row| {
        let moved: f64 = row
            .by
            .iter()
            .map(|(unknown, by)| by * (value(at, *unknown) - value(straightened_at, *unknown)))
            .sum();
        huber_weight((row.misfit - moved) / scatter(row).sqrt())
    };
    match weighing {
        Weighing::Robust => rows.iter().map(weight).collect(),
        #[cfg(test)]
        Weighing::Plain => vec![1.0; rows.len()],
    }
}

fn value(list: &[f64], place: usize) -> f64 {
    list.get(place).copied().unwrap_or_default()
}

/// The normal equations: what is known beforehand is one for each unknown.
struct Normal {
    matrix: Symmetric,
    right: Vec<f64>,
}

impl Normal {
    fn of(unknowns: usize) -> Self {
        Self {
            matrix: Symmetric::unit(unknowns),
            right: vec![0.0; unknowns],
        }
    }

    /// Adds the measurements on a piece, by the factor of their covariance.
    fn add(&mut self, rows: &Rows, factor: &Cholesky, weights: &[f64], straightened_at: &[f64]) {
        let columns = columns(rows);
        let whitened = |number: &dyn Fn(&Row) -> f64| {
            let mut numbers: Vec<f64> = rows
                .iter()
                .zip(weights)
                .map(|(row, weight)| weight.sqrt() * number(row))
                .collect();
            factor.whiten(&mut numbers);
            numbers
        };
        let by = |row: &Row, unknown: usize| {
            let found = row.by.iter().find(|(place, _)| *place == unknown);
            found.map_or(0.0, |(_, by)| *by)
        };
        // What would be read less what is computed with every unknown as before.
        let wanted = whitened(&|row| {
            let back = row
                .by
                .iter()
                .map(|(unknown, by)| by * value(straightened_at, *unknown));
            row.misfit + back.sum::<f64>()
        });
        let all: Vec<Vec<f64>> = columns
            .iter()
            .map(|unknown| whitened(&|row| by(row, *unknown)))
            .collect();
        let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        for (place, (unknown, column)) in columns.iter().zip(&all).enumerate() {
            for (other, other_column) in columns.iter().zip(&all).take(place + 1) {
                self.matrix
                    .add(*unknown, *other, product(column, other_column));
            }
            if let Some(right) = self.right.get_mut(*unknown) {
                *right += product(column, &wanted);
            }
        }
    }
}

/// The unknowns that a piece depends on, each once.
fn columns(rows: &Rows) -> Vec<usize> {
    let mut columns: Vec<usize> = Vec::new();
    for (unknown, _) in rows.iter().flat_map(|row| &row.by) {
        if !columns.contains(unknown) {
            columns.push(*unknown);
        }
    }
    columns
}

#[cfg(test)]
#[path = "estimate_tests.rs"]
mod tests;
