//! Whether a quench is faster than needed, and what may crack or warp the piece in it. Places take numbers
//! to be opened, or words.

pub const FASTER_THAN_NEEDED: &str = "Faster than needed: it could be {factor} slower.";
pub const FASTER_THAN_NEEDED_NEXT_DOES: &str =
    "Faster than needed: it could be {factor} slower, and {next} would still do.";

pub const MAY_CRACK: &str = "What may crack or warp it: {reasons}.";
// Between the reasons, and before the last of them.
pub const COMMA: &str = ", ";
pub const AND: &str = " and ";

pub const HARSH_BATH: &str = "a harsh bath";
pub const MUCH_CARBON: &str = "{carbon} carbon in solution";
pub const LATE_MARTENSITE: &str = "martensite that begins as late as {ms}";
pub const UNEVEN: &str = "{apart} across the piece as it begins";
pub const THIN_EDGE: &str = "a cutting edge {ratio} times thinner than the spine";
pub const COARSE_GRAIN: &str = "coarse grain, {grain}";

pub const SNAP_AT_ONCE: &str =
    "Go on at once: the snap temper takes the worst of the stress before the cold.";
pub const SNAP_IF_COLD_WAITS: &str = "Go on at once: where the cold bath has to wait, an hour at {snap} first takes the worst of the stress, though the cold then finds less austenite to turn.";
pub const TEMPER_AT_ONCE: &str = "Temper at once: where that has to wait, an hour at {snap} takes the worst of the stress, and costs next to no hardness.";
