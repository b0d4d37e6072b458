//! Words of the room steel: elements, compositions that are none, grades that are not in the list, and what
//! a model says that is asked beyond its range.

pub const CARBON: &str = "carbon";
pub const MANGANESE: &str = "manganese";
pub const SILICON: &str = "silicon";
pub const CHROMIUM: &str = "chromium";
pub const NICKEL: &str = "nickel";
pub const MOLYBDENUM: &str = "molybdenum";
pub const VANADIUM: &str = "vanadium";
pub const TUNGSTEN: &str = "tungsten";
pub const PHOSPHORUS: &str = "phosphorus";
pub const SULPHUR: &str = "sulphur";

#[inline]
pub fn content_outside(symbol: &str, value: f64, largest_wt: f64) -> String {
    format!("{symbol}: {value} % is outside 0 to {largest_wt} %")
}

#[inline]
pub fn too_much_alloying(sum_wt: f64, largest_wt: f64) -> String {
    format!("alloying adds up to {sum_wt:.1} %; at most {largest_wt} % leaves a steel")
}

#[inline]
pub fn unknown_grade(asked: &str, close: &[String]) -> String {
    if close.is_empty() {
        format!(
            "no grade is called “{asked}”; the list holds AISI/SAE, UNS, EN names and material numbers"
        )
    } else {
        format!(
            "no grade is called “{asked}”; close to it are {}",
            close.join(", ")
        )
    }
}

#[inline]
pub fn in_solution(element: &str) -> String {
    format!("{element} in solution")
}

#[inline]
pub fn beyond_the_model(
    model: &str,
    quantity: &str,
    least: &str,
    largest: &str,
    value: &str,
) -> String {
    format!(
        "{model} holds for {quantity} from {least} to {largest}; here it is {value}. No number is given."
    )
}
