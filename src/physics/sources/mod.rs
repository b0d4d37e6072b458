//! Published constants: one file per publication, digits as printed, each with its citation,
//! validity and a transcription check. No algorithms.

pub mod agren_1979;
pub mod ams_2750f_2020;
pub mod andrews_1965;
pub mod annealed_fit;
pub mod astm_a255;
pub mod astm_a255_cooling_rates;
pub mod astm_a255_hardness;
pub mod astm_e112;
pub mod astm_e140;
pub mod bearing_card_1999;
pub mod beck_1985;
pub mod bipm_2019;
pub mod callister_2007;
pub mod carbide_hardness;
pub mod carslaw_jaeger_1959;
pub mod cie_1931;
pub mod dividing_factor_fit;
pub mod en_1993_1_2_2005;
pub mod eutectoid_isothermal;
pub mod frichtl_2024;
pub mod golub_1979;
pub mod grange_1961;
pub mod grossmann_1964;
pub mod hagel_1956;
pub mod harris_cohen_1949;
pub mod hodge_orehoski_1946;
pub mod holland_welsch_1977;
pub mod iec_1999;
pub mod iec_60584_2013;
pub mod ishigami_homma_1990;
pub mod isothermal_fit;
pub mod jansen_1999;
pub mod jcgm_2008;
pub mod jimenez_melero_2013;
pub mod kirkaldy_venugopalan_1984;
pub mod koistinen_marburger_1959;
pub mod krauss_1999;
pub mod lee_2008;
pub mod lee_park_2013;
pub mod li_1998;
pub mod maynier_1978;
pub mod molinder_1956;
pub mod n06600_data_sheet;
pub mod normalised_bars;
pub mod paidassi_1958;
pub mod paul_1994;
pub mod pearson_1967;
pub mod pickering_1978;
pub mod pilling_bedworth_1923;
pub mod quench_media;
pub mod saltelli_2010;
pub mod saltelli_sobol_1995;
pub mod sandu_1997;
pub mod score;
pub mod simsir_gur_2008;
pub mod smith_1948;
pub mod takeuchi_brimacombe_1985;
pub mod temper_embrittlement;
pub mod tempering_stages;
pub mod tool_steel_tempering;
pub mod van_bohemen_2012;
pub mod zener_1949;

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

/// Error of a fit of this project on data that was left out of it: everything was fitted again, from
/// the same start, without each heat or steel in turn. The test `fits` does it anew.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LeftOut {
    /// What was left out together: "heat", "steel".
    pub fold: &'static str,
    /// How many of them there are.
    pub folds: usize,
    /// Mean error in its unit, or the factor (rms) within which predictions lie where that is "factor".
    pub error: f64,
    /// HRC, HV, grain numbers, or "factor".
    pub unit: &'static str,
}

impl LeftOut {
    /// For the page: whose fit it is, and its error.
    #[must_use]
    pub fn words(&self) -> String {
        let Self {
            fold,
            folds,
            error,
            unit,
        } = self;
        let error = if *unit == "factor" {
            format!("within a factor of {error:.1} (rms)")
        } else if *error < 10.0 {
            format!("mean error {error:.1} {unit}")
        } else {
            format!("mean error {error:.0} {unit}")
        };
        format!(
            "fitted by this project; {error} with each of {folds} {fold}s left out of the fit in turn"
        )
    }
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

/// Every fit of this project to what it predicts: its source, the quantity, and its error on what was left
/// out of it.
pub const FITS: &[(&Source, &str, &LeftOut)] = &[
    (&annealed_fit::SOURCE, "hardness", &annealed_fit::LEFT_OUT),
    (
        &bearing_card_1999::SOURCE,
        "grain",
        &bearing_card_1999::LEFT_OUT,
    ),
    (
        &dividing_factor_fit::SOURCE,
        "hardness along the bar",
        &dividing_factor_fit::LEFT_OUT,
    ),
    (
        &isothermal_fit::SOURCE,
        "time of the nose",
        &isothermal_fit::NOSES_LEFT_OUT,
    ),
    (
        &isothermal_fit::SOURCE,
        "end-quench rate for half martensite",
        &isothermal_fit::HALF_RATES_LEFT_OUT,
    ),
    (
        &tempering_stages::SOURCE,
        "hardness after 30 min to 4 h",
        &tempering_stages::LEFT_OUT,
    ),
];

/// Every source of the project.
pub const ALL: &[&Source] = &[
    &agren_1979::SOURCE,
    &ams_2750f_2020::SOURCE,
    &andrews_1965::SOURCE,
    &annealed_fit::SOURCE,
    &astm_a255::SOURCE,
    &astm_a255_cooling_rates::SOURCE,
    &astm_a255_hardness::SOURCE,
    &astm_e112::SOURCE,
    &astm_e140::SOURCE,
    &bearing_card_1999::SOURCE,
    &beck_1985::SOURCE,
    &bipm_2019::SOURCE,
    &callister_2007::SOURCE,
    &carbide_hardness::SOURCE,
    &carslaw_jaeger_1959::SOURCE,
    &cie_1931::SOURCE,
    &dividing_factor_fit::SOURCE,
    &en_1993_1_2_2005::SOURCE,
    &eutectoid_isothermal::SOURCE,
    &frichtl_2024::SOURCE,
    &golub_1979::SOURCE,
    &grange_1961::SOURCE,
    &grossmann_1964::SOURCE,
    &hagel_1956::SOURCE,
    &harris_cohen_1949::SOURCE,
    &hodge_orehoski_1946::SOURCE,
    &holland_welsch_1977::SOURCE,
    &iec_1999::SOURCE,
    &iec_60584_2013::SOURCE,
    &ishigami_homma_1990::SOURCE,
    &isothermal_fit::SOURCE,
    &jansen_1999::SOURCE,
    &jcgm_2008::SOURCE,
    &jimenez_melero_2013::SOURCE,
    &kirkaldy_venugopalan_1984::SOURCE,
    &koistinen_marburger_1959::SOURCE,
    &krauss_1999::SOURCE,
    &lee_2008::SOURCE,
    &lee_park_2013::SOURCE,
    &li_1998::SOURCE,
    &maynier_1978::SOURCE,
    &molinder_1956::SOURCE,
    &n06600_data_sheet::SOURCE,
    &normalised_bars::SOURCE,
    &paidassi_1958::SOURCE,
    &paul_1994::SOURCE,
    &pearson_1967::SOURCE,
    &pickering_1978::SOURCE,
    &pilling_bedworth_1923::SOURCE,
    &quench_media::SOURCE,
    &saltelli_2010::SOURCE,
    &saltelli_sobol_1995::SOURCE,
    &sandu_1997::SOURCE,
    &simsir_gur_2008::SOURCE,
    &smith_1948::SOURCE,
    &takeuchi_brimacombe_1985::SOURCE,
    &temper_embrittlement::SOURCE,
    &tempering_stages::SOURCE,
    &tool_steel_tempering::SOURCE,
    &van_bohemen_2012::SOURCE,
    &zener_1949::SOURCE,
];
