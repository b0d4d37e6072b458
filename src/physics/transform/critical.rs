//! How slow a quench may be: critical cooling rates and the margin of a given curve.

use super::Austenite;
use super::along::{State, check_curve};
use super::kinetics::{Kinetics, Product};
use crate::numeric::roots::{Crossing, falling_root};
use crate::steel::OutOfRange;
use recalesce_texts::transform as texts;

/// The slowest cooling that still gives a wanted amount of martensite.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CriticalCooling {
    /// Rate at 700 °C of Newtonian cooling towards 20 °C, K/s.
    pub rate_k_per_s: f64,
    /// Constant rate that does the same, K/s.
    pub linear_rate_k_per_s: f64,
    /// Time allowed from A1 down to [`CriticalCooling::until_c`] along the Newtonian curve, s.
    pub allowed_s: f64,
    /// Temperature to which `allowed_s` counts, °C: the higher of Ms + 50 K and 300 °C.
    pub until_c: f64,
}

/// Distance of a cooling curve from the nose of the product that limits it.
///
/// The clock starts when the curve passes A1. At the nose temperature of the limiting product the
/// curve arrives after `arrival_s`; held there from the beginning, the product would start after
/// `start_s`. Cooling through the range is kinder than holding at the nose, so a quench is safe
/// with a positive gap and may still be good enough with a small negative one: the verdict comes
/// from [`super::Transformed`], the gap is what the chart shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NoseGap {
    /// The product that limits this curve.
    pub product: Product,
    /// Start less arrival, s: positive when the curve passes before the nose.
    pub gap_s: f64,
    /// Temperature of the nose, °C.
    pub nose_c: f64,
    /// Time of the cooling curve from A1 to the nose temperature, s.
    pub arrival_s: f64,
    /// Isothermal 1 % start time at the nose, s.
    pub start_s: f64,
}

/// Temperature of the quenching medium in the critical cooling, °C.
const BATH_C: f64 = 20.0;
/// Temperature at which rates are stated, °C.
const RATE_AT_C: f64 = 700.0;
/// Temperature change of a piece of a curve from which it is divided, K.
const LONG_PIECE_K: f64 = 20.0;
/// Step of the critical cooling paths, K.
const PATH_STEP_K: f64 = 12.0;
/// Factors on time between which the slowest is sought.
const SCALE_RANGE: (f64, f64) = (1e-5, 1e5);
/// Accuracy of the logarithm of the factor.
const LN_TOLERANCE: f64 = 1e-4;
/// Usual slope of [`spare_of`] over the logarithm of time.
const USUAL_SLOPE: f64 = -3.0;

/// How far the austenite left is from what is wanted, on the scale on which the logarithm of time
/// is nearly straight (Avrami's): zero where it is met, positive where more is left. Both are
/// fractions of the austenite, above 0 and below 1 for what is wanted.
#[must_use]
pub fn spare_of(left: f64, wanted: f64) -> f64 {
    (wanted.ln().abs() / left.ln().abs()).ln()
}

impl Kinetics {
    /// The state at the end of a curve when all times are multiplied.
    fn followed(&self, time_s: &[f64], temperature_c: &[f64], scale: f64) -> State {
        let mut state = self.unchanged();
        for (time, temperature) in time_s.windows(2).zip(temperature_c.windows(2)) {
            if let (&[t0, t1], &[c0, c1]) = (time, temperature) {
                let duration_s = (t1 - t0) * scale;
                // Long pieces matter only while ferrite lowers Ms on the way.
                if self.ferrite_limit() > 0.0 && (c1 - c0).abs() > LONG_PIECE_K {
                    self.advance(&mut state, c0, c1, duration_s);
                } else {
                    self.step(&mut state, c0, c1, duration_s);
                }
            }
        }
        state
    }

    /// Austenite left at ages of the products, for austenite that forms no ferrite.
    fn left_at_ages(&self, age: &[f64; 3]) -> f64 {
        self.products()
            .map(|product| 1.0 - self.shape(product).fraction(age[product.index()]))
            .product()
    }

    /// Martensite with the austenite it leaves, as a fraction of all but undissolved carbide, that
    /// a curve ending below Ms gives: the verdict alone, several times faster than
    /// [`Kinetics::along`].
    ///
    /// # Errors
    /// For columns that are not a curve.
    pub fn hardened(&self, time_s: &[f64], temperature_c: &[f64]) -> Result<f64, OutOfRange> {
        check_curve(time_s, temperature_c)?;
        Ok(self.followed(time_s, temperature_c, 1.0).left)
    }

    /// Largest factor on the times of a curve with which a martensite fraction (of all but
    /// undissolved carbide, retained austenite counted with it) is still reached: above 1 the
    /// quench could be slower, below 1 it is too slow. Kept within 1e-5 to 1e5.
    ///
    /// # Errors
    /// For columns that are not a curve, or a fraction outside 0.01 to 0.999.
    pub fn slowest_factor(
        &self,
        time_s: &[f64],
        temperature_c: &[f64],
        martensite_fraction: f64,
    ) -> Result<f64, OutOfRange> {
        check_curve(time_s, temperature_c)?;
        check_fraction(martensite_fraction)?;
        let unit = self.followed(time_s, temperature_c, 1.0);
        Ok(self.slowest_factor_of(&unit, time_s, temperature_c, martensite_fraction))
    }

    /// As [`Kinetics::slowest_factor`] and [`Kinetics::nose_gap`] together, in less time.
    ///
    /// # Errors
    /// As both.
    pub fn slowest_factor_and_nose(
        &self,
        time_s: &[f64],
        temperature_c: &[f64],
        martensite_fraction: f64,
    ) -> Result<(f64, Option<NoseGap>), OutOfRange> {
        check_curve(time_s, temperature_c)?;
        check_fraction(martensite_fraction)?;
        let unit = self.followed(time_s, temperature_c, 1.0);
        Ok((
            self.slowest_factor_of(&unit, time_s, temperature_c, martensite_fraction),
            self.nose_gap_of(&unit, time_s, temperature_c),
        ))
    }

    /// The largest factor, from the state at the end of the curve as it is.
    fn slowest_factor_of(
        &self,
        unit: &State,
        time_s: &[f64],
        temperature_c: &[f64],
        martensite_fraction: f64,
    ) -> f64 {
        // Without ferrite Ms stays, and every age is proportional to time.
        let spare = |ln_scale: f64| {
            let scale = ln_scale.exp();
            let left = if self.ferrite_limit() > 0.0 {
                self.followed(time_s, temperature_c, scale).left
            } else {
                self.left_at_ages(&unit.age.map(|age| age * scale))
            };
            Some(spare_of(left, martensite_fraction))
        };
        let (least, largest) = SCALE_RANGE;
        let range = (least.ln(), largest.ln());
        let crossing = falling_root(spare, 0.0, range, USUAL_SLOPE, LN_TOLERANCE);
        match crossing {
            Some(Crossing::At(ln_scale)) => ln_scale.exp().clamp(least, largest),
            Some(Crossing::Beyond) => largest,
            Some(Crossing::Before) | None => least,
        }
    }

    /// Smallest cooling rate that gives a martensite fraction (of all but undissolved carbide,
    /// retained austenite counted with it).
    ///
    /// # Errors
    /// For a fraction outside 0.01 to 0.999.
    pub fn critical_cooling(
        &self,
        martensite_fraction: f64,
    ) -> Result<CriticalCooling, OutOfRange> {
        check_fraction(martensite_fraction)?;
        let top_c = self.upper_limit_c().max(RATE_AT_C);
        let end_c = self.lowest_ms_c().max(BATH_C + 5.0);
        let count = ((top_c - end_c) / PATH_STEP_K).ceil().max(1.0) as usize;
        let temperature_c: Vec<f64> = (0..=count)
            .map(|i| top_c + (end_c - top_c) * (i as f64 / count as f64))
            .collect();
        // Unit time constant and unit rate; the factor on time scales both.
        let newtonian_s: Vec<f64> = temperature_c
            .iter()
            .map(|t| ((top_c - BATH_C) / (t - BATH_C)).ln())
            .collect();
        let linear_s: Vec<f64> = temperature_c.iter().map(|t| (top_c - t) / 100.0).collect();

        let time_constant_s =
            self.slowest_factor(&newtonian_s, &temperature_c, martensite_fraction)?;
        let linear = self.slowest_factor(&linear_s, &temperature_c, martensite_fraction)?;
        let until_c = (self.ms_c + 50.0).max(300.0);
        let allowed = ((self.ae1_c - BATH_C) / (until_c - BATH_C)).ln().max(0.0);
        Ok(CriticalCooling {
            rate_k_per_s: (RATE_AT_C - BATH_C) / time_constant_s,
            linear_rate_k_per_s: 100.0 / linear,
            allowed_s: time_constant_s * allowed,
            until_c,
        })
    }

    /// Distance of a curve from the nose of the product that limits it: the one with the largest
    /// additivity sum. None when the curve forms nothing or never reaches the nose temperature
    /// from above.
    ///
    /// # Errors
    /// For columns that are not a curve.
    pub fn nose_gap(
        &self,
        time_s: &[f64],
        temperature_c: &[f64],
    ) -> Result<Option<NoseGap>, OutOfRange> {
        check_curve(time_s, temperature_c)?;
        let unit = self.followed(time_s, temperature_c, 1.0);
        Ok(self.nose_gap_of(&unit, time_s, temperature_c))
    }

    /// The distance, from the state at the end of the curve.
    fn nose_gap_of(&self, state: &State, time_s: &[f64], temperature_c: &[f64]) -> Option<NoseGap> {
        let limiting = self
            .products()
            .filter(|product| state.age[product.index()] > 0.0)
            .max_by(|a, b| state.age[a.index()].total_cmp(&state.age[b.index()]));
        limiting.and_then(|product| {
            let (nose_c, start_s) = self.nose(product);
            let clock_s = first_pass(time_s, temperature_c, self.ae1_c)
                .or_else(|| time_s.first().copied())?;
            let arrival_s = first_pass(time_s, temperature_c, nose_c)? - clock_s;
            Some(NoseGap {
                product,
                gap_s: start_s - arrival_s,
                nose_c,
                arrival_s,
                start_s,
            })
        })
    }
}

/// Time at which a curve first falls through a temperature.
fn first_pass(time_s: &[f64], temperature_c: &[f64], level_c: f64) -> Option<f64> {
    let pairs = time_s.windows(2).zip(temperature_c.windows(2));
    for (time, temperature) in pairs {
        if let (&[t0, t1], &[c0, c1]) = (time, temperature)
            && c0 > level_c
            && c1 <= level_c
        {
            return Some(t0 + (t1 - t0) * (c0 - level_c) / (c0 - c1));
        }
    }
    None
}

fn check_fraction(martensite_fraction: f64) -> Result<(), OutOfRange> {
    OutOfRange::check(
        texts::CRITICAL_COOLING,
        texts::MARTENSITE_WANTED,
        texts::FRACTION,
        martensite_fraction,
        (0.01, 0.999),
    )
}

/// Smallest cooling rate that gives a martensite fraction in an austenite: see
/// [`Kinetics::critical_cooling`].
///
/// # Errors
/// Outside the range of the kinetics, or for a fraction outside 0.01 to 0.999.
pub fn critical_cooling(
    a: &Austenite,
    martensite_fraction: f64,
) -> Result<CriticalCooling, OutOfRange> {
    Kinetics::new(a)?.critical_cooling(martensite_fraction)
}
