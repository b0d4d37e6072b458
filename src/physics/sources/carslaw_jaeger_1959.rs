//! Series for conduction with constant properties.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "carslaw_jaeger_1959",
    authors: "H. S. Carslaw, J. C. Jaeger",
    year: 1959,
    title: "Conduction of Heat in Solids",
    venue: "Oxford University Press, 2nd edition",
    link: None,
    used_for: "cooling of a cylinder with constant properties, behind the ideal diameter; the bar of the end-quench test; checks of the conduction solver",
    standing: Standing::FromMemory,
};

/// Fourier number at which the centre of a cylinder whose surface is held at the temperature of
/// the bath has lost half of its excess; computed from the series.
pub const HALF_TEMPERATURE_FOURIER_IDEAL: f64 = 0.200524;
