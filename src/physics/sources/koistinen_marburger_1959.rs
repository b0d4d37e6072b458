//! Koistinen and Marburger 1959: martensite fraction below Ms.
//! Range: iron-carbon alloys of 0.37 to 1.1 wt % C.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "koistinen_marburger_1959",
    authors: "D. P. Koistinen, R. E. Marburger",
    year: 1959,
    title: "A general equation prescribing the extent of the austenite-martensite transformation \
            in pure iron-carbon alloys and plain carbon steels",
    venue: "Acta Metallurgica 7, 59–60",
    link: Some("https://doi.org/10.1016/0001-6160(59)90170-1"),
    used_for: "exponential law of the martensite fraction and half of its rate parameter",
    standing: Standing::FromMemory,
};

/// Rate parameter, 1/K: fraction left = exp(-rate x undercooling below Ms).
pub const RATE_PARAMETER_PER_K: f64 = 0.011;

#[cfg(test)]
mod tests {
    /// Half of the austenite is gone 63 K below Ms.
    #[test]
    fn half_temperature() {
        let left = (-super::RATE_PARAMETER_PER_K * 63.0_f64).exp();
        assert!((left - 0.5).abs() < 1e-3);
    }
}
