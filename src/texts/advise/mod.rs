//! Words of the room advise: a file for each part of it.

pub use super::constituents::RETAINED_AUSTENITE;

pub mod coupon;
pub mod error;
pub mod find;
pub mod inputs;
pub mod learn;
pub mod sensitivity;
pub mod shop;
