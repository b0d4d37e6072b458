//! The parameters as text, for the page of sources.

use super::lattice::Structure;
use super::parameters::{ASSESSMENTS, FUNCTIONS, Kind, Term};
use recalesce_texts::phases as texts;

/// One parameter or function of the thermodynamic description.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct ParameterLine {
    /// The crystal structure that it belongs to; empty for functions.
    pub phase: String,
    /// Its name, such as `L(Cr,Fe:C;0)`.
    pub name: String,
    /// Its value in J/mol (`TC`: kelvin; `BMAGN`: Bohr magnetons) against temperature in kelvin.
    pub value: String,
    /// The assessment that it is from.
    pub assessment: &'static str,
}

/// Every function and parameter of the thermodynamic description, with its assessment.
#[must_use]
pub fn parameter_lines() -> Vec<ParameterLine> {
    let functions = FUNCTIONS.iter().flat_map(|function| {
        function
            .ranges
            .iter()
            .map(|(upper_k, terms)| ParameterLine {
                phase: String::new(),
                name: texts::function_up_to(&format!("{:?}", function.name), *upper_k),
                value: value(terms),
                assessment: publication(function.assessment),
            })
    });
    let parameters = Structure::ALL.into_iter().flat_map(|structure| {
        structure.parameters().iter().map(move |parameter| {
            let sites: Vec<String> = parameter
                .sites
                .iter()
                .map(|site| {
                    let names: Vec<String> = site.iter().map(|c| format!("{c:?}")).collect();
                    names.join(",")
                })
                .collect();
            let interaction = parameter.sites.iter().any(|site| site.len() > 1);
            let kind = match (parameter.kind, interaction) {
                (Kind::Energy, false) => "G",
                (Kind::Energy, true) => "L",
                (Kind::Ordering, _) => "TC",
                (Kind::Moment, _) => "BMAGN",
            };
            ParameterLine {
                phase: format!("{structure:?}"),
                name: format!("{kind}({};{})", sites.join(":"), parameter.order),
                value: value(parameter.terms),
                assessment: publication(parameter.assessment),
            }
        })
    });
    functions.chain(parameters).collect()
}

fn publication(code: &str) -> &'static str {
    let known = ASSESSMENTS.iter().find(|(known, _)| *known == code);
    known.map_or(texts::ASSESSMENT_NOT_KNOWN, |(_, publication)| *publication)
}

fn value(terms: &[Term]) -> String {
    let parts: Vec<String> = terms
        .iter()
        .map(|term| match term {
            Term::K(c) => format!("{c:+}"),
            Term::T(c) => format!("{c:+} T"),
            Term::TLnT(c) => format!("{c:+} T ln T"),
            Term::T2(c) => format!("{c:+} T^2"),
            Term::T3(c) => format!("{c:+} T^3"),
            Term::T4(c) => format!("{c:+} T^4"),
            Term::T7(c) => format!("{c:+} T^7"),
            Term::Inv1(c) => format!("{c:+} / T"),
            Term::Inv2(c) => format!("{c:+} / T^2"),
            Term::Inv3(c) => format!("{c:+} / T^3"),
            Term::Inv9(c) => format!("{c:+} / T^9"),
            Term::Of(name, c) => format!("{c:+} {name:?}"),
        })
        .collect();
    parts.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_parameter_reads_as_printed_with_its_publication() {
        let lines = parameter_lines();
        let line = lines
            .iter()
            .find(|l| l.phase == "Cementite" && l.name == "L(Cr,Fe:C;0)")
            .unwrap();
        assert_eq!(line.value, "+14586 -9.18 T");
        assert!(line.assessment.contains("Khvan"), "{}", line.assessment);
        assert!(lines.iter().all(|l| l.assessment != "not known"));
    }
}
