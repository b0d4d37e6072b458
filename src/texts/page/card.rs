//! Words of the card.

pub const COUNTED_WITH_LEARNT: &str = "Counted with what the logbook has taught: ";
pub const CODE_OF_LINK: &str = "Code of the link to this route";
pub const ROUTE_ON_PAGE: &str = "This route on the page";
pub const BAR_OR_HEAT: &str = "Bar or heat";
pub const BEFORE_YOU_START: &str = "Before you start";
pub const LOCAL_CODES_FIRST: &str = "Follow local codes and the supplier's data sheet first. A prediction is a plan: test any part whose failure can hurt someone.";
pub const LOOK_FOR: &str = "Look for";
pub const WHAT_IT_WAS: &str = "What it was";
pub const WHAT_TO_EXPECT: &str = "What to expect";
pub const NINE_IN_TEN: &str = "Nine in ten";
pub const COLOURS_AS_SEEN: &str = "Colours as seen in a dim shop. Trust the thermocouple first.";
pub const BACK_TO_BENCH: &str = "Back to the bench";

#[inline]
pub fn then(after: &str) -> String {
    format!("then {after}")
}

pub const PIECE: &str = "Piece";
pub const DATE: &str = "Date";
pub const BY: &str = "By";
pub const CARD: &str = "Card";
pub const STEP: &str = "Step";
pub const SET: &str = "Set";
pub const ALSO_SET: &str = "Also set";
pub const HARDNESS_AFTER: &str = "Hardness after it";
pub const CAUTIONS: &str = "Cautions";
pub const COLOUR: &str = "Colour";
pub const AFTER: &str = "After";
pub const HARDNESS: &str = "Hardness";
pub const MEASURED: &str = "Measured";
pub const PRINT: &str = "Print";
