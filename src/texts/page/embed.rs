//! Words around a chart by itself.

use std::fmt::Display;

#[inline]
pub fn not_shown(why: impl Display) -> String {
    format!("This chart is not shown. {why}")
}

pub const OPEN_ROUTE: &str = "Open this route on the bench";
pub const COMPUTED_BY: &str = " Computed by Recalesce, for planning and teaching.";
pub const TEMPERATURE_AGAINST_TIME: &str = "temperature against time";
pub const PHASES_AT_SOAK: &str = "what there is at the soak";
