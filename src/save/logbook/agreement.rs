//! How runs came out against what was predicted.

use super::Listed;

/// Measured minus predicted hardness over runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Agreement {
    /// Runs with both.
    pub runs: usize,
    /// Mean of the differences, HRC.
    pub mean_hrc: f64,
    /// Least difference, HRC.
    pub least_hrc: f64,
    /// Largest difference, HRC.
    pub most_hrc: f64,
    /// Runs measured inside their own band.
    pub inside_band: usize,
}

/// How the listed runs came out; none where none of them has both hardnesses.
#[must_use]
pub fn agreement(listed: &[Listed]) -> Option<Agreement> {
    let both = listed.iter().filter_map(|listed| {
        let compared = listed.compared?;
        Some((compared.difference_hrc()?, compared.is_inside()?))
    });
    let start = Agreement {
        runs: 0,
        mean_hrc: 0.0,
        least_hrc: f64::INFINITY,
        most_hrc: f64::NEG_INFINITY,
        inside_band: 0,
    };
    let mut all = both.fold(start, |all, (difference, is_inside)| Agreement {
        runs: all.runs + 1,
        mean_hrc: all.mean_hrc + difference,
        least_hrc: all.least_hrc.min(difference),
        most_hrc: all.most_hrc.max(difference),
        inside_band: all.inside_band + usize::from(is_inside),
    });
    all.mean_hrc /= all.runs as f64;
    (all.runs > 0).then_some(all)
}
