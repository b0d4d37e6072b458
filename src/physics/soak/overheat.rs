//! What grain comes from overheating: the same soak in a furnace that is too hot.

use super::{SoakError, Stock};

/// Overheating that is told, K: a furnace at the end of its band, one with a wrong thermocouple,
/// and a forge judged by colour.
pub const OVERHEATS_K: [f64; 3] = [30.0, 60.0, 100.0];

/// Grain after a soak that was too hot.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct GrainAt {
    /// How much too hot, K.
    pub over_k: f64,
    /// Temperature of the piece, °C.
    pub temperature_c: f64,
    /// Grain as mean intercept, µm.
    pub grain_um: f64,
    /// ASTM grain number.
    pub grain_astm: f64,
    /// Volume fraction of carbide left, which holds the grain.
    pub carbide_volume_fraction: f64,
}

/// The grain from a soak of `time_s` seconds that was [`OVERHEATS_K`] hotter than
/// `temperature_c`, from the least to the most. Never finer than at `temperature_c`.
///
/// Uncertainty: one ASTM number for bearing steel, by its producer's card; more for others. Steel
/// made fine-grained with aluminium or niobium stays finer than told until that dissolves.
///
/// # Errors
/// As [`super::soak`], of any of the three temperatures: none may be above 1250 °C.
pub fn overheated(
    stock: &Stock,
    temperature_c: f64,
    time_s: f64,
) -> Result<[GrainAt; 3], SoakError> {
    let at = |over_k: f64| {
        let temperature_c = temperature_c + over_k;
        let end = stock.at(temperature_c)?.end(time_s)?;
        Ok::<_, SoakError>(GrainAt {
            over_k,
            temperature_c,
            grain_um: end.grain_um,
            grain_astm: end.point.grain_astm,
            carbide_volume_fraction: end.point.carbide_volume_fraction,
        })
    };
    let [least, middle, most] = OVERHEATS_K;
    Ok([at(least)?, at(middle)?, at(most)?])
}
