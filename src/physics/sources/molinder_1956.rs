//! Molinder 1956: how austenite forms and cementite dissolves in soft-annealed 1.27 % C steel.
//!
//! Read as abstract: when the last ferrite disappears, the austenite holds 0.55 to 0.60 wt % C at
//! every temperature tried; cementite then dissolves slowly.

use super::{Source, Standing};

/// The publication.
pub const SOURCE: Source = Source {
    key: "molinder_1956",
    authors: "G. Molinder",
    year: 1956,
    title: "A quantitative study of the formation of austenite and the solution of cementite at \
            different austenitizing temperatures for a 1.27% carbon steel",
    venue: "Acta Metallurgica 4",
    link: Some("https://doi.org/10.1016/0001-6160(56)90157-2"),
    used_for: "carbon in austenite when ferrite is gone and the soak begins",
    standing: Standing::Read,
};

/// Carbon in austenite when the last ferrite disappears, wt %: least and largest.
pub const CARBON_WITHOUT_FERRITE_WT: (f64, f64) = (0.55, 0.60);

/// That carbon as part of the eutectoid carbon of plain steel, 0.77 wt %.
pub const PART_OF_EUTECTOID: f64 = 0.75;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn part_lies_in_the_printed_range() {
        let carbon_wt = PART_OF_EUTECTOID * 0.77;
        let (least, most) = CARBON_WITHOUT_FERRITE_WT;
        assert!((least..=most).contains(&carbon_wt));
    }
}
