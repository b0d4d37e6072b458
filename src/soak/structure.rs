//! The structure that the piece has before it is heated for hardening.

use serde::{Deserialize, Serialize};

/// Carbide form in the piece as it goes into the furnace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum StartingStructure {
    /// Round carbides in ferrite, as delivered by the mill for machining.
    #[default]
    Spheroidised,
    /// Pearlite lamellae from a slow cool.
    LamellarPearlite,
    /// Fine pearlite from an air cool after normalising.
    FinePearlite,
}
