//! Numerical methods without steel words: roots, linear solves, interpolation, quadrature.

pub mod interpolate;
