//! How far a soak gets: carbon dissolved, carbide left, grain grown.

mod structure;

pub use structure::StartingStructure;
