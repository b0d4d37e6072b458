//! Each unknown that a logbook can teach: what it is, of what, how it comes out, and where its band before
//! comes from. All stand inside a sentence.

// Where its band before comes from.
pub const FURNACE_BAND: &str = "the furnace's band, of whose variance three quarters are taken to be the same every time (expert value), and the tolerance of its thermocouple (IEC 60584-1)";
pub const QUENCHANT_BAND: &str = "band of the quenchant, nine in ten; three quarters of its variance are taken to be the same every time (expert value)";
pub const NOSE_ERROR: &str = "error of the model on noses that it had not seen, nine in ten, and heats of the grade where no certificate tells more";
pub const OVEN_BAND: &str = "band of the oven; three quarters of its variance are taken to be the same every time (expert value)";
pub const QUENCHED_HARDNESS_ERROR: &str = "error of the model against measured hardness, nine in ten; three quarters of its variance are taken to be the same every time (expert value); and heats of the grade where no certificate tells more";
pub const TEMPERED_HARDNESS_ERROR: &str = "error of the model on whole heats that it had not seen, nine in ten; three quarters of its variance are taken to be the same every time (expert value); and heats of the grade where no certificate tells more";
pub const TESTER_ERROR: &str = "error of the tester, nine in ten; three quarters of its variance are taken to be the same every time (expert value)";

// What it is of.

pub const THE_FURNACE: &str = "the furnace";

#[inline]
pub fn furnace_named(name: &str) -> String {
    format!("the furnace “{name}”")
}

pub const A_QUENCHANT: &str = "a quenchant";

/// The quenchants of one quench, in order.
#[inline]
pub fn one_after_the_other(quenchants: &[String]) -> String {
    quenchants.join(", then ")
}

pub const HEAT_OF_OWN_STEEL: &str = "the heat of own steel";

#[inline]
pub fn heat_of(grade: &str) -> String {
    format!("the heat of {grade}")
}

pub const THE_OVEN: &str = "the temper oven";
pub const THE_TESTER: &str = "the tester";

// What it is, of what.

#[inline]
pub fn offset(of: &str) -> String {
    format!("the offset of {of}")
}

#[inline]
pub fn quench_severity(of: &str) -> String {
    format!("the quench severity of {of}")
}

#[inline]
pub fn hardenability(of: &str) -> String {
    format!("the hardenability of {of}")
}

#[inline]
pub fn martensite_start(of: &str) -> String {
    format!("the start of martensite of {of}")
}

#[inline]
pub fn quenched_hardness(of: &str) -> String {
    format!("the hardness as quenched of {of}")
}

#[inline]
pub fn tempered_hardness(of: &str) -> String {
    format!("the hardness after tempering of {of}")
}

#[inline]
pub fn error(of: &str) -> String {
    format!("the error of {of}")
}

// The same, whatever it is of.
pub const FURNACE_OFFSET: &str = "the offset of the furnace";
pub const QUENCH_SEVERITY: &str = "the quench severity";
pub const HARDENABILITY: &str = "the hardenability of the heat";
pub const MARTENSITE_START: &str = "the start of martensite";
pub const OVEN_OFFSET: &str = "the offset of the oven";
pub const QUENCHED_HARDNESS: &str = "the hardness of the heat as quenched";
pub const TEMPERED_HARDNESS: &str = "the hardness of the heat after tempering";
pub const ERROR_OF_TESTER: &str = "the error of the tester";

// How it comes out: a size has its unit with it.

#[inline]
pub fn colder_than_read(furnace: &str, size: &str) -> String {
    format!("pieces in {furnace} are {size} colder than it reads")
}

#[inline]
pub fn hotter_than_read(furnace: &str, size: &str) -> String {
    format!("pieces in {furnace} are {size} hotter than it reads")
}

#[inline]
pub fn colder_than_asked(oven: &str, size: &str) -> String {
    format!("pieces in {oven} are {size} colder than asked")
}

#[inline]
pub fn hotter_than_asked(oven: &str, size: &str) -> String {
    format!("pieces in {oven} are {size} hotter than asked")
}

#[inline]
pub fn times_listed(severity: &str, factor: &str) -> String {
    format!("{severity} is {factor} times the listed one")
}

#[inline]
pub fn transforms_after(heat: &str, factor: &str) -> String {
    format!("{heat} begins to transform after {factor} times the computed time")
}

#[inline]
pub fn start_lies_below(start: &str, size: &str) -> String {
    format!("{start} lies {size} below the computed one")
}

#[inline]
pub fn start_lies_above(start: &str, size: &str) -> String {
    format!("{start} lies {size} above the computed one")
}

#[inline]
pub fn hardness_below(hardness: &str, size: &str) -> String {
    format!("{hardness} is {size} below the computed one")
}

#[inline]
pub fn hardness_above(hardness: &str, size: &str) -> String {
    format!("{hardness} is {size} above the computed one")
}

#[inline]
pub fn shows_less(tester: &str, size: &str) -> String {
    format!("{tester} shows {size} less than the hardness")
}

#[inline]
pub fn shows_more(tester: &str, size: &str) -> String {
    format!("{tester} shows {size} more than the hardness")
}
