//! Words of the quench and the cold treatment.

pub const SLOWER_THAN_CURVE: &str = "slower than its curve";
pub const GENTLE_STIR: &str = "gentle stir";
pub const MODERATE_STIR: &str = "moderate stir";
pub const GOOD_STIR: &str = "good stir";
pub const STRONG_STIR: &str = "strong stir";
pub const BATH_TEMPERATURE: &str = "Temperature of the bath";
pub const TIME_IN_BATH: &str = "Time in it";
pub const WAITING_BEFORE_BATH: &str = "Waiting between quench and bath";
pub const SNAP_TEMPER: &str = "Snap temper";
pub const NO_SNAP_TEMPER: &str = "no snap temper";
pub const SNAP_TEMPER_FIRST: &str = "snap temper first";
pub const SNAP_TEMPER_AT: &str = "Snap temper at";
pub const SNAP_TEMPER_TIME: &str = "Time of the snap temper";
pub const SNAP_TEMPER_EFFECT: &str =
    "It takes the worst of the stress before the cold, and keeps part of the austenite from it.";
pub const COLD_TREATMENT: &str = "Cold treatment";
pub const DRY_ICE: &str = "dry ice";
pub const BESIDE_STILL_BATH: &str = "Heat transfer beside the still bath";
pub const BESIDE_ITS_CURVE: &str = "Heat transfer beside its curve";
pub const HOW_FAST: &str = "1 is as the list has it, 1.2 takes heat a fifth faster.";
pub const WRITE_A_FACTOR: &str = "Write a factor such as 1.35.";
pub const HOW_STIRRED: &str = "1 is still, 1.2 a gentle stir, 1.35 moderate, 1.6 good, 2.2 strong. The words are not measured anywhere: the band stays 30 % wide.";
pub const BETWEEN_FURNACE_AND_BATH: &str = "Time between furnace and bath";
pub const LEFT_TO_COOL_TO: &str = "Left to cool to";

#[inline]
pub fn in_air(time: &str) -> String {
    format!("{time} in air")
}

pub const ON_THE_WAY: &str = "On the way to the bath";
pub const NO_COLD_BATH: &str = "no cold bath";

#[inline]
pub fn snap_temper_then(snap: &str, bath: &str) -> String {
    format!("snap temper {snap}, {bath}")
}

#[inline]
pub fn austenite_received(carbon: &str, grain: f64) -> String {
    format!("austenite of {carbon} C, grain {grain:.0}")
}

pub const QUENCH_SPEED: &str = "Quench speed";

#[inline]
pub fn leaving_furnace(start: &str) -> String {
    format!("{start} as it leaves the furnace")
}

#[inline]
pub fn place_then(place: &str, cooling: &str, so_far: &str, at_once: &str) -> String {
    format!(
        "At the {place}: {cooling}; so far {so_far}. Quenched out at once from here: {at_once}."
    )
}

#[inline]
pub fn across_section(places: &str) -> String {
    format!("Across the section: {places}.")
}

pub const PLACE_ON_CURVE: &str = "Place on the cooling curve";
pub const IN_SLOW_MOTION: &str = "Across the section then: the quench in slow motion";
pub const TIME_SINCE_LEAVING: &str = "Time since leaving the furnace";
pub const NO_SECOND_BATH: &str = "no second bath";

#[inline]
pub fn then_more(when: &str, into: &str, more: usize) -> String {
    format!("{when} into {into}, and {more} more")
}

pub const OUT_AT_CORE: &str = "Out when the core is at";
pub const TIME_IN_FIRST_BATH: &str = "Time in the first bath";
pub const SECOND_BATH: &str = "Second bath";
pub const WHEN_IT_GOES: &str = "When it goes there";
pub const BY_TEMPERATURE: &str = "by temperature";
pub const BY_TIME: &str = "by time";
pub const JUST_ABOVE_MS: &str = "Taken out just above Ms the piece evens out, and its martensite forms slowly in air. Temper it as soon as it is hand warm.";
pub const NOT_IN_RANGE: &str = "Not in the range told below.";
pub const EACH_PLACE: &str = "Each place of the section";
pub const THIS_QUENCH_IS: &str = "this quench is";
pub const MARGIN_IS: &str =
    "The whole quench could be slower by this factor and still harden the place";
pub const TO_SPARE_IS: &str = "Seconds to spare at the nose; with a minus it misses. The verdict goes by the margin: where all is fast, a few seconds are much";
pub const TO_SPARE: &str = "to spare";
pub const LOST_TO: &str = "lost to";
pub const WHERE_IT_HARDENS: &str = "Where the section hardens";
pub const OTHER_RATES: &str = "What forms at other rates of cooling";
pub const HOW_DEEP: &str = "How deep it hardens: the end-quench bar";
pub const RISING: &str = "rising";
pub const FALLING: &str = "falling";

#[inline]
pub fn hardly_cooling(temperature: &str) -> String {
    format!("{temperature}, hardly cooling")
}

#[inline]
pub fn at_a_rate(temperature: &str, way: &str, rate: &str) -> String {
    format!("{temperature}, {way} by {rate}")
}

#[inline]
pub fn bath_range(least: &str, most: &str, why: &str) -> String {
    format!("{least} to {most}: {why}.")
}

pub const STILL: &str = "still";
/// Of air, gas and plates, which are not stirred.
pub const AS_ITS_CURVE: &str = "as its curve";
pub const FASTER_THAN_CURVE: &str = "faster than its curve";
pub const NO_CHILL: &str = "none";
pub const FREEZER: &str = "freezer";
pub const NITROGEN: &str = "nitrogen";
pub const AGITATION: &str = "Agitation";
pub const THEN: &str = " then ";
pub const PLACE: &str = "place";
pub const MARGIN: &str = "margin";
pub const STOP: &str = "Stop";
pub const PLAY: &str = "Play";

#[inline]
pub fn at(temperature: &str) -> String {
    format!("at {temperature}")
}

#[inline]
pub fn at_then(temperature: &str) -> String {
    format!(" at {temperature},")
}

#[inline]
pub fn after(time: &str) -> String {
    format!("after {time}")
}

#[inline]
pub fn then_into(when: &str, into: &str) -> String {
    format!("{when} into {into}")
}

pub const NO_SECOND: &str = "none";
