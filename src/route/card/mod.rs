//! The card: what someone at the furnace needs of a route on one sheet, in words. All its numbers
//! are the route's and the outcome's own; one that no model gives is said to be unknown.

mod expected;
mod ramp;
mod rows;
mod rows_before;
mod safety;
mod words;

pub(super) use ramp::keep_air_off;

use super::outcome::Outcome;
use super::plan::Route;
use crate::units::{LengthUnit, TemperatureScale, format_fixed, format_temperature_band};
use recalesce_texts::grammar::at_the_head;
use recalesce_texts::route as texts;
use words::{medium_words, section_words};

/// What a card says, from top to bottom.
#[derive(Debug, Clone, PartialEq)]
pub struct Card {
    /// Piece and steel.
    pub title: String,
    /// Section, furnace, quenchant and aim.
    pub sentence: String,
    /// What to see to before the first step.
    pub before_start: [&'static str; 3],
    /// Each step of the whole route, in order.
    pub rows: Vec<CardRow>,
    /// Hardness after each step for which there is a place on the card to write it down.
    pub expected: Vec<Expected>,
    /// Why a hardness is unknown, where one is.
    pub unknown: Option<String>,
    /// How far it hardens.
    pub depth: Depth,
}

/// One step of the card.
#[derive(Debug, Clone, PartialEq)]
pub struct CardRow {
    /// Its name in the trade.
    pub title: String,
    /// What is set first: a temperature, a quenchant, a tool.
    pub set: String,
    /// What else is set: tolerance, time, cooling.
    pub detail: String,
    /// The colour to expect.
    pub colour: Option<StepColour>,
    /// What to look for, and how to check it.
    pub look_for: String,
    /// Hardness after it, where it can be told.
    pub after: Option<String>,
    /// What can hurt or go wrong with it, unless an earlier step has brought the same.
    pub cautions: Vec<String>,
}

/// What gives steel its colour in a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StepColour {
    /// It glows at this temperature, °C.
    Glow(f64),
    /// Its oxide, bright before, has the colour of this temperature, °C.
    Oxide(f64),
}

/// Hardness after a step, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Expected {
    /// After which step.
    pub after: String,
    /// The number with its scale; a dash where it is unknown.
    pub hardness: String,
    /// Between which numbers of the same scale it is nine times in ten.
    pub nine_in_ten: String,
}

/// How far the piece hardens.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Depth {
    /// Height in a blade, depth in all else.
    pub title: &'static str,
    /// The margin and what it leaves room for.
    pub words: String,
}

/// The scales in which a card is written.
#[derive(Debug, Clone, Copy)]
struct Units {
    scale: TemperatureScale,
    length: LengthUnit,
}

/// The card of a route and its outcome, with temperatures on a scale and lengths in a unit.
#[must_use]
pub fn card(route: &Route, outcome: &Outcome, scale: TemperatureScale, length: LengthUnit) -> Card {
    let units = Units { scale, length };
    Card {
        title: title(route),
        sentence: sentence(route, units),
        before_start: texts::card::BEFORE_START,
        rows: rows(route, outcome, units),
        expected: expected::expected(route, outcome),
        unknown: expected::unknown(outcome, scale),
        depth: expected::depth(route, outcome, units),
    }
}

fn rows(route: &Route, outcome: &Outcome, units: Units) -> Vec<CardRow> {
    let before = rows_before::rows(route, outcome, units).into_iter();
    before
        .chain(rows::rows(route, outcome, units))
        .zip(safety::by_row(route, outcome, units.scale, units.length))
        .map(|(row, cautions)| CardRow { cautions, ..row })
        .collect()
}

fn title(route: &Route) -> String {
    let piece = match route.piece.trim() {
        "" => texts::card::NAMELESS_PIECE,
        piece => piece,
    };
    let piece = at_the_head(piece);
    let steel = route.grade.as_deref().unwrap_or(texts::plan::OWN_STEEL);
    texts::plan::piece_of_steel(&piece, steel)
}

fn sentence(route: &Route, units: Units) -> String {
    let bath = medium_words(&route.quench.medium, units.scale);
    let target = &route.target;
    texts::card::sentence(
        &section_words(&route.section, units.length),
        &format_temperature_band(route.soak_band_k(), units.scale),
        &bath,
        &format_fixed(target.least_hrc, 0),
        &format_fixed(target.most_hrc, 0),
    )
}

#[cfg(test)]
mod tests;
