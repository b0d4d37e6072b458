//! Places of the piece.

/// At the head of a sentence.
pub mod at {
    pub const CENTRE: &str = "At the centre";
    pub const EDGE: &str = "At the cutting edge";
    pub const CORNER: &str = "At the corner";
    pub const QUARTER: &str = "A quarter up from the cutting edge";
    pub const MIDDLE: &str = "Half way up";
    pub const THREE_QUARTER: &str = "Three quarters up";
    pub const SPINE: &str = "At the core of the spine";
    pub const SURFACE: &str = "At the surface";
    pub const WITHIN: &str = "Inside";
    pub const SLOWEST: &str = "At the slowest place";
}

// On a chart, and in a table.
pub const CENTRE: &str = "centre";
pub const EDGE: &str = "cutting edge";
pub const CORNER: &str = "corner";
pub const QUARTER: &str = "quarter height";
pub const MIDDLE: &str = "mid height";
pub const THREE_QUARTER: &str = "three-quarter height";
pub const SPINE: &str = "spine core";
pub const SURFACE: &str = "surface";
pub const WITHIN: &str = "inside";
