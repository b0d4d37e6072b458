//! Words of the room transform.
