//! Numerical methods without steel words: roots, linear solves, interpolation, quadrature.

pub mod banded;
pub mod dense;
pub mod interpolate;
pub mod roots;
