//! Words around an opened number.

pub(crate) const WHERE_FROM: &str = "Where this number comes from";
pub(crate) const THE_WAY: &str = "The way from number to number";
pub(crate) const COUNTS_IN_CELSIUS: &str = "The formula counts in °C.";
pub(crate) const SYMBOL: &str = "Symbol";
pub(crate) const WHAT_IT_IS: &str = "What it is";
pub(crate) const VALUE: &str = "Value";
pub(crate) const GOES_IN: &str = "What goes in";
pub(crate) const BESIDE_IT: &str = "Beside it";
pub(crate) const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught: ";
pub(crate) const SHIFT_ON_TOP: &str =
    " A shift of the hardness comes on top of what the formula gives.";
pub(crate) const CLOSE: &str = "Close";
