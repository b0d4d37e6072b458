//! What steel is made of, as it stands inside a sentence, in a table and on a chart.

pub const AUSTENITE: &str = "austenite";
pub const RETAINED_AUSTENITE: &str = "retained austenite";
pub const MARTENSITE: &str = "martensite";
pub const BAINITE: &str = "bainite";
pub const PEARLITE: &str = "pearlite";
pub const FERRITE: &str = "ferrite";
pub const CARBIDE: &str = "carbide";
