//! Variance-based indices from a sample of pairs of rows, with their errors.

use crate::numeric::quantile::mean_and_sd;
use crate::sources::{jansen_1999, saltelli_2010};
use serde::Serialize;

/// A pair of rows of the sample: the output for one, `f(A)`, for the other, `f(B)`, and for the one
/// with each input in turn taken from the other, `f(A_B^(i))`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub(super) a: f64,
    pub(super) b: f64,
    pub(super) ab: Vec<f64>,
}

/// What an input does to the variance of an output, as parts of it, with standard errors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Index {
    /// By itself: by so much the variance would fall were it known.
    pub first: f64,
    /// Standard error of that.
    pub first_error: f64,
    /// With all that it does together with others: so much would be left were all others known.
    pub total: f64,
    /// Standard error of that.
    pub total_error: f64,
}

/// Standard deviation of the output and the indices of its inputs, from blocks of rows that are
/// independent of each other: the error is that of leaving out one block after the other
/// (jackknife). None of fewer than two blocks, or where nothing varies.
pub(super) fn indices(blocks: &[Vec<Row>]) -> Option<(f64, Vec<Index>)> {
    let blocks: Vec<&Vec<Row>> = blocks.iter().filter(|block| !block.is_empty()).collect();
    if blocks.len() < 2 {
        return None;
    }
    let without = |left_out: Option<usize>| {
        let kept = blocks.iter().enumerate();
        let rows: Vec<&Row> = kept
            .filter(|(place, _)| Some(*place) != left_out)
            .flat_map(|(_, block)| block.iter())
            .collect();
        estimate(&rows)
    };
    let (sd, whole) = without(None)?;
    let parts: Vec<Vec<[f64; 2]>> = (0..blocks.len())
        .map(|place| Some(without(Some(place))?.1))
        .collect::<Option<_>>()?;
    let error = |input: usize, which: usize| {
        let estimates: Vec<f64> = parts
            .iter()
            .filter_map(|part| part.get(input)?.get(which).copied())
            .collect();
        let spread = mean_and_sd(&estimates).map_or(0.0, |(_, sd)| sd);
        // (G - 1)/G times the sum of squares, whose mean over G - 1 is the square of `spread`.
        let blocks = estimates.len() as f64;
        spread * (blocks - 1.0) / blocks.sqrt()
    };
    let found = whole
        .iter()
        .enumerate()
        .map(|(input, [first, total])| Index {
            first: *first,
            first_error: error(input, 0),
            total: *total,
            total_error: error(input, 1),
        });
    Some((sd, found.collect()))
}

/// Standard deviation, and first-order and total index of every input.
fn estimate(rows: &[&Row]) -> Option<(f64, Vec<[f64; 2]>)> {
    let all: Vec<f64> = rows.iter().flat_map(|row| [row.a, row.b]).collect();
    let (mean, sd) = mean_and_sd(&all)?;
    let variance = sd * sd;
    if variance <= f64::EPSILON * mean * mean {
        return None;
    }
    let inputs = rows.iter().map(|row| row.ab.len()).min()?;
    let count = rows.len() as f64;
    let parts = (0..inputs).map(|input| {
        let mut sums = [0.0; 2];
        for row in rows {
            let Some(ab) = row.ab.get(input) else {
                continue;
            };
            // About the mean the estimator has the least error, and the same expectation.
            let b = row.b - mean;
            sums[0] += saltelli_2010::first_order_term(b, *ab, row.a);
            sums[1] += jansen_1999::total_term(row.a, *ab);
        }
        sums.map(|sum| sum / count / variance)
    });
    Some((sd, parts.collect()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advise::points::point;
    use crate::sources::{ishigami_homma_1990, saltelli_sobol_1995};
    use std::f64::consts::PI;

    fn sampled<const N: usize>(f: fn(&[f64; N]) -> f64, blocks: u32, rows: u32) -> Vec<Index> {
        let sample: Vec<Vec<Row>> = (0..blocks)
            .map(|block| {
                (0..rows)
                    .map(|row| {
                        let at = point(row, 2 * N, block);
                        let (a, b) = at.split_at(N);
                        let a: [f64; N] = a.try_into().unwrap();
                        let mixed = |input: usize| {
                            let mut mixed = a;
                            mixed[input] = b[input];
                            f(&mixed)
                        };
                        Row {
                            a: f(&a),
                            b: f(b.try_into().unwrap()),
                            ab: (0..N).map(mixed).collect(),
                        }
                    })
                    .collect()
            })
            .collect();
        indices(&sample).unwrap().1
    }

    /// Each index within a small distance of the known one, and within four of the errors told.
    fn assert_known(found: &[Index], known: &[(f64, f64)], within: f64) {
        for (index, (first, total)) in found.iter().zip(known) {
            for (value, known, error) in [
                (index.first, first, index.first_error),
                (index.total, total, index.total_error),
            ] {
                let off = (value - known).abs();
                assert!(off < within, "{index:?} against {known}");
                assert!(off < 4.0 * error + 1e-3, "{index:?} against {known}");
            }
        }
    }

    #[test]
    fn ishigamis_function_has_its_published_indices() {
        let f = |at: &[f64; 3]| ishigami_homma_1990::value(at.map(|u| PI * (2.0 * u - 1.0)));
        let known = ishigami_homma_1990::indices();
        assert_known(&sampled(f, 8, 1024), &known, 0.01);
        assert_known(&sampled(f, 8, 64), &known, 0.06);
    }

    #[test]
    fn the_g_function_has_its_published_indices() {
        let known = saltelli_sobol_1995::indices();
        assert_known(&sampled(saltelli_sobol_1995::value, 8, 1024), &known, 0.01);
        assert_known(&sampled(saltelli_sobol_1995::value, 8, 32), &known, 0.08);
    }

    #[test]
    fn what_does_not_vary_has_no_indices() {
        let row = Row {
            a: 60.0,
            b: 60.0,
            ab: vec![60.0; 2],
        };
        assert_eq!(indices(&[vec![row.clone()], vec![row]]), None);
        assert_eq!(indices(&[]), None);
    }
}
