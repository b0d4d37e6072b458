//! Words of the sentence on the piece and of its panels.

pub use super::super::grammar::article;
pub use super::super::route::plan::OWN_STEEL;

pub const AT_THE_SPINE: &str = " at the spine";
pub const OWN_QUENCHANT: &str = "Your own quenchant";
pub const OWN_QUENCHANT_FROM: &str = "from its figures or a probe curve";
pub const KNOWN_OF_QUENCHANT: &str = "What is known of it";
pub const WHAT_IT_IS: &str = "What it is";
pub const NAME_OF_PIECE: &str = "Name of the piece";
pub const LOWEST_HARDNESS: &str = "Lowest hardness that will do";
pub const THE_PIECE: &str = "The piece";
pub const THE_STEEL: &str = "The steel";
pub const IN_A_FURNACE: &str = ", in a furnace true to ";
pub const CUTTING_EDGE: &str = "Cutting edge as heat treated";
pub const HEIGHT: &str = "Height from cutting edge to spine";
pub const SIZE_THICK: &str = " thick";
pub const SIZE_ROUND: &str = " round";
pub const SIZE_SQUARE: &str = " square";

#[inline]
pub fn then(words: &str, next: &str) -> String {
    format!("{words}, then {next}")
}

pub const QUENCHANTS: &str = "Quenchants";
pub const WRITE_THE_LEAST: &str = "Write 61.";
pub const HIGHEST: &str = "Highest";
pub const WRITE_THE_MOST: &str = "Write 63.";
pub const PIECE: &str = "piece";
pub const OF: &str = " of ";
pub const SECTION: &str = "Section";
pub const FURNACE: &str = "Furnace";
pub const INTO: &str = " into ";
pub const QUENCHANT: &str = "Quenchant";
pub const FOR: &str = " for ";
pub const TARGET: &str = "Target";
pub const THICKNESS: &str = "Thickness";
pub const DIAMETER: &str = "Diameter";
pub const SIDE: &str = "Side";
pub const SPINE: &str = "Spine";
pub const FLANKS: &str = "Flanks";
pub const STRAIGHT: &str = "straight";
pub const CONVEX: &str = "convex";
pub const SHAPE: &str = "Shape";
pub const BLADE: &str = "blade";
pub const FLAT: &str = "flat";
pub const ROUND: &str = "round";
pub const SQUARE: &str = "square";
