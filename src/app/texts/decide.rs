//! Words of decide.

pub(crate) const NOTHING_COMPARED: &str = "Nothing in the logbook can be compared with the models.";

#[inline]
pub(crate) fn remove_this(what: &str) -> String {
    format!("Remove this {what}")
}

pub(crate) const WANDERS_BY: &str = "wanders by";
pub(crate) const HOTTER_BY: &str = "piece hotter than it reads by";
pub(crate) const HELD: &str = "held";
pub(crate) const BY_EYE: &str = "by eye";
pub(crate) const MOVED: &str = "moved: times the still bath";
pub(crate) const WRITE_A_STIR: &str = "Write 1 for a still bath.";
pub(crate) const DOWN_TO: &str = "down to";
pub(crate) const A_COLD_MEANS: &str = "cold means";

#[inline]
pub(crate) fn furnace_by_eye(name: &str, to: &str) -> String {
    format!("“{name}” to {to}, by eye")
}

#[inline]
pub(crate) fn oven_to(to: &str) -> String {
    format!("oven for tempers to {to}")
}

pub(crate) const NOTHING_YET: &str = "nothing yet";
pub(crate) const FURNACES: &str = "Furnaces and forges";
pub(crate) const ADD_A_FURNACE: &str = "Add a furnace";
pub(crate) const QUENCHANTS: &str = "Quenchants";
pub(crate) const ADD_A_QUENCHANT: &str = "Add a quenchant";
pub(crate) const ADD_BENCH_QUENCHANT: &str = "Add the quenchant on the bench";
pub(crate) const COLD_MEANS: &str = "Cold means";
pub(crate) const ADD_A_COLD_MEANS: &str = "Add a cold means";
pub(crate) const OVEN: &str = "Oven for tempers";
pub(crate) const ADD_AN_OVEN: &str = "Add an oven";
pub(crate) const WITHOUT_OVEN: &str =
    "Without an oven the furnaces that hold their temperature serve for tempers.";
pub(crate) const THE_SHOP: &str = "The shop";
pub(crate) const HARDNESS_IN_THE_END: &str = "hardness after the last step";
pub(crate) const HARDNESS_QUENCHED: &str = "hardness as quenched";
pub(crate) const MARTENSITE_QUENCHED: &str = "martensite as quenched";
pub(crate) const AUSTENITE_IN_THE_END: &str = "retained austenite after the last step";
pub(crate) const CARBON: &str = "carbon in solution";
pub(crate) const GRAIN: &str = "grain, ASTM number";
pub(crate) const MARGIN: &str = "margin of the quench";

#[inline]
pub(crate) fn meet_target(in_100: &str) -> String {
    format!("{in_100} of 100 pieces meet the target.")
}

#[inline]
pub(crate) fn harden_slowest(in_100: &str) -> String {
    format!("{in_100} of 100 harden at their slowest place.")
}

#[inline]
pub(crate) fn cases_refused(refused: usize, cases: usize) -> String {
    format!(
        "{refused} of {cases} cases have no outcome: too cold to harden, or outside the models."
    )
}

pub(crate) const HOW_SURE_EACH: &str = "How sure each number is";
pub(crate) const ONE_IN_20_BELOW: &str = "1 in 20 below";
pub(crate) const QUARTER_BELOW: &str = "a quarter below";
pub(crate) const HALF_BELOW: &str = "half below";
pub(crate) const QUARTER_ABOVE: &str = "a quarter above";
pub(crate) const ONE_IN_20_ABOVE: &str = "1 in 20 above";
pub(crate) const WHAT_MATTERS: &str = "What matters most";
pub(crate) const BEING_WORKED_OUT: &str = "Being worked out.";
pub(crate) const WHAT_WAS_DRAWN: &str = "What was drawn, and from where";

#[inline]
pub(crate) fn how_drawn(cases: usize, seed: u32) -> String {
    format!(
        "{cases} cases, drawn evenly with seed {seed}, which is saved with the route: the same route gives the same numbers. Parts are of the variance that would be left were all else known, after Sobol, with their standard error."
    )
}

pub(crate) const ANOTHER_SEED: &str = "Take another seed";
pub(crate) const HOW_SURE: &str = "How sure is the route on the bench?";
pub(crate) const ABOUT_SURE: &str = "Furnace, thermocouple, chemistry, thickness, quenchant, oven and the models' own errors are drawn again and again.";
pub(crate) const WORK_IT_OUT: &str = "Work it out";
pub(crate) const CHANGED_SINCE: &str =
    "The route, or what the logbook has taught, has changed since.";

pub(crate) const YOUR_SHOP: &str = "Your shop";

pub(crate) const OF_BEFORE: &str =
    "What follows is of before: something has changed since it was asked.";
pub(crate) const DECIDE: &str = "Decide";
pub(crate) const FOR_THE_PIECE: &str = "For the piece on the bench: ";
pub(crate) const WHAT_COUNTS: &str = ". Its steel, its structure as bought and its section count; what is sought is how to treat it with what you own.";

#[inline]
pub(crate) fn mean_and_range(mean: &str, least: &str, most: &str) -> String {
    format!("{mean}\u{a0}HRC, nine in ten from {least} to {most}")
}

#[inline]
pub(crate) fn says_nothing(count: usize) -> String {
    format!("{count} on which it says next to nothing")
}

pub(crate) const WITHOUT_IT: &str = "Without it: ";
pub(crate) const WITH_IT: &str = "With it: ";
pub(crate) const NEXT_PIECE: &str = "The next piece of the route on the bench: ";

#[inline]
pub(crate) fn reading_far_off(name: &str) -> String {
    format!("A reading of “{name}” lies too far off to count fully.")
}

#[inline]
pub(crate) fn readings_counted(count: usize) -> String {
    if count == 1 {
        "1 reading counted.".to_owned()
    } else {
        format!("{count} readings counted.")
    }
}

pub(crate) const NOT_TOLD_APART: &str = "Not told apart";
pub(crate) const FAR_OFF: &str = "Far off";
pub(crate) const LEFT_OUT: &str = "Left out";
pub(crate) const TEACHES_MOST: &str = "What would teach most next";
pub(crate) const LOGBOOK_BEING_READ: &str = "The logbook is being read.";
pub(crate) const NOTHING_LOGGED: &str = "Nothing is logged yet. Harden a piece, log the run, write down a reading: one coupon already moves what is known of furnace, quenchant and heat.";

#[inline]
pub(crate) fn from_runs(count: usize) -> String {
    let runs = if count == 1 { "run" } else { "runs" };
    format!(
        "From {count} logged {runs}: how far furnace, quenchants, heats, oven and tester are from what is assumed. It is used on the bench, in the search and for how sure a route is only where you switch it on."
    )
}

pub(crate) const WHAT_IT_TEACHES: &str = "What the logbook teaches";
pub(crate) const READ_LOGBOOK: &str = "Read the logbook";
pub(crate) const USED_FOR: &str = "Used for predictions:";
pub(crate) const AUSTENITE_QUENCHED: &str = "retained austenite as quenched";
pub(crate) const CARBIDE: &str = "undissolved carbide";
pub(crate) const SOAK_TEMPERATURE: &str = "soak temperature";
pub(crate) const SOAK_TIME: &str = "soak time";
pub(crate) const THICKNESS: &str = "thickness";
pub(crate) const AGITATION: &str = "quench, times the still bath";
pub(crate) const AIR_DELAY: &str = "time in air before the bath";
pub(crate) const TEMPER_TEMPERATURE: &str = "temper temperature";
pub(crate) const TEMPER_TIME: &str = "temper time";
pub(crate) const TIMES_STILL: &str = "times the still bath";

#[inline]
pub(crate) fn steps_refused(refused: usize, steps: usize, why: &str) -> String {
    format!("{refused} of {steps} steps have no outcome: {why}")
}

pub(crate) const NOTHING_IN_RANGE: &str = "The models tell nothing of it in this range.";
pub(crate) const GREY_BAND: &str = "In the grey band nine in ten pieces lie.";
pub(crate) const SAVE_NUMBERS: &str = "Save all numbers as CSV";

#[inline]
pub(crate) fn route_has_no(what: &str) -> String {
    format!("The route on the bench has no {what}.")
}

pub(crate) const ONE_THING: &str = "One thing at a time";
pub(crate) const FROM: &str = "from";
pub(crate) const THROUGH_TO: &str = "through to";
pub(crate) const LOOK_AT: &str = "and look at";
pub(crate) const WITH_BAND: &str = "with the band of nine in ten pieces";
pub(crate) const TAKE_THROUGH: &str = "Take it through";
pub(crate) const NOT_KNOWN: &str = "not known";
pub(crate) const ROUTES_SIDE_BY_SIDE: &str = "Routes side by side";
pub(crate) const COURSE_OF_CARBON: &str = "Carbon in solution over the soak";
pub(crate) const COURSE_OF_COOLING: &str = "Cooling of the place that decides";
pub(crate) const COURSE_OF_TEMPER: &str = "Hardness after tempers at another temperature";
pub(crate) const TIME_AT_TEMPERATURE_MIN: &str = "time at temperature, min";
pub(crate) const CARBON_PERCENT: &str = "carbon in solution, %";
pub(crate) const TIME_FROM_FURNACE_S: &str = "time from the furnace, s";

#[inline]
pub(crate) fn temper_in(degrees: &str) -> String {
    format!("temper, {degrees}")
}

pub(crate) const HARDNESS_HRC: &str = "hardness, HRC";
pub(crate) const LAID_OVER: &str = "What is laid over one another";
pub(crate) const LINE_NUMBERS: &str = ". Each line has the number of its column.";
pub(crate) const NOTHING_FOR_ROUTES: &str = "The models tell nothing of it for these routes.";
pub(crate) const ON_THE_BENCH: &str = "on the bench";
pub(crate) const BY_THE_HANDBOOK: &str = "by the handbook";
pub(crate) const SIDE_BY_SIDE: &str = "Side by side";
pub(crate) const ABOUT_SIDE_BY_SIDE: &str = "The route on the bench with its handbook’s and with routes of the shelf, up to six: what differs first.";
pub(crate) const ROUTES_TO_COMPARE: &str = "Routes to compare";
pub(crate) const WRITE_A_HARDNESS: &str = "Write 60 HRC.";

#[inline]
pub(crate) fn cold_at(at: &str) -> String {
    format!("cold at {at}")
}

#[inline]
pub(crate) fn temper_at(times: &str, time: &str, at: &str) -> String {
    format!("temper {times}{time} at {at}")
}

#[inline]
pub(crate) fn nine_in_ten(least: &str, most: &str) -> String {
    format!("Nine in ten pieces {least} to {most}\u{a0}HRC")
}

#[inline]
pub(crate) fn furnace_set_to(set: &str, soak: &str) -> String {
    format!("the furnace set to {set} to have {soak} at the piece")
}

#[inline]
pub(crate) fn could_be_slower(factor: &str) -> String {
    format!("the quench could be {factor} slower")
}

#[inline]
pub(crate) fn retained_austenite(part: &str) -> String {
    format!("retained austenite {part}")
}

pub(crate) const MAY_CRACK: &str = "the quench may crack it";
pub(crate) const EMBRITTLING: &str = "a temper in the embrittling range";
pub(crate) const MARGIN_NOT_KNOWN: &str = "its margin is not known";
pub(crate) const AUSTENITE_NOT_KNOWN: &str = "its retained austenite is not known";
pub(crate) const CHANCE_NOT_KNOWN: &str = "chance not known";

#[inline]
pub(crate) fn in_100_meet(count: &str) -> String {
    format!("{count} in 100 meet it")
}

#[inline]
pub(crate) fn put_route(place: usize) -> String {
    format!("Put on the bench: route {place}")
}

#[inline]
pub(crate) fn keep_route(place: usize) -> String {
    format!("Keep on the shelf: route {place}")
}

pub(crate) const KEEP_ON_SHELF: &str = "Keep on the shelf";
pub(crate) const TRADE_OFF: &str = "Hardness against toughness";
pub(crate) const ABOUT_TRADE_OFF: &str =
    "Routes that none other beats in both. Points of toughness order them; they are no quantity.";
pub(crate) const ROUTE_ON_CHART: &str = "Route on the chart, from the hardest to the toughest";
pub(crate) const PUT_THIS: &str = "Put this one on the bench";

#[inline]
pub(crate) fn none_serves(tried: usize) -> String {
    format!("No route of {tried} tried serves.")
}

#[inline]
pub(crate) fn one_serves(tried: usize) -> String {
    format!("One route of {tried} tried serves.")
}

#[inline]
pub(crate) fn best_of(count: usize, tried: usize) -> String {
    format!("The best {count} of {tried} tried.")
}

pub(crate) const ABOUT_CHANCES: &str = "Chances count what the models may be off beside furnace, oven and steel: a target of two HRC is narrower than that, so no route meets it every time.";
pub(crate) const FIND_A_ROUTE: &str = "Find a route";
pub(crate) const HARDNESS_FROM: &str = "hardness from";
pub(crate) const TO: &str = "to";
pub(crate) const WHAT_FOR: &str = "What the piece is for";
pub(crate) const A_CUTTING_EDGE: &str = "a cutting edge";
pub(crate) const COLD_STEP: &str = "cold step";
pub(crate) const COLD_STEP_NAME: &str = "Cold step";
pub(crate) const WHERE_IT_HELPS: &str = "where it helps";
pub(crate) const AUSTENITE_AT_MOST: &str = "retained austenite at most";
pub(crate) const WRITE_A_PART: &str = "Write 8 %, or nothing.";
pub(crate) const GRAIN_AT_LEAST: &str = "grain at least as fine as ASTM";
pub(crate) const WRITE_A_GRAIN: &str = "Write 8, or nothing.";
pub(crate) const DONE_WITHIN: &str = "all done within";
pub(crate) const WRITE_HOURS: &str = "Write 6 h, or nothing.";
pub(crate) const FIND_ROUTES: &str = "Find routes";
