//! What can be done to the steps of a route: added, moved, duplicated, removed.

use super::plan::{Cold, NextBath, Quench, Route, Temper};
use super::prior::{PriorStep, SlowCooling, Work};
use super::validate::MOST_TEMPERS;
use super::validate_prior::MOST_PRIOR_STEPS;
use crate::heat::MediumChoice;

impl Quench {
    /// Takes another quenchant first. The stir stays where its curve is that of a still bath, and is dropped
    /// where not.
    pub fn take_quenchant(&mut self, medium: MediumChoice) {
        self.agitation = stir_after([&self.medium, &medium], self.agitation);
        self.medium = medium;
    }
}

impl NextBath {
    /// The same of a later bath.
    pub fn take_quenchant(&mut self, medium: MediumChoice) {
        self.agitation = stir_after([&self.medium, &medium], self.agitation);
        self.medium = medium;
    }
}

/// How much a bath is stirred that takes the place of another: a factor beside the curve of air, gas, plates or
/// salt is no stir, and none of theirs.
#[must_use]
pub fn stir_after(media: [&MediumChoice; 2], factor: f64) -> f64 {
    let is_stirred = |medium: &&MediumChoice| {
        let medium = medium.resolve();
        medium.is_ok_and(|medium| medium.family.is_listed_still())
    };
    if media.iter().all(is_stirred) {
        factor
    } else {
        1.0
    }
}

/// A step of a route.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum StepRef {
    /// A step before hardening, counted from zero.
    Prior(usize),
    /// The soak.
    Soak,
    /// The quench.
    Quench,
    /// The snap temper before the cold bath.
    Snap,
    /// The cold bath.
    Cold,
    /// A temper, counted from zero.
    Temper(usize),
}

impl Cold {
    /// A cold bath as it is first offered: dry ice in alcohol, soon after the quench.
    pub const FIRST_OFFERED: Self = Self {
        temperature_c: -75.0,
        time_min: 60.0,
        delay_min: 10.0,
        snap: None,
    };
    /// A snap temper before it as it is first offered: 130 to 180 °C for an hour are usual (from
    /// memory).
    pub const SNAP_FIRST_OFFERED: Temper = Temper {
        temperature_c: 150.0,
        time_min: 60.0,
    };
}

impl Temper {
    /// A temper as it is first offered.
    pub const FIRST_OFFERED: Self = Self {
        temperature_c: 200.0,
        time_min: 60.0,
    };
}

impl PriorStep {
    /// A step as it is first offered, for a steel whose A1 is at `a1_c`, °C.
    #[must_use]
    pub fn first_offered(work: Work, a1_c: f64) -> Self {
        let (above_a1_k, time_min, cooling) = match work {
            Work::Forge { .. } => (350.0, 5.0, SlowCooling::still_air()),
            Work::Normalise => (150.0, 10.0, SlowCooling::still_air()),
            Work::Refine => (100.0, 3.0, SlowCooling::still_air()),
            Work::SlowAnneal => (
                50.0,
                30.0,
                SlowCooling::Furnace {
                    rate_k_per_h: 20.0,
                    until_c: 600.0,
                },
            ),
            Work::SubcriticalAnneal => (-35.0, 120.0, SlowCooling::still_air()),
            Work::StressRelief => (-120.0, 60.0, SlowCooling::still_air()),
        };
        Self {
            work,
            temperature_c: ((a1_c + above_a1_k) / 5.0).round() * 5.0,
            time_min,
            cooling,
        }
    }
}

impl Route {
    /// Puts a step before hardening in at a place; false where the route is full.
    pub fn insert_prior(&mut self, at: usize, step: PriorStep) -> bool {
        let has_room = self.prior.len() < MOST_PRIOR_STEPS;
        if has_room {
            self.prior.insert(at.min(self.prior.len()), step);
        }
        has_room
    }

    /// Moves a step by so many places among its like; where it is then. Soak, quench and cold bath
    /// have their place.
    pub fn move_step(&mut self, step: StepRef, by: isize) -> StepRef {
        match step {
            StepRef::Prior(i) => StepRef::Prior(shifted(&mut self.prior, i, by)),
            StepRef::Temper(i) => StepRef::Temper(shifted(&mut self.tempers, i, by)),
            fixed => fixed,
        }
    }

    /// Puts a copy of a step behind it; where the copy is, or none where there can be no second.
    pub fn duplicate_step(&mut self, step: StepRef) -> Option<StepRef> {
        match step {
            StepRef::Prior(i) => {
                let copy = self.prior.get(i)?.clone();
                self.insert_prior(i + 1, copy)
                    .then_some(StepRef::Prior(i + 1))
            }
            StepRef::Temper(i) if self.has_room_for_a_temper() => {
                let copy = *self.tempers.get(i)?;
                self.tempers.insert(i + 1, copy);
                Some(StepRef::Temper(i + 1))
            }
            _ => None,
        }
    }

    /// Adds what may follow a step: a copy of a step before hardening or of a temper; after the quench
    /// the first temper, or where there are tempers the cold bath. Where it is, or none where nothing
    /// can follow.
    pub fn add_behind(&mut self, step: StepRef) -> Option<StepRef> {
        match step {
            StepRef::Prior(_) | StepRef::Temper(_) => self.duplicate_step(step),
            StepRef::Quench | StepRef::Snap | StepRef::Cold if self.tempers.is_empty() => {
                self.tempers.push(Temper::FIRST_OFFERED);
                Some(StepRef::Temper(0))
            }
            StepRef::Quench if self.cold.is_none() => {
                self.cold = Some(Cold::FIRST_OFFERED);
                Some(StepRef::Cold)
            }
            StepRef::Soak | StepRef::Quench | StepRef::Snap | StepRef::Cold => None,
        }
    }

    /// The last step of the route.
    #[must_use]
    pub fn last_step(&self) -> StepRef {
        match (self.tempers.len().checked_sub(1), self.cold) {
            (Some(last), _) => StepRef::Temper(last),
            (None, Some(_)) => StepRef::Cold,
            (None, None) => StepRef::Quench,
        }
    }

    /// Whether one more temper can be added.
    #[must_use]
    pub const fn has_room_for_a_temper(&self) -> bool {
        self.tempers.len() < MOST_TEMPERS
    }

    /// Takes a step out; false where a route cannot be without it.
    pub fn remove_step(&mut self, step: StepRef) -> bool {
        match step {
            StepRef::Prior(i) if i < self.prior.len() => {
                self.prior.remove(i);
                true
            }
            StepRef::Temper(i) if i < self.tempers.len() => {
                self.tempers.remove(i);
                true
            }
            StepRef::Snap => self
                .cold
                .as_mut()
                .is_some_and(|cold| cold.snap.take().is_some()),
            StepRef::Cold => self.cold.take().is_some(),
            _ => false,
        }
    }
}

/// Moves an item of a list; where it is then.
fn shifted<T>(list: &mut [T], from: usize, by: isize) -> usize {
    let Some(last) = list.len().checked_sub(1).filter(|last| from <= *last) else {
        return from;
    };
    let to = from.saturating_add_signed(by).min(last);
    if let Some(between) = list.get_mut(from.min(to)..=from.max(to)) {
        if to > from {
            between.rotate_left(1);
        } else {
            between.rotate_right(1);
        }
    }
    to
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steel::find;

    fn works(route: &Route) -> Vec<&'static str> {
        route.prior.iter().map(|step| step.work.title()).collect()
    }

    fn whole() -> Route {
        let mut route = Route::example();
        route.take_handbook(find("5160").unwrap());
        route
    }

    #[test]
    fn air_is_not_stirred() {
        let mut quench = Route::example().quench;
        let stir = quench.agitation;
        assert!(stir > 1.0);
        quench.take_quenchant(MediumChoice::Named("oil_fast".to_owned()));
        assert_eq!(quench.agitation, stir);
        quench.take_quenchant(MediumChoice::Named("air_still".to_owned()));
        assert_eq!(quench.agitation, 1.0);
        // Faster than its curve is no stir either.
        quench.agitation = stir;
        quench.take_quenchant(MediumChoice::Named("oil_fast".to_owned()));
        assert_eq!(quench.agitation, 1.0);
    }

    #[test]
    fn steps_move_among_their_like() {
        let mut route = whole();
        assert_eq!(works(&route), ["Forge", "Normalise", "Refine", "Refine"]);
        assert_eq!(route.move_step(StepRef::Prior(0), 2), StepRef::Prior(2));
        assert_eq!(works(&route), ["Normalise", "Refine", "Forge", "Refine"]);
        assert_eq!(route.move_step(StepRef::Prior(2), -9), StepRef::Prior(0));
        assert_eq!(route, whole());
        assert_eq!(route.move_step(StepRef::Prior(3), 5), StepRef::Prior(3));
        assert_eq!(route.move_step(StepRef::Prior(44), -1), StepRef::Prior(44));
        assert_eq!(route.move_step(StepRef::Quench, -1), StepRef::Quench);
        assert_eq!(route, whole());
    }

    #[test]
    fn what_may_follow_a_step_is_added_behind_it() {
        let mut route = whole();
        route.cold = None;
        route.tempers.clear();
        assert_eq!(route.last_step(), StepRef::Quench);
        assert_eq!(route.add_behind(StepRef::Soak), None);
        assert_eq!(route.add_behind(StepRef::Quench), Some(StepRef::Temper(0)));
        assert_eq!(route.add_behind(StepRef::Quench), Some(StepRef::Cold));
        assert_eq!(route.add_behind(StepRef::Cold), None);
        assert_eq!(route.add_behind(StepRef::Quench), None);
        assert_eq!(
            route.add_behind(route.last_step()),
            Some(StepRef::Temper(1))
        );
        assert!(crate::route::validate(&route).is_ok());
        assert!(route.has_room_for_a_temper());
        while route.add_behind(route.last_step()).is_some() {}
        assert!(!route.has_room_for_a_temper());
    }

    #[test]
    fn steps_are_copied_and_taken_out() {
        let mut route = whole();
        assert_eq!(
            route.duplicate_step(StepRef::Prior(1)),
            Some(StepRef::Prior(2))
        );
        assert_eq!(route.prior[1], route.prior[2]);
        assert!(route.remove_step(StepRef::Prior(2)));
        assert_eq!(route, whole());
        assert_eq!(route.duplicate_step(StepRef::Soak), None);
        assert!(!route.remove_step(StepRef::Soak));
        assert!(!route.remove_step(StepRef::Prior(9)));
        assert!(!route.remove_step(StepRef::Snap));
        route.cold = Route::example().cold.map(|cold| Cold {
            snap: Some(Cold::SNAP_FIRST_OFFERED),
            ..cold
        });
        assert!(route.remove_step(StepRef::Snap));
        assert_eq!(route.cold.and_then(|cold| cold.snap), None);
        assert!(route.remove_step(StepRef::Cold));
        assert!(!route.remove_step(StepRef::Cold));
        while route.duplicate_step(StepRef::Temper(0)).is_some() {}
        assert_eq!(route.tempers.len(), MOST_TEMPERS);
        while route.duplicate_step(StepRef::Prior(0)).is_some() {}
        assert_eq!(route.prior.len(), MOST_PRIOR_STEPS);
    }
}
