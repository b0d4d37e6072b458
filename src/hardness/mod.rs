//! Hardness: as quenched, of mixtures, after tempering; conversion between scales.
