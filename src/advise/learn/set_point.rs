//! What a furnace or an oven whose offset was learnt is to be set to. Not told where the measurements do
//! not tell that offset from something else: to set the furnace otherwise would then as likely spoil the
//! piece as mend it.

use super::correction::{Corrected, Correction};
use super::unknown::{Owner, UnknownKind};
use crate::route::Route;
use crate::units::{TemperatureScale, format_fixed, format_temperature, format_temperature_within};
use recalesce_texts::advise::learn::set_point as texts;
use recalesce_texts::grammar::at_the_head;

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
        let [set, wanted, reached] = [self.set_c, self.wanted_c, self.reached_c()].map(degrees);
        let told = if !self.is_reached() {
            let end = if self.reached_c() < self.wanted_c {
                texts::no_hotter
            } else {
                texts::no_cooler
            };
            let reading = degrees(self.wanted_c - self.offset_k);
            end(&wanted, &self.furnace, &reading, &set, &reached)
        } else if self.is_planned() {
            texts::right_as_planned(&set, &wanted)
        } else {
            texts::off_as_planned(
                &degrees(self.planned_c),
                &degrees(self.planned_c + self.offset_k),
                &set,
                &wanted,
            )
        };
        format!("{told} {}", how_sure(self.band_k, scale))
    }
}

/// How sure an offset is, and what to do before it is relied on.
fn how_sure(band_k: f64, scale: TemperatureScale) -> String {
    texts::how_sure(&format_temperature_within(band_k, scale))
}

/// How far an offset may be off, K, or why nothing is told of what to set by it.
fn band_or_why(corrected: &Corrected) -> Result<f64, String> {
    if let Some(other) = corrected.entangled_with.first() {
        return Err(texts::not_told_from(other.in_short()));
    }
    let band_k = corrected.half_band;
    band_k.ok_or_else(|| texts::READ_AGAIN.to_owned())
}

/// What pieces come to in the oven of the tempers of a route, and how to ask for what they are to come to,
/// or why that is not told, in sentences; none where it is right as it is. A route has no offset of its
/// oven: what it asks for is what is set.
pub(super) fn oven_words(
    corrected: &Corrected,
    route: &Route,
    scale: TemperatureScale,
) -> Option<String> {
    let offset_k = corrected.value;
    let mut asked_c: Vec<f64> = Vec::new();
    for temper in &route.tempers {
        if !asked_c.contains(&temper.temperature_c) {
            asked_c.push(temper.temperature_c);
        }
    }
    if offset_k.abs() < SAME_K || asked_c.is_empty() {
        return None;
    }
    let band_k = match band_or_why(corrected) {
        Ok(band_k) => band_k,
        Err(why) => return Some(why),
    };
    let degrees = |at_c| format_temperature(at_c, scale);
    let come_to = asked_c
        .into_iter()
        .map(|at_c| texts::temper_comes_to(&degrees(at_c), &degrees(at_c + offset_k)));
    let come_to = texts::tempers_come_to(&come_to.collect::<Vec<_>>());
    let size = format_fixed(scale.of_kelvin_difference(offset_k.abs()), 0);
    let size = format!("{size}\u{a0}{}", scale.symbol());
    let ask = if offset_k < 0.0 {
        texts::ask_for_more(&size)
    } else {
        texts::ask_for_less(&size)
    };
    Some([at_the_head(&come_to), ask, how_sure(band_k, scale)].join(" "))
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
            "Set to 845 °C, as planned, the piece comes to 857 °C, and the numbers count with that; 833 °C would give 845 °C. That offset is known within ±6 °C, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first."
        );
        assert_eq!(
            said(&learnt, &route, TemperatureScale::Fahrenheit),
            "Set to 1553 °F, as planned, the piece comes to 1575 °F, and the numbers count with that; 1531 °F would give 1553 °F. That offset is known within ±10 °F, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first."
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
            "Set to 833 °C, as planned, the piece comes to 845 °C. That offset is known within ±6 °C, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first."
        );
        assert_eq!(learnt.taught(&route).unwrap().off.soak_k, 0.0);
        // The line that tells of the offset has it.
        let [words] = &learnt.words(&route, celsius)[..] else {
            panic!("one thing is told");
        };
        assert!(words.ends_with("thermocouple first."), "{words}");
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
            "To have 845 °C at the piece, the furnace “kiln” would have to read 875 °C, and can be set no hotter than 860 °C: the piece is at 830 °C then. That offset is known within ±6 °C, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first."
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
            "What to set is not told: the measurements do not tell this from the hardness of the heat as quenched. A survey with a second thermocouple would: enter it with the furnace under Decide, and read the logbook again."
        );
        // It acts all the same: together the two foretell as well.
        assert_eq!(learnt.taught(&route).unwrap().off.soak_k, 12.0);
        let [words] = &learnt.words(&route, celsius)[..] else {
            panic!("one thing is told");
        };
        assert!(words.ends_with("read the logbook again."), "{words}");
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
    fn an_oven_is_told_what_its_pieces_come_to_at_each_temper() {
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
        let one = "Asked for 200 °C the piece comes to 207 °C, and the numbers count with that. For a temperature at the piece ask for 7 °C less. That offset is known within ±6 °C, nine in ten, and how evenly it heats comes on top. Check it with a second thermocouple first.";
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
            both.starts_with("Asked for 200 °C the piece comes to 207 °C; asked for 180 °C the piece comes to 187 °C, and"),
            "{both}"
        );
        learnt.learnt[0].entangled_with = vec![UnknownKind::TemperedHardness];
        let why = said(&learnt, &route).unwrap();
        assert!(why.starts_with("What to set is not told"), "{why}");
        learnt.learnt[0].value = 0.2;
        assert_eq!(said(&learnt, &route), None);
    }
}
