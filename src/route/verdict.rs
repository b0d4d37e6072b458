//! Is this quench fast enough, by what margin, and how sure is it?

use super::margin::{Margin, MarginSources, Verdict};
use super::spread::Spread;
use super::taught::Left;
use crate::heat::CoolingCurve;
use crate::steel::OutOfRange;
use crate::transform::{Kinetics, Product};

/// Fraction of what was austenite that has to reach martensite (or stay austenite) for a place to
/// count as hardened. Common practice, no source: above it a file finds no soft spot.
pub const HARDENED: f64 = 0.95;

/// Factor by which a nose time is uncertain either way: grain size and carbon in solution. From
/// the spread of the isothermal fit against noses that it had not seen.
pub(crate) const NOSE_BAND: f64 = 1.5;

/// Judges a cooling curve.
///
/// The margin is the factor by which the whole quench may be slower and still harden this place.
/// Seconds to spare are the same thing at the nose of the product that limits: the time from A1 to
/// the nose of the slowest quench of this shape that still hardens, less the time of this one.
/// Heat transfer and nose have their bands; `spread` is what is open about the austenite.
pub(super) fn judge(
    kinetics: &Kinetics,
    curve: &CoolingCurve,
    medium_band: f64,
    spread: &Spread,
) -> Result<Margin, OutOfRange> {
    let (factor, gap) =
        kinetics.slowest_factor_and_nose(&curve.time_s, &curve.temperature_c, HARDENED)?;
    let (product, nose_c) = match gap {
        Some(gap) => (gap.product, gap.nose_c),
        None => shortest_nose(kinetics),
    };
    let clock_s = curve.time_to_c(kinetics.ae1_c()).unwrap_or_default();
    let end_s = curve.time_s.last().copied().unwrap_or_default();
    let arrival_s = curve.time_to_c(nose_c).unwrap_or(end_s);
    let passing_s = arrival_s - clock_s;
    let sources = MarginSources {
        heat_transfer: either_way(medium_band.max(1.0)),
        nose: either_way(Left::of_factor(NOSE_BAND, spread.left.nose)),
        chemistry: spread.chemistry,
        soak: spread.soak,
    };
    let [least, most] = sources.together().map(|part| part * factor);
    let verdict = if least >= 1.0 {
        Verdict::Holds
    } else if most >= 1.0 {
        Verdict::Narrow
    } else {
        Verdict::Misses
    };
    Ok(Margin {
        verdict,
        factor,
        factor_band: [least, most],
        sources,
        seconds: passing_s * (factor - 1.0),
        seconds_band: 0.5 * passing_s * (most - least),
        nose_c,
        clock_s,
        arrival_s,
        product,
    })
}

const fn either_way(factor: f64) -> [f64; 2] {
    [1.0 / factor, factor]
}

/// The product with the shortest nose, which limits a quench so fast that nothing forms, and the
/// temperature of its nose, °C.
fn shortest_nose(kinetics: &Kinetics) -> (Product, f64) {
    let mut nearest = (Product::Bainite, kinetics.nose(Product::Bainite));
    for product in kinetics.products() {
        let nose = kinetics.nose(product);
        if nose.1 < nearest.1.1 {
            nearest = (product, nose);
        }
    }
    (nearest.0, nearest.1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{Route, quench_table, run};

    /// What is told in seconds says the same as the verdict.
    #[test]
    fn seconds_and_verdict_agree() {
        let table = quench_table(&Route::example()).unwrap();
        for row in &table.rows {
            let mut route = Route::example();
            route.quench.medium = row.medium.clone();
            let outcome = run(&route).unwrap();
            let margin = outcome.quench.transformed.given().unwrap().margin;
            let [least_s, most_s] = margin.seconds_range();
            assert!(least_s <= margin.seconds && margin.seconds <= most_s);
            approx::assert_relative_eq!(
                most_s - least_s,
                2.0 * margin.seconds_band,
                max_relative = 1e-9
            );
            let told = match (least_s >= 0.0, most_s >= 0.0) {
                (true, _) => Verdict::Holds,
                (_, true) => Verdict::Narrow,
                _ => Verdict::Misses,
            };
            assert_eq!(told, margin.verdict, "{:?}", row.medium);
        }
    }
}
