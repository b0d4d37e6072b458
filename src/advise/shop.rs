//! What a shop owns: entered once, used by everything that decides.

use super::coupon::USUAL_TESTER_HRC;
use crate::heat::MediumChoice;
use crate::route::{Route, Thermocouple, stir_after};
use recalesce_texts::advise::shop as texts;
use serde::{Deserialize, Serialize};

/// Band of a forge or furnace whose temperature is not held, K either way: by eye, with a magnet or a
/// pyrometer (expert value).
const NOT_HELD_BAND_K: f64 = 40.0;

/// Everything that a shop owns.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shop {
    /// Furnaces and forges for the soak.
    pub furnaces: Vec<Furnace>,
    /// Quenchants.
    pub quenchants: Vec<Quenchant>,
    /// Means of cooling below room temperature.
    #[serde(default)]
    pub colds: Vec<ColdBath>,
    /// Oven for tempers; where there is none the furnaces that hold their temperature serve.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temper_oven: Option<TemperOven>,
    /// Hardness tester, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tester: Option<Tester>,
}

/// A furnace or a forge.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Furnace {
    /// What the shop calls it.
    pub name: String,
    /// Coolest to which it can be set, °C as it reads: 20 to 1300.
    pub least_c: f64,
    /// Hottest, °C as it reads: 20 to 1300.
    pub most_c: f64,
    /// How far the piece may be from the reading, K either way: 0 to 100.
    pub band_k: f64,
    /// How much hotter the piece is than the reading, K, as a survey has found: -100 to 100.
    #[serde(default)]
    pub offset_k: f64,
    /// The thermocouple that it goes by.
    #[serde(default)]
    pub thermocouple: Thermocouple,
    /// Whether it holds a temperature by itself: a forge does not.
    #[serde(default = "yes")]
    pub holds: bool,
}

/// A quenchant as it is used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Quenchant {
    /// Of the list, or the shop's own.
    pub medium: MediumChoice,
    /// Factor on the heat transfer of the still bath: 0.05 to 20.
    #[serde(default = "still")]
    pub agitation: f64,
}

impl Quenchant {
    /// Takes the place of another medium; it is stirred as far as both can be.
    pub fn take(&mut self, medium: MediumChoice) {
        self.agitation = stir_after([&self.medium, &medium], self.agitation);
        self.medium = medium;
    }
}

/// A means of cooling below room temperature.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ColdBath {
    /// What the shop calls it.
    pub name: String,
    /// Coldest that a piece gets in it, °C: -200 to 20.
    pub temperature_c: f64,
}

/// An oven for tempers.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperOven {
    /// Coolest at which it can be used, °C: 20 to 750.
    pub least_c: f64,
    /// Hottest, °C: 20 to 750.
    pub most_c: f64,
    /// How far a piece may be from the temperature asked, K either way: 0 to 100.
    pub band_k: f64,
}

/// A hardness tester.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tester {
    /// How far a reading may be from the hardness, HRC either way: 0.2 to 10; a set of files is about
    /// 3 (expert value).
    #[serde(default = "checked_tester_hrc")]
    pub error_hrc: f64,
}

const fn yes() -> bool {
    true
}

const fn still() -> f64 {
    1.0
}

const fn checked_tester_hrc() -> f64 {
    USUAL_TESTER_HRC
}

impl Furnace {
    /// How far the piece may be from the reading, K either way; wide where the temperature is not
    /// held.
    #[must_use]
    pub fn band_k(&self) -> f64 {
        if self.holds {
            self.band_k
        } else {
            self.band_k.max(NOT_HELD_BAND_K)
        }
    }

    /// Whether a piece can be brought to a temperature in it, °C: it has to be set to less where the
    /// piece is hotter than it reads.
    #[must_use]
    pub(super) fn reaches(&self, temperature_c: f64) -> bool {
        let set_point_c = temperature_c - self.offset_k;
        (self.least_c..=self.most_c).contains(&set_point_c)
    }

    /// Whether a route may have been planned for it: it has its band and its thermocouple, and reaches
    /// its soak.
    pub(super) fn may_be_of(&self, route: &Route) -> bool {
        self.band_k() == route.furnace_band_k
            && self.thermocouple == route.thermocouple
            && self.reaches(route.soak.temperature_c)
    }
}

impl Shop {
    /// A small workshop that makes marking knives, chisels and plane irons: made up, to begin with.
    #[must_use]
    pub fn example() -> Self {
        let quenchant = |name: &str| Quenchant {
            medium: MediumChoice::Named(name.to_owned()),
            agitation: 1.0,
        };
        Self {
            furnaces: vec![Furnace {
                name: texts::EXAMPLE_FURNACE.to_owned(),
                least_c: 100.0,
                most_c: 1100.0,
                band_k: 8.0,
                offset_k: 0.0,
                thermocouple: Thermocouple::default(),
                holds: true,
            }],
            quenchants: ["oil_fast", "canola60"].map(quenchant).to_vec(),
            colds: vec![ColdBath {
                name: texts::EXAMPLE_COLD.to_owned(),
                temperature_c: -18.0,
            }],
            temper_oven: Some(TemperOven {
                least_c: 100.0,
                most_c: 300.0,
                band_k: 8.0,
            }),
            tester: None,
        }
    }

    /// The furnace for a soak at a temperature, °C: of those that reach it the one that is nearest
    /// to what it reads.
    #[must_use]
    pub(super) fn furnace_for(&self, temperature_c: f64) -> Option<&Furnace> {
        let band_k = |furnace: &&Furnace| {
            let of_thermocouple = furnace.thermocouple.tolerance_k(temperature_c);
            furnace.band_k().hypot(of_thermocouple)
        };
        let reaching = self
            .furnaces
            .iter()
            .filter(|furnace| furnace.reaches(temperature_c));
        reaching.min_by(|a, b| band_k(a).total_cmp(&band_k(b)))
    }

    /// The oven for tempers, where it reaches a temperature, °C.
    pub(super) fn oven_for(&self, temperature_c: f64) -> Option<TemperOven> {
        let reaches = |oven: &TemperOven| (oven.least_c..=oven.most_c).contains(&temperature_c);
        self.temper_oven.filter(reaches)
    }

    /// How far a piece may be from a temper's temperature, °C, in the best that the shop has for it,
    /// K either way; none where nothing reaches it.
    #[must_use]
    pub fn temper_band_k(&self, temperature_c: f64) -> Option<f64> {
        // A spring is tempered hotter than a baking oven gets: then in a furnace that holds it.
        if let Some(oven) = self.oven_for(temperature_c) {
            return Some(oven.band_k);
        }
        let furnace = self
            .furnace_for(temperature_c)
            .filter(|furnace| furnace.holds)?;
        let of_thermocouple = furnace.thermocouple.tolerance_k(temperature_c);
        Some(furnace.band_k().hypot(of_thermocouple))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::ListedAt;
    use crate::units::TemperatureScale;

    fn furnace(name: &str, band_k: f64, holds: bool) -> Furnace {
        Furnace {
            name: name.to_owned(),
            least_c: 100.0,
            most_c: 1100.0,
            band_k,
            offset_k: 0.0,
            thermocouple: Thermocouple::Checked,
            holds,
        }
    }

    fn shop() -> Shop {
        Shop {
            furnaces: vec![furnace("forge", 10.0, false), furnace("kiln", 12.0, true)],
            quenchants: vec![Quenchant {
                medium: MediumChoice::Named("oil_medium".to_owned()),
                agitation: 1.0,
            }],
            ..Shop::default()
        }
    }

    #[test]
    fn still_air_in_place_of_moved_oil_is_not_moved() {
        let mut quenchant = shop().quenchants.remove(0);
        quenchant.agitation = 1.6;
        quenchant.take(MediumChoice::Named("oil_fast".to_owned()));
        assert_eq!(quenchant.agitation, 1.6);
        quenchant.take(MediumChoice::Named("air_still".to_owned()));
        assert_eq!(quenchant.agitation, 1.0);
    }

    #[test]
    fn a_forge_is_a_furnace_with_a_wide_band() {
        let shop = shop();
        assert_eq!(shop.furnaces[0].band_k(), NOT_HELD_BAND_K);
        assert_eq!(
            shop.furnace_for(830.0).map(|f| f.name.as_str()),
            Some("kiln")
        );
        assert_eq!(shop.furnace_for(1200.0), None);
        assert_eq!(shop.temper_band_k(200.0), Some(12.0));
        let only_forge = Shop {
            furnaces: vec![furnace("forge", 10.0, false)],
            ..shop.clone()
        };
        assert_eq!(only_forge.temper_band_k(200.0), None);
        let with_oven = Shop {
            temper_oven: Some(TemperOven {
                least_c: 100.0,
                most_c: 300.0,
                band_k: 4.0,
            }),
            ..shop
        };
        assert_eq!(with_oven.temper_band_k(200.0), Some(4.0));
        assert_eq!(with_oven.temper_band_k(450.0), Some(12.0));
    }

    /// A furnace whose piece is 20 K hotter than it reads is set to 20 K less.
    #[test]
    fn a_furnace_must_be_able_to_read_the_set_point() {
        let hot = Furnace {
            offset_k: 20.0,
            ..furnace("kiln", 8.0, true)
        };
        assert!(hot.reaches(1120.0) && !hot.reaches(1121.0));
        assert!(hot.reaches(120.0) && !hot.reaches(119.0));
        let cold = Furnace {
            offset_k: -30.0,
            ..hot
        };
        assert!(cold.reaches(1070.0) && !cold.reaches(1080.0));
    }

    #[test]
    fn faults_tell_temperatures_on_a_scale() {
        let told = |change: fn(&mut Shop)| {
            let mut shop = shop();
            change(&mut shop);
            let error = shop.validate().unwrap_err();
            error.words(TemperatureScale::Fahrenheit)
        };
        assert_eq!(
            told(|s| s.furnaces[1].band_k = 110.0),
            "furnaces[1].band_k: 198 is outside 0 to 180 °F"
        );
        assert_eq!(
            told(|s| s.furnaces[0].most_c = 50.0),
            "furnaces[0].most_c: 122 °F is below the coolest, 212 °F"
        );
        assert!(
            told(|s| s.quenchants[0].medium = MediumChoice::At(ListedAt {
                listed: "water20".to_owned(),
                bath_c: 90.0,
            }))
            .contains("a bath of 194\u{a0}°F is outside 50 to 140\u{a0}°F")
        );
    }

    #[test]
    fn faults_are_named_with_what_is_allowed() {
        let fault = |change: fn(&mut Shop)| {
            let mut shop = shop();
            change(&mut shop);
            shop.validate().err().map(|e| e.to_string())
        };
        assert_eq!(fault(|_| ()), None);
        let named = |change, words: &str| {
            let fault = fault(change).unwrap();
            assert!(fault.contains(words), "{fault}");
        };
        named(|s| s.furnaces.clear(), "furnaces: there are 0; 1 to 20");
        named(
            |s| s.furnaces[1].band_k = -1.0,
            "furnaces[1].band_k: −1 is outside 0 to 100 K",
        );
        named(
            |s| s.furnaces[0].most_c = 50.0,
            "50 °C is below the coolest, 100 °C",
        );
        named(
            |s| s.quenchants[0].medium = MediumChoice::Named("quicksilver".to_owned()),
            "quenchants[0].medium",
        );
        named(
            |s| {
                s.colds.push(ColdBath {
                    name: "freezer".to_owned(),
                    temperature_c: f64::NAN,
                });
            },
            "colds[0].temperature_c",
        );
        named(
            |s| s.tester = Some(Tester { error_hrc: 0.0 }),
            "tester.error_hrc",
        );
    }

    #[test]
    fn a_saved_shop_is_read_strictly() {
        let shop = shop();
        let text = serde_json::to_string(&shop).unwrap();
        assert_eq!(serde_json::from_str::<Shop>(&text).unwrap(), shop);
        let wrong = text.replace("\"band_k\"", "\"band\"");
        assert!(serde_json::from_str::<Shop>(&wrong).is_err());
    }
}
