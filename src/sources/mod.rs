//! Published constants: one file per publication, digits as printed, each with its citation,
//! validity and a transcription check. No algorithms.

pub mod agren_1979;
pub mod andrews_1965;
pub mod astm_e112;
pub mod bearing_card_1999;
pub mod callister_2007;
pub mod closed_form_2026;
pub mod grange_1961;
pub mod lee_2008;
pub mod molinder_1956;
pub mod paul_1994;
pub mod smith_1948;

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
#[rustfmt::skip]
pub const ALL: &[&Source] = &[
    &agren_1979::SOURCE,
    &andrews_1965::SOURCE,
    &astm_e112::SOURCE,
    &bearing_card_1999::SOURCE,
    &callister_2007::SOURCE,
    &closed_form_2026::SOURCE,
    &grange_1961::SOURCE,
    &lee_2008::SOURCE,
    &molinder_1956::SOURCE,
    &paul_1994::SOURCE,
    &smith_1948::SOURCE,
];
