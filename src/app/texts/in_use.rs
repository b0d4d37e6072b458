//! Words of what the route means in use.

pub(crate) const NO_DIFFERENCE: &str = "no difference that counts";
pub(crate) const MIXED: &str = "some for, some against";
pub(crate) const HANDBOOK_SOAK: &str = "the handbook's soak, the rest as here";
pub(crate) const KEEP_TO_COMPARE: &str = "Keep a route on the shelf to compare with it.";
pub(crate) const BY_COMMON_PRACTICE: &str =
    "Directions with their reasons, by common practice; how much they matter depends on the use.";
pub(crate) const BETTER: &str = "better";
pub(crate) const WORSE: &str = "worse";
pub(crate) const AGAINST: &str = "Against ";
