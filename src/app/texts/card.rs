//! Words of the card.

pub(crate) const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught: ";
pub(crate) const CODE_OF_LINK: &str = "Code of the link to this route";
pub(crate) const ROUTE_ON_PAGE: &str = "This route on the page";
pub(crate) const BAR_OR_HEAT: &str = "Bar or heat";
pub(crate) const BEFORE_YOU_START: &str = "Before you start";
pub(crate) const LOCAL_CODES_FIRST: &str = "Follow local codes and the supplier’s data sheet first. A prediction is a plan: test any part whose failure can hurt someone.";
pub(crate) const LOOK_FOR: &str = "Look for";
pub(crate) const WHAT_IT_WAS: &str = "What it was";
pub(crate) const WHAT_TO_EXPECT: &str = "What to expect";
pub(crate) const NINE_IN_TEN: &str = "Nine in ten";
pub(crate) const COLOURS_AS_SEEN: &str =
    "Colours as seen in a dim shop. Trust the thermocouple first.";
pub(crate) const BACK_TO_BENCH: &str = "Back to the bench";

#[inline]
pub(crate) fn then(after: &str) -> String {
    format!("then {after}")
}

pub(crate) const PIECE: &str = "Piece";
pub(crate) const DATE: &str = "Date";
pub(crate) const BY: &str = "By";
pub(crate) const CARD: &str = "Card";
pub(crate) const STEP: &str = "Step";
pub(crate) const SET: &str = "Set";
pub(crate) const ALSO_SET: &str = "Also set";
pub(crate) const HARDNESS_AFTER: &str = "Hardness after it";
pub(crate) const CAUTIONS: &str = "Cautions";
pub(crate) const COLOUR: &str = "Colour";
pub(crate) const AFTER: &str = "After";
pub(crate) const HARDNESS: &str = "Hardness";
pub(crate) const MEASURED: &str = "Measured";
pub(crate) const PRINT: &str = "Print";
