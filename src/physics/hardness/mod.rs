//! Hardness: as quenched, of mixtures, after tempering; conversion between scales.
//!
//! Mixtures are made in Vickers; tempering is thought in HRC, where the falls of the three stages add.
//! [`Hardness`] holds Vickers and gives the other scales where the standard defines them.

mod annealed;
mod auto_temper;
mod bar;
mod embrittlement;
mod grade_table;
mod inverse;
mod martensite;
mod mixing;
mod mixture;
mod scale;
mod soft;
mod stages;
mod tempering;
mod workings;

pub use crate::sources::normalised_bars::BAND_HV as SLOW_PEARLITE_BAND_HV;
pub use annealed::{ANNEALED_BAND_HV, annealed};
pub use auto_temper::{AutoTempered, auto_tempered};
pub use bar::{BarError, BarPlace, end_quenched};
pub use embrittlement::{ReversibleEmbrittlement, embrittling_range_c, reversible_embrittlement};
pub use grade_table::{equivalent_c_of, grade_table, hollomon_jaffe_of};
pub use inverse::temperatures_for_each;
pub use inverse::{TemperChoice, temperatures_for, time_for};
pub use martensite::{
    as_quenched, as_quenched_martensite_hrc, as_quenched_martensite_hv, half_martensite_hrc,
    usual_austenite,
};
pub use mixing::{Beside, Mixed, Soft, beside, martensite_alone_hv, mixed_hv};
pub use mixture::mixture;
pub use scale::{Hardness, Scale, convert};
pub use soft::{
    Aggregate, aggregate_hv_of, eutectoid_over_ferrite_hv, ferrite_hv_of, is_bainite_alone,
    pearlite_part_of,
};
pub use stages::{
    fall_hrc_of, half_lives_of, held_hrc_of, middle_of, reduced_s_of, whole_fall_hrc_of,
};
pub use tempering::{
    AsQuenched, CurvePoint, SnapTempered, TemperStep, Tempered, Tempering, temper, temper_curve,
};
pub use workings::{QuenchedParts, Softening, TemperedParts};

/// Half-width of the band on as-quenched hardness, HRC: nine in ten of pieces with these constituents. An
/// estimate from the spread of handbook values (memory). How sure the constituents are is not in it.
pub const AS_QUENCHED_BAND_HRC: f64 = 2.0;
