//! Words around an opened number.

pub const WHERE_FROM: &str = "Where this number comes from";
pub const THE_WAY: &str = "The way from number to number";
pub const COUNTS_IN_CELSIUS: &str = "The formula counts in °C.";
pub const SYMBOL: &str = "Symbol";
pub const WHAT_IT_IS: &str = "What it is";
pub const VALUE: &str = "Value";
pub const FORMULA: &str = "Formula";
pub const GOES_IN: &str = "What goes in";
pub const BESIDE_IT: &str = "Beside it";
pub const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught: ";
pub const SHIFT_ON_TOP: &str = " A shift of the hardness comes on top of what the formula gives.";
pub const CLOSE: &str = "Close";
