//! The quench in slow motion.

#[inline]
pub fn summary(time: &str, coldest: &str, hottest: &str) -> String {
    format!("{time}: from {coldest} to {hottest}.")
}
