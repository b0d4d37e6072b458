//! Words of how it comes about whether the quench is fast enough.

use super::parts::ADDITIVITY;

pub const TIME_ALLOWED: &str = "Time that it may take from A1 to the nose";
pub const TIME_ALLOWED_HOW: &str =
    "The same quench, so much slower that just 95 % of the austenite is left for martensite.";
pub const TIME_TAKEN: &str = "Time from A1 to the nose";
pub const PASSES_NOSE: &str = "the deciding place passes the temperature of the nose";
pub const PASSES_A1: &str = "it passes A1";

#[inline]
pub fn time_taken_how(product: &str, nose_c: f64) -> String {
    format!(
        "From the cooling curve of the place that decides, by conduction through the section with the heat transfer of the quenchant; the nose of {product} is at {nose_c:.0} °C."
    )
}

pub const TIME_TAKEN_ERROR: &str = "the heat transfer of the quenchant, within its band";
pub const TAKEN: &str = "time from A1 to the nose";
pub const FACTOR_SLOWER: &str = "factor by which it may be slower";
pub const ALLOWED: &str = "time that it may take";
pub const SECONDS_TO_SPARE: &str = "Seconds to spare at the nose";
pub const FACTOR: &str = "Factor by which the quench may be slower";

#[inline]
pub fn factor_how() -> String {
    format!(
        "{ADDITIVITY} All times of the curve are stretched by one factor until just 95 % of the austenite is left for martensite; the factor is found by false position."
    )
}

#[inline]
pub fn factor_solves(finer: f64) -> String {
    format!(
        "h is the part of the austenite that hardens on the curve whose times are f times as long, without the heat of what forms and followed as for every verdict; in the finer steps of the outcome it is {finer:.4}."
    )
}

pub const FACTOR_EXPECTED: &str = "factor as expected";

#[inline]
pub fn factor_on_it_by(source: &str) -> String {
    format!("factor on it by {source}")
}

pub const LEAST_FACTOR: &str = "The least that the factor may be";
pub const MOST_FACTOR: &str = "The most that the factor may be";
pub const FACTOR_END_HOW: &str =
    "What is open is independent, so its logarithms add in quadrature, nine times in ten.";
pub const FACTOR_END_ERROR: &str = "bands of quenchants are expert values";
