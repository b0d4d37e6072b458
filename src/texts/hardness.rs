//! Words of the room hardness.
