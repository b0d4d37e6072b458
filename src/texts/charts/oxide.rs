//! Oxide colours of bright steel as the shop calls them, and their short names along an axis.

pub const BRIGHT: &str = "bright";
pub const FAINTEST_STRAW: &str = "faintest straw";
pub const FAINT_STRAW: &str = "faint straw";
pub const LIGHT_STRAW: &str = "light straw";
pub const STRAW: &str = "straw";
pub const DARK_STRAW: &str = "dark straw";
pub const BROWN_STRAW: &str = "brown-straw";
pub const BROWN: &str = "brown";
pub const PURPLE_BROWN: &str = "purple-brown";
pub const PURPLE: &str = "purple";
pub const VIOLET_BLUE: &str = "violet-blue";
pub const DARK_BLUE: &str = "dark blue";
pub const BLUE: &str = "blue";
pub const LIGHT_BLUE: &str = "light blue";
pub const GREY_BLUE: &str = "grey-blue";
pub const GREY: &str = "grey";
