//! Words of the card's rows of soak, quench, test, cold bath and tempers.

pub const SOAK: &str = "Soak";

#[inline]
pub fn count_at_heat(time: &str) -> String {
    format!("Count from when the steel, not the furnace, is at heat, about {time} in.")
}

pub const MAGNET_LETS_GO: &str = " A magnet lets go.";
pub const QUENCH: &str = "Quench";
pub const THEN_INTO: &str = "Then into";

#[inline]
pub fn from_furnace(time: &str) -> String {
    format!("{time} from furnace")
}

pub const STRAIGHT_FROM_FURNACE: &str = "straight from furnace";

#[inline]
pub fn after(time: &str) -> String {
    format!("after {time}")
}

#[inline]
pub fn once_nowhere_hotter(temperature: &str) -> String {
    format!("once it is nowhere hotter than {temperature}")
}

// How the piece goes into a bath. Common practice, no source.
pub const CLAMP_BOTH_FACES: &str = "Clamp both faces at once, flat.";
pub const HANG_IN_AIR: &str = "Hang it so that air reaches every side.";
pub const RACK_IN_GAS: &str =
    "Rack it with gaps, thin sides to the flow. Do not open it under pressure.";
pub const EDGE_FIRST: &str = "Cutting edge first";
pub const NARROW_SIDE_FIRST: &str = "Narrow side first";
pub const END_FIRST: &str = "End first";

// Held still, vapour clings to it and leaves soft spots; salt has none, but what touches the piece warms.
// Oil lights where red steel breaks its surface, and salt splashes.
pub const MOVE_IN_WATER: &str = "up and down, not sideways";
pub const MOVE_IN_SALT: &str = "gently up and down, all of it under the surface";
pub const MOVE_IN_OIL: &str = "up and down, not sideways, all under the surface";

#[inline]
pub fn into_bath(first: &str, way: &str) -> String {
    format!("{first}, straight in. Move it {way}.")
}

#[inline]
pub fn into_still_bath(first: &str, way: &str) -> String {
    format!("{first}, straight in. Move it {way}; the numbers are those of a still bath.")
}

pub const OUT_HAND_WARM: &str = " Out when it is hand warm.";

#[inline]
pub fn out_at(temperature: &str) -> String {
    format!(" Out at {temperature}, not colder.")
}

pub const TEST: &str = "Test";
pub const FILE: &str = "file";
pub const AND_TESTER: &str = "and tester";
pub const NO_NUMBER: &str = "No number can be given: write down what file and tester say.";
pub const SKATES_ALL_OVER: &str = "Where the scale is ground off a file should skate all over.";

#[inline]
pub fn skates_up_to(height: &str) -> String {
    format!(
        "Where the scale is ground off a file should skate from the cutting edge up to {height}."
    )
}

pub const SLIDES: &str = "A file should slide more than it bites.";
pub const BITES: &str = "A file will bite: at this hardness it does.";
#[inline]
pub fn harder_outside(place: &str) -> String {
    format!(
        "A file skates where it hardens, and says nothing of the {place}: that is softer, by the hardness told here."
    )
}

pub const SNAP_TEMPER: &str = "Snap temper";
pub const SNAP_AT_ONCE: &str =
    "At once, as soon as it is hand warm; no hotter than set. Cool in air to room temperature.";
pub const COLD: &str = "Cold";

#[inline]
pub fn wait_in_all(wait: &str) -> String {
    format!("No more than {wait} at room temperature since the quench, in all.")
}

#[inline]
pub fn start_within(wait: &str) -> String {
    format!("Start within {wait} of the quench.")
}

pub const START_AT_ROOM: &str = "Start as soon as it is at room temperature.";
pub const START_STRAIGHT: &str = "Start straight from the quench.";

#[inline]
pub fn chilled(start: &str, core: &str) -> String {
    format!("{start} Clean and dry first.{core} Let it come back to room temperature in air.")
}

#[inline]
pub fn core_takes(time: &str) -> String {
    format!(" The core takes about {time}: hold it twice that.")
}

pub const TEMPER: &str = "Temper";

#[inline]
pub fn temper(n: usize) -> String {
    format!("Temper\u{a0}{n}")
}

pub const TEMPER_BACK_AT_ROOM: &str =
    "As soon as it is back at room temperature. Count from when the steel is at heat.";
pub const TEMPER_AT_ONCE: &str =
    "At once, as soon as it is hand warm. Count from when the steel is at heat.";
pub const COUNT_AGAIN: &str = "Count again.";
pub const COOL_BEFORE_NEXT: &str = "Cool to hand warm before the next.";
pub const COOL_AND_TEST: &str = "Cool in air, then test.";
