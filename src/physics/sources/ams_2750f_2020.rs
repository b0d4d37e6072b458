//! Uniformity classes of furnaces.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "ams_2750f_2020",
    authors: "SAE",
    year: 2020,
    title: "AMS 2750F, Pyrometry",
    venue: "SAE International; as listed in an article on temperature uniformity surveys",
    link: None,
    used_for: "how far apart two places of a furnace may be",
    standing: Standing::Read,
};

/// Uniformity of the classes 1 to 6, K either way.
pub const UNIFORMITY_K: [f64; 6] = [3.0, 6.0, 8.0, 10.0, 14.0, 28.0];
