//! Words of the charts, by what they show: titles of axes, labels, and summaries for those who cannot see.

pub mod compare;
pub mod constituents;
pub mod continuous;
pub mod end_quench;
pub mod logbook;
pub mod outcome;
pub mod own_quenchant;
pub mod oxide;
pub mod quench;
pub mod replay;
pub mod route;
pub mod section;
pub mod soak;
pub mod temper;

#[inline]
pub fn not_drawn(why: &str) -> String {
    format!("the chart could not be drawn: {why}")
}
