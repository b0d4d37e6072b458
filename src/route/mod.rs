//! From a route to its outcome: the pipeline, the verdicts, the bands.

mod plan;

pub use plan::{Cold, Quench, Route, Soak, Target, Temper};
