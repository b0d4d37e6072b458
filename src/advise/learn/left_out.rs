//! What was learnt and does not reach a route, with the reason: it is told, so that nothing stops acting
//! without a word.

use super::correction::{Corrected, Correction};
use super::unknown::{Owner, UnknownKind, furnaces_of};
use super::words::{capital, tempers};
use crate::advise::shop::Furnace;
use crate::route::{Route, Tempered, hottest_temper_c};
use crate::units::{TemperatureScale, format_temperature, format_temperature_band};

impl Corrected {
    /// Whether it does anything to the pieces of a route that are its own: an oven needs a temper, and
    /// what was learnt of some tempers reaches only those near by.
    pub(super) fn reaches(&self, route: &Route) -> bool {
        let hottest_c = hottest_temper_c(&route.tempers);
        match self.kind {
            UnknownKind::TemperedHardness => hottest_c.is_some_and(|temper_c| {
                let part = |tempers_c| Tempered::part_at(tempers_c, temper_c);
                self.tempers_c.is_none_or(|tempers_c| part(tempers_c) > 0.0)
            }),
            UnknownKind::TemperOvenOffset => {
                let has_snap = route.cold.as_ref().is_some_and(|cold| cold.snap.is_some());
                hottest_c.is_some() || has_snap
            }
            _ => true,
        }
    }
}

impl Correction {
    /// What was learnt and is left out of some routes, and why, in sentences, each once: of a temper only
    /// where it reaches none of theirs. Nothing where none of it acts.
    #[must_use]
    pub fn left_out_of<'a>(
        &self,
        routes: impl Iterator<Item = &'a Route>,
        scale: TemperatureScale,
    ) -> Vec<String> {
        let mut told: Vec<String> = Vec::new();
        if !self.acts() {
            return told;
        }
        let routes: Vec<&Route> = routes.collect();
        for route in &routes {
            let words = self.furnace_left_out(route, scale);
            told.extend(words.filter(|words| !told.contains(words)));
        }
        told.extend(self.temper_left_out(&routes, scale));
        told
    }

    /// Why what was learnt of a furnace does not act: the route may be for several, or for none of which
    /// it was learnt. That it is for another one alone needs no words.
    fn furnace_left_out(&self, route: &Route, scale: TemperatureScale) -> Option<String> {
        let mut fitting = furnaces_of(route, &self.furnaces);
        let name = |place| Owner::Furnace(Some(place)).name(&self.furnaces, scale);
        match (fitting.next(), fitting.next()) {
            (Some(one), Some(other)) => {
                return Some(format!(
                    "Nothing of a furnace is counted with: {} and {} have the same band and thermocouple, and the route may be for either.",
                    name(one),
                    name(other)
                ));
            }
            (Some(_), None) => return None,
            (None, _) => {}
        }
        let mut offsets = self.learnt.iter().filter(|corrected| {
            corrected.kind == UnknownKind::FurnaceOffset && corrected.is_told()
        });
        let Owner::Furnace(place) = &offsets.next()?.owner else {
            return None;
        };
        if offsets.next().is_some() {
            return Some(
                "What was learnt of furnaces is left out: this band, thermocouple and soak are those of none of them."
                    .to_owned(),
            );
        }
        let Some((place, furnace)) =
            place.and_then(|place| Some((place, self.furnaces.get(place)?)))
        else {
            return Some(
                "What was learnt of the furnace is left out: it is none of the shop. Enter it there, and read the logbook again."
                    .to_owned(),
            );
        };
        Some(format!(
            "What was learnt of {} is left out: {}.",
            name(place),
            not_of(furnace, route, scale)
        ))
    }

    /// What was learnt of other tempers than those of routes.
    fn temper_left_out(&self, routes: &[&Route], scale: TemperatureScale) -> Option<String> {
        let hottest = routes
            .iter()
            .filter_map(|route| hottest_temper_c(&route.tempers));
        let at_c: Vec<f64> = hottest.collect();
        let mut acting = routes.iter().flat_map(|route| self.acting(route, None));
        let is_far = |corrected: &&Corrected| !routes.iter().any(|route| corrected.reaches(route));
        let corrected = acting.find(is_far)?;
        let Corrected { kind, owner, .. } = corrected;
        let of = owner.name(&self.furnaces, scale);
        let here = match &at_c[..] {
            [] => return None,
            [one_c] => format!("this temper at {}", format_temperature(*one_c, scale)),
            _ => "these tempers".to_owned(),
        };
        Some(format!(
            "{} was learnt from {} and does not reach {here}.",
            capital(&kind.subject(&of)),
            tempers(corrected.tempers_c?, scale)
        ))
    }
}

/// Why a route is not for a furnace, inside a sentence.
fn not_of(furnace: &Furnace, route: &Route, scale: TemperatureScale) -> String {
    if furnace.band_k() != route.furnace_band_k {
        let [its, here] = [furnace.band_k(), route.furnace_band_k]
            .map(|band_k| format_temperature_band(band_k, scale));
        return format!("its band is {its}, and the route has {here}");
    }
    if furnace.thermocouple != route.thermocouple {
        return "the route has another thermocouple".to_owned();
    }
    "it cannot be set for this soak".to_owned()
}
