//! What was learnt: how well it is known now, what a prediction counts with, and how far it reaches.

/// The end of the band comes with the unit.
#[inline]
pub fn band(least: &str, most: &str) -> String {
    format!("{least} to {most}")
}

#[inline]
pub fn next_to_nothing(of: &str, band: &str) -> String {
    format!("The measurements tell next to nothing of {of}: {band}, nine in ten.")
}

#[inline]
pub fn next_to_nothing_of_shift(of: &str, band: &str) -> String {
    format!("The measurements tell next to nothing of {of}: off by {band}, nine in ten.")
}

/// What comes out stands with a capital.
#[inline]
pub fn narrower(comes_out: &str, after: &str, before: &str, by_percent: f64) -> String {
    format!(
        "{comes_out} ({after}; before {before}, nine in ten): the band is narrower by {by_percent:.0} %."
    )
}

/// What comes out stands with a capital.
#[inline]
pub fn counted_with(comes_out: &str, runs: usize, by_percent: f64) -> String {
    let count = if runs == 1 { "run" } else { "runs" };
    format!("{comes_out} (from {runs} {count}; the band is narrower by {by_percent:.0} %).")
}

#[inline]
pub fn a_temper(at: &str) -> String {
    format!("a temper at {at}")
}

#[inline]
pub fn tempers(least: &str, most: &str) -> String {
    format!("tempers of {least} to {most}")
}

#[inline]
pub fn acts_in_part(tempers: &str, part_percent: f64, here: &str) -> String {
    format!(
        "It was learnt from {tempers} and acts only in part, {part_percent:.0} %, on this one at {here}."
    )
}

#[inline]
pub fn acts_less_farther_off(tempers: &str) -> String {
    format!("It was learnt from {tempers}, and acts the less the farther a temper is from there.")
}

#[inline]
pub fn not_told_apart(one: &str, other: &str) -> String {
    format!("The measurements so far do not tell whether it is {one} or {other}.")
}
