//! Temperature scales, lengths and durations: parsing and formatting. No physics.
