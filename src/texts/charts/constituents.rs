//! What steel is made of, as charts name it.

pub use super::super::constituents::{AUSTENITE, BAINITE, CARBIDE, FERRITE, MARTENSITE, PEARLITE};

/// Several kinds of carbide by one word.
pub const CARBIDES: &str = "carbides";
