//! The continuous-cooling (CCT) diagram: a fan of coolings and what each makes of the austenite.
//!
//! Every cooling slows down towards room temperature as a piece in a bath does (Newton's law) and is
//! named by its rate at 700 °C. The clock starts where the first product can form: at A3 of steel that
//! forms ferrite, at Acm of one that forms carbide on its grain boundaries, else at A1.

use super::formed::{Formed, Forming};
use super::fractions::{Fractions, HistoryPoint, Transformed};
use super::kinetics::{Kinetics, Product};
use super::shape::START;
use crate::numeric::order;
use crate::soak::BoundaryFilms;
use crate::steel::OutOfRange;
use recalesce_texts::transform as texts;

/// Temperature of the surroundings, °C.
const ROOM_C: f64 = 20.0;
/// Temperature at which a cooling is named by its rate, °C.
const RATE_AT_C: f64 = 700.0;
/// End of the coolings, °C.
const END_C: f64 = 25.0;
/// Steps of a cooling, and the power by which they are crowded at its hot end: a slow cooling turns
/// within a few kelvin of the limit.
const STEPS: usize = 110;
const CROWDING: f64 = 1.6;
/// Rates at 700 °C between which the fan is drawn, K/s: a furnace that is switched off, and a jet of
/// brine on a thin piece.
const RATE_K_PER_S: (f64, f64) = (0.003, 1000.0);
/// Coolings for each factor of ten in the rate.
const PER_DECADE: u32 = 6;

/// How far a product had come at a temperature on one of the coolings.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct Passage {
    /// What forms.
    pub product: Forming,
    /// Where 1 % of the piece has turned into it, or films of carbide can be seen: time by the clock,
    /// s, and temperature, °C.
    pub start: [f64; 2],
    /// Where no more forms of it.
    pub end: [f64; 2],
}

/// One cooling of the fan.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ContinuousCooling {
    /// Rate at 700 °C, K/s.
    pub rate_k_per_s: f64,
    /// Time by the clock, s, against temperature, °C.
    pub curve: Vec<[f64; 2]>,
    /// What forms before martensite, in the order in which it begins.
    pub passages: Vec<Passage>,
    /// Start of martensite of what is left, °C; none when nothing is.
    pub ms_c: Option<f64>,
    /// What is there at the end.
    pub fractions: Fractions,
    /// How the pearlite and the bainite among it formed.
    pub formed: Formed,
    /// What is there at every point of the curve.
    #[serde(skip)]
    pub history: Vec<HistoryPoint>,
}

/// The diagram of one austenite, from the fastest cooling to the slowest. Times err by a factor of
/// two, as those of the isothermal curves from which they are added up.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Continuous {
    /// The coolings.
    pub coolings: Vec<ContinuousCooling>,
    /// Where the clock starts, °C.
    pub clock_c: f64,
}

/// Part of the piece that counts as left.
const LEFT: f64 = 0.01;
/// Part of the final amount of a product at which it has ended.
const ENDED: f64 = 0.99;

impl Kinetics {
    /// The continuous-cooling diagram.
    ///
    /// # Errors
    /// As [`Kinetics::along`], which refuses no curve of the fan.
    pub fn continuous(&self) -> Result<Continuous, OutOfRange> {
        let (slowest, fastest) = RATE_K_PER_S;
        let count = ((fastest / slowest).log10() * f64::from(PER_DECADE)).ceil();
        let coolings = (0..=count as u32)
            .map(|i| {
                let decades = f64::from(i) / f64::from(PER_DECADE);
                self.cooling_at(fastest / 10f64.powf(decades))
            })
            .collect::<Result<_, _>>()?;
        Ok(Continuous {
            coolings,
            clock_c: self.first_forming_c(),
        })
    }

    /// What one cooling makes, named by its rate at 700 °C, K/s.
    ///
    /// # Errors
    /// For a rate that is not a number or not above zero.
    pub fn cooling_at(&self, rate_k_per_s: f64) -> Result<ContinuousCooling, OutOfRange> {
        OutOfRange::check(
            texts::CONTINUOUS_COOLING,
            texts::RATE_AT_700C,
            "K/s",
            rate_k_per_s,
            (1e-6, 1e6),
        )?;
        let constant_s = (RATE_AT_C - ROOM_C) / rate_k_per_s;
        let top_c = self.first_forming_c();
        let since_s = |t: f64| constant_s * ((top_c - ROOM_C) / (t - ROOM_C)).ln();
        let temperature_c: Vec<f64> = (0..=STEPS)
            .map(|i| top_c + (END_C - top_c) * (i as f64 / STEPS as f64).powf(CROWDING))
            .collect();
        let time_s: Vec<f64> = temperature_c.iter().map(|t| since_s(*t)).collect();
        let transformed = self.along(&time_s, &temperature_c)?;
        let seen = self.films().map(BoundaryFilms::seen_fraction);
        let carbide = seen.and_then(|seen| {
            let matrix = 1.0 - self.austenite().undissolved_carbide_volume_fraction;
            let product = Forming::GrainBoundaryCarbide;
            passage(&transformed, product, matrix * seen, |fractions| {
                fractions.carbide - (1.0 - matrix)
            })
        });
        let turned = self.products().filter_map(|product| {
            let of = |fractions: &Fractions| match product {
                Product::Ferrite => fractions.ferrite,
                Product::Pearlite => fractions.pearlite,
                Product::Bainite => fractions.bainite,
            };
            passage(&transformed, product.into(), START, of)
        });
        let mut passages: Vec<Passage> = carbide.into_iter().chain(turned).collect();
        order::sort_by(&mut passages, |a, b| a.start[0].total_cmp(&b.start[0]));
        let fractions = transformed.fractions;
        Ok(ContinuousCooling {
            rate_k_per_s,
            curve: time_s
                .into_iter()
                .zip(temperature_c)
                .map(|(time_s, temperature_c)| [time_s, temperature_c])
                .collect(),
            passages,
            ms_c: (fractions.hardened() > LEFT).then_some(transformed.ms_c),
            fractions,
            formed: transformed.formed,
            history: transformed.history,
        })
    }
}

/// Where a product begins and ends, if as much of it forms as counts for its start.
fn passage(
    transformed: &Transformed,
    product: Forming,
    start: f64,
    of: impl Fn(&Fractions) -> f64,
) -> Option<Passage> {
    let whole = of(&transformed.fractions);
    let reached = |amount: f64| {
        transformed.history.windows(2).find_map(|pair| {
            let [before, after] = pair else { return None };
            let (low, high) = (of(&before.fractions), of(&after.fractions));
            (low < amount && high >= amount).then(|| {
                let part = (amount - low) / (high - low);
                [
                    before.time_s + part * (after.time_s - before.time_s),
                    before.temperature_c + part * (after.temperature_c - before.temperature_c),
                ]
            })
        })
    };
    if whole < start {
        return None;
    }
    Some(Passage {
        product,
        start: reached(start)?,
        end: reached((ENDED * whole).max(start))?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steel::Composition;
    use crate::transform::Austenite;

    fn cr_mo() -> Kinetics {
        Kinetics::new(&Austenite {
            composition: Composition {
                c: 0.40,
                mn: 0.85,
                si: 0.25,
                cr: 0.95,
                mo: 0.20,
                ..Composition::default()
            },
            grain_astm: 8.0,
            undissolved_carbide_volume_fraction: 0.0,
        })
        .unwrap()
    }

    #[test]
    fn a_slower_cooling_never_leaves_more_austenite() {
        let diagram = cr_mo().continuous().unwrap();
        let hardened: Vec<f64> = diagram
            .coolings
            .iter()
            .map(|cooling| cooling.fractions.hardened())
            .collect();
        assert!(hardened.windows(2).all(|pair| pair[1] <= pair[0] + 1e-9));
        assert!(hardened[0] > 0.99 && *hardened.last().unwrap() < 0.01);
        assert!(diagram.coolings.last().unwrap().ms_c.is_none());
    }

    /// The rate that the diagram's own coolings need for half martensite is the critical one.
    #[test]
    fn the_fan_agrees_with_the_critical_rates() {
        let kinetics = cr_mo();
        for wanted in [0.5, 0.95, 0.99] {
            let critical = kinetics.critical_cooling(wanted).unwrap();
            let cooling = kinetics.cooling_at(critical.rate_k_per_s).unwrap();
            let found = cooling.fractions.hardened();
            assert!((found - wanted).abs() < 0.01, "{wanted} {found}");
        }
    }

    /// On cooling products come later than at the nose, and above it later than at
    /// constant temperature: what has aged at hotter, slower temperatures counts for less.
    #[test]
    fn starts_lie_right_of_the_isothermal_ones() {
        let kinetics = cr_mo();
        for cooling in kinetics.continuous().unwrap().coolings {
            for passage in cooling.passages {
                let [time_s, temperature_c] = passage.start;
                let product = kinetics
                    .products()
                    .find(|product| passage.product == (*product).into())
                    .unwrap();
                let (nose_c, nose_s) = kinetics.nose(product);
                let held_s = kinetics.start_s(product, temperature_c.max(nose_c));
                assert!(time_s > nose_s && time_s > held_s, "{passage:?} {held_s}");
                assert!(passage.end[1] <= temperature_c);
            }
        }
    }

    /// The diagram of 1.13 % carbon steel, from fast to slow: martensite; martensite with carbide;
    /// with pearlite as well; carbide and pearlite alone (Callister, Materials Science and Engineering,
    /// solution of problem 10.20, read in an excerpt). The second is missed: without pearlite the films
    /// of the model stay just too thin to count.
    #[test]
    fn carbide_comes_before_pearlite_in_hypereutectoid_steel() {
        let kinetics = Kinetics::new(&Austenite {
            composition: Composition {
                c: 1.13,
                mn: 0.30,
                si: 0.20,
                ..Composition::default()
            },
            grain_astm: 7.5,
            undissolved_carbide_volume_fraction: 0.0,
        })
        .unwrap();
        let diagram = kinetics.continuous().unwrap();
        let mut seen: Vec<Vec<Forming>> = diagram
            .coolings
            .iter()
            .map(|c| c.passages.iter().map(|passage| passage.product).collect())
            .collect();
        seen.dedup();
        let (carbide, pearlite) = (Forming::GrainBoundaryCarbide, Forming::Pearlite);
        assert_eq!(seen[..2], [vec![], vec![carbide, pearlite]]);
        let slowest = diagram.coolings.last().unwrap();
        assert!(slowest.ms_c.is_none() && slowest.fractions.carbide > 0.05);
        // What is left beside carbide is leaner, and its martensite begins warmer.
        let leaner = diagram
            .coolings
            .iter()
            .find(|c| c.fractions.carbide > 0.004);
        assert!(leaner.unwrap().ms_c.unwrap() > kinetics.ms_c() + 1.0);
    }

    #[test]
    fn a_rate_that_is_none_is_refused() {
        assert!(cr_mo().cooling_at(0.0).is_err());
        assert!(cr_mo().cooling_at(f64::NAN).is_err());
    }
}
