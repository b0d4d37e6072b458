//! Words of the room units.
