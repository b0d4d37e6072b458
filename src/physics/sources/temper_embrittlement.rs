//! Ranges of tempering temperature that embrittle, as the trade warns of them.
//!
//! Read: tempered martensite embrittlement about 200 to 370 °C (trade association note), reversible
//! temper embrittlement 375 to 575 °C on slow cooling of Mn, Ni, Cr steels with P, Sb, Sn or As,
//! 420 and 440 stainless 425 to 565 °C. Recalled: the usual trough 260 to 370 °C, its shift by
//! silicon to 350 to 450 °C, the easing by molybdenum. Data sheets of L6 type steels claim no trough:
//! the warning is general, not a measurement of a grade.

use super::{Source, Standing};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "temper_embrittlement",
    authors: "trade association notes and handbooks",
    year: 2020,
    title: "Tempered martensite embrittlement and reversible temper embrittlement",
    venue: "excerpts; trough and silicon shift from memory",
    link: None,
    used_for: "warnings on tempering temperature",
    standing: Standing::FromMemory,
};

/// Trough of tempered martensite embrittlement without silicon, °C.
pub const TROUGH_C: [f64; 2] = [260.0, 370.0];

/// The same at [`SILICON_WT`]`.1` and more, °C.
pub const SILICON_TROUGH_C: [f64; 2] = [350.0, 450.0];

/// Silicon at which the shift begins and is complete, wt %.
pub const SILICON_WT: (f64, f64) = (0.5, 1.5);

/// Range of hardenable stainless steel, °C.
pub const STAINLESS_C: [f64; 2] = [425.0, 565.0];

/// Chromium from which the stainless range holds, wt %.
pub const STAINLESS_CHROMIUM_WT: f64 = 10.5;

/// Carbon from which it does not, wt %: so much of the chromium is then in carbide that the steel is none that
/// does not rust. 440C has 1.2 at most, D2 1.4 at least. Own judgement.
pub const STAINLESS_BELOW_CARBON_WT: f64 = 1.3;

/// Range of reversible embrittlement, °C.
pub const REVERSIBLE_C: [f64; 2] = [375.0, 575.0];

/// Sum of Mn, Ni and Cr from which the reversible warning is given, wt %. An estimate.
pub const REVERSIBLE_ALLOY_WT: f64 = 1.5;

/// Molybdenum from which the reversible kind is eased, wt %.
pub const EASING_MOLYBDENUM_WT: f64 = 0.2;
