//! Words of what the route means in use.

pub const NO_DIFFERENCE: &str = "no difference that counts";
pub const MIXED: &str = "some for, some against";
pub const HANDBOOK_SOAK: &str = "the handbook's soak, the rest as here";
pub const KEEP_TO_COMPARE: &str = "Keep a route on the shelf to compare with it.";
pub const BY_COMMON_PRACTICE: &str =
    "Directions with their reasons, by common practice; how much they matter depends on the use.";
pub const BETTER: &str = "better";
pub const WORSE: &str = "worse";
pub const AGAINST: &str = "Against ";
