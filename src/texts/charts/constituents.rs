//! What steel is made of, as charts name it.

pub const MARTENSITE: &str = "martensite";
pub const AUSTENITE: &str = "austenite";
pub const CARBIDE: &str = "carbide";
pub const PEARLITE: &str = "pearlite";
pub const BAINITE: &str = "bainite";
pub const FERRITE: &str = "ferrite";

/// Several kinds of carbide by one word.
pub const CARBIDES: &str = "carbides";
