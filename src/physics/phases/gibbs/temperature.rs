//! Values of the temperature functions, compiled to plain coefficient lists.

use super::parameters::{FUNCTIONS, Term};

/// Powers of temperature that occur.
const POWERS: usize = 11;

/// Temperature powers and function values at one temperature.
#[derive(Debug, Clone)]
pub(crate) struct AtTemperature {
    /// Temperature, K.
    pub(crate) kelvin: f64,
    powers: [f64; POWERS],
    functions: [f64; FUNCTIONS.len()],
}

impl AtTemperature {
    /// Evaluates all functions at a temperature in kelvin.
    pub(crate) fn new(kelvin: f64) -> Self {
        let inverse = 1.0 / kelvin;
        let t2 = kelvin * kelvin;
        let t4 = t2 * t2;
        let inverse3 = inverse * inverse * inverse;
        let mut at = Self {
            kelvin,
            powers: [
                1.0,
                kelvin,
                kelvin * kelvin.ln(),
                t2,
                t2 * kelvin,
                t4,
                t4 * t2 * kelvin,
                inverse,
                inverse * inverse,
                inverse3,
                inverse3 * inverse3 * inverse3,
            ],
            functions: [0.0; FUNCTIONS.len()],
        };
        for (place, function) in FUNCTIONS.iter().enumerate() {
            let terms = function
                .ranges
                .iter()
                .find(|(upper_k, _)| kelvin < *upper_k)
                .or(function.ranges.last())
                .map_or(&[][..], |(_, terms)| *terms);
            at.functions[place] = at.sum(terms);
        }
        at
    }

    /// Sum of a parameter's terms.
    pub(crate) fn sum(&self, terms: &[Term]) -> f64 {
        terms.iter().map(|term| self.value(*term)).sum()
    }

    fn value(&self, term: Term) -> f64 {
        let (power, coefficient) = match term {
            Term::K(c) => (0, c),
            Term::T(c) => (1, c),
            Term::TLnT(c) => (2, c),
            Term::T2(c) => (3, c),
            Term::T3(c) => (4, c),
            Term::T4(c) => (5, c),
            Term::T7(c) => (6, c),
            Term::Inv1(c) => (7, c),
            Term::Inv2(c) => (8, c),
            Term::Inv3(c) => (9, c),
            Term::Inv9(c) => (10, c),
            Term::Of(name, c) => return c * self.functions[name as usize],
        };
        coefficient * self.powers[power]
    }
}

#[cfg(test)]
mod tests {
    use super::super::parameters::Name;
    use super::*;

    /// Dinsdale 1991: iron is 912 °C from body-centred to face-centred, without magnetism the
    /// lattice stabilities differ by the printed polynomials.
    #[test]
    fn function_is_the_sum_of_its_printed_terms() {
        let at = AtTemperature::new(1000.0);
        let expected = 1225.7 + 124.134 * 1000.0
            - 23.5143 * 1000.0 * 1000.0_f64.ln()
            - 4.39752e-3 * 1e6
            - 0.058927e-6 * 1e9
            + 77359.0 / 1000.0;
        approx::assert_relative_eq!(
            at.functions[Name::GHSERFE as usize],
            expected,
            epsilon = 1e-9
        );
    }
}
