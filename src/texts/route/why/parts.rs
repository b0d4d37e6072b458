//! Words of how it comes about what becomes ferrite, pearlite and bainite on the way down.

pub const ADDITIVITY: &str = "Followed along the cooling curve: each moment counts for its part of the start time at its temperature, and what has formed shares the austenite (additivity).";

#[inline]
pub fn after_quench(product: &str) -> String {
    format!("{product} after the quench")
}

#[inline]
pub fn age_at_end(product: &str) -> String {
    format!("age of {product} at the end, in start times")
}

pub const FERRITE_OF_SOAK: &str = "ferrite that the soak left";
pub const CARBIDE_OF_REST: &str = "carbide, of what is not that ferrite";
pub const BOUNDARY_CARBIDE: &str = "carbide on grain boundaries, of the rest";
pub const FERRITE_LIMIT: &str = "ferrite that can form, of the austenite";

#[inline]
pub fn alone_how() -> String {
    format!(
        "{ADDITIVITY} Nothing else formed beside it: F is the published shape of the reaction, by its age."
    )
}

#[inline]
pub fn beside_others_how() -> String {
    format!(
        "{ADDITIVITY} Others form beside it; each step's loss of austenite is divided as each would take it alone."
    )
}

pub const SHARE_SOLVES: &str = "y is the share in what was austenite, beside the ferrite that the soak left; y(n) is the same share found once more with n pieces for each piece of the curve.";

#[inline]
pub fn age_after_quench(product: &str) -> String {
    format!("Age of {product} after the quench")
}

pub const AGE_HOW: &str = "Each moment above the start of martensite adds its part of the time that the first per cent takes at its temperature; tabulated integrals over straight pieces of the curve. At 1 the first per cent has formed.";
pub const AGE_SOLVES: &str = "Σ is the sum of time over start time in holds of a quarter of a kelvin, each at its own temperature, down to the start of martensite.";
