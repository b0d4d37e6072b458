//! What austenite turns into: isothermal curves, additivity along a cooling curve, martensite,
//! end-quench.
//!
//! [`Kinetics`] holds all that depends on the [`Austenite`] alone; build it once and follow as
//! many cooling curves with it as needed. The free functions are for single questions.

mod along;
mod bar_points;
mod continuous;
mod critical;
mod end_quench;
mod formed;
mod fractions;
mod isothermal;
mod kinetics;
mod martensite;
mod measured_heat;
mod rate_table;
mod rounds;
mod shape;
mod turning;

pub use along::along;
pub use bar_points::{BarPointsError, read_bar_points, write_bar_points};
pub use continuous::{Continuous, ContinuousCooling, Passage};
pub use critical::{CriticalCooling, NoseGap, critical_cooling, spare_of};
pub use end_quench::{EndQuench, EndQuenchMethod, end_quench, measured_end_quench};
pub use formed::{Formed, FormedProduct, Forming};
pub use fractions::{Fractions, HistoryPoint, Transformed};
pub use isothermal::{Isothermal, ProductCurve, isothermal};
pub use kinetics::{Kinetics, LARGEST_MS_OFF_K, Product, carbide_factor, counted};
pub use martensite::{
    ColdStep, WarmStay, bainite_start_c, cold_treated, cold_treated_with_lag, left_at_of,
    martensite_finish_c, martensite_start_c, martensite_temperature_c, ms_of_content,
    rate_parameter_of, rate_parameter_per_k, retained_austenite, stabilisation_k,
};
pub use measured_heat::{BarPoint, MeasuredHeat, MeasuredHeatError, measured_heat};
pub use rounds::{
    RoundError, bar_like_ideal_round_mm, bar_like_round_mm, ideal_round_like_bar_mm,
    round_like_bar_mm,
};
pub use shape::{FINISH, Progress, SPREAD, START, STEEP, Shape};
pub use turning::TurningPiece;

use crate::steel::Composition;

/// The austenite that leaves the furnace: what all transformation models take in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Austenite {
    /// What is dissolved in it, wt % of the austenite.
    pub composition: Composition,
    /// ASTM grain number.
    pub grain_astm: f64,
    /// Volume fraction of the whole piece that is undissolved carbide.
    pub undissolved_carbide_volume_fraction: f64,
}
