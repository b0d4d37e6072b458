//! Words of the room phases.
