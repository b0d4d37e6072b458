//! Words for what is open about a route, and where its distribution comes from. All stand inside a sentence.

pub const CHEMISTRY: &str = "the steel's composition within its grade";
pub const CERTIFICATE: &str = "the steel's composition within its certificate";
pub const FURNACE: &str = "furnace temperature";
pub const THERMOCOUPLE: &str = "the thermocouple";
pub const THICKNESS: &str = "thickness";
pub const HEAT_TRANSFER: &str = "heat transfer of the quenchant";
pub const NOSE: &str = "the model's time of the nose";
pub const MARTENSITE_START: &str = "the model's start of martensite";
pub const QUENCHED_HARDNESS: &str = "the model's hardness as quenched";
pub const TEMPER_OVEN: &str = "temper temperature";
pub const TEMPERED_HARDNESS: &str = "the model's hardness after tempering";

pub const FURNACE_BAND: &str =
    "the furnace's band: limits of which nothing else is known (JCGM 100)";
pub const THERMOCOUPLE_CLASS: &str =
    "tolerance class of a thermocouple that was not checked (IEC 60584-1, JCGM 100)";
pub const PIECE_TOLERANCE: &str = "tolerance of the piece";
pub const QUENCHANT_BAND: &str = "band of the quenchant, nine in ten";
pub const NOSE_ERROR: &str = "error of the model on noses that it had not seen, nine in ten";
pub const MARTENSITE_START_ERROR: &str =
    "root mean square error of the model against measured starts";
pub const QUENCHED_HARDNESS_ERROR: &str =
    "error of the model against measured hardness, nine in ten";
pub const OVEN_BAND: &str = "band of the oven: limits of which nothing else is known (JCGM 100)";
pub const TEMPERED_HARDNESS_ERROR: &str =
    "error of the model on whole heats that it had not seen, nine in ten";
pub const GRADE_LIMITS: &str = "limits of the grade's standard about a usual heat";
pub const CERTIFICATE_TOLERANCE: &str = "tolerance of the certificate";
