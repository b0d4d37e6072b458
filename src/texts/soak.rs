//! Words of the room soak.
