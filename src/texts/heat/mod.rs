//! Words of the room heat: quenchants, what may go wrong with them, and quenches that are none.

pub mod cautions;
pub mod media;
pub mod own;
pub mod quench;
