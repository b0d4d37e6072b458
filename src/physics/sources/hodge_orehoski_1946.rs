//! Hodge and Orehoski 1946: hardness of partly martensitic steel against carbon.
//!
//! The rows are the rounded table that handbooks print after it, recalled. Used is only where
//! between the half and the fully martensitic hardness each fraction lies.

use super::{Source, Standing};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "hodge_orehoski_1946",
    authors: "J. M. Hodge, M. A. Orehoski",
    year: 1946,
    title: "Relationship between hardenability and percentage martensite in some low-alloy steels",
    venue: "Transactions AIME 167, 627–642",
    link: None,
    used_for: "hardness between half and full martensite",
    standing: Standing::FromMemory,
};

/// `[carbon wt %, HRC at 50, 80, 90, 95, 99 % martensite]`.
pub const ROWS: [[f64; 6]; 6] = [
    [0.18, 31.0, 35.0, 37.5, 39.0, 43.0],
    [0.23, 34.0, 37.5, 40.5, 42.0, 46.0],
    [0.28, 36.5, 40.5, 43.0, 45.0, 49.0],
    [0.33, 39.0, 43.0, 46.5, 48.0, 52.0],
    [0.38, 42.0, 46.0, 49.0, 51.0, 54.0],
    [0.43, 44.0, 48.0, 51.0, 53.5, 57.0],
];

/// `[volume fraction of martensite, share of the way from half to full martensite hardness]`:
/// mean of the rows.
pub const SHARE: [[f64; 2]; 6] = [
    [0.50, 0.0],
    [0.80, 0.32],
    [0.90, 0.55],
    [0.95, 0.70],
    [0.99, 1.0],
    [1.00, 1.0],
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_the_mean_of_the_rows() {
        for (column, [_, share]) in SHARE.iter().enumerate().take(5) {
            let mean = ROWS
                .iter()
                .map(|row| (row[column + 1] - row[1]) / (row[5] - row[1]))
                .sum::<f64>()
                / ROWS.len() as f64;
            assert!((mean - share).abs() < 0.02, "{column}: {mean}");
        }
    }
}
