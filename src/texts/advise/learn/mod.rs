//! Words of what a logbook teaches.

pub mod learnt;
pub mod left_out;
pub mod logged;
pub mod next;
pub mod set_point;
pub mod unknown;
