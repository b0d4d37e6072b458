//! Words of how the austenite that leaves the furnace comes about.

pub const EQUILIBRIUM: &str = "Equilibrium: the amounts and contents of all phases at which the Gibbs energy of the steel is least, found by Newton's method from published parameters for each phase.";
pub const EQUILIBRIUM_VALIDITY: &str =
    "up to 2.5 % C, 18 % Cr, 3 % Mn or Si, 4 % Ni, 2 % Mo, 1.2 % V, 4 % W";
pub const DISSOLUTION: &str = "How much carbide is left was followed in time: spheres that shrink as carbon first, then the alloy of the carbide, moves away.";
pub const DISSOLUTION_ERROR: &str =
    "equilibrium ±0.02 to 0.04 % C; published soaks of 1 C–1.5 Cr steel differ by 0.1 %";
pub const CONTENT_HOW: &str =
    "Given with the route: the grade's usual content, or what was entered.";
pub const A1: &str = "A1";
pub const A3: &str = "A3";
pub const ACM: &str = "Acm";
pub const A1_HOW: &str = "The lowest temperature at which equilibrium holds austenite, found by false position to 0.02 K. On heating in a shop it begins 10 to 40 K higher.";
pub const SECOND_PHASE_HOW: &str = "The temperature at which the last of the second phase is gone at equilibrium, found by false position to 0.02 K.";
pub const INTERCEPT: &str = "Mean distance between grain boundaries";
pub const SOAK_TEMPERATURE: &str = "soak temperature";
pub const SOAK_TIME: &str = "soak time";
pub const INTERCEPT_HOW: &str = "Growth in time from the first grain, as far as the carbide that is left lets the boundaries go.";

#[inline]
pub fn intercept_error(table_left_out: &str) -> String {
    format!("a quarter; the table's law: {table_left_out}")
}

pub const AUSTENITE_GRAIN: &str = "Austenite grain";
pub const BETWEEN_BOUNDARIES: &str = "mean distance between boundaries";
pub const GRAIN_ERROR: &str = "about one grain number";
pub const BOUND_ERROR: &str =
    "5 K for plain carbon steel, 10 K for low alloy, 20 K for 5 to 18 % Cr";

#[inline]
pub fn bound_solves(phase: &str) -> String {
    format!(
        "Δg is how far {phase} lies above the equilibrium of the other phases, as a Gibbs energy in RT for each mole of atoms: less than zero where {phase} is stable."
    )
}

pub const ALLOWED_CARBON: &str = "Carbon that equilibrium allows in solution";
pub const FERRITE_AT_EQUILIBRIUM: &str = "ferrite at equilibrium, by mass";
pub const CARBON_OF_FERRITE: &str = "carbon of that ferrite";
pub const CARBIDE_AT_EQUILIBRIUM: &str = "carbide at equilibrium, by mass";
pub const CARBON_OF_CARBIDE: &str = "carbon of that carbide";
pub const AUSTENITE_AT_EQUILIBRIUM: &str = "austenite at equilibrium, by mass";

#[inline]
pub fn allowed_carbon_how() -> String {
    format!("{EQUILIBRIUM} The carbon of the parts adds up to that of the steel.")
}

pub const ALLOWED_CARBON_ERROR: &str =
    "0.02 % C for plain carbon steel, 0.04 for low alloy, 0.05 for 5 to 18 % Cr";
pub const CARBON_IN_SOLUTION: &str = "Carbon in solution";

#[inline]
pub fn in_carbide(element: &str) -> String {
    format!("{element} in carbide, of the piece")
}

pub const CARBON_IN_CARBIDE: &str = "carbon in carbide, of the piece";
pub const FERRITE_LEFT_BY_MASS: &str = "ferrite left, by mass";
pub const AUSTENITE_BY_MASS: &str = "austenite, by mass";

#[inline]
pub fn dissolved_carbon_how(allowed_wt: f64) -> String {
    format!("{DISSOLUTION} Equilibrium would allow {allowed_wt:.2} %.")
}

pub const CARBIDE_LEFT_BY_MASS: &str = "carbide left, by mass";
pub const OVER_SETTLED: &str = "content of austenite over that of austenite and ferrite";
pub const DISSOLVED_ERROR: &str = "not measured by itself; follows the carbide left";
pub const CARBIDE_MASS: &str = "Carbide left, by mass";
pub const CARBIDE_VOLUME: &str = "Carbide left undissolved";
pub const VOLUME_OF_CARBIDE: &str = "volume of the carbide, in that of the steel's mass";
pub const TIME_HOT: &str = "time hot, heating up with it";
pub const UPPER_BOUND: &str =
    "an upper bound; in sentences rounded up to hundredths of a millimetre";
pub const DECARBURISED_IN_FIRST_SECOND: &str = "depth in the first second, 2 √D";
pub const DECARBURISED: &str = "Depth without carbon, at most";
pub const DECARBURISED_HOW: &str = "Diffusion of carbon to a surface that loses all of it at once.";
pub const DECARBURISED_VALIDITY: &str =
    "carbon and low-alloy steel in still air, without foil or coating";
pub const SCALE_IN_FIRST_SECOND: &str = "scale of the first second on clean iron";
pub const SCALE: &str = "Scale, at most";
pub const SCALE_HOW: &str = "Scale grows with the root of time, on steel at most as on clean iron.";
pub const SCALE_VALIDITY: &str = "700 to 1250 °C, still air; chromium scales less";
pub const STOCK: &str = "Stock to leave on each side";
pub const DEPTH_WITHOUT_CARBON: &str = "depth without carbon";
pub const ITS_SCALE: &str = "scale";
pub const SCALE_OVER_IRON: &str = "volume of scale over that of its iron";
