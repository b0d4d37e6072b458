//! Words of the sentence on the piece and of its panels.

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
