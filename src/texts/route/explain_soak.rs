//! What stands behind the numbers beside the soak: heating up, overheating, the surface.

pub const HEATING_UP: &str = "Heating up";

#[inline]
pub fn heating_law(emissivity: f64, air_w_m2k: f64, within: &str, temperature: &str) -> String {
    format!(
        "heat taken up = radiation of the walls, ε σ (T⁴ walls − T⁴ piece), and air, h (T walls − T piece)\nε {emissivity}, h {air_w_m2k} W/m²K, until the core is within {within} of {temperature}"
    )
}

pub const HEATING_TAKES_IN: &str = "the section, of a blade the plate of its spine, from a cold piece in a furnace that holds its temperature";
pub const HEATING_BASIS: &str = "conduction; heat capacity on heating by EN 1993-1-2, which holds the heat that the change to austenite takes; ε and h are expert values";
pub const HEATING_VALIDITY: &str = "scaled steel with room around it; bright steel takes longer, and so does a small furnace that drops when it is opened";

#[inline]
pub fn heating_error(factor: &str) -> String {
    format!("not measured; taken as {factor} either way")
}

pub const OVERHEATED: &str = "Grain from a furnace that is too hot";

#[inline]
pub fn grain_at(temperature: &str, grain: &str, um: &str) -> String {
    format!("{temperature}: ASTM {grain}, {um}\u{a0}µm between boundaries")
}

pub const GRAIN_NUMBER: &str = "ASTM grain number";

pub const SURFACE: &str = "The surface in open air";
pub const TO_LEAVE: &str = "to leave on each side, at most";

#[inline]
pub fn depth_between(least: &str, most: &str) -> String {
    format!("{least} to {most}\u{a0}mm")
}

#[inline]
pub fn surface_law(decarburised: &str, scale: &str) -> String {
    format!(
        "carbon lost to 2 √(D t): {decarburised}\nscale to √(k t): {scale}\nto leave = depth without carbon + steel that became scale"
    )
}

pub const SURFACE_BASIS: &str = "diffusion of carbon in austenite to a surface that loses all of it; scale on clean iron in air after Païdassi (1958), from memory";
pub const SURFACE_VALIDITY: &str =
    "carbon and low-alloy steel without foil, coating or gas; chromium scales less";
pub const SURFACE_ERROR: &str = "an upper bound; the lower ends are expert values";
