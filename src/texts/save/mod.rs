//! Words of the room save.
