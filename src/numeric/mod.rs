//! Numerical methods without steel words: roots, linear solves, least squares, interpolation,
//! quadrature.

pub mod banded;
pub mod dense;
pub mod interpolate;
pub mod least_squares;
pub mod roots;
