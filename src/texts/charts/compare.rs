//! Several routes, or one that is changed, on the same axes.

/// Numbers of a class, one against another.
#[inline]
pub fn class(
    upwards: &str,
    across: &str,
    routes: usize,
    of_upwards: &str,
    of_across: &str,
) -> String {
    format!("{upwards} against {across} of {routes} routes: {of_upwards} against {of_across}.")
}

#[inline]
pub fn range(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// A number over an input that is changed.
#[inline]
pub fn sweep(
    output: &str,
    input: &str,
    [first, last]: [&str; 2],
    least: &str,
    most: &str,
) -> String {
    format!("{output} against {input}: {first}, {last}; between {least} and {most}.")
}

#[inline]
pub fn number_at(number: &str, input: &str) -> String {
    format!("{number} at {input}")
}

/// After the sentence on the sweep: where nine numbers in ten lie at its ends.
#[inline]
pub fn sweep_band(first: &str, last: &str) -> String {
    format!(" Nine in ten: {first}, {last}.")
}

#[inline]
pub fn band_at(low: &str, high: &str, input: &str) -> String {
    format!("{low} to {high} at {input}")
}

#[inline]
pub fn overlay(title: &str, lines: &[String]) -> String {
    format!("{title}: {}.", lines.join("; "))
}

#[inline]
pub fn overlay_line(number: usize, name: &str) -> String {
    format!("{number}, “{name}”")
}

pub const TOUGHER_UPWARDS: &str = "tougher upwards";
pub const TARGET: &str = "target";

#[inline]
pub fn trade_off(
    routes: usize,
    [softest, hardest]: [&str; 2],
    meeting: usize,
    [least, most]: [&str; 2],
) -> String {
    format!(
        "Hardness against toughness of {routes} routes, none of which another beats in both, from {softest} to \
         {hardest}\u{a0}HRC; {meeting} within the target of {least} to {most}\u{a0}HRC. Each can be put on the bench."
    )
}
