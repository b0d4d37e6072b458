//! Words of the room heat.
