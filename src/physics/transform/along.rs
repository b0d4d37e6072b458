//! Additivity: what forms along any curve of temperature against time.
//!
//! Each product ages by `dt / t(1 %)`; at an age it has reached the fraction of its own shape.
//! The austenite left is the product of what each would leave alone, so that all compete for the
//! same austenite; each step's loss is shared in proportion to what each took. The ages come from
//! the integral of the rate over temperature and are exact on straight paths; paths are divided
//! only to share the loss. The carbon that ferrite rejects lowers Ms of what is left; it is not
//! let into the rate of bainite, so that a slower cooling never leaves more austenite. Bainite is
//! taken to keep its carbon as carbide: austenite enriched by bainite without carbide, in steel with
//! 1.5 % silicon and more, is not modelled, and no check row tells how much of it is left.
//!
//! Carbide on the grain boundaries takes carbon but next to no austenite, so it stands outside the
//! sharing: it grows until pearlite or bainite begins, which takes the boundaries, and leaves the
//! austenite leaner, with a higher Ms. The rates stay those of the whole: where the films grow thick
//! pearlite ends the cooling long before bainite could.

use super::fractions::{Fractions, HistoryPoint, Transformed};
use super::kinetics::{Kinetics, Product, enriched};
use super::shape::START;
use super::{Austenite, Formed, FormedProduct};
use crate::numeric::order::{larger, smaller};
use crate::soak::BoundaryCarbide;
use crate::steel::OutOfRange;
use recalesce_texts::transform as texts;

/// Largest temperature change of a step, K.
const STEP_K: f64 = 6.0;
/// Largest gain of age in a step, as a part of the age of completion.
const STEP_AGE: f64 = 0.04;
/// Most steps between two given points.
const MOST_STEPS: usize = 256;
/// Most points of a curve.
const MOST_POINTS: f64 = 1e6;

/// Ages and fractions of the austenite (not of the piece) on the way.
#[derive(Debug, Clone, Copy)]
pub(super) struct State {
    /// Ages in multiples of the 1 % start time, by [`Product::index`].
    pub(super) age: [f64; 3],
    /// Fractions formed.
    pub(super) formed: [f64; 3],
    /// Each part formed times the temperature at which it did, °C.
    formed_c: [f64; 3],
    /// Austenite not yet turned by diffusion.
    pub(super) left: f64,
    /// What each product leaves alone.
    leaves: [f64; 3],
    /// Start of martensite of what is left, °C.
    pub(super) ms_c: f64,
    /// Coldest temperature so far, °C.
    coldest_c: f64,
    /// Half thickness of the films of carbide on the grain boundaries, µm.
    film_half_um: f64,
    /// Their volume fraction, and the carbon of the austenite beside them, wt %.
    film: f64,
    carbon_wt: f64,
}

impl Kinetics {
    pub(super) const fn unchanged(&self) -> State {
        State {
            age: [0.0; 3],
            formed: [0.0; 3],
            formed_c: [0.0; 3],
            left: 1.0,
            leaves: [1.0; 3],
            ms_c: self.ms_c,
            coldest_c: f64::INFINITY,
            film_half_um: 0.0,
            film: 0.0,
            carbon_wt: self.austenite.composition.c,
        }
    }

    /// Growth of films on a straight piece of a path, until 1 % of a product has formed.
    fn grow_films(&self, state: &mut State, middle_c: f64, duration_s: f64) {
        let Some(films) = self.films() else { return };
        if state.left < 1.0 - START || state.coldest_c < state.ms_c {
            return;
        }
        state.film_half_um = films.grown_um(state.film_half_um, middle_c, duration_s);
        state.film = films.carbide(state.film_half_um).volume_fraction;
        if state.film > 0.0 {
            (state.ms_c, state.carbon_wt) = self.beside_films(state.film);
        }
    }

    /// One straight piece of a path, in as many steps as it needs.
    pub(super) fn advance(&self, state: &mut State, from_c: f64, to_c: f64, duration_s: f64) {
        let low = smaller(from_c, to_c);
        let high = larger(from_c, to_c);
        if duration_s <= 0.0 || low >= self.first_forming_c() || high <= state.ms_c {
            state.coldest_c = smaller(state.coldest_c, low);
            return;
        }
        let mut steps = ((high - low) / STEP_K).ceil().max(1.0);
        for product in self.products() {
            let age = self
                .table(product)
                .age(from_c, to_c, duration_s, state.ms_c);
            let part = age / self.shape(product).complete_age();
            steps = larger(steps, (smaller(part, 1.0) / STEP_AGE).ceil());
        }
        let steps = (steps as usize).clamp(1, MOST_STEPS);
        let share = 1.0 / steps as f64;
        let mut from = from_c;
        for step in 1..=steps {
            let to = from_c + (to_c - from_c) * (step as f64 * share);
            self.grow_films(state, 0.5 * (from + to), duration_s * share);
            self.step(state, from, to, duration_s * share);
            from = to;
        }
    }

    /// One straight piece of a path undivided: right for the austenite left, coarse for the
    /// shares.
    pub(super) fn step(&self, state: &mut State, from_c: f64, to_c: f64, duration_s: f64) {
        // Once martensite has begun, what a warmer bath would make of the rest is left out: the
        // ages belong to all of the austenite.
        let has_begun = state.coldest_c < state.ms_c;
        state.coldest_c = smaller(state.coldest_c, smaller(from_c, to_c));
        if has_begun {
            return;
        }
        let before = state.leaves;
        let floor_c = state.ms_c;
        for product in self.products() {
            let i = product.index();
            let gain = self.rates[i].age(from_c, to_c, duration_s, floor_c);
            if gain > 0.0 {
                state.age[i] += gain;
                let part = self.shape(product).fraction(state.age[i]);
                state.leaves[i] = if product == Product::Ferrite {
                    state.ms_c = self.remaining_ms_c(part);
                    1.0 - self.ferrite_limit * part
                } else {
                    1.0 - part
                };
            }
        }
        let left: f64 = state.leaves.iter().product();
        let loss = state.left - left;
        if loss <= 0.0 {
            return;
        }
        // Shares by the logarithm of what each leaves, to second order.
        let mut shares = [0.0; 3];
        let mut sum = 0.0;
        for (share, (old, new)) in shares.iter_mut().zip(before.iter().zip(state.leaves)) {
            *share = (old - new) / larger(old + new, f64::MIN_POSITIVE);
            sum += *share;
        }
        if sum > 0.0 {
            let middle_c = 0.5 * (from_c + to_c);
            let sums = state.formed.iter_mut().zip(&mut state.formed_c);
            for ((formed, formed_c), share) in sums.zip(shares) {
                let part = loss * share / sum;
                *formed += part;
                *formed_c += part * middle_c;
            }
        }
        state.left = left;
    }

    /// Fractions of the piece in a state whose coldest temperature so far is given.
    fn fractions(&self, state: &State, coldest_c: f64) -> Fractions {
        let left = self.austenite.undissolved_carbide_volume_fraction;
        let matrix = (1.0 - left) * (1.0 - state.film);
        let below_k = larger(0.0, state.ms_c - coldest_c);
        let turned = -(-self.rate_parameter_per_k * below_k).exp_m1();
        let [ferrite, pearlite, bainite] = state.formed.map(|formed| matrix * formed);
        let martensite = matrix * state.left * turned;
        Fractions {
            ferrite,
            pearlite,
            bainite,
            martensite,
            austenite: larger(0.0, matrix - ferrite - pearlite - bainite - martensite),
            carbide: left + (1.0 - left) * state.film,
        }
    }

    /// How pearlite and bainite formed in a state.
    fn formed(&self, state: &State) -> Formed {
        let product = |product: Product, carbon_wt| {
            let [part, sum_c] = [&state.formed, &state.formed_c].map(|x| x[product.index()]);
            (part > 0.0).then(|| FormedProduct {
                temperature_c: sum_c / part,
                carbon_wt,
            })
        };
        let carbon_wt = state.carbon_wt;
        let [ferrite, ..] = state.formed;
        Formed {
            pearlite: product(Product::Pearlite, enriched(carbon_wt, ferrite)),
            // As in the kinetics, what ferrite rejects is not let into bainite.
            bainite: product(Product::Bainite, carbon_wt),
        }
    }

    /// What forms along a curve of temperature (°C) against time (s), straight between its
    /// points. The curve ends where the quench ends.
    ///
    /// # Errors
    /// When the two columns differ in length, hold fewer than two points, a value that is not a
    /// number, or a time that runs backwards.
    pub fn along(&self, time_s: &[f64], temperature_c: &[f64]) -> Result<Transformed, OutOfRange> {
        check_curve(time_s, temperature_c)?;
        let mut state = self.unchanged();
        let mut coldest_c = f64::INFINITY;
        let mut last: Option<(f64, f64)> = None;
        let mut history = Vec::with_capacity(time_s.len());
        for (&time, &temperature) in time_s.iter().zip(temperature_c) {
            if let Some((before_s, before_c)) = last {
                self.advance(&mut state, before_c, temperature, time - before_s);
            }
            last = Some((time, temperature));
            coldest_c = smaller(coldest_c, temperature);
            history.push(HistoryPoint {
                time_s: time,
                temperature_c: temperature,
                fractions: self.fractions(&state, coldest_c),
            });
        }
        let limiting = self
            .products()
            .map(|product| (product, state.age[product.index()]))
            .filter(|(_, age)| *age > 0.0)
            .max_by(|a, b| a.1.total_cmp(&b.1));
        Ok(Transformed {
            fractions: self.fractions(&state, coldest_c),
            formed: self.formed(&state),
            ms_c: state.ms_c,
            boundary_carbide: BoundaryCarbide {
                volume_fraction: state.film,
                half_thickness_um: state.film_half_um,
            },
            ages: state.age,
            additivity: limiting.map_or(0.0, |(_, age)| age),
            limiting: limiting.map(|(product, _)| product),
            history,
        })
    }
}

/// Checks that two columns are a curve.
pub(super) fn check_curve(time_s: &[f64], temperature_c: &[f64]) -> Result<(), OutOfRange> {
    const MODEL: &str = texts::ALONG_A_COOLING;
    let refuse =
        |quantity, unit, value, range| OutOfRange::check(MODEL, quantity, unit, value, range);
    refuse(
        texts::POINTS_OF_CURVE,
        "",
        time_s.len() as f64,
        (2.0, MOST_POINTS),
    )?;
    let points = time_s.len() as f64;
    refuse(
        texts::TEMPERATURES_OF_CURVE,
        "",
        temperature_c.len() as f64,
        (points, points),
    )?;
    let mut before_s = f64::MIN;
    for (&time, &temperature) in time_s.iter().zip(temperature_c) {
        refuse(texts::TIME, "s", time, (before_s, 1e12))?;
        refuse(texts::TEMPERATURE, "°C", temperature, (-273.15, 2000.0))?;
        before_s = time;
    }
    Ok(())
}

/// What forms in an austenite along one curve: see [`Kinetics::along`].
///
/// # Errors
/// Outside the range of the kinetics, or for columns that are not a curve.
pub fn along(
    a: &Austenite,
    time_s: &[f64],
    temperature_c: &[f64],
) -> Result<Transformed, OutOfRange> {
    Kinetics::new(a)?.along(time_s, temperature_c)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steel::Composition;
    use crate::transform::martensite::ms_of;

    fn bearing() -> Austenite {
        Austenite {
            composition: Composition {
                c: 0.69,
                mn: 0.36,
                si: 0.25,
                cr: 1.1,
                ..Composition::default()
            },
            grain_astm: 9.0,
            undissolved_carbide_volume_fraction: 0.05,
        }
    }

    /// At constant temperature the additivity sum is 1 when the start curve is reached, and the
    /// fraction then is that of the start.
    #[test]
    fn a_hold_until_the_start_curve_forms_one_per_cent() -> Result<(), OutOfRange> {
        let kinetics = Kinetics::new(&bearing())?;
        let start_s = kinetics.start_s(Product::Bainite, 350.0);
        let held = kinetics.along(&[0.0, start_s], &[350.0, 350.0])?;
        assert!((held.additivity - 1.0).abs() < 1e-9);
        assert!((held.fractions.bainite / 0.95 - 0.01).abs() < 1e-3);
        Ok(())
    }

    /// The rate tables integrate what they tabulate: many small isothermal steps agree with one
    /// straight fall.
    #[test]
    fn one_fall_is_the_sum_of_small_holds() -> Result<(), OutOfRange> {
        let kinetics = Kinetics::new(&bearing())?;
        for product in [Product::Pearlite, Product::Bainite] {
            let n = 20_000;
            let (from_c, to_c, duration_s) = (750.0, 260.0, 3.0);
            let sum: f64 = (0..n)
                .map(|i| {
                    let part = (f64::from(i) + 0.5) / f64::from(n);
                    let start_s = kinetics.start_s(product, from_c + (to_c - from_c) * part);
                    duration_s / f64::from(n) / start_s
                })
                .sum();
            let age = kinetics.table(product).age(from_c, to_c, duration_s, 0.0);
            assert!((age / sum - 1.0).abs() < 1e-5, "{product:?} {age} {sum}");
        }
        Ok(())
    }

    #[test]
    fn points_between_do_not_change_the_outcome() -> Result<(), OutOfRange> {
        let kinetics = Kinetics::new(&bearing())?;
        let coarse = kinetics.along(&[0.0, 20.0], &[850.0, 40.0])?.fractions;
        let time_s: Vec<f64> = (0..=500).map(|i| f64::from(i) * 0.04).collect();
        let temperature_c: Vec<f64> = time_s.iter().map(|t| 850.0 - 40.5 * t).collect();
        let fine = kinetics.along(&time_s, &temperature_c)?.fractions;
        assert!((coarse.austenite - fine.austenite).abs() < 1e-4);
        assert!((coarse.pearlite - fine.pearlite).abs() < 5e-3);
        Ok(())
    }

    /// What ferrite rejects is in the austenite left: Ms falls as that of steel with so much carbon.
    #[test]
    fn ferrite_lowers_ms_by_the_carbon_that_it_rejects() -> Result<(), OutOfRange> {
        let mut a = bearing();
        a.composition = Composition {
            c: 0.30,
            mn: 0.8,
            cr: 0.2,
            ..Composition::default()
        };
        a.undissolved_carbide_volume_fraction = 0.0;
        let kinetics = Kinetics::new(&a)?;
        let hold_s = kinetics.time_to_s(Product::Ferrite, 715.0, 0.5);
        let cooled = kinetics.along(&[0.0, hold_s, hold_s + 0.1], &[715.0, 715.0, 20.0])?;
        let ferrite = cooled.fractions.ferrite;
        assert!(ferrite > 0.15, "{ferrite}");
        let carbon_wt = (0.30 - 0.02 * ferrite) / (1.0 - ferrite);
        let expected_c = ms_of(&a.composition.with_carbon(carbon_wt), a.grain_astm);
        assert!(
            (cooled.ms_c - expected_c).abs() < 2.0,
            "{cooled:?} {expected_c}"
        );
        Ok(())
    }
}
