//! Words of the room steel.
