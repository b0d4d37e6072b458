//! Numerical methods without steel words: formulas, roots, linear solves, least squares, interpolation,
//! quadrature, order, decimals.

pub mod banded;
pub mod decimal;
pub mod dense;
#[cfg(any(test, feature = "watched-solver"))]
pub mod effort;
pub mod formula;
pub mod interpolate;
pub mod least_squares;
pub mod lobatto;
pub mod order;
pub mod quantile;
pub mod roots;
pub mod symmetric;
pub mod turn;
