//! The thermodynamic description of the phases of steel.

use super::{Source, Standing};

/// The source. Its values, with their licence and the code of the assessment that each is from,
/// are in the tables of the phases room.
pub const SOURCE: Source = Source {
    key: "frichtl_2024",
    authors: "M. Frichtl, from published assessments",
    year: 2024,
    title: "mf-steel.tdb of LibreCalphad, commit ccd18dab, subset with repairs",
    venue: "MIT licence, Copyright (c) 2024 Matthew Frichtl",
    link: Some("https://github.com/mfrichtl/librecalphad"),
    used_for: "Gibbs energies of austenite, ferrite, cementite, M7C3, M23C6, M6C and MC",
    standing: Standing::Read,
};
