//! What a piece, the models and the tester can be off by, and what of it is the same every time.

use crate::advise::inputs::{Input, OpenInput};
use crate::advise::law::Law;
use crate::route::Deviation;
use crate::transform::LARGEST_MS_OFF_K;

/// How many kinds there are.
pub(super) const SLOTS: usize = 9;

/// Part of the variance of a band that is the same in every run, where the band does not tell: the
/// rest is anew in each (expert value).
const SAME_PART: f64 = 0.75;

/// Furthest that something is taken to be off: what [`Deviation::check`] allows, K, times of a
/// factor, HRC.
const MOST_K: f64 = 300.0;
const MOST_FACTOR: f64 = 100.0;
const MOST_HRC: f64 = 30.0;

/// Something that can be off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Slot {
    /// The piece in the soak, K.
    Soak,
    /// Heat transfer, natural logarithm of the factor.
    HeatTransfer,
    /// Time of the nose, natural logarithm of the factor.
    Nose,
    /// Start of martensite, K.
    MartensiteStart,
    /// Thickness, mm.
    Thickness,
    /// The piece in a temper, K.
    Temper,
    /// Hardness before the first temper, HRC.
    Quenched,
    /// Hardness after a temper, HRC.
    Tempered,
    /// What the tester shows above the hardness, HRC.
    Tester,
}

impl Slot {
    /// All, by their number.
    pub(super) const ALL: [Self; SLOTS] = [
        Self::Soak,
        Self::HeatTransfer,
        Self::Nose,
        Self::MartensiteStart,
        Self::Thickness,
        Self::Temper,
        Self::Quenched,
        Self::Tempered,
        Self::Tester,
    ];

    /// What an open input of a route makes off; none of contents, which are no single number.
    pub(super) const fn of(input: Input) -> Option<Self> {
        Some(match input {
            Input::Chemistry | Input::Certificate => return None,
            Input::Furnace | Input::Thermocouple => Self::Soak,
            Input::Thickness => Self::Thickness,
            Input::HeatTransfer => Self::HeatTransfer,
            Input::Nose => Self::Nose,
            Input::Ms => Self::MartensiteStart,
            Input::QuenchedHardness => Self::Quenched,
            Input::TemperOven => Self::Temper,
            Input::TemperedHardness => Self::Tempered,
        })
    }
}

/// One number for each of them.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Slots([f64; SLOTS]);

impl Slots {
    pub(super) fn from_fn(number: impl FnMut(Slot) -> f64) -> Self {
        Self(Slot::ALL.map(number))
    }

    pub(super) const fn get(&self, slot: Slot) -> f64 {
        self.0[slot as usize]
    }

    pub(super) const fn set(&mut self, slot: Slot, value: f64) {
        self.0[slot as usize] = value;
    }

    pub(super) fn add(&mut self, slot: Slot, value: f64) {
        self.0[slot as usize] += value;
    }

    /// What is off as trials take it, as far as they do; the tester is not in it.
    pub(super) fn deviation(&self) -> Deviation {
        let within = |slot, most: f64| self.get(slot).clamp(-most, most);
        let factor = |slot| self.get(slot).exp().clamp(1.0 / MOST_FACTOR, MOST_FACTOR);
        Deviation {
            soak_k: within(Slot::Soak, MOST_K),
            temper_k: within(Slot::Temper, MOST_K),
            thickness_mm: self.get(Slot::Thickness),
            heat_transfer_factor: factor(Slot::HeatTransfer),
            nose_time_factor: factor(Slot::Nose),
            ms_k: within(Slot::MartensiteStart, LARGEST_MS_OFF_K),
            quenched_hrc: within(Slot::Quenched, MOST_HRC),
            tempered_hrc: within(Slot::Tempered, MOST_HRC),
        }
    }
}

/// Variances of what can be off about one route: of what is the same in every run, and of what is
/// anew in each.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Variances {
    pub(super) same: Slots,
    pub(super) anew: Slots,
}

impl Variances {
    /// Those of what is open about a route; of a factor, of its natural logarithm.
    pub(super) fn of(open: &[OpenInput]) -> Self {
        let mut found = Self::default();
        for input in open {
            if let (Some(slot), Some(law)) = (Slot::of(input.input), input.law()) {
                found.add(slot, same_part(input.input), law);
            }
        }
        found
    }

    /// Adds those of a tester that may be off by so much, HRC either way, nine in ten.
    pub(super) fn with_tester(mut self, error_hrc: f64) -> Self {
        self.add(Slot::Tester, SAME_PART, &Law::normal_of_band(error_hrc));
        self
    }

    fn add(&mut self, slot: Slot, same_part: f64, law: &Law) {
        let variance = law.sd().powi(2);
        self.same.add(slot, same_part * variance);
        self.anew.add(slot, (1.0 - same_part) * variance);
    }

    /// Takes all of it to be anew in each run.
    pub(super) fn make_anew(&mut self, slot: Slot) {
        self.anew.add(slot, self.same.get(slot));
        self.same.set(slot, 0.0);
    }

    /// Standard deviation of all of it.
    pub(super) fn sd(&self, slot: Slot) -> f64 {
        (self.same.get(slot) + self.anew.get(slot)).sqrt()
    }
}

/// Part of the variance of an input that is the same in every run.
pub(super) const fn same_part(input: Input) -> f64 {
    match input {
        // A heat is one heat, and so is a thermocouple.
        Input::Chemistry | Input::Certificate | Input::Thermocouple | Input::Nose | Input::Ms => {
            1.0
        }
        Input::Thickness => 0.0,
        Input::Furnace
        | Input::HeatTransfer
        | Input::QuenchedHardness
        | Input::TemperOven
        | Input::TemperedHardness => SAME_PART,
    }
}
