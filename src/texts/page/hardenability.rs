//! Words of the continuous cooling and the end-quench bar.

pub const IN_THE_END: &str = "What is there in the end";

#[inline]
pub fn rate_for(rate: &str, part: &str) -> String {
    format!("{rate} for {part}")
}

#[inline]
pub fn round_at(diameter: &str, quench: &str, severity: &str) -> String {
    format!("{diameter} in {quench} (H {severity})")
}

#[inline]
pub fn round_in(diameter: &str, quench: &str) -> String {
    format!("{diameter} in {quench}")
}

#[inline]
pub fn slowest_cooling(at: &str, told: &str) -> String {
    format!(
        "Slowest cooling at which so much hardens, without ferrite, pearlite and bainite, by the rate at {at}: {told}; each within a factor of two. In Cr-Mo and Ni-Cr-Mo steels pearlite and bainite are not well told apart; carbide on grain boundaries is not in the diagram."
    )
}

pub const SCATTER: &str = "the scatter of its points";
pub const WIDER: &str = "wider where simulated bar or standard lie further off";
pub const BY_FACTORS: &str = "by the factors of ASTM A255";
pub const BY_OWN_TEST: &str = "by your own test of the heat";
pub const FROM_CURVES: &str = "from the isothermal curves, outside the range of ASTM A255";

#[inline]
pub fn ideal_diameter(
    ideal: &str,
    by: &str,
    rounds: &str,
    band_hrc: &str,
    band: &str,
    shape: &str,
) -> String {
    format!(
        "Ideal diameter DI {ideal}, {by}. Rounds that get half martensite at the centre: {rounds}. Band of the curve ±{band_hrc}, {band}; its shape along the bar is {shape}."
    )
}

#[inline]
pub fn piece_cools_like(place: &str, rounds: &str) -> String {
    format!(
        " The deciding place of the piece cools like {place} on the bar, and so like the centres of these rounds: {rounds}."
    )
}

#[inline]
pub fn begins_after(times: &str) -> String {
    format!(
        " It begins to transform after {times} times the time computed from its composition; the verdict on the quench goes by that. The test is taken to have grain 7, the simulated bar has that of this soak."
    )
}

pub const OWN_TEST: &str = "Your own test of this heat: a distance from the end and a hardness in HRC a line, such as 9 mm 54 or J6 50";

#[inline]
pub fn distance(unit: &str) -> String {
    format!("distance from the quenched end, {unit}")
}

pub const HARDNESS_HRC: &str = "hardness, HRC";
pub const BAND_HRC: &str = "band, HRC";
pub const BY_POLYNOMIALS: &str = "by the standard's polynomials, HRC";

#[inline]
pub fn rate_at(temperature: &str) -> String {
    format!("At {temperature}")
}

pub const HARDNESS: &str = "Hardness";
