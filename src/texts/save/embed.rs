//! Charts that stand by themselves in other pages.

pub const ROUTE: &str = "Route";
pub const SOAK: &str = "Soak";
pub const QUENCH: &str = "Quench";
pub const TEMPER: &str = "Temper";
pub const PHASES: &str = "Phases";

/// Names charts as links do.
pub const NO_SUCH_CHART: &str =
    "It asks for a chart that there is none of: there are route, soak, quench, temper and phases.";
