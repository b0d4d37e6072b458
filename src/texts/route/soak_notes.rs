//! Beside the soak: heating up, overheating, the surface. Places take numbers to be opened, or words.

pub const HEATING_UP: &str = "Heats up in about {time}: take it out after {all}.";
pub const TOO_HOT: &str = "Too hot by {little}, {more} or {most}: grain ASTM\u{a0}{grain_little}, {grain_more} or {grain_most}.";
pub const TOO_HOT_COARSE: &str = "Too hot by {little}, {more} or {most}: grain ASTM\u{a0}{grain_little}, {grain_more} or {grain_most}: coarse, and brittle.";
pub const SURFACE_IN_AIR: &str = "In open air it loses carbon to {decarburised} deep: leave {stock} a side to grind, or keep the air off it.";
