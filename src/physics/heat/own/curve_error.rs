//! Why a text is no probe curve or has no fit, and what was taken for granted with one that is.

use super::BATH_RANGE_C;
use super::probe_curve::TEMPERATURE_RANGE_C;
use crate::units::TemperatureScale;
use recalesce_texts::heat::own as texts;
use serde::{Serialize, Serializer};
use std::fmt;

/// Why a text is not read as a curve of the probe.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CurveError {
    /// No row of numbers.
    #[error("{}", texts::NO_NUMBERS)]
    NoNumbers,
    /// Longer than is read.
    #[error("{}", texts::too_many_lines(*most))]
    TooManyRows {
        /// The most that are read.
        most: usize,
    },
    /// Commas that may part columns or stand before decimals.
    #[error("{}", texts::doubtful_commas(*line))]
    Commas {
        /// The line, from 1.
        line: u64,
    },
    /// More than two columns.
    #[error("{}", texts::which_columns(*line, names))]
    WhichColumns {
        /// The line, from 1.
        line: u64,
        /// Number and name of each column.
        names: String,
    },
    /// Columns asked for that are not there.
    #[error("{}", texts::no_such_columns(*line, [*time, *temperature], *width))]
    NoSuchColumns {
        /// Column of the time, from 1.
        time: usize,
        /// Column of the temperature, from 1.
        temperature: usize,
        /// The line, from 1.
        line: u64,
        /// Number of columns.
        width: usize,
    },
    /// A reading that is no number.
    #[error("{}", texts::not_a_number(*line, field, what, form))]
    NotANumber {
        /// The line, from 1.
        line: u64,
        /// What stands there.
        field: String,
        /// What it should be.
        what: &'static str,
        /// Forms that are read.
        form: &'static str,
    },
    /// A temperature that the probe does not have.
    #[error("{}", texts::temperature_outside(*line, *temperature_c, TEMPERATURE_RANGE_C))]
    Temperature {
        /// The line, from 1.
        line: u64,
        /// The temperature, °C.
        temperature_c: f64,
    },
    /// Time runs back.
    #[error("{}", texts::time_runs_back(*line, *time, *before))]
    TimeRunsBack {
        /// The line, from 1.
        line: u64,
        /// Its time, in the unit of the text.
        time: f64,
        /// The time before, in the same unit.
        before: f64,
    },
    /// The start is not that of the standard test on any scale.
    #[error("{}", texts::wrong_start(*line, *hottest))]
    Start {
        /// The line of the hottest reading, from 1.
        line: u64,
        /// The hottest reading, as it stands in the text or, where the scale is told, in °C.
        hottest: f64,
    },
    /// Readings end too early.
    #[error("{}", texts::ends_hot(*coldest_c, *needed_c))]
    EndsHot {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// Where it has to end, °C.
        needed_c: f64,
    },
    /// A gap in the record, or a bad reading.
    #[error("{}", texts::large_step(*line, *from_c, *to_c, *most_k))]
    Step {
        /// The line after the step, from 1.
        line: u64,
        /// Temperature before, °C.
        from_c: f64,
        /// Temperature after, °C.
        to_c: f64,
        /// The largest step allowed, K.
        most_k: f64,
    },
    /// A time of entry that the record does not hold.
    #[error("{}", texts::entry_outside(*entry_s, *first_s, *last_s))]
    Entry {
        /// The time told, s.
        entry_s: f64,
        /// The first reading, s.
        first_s: f64,
        /// The last reading, s.
        last_s: f64,
    },
    /// Units of time that make no quench.
    #[error("{}", texts::no_quench_lasts(*taken))]
    Duration {
        /// As it stands in the text.
        taken: f64,
    },
    /// The probe is never seen to cool.
    #[error("{}", texts::NO_ENTRY)]
    NoEntry,
    /// Readings scatter more than a couple does.
    #[error("{}", texts::noisy(*noise_k, *most_k))]
    Noisy {
        /// Standard deviation of a reading, K.
        noise_k: f64,
        /// The most allowed, K.
        most_k: f64,
    },
}

/// Why a curve is not fitted.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CurveFitError {
    /// The bath is not a number or outside of -20 to 250 °C.
    #[error("{}", texts::bath_outside(*bath_c, BATH_RANGE_C))]
    Bath {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The probe gets colder than the bath.
    #[error("{}", texts::colder_than_bath(*coldest_c, *bath_c))]
    ColderThanBath {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The readings leave the curve open.
    #[error("{}", texts::UNDETERMINED)]
    Undetermined,
    /// The computed probe stays away from the readings.
    #[error("{}", texts::not_followed(*rms_k))]
    NotFollowed {
        /// Root mean square of the difference, K.
        rms_k: f64,
    },
    /// Too little of the curve is above the bath.
    #[error("{}", texts::few_readings(*count))]
    FewReadings {
        /// How many are.
        count: usize,
    },
}

/// Something about a curve that was guessed, mended or left out.
#[derive(Debug, Clone, PartialEq)]
pub enum CurveNote {
    /// The scale was told by the temperature of the start.
    ScaleGuessed(TemperatureScale),
    /// Seconds were taken for granted, as the duration makes sense in them.
    SecondsAssumed,
    /// Milliseconds were told by the duration.
    MillisecondsGuessed,
    /// The columns stand the other way round.
    ColumnsSwapped,
    /// These columns, from 1, of more were read.
    ColumnsChosen {
        /// Column of the time.
        time: usize,
        /// Column of the temperature.
        temperature: usize,
        /// Number of columns.
        of: usize,
    },
    /// Readings with an empty field were left out.
    Empty(usize),
    /// Readings of one time were averaged.
    Repeated(usize),
    /// Time before the bath was cut off: that long, s.
    IdleCut(f64),
    /// Readings were averaged in groups: so many, to so many.
    Thinned {
        /// Readings.
        from: usize,
        /// Points.
        to: usize,
    },
    /// The probe did not start at 850 °C, so that its figures are not those of the standard.
    StartIs(f64),
}

impl fmt::Display for CurveNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match *self {
            Self::ScaleGuessed(scale) => texts::scale_guessed(scale.symbol()),
            Self::SecondsAssumed => texts::SECONDS_ASSUMED.to_owned(),
            Self::MillisecondsGuessed => texts::MILLISECONDS_GUESSED.to_owned(),
            Self::ColumnsSwapped => texts::COLUMNS_SWAPPED.to_owned(),
            Self::ColumnsChosen {
                time,
                temperature,
                of,
            } => texts::columns_chosen(time, temperature, of),
            Self::Empty(count) => texts::empty_lines(count),
            Self::Repeated(count) => texts::repeated_times(count),
            Self::IdleCut(time_s) => texts::idle_time_cut(time_s),
            Self::Thinned { from, to } => texts::thinned(from, to),
            Self::StartIs(start_c) => texts::start_is(start_c),
        })
    }
}

impl Serialize for CurveNote {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
