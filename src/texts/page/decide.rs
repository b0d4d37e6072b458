//! Words of decide.

pub use super::super::teach::number::{
    CARBIDE, CARBON, FINAL_AUSTENITE as AUSTENITE_IN_THE_END,
    FINAL_HARDNESS as HARDNESS_IN_THE_END, MARGIN, MARTENSITE as MARTENSITE_QUENCHED,
    QUENCHED_AUSTENITE as AUSTENITE_QUENCHED, QUENCHED_HARDNESS as HARDNESS_QUENCHED,
    SOAK as SOAK_TEMPERATURE, TEMPER as TEMPER_TEMPERATURE, THICKNESS,
};

pub const NOTHING_COMPARED: &str = "Nothing in the logbook can be compared with the models.";

#[inline]
pub fn remove_this(what: &str) -> String {
    format!("Remove this {what}")
}

pub const WANDERS_BY: &str = "wanders by";
pub const HOTTER_BY: &str = "piece hotter than it reads by";
pub const HELD: &str = "held";
pub const BY_EYE: &str = "by eye";
pub const MOVED: &str = "moved: times its listed curve";
pub const WRITE_A_STIR: &str = "Write 1 for its listed curve.";
pub const DOWN_TO: &str = "down to";
pub const A_COLD_BATH: &str = "cold bath";
pub const A_FURNACE: &str = "furnace";
pub const A_QUENCHANT: &str = "quenchant";
pub const AN_OVEN: &str = "oven";
pub const NAME: &str = "name";
pub const REMOVE: &str = "Remove";
pub const TEMPERATURE: &str = "Temperature";
pub const NEW_COLD_BATH: &str = "Freezer";

#[inline]
pub fn new_furnace(number: usize) -> String {
    format!("Furnace {number}")
}

#[inline]
pub fn furnace_held(name: &str, to: &str, band: &str) -> String {
    format!("“{name}” to {to}, {band}")
}

#[inline]
pub fn cold_down_to(name: &str, to: &str) -> String {
    format!("“{name}” at {to}")
}

#[inline]
pub fn furnace_by_eye(name: &str, to: &str, band: &str) -> String {
    format!("“{name}” to {to}, by eye, {band}")
}

#[inline]
pub fn oven_to(to: &str) -> String {
    format!("oven for tempers to {to}")
}

pub const NOTHING_YET: &str = "nothing yet";
pub const FURNACES: &str = "Furnaces and forges";
pub const ADD_A_FURNACE: &str = "Add a furnace";
pub const QUENCHANTS: &str = "Quenchants";
pub const ADD_A_QUENCHANT: &str = "Add a quenchant";
pub const ADD_TO_SHOP: &str = "Add it";
pub const COLD_BATHS: &str = "Cold baths";
pub const ADD_A_COLD_BATH: &str = "Add a cold bath";
pub const OVEN: &str = "Oven for tempers";
pub const ADD_AN_OVEN: &str = "Add an oven";
pub const WITHOUT_OVEN: &str =
    "Without an oven the furnaces that hold their temperature serve for tempers.";
pub const THE_SHOP: &str = "The shop";
pub const SHOP_IS_MADE_UP: &str =
    ". This is a made-up shop to begin with: open it and put in what you own.";

#[inline]
pub fn not_in_shop(quenchant: &str) -> String {
    format!("“{quenchant}”, the quenchant on the bench, is not in the shop.")
}

pub const GRAIN: &str = "grain, ASTM number";

#[inline]
pub fn meet_target(in_100: &str) -> String {
    format!("{in_100} of 100 pieces meet the target.")
}

#[inline]
pub fn harden_slowest(in_100: &str) -> String {
    format!("{in_100} of 100 harden at their slowest place.")
}

#[inline]
pub fn cases_refused(refused: usize, cases: usize) -> String {
    format!("No outcome for {refused} of {cases} cases: too cold to harden, or outside the models.")
}

pub const HOW_SURE_EACH: &str = "How sure each number is";
pub const ONE_IN_20_BELOW: &str = "1 in 20 is lower";
pub const QUARTER_BELOW: &str = "1 in 4 is lower";
pub const MIDDLE: &str = "the middle one";
pub const QUARTER_ABOVE: &str = "1 in 4 is higher";
pub const ONE_IN_20_ABOVE: &str = "1 in 20 is higher";
pub const WHAT_MATTERS: &str = "What matters most";
pub const BEING_WORKED_OUT: &str = "Being worked out.";
pub const WHAT_WAS_DRAWN: &str = "What was drawn, and from where";

#[inline]
pub fn how_drawn(cases: usize, seed: u32) -> String {
    format!(
        "{cases} cases, drawn evenly with seed {seed}, which is saved with the route: the same route gives the same numbers. Parts are of the variance that would be left were all else known, after Sobol, with their standard error."
    )
}

pub const ANOTHER_SEED: &str = "Take another seed";
pub const HOW_SURE: &str = "How sure is the route on the bench?";
pub const ABOUT_SURE: &str = "Furnace, thermocouple, chemistry, thickness, quenchant, oven and the models' own errors are drawn again and again. The bands on the bench are the errors of the models, with what the furnace's band does and, where a piece may harden only in part, what is open about its quench: they leave out the rest of this, so the two need not agree.";
pub const WORK_IT_OUT: &str = "Work it out";
pub const CHANGED_SINCE: &str = "The route, or what the logbook has taught, has changed since.";

pub const YOUR_SHOP: &str = "Your shop";

pub const OF_BEFORE: &str = "What follows is of before: something has changed since it was asked.";
pub const DECIDE: &str = "Decide";
pub const DONE: &str = "Done.";
pub const FOR_THE_PIECE: &str = "For the piece on the bench: ";
pub const WHAT_COUNTS: &str = ". Its steel, its structure as bought and its section count; what is sought is how to treat it with what you own.";

#[inline]
pub fn mean_and_range(mean: &str, least: &str, most: &str) -> String {
    format!("{mean}\u{a0}HRC, nine in ten from {least} to {most}")
}

#[inline]
pub fn says_nothing(count: usize) -> String {
    format!("{count} on which it says next to nothing")
}

pub const WITHOUT_IT: &str = "Without it: ";
pub const WITH_IT: &str = "With it: ";
pub const NEXT_PIECE: &str = "The next piece of the route on the bench: ";

#[inline]
pub fn reading_far_off(name: &str) -> String {
    format!("A reading of “{name}” lies too far off to count fully.")
}

#[inline]
pub fn readings_counted(count: usize) -> String {
    if count == 1 {
        "1 reading counted.".to_owned()
    } else {
        format!("{count} readings counted.")
    }
}

pub const NOT_TOLD_APART: &str = "Not told apart";
pub const LEARNT: &str = "Learnt";
pub const FAR_OFF: &str = "Far off";
pub const LEFT_OUT: &str = "Left out";
pub const TEACHES_MOST: &str = "What would teach most next";
pub const LOGBOOK_BEING_READ: &str = "The logbook is being read.";
pub const NOTHING_LOGGED: &str = "Nothing is logged yet. Harden a piece, log the run, write down a reading: one coupon already moves what is known of furnace, quenchant and heat.";

#[inline]
pub fn from_runs(count: usize) -> String {
    let runs = if count == 1 { "run" } else { "runs" };
    format!(
        "From {count} logged {runs}: how far furnace, quenchants, heats, oven and tester are from what is assumed. It is used on the bench, in the search and for how sure a route is only where you switch it on."
    )
}

pub const WHAT_IT_TEACHES: &str = "What the logbook teaches";
pub const READ_LOGBOOK: &str = "Read the logbook";
pub const USED_FOR: &str = "Used for predictions:";
pub const OFF: &str = "off";
pub const ON: &str = "on";
pub const GRAIN_SIZE: &str = "grain";
pub const TIMES: &str = "times";
pub const SOAK_TIME: &str = "soak time";
pub const AGITATION: &str = "quench, times the still bath";
pub const AIR_DELAY: &str = "time in air before the bath";
pub const TEMPER_TIME: &str = "temper time";
pub const TIMES_STILL: &str = "times the still bath";

#[inline]
pub fn steps_refused(refused: usize, steps: usize, why: &str) -> String {
    format!("{refused} of {steps} steps have no outcome: {why}")
}

pub const NOTHING_IN_RANGE: &str = "The models tell nothing of it in this range.";
pub const GREY_BAND: &str = "In the grey band nine in ten pieces lie.";
pub const SAVE_NUMBERS: &str = "Save all numbers as CSV";

#[inline]
pub fn route_has_no(what: &str) -> String {
    format!("The route on the bench has no {what}.")
}

pub const ONE_THING: &str = "One thing at a time";
pub const TAKE: &str = "take";
pub const FROM: &str = "from";
pub const THROUGH_TO: &str = "through to";
pub const LOOK_AT: &str = "and look at";
pub const WITH_BAND: &str = "with the band of nine in ten pieces";
pub const TAKE_THROUGH: &str = "Take it through";
pub const NOT_KNOWN: &str = "not known";
pub const ROUTES_SIDE_BY_SIDE: &str = "Routes side by side";
pub const COURSE_OF_CARBON: &str = "Carbon in solution over the soak";
pub const COURSE_OF_COOLING: &str = "Cooling of the place that decides";
pub const COURSE_OF_TEMPER: &str = "Hardness after tempers at another temperature";
pub const TIME_AT_TEMPERATURE_MIN: &str = "time at temperature, min";
pub const CARBON_PERCENT: &str = "carbon in solution, %";
pub const TIME_FROM_FURNACE_S: &str = "time from the furnace, s";

#[inline]
pub fn temperature_in(degrees: &str) -> String {
    format!("temperature, {degrees}")
}

#[inline]
pub fn temper_in(degrees: &str) -> String {
    format!("temper, {degrees}")
}

pub const HARDNESS_HRC: &str = "hardness, HRC";
pub const LAID_OVER: &str = "What is laid over one another";
pub const LINE_NUMBERS: &str = ". Each line has the number of its column.";
pub const NOTHING_FOR_ROUTES: &str = "The models tell nothing of it for these routes.";
pub const ON_THE_BENCH: &str = "on the bench";
pub const BY_THE_HANDBOOK: &str = "by the handbook";
pub const SIDE_BY_SIDE: &str = "Side by side";
pub const ABOUT_SIDE_BY_SIDE: &str = "The route on the bench with its handbook's and with routes of the shelf, up to six: what differs first.";
pub const ROUTES_TO_COMPARE: &str = "Routes to compare";
pub const COMPARE: &str = "Compare";
pub const HAS_NONE: &str = "none";
pub const WRITE_A_HARDNESS: &str = "Write 60\u{a0}HRC.";

#[inline]
pub fn soak_for(temperature: &str, time: &str) -> String {
    format!("{temperature} for {time}")
}

pub const THEN: &str = ", then ";

#[inline]
pub fn cold_at(at: &str) -> String {
    format!("cold at {at}")
}

#[inline]
pub fn temper_at(times: &str, time: &str, at: &str) -> String {
    format!("temper {times}{time} at {at}")
}

#[inline]
pub fn nine_in_ten(least: &str, most: &str) -> String {
    format!("Nine in ten pieces {least} to {most}\u{a0}HRC")
}

#[inline]
pub fn furnace_set_to(set: &str, soak: &str) -> String {
    format!("the furnace set to {set} to have {soak} at the piece")
}

#[inline]
pub fn could_be_slower(factor: &str) -> String {
    format!("the quench could be {factor} slower")
}

#[inline]
pub fn retained_austenite(part: &str) -> String {
    format!("retained austenite {part}")
}

#[inline]
pub fn of_grain(astm: &str) -> String {
    format!("grain {astm}")
}

pub const MAY_CRACK: &str = "the quench may crack it";
pub const EMBRITTLING: &str = "a temper in the embrittling range";
pub const MARGIN_NOT_KNOWN: &str = "its margin is not known";
pub const AUSTENITE_NOT_KNOWN: &str = "its retained austenite is not known";
pub const CHANCE_NOT_KNOWN: &str = "chance not known";

#[inline]
pub fn in_100_meet(count: &str) -> String {
    format!("{count} in 100 meet it")
}

#[inline]
pub fn put_route(place: usize) -> String {
    format!("Put on the bench: route {place}")
}

#[inline]
pub fn keep_route(place: usize) -> String {
    format!("Keep on the shelf: route {place}")
}

pub const KEEP_ON_SHELF: &str = "Keep on the shelf";
pub const TRADE_OFF: &str = "Hardness against toughness";
pub const ABOUT_TRADE_OFF: &str =
    "Routes that none other beats in both. Points of toughness order them; they are no quantity.";
pub const ROUTE_ON_CHART: &str = "Route on the chart, from the hardest to the toughest";
pub const PUT_THIS: &str = "Put this one on the bench";

/// Before it is known whether one serves.
#[inline]
pub fn tried_so_far(tried: usize) -> String {
    format!("Tried so far: {tried}.")
}

#[inline]
pub fn none_serves(tried: usize) -> String {
    format!("No route of {tried} tried serves.")
}

#[inline]
pub fn one_serves(tried: usize) -> String {
    format!("One route of {tried} tried serves.")
}

#[inline]
pub fn best_of(count: usize, tried: usize) -> String {
    format!("The best {count} of {tried} tried.")
}

#[inline]
pub fn more(count: usize) -> String {
    format!("{count} more")
}

pub const ABOUT_CHANCES: &str = "Chances count what the models may be off beside furnace, oven and steel: a target of two HRC is narrower than that, so no route meets it every time. The bands on the bench leave out some of this, and need not agree.";
pub const FIND_A_ROUTE: &str = "Find a route";
pub const HARDNESS_FROM: &str = "hardness from";
pub const TO: &str = "to";
pub const WHAT_FOR: &str = "What the piece is for";
pub const A_CUTTING_EDGE: &str = "a cutting edge";
pub const FOR: &str = "for";
pub const WEAR: &str = "wear";
pub const BLOWS: &str = "blows";
pub const A_SPRING: &str = "a spring";
pub const COLD_STEP: &str = "cold step";
pub const COLD_STEP_NAME: &str = "Cold step";
pub const WHERE_IT_HELPS: &str = "where it helps";
pub const NO_COLD_STEP: &str = "none";
pub const AUSTENITE_AT_MOST: &str = "retained austenite at most";
pub const WRITE_A_PART: &str = "Write 8 %, or nothing.";
pub const GRAIN_AT_LEAST: &str = "grain at least as fine as ASTM";
pub const WRITE_A_GRAIN: &str = "Write 8, or nothing.";
pub const DONE_WITHIN: &str = "all done within";
pub const WRITE_HOURS: &str = "Write 6 h, or nothing.";
pub const FIND_ROUTES: &str = "Find routes";
