//! Heat transfer of a bath against the temperature of the surface.

use super::MediumError;
use crate::numeric::order::larger;

/// Allowed heat-transfer coefficients, W/m²K.
pub(super) const H_RANGE: [f64; 2] = [1.0, 200_000.0];
/// Allowed surface temperatures of a curve, °C.
pub(super) const SURFACE_RANGE: [f64; 2] = [-200.0, 1400.0];
/// Most points of a curve.
pub(super) const MOST_POINTS: usize = 500;

/// Heat-transfer coefficient against the temperature of the surface: its logarithm is linear
/// between the points and constant beyond them.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatTransfer {
    /// By rising temperature; the last has slope zero.
    knots: Vec<Knot>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Knot {
    temperature_c: f64,
    ln_h: f64,
    /// Slope of the logarithm towards the next knot, 1/K.
    slope: f64,
}

impl HeatTransfer {
    /// A curve through points of surface temperature, °C, and coefficient, W/m²K.
    ///
    /// # Errors
    /// Fewer than 2 or more than 500 points, temperatures that do not rise or lie outside -200 to
    /// 1400 °C, coefficients outside 1 to 200000 W/m²K.
    pub fn new(points: &[[f64; 2]]) -> Result<Self, MediumError> {
        if !(2..=MOST_POINTS).contains(&points.len()) {
            return Err(MediumError::Points {
                count: points.len(),
            });
        }
        let mut knots: Vec<Knot> = Vec::with_capacity(points.len());
        for (i, &[temperature_c, h_w_m2k]) in points.iter().enumerate() {
            let point = i + 1;
            if !within(temperature_c, SURFACE_RANGE) {
                return Err(MediumError::Surface {
                    point,
                    temperature_c,
                });
            }
            if !within(h_w_m2k, H_RANGE) {
                return Err(MediumError::HeatTransfer { point, h_w_m2k });
            }
            let ln_h = h_w_m2k.ln();
            if let Some(before) = knots.last_mut() {
                let width = temperature_c - before.temperature_c;
                // A step closer than this would make the slope meaningless.
                if width < 1e-3 {
                    return Err(MediumError::NotRising {
                        point,
                        temperature_c,
                    });
                }
                before.slope = (ln_h - before.ln_h) / width;
            }
            knots.push(Knot {
                temperature_c,
                ln_h,
                slope: 0.0,
            });
        }
        Ok(Self { knots })
    }

    /// The same coefficient at every temperature, W/m²K.
    pub(super) fn constant(h_w_m2k: f64) -> Self {
        Self {
            knots: vec![Knot {
                temperature_c: 0.0,
                ln_h: h_w_m2k.ln(),
                slope: 0.0,
            }],
        }
    }

    /// The curve times a factor.
    pub(super) fn times(&self, factor: f64) -> Self {
        let mut knots = self.knots.clone();
        for knot in &mut knots {
            knot.ln_h += factor.ln();
        }
        Self { knots }
    }

    /// The curve between this one and another, a share of the way by logarithms.
    pub(super) fn between(&self, other: &Self, share: f64) -> Self {
        let mut at_c: Vec<f64> = [self, other]
            .iter()
            .flat_map(|curve| curve.knots.iter().map(|knot| knot.temperature_c))
            .collect();
        at_c.sort_by(f64::total_cmp);
        at_c.dedup();
        let mut knots: Vec<Knot> = Vec::with_capacity(at_c.len());
        for temperature_c in at_c {
            let [here, there] = [self, other].map(|curve| curve.at(temperature_c).ln());
            let ln_h = (1.0 - share) * here + share * there;
            if let Some(before) = knots.last_mut() {
                before.slope = (ln_h - before.ln_h) / (temperature_c - before.temperature_c);
            }
            knots.push(Knot {
                temperature_c,
                ln_h,
                slope: 0.0,
            });
        }
        Self { knots }
    }

    /// Coefficient at a temperature of the surface, W/m²K.
    #[must_use]
    pub fn at(&self, surface_c: f64) -> f64 {
        self.with_slope(surface_c).0
    }

    /// The points of the curve: surface temperature, °C, and coefficient, W/m²K.
    pub fn points(&self) -> impl Iterator<Item = [f64; 2]> + '_ {
        self.knots.iter().map(|k| [k.temperature_c, k.ln_h.exp()])
    }

    /// Largest coefficient, W/m²K.
    pub(super) fn most_w_m2k(&self) -> f64 {
        self.points().fold(0.0, |most, [_, h]| larger(most, h))
    }

    /// Largest fall of the logarithm with temperature, 1/K; zero where it falls nowhere.
    pub(super) fn steepest_fall_per_k(&self) -> f64 {
        self.knots
            .iter()
            .fold(0.0, |most, knot| larger(most, -knot.slope))
    }

    /// Coefficient and its derivative, W/m²K and W/m²K².
    #[inline(always)]
    pub(super) fn with_slope(&self, surface_c: f64) -> (f64, f64) {
        let mut last: Option<&Knot> = None;
        for knot in &self.knots {
            if knot.temperature_c > surface_c {
                break;
            }
            last = Some(knot);
        }
        match (last, self.knots.first()) {
            (Some(knot), _) => {
                let h = (knot.ln_h + knot.slope * (surface_c - knot.temperature_c)).exp();
                (h, h * knot.slope)
            }
            (None, Some(first)) => (first.ln_h.exp(), 0.0),
            (None, None) => (0.0, 0.0),
        }
    }
}

pub(super) fn within(value: f64, [least, most]: [f64; 2]) -> bool {
    (least..=most).contains(&value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_logarithm_is_linear_between_points_and_constant_beyond() {
        let curve = HeatTransfer::new(&[[100.0, 200.0], [300.0, 800.0]]).unwrap();
        approx::assert_relative_eq!(curve.at(200.0), 400.0, max_relative = 1e-12);
        approx::assert_relative_eq!(curve.at(-50.0), 200.0, max_relative = 1e-12);
        approx::assert_relative_eq!(curve.at(900.0), 800.0, max_relative = 1e-12);
        let points: Vec<[f64; 2]> = curve.points().collect();
        approx::assert_relative_eq!(points[1][1], 800.0, max_relative = 1e-12);
    }
}
