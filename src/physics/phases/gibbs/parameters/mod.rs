//! The thermodynamic parameters as data: every value with the code of the assessment it is from.
//!
//! Repairs against the source file, each needed to keep stable sets right:
//! two unassessed Fe-Mo terms of M7C3 and three reciprocal Cr-Fe terms of M23C6 (which count
//! the mixing twice) are left out, Cr-Si in austenite is set to the values of ferrite (code
//! `FIX1`: a repair, not an assessment). Codes `23FRI` and `24FRI` are placeholders of the
//! source file's author, not assessed. Pressure terms and zero values are left out, and so is
//! `BMAGN(MN,MN:VA;1)` of austenite, which is zero by its form.

mod assessments;
mod austenite;
mod carbides;
mod ferrite;
mod functions;

pub(crate) use assessments::ASSESSMENTS;
pub(crate) use austenite::FCC_A1;
pub(crate) use carbides::{CEMENTITE, M6C, M7C3, M23C6};
pub(crate) use ferrite::BCC_A2;
pub(crate) use functions::FUNCTIONS;

/// What may sit on a lattice site, in the alphabetical order on which signs of interactions rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Component {
    /// Carbon.
    C,
    /// Chromium.
    Cr,
    /// Iron.
    Fe,
    /// Manganese.
    Mn,
    /// Molybdenum.
    Mo,
    /// Nickel.
    Ni,
    /// Silicon.
    Si,
    /// Vanadium.
    V,
    /// An empty site.
    Va,
    /// Tungsten.
    W,
}

/// Energy functions by the names of the source file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(clippy::upper_case_acronyms, reason = "names as printed in the source file")]
#[rustfmt::skip]
pub(crate) enum Name {
    GBCCMN, GHSERNI, GBCCNI, GHSERSI, GBCCSI, GCR23C6, GHSERCR, GFCCCR, GFCCFE, GFCCMN, GHSERMO,
    GFCCMO, GFCCSI, GHSERV, GFCCVV, GHSERW, GFCCW, GFE3C, GHSERCC, GFE23C6, GHSERFE, GHSERMN,
    GMN23C6, GNI23C6, GV23C6, LDF0MNNI, LDF1MNNI,
}

/// One addend of a temperature function: coefficient times a power of temperature in kelvin,
/// or times another function.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Term {
    /// Constant.
    K(f64),
    /// T.
    T(f64),
    /// T ln T.
    TLnT(f64),
    /// T².
    T2(f64),
    /// T³.
    T3(f64),
    /// T⁴.
    T4(f64),
    /// T⁷.
    T7(f64),
    /// 1/T.
    Inv1(f64),
    /// 1/T².
    Inv2(f64),
    /// 1/T³.
    Inv3(f64),
    /// 1/T⁹.
    Inv9(f64),
    /// A multiple of another function.
    Of(Name, f64),
}

/// A function of temperature in ranges, each valid up to its temperature in kelvin.
#[derive(Debug)]
pub(crate) struct Function {
    /// Name in the source file.
    pub(crate) name: Name,
    /// Upper end of each range, K, with its terms.
    pub(crate) ranges: &'static [(f64, &'static [Term])],
    /// Code of the assessment.
    pub(crate) assessment: &'static str,
}

/// What a parameter adds to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Gibbs energy, J per mole of formula units: end-member or interaction.
    Energy,
    /// Magnetic ordering temperature, K.
    Ordering,
    /// Magnetic moment, Bohr magnetons.
    Moment,
}

/// One parameter of a phase.
#[derive(Debug)]
pub(crate) struct Parameter {
    /// What it adds to.
    pub(crate) kind: Kind,
    /// The interacting constituents of each sublattice.
    pub(crate) sites: &'static [&'static [Component]],
    /// Order of the interaction.
    pub(crate) order: usize,
    /// Value against temperature.
    pub(crate) terms: &'static [Term],
    /// Code of the assessment.
    pub(crate) assessment: &'static str,
}

type Sites = &'static [&'static [Component]];
type Terms = &'static [Term];

const fn parameter(
    kind: Kind,
    sites: Sites,
    order: usize,
    terms: Terms,
    code: &'static str,
) -> Parameter {
    Parameter {
        kind,
        sites,
        order,
        terms,
        assessment: code,
    }
}

const fn g(sites: Sites, order: usize, terms: Terms, code: &'static str) -> Parameter {
    parameter(Kind::Energy, sites, order, terms, code)
}

const fn tc(sites: Sites, order: usize, terms: Terms, code: &'static str) -> Parameter {
    parameter(Kind::Ordering, sites, order, terms, code)
}

const fn bm(sites: Sites, order: usize, terms: Terms, code: &'static str) -> Parameter {
    parameter(Kind::Moment, sites, order, terms, code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn functions_stand_at_the_place_their_name_says_and_refer_backwards() {
        for (place, function) in FUNCTIONS.iter().enumerate() {
            assert_eq!(function.name as usize, place);
            for term in function.ranges.iter().flat_map(|(_, terms)| *terms) {
                if let Term::Of(name, _) = term {
                    assert!((*name as usize) < place);
                }
            }
        }
    }

    #[test]
    fn every_parameter_names_a_known_assessment_and_alphabetical_constituents() {
        for parameter in [FCC_A1, BCC_A2, CEMENTITE, M7C3, M23C6, M6C]
            .into_iter()
            .flatten()
        {
            assert!(
                ASSESSMENTS
                    .iter()
                    .any(|(code, _)| *code == parameter.assessment)
            );
            for site in parameter.sites {
                assert!(site.is_sorted(), "{parameter:?}");
            }
        }
        for function in FUNCTIONS {
            assert!(
                ASSESSMENTS
                    .iter()
                    .any(|(code, _)| *code == function.assessment)
            );
        }
    }

    /// Products are collected in one pass over the list.
    #[test]
    fn orders_of_one_product_follow_one_another() {
        for parameters in [FCC_A1, BCC_A2, CEMENTITE, M7C3, M23C6, M6C] {
            for kind in [Kind::Energy, Kind::Ordering, Kind::Moment] {
                let mut sites: Vec<Sites> = parameters
                    .iter()
                    .filter(|p| p.kind == kind)
                    .map(|p| p.sites)
                    .collect();
                sites.dedup();
                for (place, key) in sites.iter().enumerate() {
                    assert!(!sites[..place].contains(key), "{kind:?} {key:?}");
                }
            }
        }
    }
}
