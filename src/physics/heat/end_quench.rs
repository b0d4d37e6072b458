//! Cooling of the bar of the end-quench (Jominy) test.

use super::conduct::Conduction;
use super::curve::{CoolingCurve, Place};
use super::mesh::Mesh;
use super::trace::{Trace, Watch};
use super::turning::{Turned, Turning};
use super::until::{Reached, Until};
use super::{HeatError, Material, OwnMedium};
use crate::sources::astm_a255_cooling_rates::RATE_AT_704C;
use crate::units::NumberOutside;
use libm::{exp, log};
use recalesce_texts::heat::quench as texts;

/// A sixteenth of an inch, mm.
const SIXTEENTH_MM: f64 = 25.4 / 16.0;
/// Allowed distances from the quenched end, mm: those of the table.
const DISTANCE_MM: (f64, f64) = (SIXTEENTH_MM, 32.0 * SIXTEENTH_MM);
/// Allowed temperatures of the bar when the water is turned on, °C.
const START_C: (f64, f64) = (760.0, 1200.0);
/// Length and diameter of the bar, m: 4 in by 1 in.
const LENGTH_M: f64 = 101.6e-3;
const DIAMETER_M: f64 = 25.4e-3;
/// Temperature of the water, °C.
const WATER_C: f64 = 24.0;
/// Heat transfer to the jet of water against surface temperature, °C and W/m²K: film or transition
/// boiling while the end is hot, nucleate boiling below. The two coefficients are fitted by this
/// project to the rates of the table up to 6/16 in, which alone know of the jet.
const JET_W_M2K: [[f64; 2]; 4] = [
    [0.0, 35_000.0],
    [300.0, 35_000.0],
    [500.0, 9_000.0],
    [1200.0, 9_000.0],
];
/// Heat that the side loses, over that of scaled steel in still air: the standard keeps the bar from
/// scaling, and steel without scale radiates less (emissivity 0.5 for 0.8, from memory).
const SIDE_SHARE: f64 = 0.6;
/// End of the curves, °C.
const END_C: f64 = 30.0;
/// Longest time of a test, s.
const LONGEST_S: f64 = 20_000.0;
/// Largest error of a node in one step, K.
const TOLERANCE_K: f64 = 0.03;

/// Cooling rate at 704 °C, K/s, at a distance from the quenched end, mm: between the rows of the
/// table the logarithm of the rate is linear in that of the distance.
///
/// # Errors
/// A distance outside 1.5875 to 50.8 mm.
pub fn jominy_rate_at_704c(distance_mm: f64) -> Result<f64, HeatError> {
    NumberOutside::check(texts::DISTANCE_FROM_END, distance_mm, DISTANCE_MM, "mm")?;
    let sixteenths = distance_mm / SIXTEENTH_MM;
    let upper = RATE_AT_704C
        .partition_point(|row| row[0] < sixteenths)
        .clamp(1, RATE_AT_704C.len() - 1);
    let (Some(near), Some(far)) = (RATE_AT_704C.get(upper - 1), RATE_AT_704C.get(upper)) else {
        return Err(HeatError::NotFinite);
    };
    let x = log(sixteenths / near[0]) / log(far[0] / near[0]);
    Ok(near[1] * exp(x * log(far[1] / near[1])))
}

/// The cooling of an end-quenched bar.
#[derive(Debug, Clone, PartialEq)]
pub struct EndQuenchBar {
    /// Distances from the quenched end, mm: sixteenths of an inch, to 2 in.
    pub distance_mm: Vec<f64>,
    /// The cooling curve on the axis at each distance; all have the same times.
    pub curves: Vec<CoolingCurve>,
}

/// Cools the standard bar, 25.4 mm thick and 101.6 mm long, from `start_c`, °C, with a jet of
/// water at 24 °C on one end and still air on the rest, to 30 °C.
///
/// Heat flows along the bar; across it the temperature is taken as even (Biot number of the side
/// in air 0.03). What forms gives up its heat on the way.
///
/// # Errors
/// A start outside 760 to 1200 °C.
pub fn end_quench_bar(start_c: f64, turning: &mut dyn Turning) -> Result<EndQuenchBar, HeatError> {
    NumberOutside::check(texts::TEMPERATURE_OF_BAR, start_c, START_C, "°C")?;
    let water = OwnMedium {
        h_w_m2k: JET_W_M2K.to_vec(),
        bath_c: WATER_C,
        ..OwnMedium::default()
    };
    let water = water.resolve().map_err(|_| HeatError::NotFinite)?;
    let material = Material::austenite_to_martensite(turning.martensite_start_c());
    let (mut mesh, positions) = Mesh::end_quench_bar(LENGTH_M, DIAMETER_M);
    for (_, area) in &mut mesh.faces_in_air {
        *area *= SIDE_SHARE;
    }
    let distance_mm: Vec<f64> = (1..=32).map(|j| SIXTEENTH_MM * f64::from(j)).collect();
    let watches = distance_mm
        .iter()
        .map(|mm| {
            let at_m = 1e-3 * mm;
            Watch::between(Place::Within(at_m / LENGTH_M), at_m, &positions, |i| i)
        })
        .collect();
    let mut trace = Trace::new(watches);
    let turned = Turned::new(turning, &material, mesh.len(), &[1.0], start_c);
    let mut bar = Conduction::<3>::new(&mesh, &material, start_c, TOLERANCE_K).turning(turned);
    let until = Until {
        reached: Reached::Cooled(END_C),
        time_s: LONGEST_S,
    };
    bar.stay_in(&water, 1.0, until, |bar| trace.record(bar));
    let curves = trace.into_curves();
    let is_finite = |curve: &CoolingCurve| curve.temperature_c.iter().all(|t| t.is_finite());
    if !curves.iter().all(is_finite) {
        return Err(HeatError::NotFinite);
    }
    Ok(EndQuenchBar {
        distance_mm,
        curves,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Austenite that turns into nothing but martensite.
    struct Deep;

    impl Turning for Deep {
        fn begin(&mut self, _: usize) -> f64 {
            0.0
        }

        fn after(&mut self, _: usize, _: f64, _: f64, _: f64) -> f64 {
            0.0
        }

        fn keep(&mut self) {}

        fn martensite_start_c(&self) -> f64 {
            300.0
        }
    }

    /// The rows up to 6/16 in were used to fit the jet; the others are a check.
    #[test]
    fn the_bar_cools_at_the_rates_of_the_table() {
        let bar = end_quench_bar(845.0, &mut Deep).unwrap();
        for (distance_mm, curve) in bar.distance_mm.iter().zip(&bar.curves) {
            let printed = jominy_rate_at_704c(*distance_mm).unwrap();
            let rate = curve.rate_at_c(704.0).unwrap();
            approx::assert_relative_eq!(rate, printed, max_relative = 0.16);
            let last_c = curve.temperature_c.last().copied().unwrap();
            assert!(last_c < END_C + 0.1, "{last_c}");
        }
    }

    #[test]
    fn further_along_every_place_is_hotter() {
        let bar = end_quench_bar(900.0, &mut Deep).unwrap();
        for pair in bar.curves.windows(2) {
            let pairs = pair[0].temperature_c.iter().zip(&pair[1].temperature_c);
            assert!(pairs.clone().all(|(near, far)| *near <= far + 0.05));
        }
    }

    #[test]
    fn beyond_the_table_there_is_no_rate() {
        assert!(jominy_rate_at_704c(60.0).is_err());
        assert!(jominy_rate_at_704c(f64::NAN).is_err());
        assert!(end_quench_bar(700.0, &mut Deep).is_err());
    }
}
