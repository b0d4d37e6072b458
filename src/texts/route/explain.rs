//! What stands behind the numbers of the outcome: title, band, equation, and rows of what it takes in.

pub use super::why::quench::AUSTENITE_ERROR as RETAINED_AUSTENITE_ERROR;
pub use super::why::soak::DISSOLUTION_ERROR;

pub const TAKES_IN: &str = "takes in";
pub const SOURCE: &str = "source";
pub const VALID: &str = "valid for";
pub const KNOWN: &str = "known error";

#[inline]
pub fn between(least: &str, most: &str) -> String {
    format!("{least} to {most}")
}

#[inline]
pub fn soak(temperature: &str, time: &str, band: &str) -> String {
    format!("{temperature} for {time}, within {band}")
}

pub const CARBON_IN_SOLUTION: &str = "Carbon in solution";

#[inline]
pub fn over_furnace_band(least: &str, most: &str) -> String {
    format!("{least} to {most} over the furnace's band")
}

pub const NOTHING_DISSOLVES_COLD: &str = "nothing dissolves at the furnace's cold end";

#[inline]
pub fn carbon_in_solution(carbon: &str, limit: &str, temperature: &str) -> String {
    format!(
        "in solution = what equilibrium allows, as far as the soak gets\n{carbon} of {limit} possible at {temperature}"
    )
}

pub const DISSOLUTION_BASIS: &str = "equilibrium of this steel, and shrinking carbides in two stages: carbon first, then the alloy that the carbide holds";
pub const DISSOLUTION_VALIDITY: &str = "up to 2.5 % C, 18 % Cr, 3 % Mn or Si, 4 % Ni, 2 % Mo, 1.2 % V, 4 % W; checked on plain and 1.5 % Cr steel";

pub const CARBIDE_LEFT: &str = "Carbide left undissolved";

#[inline]
pub fn equilibrium_leaves(carbide: &str) -> String {
    format!("equilibrium would leave {carbide}")
}

#[inline]
pub fn carbon_balance(in_steel: &str, in_austenite: &str) -> String {
    format!(
        "carbon of the steel = carbon in austenite + carbon in carbide\n{in_steel} in all, {in_austenite} of the austenite in solution"
    )
}

pub const CARBON_BALANCE_BASIS: &str = "mass balance of carbon";

pub const GRAIN: &str = "Austenite grain";

#[inline]
pub fn between_boundaries(um: &str) -> String {
    format!("{um}\u{a0}µm between boundaries")
}

pub const GRAIN_LAW: &str = "G = −3.288 − 6.644 log₁₀(mean intercept in mm)\ngrowth stops where carbides pin the boundaries";
pub const GRAIN_BASIS: &str = "growth of low-alloy steel after Lee & Lee (2008), of 1 C–1.5 Cr steel by a producer's table; pinning after Zener; ASTM E112 for the number";

/// `fit` is how far the law is from steels that it has not seen.
#[inline]
pub fn grain_error(fit: &str) -> String {
    format!("about one grain number; the table's law: {fit}")
}

pub const MARGIN: &str = "Margin of the quench";

#[inline]
pub fn margin(factor: &str, nose: &str, arrival: &str) -> String {
    format!(
        "margin = (slowest quench that still hardens − this quench) at the nose\nThe quench may be {factor} as slow; it passes {nose} after {arrival}."
    )
}

#[inline]
pub fn margin_takes_in(carbon: &str, grain: &str, quenchant: &str, agitation: &str) -> String {
    format!("{carbon} C dissolved, grain ASTM {grain}, {quenchant}, heat transfer {agitation}")
}

pub const HARDENED: &str = "hardened";

#[inline]
pub fn hardened(part: &str) -> String {
    format!("95 % of the austenite has to reach martensite; here {part}")
}

#[inline]
pub fn hardened_in_bath(part: &str) -> String {
    format!("95 % of the austenite has to reach martensite or the bainite of the bath; here {part}")
}

pub const MARGIN_BASIS: &str = "isothermal curves fitted by this project, added up along the cooling curve (Scheil's rule); conduction with this quenchant's curve";
pub const BAND_FROM: &str = "band from";

/// One thing that a margin's band comes of, with its own band.
#[inline]
pub fn margin_source(name: &str, band: &str) -> String {
    format!("{name} {band}")
}

#[inline]
pub fn margin_band(sources: &[String], together: &str, widest: &str) -> String {
    format!(
        "{}; together {together}, most by {widest}",
        sources.join(", ")
    )
}

#[inline]
pub fn noses_error(fit: &str) -> String {
    format!("noses: {fit}")
}

pub const NEXT_SLOWER: &str = "The next slower quenchant";
pub const NONE_SLOWER: &str = "The list has no slower quenchant.";
pub const SAME_PIECE_AND_SOAK: &str = "the same piece and soak in that quenchant, still";
pub const SLOWEST_THAT_DOES: &str = "slowest that does";
pub const NONE_OF_LIST: &str = "none of the list";

pub const RETAINED_AUSTENITE: &str = "Retained austenite";
pub const RETAINED_AUSTENITE_BAND: &str = "give or take 4 %";

#[inline]
pub fn retained_austenite(ms: &str, cooled_to: &str) -> String {
    format!("left = austenite × exp(−α (Ms − T))\nMs {ms}, cooled to {cooled_to}")
}

#[inline]
pub fn carbon_dissolved(carbon: &str) -> String {
    format!("{carbon} C dissolved")
}

pub const RETAINED_AUSTENITE_BASIS: &str =
    "mean of Koistinen & Marburger (1959) and van Bohemen (2012); Ms by van Bohemen (2012)";

pub const HARDNESS: &str = "Hardness";
pub const BELOW_C_SCALE: &str = "Below the C scale.";
pub const FINAL_HARDNESS: &str = "Hardness at the end";

#[inline]
pub fn give_or_take(band: &str) -> String {
    format!("give or take {band}, nine times in ten")
}

pub const READ_IN_TABLE: &str = "read in the table of the grade";
pub const MIXTURE_LAW: &str = "martensite and what is soft beside it, by the harmonic mean";

#[inline]
pub fn less_tempering(as_quenched: &str) -> String {
    format!("as quenched {as_quenched} − what tempering takes")
}

#[inline]
pub fn temper(temperature: &str, time: &str) -> String {
    format!("{temperature} for {time}")
}

pub const NO_TEMPER: &str = "no temper";

/// Tempers in their order, as [`temper`] says each.
#[inline]
pub fn tempers(each: &[String]) -> String {
    each.join(", then ")
}

pub const TEMPERING_BASIS: &str = "three stages fitted by this project to published tempering data (Hollomon & Jaffe 1945, Grange & Baughman 1956, Penha 2010; data set CC BY 4.0)";
pub const TEMPERING_TABLE_BASIS: &str = "table of supplier sheets for this grade, shifted to other times along the Hollomon-Jaffe parameter";

#[inline]
pub fn tempering_validity(least: &str, most: &str) -> String {
    format!(
        "0.20 to 1.50 % C, low alloy, {least} to {most}, 10 s to 32 h; A2, D2, S7 and stainless grades by table"
    )
}

pub const TEMPERING_BEYOND_DATA: &str = "beyond the data: the band is wider by an estimate";

#[inline]
pub fn tempering_error(fit: &str) -> String {
    format!("{fit}, 30 min to 4 h")
}

pub const ON_WAY_DOWN: &str = "on the way down";

#[inline]
pub fn tempers_itself(fall: &str) -> String {
    format!("the martensite formed first tempers itself: {fall} in the quench")
}

pub const NOT_KNOWN: &str = "Not known";
pub const NO_SUCH_NUMBER: &str = "This route has no such number now.";
