//! The parts of the page, each a component that reads the state and computes nothing.

mod furnace;
mod hardenability;
pub(crate) mod header;
mod in_use;
pub(crate) mod opened;
pub(crate) mod outcome;
pub(crate) mod own;
mod own_coupon;
mod own_found;
mod own_work;
mod phase_table;
pub(crate) mod piece;
pub(crate) mod quench;
pub(crate) mod replay;
mod second_bath;
mod section;
pub(crate) mod shelf;
pub(crate) mod soak;
pub(crate) mod sources;
pub(crate) mod steel;
pub(crate) mod strip;
mod structures;
pub(crate) mod table;
pub(crate) mod temper;
mod temper_target;
