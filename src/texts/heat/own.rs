//! The user's own quenchant: its figures, its probe curve, and why there is no heat transfer from them.

pub use super::super::units::{TEMPERATURE, TIME};
pub use super::media::bath_outside;

// Figures of the standard tests, in the middle of a sentence.
pub const NICKEL_BALL: &str = "nickel-ball time";
pub const HIGHEST_RATE: &str = "highest rate of the probe";
pub const HIGHEST_RATE_AT: &str = "temperature of the highest rate";
pub const RATE_AT_300C: &str = "rate of the probe at 300 °C";
pub const TIME_TO_600C: &str = "time of the probe to 600 °C";
pub const TIME_TO_400C: &str = "time of the probe to 400 °C";
pub const TIME_TO_200C: &str = "time of the probe to 200 °C";

pub const NO_FIGURE: &str = "no figure tells the speed; give the nickel-ball time, the highest rate of the probe or one of its times";

/// `why` is one of those below, or empty.
#[inline]
pub fn figure_outside(
    figure: &str,
    [given, least, most]: &[String; 3],
    unit: &str,
    why: &str,
) -> String {
    format!("{figure}: {given}\u{a0}{unit} is outside {least} to {most}\u{a0}{unit}{why}")
}

pub const AS_QUENCHANTS: &str = ", what liquid quenchants have";
pub const AS_OILS: &str = ", what oils have; a faster quenchant needs a figure of the probe";
pub const WITH_THE_OTHERS: &str = ", what the other figures allow";

#[inline]
pub fn with_another(figure: &str) -> String {
    format!(", what the {figure} allows")
}

#[inline]
pub fn bath_too_warm(bath: &str) -> String {
    format!("a bath of {bath} is too warm for a time to 200 °C; leave that figure out")
}

pub const NO_CURVE_FOUND: &str = "no heat-transfer curve was found that gives figures near these";

pub const NO_NUMBERS: &str = "no line has two numbers; a curve has one reading per line, time and temperature, in columns parted by comma, semicolon, tab or space";

#[inline]
pub fn too_many_lines(most: usize) -> String {
    format!("the curve has more than {most} lines; average it first")
}

#[inline]
pub fn doubtful_commas(line: u64) -> String {
    format!(
        "line {line}: the commas may part columns or stand before decimals; write decimals with a point, or part the columns by semicolons"
    )
}

#[inline]
pub fn which_columns(line: u64, names: &str) -> String {
    format!(
        "line {line}: which columns are time and temperature? There are {names}; give the numbers of the two"
    )
}

#[inline]
pub fn column_of_name(number: usize, name: &str) -> String {
    format!("{number} {name}")
}

#[inline]
pub fn column_of_value(number: usize, value: &str) -> String {
    format!("{number} with {value}")
}

#[inline]
pub fn no_such_columns(line: u64, [time, temperature]: [usize; 2], width: usize) -> String {
    format!(
        "line {line}: columns {time} and {temperature} are asked for; there are 1 to {width}, and time and temperature are two of them"
    )
}

/// `form` is empty or as below.
#[inline]
pub fn not_a_number(line: u64, field: &str, what: &str, form: &str) -> String {
    format!("line {line}: “{field}” is no {what}{form}")
}

pub const FORMS_OF_TIME: &str = "; seconds, milliseconds and min:s are read";

#[inline]
pub fn temperature_outside(line: u64, [given, least, most]: &[String; 3], unit: &str) -> String {
    format!("line {line}: {given}\u{a0}{unit} is outside {least} to {most}\u{a0}{unit}")
}

#[inline]
pub fn time_runs_back(line: u64, time: f64, before: f64) -> String {
    format!("line {line}: the time {time} is before {before}, that of the reading above")
}

/// Without the letter of a scale: the reading may be as it stands in the text.
#[inline]
pub fn wrong_start(line: u64, hottest: f64) -> String {
    format!(
        "line {line}: the probe is at most {hottest:.0}°; it starts at 850 °C (1562 °F), and 780 to 920 °C (1436 to 1688 °F) is allowed"
    )
}

#[inline]
pub fn ends_hot(coldest: &str, needed: &str) -> String {
    format!("the curve ends at {coldest}; it has to go below {needed}")
}

#[inline]
pub fn large_step(line: u64, from: &str, to: &str, most: &str) -> String {
    format!(
        "line {line}: from {from} to {to} in one step; at most {most} is allowed between two readings"
    )
}

#[inline]
pub fn entry_outside(entry_s: f64, first_s: f64, last_s: f64) -> String {
    format!("an entry at {entry_s}\u{a0}s is outside the record, {first_s} to {last_s}\u{a0}s")
}

#[inline]
pub fn no_quench_lasts(from: &str, to: &str, taken: f64) -> String {
    format!(
        "from {from} to {to} the curve takes {taken:.3} units of time; a quenchant takes 0.2 to 150 s, and seconds, milliseconds and min:s are read"
    )
}

#[inline]
pub fn no_entry(rate: &str) -> String {
    format!("the probe is nowhere seen to enter the bath: it never cools by {rate} or more")
}

#[inline]
pub fn noisy(noise: &str, most: &str) -> String {
    format!("the readings scatter by {noise}; at most {most} is allowed")
}

#[inline]
pub fn colder_than_bath(coldest: &str, bath: &str) -> String {
    format!("the probe cools to {coldest}, below the bath of {bath}")
}

pub const UNDETERMINED: &str = "the readings do not determine a heat-transfer curve";

#[inline]
pub fn not_followed(rms: &str) -> String {
    format!(
        "no heat transfer in this bath makes the probe cool like this: the nearest misses the readings by {rms}; are the bath, the probe and the units right?"
    )
}

#[inline]
pub fn few_readings(count: usize) -> String {
    format!("readings clear of the bath: {count}; at least 20 are needed")
}

// What was guessed, mended or left out.
#[inline]
pub fn scale_guessed(scale: &str, start: &str) -> String {
    format!("temperatures taken as {scale}: only there the probe starts near {start}")
}

pub const SECONDS_ASSUMED: &str = "times taken as seconds";
pub const MILLISECONDS_GUESSED: &str =
    "times taken as milliseconds: no quench lasts so many seconds";
pub const COLUMNS_SWAPPED: &str = "temperature stands before time";

#[inline]
pub fn columns_chosen(time: usize, temperature: usize, of: usize) -> String {
    format!("time from column {time} and temperature from column {temperature} of {of}")
}

#[inline]
pub fn empty_lines(count: usize) -> String {
    format!("lines without a reading, left out: {count}")
}

#[inline]
pub fn repeated_times(count: usize) -> String {
    format!("readings at a time already there, averaged: {count}")
}

#[inline]
pub fn idle_time_cut(time_s: f64) -> String {
    format!("the probe enters the bath {time_s:.2}\u{a0}s after the first reading")
}

#[inline]
pub fn thinned(from: usize, to: usize) -> String {
    format!("{from} readings averaged to {to} points")
}

#[inline]
pub fn start_is(start: &str, standard: &str) -> String {
    format!(
        "the probe starts at {start}, not at {standard}: its figures are not those of the standard"
    )
}
