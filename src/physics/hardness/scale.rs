//! Hardness scales and the conversion between them.

use crate::numeric::interpolate::{pchip, pchip_inverse};
use crate::sources::astm_e140::{BELOW_SCALE_HRC_HV, HRB_HV, HRC_HBW, HRC_HV};
use crate::steel::OutOfRange;
use crate::units::NumberOutside;
use recalesce_texts::hardness as texts;
use serde::{Deserialize, Serialize};

/// A hardness scale.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Scale {
    /// Rockwell C.
    Hrc,
    /// Vickers, kgf/mm².
    Hv,
    /// Rockwell B, for steel too soft for the C scale.
    Hrb,
    /// Brinell with a 10 mm carbide ball at 3000 kgf.
    Hbw,
}

impl Scale {
    /// Symbol of the scale.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Hrc => "HRC",
            Self::Hrb => "HRB",
            Self::Hv => "HV",
            Self::Hbw => "HBW",
        }
    }

    /// Values for which the conversion table of the standard has entries.
    #[must_use]
    pub const fn limits(self) -> (f64, f64) {
        match self {
            Self::Hrc => (20.0, 68.0),
            Self::Hrb => (55.0, 100.0),
            Self::Hv => (238.0, 940.0),
            Self::Hbw => (226.0, 739.0),
        }
    }
}

const MODEL: &str = texts::CONVERSION;

/// The same hardness on another scale, by ASTM E140 Table 1 with a monotone cubic between rows.
///
/// Valid 20 to 68 HRC, 238 to 940 HV, 226 to 739 HBW, and between 55 to 100 HRB and 100 to 240 HV;
/// there and back again is exact.
///
/// # Errors
/// A value outside the table on either scale, or not a number.
pub fn convert(from: Scale, value: f64, to: Scale) -> Result<f64, OutOfRange> {
    let outside = |(least, most): (f64, f64)| OutOfRange {
        model: MODEL,
        number: NumberOutside {
            field: texts::HARDNESS,
            value,
            least,
            most,
            unit: from.symbol(),
        },
    };
    let (least, largest) = from.limits();
    match (from, to) {
        (Scale::Hrb, Scale::Hrb) if (least..=largest).contains(&value) => return Ok(value),
        (Scale::Hrb, _) => {
            let hv = pchip(&HRB_HV, value).ok_or_else(|| outside(from.limits()))?;
            return if to == Scale::Hv {
                Ok(hv)
            } else {
                convert(Scale::Hv, hv, to)
            };
        }
        (Scale::Hv, Scale::Hrb) => {
            let of_hrb = (HRB_HV[0][1], HRB_HV[HRB_HV.len() - 1][1]);
            return pchip_inverse(&HRB_HV, value).ok_or_else(|| outside(of_hrb));
        }
        (_, Scale::Hrb) => return convert(Scale::Hv, convert(from, value, Scale::Hv)?, to),
        _ => {}
    }
    if !(least..=largest).contains(&value) {
        return Err(outside(from.limits()));
    }
    let hrc = match from {
        Scale::Hrc | Scale::Hrb => Some(value),
        Scale::Hv => pchip_inverse(&HRC_HV, value),
        Scale::Hbw => pchip_inverse(&HRC_HBW, value),
    }
    .ok_or_else(|| outside(from.limits()))?;
    match to {
        Scale::Hrc | Scale::Hrb => Some(hrc),
        Scale::Hv => pchip(&HRC_HV, hrc),
        Scale::Hbw => pchip(&HRC_HBW, hrc),
    }
    .ok_or_else(|| {
        // Of the targets only Brinell ends early, at 65 HRC.
        let most = convert(to, to.limits().1, from).unwrap_or(largest);
        outside((least, most))
    })
}

/// A hardness. Held in Vickers, the one scale that is defined from soft to hard.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
pub struct Hardness {
    /// Vickers hardness, kgf/mm².
    pub hv: f64,
}

/// Vickers hardness below which nothing hardened falls: spheroidised carbon steel.
const SOFTEST_HV: f64 = BELOW_SCALE_HRC_HV[0][1];

impl Hardness {
    /// HRC where the scale is defined: none below 20 HRC and above 68 HRC.
    #[must_use]
    pub fn hrc(self) -> Option<f64> {
        pchip_inverse(&HRC_HV, self.hv)
    }

    /// HRB where the table has it: 100 to 240 HV.
    #[must_use]
    pub fn hrb(self) -> Option<f64> {
        pchip_inverse(&HRB_HV, self.hv)
    }

    /// HBW where the table has it: 226 to 739.
    #[must_use]
    pub fn hbw(self) -> Option<f64> {
        pchip(&HRC_HBW, self.hrc()?)
    }

    /// HRC carried on below the scale by the bracketed numbers of older tables, down to 0 HRC for
    /// 160 HV and less; held at 68 HRC above 940 HV. For charts and comparisons, not for a report:
    /// below 20 the scale is not defined.
    #[must_use]
    pub fn hrc_carried(self) -> f64 {
        if self.hv >= HRC_HV[0][1] {
            return pchip_inverse(&HRC_HV, self.hv.min(Scale::Hv.limits().1)).unwrap_or(68.0);
        }
        pchip_inverse(&BELOW_SCALE_HRC_HV, self.hv.max(SOFTEST_HV)).unwrap_or(0.0)
    }

    /// The hardness of an HRC number, carried on below 20 HRC as in [`Self::hrc_carried`]; numbers
    /// below 0 and above 68 HRC are held there.
    #[must_use]
    pub fn from_hrc_carried(hrc: f64) -> Self {
        let hv = if hrc >= 20.0 {
            pchip(&HRC_HV, hrc.min(68.0))
        } else {
            pchip(&BELOW_SCALE_HRC_HV, hrc.max(0.0))
        };
        Self {
            hv: hv.unwrap_or(SOFTEST_HV),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn there_and_back_is_exact() {
        for i in 0..=480 {
            let hrc = 20.0 + 0.1 * f64::from(i);
            for scale in [Scale::Hv, Scale::Hbw] {
                if let Ok(value) = convert(Scale::Hrc, hrc.min(68.0), scale) {
                    let back = convert(scale, value, Scale::Hrc).unwrap();
                    assert_relative_eq!(back, hrc.min(68.0), epsilon = 1e-9);
                }
            }
        }
    }

    #[test]
    fn soft_steel_is_told_on_the_b_scale() {
        assert_eq!(convert(Scale::Hrb, 90.0, Scale::Hv), Ok(185.0));
        assert_relative_eq!(
            convert(Scale::Hv, 185.0, Scale::Hrb).unwrap(),
            90.0,
            epsilon = 1e-9
        );
        let refusal = convert(Scale::Hv, 300.0, Scale::Hrb).unwrap_err();
        assert_eq!((refusal.number.least, refusal.number.most), (100.0, 240.0));
        // Softer than the C scale has numbers for, and harder than the B scale.
        assert!(convert(Scale::Hrb, 90.0, Scale::Hrc).is_err());
        assert!(convert(Scale::Hrc, 30.0, Scale::Hrb).is_err());
        assert!(convert(Scale::Hrb, 101.0, Scale::Hv).is_err());
        assert!(
            Hardness { hv: 150.0 }
                .hrb()
                .is_some_and(|hrb| (hrb - 80.0).abs() < 1e-9)
        );
    }

    #[test]
    fn brinell_ends_at_65_hrc() {
        let refusal = convert(Scale::Hrc, 66.0, Scale::Hbw).unwrap_err();
        assert_relative_eq!(refusal.number.most, 65.0, epsilon = 1e-9);
        assert_eq!(convert(Scale::Hrc, 65.0, Scale::Hbw), Ok(739.0));
    }

    #[test]
    fn outside_the_table_is_refused_with_its_limits() {
        for (scale, value) in [
            (Scale::Hrc, 19.9),
            (Scale::Hrc, 68.1),
            (Scale::Hv, 237.0),
            (Scale::Hbw, 740.0),
            (Scale::Hv, f64::NAN),
        ] {
            let refusal = convert(scale, value, Scale::Hrc).unwrap_err();
            let number = refusal.number;
            assert_eq!((number.least, number.most), scale.limits());
        }
    }

    #[test]
    fn hrc_is_carried_on_without_a_step() {
        let mut last = -1.0;
        for i in 0..8000 {
            let hrc = Hardness {
                hv: 160.0 + 0.1 * f64::from(i),
            }
            .hrc_carried();
            assert!(hrc > last && hrc - last < 2.0 || hrc == 68.0);
            last = hrc;
        }
        for hrc in [0.0, 7.3, 19.999, 20.0, 45.5, 68.0] {
            assert_relative_eq!(
                Hardness::from_hrc_carried(hrc).hrc_carried(),
                hrc,
                epsilon = 1e-9
            );
        }
    }
}
