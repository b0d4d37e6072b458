//! The usual shape of heat transfer over the temperature of the surface, in six numbers: vapour
//! film, peak of boiling, convection.

use crate::heat::{Medium, OwnMedium};

/// Number of parameters.
pub(super) const PARAMETERS: usize = 6;

/// Coldest and hottest point of a curve, °C.
const ENDS_C: [f64; 2] = [60.0, 1000.0];
/// Heat transfer of convection at the coldest point over that where boiling ends, as in the oils
/// of the list.
const CONVECTION_FALLS_TO: f64 = 0.55;
/// Allowed heat transfer, W/m²K.
pub(super) const H_RANGE: [f64; 2] = [60.0, 30_000.0];
/// Closest that two corners may come, K, and the ends that they keep between, °C.
const CLOSEST_K: f64 = 15.0;
const CORNERS_C: [f64; 2] = [90.0, 980.0];

/// Film, peak and convection of a boiling curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BoilingShape {
    /// Heat transfer where the vapour film ends, W/m²K.
    h_film: f64,
    /// Surface temperature where the vapour film ends, °C.
    film_end_c: f64,
    /// Surface temperature of the peak of boiling, °C.
    peak_c: f64,
    /// Heat transfer at the peak, W/m²K.
    h_peak: f64,
    /// Surface temperature where boiling ends, °C.
    convection_c: f64,
    /// Heat transfer where boiling ends, W/m²K.
    h_convection: f64,
    /// Heat transfer at the hottest point over that where the film ends: kept from the template.
    film_rise: f64,
}

impl BoilingShape {
    /// How far the parameters of quenchants of one kind and level lie apart, as standard deviations
    /// of [`BoilingShape::parameters`] (expert values: about those of the oils of the list).
    pub(super) const SPREAD: [f64; PARAMETERS] = [0.3, 0.35, 33.0, 0.3, 0.35, 0.3];

    /// The three corners of a medium: its highest point and the points beside it.
    pub(super) fn of(medium: &Medium) -> Option<Self> {
        let points: Vec<[f64; 2]> = medium.h_w_m2k.points().collect();
        let (top, &[peak_c, h_peak]) = points
            .iter()
            .enumerate()
            .max_by(|a, b| a.1[1].total_cmp(&b.1[1]))?;
        let [film_end_c, h_film] = *points.get(top + 1)?;
        let [convection_c, h_convection] = *points.get(top.checked_sub(1)?)?;
        Some(Self {
            h_film,
            film_end_c,
            peak_c,
            h_peak,
            convection_c,
            h_convection,
            film_rise: medium.h_w_m2k.at(ENDS_C[1]) / h_film,
        })
    }

    /// Numbers that may take any value: logarithms of the three coefficients, the temperature of
    /// the peak, logarithms of the distances of the other corners from it.
    pub(super) fn parameters(&self) -> [f64; PARAMETERS] {
        [
            self.h_film.ln(),
            (self.film_end_c - self.peak_c).ln(),
            self.peak_c,
            self.h_peak.ln(),
            (self.peak_c - self.convection_c).ln(),
            self.h_convection.ln(),
        ]
    }

    /// The shape of the parameters, held within bounds.
    pub(super) fn with(&self, parameters: &[f64; PARAMETERS]) -> Self {
        let [film, above, peak_c, peak, below, convection] = *parameters;
        let h = |ln_h: f64| ln_h.exp().clamp(H_RANGE[0], H_RANGE[1]);
        let [coldest, hottest] = CORNERS_C;
        let peak_c = peak_c.clamp(coldest + CLOSEST_K, hottest - CLOSEST_K);
        Self {
            h_film: h(film),
            film_end_c: (peak_c + above.exp().max(CLOSEST_K)).min(hottest),
            peak_c,
            h_peak: h(peak),
            convection_c: (peak_c - below.exp().max(CLOSEST_K)).max(coldest),
            h_convection: h(convection),
            film_rise: self.film_rise,
        }
    }

    /// The same with all heat transfer times a factor.
    pub(super) fn scaled(&self, ln_factor: f64) -> Self {
        let [film, above, peak_c, peak, below, convection] = self.parameters();
        self.with(&[
            film + ln_factor,
            above,
            peak_c,
            peak + ln_factor,
            below,
            convection + ln_factor,
        ])
    }

    /// Points of surface temperature, °C, and heat transfer, W/m²K.
    pub(super) fn points(&self) -> [[f64; 2]; 5] {
        [
            [ENDS_C[0], self.h_convection * CONVECTION_FALLS_TO],
            [self.convection_c, self.h_convection],
            [self.peak_c, self.h_peak],
            [self.film_end_c, self.h_film],
            [ENDS_C[1], self.h_film * self.film_rise],
        ]
    }

    /// The curve in a bath.
    pub(super) fn medium(&self, bath_c: f64) -> OwnMedium {
        OwnMedium {
            h_w_m2k: self.points().to_vec(),
            bath_c,
            ..OwnMedium::default()
        }
    }
}
