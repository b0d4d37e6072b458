//! Words of the coupon: what it leaves open of its quench, and why it tells nothing.

// What was told of it, inside a sentence.
pub const CENTRE: &str = "centre";
pub const SURFACE: &str = "surface";
pub const TIME_IN_AIR: &str = "time in air";
pub const BATH: &str = "bath";
pub const TESTER_ERROR: &str = "error of the tester";
pub const CENTRE_HARDNESS: &str = "hardness of the centre";
pub const SURFACE_HARDNESS: &str = "hardness of the surface";

#[inline]
pub fn shape_of(like: &str, factor: f64) -> String {
    format!(
        "Hardness tells only how fast the nose was passed: the shape of the curve is that of {like}, its level ×{factor:.2} of that in the still bath."
    )
}

#[inline]
pub fn at_least(factor: f64, taken: f64, band: f64) -> String {
    format!(
        "A faster quench would leave the coupon as hard, within the errors, so it says only that the level is at least ×{factor:.2}; ×{taken:.2} is taken, as known within ×{band:.1} either way. A coupon half hardened at its centre tells most."
    )
}

#[inline]
pub fn at_most(factor: f64, taken: f64, band: f64) -> String {
    format!(
        "A slower quench would leave the coupon as soft, within the errors, so it says only that the level is at most ×{factor:.2}; ×{taken:.2} is taken, as known within ×{band:.1} either way. A coupon half hardened at its centre tells most."
    )
}

pub const AT_ODDS: &str = "Centre and surface are at odds: all that either allows is taken. A surface that has lost carbon reads soft, so does a cut that grew warm.";

#[inline]
pub fn known_within(factor: f64) -> String {
    format!("What decides the nose is known within ×{factor:.2} either way.")
}

#[inline]
pub fn known_within_for_same_steel(factor: f64, same_steel: f64) -> String {
    format!(
        "What decides the nose is known within ×{factor:.2} either way, for this very steel within ×{same_steel:.2}."
    )
}

pub const NO_READING: &str =
    "no hardness is given; measure the centre of the cut coupon, its surface, or both";
pub const NO_COUPON_SHAPE: &str = "a coupon is a plate or a round bar";

#[inline]
pub fn too_hard(given_hrc: f64, place: &str, most_hrc: f64) -> String {
    format!(
        "{given_hrc:.1}\u{a0}HRC at the {place} is harder than this steel gets after this soak: at most {most_hrc:.1}\u{a0}HRC"
    )
}

#[inline]
pub fn too_soft(given_hrc: f64, place: &str, least_hrc: f64) -> String {
    format!(
        "{given_hrc:.1}\u{a0}HRC at the {place} is softer than this steel gets in a quench ten times slower: at least {least_hrc:.1}\u{a0}HRC"
    )
}

#[inline]
pub fn tells_nothing(least_hrc: f64, most_hrc: f64) -> String {
    format!(
        "this coupon tells nothing of the quench: it comes out at {least_hrc:.0} to {most_hrc:.0}\u{a0}HRC in every one from ten times slower to ten times faster; a steel that hardens less deep, or another size, tells more"
    )
}

pub const NOTHING_FITS_BOTH: &str = "centre and surface are at odds: one is as soft, the other as hard as this coupon gets; a surface that has lost carbon reads soft, so does a cut that grew warm";
