//! Isothermal curves: start, half and finish of each product at constant temperature.

use super::Austenite;
use super::kinetics::{Kinetics, Product};
use super::shape::FINISH;
use crate::steel::OutOfRange;

/// The curves of one product; each point is time in s and temperature in °C, from hot to cold.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct ProductCurve {
    /// The product.
    pub product: Product,
    /// Shortest time to 1 %, s.
    pub nose_s: f64,
    /// Temperature of the shortest time, °C.
    pub nose_c: f64,
    /// Temperature at and above which the product does not form, °C.
    pub start_limit_c: f64,
    /// 1 % formed.
    pub start: Vec<[f64; 2]>,
    /// 50 % formed.
    pub half: Vec<[f64; 2]>,
    /// 99 % formed.
    pub finish: Vec<[f64; 2]>,
}

/// The isothermal diagram of one austenite. Nose times err by a factor of two.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Isothermal {
    /// Curves of the products that can form. Ferrite counts in parts of what can form.
    pub products: Vec<ProductCurve>,
    /// Upper limit of pearlite, °C.
    pub ae1_c: f64,
    /// Upper limit of bainite, °C.
    pub bs_c: f64,
    /// Start of martensite, °C: the curves end here.
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
            products: self.products().map(|p| self.curve(p)).collect(),
            ae1_c: self.ae1_c,
            bs_c: self.bs_c,
            ms_c: self.ms_c,
        }
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
            product,
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
