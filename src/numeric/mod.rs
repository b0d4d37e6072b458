//! Numerical methods without steel words: roots, linear solves, least squares, interpolation,
//! quadrature, order.

pub mod banded;
pub mod dense;
pub mod interpolate;
pub mod least_squares;
pub mod order;
pub mod roots;
