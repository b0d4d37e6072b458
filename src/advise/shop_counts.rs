//! What a shop says of a route: by which furnace it goes, what is open about it, and in words what
//! pieces are drawn with.

use super::inputs::{Tolerances, only_known_grade};
use super::shop::{Furnace, Shop};
use crate::route::Route;
use crate::units::{
    LengthUnit, TemperatureScale, format_fixed, format_length, format_percent,
    format_temperature_band,
};

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

    /// What is open about a route in this shop: its oven counts for the last temper. All else as usual.
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
    let within = |band_k| format!("within {}", format_temperature_band(band_k, scale));
    let tolerances = shop.map_or_else(Tolerances::default, |shop| shop.tolerances(route));
    let furnace = shop.and_then(|shop| shop.furnace_of(route));
    let furnace = match (shop, furnace.map(|furnace| furnace.name.trim())) {
        (None, _) => String::new(),
        (Some(_), Some("")) => ", of your shop".to_owned(),
        (Some(_), Some(name)) => format!(", “{name}” of your shop"),
        (Some(_), None) => ", not that of any one furnace of your shop".to_owned(),
    };
    let mut parts = vec![format!(
        "the furnace as on the bench, {}{furnace}",
        within(route.soak_band_k())
    )];
    if !route.tempers.is_empty() {
        parts.push(match (tolerances.temper_band_k, shop) {
            (Some(band_k), Some(shop)) if shop.temper_oven.is_some() => {
                format!("tempers {}, your oven", within(band_k))
            }
            (Some(band_k), _) => format!("tempers {}, your furnace", within(band_k)),
            (None, _) => "tempers as far off as that furnace is there".to_owned(),
        });
    }
    parts.push(format!(
        "thickness within ±{}, as usual",
        format_length(tolerances.thickness_band_mm, length)
    ));
    parts.push(if only_known_grade(route).is_some() {
        "any heat of the grade".to_owned()
    } else {
        format!(
            "contents of the certificate within {}, as usual",
            format_percent(tolerances.certificate_part)
        )
    });
    let tester = shop.and_then(|shop| shop.tester).map(|tester| {
        let error_hrc = format_fixed(tester.error_hrc, 1);
        format!("your tester within ±{error_hrc}\u{a0}HRC, for what it reads")
    });
    parts.extend(tester);
    format!("Drawn with {}.", parts.join("; "))
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
