//! Words of the room advise.
