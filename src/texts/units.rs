//! Words of the room units: what may be typed, and what is wrong with what was.

pub const TEMPERATURE: &str = "temperature";
pub const LENGTH: &str = "length";
pub const TIME: &str = "time";
pub const COOLING_RATE: &str = "cooling rate";

pub const WRITE_A_TEMPERATURE: &str = "Write a temperature such as 830 °C or 1525 °F.";
pub const WRITE_A_LENGTH: &str = "Write a length such as 3 mm, 0.12 in or 1/8 in.";
pub const WRITE_A_TIME: &str = "Write a time such as 90 s, 12 min or 1 h 30 min.";

pub const WRITE_A_RATE: &str = "Write a rate such as 72 K/s or 130 °F/s.";

pub const ZERO: &str = "zero";
pub const ABSOLUTE_ZERO: &str = "absolute zero, −273.15 °C";

pub const FRACTION: &str = "fraction";
pub const VOLUME_FRACTION: &str = "volume fraction";

#[inline]
pub fn none_given(quantity: &str, advice: &str) -> String {
    format!("No {quantity} is given. {advice}")
}

#[inline]
pub fn unreadable(text: &str, quantity: &str, advice: &str) -> String {
    format!("“{text}” is not a {quantity}. {advice}")
}

#[inline]
pub fn unit_of_another(unit: &str, quantity: &str, advice: &str) -> String {
    format!("“{unit}” is not a unit of {quantity}. {advice}")
}

#[inline]
pub fn doubtful_comma(text: &str, joined: &str, decimal: &str) -> String {
    format!("“{text}” may be {joined} or {decimal}. Write it without the comma.")
}

#[inline]
pub fn doubtful_point(text: &str, joined: &str, decimal: &str) -> String {
    format!("“{text}” may be {joined} or {decimal}. Write it without the point.")
}

#[inline]
pub fn too_low(text: &str, least: &str, advice: &str) -> String {
    format!("“{text}” is below {least}. {advice}")
}
