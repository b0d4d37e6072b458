//! What a shop says of a route: by which furnace it goes, what is open about it, and in words what
//! pieces are drawn with.

use super::inputs::{Tolerances, only_known_grade};
use super::shop::{Furnace, Shop};
use crate::route::Route;
use crate::units::{
    LengthUnit, TemperatureScale, format_fixed, format_given_length, format_percent,
    format_temperature_band,
};
use recalesce_texts::advise::shop as texts;

impl Shop {
    /// The furnace that a route goes by, where one alone has its band and its thermocouple and reaches
    /// its soak.
    #[must_use]
    pub fn furnace_of(&self, route: &Route) -> Option<&Furnace> {
        let mut all = self
            .furnaces
            .iter()
            .filter(|furnace| furnace.may_be_of(route));
        let first = all.next();
        first.filter(|_| all.next().is_none())
    }

    /// Whether its oven reaches the last temper of a route.
    fn is_tempered_in_oven(&self, route: &Route) -> bool {
        let last = route.tempers.last();
        last.is_some_and(|temper| self.oven_for(temper.temperature_c).is_some())
    }

    /// What is open about a route in this shop: its oven counts for the last temper, or a furnace that holds where
    /// the oven does not reach it. All else as usual.
    #[must_use]
    pub fn tolerances(&self, route: &Route) -> Tolerances {
        let last = route.tempers.last();
        Tolerances {
            temper_band_k: last.and_then(|temper| self.temper_band_k(temper.temperature_c)),
            ..Tolerances::default()
        }
    }
}

/// What pieces of a route are drawn with: of a shop, or as usual where it does not tell.
#[must_use]
pub fn counted_words(
    route: &Route,
    shop: Option<&Shop>,
    scale: TemperatureScale,
    length: LengthUnit,
) -> String {
    let band = |band_k| format_temperature_band(band_k, scale);
    let tolerances = shop.map_or_else(Tolerances::default, |shop| shop.tolerances(route));
    let furnace = shop.and_then(|shop| shop.furnace_of(route));
    let soak_band = band(route.soak_band_k());
    let furnace = match (shop, furnace.map(|furnace| furnace.name.trim())) {
        (None, _) => texts::furnace(&soak_band),
        (Some(_), Some("")) => texts::furnace_of_shop(&soak_band),
        (Some(_), Some(name)) => texts::furnace_named(&soak_band, name),
        (Some(_), None) => texts::furnace_of_none(&soak_band),
    };
    let mut parts = vec![furnace];
    if !route.tempers.is_empty() {
        parts.push(match (tolerances.temper_band_k, shop) {
            (Some(band_k), Some(shop)) if shop.is_tempered_in_oven(route) => {
                texts::tempers_by_oven(&band(band_k))
            }
            (Some(band_k), _) => texts::tempers_by_furnace(&band(band_k)),
            (None, _) => texts::TEMPERS_BY_FURNACE_OF_SOAK.to_owned(),
        });
    }
    parts.push(texts::thickness(&format_given_length(
        tolerances.thickness_band_mm,
        length,
    )));
    parts.push(if only_known_grade(route).is_some() {
        texts::ANY_HEAT.to_owned()
    } else {
        texts::certificate(&format_percent(tolerances.certificate_part))
    });
    let tester = shop.and_then(|shop| shop.tester);
    parts.extend(tester.map(|tester| texts::tester(&format_fixed(tester.error_hrc, 1))));
    texts::drawn_with(&parts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advise::{TemperOven, Tester};
    use crate::route::Thermocouple;

    fn said(route: &Route, shop: Option<&Shop>) -> String {
        let celsius = TemperatureScale::Celsius;
        let words = counted_words(route, shop, celsius, LengthUnit::Millimetre);
        words.replace('\u{a0}', " ")
    }

    #[test]
    fn it_is_told_what_is_of_the_shop_and_what_is_usual() {
        let mut route = Route::example();
        route.furnace_band_k = 6.0;
        route.thermocouple = Thermocouple::Checked;
        let usual = said(&route, None);
        assert!(
            usual.starts_with("Drawn with the furnace as on the bench, within ±6 °C; tempers as far off as that furnace is there; thickness within ±0.10 mm, as usual; "),
            "{usual}"
        );
        let mut shop = Shop::example();
        shop.furnaces[0].band_k = 6.0;
        shop.furnaces[0].thermocouple = Thermocouple::Checked;
        shop.temper_oven = Some(TemperOven {
            least_c: 100.0,
            most_c: 300.0,
            band_k: 3.0,
        });
        shop.tester = Some(Tester { error_hrc: 1.5 });
        assert_eq!(shop.tolerances(&route).temper_band_k, Some(3.0));
        let mut hot = route.clone();
        for temper in &mut hot.tempers {
            temper.temperature_c = 450.0;
        }
        assert!(!said(&hot, Some(&shop)).contains("your oven"));
        let own = said(&route, Some(&shop));
        for part in [
            "within ±6 °C, “Kiln” of your shop; ",
            "tempers within ±3 °C, your oven; ",
            "your tester within ±1.5 HRC, for what it reads.",
        ] {
            assert!(own.contains(part), "{own}");
        }
        // A band that no furnace of the shop has is that of the bench all the same.
        route.furnace_band_k = 15.0;
        assert_eq!(shop.furnace_of(&route), None);
        let other = said(&route, Some(&shop));
        assert!(other.contains("within ±15 °C, not that of any one furnace of your shop"));
        route.grade = None;
        assert!(
            said(&route, Some(&shop))
                .contains("contents of the certificate within 3.0 %, as usual")
        );
        route.furnace_band_k = 6.0;
        shop.furnaces.push(shop.furnaces[0].clone());
        assert_eq!(shop.furnace_of(&route), None);
    }
}
