//! Isothermal curves: start, half and finish of each product at constant temperature.

use super::Austenite;
use super::formed::Forming;
use super::kinetics::{Kinetics, Product};
use super::shape::FINISH;
use crate::soak::BoundaryFilms;
use crate::steel::OutOfRange;

/// The curves of one product; each point is time in s and temperature in °C, from hot to cold.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ProductCurve {
    /// The product.
    pub product: Forming,
    /// Shortest time to the start, s.
    pub nose_s: f64,
    /// Temperature of the shortest time, °C.
    pub nose_c: f64,
    /// Temperature at and above which the product does not form, °C.
    pub start_limit_c: f64,
    /// 1 % formed; of carbide on grain boundaries, films that can be seen.
    pub start: Vec<[f64; 2]>,
    /// 50 % formed.
    pub half: Vec<[f64; 2]>,
    /// 99 % formed.
    pub finish: Vec<[f64; 2]>,
}

/// The isothermal diagram of one austenite. Nose times err by a factor of two.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Isothermal {
    /// Curves of the products that can form. Ferrite and carbide on grain boundaries count in parts
    /// of what can form.
    pub products: Vec<ProductCurve>,
    /// Upper limit of pearlite, °C.
    pub ae1_c: f64,
    /// Upper limit of bainite, °C.
    pub bs_c: f64,
    /// Start of martensite, °C: the curves end here, those of carbide where pearlite comes first.
    pub ms_c: f64,
}

/// Distance between points, K.
const POINT_K: f64 = 5.0;
/// Longest time of a curve, s: about four months.
const LONGEST_S: f64 = 1e7;

impl Kinetics {
    /// The isothermal diagram.
    #[must_use]
    pub fn isothermal(&self) -> Isothermal {
        Isothermal {
            products: self
                .films()
                .and_then(|films| self.carbide_curve(films))
                .into_iter()
                .chain(self.products().map(|p| self.curve(p)))
                .collect(),
            ae1_c: self.ae1_c,
            bs_c: self.bs_c,
            ms_c: self.ms_c,
        }
    }

    /// Films on the grain boundaries: from where enough can form to be seen down to where pearlite
    /// comes first.
    fn carbide_curve(&self, films: &BoundaryFilms) -> Option<ProductCurve> {
        let start_limit_c = films.limit_c();
        let [mut start, mut half, mut finish] = [const { Vec::new() }; 3];
        let mut nose = [f64::INFINITY, start_limit_c];
        let count = ((start_limit_c - self.ms_c) / POINT_K).ceil().max(0.0) as usize;
        for point in 1..=count {
            let temperature_c = start_limit_c - POINT_K * point as f64;
            let Some(times) = films.times(temperature_c) else {
                continue;
            };
            if times.seen_s >= self.start_s(Product::Pearlite, temperature_c) {
                break;
            }
            let add = |column: &mut Vec<[f64; 2]>, time_s: f64| {
                if time_s <= LONGEST_S {
                    column.push([time_s, temperature_c]);
                }
            };
            add(&mut start, times.seen_s);
            if let Some(half_s) = times.half_s {
                add(&mut half, half_s);
            }
            add(&mut finish, times.finish_s);
            if times.seen_s < nose[0] {
                nose = [times.seen_s, temperature_c];
            }
        }
        let [nose_s, nose_c] = nose;
        (!start.is_empty()).then_some(ProductCurve {
            product: Forming::GrainBoundaryCarbide,
            nose_s,
            nose_c,
            start_limit_c,
            start,
            half,
            finish,
        })
    }

    fn curve(&self, product: Product) -> ProductCurve {
        let (nose_c, nose_s) = self.nose(product);
        let limit_c = self.table(product).limit_c;
        let shape = self.shape(product);
        let ages = [1.0, shape.age(0.5), shape.age(FINISH)];
        let mut columns: [Vec<[f64; 2]>; 3] = Default::default();
        let count = ((limit_c - self.ms_c) / POINT_K).ceil().clamp(2.0, 400.0) as usize;
        let point_k = (limit_c - self.ms_c) / count as f64;
        for point in 1..=count {
            let temperature_c = limit_c - point_k * point as f64;
            // The last point is Ms itself, whatever the rounding.
            let temperature_c = temperature_c.max(self.ms_c);
            let start_s = self.start_s(product, temperature_c);
            for (column, age) in columns.iter_mut().zip(ages) {
                let time_s = start_s * age;
                if time_s <= LONGEST_S {
                    column.push([time_s, temperature_c]);
                }
            }
        }
        let [start, half, finish] = columns;
        ProductCurve {
            product: product.into(),
            nose_s,
            nose_c,
            start_limit_c: limit_c,
            start,
            half,
            finish,
        }
    }
}

/// The isothermal diagram of an austenite.
///
/// # Errors
/// Outside the range of the kinetics.
pub fn isothermal(a: &Austenite) -> Result<Isothermal, OutOfRange> {
    Ok(Kinetics::new(a)?.isothermal())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steel::Composition;

    fn plain(c: f64, carbide: f64) -> Isothermal {
        let a = Austenite {
            composition: Composition {
                c,
                mn: 0.30,
                si: 0.20,
                ..Composition::default()
            },
            grain_astm: 7.5,
            undissolved_carbide_volume_fraction: carbide,
        };
        isothermal(&a).unwrap()
    }

    fn carbide(diagram: &Isothermal) -> Option<&ProductCurve> {
        let mut products = diagram.products.iter();
        products.find(|curve| curve.product == Forming::GrainBoundaryCarbide)
    }

    /// The diagram of 1.13 % carbon steel, grain 7 to 8 (atlas, from memory): carbide comes first from
    /// Acm down to about 600 °C, within 500 s at 775 °C and some seconds at 700 and 650 °C.
    #[test]
    fn carbide_of_hypereutectoid_steel_is_where_the_atlas_has_it() {
        let diagram = plain(1.13, 0.0);
        let curve = carbide(&diagram).unwrap();
        let at = |temperature_c: f64| {
            let near = |point: &&[f64; 2]| (point[1] - temperature_c).abs() < 0.5 * POINT_K;
            curve.start.iter().find(near).unwrap()[0]
        };
        // Acm of iron and carbon: 1.10 % at 850 °C, 1.23 % at 900 °C (handbook, from memory).
        assert!((curve.start_limit_c - 861.5).abs() < 15.0);
        assert!(at(775.0) < 500.0);
        // "Some seconds", within a factor of ten; films that count are thinner than what is seen.
        assert!(
            [700.0, 650.0]
                .map(at)
                .iter()
                .all(|s| (0.3..30.0).contains(s))
        );
        let last_c = curve.start.last().unwrap()[1];
        assert!((550.0..660.0).contains(&last_c), "{last_c}");
        let mut paired = 0;
        for half in &curve.half {
            for finish in curve.finish.iter().filter(|finish| finish[1] == half[1]) {
                assert!(half[0] < finish[0], "{half:?} {finish:?}");
                paired += 1;
            }
        }
        assert!(paired > 10, "{paired}");
    }

    #[test]
    fn there_is_none_without_carbon_to_spare() {
        assert!(carbide(&plain(0.78, 0.0)).is_none());
        assert!(carbide(&plain(0.45, 0.0)).is_none());
        assert!(carbide(&plain(1.0, 0.04)).is_none());
    }
}
