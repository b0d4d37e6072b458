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
type Row = [Option<[f64; 2]>; 6];

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

/// Factor of agitation on the heat transfer of the still bath: the ratio of the middles of the
/// two ranges.
#[must_use]
pub fn factor(row: &Row, agitation: Agitation) -> Option<f64> {
    let middle = |[least, most]: [f64; 2]| 0.5 * (least + most);
    let still = severity_per_in(row, Agitation::Still)?;
    Some(middle(severity_per_in(row, agitation)?) / middle(still))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The factors as the notes of the project round them.
    #[test]
    fn factors_of_agitation() {
        for (agitation, oil, water) in [
            (Agitation::Still, 1.0, 1.0),
            (Agitation::Mild, 1.2, 1.1),
            (Agitation::Moderate, 1.35, 1.3),
            (Agitation::Good, 1.6, 1.5),
            (Agitation::Strong, 2.2, 1.9),
        ] {
            approx::assert_abs_diff_eq!(factor(&OIL, agitation).unwrap(), oil, epsilon = 0.17);
            approx::assert_abs_diff_eq!(factor(&WATER, agitation).unwrap(), water, epsilon = 0.05);
        }
        assert_eq!(factor(&AIR, Agitation::Good), None);
    }
}
