//! Steps before hardening: what is planned for the piece between the bar and the soak.

use crate::heat::MediumChoice;
use recalesce_texts::route::prior as texts;
use serde::{Deserialize, Serialize};

/// One step before hardening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PriorStep {
    /// What it is for.
    pub work: Work,
    /// Temperature of the piece, °C; in a forging the temperature at which each heat begins.
    pub temperature_c: f64,
    /// Time at temperature, min; in a forging that of each heat.
    pub time_min: f64,
    /// How the piece cools afterwards.
    pub cooling: SlowCooling,
}

impl PriorStep {
    /// Brings what follows from the temperature under it: a forging does not finish hotter than it
    /// begins, nor does a furnace led down end hotter.
    pub fn keep_in_order(&mut self) {
        if let Work::Forge { finish_c, .. } = &mut self.work {
            *finish_c = finish_c.min(self.temperature_c);
        }
        if let SlowCooling::Furnace { until_c, .. } = &mut self.cooling {
            *until_c = until_c.min(self.temperature_c);
        }
    }
}

/// What a step before hardening is for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
pub enum Work {
    /// Hammered to shape.
    Forge {
        /// Temperature at which the hammer stops, °C.
        finish_c: f64,
        /// How often the piece goes back into the fire, the first time included.
        heats: u8,
    },
    /// Heated above A3 or Acm, to make carbide and grain even.
    Normalise,
    /// Heated just through, to make the grain fine.
    Refine,
    /// Heated between A1 and Acm or just above A3 and cooled slowly through A1, to be machined.
    SlowAnneal,
    /// Held below A1, to be machined.
    SubcriticalAnneal,
    /// Held well below A1, to take stress from straightening and grinding.
    StressRelief,
}

impl Work {
    /// Every kind, in the order in which a shop does them; a forging of two heats.
    pub const ALL: [Self; 6] = [
        Self::Forge {
            finish_c: 900.0,
            heats: 2,
        },
        Self::Normalise,
        Self::Refine,
        Self::SlowAnneal,
        Self::SubcriticalAnneal,
        Self::StressRelief,
    ];

    /// Its name in the trade.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Forge { .. } => texts::FORGE,
            Self::Normalise => texts::NORMALISE,
            Self::Refine => texts::REFINE,
            Self::SlowAnneal => texts::SLOW_ANNEAL,
            Self::SubcriticalAnneal => texts::SUBCRITICAL_ANNEAL,
            Self::StressRelief => texts::STRESS_RELIEF,
        }
    }
}

/// How a piece cools after a step before hardening.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "way", rename_all = "snake_case", deny_unknown_fields)]
pub enum SlowCooling {
    /// In a medium of the list or of the user's own: still air as a rule.
    Medium {
        /// The medium.
        medium: MediumChoice,
    },
    /// In the furnace, the temperature led down.
    Furnace {
        /// How fast, K/h.
        rate_k_per_h: f64,
        /// Down to this temperature, °C; from there in still air.
        until_c: f64,
    },
}

impl SlowCooling {
    /// In still air.
    #[must_use]
    pub fn still_air() -> Self {
        Self::Medium {
            medium: MediumChoice::Named(STILL_AIR.to_owned()),
        }
    }
}

/// Still air in the list of media.
const STILL_AIR: &str = "air_still";
