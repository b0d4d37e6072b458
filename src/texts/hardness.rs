//! Words of the room hardness: its models and the quantities that they know, for what is beyond them.

pub use super::constituents::{
    BAINITE, CARBIDE, FERRITE, MARTENSITE, PEARLITE, RETAINED_AUSTENITE,
};
pub use super::transform::HARDNESS;
pub use super::units::{TEMPERATURE, TIME, VOLUME_FRACTION};

pub const ANNEALED: &str = "Hardness of annealed steel";
pub const RADIUS_OF_CARBIDE: &str = "radius of carbide";

pub const OF_MARTENSITE: &str = "Hardness of martensite";
pub const CARBON_IN_AUSTENITE: &str = "carbon in austenite";
pub const BY_MARTENSITE_CONTENT: &str = "As-quenched hardness by martensite content";

pub const OF_A_MIXTURE: &str = "Hardness of a mixture";
pub const SUM_OF_FRACTIONS: &str = "sum of fractions";
pub const CARBON_OF_A_PRODUCT: &str = "carbon of a product";
pub const WHERE_BAINITE_FORMED: &str = "temperature at which bainite formed";
pub const WHERE_PEARLITE_FORMED: &str = "temperature at which pearlite formed";

pub const OF_SOFT_PRODUCTS: &str = "Hardness of ferrite, pearlite and bainite";

pub const CONVERSION: &str = "Hardness conversion (ASTM E140, non-austenitic steel)";

pub const TEMPERING: &str = "Tempering";
pub const TEMPERING_RAMP: &str = "Tempering ramp";

/// What is asked of the table of a grade, for one hold of the table's own time.
pub const ALL_HOLDS_AS_ONE: &str =
    "the temper, all holds taken together as one of the table's own time,";
