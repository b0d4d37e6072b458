//! How more of something acts on wear, edge and toughness, and from which difference on it counts.

/// How more of something acts on wear, edge and toughness: 1 for, -1 against, 0 not told.
#[derive(Clone, Copy)]
pub(super) struct Acts(pub(super) [i8; 3]);

pub(super) const HARDNESS: Acts = Acts([1, 1, -1]);
pub(super) const CARBIDE: Acts = Acts([1, -1, -1]);
/// Large carbides are not lifted out by grit, but break out of a thin edge and start cracks.
pub(super) const COARSE_CARBIDE: Acts = Acts([1, -1, -1]);
pub(super) const HARD_CARBIDE: Acts = Acts([1, 0, 0]);
/// Retained austenite is soft under an edge; it stretches where martensite would crack.
pub(super) const AUSTENITE: Acts = Acts([0, -1, 1]);
/// The same for ranking, where it is left out of toughness: how much of it helps before it turns to
/// fresh martensite under load is not known.
pub(super) const AUSTENITE_RANKED: Acts = Acts([0, -1, 0]);
pub(super) const SOFT: Acts = Acts([-1, -1, 0]);
pub(super) const PLATES: Acts = Acts([0, -1, -1]);
pub(super) const FINER_GRAIN: Acts = Acts([0, 1, 1]);
pub(super) const EMBRITTLED: Acts = Acts([0, 0, -1]);
pub(super) const TEMPERED: Acts = Acts([0, 1, 1]);

/// Differences from which something counts.
pub(super) const COUNTS_HRC: f64 = 1.0;
pub(super) const COUNTS_CARBIDE: f64 = 0.015;
/// Radius of carbide that is no coarser than the finest that counts, µm (expert value).
pub(super) const FINEST_UM: f64 = 0.1;
/// Least carbide whose size and hardness count, and the ratio of sizes that does.
pub(super) const LEAST_CARBIDE: f64 = 0.01;
pub(super) const COUNTS_SIZE_FACTOR: f64 = 1.3;
pub(super) const COUNTS_AUSTENITE: f64 = 0.03;
pub(super) const COUNTS_SOFT: f64 = 0.05;
pub(super) const COUNTS_CARBON_WT: f64 = 0.03;
pub(super) const COUNTS_GRAIN: f64 = 0.7;
