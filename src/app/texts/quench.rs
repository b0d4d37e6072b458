//! Words of the quench and the cold treatment.

pub(crate) const SLOWER_THAN_CURVE: &str = "slower than its curve";
pub(crate) const GENTLE_STIR: &str = "gentle stir";
pub(crate) const MODERATE_STIR: &str = "moderate stir";
pub(crate) const GOOD_STIR: &str = "good stir";
pub(crate) const STRONG_STIR: &str = "strong stir";
pub(crate) const BATH_TEMPERATURE: &str = "Temperature of the bath";
pub(crate) const TIME_IN_BATH: &str = "Time in it";
pub(crate) const WAITING_BEFORE_BATH: &str = "Waiting between quench and bath";
pub(crate) const SNAP_TEMPER: &str = "Snap temper";
pub(crate) const NO_SNAP_TEMPER: &str = "no snap temper";
pub(crate) const SNAP_TEMPER_FIRST: &str = "snap temper first";
pub(crate) const SNAP_TEMPER_AT: &str = "Snap temper at";
pub(crate) const SNAP_TEMPER_TIME: &str = "Time of the snap temper";
pub(crate) const SNAP_TEMPER_EFFECT: &str =
    "It takes the worst of the stress before the cold, and keeps part of the austenite from it.";
pub(crate) const COLD_TREATMENT: &str = "Cold treatment";
pub(crate) const DRY_ICE: &str = "dry ice";
pub(crate) const BESIDE_STILL_BATH: &str = "Heat transfer beside the still bath";
pub(crate) const WRITE_A_FACTOR: &str = "Write a factor such as 1.35.";
pub(crate) const HOW_STIRRED: &str = "1 is still, 1.2 a gentle stir, 1.35 moderate, 1.6 good, 2.2 strong. The words are not measured anywhere: the band stays 30 % wide.";
pub(crate) const BETWEEN_FURNACE_AND_BATH: &str = "Time between furnace and bath";
pub(crate) const LEFT_TO_COOL_TO: &str = "Left to cool to";

#[inline]
pub(crate) fn in_air(time: &str) -> String {
    format!("{time} in air")
}

pub(crate) const ON_THE_WAY: &str = "On the way to the bath";
pub(crate) const NO_COLD_BATH: &str = "no cold bath";

#[inline]
pub(crate) fn snap_temper_then(snap: &str, bath: &str) -> String {
    format!("snap temper {snap}, {bath}")
}

#[inline]
pub(crate) fn austenite_received(carbon: &str, grain: f64) -> String {
    format!("austenite of {carbon} C, grain {grain:.0}")
}

pub(crate) const QUENCH_SPEED: &str = "Quench speed";

#[inline]
pub(crate) fn leaving_furnace(start: &str) -> String {
    format!("{start} as it leaves the furnace")
}

#[inline]
pub(crate) fn place_then(place: &str, cooling: &str, so_far: &str, at_once: &str) -> String {
    format!(
        "At the {place}: {cooling}; so far {so_far}. Quenched out at once from here: {at_once}."
    )
}

#[inline]
pub(crate) fn across_section(places: &str) -> String {
    format!("Across the section: {places}.")
}

pub(crate) const PLACE_ON_CURVE: &str = "Place on the cooling curve";
pub(crate) const IN_SLOW_MOTION: &str = "Across the section then: the quench in slow motion";
pub(crate) const TIME_SINCE_LEAVING: &str = "Time since leaving the furnace";
pub(crate) const NO_SECOND_BATH: &str = "no second bath";

#[inline]
pub(crate) fn then_more(when: &str, into: &str, more: usize) -> String {
    format!("{when} into {into}, and {more} more")
}

pub(crate) const OUT_AT_CORE: &str = "Out when the core is at";
pub(crate) const TIME_IN_FIRST_BATH: &str = "Time in the first bath";
pub(crate) const SECOND_BATH: &str = "Second bath";
pub(crate) const WHEN_IT_GOES: &str = "When it goes there";
pub(crate) const BY_TEMPERATURE: &str = "by temperature";
pub(crate) const BY_TIME: &str = "by time";
pub(crate) const JUST_ABOVE_MS: &str = "Taken out just above Ms the piece evens out, and its martensite forms slowly in air. Temper it as soon as it is hand-warm.";
pub(crate) const NOT_IN_RANGE: &str = "Not in the range told below.";
pub(crate) const EACH_PLACE: &str = "Each place of the section";
pub(crate) const THIS_QUENCH_IS: &str = "this quench is";
pub(crate) const MARGIN_IS: &str =
    "The whole quench could be slower by this factor and still harden the place";
pub(crate) const TO_SPARE_IS: &str = "Seconds past the nose; with a minus it misses. The verdict goes by the margin: where all is fast, a few seconds are much";
pub(crate) const TO_SPARE: &str = "to spare";
pub(crate) const LOST_TO: &str = "lost to";
pub(crate) const WHERE_IT_HARDENS: &str = "Where the section hardens";
pub(crate) const OTHER_RATES: &str = "What forms at other rates of cooling";
pub(crate) const HOW_DEEP: &str = "How deep it hardens: the end-quench bar";
pub(crate) const RISING: &str = "rising";
pub(crate) const FALLING: &str = "falling";

#[inline]
pub(crate) fn at_a_rate(temperature: &str, way: &str, rate: &str) -> String {
    format!("{temperature}, {way} by {rate}")
}

#[inline]
pub(crate) fn bath_range(least: &str, most: &str, why: &str) -> String {
    format!("{least} to {most}: {why}.")
}

pub(crate) const STILL: &str = "still";
pub(crate) const NO_CHILL: &str = "none";
pub(crate) const FREEZER: &str = "freezer";
pub(crate) const NITROGEN: &str = "nitrogen";
pub(crate) const AGITATION: &str = "Agitation";
pub(crate) const THEN: &str = ", then ";
pub(crate) const PLACE: &str = "place";
pub(crate) const MARGIN: &str = "margin";
pub(crate) const STOP: &str = "Stop";
pub(crate) const PLAY: &str = "Play";

#[inline]
pub(crate) fn at(temperature: &str) -> String {
    format!("at {temperature}")
}

#[inline]
pub(crate) fn after(time: &str) -> String {
    format!("after {time}")
}

#[inline]
pub(crate) fn then_into(when: &str, into: &str) -> String {
    format!("{when} into {into}")
}

pub(crate) const NO_SECOND: &str = "none";
