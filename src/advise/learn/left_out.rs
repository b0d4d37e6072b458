//! What was learnt and does not reach a route, with the reason: it is told, so that nothing stops acting
//! without a word.

use super::correction::{Corrected, Correction};
use super::unknown::{Owner, UnknownKind, furnaces_of};
use super::words::tempers;
use crate::advise::shop::Furnace;
use crate::route::{Route, Tempered, hottest_temper_c};
use crate::units::{TemperatureScale, format_temperature, format_temperature_band};
use recalesce_texts::advise::learn::left_out as texts;
use recalesce_texts::grammar::{at_the_head, inside_a_sentence};

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
    /// What was learnt and is left out of some routes, and why, in sentences, each once: of a furnace also
    /// where only part of them is left out, of a temper where it reaches none of theirs. Nothing where none
    /// of it acts.
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
        let has_furnace = |route: &&Route| self.furnace_left_out(route, scale).is_none();
        let some_have = routes.iter().any(has_furnace);
        for route in &routes {
            let words = self.furnace_left_out(route, scale);
            let words = words.map(|words| match some_have {
                true => texts::for_part(&inside_a_sentence(&words)),
                false => words,
            });
            told.extend(words.filter(|words| !told.contains(words)));
        }
        told.extend(self.temper_left_out(&routes, scale));
        told
    }

    /// Why what was learnt of a furnace does not act: the route may be for several, or for none of which
    /// it was learnt. That it is for another one alone needs no words.
    fn furnace_left_out(&self, route: &Route, scale: TemperatureScale) -> Option<String> {
        let mut offsets = self.learnt.iter().filter(|corrected| {
            corrected.kind == UnknownKind::FurnaceOffset && corrected.is_told()
        });
        let Owner::Furnace(place) = &offsets.next()?.owner else {
            return None;
        };
        let mut fitting = furnaces_of(route, &self.furnaces);
        let name = |place| Owner::Furnace(Some(place)).name(&self.furnaces, scale);
        match (fitting.next(), fitting.next()) {
            (Some(one), Some(other)) => {
                return Some(texts::either_furnace(&name(one), &name(other)));
            }
            (Some(_), None) => return None,
            (None, _) => {}
        }
        if offsets.next().is_some() {
            return Some(texts::NO_FURNACE_FITS.to_owned());
        }
        let Some((place, furnace)) =
            place.and_then(|place| Some((place, self.furnaces.get(place)?)))
        else {
            return Some(texts::NOT_OF_SHOP.to_owned());
        };
        Some(texts::furnace(&name(place), &not_of(furnace, route, scale)))
    }

    /// What was learnt of other tempers than those of routes: of each heat from its own routes.
    fn temper_left_out(&self, routes: &[&Route], scale: TemperatureScale) -> Vec<String> {
        let mut told: Vec<String> = Vec::new();
        for corrected in &self.learnt {
            let of_it = |route: &&&Route| {
                let mut acting = self.acting(route, None);
                acting.any(|one| one == corrected)
            };
            let its: Vec<&&Route> = routes.iter().filter(of_it).collect();
            if its.iter().any(|route| corrected.reaches(route)) {
                continue;
            }
            let tempers_c = its
                .iter()
                .filter_map(|route| hottest_temper_c(&route.tempers));
            let here = match &tempers_c.collect::<Vec<f64>>()[..] {
                [] => continue,
                [one_c] => texts::this_temper(&format_temperature(*one_c, scale)),
                _ => texts::THESE_TEMPERS.to_owned(),
            };
            let Some(from_c) = corrected.tempers_c else {
                continue;
            };
            let of = corrected.owner.name(&self.furnaces, scale);
            told.push(texts::other_tempers(
                &at_the_head(&corrected.kind.subject(&of)),
                &tempers(from_c, scale),
                &here,
            ));
        }
        told
    }
}

/// Why a route is not for a furnace, inside a sentence.
fn not_of(furnace: &Furnace, route: &Route, scale: TemperatureScale) -> String {
    if furnace.band_k() != route.furnace_band_k {
        let [its, here] = [furnace.band_k(), route.furnace_band_k]
            .map(|band_k| format_temperature_band(band_k, scale));
        return texts::another_band(&its, &here);
    }
    if furnace.thermocouple != route.thermocouple {
        return texts::ANOTHER_THERMOCOUPLE.to_owned();
    }
    texts::CANNOT_BE_SET.to_owned()
}
