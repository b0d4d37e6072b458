//! Deciding: which route to take, how sure its outcome is, what it hangs on, and working back from what was measured on a
//! piece to what must have been done to it.

mod case;
mod coupon;
mod courses;
mod error;
mod find;
mod inputs;
mod law;
mod learn;
mod points;
mod sensitivity;
mod shop;
mod shop_check;
mod shop_counts;
mod spread;
mod sweep;
mod sweep_bands;

pub use courses::Courses;
pub use error::AdviseError;
pub use find::{
    FindRun, Found, FoundRoute, Limit, Limits, Nearest, Purpose, Sought, TradeOff, find,
};
pub use inputs::{Content, Distribution, Input, OpenInput, Tolerances};
pub use law::Law;
pub(crate) use learn::is_outside;
pub use learn::{
    Band, Compared, Corrected, Correction, Entangled, LearnRun, Learned, Learnt, LoggedReading,
    LoggedRun, Measurement, NextMeasurement, NotUsed, Owner, Prediction, ReadAt, SetPoint,
    UnknownKind, Unusable, Unused, learn,
};
pub use sensitivity::{
    Divided, Index, Quantity, Sensitivity, SensitivityRun, Share, USUAL_ROWS, sensitivity,
};
pub use shop::{ColdBath, Furnace, Quenchant, Shop, TemperOven, Tester};
pub use shop_check::ShopError;
pub use shop_counts::counted_words;
pub use spread::{Quantiles, SpreadRun, Spreads, USUAL_CASES, spread};
pub use sweep::{Numbers, SweepPoint, SweepRun, SweptInput, USUAL_STEPS, sweep, sweep_csv};
pub use sweep_bands::{SweepBand, SweepBandRun};

pub use coupon::{
    Coupon, CouponError, CouponFit, CouponNote, FactorRange, Reading, ReadingFit, USUAL_TESTER_HRC,
    fit_coupon,
};
