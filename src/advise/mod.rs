//! Working back: from what was measured on a piece to what must have been done to it.

mod coupon;

pub use coupon::{
    Coupon, CouponError, CouponFit, CouponNote, FactorRange, Reading, ReadingFit, USUAL_TESTER_HRC,
    fit_coupon,
};
