//! A run as what learns from it takes it.

use super::{After, Done, Reading, Run};
use crate::advise::{LoggedReading, LoggedRun};
use crate::route::{Route, Step};

impl Run {
    /// What of it can teach about the shop.
    #[must_use]
    pub fn logged(&self) -> LoggedRun {
        let reading = |reading: &Reading| LoggedReading {
            value: reading.value,
            scale: reading.scale,
            place: reading.place.clone(),
            after: step_of(reading.after, &self.route),
        };
        LoggedRun {
            name: format!("{}, {}", self.route.name(), self.day),
            route: self.route.clone(),
            readings: self.readings.iter().map(reading).collect(),
            austenite_vol_percent: self.austenite_vol_percent,
            fracture_grain_astm: self.fracture_grain_astm,
            is_told_otherwise: self.done != Done::default(),
        }
    }
}

/// The step after which something was read.
const fn step_of(after: After, route: &Route) -> Step {
    match after {
        After::Quench => Step::Quench,
        After::Cold => Step::Cold,
        After::Temper => Step::Temper(route.tempers.len()),
    }
}
