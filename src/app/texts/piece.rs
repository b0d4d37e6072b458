//! Words of the sentence on the piece and of its panels.

pub(crate) const A: &str = "A ";
pub(crate) const AT_THE_SPINE: &str = " at the spine";
pub(crate) const OWN_QUENCHANT: &str = "Your own quenchant";
pub(crate) const OWN_QUENCHANT_FROM: &str = "from its figures or a probe curve";
pub(crate) const KNOWN_OF_QUENCHANT: &str = "What is known of it";
pub(crate) const WHAT_IT_IS: &str = "What it is";
pub(crate) const NAME_OF_PIECE: &str = "Name of the piece";
pub(crate) const LOWEST_HARDNESS: &str = "Lowest hardness that will do";
pub(crate) const OWN_STEEL: &str = "own steel";
pub(crate) const THE_PIECE: &str = "The piece";
pub(crate) const THE_STEEL: &str = "The steel";
pub(crate) const IN_A_FURNACE: &str = ", in a furnace true to ";
pub(crate) const CUTTING_EDGE: &str = "Cutting edge as heat treated";
pub(crate) const HEIGHT: &str = "Height from cutting edge to spine";
pub(crate) const SIZE_THICK: &str = " thick";
pub(crate) const SIZE_ROUND: &str = " round";
pub(crate) const SIZE_SQUARE: &str = " square";

#[inline]
pub(crate) fn then(words: &str, next: &str) -> String {
    format!("{words}, then {next}")
}

pub(crate) const QUENCHANTS: &str = "Quenchants";
pub(crate) const WRITE_THE_LEAST: &str = "Write 61.";
pub(crate) const HIGHEST: &str = "Highest";
pub(crate) const WRITE_THE_MOST: &str = "Write 63.";
pub(crate) const PIECE: &str = "piece";
pub(crate) const OF: &str = " of ";
pub(crate) const SECTION: &str = "Section";
pub(crate) const FURNACE: &str = "Furnace";
pub(crate) const INTO: &str = ", into ";
pub(crate) const QUENCHANT: &str = "Quenchant";
pub(crate) const FOR: &str = ", for ";
pub(crate) const TARGET: &str = "Target";
pub(crate) const THICKNESS: &str = "Thickness";
pub(crate) const DIAMETER: &str = "Diameter";
pub(crate) const SIDE: &str = "Side";
pub(crate) const SPINE: &str = "Spine";
pub(crate) const FLANKS: &str = "Flanks";
pub(crate) const STRAIGHT: &str = "straight";
pub(crate) const CONVEX: &str = "convex";
pub(crate) const SHAPE: &str = "Shape";
pub(crate) const BLADE: &str = "blade";
pub(crate) const FLAT: &str = "flat";
pub(crate) const ROUND: &str = "round";
pub(crate) const SQUARE: &str = "square";
