//! Experiments: lessons on the live bench that predict first, then change the route, then explain, and
//! ask what the model answers. They are data, so that a teacher can write others.

mod class;
mod experiment;
mod link;
mod number;
mod read;
mod worded;

pub use class::{
    CLASS_NUMBERS, ClassOrder, ClassRow, Handed, LARGEST_CLASS_FILE_BYTES, MOST_CLASS_FILES,
    MOST_CLASS_ROUTES, class_csv, class_order, read_handed,
};
pub use experiment::{Experiment, Goal, Step};
pub use link::{
    EXPERIMENT_MARK, ExperimentLinkError, read_experiment_link, read_pasted, write_experiment_link,
};
pub use number::Number;
pub use read::{
    EXPERIMENT_FORMAT, EXPERIMENT_VERSION, ExperimentError, LARGEST_EXPERIMENT_BYTES,
    read_experiment,
};
pub use worded::text_on_scale;

/// The texts of the experiments that come with the project, in their order: read them with
/// [`read_experiment`].
pub const BUNDLED: [&str; 12] = [
    include_str!("../texts/experiments/01_why_heat_at_all.json"),
    include_str!("../texts/experiments/02_too_cold_too_hot.json"),
    include_str!("../texts/experiments/03_time_and_temperature.json"),
    include_str!("../texts/experiments/04_the_race_past_the_nose.json"),
    include_str!("../texts/experiments/05_section_size.json"),
    include_str!("../texts/experiments/06_thin_edges_forgive.json"),
    include_str!("../texts/experiments/07_the_last_austenite.json"),
    include_str!("../texts/experiments/08_trading_hardness.json"),
    include_str!("../texts/experiments/09_refining_the_grain.json"),
    include_str!("../texts/experiments/10_the_network.json"),
    include_str!("../texts/experiments/11_depth_of_hardness.json"),
    include_str!("../texts/experiments/12_measure_twice.json"),
];

#[cfg(test)]
mod tests;
