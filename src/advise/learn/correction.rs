//! What was learnt, as later predictions take it: only where the user has switched it on.

use super::set_point::oven_words;
use super::slot::same_part;
use super::unknown::{Owner, UnknownKind};
use super::words::{acting_words, reach_words, tempers_words};
use crate::advise::error::{AdviseError, check};
use crate::advise::inputs::Input;
use crate::advise::shop::{Furnace, Shop};
use crate::route::{Deviation, Left, MODELS, Route, TEMPER_C, Taught, Tempered};
use crate::units::TemperatureScale;
use serde::{Deserialize, Serialize};

/// Narrowing below which nothing was learnt worth counting with (expert value).
pub(super) const NOTHING: f64 = 0.05;

/// One thing that was learnt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Corrected {
    /// What.
    pub kind: UnknownKind,
    /// Of what.
    pub owner: Owner,
    /// Its most probable value, in its unit; of a factor the factor; of a furnace its whole offset.
    pub value: f64,
    /// Part of its band that is left, 0 to 1; of a factor that of its logarithm.
    pub left_part: f64,
    /// Runs that tell of it.
    pub runs: usize,
    /// The coolest and the hottest temper, as asked, °C, after which the readings were taken that taught
    /// a hardness after tempering; see [`Tempered`]. None of anything else.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tempers_c: Option<[f64; 2]>,
    /// How far it may be off either way, nine in ten, in its unit. None of a factor, and where it was
    /// learnt before that was kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub half_band: Option<f64>,
    /// What the measurements do not tell it apart from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub entangled_with: Vec<UnknownKind>,
}

/// What a logbook has taught, off until it is switched on.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Correction {
    /// Whether later predictions follow it.
    #[serde(default)]
    pub is_on: bool,
    /// Version of the models that it was learnt with: the error of another one acts nowhere. None where
    /// it was learnt before that was kept, with an earlier one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub models: Option<String>,
    /// The furnaces of the shop that it was learnt in. Of the furnace of a route it tells where
    /// exactly one of these has its band and thermocouple and reaches its soak; what was learnt of a
    /// furnace that the shop does not have acts nowhere.
    #[serde(default)]
    pub furnaces: Vec<Furnace>,
    /// Everything that was learnt.
    pub learnt: Vec<Corrected>,
}

impl Corrected {
    /// Whether so much was learnt that it counts.
    pub(super) fn is_told(&self) -> bool {
        1.0 - self.left_part >= NOTHING
    }
}

impl Correction {
    /// Whether it was learnt with the models as they are.
    #[must_use]
    pub fn is_of_these_models(&self) -> bool {
        self.models.as_deref() == Some(MODELS)
    }

    /// Whether it acts: it is switched on, and was learnt with the models as they are.
    #[must_use]
    pub fn acts(&self) -> bool {
        self.is_on && self.is_of_these_models()
    }

    /// Checks that every number is one that a logbook may teach.
    ///
    /// # Errors
    /// The first that is not a number or out of range, with what is allowed.
    pub fn check(&self) -> Result<(), AdviseError> {
        for Corrected {
            kind,
            value,
            left_part,
            tempers_c,
            half_band,
            ..
        } in &self.learnt
        {
            let unit = match kind.unit() {
                unit @ ("K" | "HRC") => unit,
                _ => "",
            };
            check("learnt.value", *value, kind.allowed(), unit)?;
            if let Some(half_band) = half_band {
                check("learnt.half_band", *half_band, (0.0, kind.widest()), unit)?;
            }
            check("learnt.left_part", *left_part, (0.0, 1.0), "")?;
            if let Some([least_c, most_c]) = tempers_c {
                check("learnt.tempers_c[0]", *least_c, TEMPER_C, "°C")?;
                check("learnt.tempers_c[1]", *most_c, (*least_c, TEMPER_C.1), "°C")?;
            }
        }
        Ok(())
    }

    /// What it tells of a route that goes by a furnace of its list: nothing where it does not act.
    /// What the tester shows too much is no matter of the piece and left out, and so is that of which
    /// next to nothing was learnt.
    pub(super) fn acting(
        &self,
        route: &Route,
        furnace: Option<usize>,
    ) -> impl Iterator<Item = &Corrected> {
        let learnt = self.learnt.iter().filter(|_| self.acts());
        learnt.filter(move |corrected| {
            let is_of_it = || match corrected.kind {
                // A furnace that is not known may be any.
                UnknownKind::FurnaceOffset => {
                    furnace.is_some() && corrected.owner == Owner::Furnace(furnace)
                }
                UnknownKind::Tester => false,
                kind => Owner::of(kind, route, &self.furnaces).as_ref() == Some(&corrected.owner),
            };
            corrected.is_told() && is_of_it()
        })
    }

    /// The furnace of its list that a route was planned for, by its place.
    pub(super) fn furnace_of(&self, route: &Route) -> Option<usize> {
        match Owner::of(UnknownKind::FurnaceOffset, route, &self.furnaces)? {
            Owner::Furnace(place) => place,
            _ => None,
        }
    }

    /// The furnace of its list that one of a shop is, by its place: known again by its name and what a
    /// route tells of it, where that is one alone in both.
    fn place_of(&self, furnace: &Furnace, shop: &Shop) -> Option<usize> {
        let is_it = |other: &Furnace| {
            furnace.band_k() == other.band_k()
                && furnace.thermocouple == other.thermocouple
                && furnace.name == other.name
        };
        let is_one = shop.furnaces.iter().filter(|other| is_it(other)).count() == 1;
        let mut places = (0..).zip(&self.furnaces).filter(|(_, other)| is_it(other));
        let (place, _) = places.next()?;
        (is_one && places.next().is_none()).then_some(place)
    }

    /// What it makes off about a route, and what it leaves of the bands; none where it tells nothing of
    /// the route or does not act. To be put to the route, as [`Route::taught`].
    ///
    /// A furnace's offset is the whole of it: what the route already counts with is taken off. What is
    /// left of each band is taken by itself: that unknowns hang together, and what was learnt of a heat
    /// narrows its chemistry too, is left out, which makes the bands rather too wide.
    #[must_use]
    pub fn taught(&self, route: &Route) -> Option<Taught> {
        let taught = self.taught_by(route, self.furnace_of(route));
        taught?.of_tempers(&route.tempers)
    }

    /// The same of a route that is known to go by a furnace of a shop, whatever its tempers: see
    /// [`Taught::of_tempers`].
    #[must_use]
    pub(in crate::advise) fn taught_in(
        &self,
        shop: &Shop,
        furnace: &Furnace,
        route: &Route,
    ) -> Option<Taught> {
        self.taught_by(route, self.place_of(furnace, shop))
    }

    fn taught_by(&self, route: &Route, furnace: Option<usize>) -> Option<Taught> {
        let mut off = Deviation::default();
        let mut left = Left::default();
        let mut tempered = None;
        let mut is_told = false;
        for corrected in self.acting(route, furnace) {
            let Corrected {
                kind,
                value,
                left_part,
                tempers_c,
                ..
            } = corrected;
            is_told = true;
            // What is anew in each piece no logbook narrows.
            let part = |input: Input| {
                let same = same_part(input);
                (1.0 - same + same * left_part.powi(2)).sqrt()
            };
            match kind {
                UnknownKind::FurnaceOffset => {
                    off.soak_k = value - route.furnace_offset_k;
                    left.furnace = part(Input::Furnace);
                    left.thermocouple = part(Input::Thermocouple);
                }
                UnknownKind::QuenchSeverity => {
                    off.heat_transfer_factor = *value;
                    left.heat_transfer = part(Input::HeatTransfer);
                }
                UnknownKind::Hardenability => {
                    off.nose_time_factor = *value;
                    left.nose = part(Input::Nose);
                }
                UnknownKind::MartensiteStart => {
                    off.ms_k = *value;
                    left.ms = part(Input::Ms);
                }
                UnknownKind::TemperOvenOffset => {
                    off.temper_k = *value;
                    left.temper = part(Input::TemperOven);
                }
                UnknownKind::QuenchedHardness => {
                    off.quenched_hrc = *value;
                    left.quenched = part(Input::QuenchedHardness);
                }
                UnknownKind::TemperedHardness => {
                    off.tempered_hrc = *value;
                    left.tempered = part(Input::TemperedHardness);
                    tempered = tempers_c.map(|tempers_c| Tempered {
                        off_hrc: *value,
                        left: left.tempered,
                        tempers_c,
                    });
                }
                UnknownKind::Tester => {}
            }
        }
        let taught = Taught::new(off, left);
        is_told.then(|| tempered.map_or(taught, |tempered| taught.within(tempered)))
    }

    /// What it tells of a route, in sentences: what is shifted, by how much, from how many runs; what furnace
    /// and oven are to be set to, and which temper is reached only in part. What reaches nothing of the
    /// route is left out: see [`Self::left_out_of`].
    #[must_use]
    pub fn words(&self, route: &Route, scale: TemperatureScale) -> Vec<String> {
        self.acting(route, self.furnace_of(route))
            .filter(|corrected| corrected.reaches(route))
            .map(|corrected| {
                let words = acting_words(corrected, &self.furnaces, scale);
                let here = match corrected.kind {
                    UnknownKind::FurnaceOffset => self.set_words(route, scale),
                    UnknownKind::TemperOvenOffset => oven_words(corrected, route, scale),
                    _ => reach_words(corrected, route, scale),
                };
                here.map_or_else(|| words.clone(), |here| format!("{words} {here}"))
            })
            .collect()
    }

    /// What it tells of several routes, each thing once: what the furnace is to be set to for each is
    /// left out, and which temper is reached in part.
    #[must_use]
    pub fn words_of<'a>(
        &self,
        routes: impl Iterator<Item = &'a Route>,
        scale: TemperatureScale,
    ) -> Vec<String> {
        let routes: Vec<&Route> = routes.collect();
        if let [one] = &routes[..] {
            return self.words(one, scale);
        }
        let mut told: Vec<&Corrected> = Vec::new();
        for route in routes {
            for corrected in self.acting(route, self.furnace_of(route)) {
                if corrected.reaches(route) && !told.contains(&corrected) {
                    told.push(corrected);
                }
            }
        }
        let words = told.into_iter().map(|corrected| {
            let words = acting_words(corrected, &self.furnaces, scale);
            let from = tempers_words(corrected, scale);
            from.map_or_else(|| words.clone(), |from| format!("{words} {from}"))
        });
        words.collect()
    }

    /// A shop whose furnaces have the offsets that were learnt and by which they may be set; the same shop
    /// where it does not act. An offset that is not told from something else, or of which it is not kept how
    /// sure it is, sets no furnace: it acts on what comes out of the furnace as it is set without it.
    #[must_use]
    pub(in crate::advise) fn set_right(&self, shop: &Shop) -> Shop {
        let told = self.learnt.iter().filter(|_| self.acts());
        let told: Vec<&Corrected> = told.filter(|corrected| corrected.is_told()).collect();
        let mut right = shop.clone();
        for furnace in &mut right.furnaces {
            let Some(place) = self.place_of(furnace, shop) else {
                continue;
            };
            let owner = Owner::Furnace(Some(place));
            let may_be_set = |corrected: &&&Corrected| {
                corrected.owner == owner
                    && corrected.entangled_with.is_empty()
                    && corrected.half_band.is_some()
            };
            if let Some(learnt) = told.iter().find(may_be_set) {
                furnace.offset_k = learnt.kind.within_allowed(learnt.value);
            }
        }
        right
    }
}

#[cfg(test)]
#[path = "correction_tests.rs"]
mod tests;
