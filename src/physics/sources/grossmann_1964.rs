//! Severity of quench: words for agitation against Grossmann's H.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "grossmann_1964",
    authors: "M. A. Grossmann, E. C. Bain",
    year: 1964,
    title: "Principles of Heat Treatment",
    venue: "American Society for Metals, 5th edition",
    link: None,
    used_for: "severity of quench H of oil, water, brine and air by agitation; factor of agitation on heat transfer",
    standing: Standing::FromMemory,
};

/// How the bath is moved; the words are not quantified in the source.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Agitation {
    /// Neither bath nor piece moves.
    Still,
    /// Mild.
    Mild,
    /// Moderate.
    Moderate,
    /// Good.
    Good,
    /// Strong.
    Strong,
    /// Violent.
    Violent,
}

/// Range of severity H, 1/in, by rising agitation, still to violent; none where the table is
/// empty.
pub type Row = [Option<[f64; 2]>; 6];

/// Oil.
pub const OIL: Row = [
    Some([0.25, 0.30]),
    Some([0.30, 0.35]),
    Some([0.35, 0.40]),
    Some([0.40, 0.50]),
    Some([0.50, 0.80]),
    Some([0.80, 1.10]),
];
/// Water.
pub const WATER: Row = [
    Some([0.9, 1.0]),
    Some([1.0, 1.1]),
    Some([1.2, 1.3]),
    Some([1.4, 1.5]),
    Some([1.6, 2.0]),
    Some([4.0, 4.0]),
];
/// Brine.
pub const BRINE: Row = [
    Some([2.0, 2.0]),
    Some([2.0, 2.2]),
    None,
    None,
    None,
    Some([5.0, 5.0]),
];
/// Air.
pub const AIR: Row = [Some([0.02, 0.02]), None, None, None, None, None];

/// Range of severity H, 1/in, in one row of the table.
#[must_use]
pub fn severity_per_in(row: &Row, agitation: Agitation) -> Option<[f64; 2]> {
    row.get(agitation as usize).copied().flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Water at 1.8 m/s in a draft tube measured H = 1.45 (abstract of a conference paper, read):
    /// a good stir in the words of the table.
    #[test]
    fn a_measured_severity_falls_under_a_good_stir() {
        let [least, most] = severity_per_in(&WATER, Agitation::Good).unwrap();
        assert!((least..=most).contains(&1.45));
        assert_eq!(severity_per_in(&AIR, Agitation::Good), None);
    }

    #[test]
    fn severity_rises_with_agitation() {
        for row in [OIL, WATER, BRINE] {
            let given: Vec<[f64; 2]> = row.into_iter().flatten().collect();
            assert!(given.windows(2).all(|pair| pair[0][1] <= pair[1][1]));
        }
    }
}
