//! Words of the steel and its stock.

pub(crate) const WRITE_A_CONTENT: &str = "Write a content such as 0.35.";
pub(crate) const FIND_A_GRADE: &str = "Find a grade by any designation";
pub(crate) const DESIGNATIONS: &str = "AISI, UNS, EN or W.-Nr.";
pub(crate) const NO_GRADE: &str = "No grade of that name. Type its contents below.";
pub(crate) const FROM_CERTIFICATE: &str = "Contents from a certificate";
pub(crate) const FINE_CARBIDES: &str = "round carbides, as the mill delivers it for machining";
pub(crate) const COARSE_CARBIDES: &str = "round carbides of twice the size, from a long anneal";
pub(crate) const ANNEALED_CARBIDES: &str =
    "small round carbides, from an hour or two just below A1";
pub(crate) const COARSE_PEARLITE: &str = "coarse, from a slow cool in the furnace";
pub(crate) const MEDIUM_PEARLITE: &str = "from a cool in ashes or vermiculite";
pub(crate) const FINE_PEARLITE: &str = "from an air cool after normalising";
pub(crate) const QUENCHED_AND_REFINED: &str = "very fine carbides in tempered martensite";
pub(crate) const AS_FORGED: &str = "coarse pearlite in large grains, not normalised";
pub(crate) const GRADES: &str = "Grades";
pub(crate) const STRUCTURES: &str = "Structures";
