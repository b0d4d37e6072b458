//! A quenchant of the list with its bath at another temperature than the listed one.
//!
//! Water is interpolated between the baths of the list, whose curves fit recalled figures. Of the
//! others the notes on quenching know from memory only that oil boils alike from 40 to 70 °C and is a
//! tenth slower when cold; where nothing is known the curve is held. The band grows with the distance
//! from the nearest listed bath, by what each family is trusted with (expert values).

use super::media::media;
use super::medium::ClassFigures;
use super::{Family, Medium, MediumError};
use crate::numeric::interpolate::linear_held;
use recalesce_texts::heat::media as texts;

/// Baths of the list this near are the same, K.
const SAME_K: f64 = 1e-6;
/// Factor on the heat transfer of oil at a bath temperature, °C: the estimate of the notes, from
/// memory.
const OIL_FACTOR: [[f64; 2]; 2] = [[25.0, 0.9], [40.0, 1.0]];

/// Which baths a quenchant may have, and what another temperature does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BathRange {
    /// Coldest, °C.
    pub least_c: f64,
    /// Hottest, °C.
    pub most_c: f64,
    /// Why no colder and no hotter, in words.
    pub reason: &'static str,
}

impl Medium {
    /// Which temperatures its bath may have; none for a quenchant of the user's own, whose curve
    /// belongs to the bath that it was found in. The usual range of the list, where a shop keeps to
    /// it; else common practice, no source.
    #[must_use]
    pub fn bath_range(&self) -> Option<BathRange> {
        let usual = self.usual_bath_c.unwrap_or([self.bath_c; 2]);
        let ([least_c, most_c], reason) = match self.family {
            Family::Own => return None,
            Family::Water => ([10.0, 60.0], texts::WARM_WATER),
            Family::Brine => (usual, texts::BATH_UNKNOWN_BEYOND),
            Family::Polymer => (usual, texts::WARM_POLYMER),
            Family::Oil | Family::VegetableOil => ([20.0, 80.0], texts::BATH_OF_OIL),
            Family::HotOil => (usual, texts::BATH_OF_HOT_OIL),
            Family::Salt => (usual, texts::BATH_OF_SALT),
            Family::Plates => ([10.0, 80.0], texts::WARM_PLATES),
            Family::Gas => ([10.0, 60.0], texts::GAS_AS_ITS_COOLER),
            Family::Air => ([-20.0, 45.0], texts::AIR_AS_THE_SHOP),
        };
        Some(BathRange {
            least_c,
            most_c,
            reason,
        })
    }

    /// The same quenchant with its bath at a temperature, °C.
    ///
    /// # Errors
    /// A temperature outside [`Self::bath_range`], or any for a quenchant of the user's own.
    pub fn at_bath(&self, bath_c: f64) -> Result<Self, MediumError> {
        let range = self.bath_range().ok_or(MediumError::OwnBath)?;
        if !(range.least_c..=range.most_c).contains(&bath_c) {
            return Err(MediumError::BathOf {
                title: self.title.clone(),
                bath_c,
                range,
            });
        }
        if (bath_c - self.bath_c).abs() < SAME_K {
            return Ok(self.clone());
        }
        let mut moved = match self.family {
            Family::Water => self.water_at(bath_c),
            Family::Oil | Family::VegetableOil => {
                let factor = linear_held(&OIL_FACTOR, bath_c).unwrap_or(1.0);
                Self {
                    h_w_m2k: self.h_w_m2k.times(factor),
                    ..self.clone()
                }
            }
            _ => self.clone(),
        };
        let nearest_k = listed_baths(self)
            .map(|listed_c| (bath_c - listed_c).abs())
            .fold(f64::INFINITY, f64::min);
        moved.h_band_factor *= (self.family.wider_per_k() * nearest_k).exp();
        moved.title = self.title.at_bath(bath_c);
        moved.bath_c = bath_c;
        Ok(moved)
    }

    /// Water between two baths of the list; colder than the coldest it is as that.
    fn water_at(&self, bath_c: f64) -> Self {
        let mut baths: Vec<&Self> = alike(self).collect();
        baths.sort_by(|a, b| a.bath_c.total_cmp(&b.bath_c));
        let above = baths.partition_point(|water| water.bath_c < bath_c);
        let warmer = baths.get(above).or(baths.last());
        let colder = above.checked_sub(1).and_then(|i| baths.get(i)).or(warmer);
        let (Some(colder), Some(warmer)) = (colder, warmer) else {
            return self.clone();
        };
        let apart_k = warmer.bath_c - colder.bath_c;
        let share = if apart_k > 0.0 {
            ((bath_c - colder.bath_c) / apart_k).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let band = |water: &Self| water.h_band_factor.ln();
        Self {
            h_w_m2k: colder.h_w_m2k.between(&warmer.h_w_m2k, share),
            h_band_factor: ((1.0 - share) * band(colder) + share * band(warmer)).exp(),
            // Its figures are those of the listed bath.
            class: ClassFigures::default(),
            ..self.clone()
        }
    }
}

impl Family {
    /// Growth of the logarithm of the band with the distance from a listed bath, 1/K. Expert values.
    const fn wider_per_k(self) -> f64 {
        match self {
            Self::Polymer => 0.02,
            Self::Water | Self::Brine => 0.01,
            Self::Oil | Self::VegetableOil | Self::HotOil => 0.003,
            Self::Air | Self::Gas => 0.002,
            Self::Salt => 0.0015,
            // The contact, not the plate, holds the heat back.
            Self::Plates | Self::Own => 0.0,
        }
    }
}

/// Listed quenchants that are one and the same but for the bath.
fn alike(medium: &Medium) -> impl Iterator<Item = &'static Medium> {
    let family = medium.family;
    media()
        .iter()
        .filter(move |listed| family == Family::Water && listed.family == family)
}

/// Baths in which a quenchant is listed, °C.
fn listed_baths(medium: &Medium) -> impl Iterator<Item = f64> {
    let listed_c = medium.bath_c;
    alike(medium)
        .map(|listed| listed.bath_c)
        .chain(std::iter::once(listed_c))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Quenching, Section, cool, medium};

    fn at(name: &str, bath_c: f64) -> Medium {
        medium(name).unwrap().at_bath(bath_c).unwrap()
    }

    /// Time from entry to 540 °C of the centre of a 3 mm plate, s.
    fn to_nose_s(medium: &Medium) -> f64 {
        let cooled = cool(&Quenching {
            section: Section::Plate { thickness_mm: 3.0 },
            medium,
            agitation: 1.0,
            start_c: 800.0,
            air_delay_s: 0.0,
            end_c: 100.0_f64.max(medium.bath_c + 10.0),
            then: &[],
            martensite_start_c: None,
        });
        cooled.unwrap().slowest().unwrap().time_to_c(540.0).unwrap()
    }

    #[test]
    fn a_listed_bath_is_the_listed_quenchant() {
        for listed in media() {
            assert_eq!(&listed.at_bath(listed.bath_c).unwrap(), listed);
            let range = listed.bath_range().unwrap();
            let [least, most] = listed.usual_bath_c.unwrap();
            assert!(
                range.least_c <= least && most <= range.most_c,
                "{}",
                listed.name
            );
            for bath_c in [range.least_c, range.most_c] {
                let moved = listed.at_bath(bath_c).unwrap();
                assert_eq!((moved.bath_c, &moved.name), (bath_c, &listed.name));
                assert!(moved.h_band_factor >= 1.0 && moved.h_band_factor < 3.0);
            }
        }
    }

    /// From one water to the other is one curve, and warmer is slower all the way.
    #[test]
    fn warmer_water_is_slower() {
        let forty = at("water20", 40.0);
        assert_eq!(forty.title, medium("water40").unwrap().title);
        for t in [150.0, 333.0, 480.0, 700.0, 900.0] {
            let listed = medium("water40").unwrap().h_w_m2k.at(t);
            approx::assert_relative_eq!(forty.h_w_m2k.at(t), listed, max_relative = 1e-9);
        }
        let times =
            [10.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0].map(|c| to_nose_s(&at("water20", c)));
        assert!(
            times.windows(2).all(|pair| pair[0] <= pair[1] + 1e-3),
            "{times:?}"
        );
        let same = [at("water60", 33.0), at("water40", 33.0)];
        assert!((to_nose_s(&same[0]) - to_nose_s(&same[1])).abs() < 1e-9);
    }

    /// Notes, from memory: from 40 to 70 °C oil boils alike; cold it is a tenth slower.
    #[test]
    fn oil_hardly_changes_until_it_is_cold() {
        let oil = medium("oil_fast").unwrap();
        assert_eq!(at("oil_fast", 70.0).h_w_m2k, oil.h_w_m2k);
        let cold = at("oil_fast", 20.0);
        approx::assert_relative_eq!(
            cold.h_w_m2k.at(600.0),
            0.9 * oil.h_w_m2k.at(600.0),
            max_relative = 1e-9
        );
        assert!(cold.h_band_factor > at("oil_fast", 40.0).h_band_factor);
        assert!(at("oil_fast", 40.0).h_band_factor > oil.h_band_factor);
    }

    #[test]
    fn the_title_says_the_bath_once_it_differs() {
        assert_eq!(
            at("oil_fast", 70.0).title.to_string(),
            "Fast oil, 70\u{a0}°C"
        );
        assert_eq!(at("oil_fast", 50.0).title.to_string(), "Fast oil");
        assert_eq!(
            at("salt200_still", 240.0).title.to_string(),
            "Salt bath, 240\u{a0}°C, still"
        );
    }

    #[test]
    fn baths_beyond_what_is_known_are_refused_with_the_reason() {
        let refused = |name: &str, bath_c: f64| {
            let error = medium(name).unwrap().at_bath(bath_c).unwrap_err();
            error.to_string()
        };
        let hot = refused("oil_fast", 120.0);
        assert!(
            hot.contains("120\u{a0}°C is outside 20 to 80\u{a0}°C") && hot.contains("flash point"),
            "{hot}"
        );
        assert!(refused("salt200_still", 120.0).contains("freezes"));
        assert!(refused("water20", f64::NAN).contains("10 to 60"));
    }
}
