//! What a shop can mean: the range of every number of it.

use super::shop::{Furnace, Shop};
use crate::heat::AGITATION;
use crate::route::LONGEST_TEXT;
use crate::units::{TemperatureScale, outside_on_scale};
use recalesce_texts::advise::{error, shop as texts};

/// What is wrong with a shop.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{field}: {message}")]
pub struct ShopError {
    /// The field concerned, as a saved shop names it: `furnaces[0].band_k`.
    pub field: String,
    /// What is wrong with it, and what is allowed, with temperatures in °C.
    pub message: String,
    /// The same in °F.
    fahrenheit: String,
}

impl ShopError {
    fn new(field: String, words: impl Fn(TemperatureScale) -> String) -> Self {
        Self {
            field,
            message: words(TemperatureScale::Celsius),
            fahrenheit: words(TemperatureScale::Fahrenheit),
        }
    }

    /// The field, what is wrong with it and what is allowed, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match scale {
            TemperatureScale::Celsius => self.to_string(),
            TemperatureScale::Fahrenheit => format!("{}: {}", self.field, self.fahrenheit),
        }
    }
}

impl Shop {
    /// Most things of one kind (expert value).
    pub const MOST_OF_A_KIND: usize = 20;
    /// Settings of a furnace, °C as it reads.
    pub const FURNACE_C: (f64, f64) = (20.0, 1300.0);
    /// Settings of a temper oven, °C.
    pub const OVEN_C: (f64, f64) = (20.0, 750.0);
    /// What a piece gets down to in a means of cooling, °C.
    pub const COLD_C: (f64, f64) = (-200.0, 20.0);
    /// How far a piece may be from what furnace or oven read, K either way.
    pub const BAND_K: (f64, f64) = (0.0, 100.0);
    /// How much hotter a piece is than the furnace reads, K.
    pub const OFFSET_K: (f64, f64) = (-100.0, 100.0);
    /// Heat transfer of a quenchant as used, times that of the still bath.
    pub const AGITATION: (f64, f64) = AGITATION;
    /// Error of a hardness tester, HRC.
    pub const TESTER_HRC: (f64, f64) = (0.2, 10.0);

    /// Checks that every number is one that a shop could mean, and that there is something to harden
    /// with.
    ///
    /// # Errors
    /// The first field that makes no sense, with what is allowed.
    pub fn validate(&self) -> Result<(), ShopError> {
        let most = Self::MOST_OF_A_KIND;
        let count = |field: &str, count: usize, least: usize| {
            if (least..=most).contains(&count) {
                return Ok(());
            }
            Err(ShopError::new(field.to_owned(), |_| {
                texts::how_many_allowed(count, least, most)
            }))
        };
        count("furnaces", self.furnaces.len(), 1)?;
        count("quenchants", self.quenchants.len(), 1)?;
        count("colds", self.colds.len(), 0)?;
        for (i, furnace) in self.furnaces.iter().enumerate() {
            furnace.validate(&format!("furnaces[{i}]"))?;
        }
        for (i, quenchant) in self.quenchants.iter().enumerate() {
            let at = format!("quenchants[{i}]");
            number(&at, "agitation", quenchant.agitation, Self::AGITATION, "")?;
            let medium = quenchant.medium.resolve();
            medium.map_err(|e| ShopError::new(format!("{at}.medium"), |scale| e.words(scale)))?;
        }
        for (i, cold) in self.colds.iter().enumerate() {
            let at = format!("colds[{i}]");
            name(&at, &cold.name)?;
            number(&at, "temperature_c", cold.temperature_c, Self::COLD_C, "°C")?;
        }
        if let Some(oven) = &self.temper_oven {
            let at = "temper_oven";
            range(at, [oven.least_c, oven.most_c], Self::OVEN_C)?;
            number(at, "band_k", oven.band_k, Self::BAND_K, "K")?;
        }
        if let Some(tester) = &self.tester {
            number(
                "tester",
                "error_hrc",
                tester.error_hrc,
                Self::TESTER_HRC,
                "HRC",
            )?;
        }
        Ok(())
    }
}

impl Furnace {
    fn validate(&self, at: &str) -> Result<(), ShopError> {
        name(at, &self.name)?;
        range(at, [self.least_c, self.most_c], Shop::FURNACE_C)?;
        number(at, "band_k", self.band_k, Shop::BAND_K, "K")?;
        number(at, "offset_k", self.offset_k, Shop::OFFSET_K, "K")
    }
}

fn number(
    at: &str,
    field: &str,
    value: f64,
    (least, most): (f64, f64),
    unit: &'static str,
) -> Result<(), ShopError> {
    if (least..=most).contains(&value) {
        return Ok(());
    }
    Err(ShopError::new(format!("{at}.{field}"), |scale| {
        let (told, unit) = outside_on_scale([value, least, most], unit, scale);
        error::outside(&told, unit)
    }))
}

fn range(at: &str, [least_c, most_c]: [f64; 2], allowed: (f64, f64)) -> Result<(), ShopError> {
    number(at, "least_c", least_c, allowed, "°C")?;
    number(at, "most_c", most_c, allowed, "°C")?;
    if least_c > most_c {
        return Err(ShopError::new(format!("{at}.most_c"), |scale| {
            let ([hottest, coolest, _], unit) =
                outside_on_scale([most_c, least_c, allowed.1], "°C", scale);
            texts::hottest_below_coolest(&hottest, &coolest, unit)
        }));
    }
    Ok(())
}

fn name(at: &str, name: &str) -> Result<(), ShopError> {
    let length = name.chars().count();
    if length > LONGEST_TEXT {
        return Err(ShopError::new(format!("{at}.name"), |_| {
            texts::name_too_long(length, LONGEST_TEXT)
        }));
    }
    Ok(())
}
