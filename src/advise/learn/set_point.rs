//! What a furnace whose offset was learnt is to be set to.

use super::correction::Correction;
use super::unknown::{Owner, UnknownKind};
use crate::route::Route;
use crate::units::{TemperatureScale, format_temperature};

/// Difference of set points that no furnace shows, K: half a degree.
const SAME_K: f64 = 0.5;

/// What the furnace of a route is to be set to, for its pieces to be as hot as the soak asks.
#[derive(Debug, Clone, PartialEq)]
pub struct SetPoint {
    /// What it is called inside a sentence.
    pub furnace: String,
    /// How much hotter pieces are than it reads, K, as was learnt.
    pub offset_k: f64,
    /// What the soak asks of the pieces, °C.
    pub wanted_c: f64,
    /// What to set for that, °C, within what the furnace can be set to.
    pub set_c: f64,
    /// What the furnace is set to as planned, °C.
    pub planned_c: f64,
}

impl SetPoint {
    /// How hot the pieces are where it is set so, °C.
    #[must_use]
    pub fn reached_c(&self) -> f64 {
        self.set_c + self.offset_k
    }

    /// Whether the furnace can be set to it.
    #[must_use]
    pub fn is_reached(&self) -> bool {
        (self.reached_c() - self.wanted_c).abs() < SAME_K
    }

    /// Whether the route is set so as planned.
    #[must_use]
    pub fn is_planned(&self) -> bool {
        (self.set_c - self.planned_c).abs() < SAME_K
    }

    /// In a sentence.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let degrees = |at_c| format_temperature(at_c, scale);
        let [set, wanted, reached] = [self.set_c, self.wanted_c, self.reached_c()].map(degrees);
        if !self.is_reached() {
            let end = if self.reached_c() < self.wanted_c {
                "no hotter"
            } else {
                "no cooler"
            };
            return format!(
                "To have {wanted} at the piece, {} would have to read {}, and can be set {end} than {set}: the piece is at {reached} then.",
                self.furnace,
                degrees(self.wanted_c - self.offset_k)
            );
        }
        if self.is_planned() {
            return format!("Set {set} to have {wanted} at the piece.");
        }
        format!(
            "Set to {}, as planned, the piece comes to {}, and the numbers count with that; {set} would give {wanted}. Check it with a second thermocouple first.",
            degrees(self.planned_c),
            degrees(self.planned_c + self.offset_k)
        )
    }
}

impl Correction {
    /// What the furnace of a route is to be set to; none where its offset was not learnt, or does not
    /// act.
    #[must_use]
    pub fn set_point(&self, route: &Route) -> Option<SetPoint> {
        let place = self.furnace_of(route)?;
        let furnace = self.furnaces.get(place)?;
        let mut acting = self.acting(route, Some(place));
        let offset = acting.find(|one| one.kind == UnknownKind::FurnaceOffset)?;
        let wanted_c = route.soak.temperature_c;
        // A furnace from a file may have its ends the wrong way round.
        let set_c = (wanted_c - offset.value)
            .max(furnace.least_c)
            .min(furnace.most_c);
        Some(SetPoint {
            furnace: Owner::Furnace(Some(place)).name(&self.furnaces, TemperatureScale::Celsius),
            offset_k: offset.value,
            wanted_c,
            set_c,
            planned_c: route.set_point_c(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advise::{Corrected, Furnace};
    use crate::route::{MODELS, Thermocouple, run};

    fn learnt(offset_k: f64, most_c: f64) -> Correction {
        Correction {
            is_on: true,
            models: Some(MODELS.to_owned()),
            furnaces: vec![Furnace {
                name: "kiln".to_owned(),
                least_c: 400.0,
                most_c,
                band_k: 6.0,
                offset_k: 0.0,
                thermocouple: Thermocouple::Checked,
                holds: true,
            }],
            learnt: vec![Corrected {
                kind: UnknownKind::FurnaceOffset,
                owner: Owner::Furnace(Some(0)),
                value: offset_k,
                left_part: 0.5,
                runs: 3,
                tempers_c: None,
            }],
        }
    }

    fn route() -> Route {
        let mut route = Route::example();
        route.furnace_band_k = 6.0;
        route.thermocouple = Thermocouple::Checked;
        route.soak.temperature_c = 845.0;
        route
    }

    fn said(learnt: &Correction, route: &Route, scale: TemperatureScale) -> String {
        let words = learnt.set_point(route).unwrap().words(scale);
        words.replace('\u{a0}', " ")
    }

    #[test]
    fn it_is_told_what_to_set_to_have_what_is_asked() {
        let celsius = TemperatureScale::Celsius;
        let learnt = learnt(12.0, 1100.0);
        let mut route = route();
        assert_eq!(
            said(&learnt, &route, celsius),
            "Set to 845 °C, as planned, the piece comes to 857 °C, and the numbers count with that; 833 °C would give 845 °C. Check it with a second thermocouple first."
        );
        assert_eq!(
            said(&learnt, &route, TemperatureScale::Fahrenheit),
            "Set to 1553 °F, as planned, the piece comes to 1575 °F, and the numbers count with that; 1531 °F would give 1553 °F. Check it with a second thermocouple first."
        );
        // As planned it comes out as told.
        let taught = Route {
            taught: learnt.taught(&route),
            ..route.clone()
        };
        let outcome = run(&taught).unwrap();
        assert_eq!(outcome.furnace.set_point_c, 845.0);
        assert_eq!(taught.as_taught().soak.temperature_c, 857.0);
        // Set so the pieces are as hot as asked, and that is the plan.
        route.furnace_offset_k = 12.0;
        assert_eq!(
            said(&learnt, &route, celsius),
            "Set 833 °C to have 845 °C at the piece."
        );
        assert_eq!(learnt.taught(&route).unwrap().off.soak_k, 0.0);
        // The line that tells of the offset has it.
        let [words] = &learnt.words(&route, celsius)[..] else {
            panic!("one thing is told");
        };
        assert!(words.ends_with("at the piece."), "{words}");
    }

    #[test]
    fn a_furnace_is_set_to_what_it_can_be() {
        let celsius = TemperatureScale::Celsius;
        let cold = learnt(-30.0, 860.0);
        let mut route = route();
        let found = cold.set_point(&route).unwrap();
        assert_eq!(
            (found.set_c, found.reached_c(), found.is_reached()),
            (860.0, 830.0, false)
        );
        assert_eq!(
            said(&cold, &route, celsius),
            "To have 845 °C at the piece, the furnace “kiln” would have to read 875 °C, and can be set no hotter than 860 °C: the piece is at 830 °C then."
        );
        // A furnace that is not known, or what is switched off, tells nothing.
        route.furnace_band_k = 20.0;
        assert_eq!(cold.set_point(&route), None);
        let off = Correction {
            is_on: false,
            ..learnt(12.0, 1100.0)
        };
        assert_eq!(off.set_point(&self::route()), None);
    }
}
