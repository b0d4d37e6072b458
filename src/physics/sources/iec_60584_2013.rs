//! Tolerance of thermocouples of type K.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "iec_60584_2013",
    authors: "IEC",
    year: 2013,
    title: "IEC 60584-1, Thermocouples, Part 1: EMF specifications and tolerances",
    venue: "International Electrotechnical Commission; as listed by suppliers of thermocouples",
    link: None,
    used_for: "how far a furnace reading by a type K thermocouple may be from the truth",
    standing: Standing::Read,
};

/// (least K, fraction of the temperature in °C, upper limit °C) of class 1.
pub const CLASS_1: (f64, f64, f64) = (1.5, 0.004, 1000.0);
/// (least K, fraction of the temperature in °C, upper limit °C) of class 2.
pub const CLASS_2: (f64, f64, f64) = (2.5, 0.0075, 1200.0);
