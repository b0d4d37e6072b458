//! Numbers of a route and its outcome, as they stand inside a sentence and over a column.

pub const SOAK: &str = "soak temperature";
pub const SOAK_TIME: &str = "time at temperature";
pub const THICKNESS: &str = "thickness";
pub const TEMPER: &str = "temper temperature";
pub const CARBON: &str = "carbon in solution";
pub const CARBIDE: &str = "undissolved carbide";
pub const GRAIN: &str = "grain after the soak";
pub const MARGIN: &str = "margin of the quench";
pub const MARTENSITE_START: &str = "start of martensite";
pub const MARTENSITE: &str = "martensite as quenched";
pub const PEARLITE_AND_BAINITE: &str = "pearlite and bainite as quenched";
pub const QUENCHED_HARDNESS: &str = "hardness as quenched";
pub const QUENCHED_AUSTENITE: &str = "retained austenite as quenched";
pub const FINAL_HARDNESS: &str = "hardness after the last step";
pub const FINAL_AUSTENITE: &str = "retained austenite after the last step";
pub const PRIOR_GRAIN: &str = "grain of the last step before hardening";
pub const FILM: &str = "carbide film on the grain boundaries";
pub const FURNACE_BAND: &str = "band of the furnace";
pub const FINAL_BAND: &str = "band of the hardness";
