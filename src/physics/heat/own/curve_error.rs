//! Why a text is no probe curve or has no fit, and what was taken for granted with one that is.

use crate::units::TemperatureScale;
use serde::{Serialize, Serializer};
use std::fmt;

/// Why a text is not read as a curve of the probe.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CurveError {
    /// No row of numbers.
    #[error(
        "no line has two numbers; a curve has one reading per line, time and temperature, in \
         columns parted by comma, semicolon, tab or space"
    )]
    NoNumbers,
    /// Longer than is read.
    #[error("the curve has more than {most} lines; average it first")]
    TooManyRows {
        /// The most that are read.
        most: usize,
    },
    /// Commas that may part columns or stand before decimals.
    #[error(
        "line {line}: the commas may part columns or stand before decimals; write decimals with a \
         point, or part the columns by semicolons"
    )]
    Commas {
        /// The line, from 1.
        line: u64,
    },
    /// More than two columns.
    #[error(
        "line {line}: which columns are time and temperature? There are {names}; give the numbers \
         of the two"
    )]
    WhichColumns {
        /// The line, from 1.
        line: u64,
        /// Number and name of each column.
        names: String,
    },
    /// Columns asked for that are not there.
    #[error(
        "line {line}: columns {time} and {temperature} are asked for; there are 1 to {width}, and \
         time and temperature are two of them"
    )]
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
    #[error("line {line}: {field:?} is no {what}{form}")]
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
    #[error("line {line}: {temperature_c:.0} °C is outside -80 to 1100 °C")]
    Temperature {
        /// The line, from 1.
        line: u64,
        /// The temperature, °C.
        temperature_c: f64,
    },
    /// Time runs back.
    #[error("line {line}: the time {time} is before {before}, that of the reading above")]
    TimeRunsBack {
        /// The line, from 1.
        line: u64,
        /// Its time, in the unit of the text.
        time: f64,
        /// The time before, in the same unit.
        before: f64,
    },
    /// The start is not that of the standard test on any scale.
    #[error(
        "line {line}: the probe is at most {hottest:.0}°; it starts at 850 °C (1562 °F), and 780 \
         to 920 °C (1436 to 1688 °F) is allowed"
    )]
    Start {
        /// The line of the hottest reading, from 1.
        line: u64,
        /// The hottest reading, as it stands in the text or, where the scale is told, in °C.
        hottest: f64,
    },
    /// Readings end too early.
    #[error("the curve ends at {coldest_c:.0} °C; it has to go below {needed_c:.0} °C")]
    EndsHot {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// Where it has to end, °C.
        needed_c: f64,
    },
    /// A gap in the record, or a bad reading.
    #[error(
        "line {line}: from {from_c:.0} to {to_c:.0} °C in one step; at most {most_k:.0} K is \
         allowed between two readings"
    )]
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
    #[error("an entry at {entry_s} s is outside the record, {first_s} to {last_s} s")]
    Entry {
        /// The time told, s.
        entry_s: f64,
        /// The first reading, s.
        first_s: f64,
        /// The last reading, s.
        last_s: f64,
    },
    /// Units of time that make no quench.
    #[error(
        "from 700 to 500 °C the curve takes {taken:.3} units of time; a quenchant takes 0.2 to 150 s, \
         and seconds, milliseconds and min:s are read"
    )]
    Duration {
        /// As it stands in the text.
        taken: f64,
    },
    /// The probe is never seen to cool.
    #[error("the probe is nowhere seen to enter the bath: it never cools by 10 K/s or more")]
    NoEntry,
    /// Readings scatter more than a couple does.
    #[error("the readings scatter by {noise_k:.0} K; at most {most_k:.0} K is allowed")]
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
    #[error("a bath of {bath_c} °C is outside -20 to 250 °C")]
    Bath {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The probe gets colder than the bath.
    #[error("the probe cools to {coldest_c:.0} °C, below the bath of {bath_c} °C")]
    ColderThanBath {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The readings leave the curve open.
    #[error("the readings do not determine a heat-transfer curve")]
    Undetermined,
    /// The computed probe stays away from the readings.
    #[error(
        "no heat transfer in this bath makes the probe cool like this: the nearest misses the \
         readings by {rms_k:.0} K; are the bath, the probe and the units right?"
    )]
    NotFollowed {
        /// Root mean square of the difference, K.
        rms_k: f64,
    },
    /// Too little of the curve is above the bath.
    #[error("{count} readings are clear of the bath; at least 20 are needed")]
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
        match self {
            Self::ScaleGuessed(scale) => write!(
                f,
                "temperatures taken as {}: only there the probe starts near 850 °C",
                scale.symbol()
            ),
            Self::SecondsAssumed => f.write_str("times taken as seconds"),
            Self::MillisecondsGuessed => {
                f.write_str("times taken as milliseconds: no quench lasts so many seconds")
            }
            Self::ColumnsSwapped => f.write_str("temperature stands before time"),
            Self::ColumnsChosen {
                time,
                temperature,
                of,
            } => write!(
                f,
                "time from column {time} and temperature from column {temperature} of {of}"
            ),
            Self::Empty(count) => write!(f, "{count} lines without a reading left out"),
            Self::Repeated(count) => {
                write!(f, "{count} readings at a time already there, averaged")
            }
            Self::IdleCut(time_s) => {
                write!(
                    f,
                    "the probe enters the bath {time_s:.2} s after the first reading"
                )
            }
            Self::Thinned { from, to } => write!(f, "{from} readings averaged to {to} points"),
            Self::StartIs(start_c) => write!(
                f,
                "the probe starts at {start_c:.0} °C, not at 850 °C: its figures are not those of \
                 the standard"
            ),
        }
    }
}

impl Serialize for CurveNote {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
