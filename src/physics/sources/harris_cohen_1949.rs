//! Harris and Cohen 1949: austenite left after a quench is stabilised by waiting at room
//! temperature before the cold step. Only the trend is theirs; the numbers are engineering values
//! recalled from memory for 0.6 to 0.8 wt % C in solution.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "harris_cohen_1949",
    authors: "W. J. Harris, M. Cohen",
    year: 1949,
    title: "Stabilization of the austenite-martensite transformation",
    venue: "Transactions of the AIME 180, 447–470",
    link: None,
    used_for: "what waiting, or a snap temper, before the cold treatment costs (trend)",
    standing: Standing::FromMemory,
};

/// Largest lag of the reaction for each wt % of carbon in solution above
/// [`CARBON_WITHOUT_LAG_WT`], K: 20 K at 0.6 and 40 K at 0.8 wt %.
pub const LARGEST_LAG_K_PER_WT: f64 = 100.0;
/// Carbon in solution up to which no lag is expected, wt %.
pub const CARBON_WITHOUT_LAG_WT: f64 = 0.4;
/// Upper bound of the lag, K.
pub const LARGEST_LAG_K: f64 = 40.0;
/// Time constant of the lag at [`REFERENCE_C`], s.
pub const TIME_CONSTANT_S: f64 = 3600.0;
/// Temperature of the time constant, °C.
pub const REFERENCE_C: f64 = 25.0;
/// The time constant falls by a factor e for each so many kelvin above the reference. The notes have
/// it "shorter at 60 to 150 °C" (from memory); a snap temper is counted by the same fall.
pub const E_FOLD_K: f64 = 40.0;
/// Exponent of time in the lag.
pub const TIME_EXPONENT: f64 = 0.5;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lag_at_the_recalled_carbon_contents() {
        let lag_k = |c: f64| LARGEST_LAG_K_PER_WT * (c - CARBON_WITHOUT_LAG_WT);
        assert!((lag_k(0.6) - 20.0).abs() < 1e-9);
        assert!((lag_k(0.8) - LARGEST_LAG_K).abs() < 1e-9);
    }
}
