//! Tempering tables of tool steels and hardenable stainless steels that the fitted law does not cover, as supplier sheets print
//! them. Facts read in the sheets; between the points the project interpolates, for other times it
//! shifts along the Hollomon-Jaffe parameter T (20 + log t), t in h. Two grades without a sheet of
//! their own borrow the fall of a kindred one, with a wider band.

use super::{Source, Standing};
use crate::steel::{CompositionRange, Element};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "tool_steel_tempering",
    authors: "supplier data sheets of A2, D2, S7, 420 and 440C; X65Cr13 and X50CrMoV15 by their fall",
    year: 2024,
    title: "Hardness against tempering temperature of tool steels and stainless steels",
    venue: "supplier data sheets, read in excerpts",
    link: None,
    used_for: "tempered hardness of A2, D2, S7, 420, 440C, X65Cr13 and X50CrMoV15",
    standing: Standing::Read,
};

/// Constant of the Hollomon-Jaffe parameter with time in h: the shop's form (recalled).
pub const HOLLOMON_JAFFE_HOURS: f64 = 20.0;

/// Tempering table of one grade, hardened as its sheet says.
#[derive(Debug, Clone, Copy)]
pub struct GradeTable {
    /// AISI designation.
    pub grade: &'static str,
    /// The compositions for which the table is used.
    pub range: CompositionRange,
    /// Time of all tempers together, h.
    pub time_h: f64,
    /// `[temperature °C, HRC]`, rising temperature.
    pub points: &'static [[f64; 2]],
    /// Half width of its band, HRC.
    pub band_hrc: f64,
    /// What else the source says.
    pub remark: &'static str,
}

impl GradeTable {
    /// What is known of its error.
    #[must_use]
    pub fn error_words(&self) -> &'static str {
        if self.points.len() == 2 {
            "two points of the sheet alone and straight between them, within an estimated 5 HRC: secondary hardening near 500 °C is not in it"
        } else if self.band_hrc > OWN_SHEET_HRC {
            "no sheet of this grade: it falls as a kindred one, within an estimated 4 HRC"
        } else {
            "two sheets of one grade differ by up to 3 HRC"
        }
    }
}

/// Half width of the band of a grade's own sheet, HRC: two sheets of one grade differ by up to 3.
const OWN_SHEET_HRC: f64 = 3.0;
/// The same where the fall is that of a kindred grade, HRC: an estimate, above what a grade's own sheet
/// leaves open.
const KINDRED_HRC: f64 = 4.0;

/// The same where a sheet has two points far apart, HRC: other sheets have some 4 above the line between them,
/// where the steel hardens once more (from memory; own judgement).
const TWO_POINTS_HRC: f64 = 5.0;

/// The tables.
pub const TABLES: [GradeTable; 7] = [
    GradeTable {
        grade: "A2",
        range: CompositionRange {
            model: "Tempering table of A2",
            limits_wt: &[
                (Element::C, 0.90, 1.10),
                (Element::Mn, 0.3, 1.1),
                (Element::Si, 0.0, 0.6),
                (Element::Cr, 4.5, 5.6),
                (Element::Mo, 0.8, 1.5),
                (Element::V, 0.1, 0.6),
                (Element::W, 0.0, 0.3),
            ],
        },
        time_h: 4.0,
        points: &[
            [150.0, 62.0],
            [205.0, 61.0],
            [260.0, 60.0],
            [315.0, 59.0],
            [370.0, 58.0],
            [425.0, 58.0],
            [480.0, 58.0],
            [540.0, 57.0],
            [595.0, 51.0],
        ],
        band_hrc: OWN_SHEET_HRC,
        remark: "970 °C, air, two tempers of 2 h; as quenched 64. Another sheet has 56 from 315 to 540 °C and 50 at 595 °C",
    },
    GradeTable {
        grade: "S7",
        range: CompositionRange {
            model: "Tempering table of S7",
            limits_wt: &[
                (Element::C, 0.43, 0.58),
                (Element::Mn, 0.2, 0.9),
                (Element::Si, 0.0, 1.0),
                (Element::Cr, 2.9, 3.6),
                (Element::Mo, 1.2, 1.9),
                (Element::V, 0.0, 0.36),
                (Element::W, 0.0, 0.3),
            ],
        },
        time_h: 2.0,
        points: &[
            [149.0, 59.0],
            [204.0, 57.0],
            [260.0, 55.0],
            [316.0, 54.0],
            [371.0, 53.0],
            [427.0, 53.0],
            [482.0, 52.0],
            [538.0, 51.0],
            [593.0, 47.0],
        ],
        band_hrc: OWN_SHEET_HRC,
        remark: "970 °C, air, one temper of about 2 h; as quenched 59",
    },
    GradeTable {
        grade: "D2",
        range: CompositionRange {
            model: "Tempering table of D2",
            limits_wt: &[
                (Element::C, 1.35, 1.65),
                (Element::Mn, 0.1, 0.7),
                (Element::Si, 0.0, 0.7),
                (Element::Cr, 10.5, 13.0),
                (Element::Mo, 0.6, 1.3),
                (Element::V, 0.4, 1.2),
                (Element::W, 0.0, 0.6),
            ],
        },
        time_h: 2.0,
        points: &[[205.0, 61.0], [540.0, 54.0]],
        band_hrc: TWO_POINTS_HRC,
        remark: "two points only, time not printed and taken as 2 h",
    },
    GradeTable {
        grade: "420",
        range: CompositionRange {
            model: "Tempering table of 420",
            limits_wt: &[
                (Element::C, 0.36, 0.50),
                (Element::Mn, 0.0, 1.0),
                (Element::Si, 0.0, 1.0),
                (Element::Ni, 0.0, 0.75),
                (Element::Cr, 12.0, 14.5),
                (Element::Mo, 0.0, 0.3),
                (Element::V, 0.0, 0.1),
                (Element::W, 0.0, 0.1),
            ],
        },
        time_h: 2.0,
        points: &[
            [100.0, 56.0],
            [200.0, 55.0],
            [300.0, 52.0],
            [400.0, 51.0],
            [500.0, 52.0],
            [600.0, 42.0],
        ],
        band_hrc: OWN_SHEET_HRC,
        remark: "X46Cr13 with 0.46 % C, 980 to 1030 °C, oil or air; as quenched 56; time not printed and taken as 2 h. A sheet of 4Cr13 from 1050 °C has 57 at 200 °C, 55 at 300, 54 at 400, 50 at 500 and 40 at 600; one of type 420 with less than 0.40 % C 48 at 204 °C",
    },
    GradeTable {
        grade: "440C",
        range: CompositionRange {
            model: "Tempering table of 440C",
            limits_wt: &[
                (Element::C, 0.95, 1.20),
                (Element::Mn, 0.0, 1.0),
                (Element::Si, 0.0, 1.0),
                (Element::Ni, 0.0, 0.75),
                (Element::Cr, 16.0, 18.0),
                (Element::Mo, 0.0, 0.8),
                (Element::V, 0.0, 0.2),
                (Element::W, 0.0, 0.1),
            ],
        },
        time_h: 1.0,
        points: &[
            [149.0, 60.0],
            [204.0, 59.0],
            [260.0, 57.0],
            [316.0, 56.0],
            [371.0, 56.0],
            [427.0, 56.0],
        ],
        band_hrc: OWN_SHEET_HRC,
        remark: "round of 25 mm, 1038 °C, oil, one temper of 1 h. Another sheet has the same from 204 to 371 °C",
    },
    // No sheet of how the next two temper was read. Their hardness as quenched less the fall of X46Cr13, with
    // which the fall of 440C agrees within 1 HRC from 150 to 400 °C: between 0.46 and 1.05 % carbon and
    // 13 and 17 % chromium it does not follow the grade. Higher, molybdenum and vanadium count.
    GradeTable {
        grade: "X65Cr13",
        range: CompositionRange {
            model: "Tempering of X65Cr13, after X46Cr13",
            limits_wt: &[
                (Element::C, 0.56, 0.72),
                (Element::Mn, 0.0, 1.0),
                (Element::Si, 0.0, 1.0),
                (Element::Ni, 0.0, 0.75),
                (Element::Cr, 12.0, 14.5),
                (Element::Mo, 0.0, 0.3),
                (Element::V, 0.0, 0.1),
                (Element::W, 0.0, 0.1),
            ],
        },
        time_h: 2.0,
        points: &[[100.0, 60.0], [200.0, 59.0], [300.0, 56.0], [400.0, 55.0]],
        band_hrc: KINDRED_HRC,
        remark: "60 as quenched by its own sheet, less the fall of X46Cr13",
    },
    GradeTable {
        grade: "X50CrMoV15",
        range: CompositionRange {
            model: "Tempering of X50CrMoV15, after X46Cr13",
            limits_wt: &[
                (Element::C, 0.43, 0.57),
                (Element::Mn, 0.0, 1.0),
                (Element::Si, 0.0, 1.0),
                (Element::Ni, 0.0, 0.75),
                (Element::Cr, 13.5, 15.5),
                (Element::Mo, 0.4, 0.9),
                (Element::V, 0.05, 0.25),
                (Element::W, 0.0, 0.1),
            ],
        },
        time_h: 2.0,
        points: &[[100.0, 57.0], [200.0, 56.0], [300.0, 53.0], [400.0, 52.0]],
        band_hrc: KINDRED_HRC,
        remark: "56 to 58 as quenched, from memory, less the fall of X46Cr13",
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    /// What is lent to kindred grades: from 150 to 400 °C, the sheets of X46Cr13 and of 440C fall alike.
    #[test]
    fn stainless_sheets_fall_alike() {
        let hrc = |grade: &str, temperature_c: f64| {
            let mut tables = TABLES.iter().filter(|table| table.grade == grade);
            let points = tables.next().map(|table| table.points).unwrap_or_default();
            crate::numeric::interpolate::pchip(points, temperature_c).unwrap()
        };
        for temperature_c in [150.0, 204.0, 260.0, 316.0, 371.0, 400.0] {
            let fall = |grade: &str| hrc(grade, 150.0) - hrc(grade, temperature_c);
            assert!((fall("420") - fall("440C")).abs() < 1.0, "{temperature_c}");
            for kindred in ["X65Cr13", "X50CrMoV15"] {
                assert!(
                    (fall("420") - fall(kindred)).abs() < 0.5,
                    "{kindred} {temperature_c}"
                );
            }
        }
    }

    /// But for the secondary hardening of chromium steel near 500 °C.
    #[test]
    fn tables_fall_with_rising_temperature() {
        for table in TABLES {
            for pair in table.points.windows(2) {
                assert!(
                    pair[0][0] < pair[1][0] && (pair[0][1] >= pair[1][1] || pair[1][0] == 500.0),
                    "{}",
                    table.grade
                );
            }
        }
    }
}
