//! What a furnace or an oven whose offset was learnt is to be set to. Not told where the measurements do
//! not tell that offset from something else: to set the furnace otherwise would then as likely spoil the
//! piece as mend it.

use super::correction::{Corrected, Correction};
use super::unknown::{Owner, UnknownKind};
use crate::route::{Route, TEMPER_C};
use crate::units::{TemperatureScale, format_temperature, format_temperature_within};

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
    /// How far that offset may be off either way, nine in ten, K.
    pub band_k: f64,
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
        let within = |at_c| format_temperature_within(at_c, self.band_k, scale);
        let [set, wanted] = [self.set_c, self.wanted_c].map(degrees);
        if !self.is_reached() {
            let end = if self.reached_c() < self.wanted_c {
                "no hotter"
            } else {
                "no cooler"
            };
            return format!(
                "To have {wanted} at the piece, {} would have to read {}, nine in ten, and can be set {end} than {set}: the piece is at {} then.",
                self.furnace,
                within(self.wanted_c - self.offset_k),
                within(self.reached_c())
            );
        }
        if self.is_planned() {
            return format!(
                "Set {}, nine in ten, to have {wanted} at the piece.",
                within(self.set_c)
            );
        }
        format!(
            "{} Check it with a second thermocouple first.",
            set_otherwise(
                self.planned_c,
                self.offset_k,
                self.band_k,
                self.wanted_c,
                scale
            )
        )
    }
}

/// What comes of a set point as planned, and which would give what is wanted.
fn set_otherwise(
    planned_c: f64,
    offset_k: f64,
    band_k: f64,
    wanted_c: f64,
    scale: TemperatureScale,
) -> String {
    format!(
        "Set to {}, as planned, the piece comes to {}, and the numbers count with that; {}, nine in ten, would give {}.",
        format_temperature(planned_c, scale),
        format_temperature(planned_c + offset_k, scale),
        format_temperature_within(wanted_c - offset_k, band_k, scale),
        format_temperature(wanted_c, scale)
    )
}

/// How far an offset may be off, K, or why nothing is told of what to set by it.
fn band_or_why(corrected: &Corrected) -> Result<f64, String> {
    if let Some(other) = corrected.entangled_with.first() {
        return Err(format!(
            "What to set is not told: the measurements do not tell this from {}. A survey with a second thermocouple would.",
            other.in_short()
        ));
    }
    corrected.half_band.ok_or_else(|| {
        "What to set is told, with how sure that is, once the logbook is read again.".to_owned()
    })
}

/// What the oven of the tempers of a route is to be set to for each of them, or why that is not told, in
/// sentences; none where it is right as it is, or cannot be set so.
pub(super) fn oven_words(
    corrected: &Corrected,
    route: &Route,
    scale: TemperatureScale,
) -> Option<String> {
    let offset_k = corrected.value;
    let mut asked_c: Vec<f64> = Vec::new();
    for temper in &route.tempers {
        let set_c = temper.temperature_c - offset_k;
        let can_be_set = (TEMPER_C.0..=TEMPER_C.1).contains(&set_c);
        if can_be_set && !asked_c.contains(&temper.temperature_c) {
            asked_c.push(temper.temperature_c);
        }
    }
    if offset_k.abs() < SAME_K || asked_c.is_empty() {
        return None;
    }
    Some(match band_or_why(corrected) {
        Ok(band_k) => {
            let each = asked_c
                .into_iter()
                .map(|at_c| set_otherwise(at_c, offset_k, band_k, at_c, scale));
            each.collect::<Vec<_>>().join(" ")
        }
        Err(why) => why,
    })
}

impl Correction {
    /// What the furnace of a route is to be set to; none where its offset was not learnt, does not act, or
    /// is not told from something else.
    #[must_use]
    pub fn set_point(&self, route: &Route) -> Option<SetPoint> {
        self.told_set_point(route)?.ok()
    }

    /// The same in a sentence, or why it is not told; none where its offset was not learnt or does not
    /// act.
    #[must_use]
    pub fn set_words(&self, route: &Route, scale: TemperatureScale) -> Option<String> {
        let told = self.told_set_point(route)?;
        Some(told.map_or_else(|why| why, |set| set.words(scale)))
    }

    fn told_set_point(&self, route: &Route) -> Option<Result<SetPoint, String>> {
        let place = self.furnace_of(route)?;
        let furnace = self.furnaces.get(place)?;
        let mut acting = self.acting(route, Some(place));
        let offset = acting.find(|one| one.kind == UnknownKind::FurnaceOffset)?;
        let band_k = match band_or_why(offset) {
            Ok(band_k) => band_k,
            Err(why) => return Some(Err(why)),
        };
        let wanted_c = route.soak.temperature_c;
        // A furnace from a file may have its ends the wrong way round.
        let set_c = (wanted_c - offset.value)
            .max(furnace.least_c)
            .min(furnace.most_c);
        Some(Ok(SetPoint {
            furnace: Owner::Furnace(Some(place)).name(&self.furnaces, TemperatureScale::Celsius),
            offset_k: offset.value,
            band_k,
            wanted_c,
            set_c,
            planned_c: route.set_point_c(),
        }))
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
                half_band: Some(5.2),
                entangled_with: Vec::new(),
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
            "Set to 845 °C, as planned, the piece comes to 857 °C, and the numbers count with that; 833 ± 6 °C, nine in ten, would give 845 °C. Check it with a second thermocouple first."
        );
        assert_eq!(
            said(&learnt, &route, TemperatureScale::Fahrenheit),
            "Set to 1553 °F, as planned, the piece comes to 1575 °F, and the numbers count with that; 1531 ± 10 °F, nine in ten, would give 1553 °F. Check it with a second thermocouple first."
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
            "Set 833 ± 6 °C, nine in ten, to have 845 °C at the piece."
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
            "To have 845 °C at the piece, the furnace “kiln” would have to read 875 ± 6 °C, nine in ten, and can be set no hotter than 860 °C: the piece is at 830 ± 6 °C then."
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

    /// What cannot be told from something else, and how sure what is not kept, set no furnace.
    #[test]
    fn what_is_not_told_apart_sets_nothing_and_says_why() {
        let celsius = TemperatureScale::Celsius;
        let route = route();
        let mut learnt = learnt(12.0, 1100.0);
        learnt.learnt[0].entangled_with = vec![UnknownKind::QuenchedHardness];
        assert_eq!(learnt.set_point(&route), None);
        assert_eq!(
            learnt.set_words(&route, celsius).unwrap(),
            "What to set is not told: the measurements do not tell this from the hardness of the heat as quenched. A survey with a second thermocouple would."
        );
        // It acts all the same: together the two foretell as well.
        assert_eq!(learnt.taught(&route).unwrap().off.soak_k, 12.0);
        let [words] = &learnt.words(&route, celsius)[..] else {
            panic!("one thing is told");
        };
        assert!(words.ends_with("thermocouple would."), "{words}");
        learnt.learnt[0].entangled_with.clear();
        learnt.learnt[0].half_band = None;
        assert_eq!(learnt.set_point(&route), None);
        let words = learnt.set_words(&route, celsius).unwrap();
        assert!(
            words.ends_with("once the logbook is read again."),
            "{words}"
        );
    }

    #[test]
    fn an_oven_is_told_what_to_set_for_each_temper() {
        let celsius = TemperatureScale::Celsius;
        let mut learnt = learnt(7.0, 1100.0);
        learnt.learnt[0].kind = UnknownKind::TemperOvenOffset;
        learnt.learnt[0].owner = Owner::TemperOven;
        let mut route = route();
        let mut temper = route.tempers[0];
        temper.temperature_c = 200.0;
        route.tempers = vec![temper, temper];
        let said = |learnt: &Correction, route: &Route| {
            let words = oven_words(&learnt.learnt[0], route, celsius);
            words.map(|words| words.replace('\u{a0}', " "))
        };
        let one = "Set to 200 °C, as planned, the piece comes to 207 °C, and the numbers count with that; 193 ± 6 °C, nine in ten, would give 200 °C.";
        assert_eq!(said(&learnt, &route).as_deref(), Some(one));
        // Set so, pieces come out as asked.
        let taught = Route {
            taught: learnt.taught(&route),
            ..route.clone()
        };
        assert_eq!(taught.as_taught().tempers[0].temperature_c, 207.0);
        let [words] = &learnt.words(&route, celsius)[..] else {
            panic!("one thing is told");
        };
        assert!(words.replace('\u{a0}', " ").ends_with(one), "{words}");
        route.tempers[1].temperature_c = 180.0;
        let both = said(&learnt, &route).unwrap();
        assert!(
            both.starts_with(one) && both.ends_with("would give 180 °C."),
            "{both}"
        );
        learnt.learnt[0].entangled_with = vec![UnknownKind::TemperedHardness];
        let why = said(&learnt, &route).unwrap();
        assert!(why.starts_with("What to set is not told"), "{why}");
        learnt.learnt[0].value = 0.2;
        assert_eq!(said(&learnt, &route), None);
    }
}
