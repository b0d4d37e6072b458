//! Where the heat-transfer curves of the list of media come from.

use super::{Source, Standing};

/// The fit.
pub const SOURCE: Source = Source {
    key: "quench_media",
    authors: "This project",
    year: 2026,
    title: "Heat-transfer curves of generic quench media, fitted to class figures of the probe and ball tests",
    venue: "src/physics/heat/media.csv; the class figures themselves are recalled from memory and not from measured curves",
    link: None,
    used_for: "heat transfer of every medium of the list",
    standing: Standing::FittedHere,
};
