//! What stands behind the numbers of the piece after a step before hardening.

pub const NO_SUCH_STEP: &str = "The route has no such step.";

#[inline]
pub fn step(work: &str, settings: &str) -> String {
    format!("{work} {settings}")
}

pub const HARDNESS: &str = "Hardness after the step";
pub const NO_HARDNESS: &str = "No model tells the hardness of what forms.";

/// A constituent with its part.
#[inline]
pub fn constituent(part: &str, name: &str) -> String {
    format!("{part} {name}")
}

/// `constituents` as [`constituent`] says each, `radius` that of the carbide.
#[inline]
pub fn hardness_law(constituents: &[String], radius_um: &str) -> String {
    format!(
        "each constituent by its part; ferrite with round carbide: HV = ferrite + k / √λ, λ = 4/3 r (1 − f) / f\n{}; r = {radius_um}\u{a0}µm",
        constituents.join(", ")
    )
}

pub const HARDNESS_BASIS: &str = "pearlite, bainite and ferrite as after a quench; round carbide fitted by this project to the usual hardness of three steels annealed at the mill, from memory";
pub const HARDNESS_VALIDITY: &str = "carbon and low-alloy steel; carbide up to 60 % by volume";

#[inline]
pub fn hardness_error(
    fit: &str,
    band_hv: &str,
    (bars, pearlite_band_hv, harder_hv): (usize, &str, &str),
) -> String {
    format!(
        "round carbide: {fit}; ±{band_hv}\u{a0}HV against the hardest that standards allow as annealed, from memory; pearlite: ±{pearlite_band_hv}\u{a0}HV against {bars} bars of 25\u{a0}mm normalised in still air, which are harder by {harder_hv}\u{a0}HV on average, most of all with 0.8\u{a0}% carbon and more"
    )
}

pub const GRAIN: &str = "Austenite grain of the step";
pub const NO_GRAIN: &str = "Below A1 no austenite forms, and no grain of it.";

#[inline]
pub fn from_boundary_to_boundary(um: &str) -> String {
    format!("{um}\u{a0}µm from boundary to boundary")
}

pub const GRAIN_LAW: &str = "it begins as fine as the structure before and its old grain let it, and grows as far as carbide lets it";

/// `grown` is the basis of the grain of a soak.
#[inline]
pub fn grain_basis(grown: &str) -> String {
    format!("{grown}; the first grain, and grain under the hammer, are expert values")
}

/// `soaked` is the error of the grain of a soak.
#[inline]
pub fn grain_error(soaked: &str) -> String {
    format!("{soaked}; more after forging")
}

pub const CARBIDE: &str = "Carbide after the step";

#[inline]
pub fn carbide_band(left_over: &str, size: &str) -> String {
    format!("across; {left_over} of it is left over from before, {size}")
}

pub const CARBIDE_LAW: &str = "above A1: what the soak leaves, and what forms on cooling, by how far below A1\nbelow A1: r³ = r₀³ + k t, slower with chromium and its like";
pub const CARBIDE_BASIS: &str = "films on boundaries after Zener (1949); rates of ripening, and spacing of pearlite by how far below A1 it forms, are expert values of this project";
pub const CARBIDE_ERROR: &str = "about a factor 1.5 in size";
