//! Published constants: one file per publication, digits as printed, each with its citation,
//! validity and a transcription check. No algorithms.

pub mod astm_a255_hardness;
pub mod astm_e140;
pub mod eutectoid_isothermal;
pub mod hodge_orehoski_1946;
pub mod jimenez_melero_2013;
pub mod krauss_1999;
pub mod maynier_1978;
pub mod temper_embrittlement;
pub mod tempering_stages;
pub mod tool_steel_tempering;

/// How far a set of constants can be trusted to be what its source prints.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Read in the source itself or in an excerpt of it.
    Read,
    /// Recalled from memory and not yet compared with the printed source.
    FromMemory,
    /// Fitted by this project; the data and error are told in the file.
    FittedHere,
    /// A fact of the trade that everybody uses and nobody signs.
    CommonPractice,
}

/// A publication, a data set or a fit that numbers in this project come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Source {
    /// Short key, `author_year`, the name of the file.
    pub key: &'static str,
    /// Authors as printed.
    pub authors: &'static str,
    /// Year of publication.
    pub year: u16,
    /// Title of the publication.
    pub title: &'static str,
    /// Journal, volume, pages, or publisher.
    pub venue: &'static str,
    /// Digital object identifier or web address, where known.
    pub link: Option<&'static str>,
    /// What the numbers are used for here.
    pub used_for: &'static str,
    /// How the constants were obtained.
    pub standing: Standing,
}

/// Every source of the project.
pub const ALL: &[&Source] = &[
    &astm_a255_hardness::SOURCE,
    &astm_e140::SOURCE,
    &eutectoid_isothermal::SOURCE,
    &hodge_orehoski_1946::SOURCE,
    &jimenez_melero_2013::SOURCE,
    &krauss_1999::SOURCE,
    &maynier_1978::SOURCE,
    &temper_embrittlement::SOURCE,
    &tempering_stages::SOURCE,
    &tool_steel_tempering::SOURCE,
];
