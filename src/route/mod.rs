//! From a route to its outcome: the pipeline, the verdicts, the bands.

mod plan;
mod validate;

pub use plan::{Cold, Quench, Route, Soak, Target, Temper};
pub use validate::{LONGEST_STEP_H, LONGEST_TEXT, MOST_TEMPERS, RouteFieldError, validate};
