//! Words of the room sources.
