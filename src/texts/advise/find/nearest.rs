//! What stands in the way where no route is found, and what would help.

#[inline]
pub fn no_furnace_reaches(from: &str, to: &str) -> String {
    format!("No furnace of the shop reaches {from} to {to}, where this steel is hardened.")
}

#[inline]
pub fn nothing_tempers(least: &str) -> String {
    format!(
        "Nothing in the shop holds a tempering temperature: an oven that holds {least} or more would do."
    )
}

pub const HARDNESS_NOT_TOLD: &str =
    "The models do not tell the hardness of this steel after any temper of this shop.";

#[inline]
pub fn coarser_grain(finest: &str) -> String {
    format!(
        "Every soak leaves a coarser grain: the finest is {finest}. Refining cycles before hardening, or a limit of {finest}, would help."
    )
}

#[inline]
pub fn longer(shortest_h: &str) -> String {
    format!("Every route takes longer; the shortest takes {shortest_h}\u{a0}h.")
}

#[inline]
pub fn too_soft(hardest: &str) -> String {
    format!(
        "The hardest that this steel gets in this shop within the limits is {hardest}: a target that includes it can be met."
    )
}

#[inline]
pub fn not_tempered_to(nearest: &str) -> String {
    format!(
        "The nearest that a temper of this shop comes is {nearest}: a target that includes it can be met."
    )
}

#[inline]
pub fn too_slow(factor: &str) -> String {
    format!(
        "Every quench of the shop is too slow to harden this section through, even the fastest, by {factor}; what hardens outside alone is not looked for."
    )
}

pub const NO_QUENCHANT_HARDENS: &str =
    "No quenchant of the list would harden it; a thinner section would.";

#[inline]
pub fn slowest_that_hardens(quenchant: &str) -> String {
    format!("The slowest of the list that would is {quenchant}.")
}

#[inline]
pub fn slowest_that_hardens_and_may_crack(quenchant: &str) -> String {
    format!(
        "The slowest of the list that would is {quenchant}, which may crack it; a thinner section would do in a slower one."
    )
}

#[inline]
pub fn more_austenite(least: &str) -> String {
    format!("Every route leaves more austenite: the least is {least}.")
}

#[inline]
pub fn cold_bath_leaves(bath: &str, part: &str) -> String {
    format!("A cold bath of {bath} would leave {part}.")
}
