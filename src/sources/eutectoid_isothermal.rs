//! Hardness of the isothermal products of eutectoid carbon steel, as its IT diagrams print it.
//!
//! Recalled rows. For pearlite that forms while cooling, each row is placed at the cooling rate at
//! 700 °C at which a eutectoid carbon steel's pearlite forms near that temperature (furnace
//! 0.01 K/s, air about 1 K/s: normalised 0.8 % carbon steel is about 300 HV, from memory).

use super::{Source, Standing};

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "eutectoid_isothermal",
    authors: "isothermal transformation diagrams of eutectoid carbon steel",
    year: 1977,
    title: "Atlas of isothermal transformation and cooling transformation diagrams",
    venue: "American Society for Metals",
    link: None,
    used_for: "hardness of pearlite and bainite at and above eutectoid carbon",
    standing: Standing::FromMemory,
};

/// `[temperature °C, HRC]` of pearlite by the temperature at which it forms.
pub const PEARLITE_HRC: [[f64; 2]; 3] = [[575.0, 40.0], [650.0, 27.5], [700.0, 17.5]];

/// `[temperature °C, HRC]` of bainite by the temperature at which it forms.
pub const BAINITE_HRC: [[f64; 2]; 3] = [[260.0, 58.0], [300.0, 54.0], [400.0, 42.0]];

/// `[log10 of the cooling rate at 700 °C in K/s, HV]` of pearlite formed on cooling.
pub const PEARLITE_HV_BY_RATE: [[f64; 2]; 4] =
    [[-2.0, 227.0], [0.0, 290.0], [1.0, 345.0], [1.6, 392.0]];

/// Least and greatest hardness of eutectoid bainite, HV: the rows at 400 and 260 °C.
pub const BAINITE_HV: (f64, f64) = (412.0, 653.0);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sources::astm_e140::HRC_HV;

    #[test]
    fn bainite_limits_are_its_end_rows() {
        assert!(HRC_HV.contains(&[BAINITE_HRC[0][1], BAINITE_HV.1]));
        assert!(HRC_HV.contains(&[BAINITE_HRC[2][1], BAINITE_HV.0]));
    }

    #[test]
    fn pearlite_by_rate_spans_the_isothermal_rows() {
        assert!(HRC_HV.contains(&[PEARLITE_HRC[0][1], PEARLITE_HV_BY_RATE[3][1]]));
        assert!(PEARLITE_HV_BY_RATE[0][1] < 238.0);
    }
}
