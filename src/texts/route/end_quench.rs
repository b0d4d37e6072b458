//! Quenches for which the end-quench test tells a diameter.

pub const OIL_STILL: &str = "oil, still";
pub const OIL_GOOD: &str = "oil, good stir";
pub const WATER_STILL: &str = "water, still";
pub const BRINE_VIOLENT: &str = "brine, violent";
