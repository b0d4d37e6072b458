//! Words of the room teach.
