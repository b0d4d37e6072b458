//! Words of the steel and its stock.

pub const WRITE_A_CONTENT: &str = "Write a content such as 0.35.";
pub const FIND_A_GRADE: &str = "Find a grade by any designation";
pub const DESIGNATIONS: &str = "AISI, UNS, EN or W.-Nr.";
pub const BY_HANDBOOK: &str =
    "Its handbook's route was taken: steps, soak, quench, tempers and a target.";
pub const KEEP_OWN: &str = "Keep mine with this steel";
pub const NO_GRADE: &str = "No grade of that name. Type its contents below.";
pub const FROM_CERTIFICATE: &str = "Contents from a certificate";
pub const FINE_CARBIDES: &str = "round carbides, as the mill delivers it for machining";
pub const COARSE_CARBIDES: &str = "round carbides of twice the size, from a long anneal";
pub const ANNEALED_CARBIDES: &str = "small round carbides, from an hour or two just below A1";
pub const COARSE_PEARLITE: &str = "from a slow cool in the furnace";
pub const MEDIUM_PEARLITE: &str = "from a cool in ashes or vermiculite";
pub const FINE_PEARLITE: &str = "from an air cool after normalising";
pub const QUENCHED_AND_REFINED: &str = "very fine carbides in tempered martensite";
pub const AS_FORGED: &str = "coarse pearlite in large grains, not normalised";
pub const GRADES: &str = "Grades";
pub const STRUCTURES: &str = "Structures";
