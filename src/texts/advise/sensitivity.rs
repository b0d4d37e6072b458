//! What matters most for an outcome, in sentences.

// Parts of a whole, each by itself and after “of the”.
pub const NEARLY_ALL: [&str; 2] = ["nearly all"; 2];
pub const NINE_TENTHS: [&str; 2] = ["nine tenths"; 2];
pub const FOUR_FIFTHS: [&str; 2] = ["four fifths"; 2];
pub const THREE_QUARTERS: [&str; 2] = ["three quarters"; 2];
pub const TWO_THIRDS: [&str; 2] = ["two thirds"; 2];
pub const THREE_FIFTHS: [&str; 2] = ["three fifths"; 2];
pub const HALF: [&str; 2] = ["half"; 2];
pub const TWO_FIFTHS: [&str; 2] = ["two fifths"; 2];
pub const A_THIRD: [&str; 2] = ["a third", "third"];
pub const A_QUARTER: [&str; 2] = ["a quarter", "quarter"];
pub const A_FIFTH: [&str; 2] = ["a fifth", "fifth"];
pub const A_TENTH: [&str; 2] = ["a tenth", "tenth"];
pub const NEXT_TO_NOTHING: [&str; 2] = ["next to nothing", "little"];

pub const HARDNESS: &str = "hardness";
pub const HARDNESS_QUENCHED: &str = "hardness as quenched";

#[inline]
pub fn nothing_to_measure(outcome: &str) -> String {
    format!("Nothing that is open moves the {outcome} by what can be measured.")
}

#[inline]
pub fn nothing_open(outcome: &str) -> String {
    format!("Nothing is open that moves the {outcome}.")
}

/// The input comes with a capital.
#[inline]
pub fn decides(input: &str, part: &str, outcome: &str) -> String {
    format!("{input} decides {part} of the spread in {outcome}.")
}

pub const CERTIFICATE_WOULD_TELL: &str = "A certificate of the heat would tell more.";

#[inline]
pub fn next_is(input: &str, part: &str) -> String {
    format!("Next is {input}, with {part}.")
}

/// The part of the shop comes as after “of the”.
#[inline]
pub fn decides_of_shops_part(shops_part: &str, input: &str, part: &str) -> String {
    format!("Of the {shops_part} that is in the shop's hands, {input} decides {part}.")
}
