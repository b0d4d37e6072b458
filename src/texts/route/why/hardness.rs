//! Words of how hardness as quenched, after the cold bath, and the band at the end come about.

pub const CARBON_IN_SOLUTION: &str = "carbon in solution";
pub const MARTENSITE_BY_CARBON: &str = "Hardness of martensite by its carbon";
pub const MARTENSITE_BY_CARBON_HOW: &str =
    "As quenched to room temperature, with its usual austenite.";
pub const ON_PLATEAU_HOW: &str = "As quenched to room temperature, with its usual austenite: a smooth curve through the points of the plateau.";
pub const PLATEAU: &str = "plateau";
pub const MARTENSITE_BY_CARBON_VALIDITY: &str = "0.10 to 1.40 % C in solution";
pub const MARTENSITE_BY_CARBON_ERROR: &str = "1.2\u{a0}HRC on the check rows";
pub const MARTENSITE_AS_IT_IS: &str = "Hardness of the martensite as it is";
pub const BY_CARBON: &str = "hardness by its carbon";
pub const TEMPERED_ON_WAY_DOWN: &str = "what it has tempered on the way down";
pub const MARTENSITE_AS_IT_IS_HOW: &str = "HRC to HV by the standard's table. Martensite that forms first is warm for longest and tempers a little by itself.";
pub const WITHOUT_AUSTENITE: &str = "Hardness of martensite without austenite";
pub const WITH_USUAL_AUSTENITE: &str = "hardness with its usual austenite";
pub const USUAL_AUSTENITE: &str = "usual austenite at this carbon";
pub const WITHOUT_AUSTENITE_HOW: &str = "The measured hardness of martensite holds the austenite that plain steel of its carbon keeps; here it is taken out again, so that it does not count twice.";

#[inline]
pub fn of_product(product: &str) -> String {
    format!("Hardness of {product}")
}

pub const PRODUCT_VALIDITY: &str = "up to 2.1 % Mn, 2.2 % Si, 4 % Ni, 3 % Cr, 1 % Mo";
pub const FERRITE_HOW: &str = "Iron, hardened by what it holds in solution.";
pub const NONE_OF_IT: &str = "There is none of it.";
pub const ITS_FERRITE: &str = "its ferrite";
pub const FORMED_AT: &str = "mean temperature at which it formed";
pub const FORMED_FROM_CARBON: &str = "carbon of the austenite it formed from";
pub const AGGREGATE_HOW: &str = "The colder it forms the finer it is: ΔHV is how much harder than its ferrite the diagram of eutectoid steel has what forms at that temperature, for pearlite at the same distance below A1; carbon sets how much carbide lies in it.";
pub const ALONE: &str = "martensite without austenite";
pub const BEFORE_TEMPERED_BY_ITSELF: &str = "martensite before it has tempered by itself";
pub const AS_QUENCHED: &str = "Hardness as quenched";
pub const AFTER_COLD: &str = "Hardness after the cold bath";
pub const AFTER_SNAP: &str = "Hardness after the snap temper";
pub const MIXTURE: &str = "Hard constituents by their volume, carbide a fifth harder than its martensite; soft ones by theirs. Between both the harmonic mean: what is soft yields first.";
pub const MIXTURE_ERROR: &str = "2\u{a0}HRC, nine times in ten, for these constituents, from the spread of handbook values; the harder part of a half-hardened piece comes out up to 5\u{a0}HRC too hard or soft";
pub const VICKERS_HARDNESS: &str = "Vickers hardness";
pub const HV_TO_HRC_HOW: &str =
    "HV to HRC by the standard's table, a smooth curve between its rows.";
pub const HV_TO_HRC_VALIDITY: &str = "20 to 68\u{a0}HRC, not for austenitic steel";
pub const FINAL_BAND: &str = "Half width of the band at the end";
pub const ERROR_OF_MODELS: &str = "error of the models, nine times in ten";
pub const SNAP_LEAVES_OPEN: &str = "what a snap temper leaves open";
pub const FURNACE_MOVES: &str = "what the furnace's band moves as quenched";
pub const QUENCH_SOFTENS: &str = "what is open about the quench may leave it softer";
pub const QUENCH_HARDENS: &str = "what is open about the quench may leave it harder";
pub const FINAL_BAND_HOW: &str = "Independent of each other, so they add in quadrature, on the softer and the harder side by themselves; half of both together.";
