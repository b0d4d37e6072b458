//! Why a text is no probe curve or has no fit, and what was taken for granted with one that is.

use super::bath_outside;
use super::curve_units::QUENCH_BETWEEN_C;
use super::entry::BATH_RATE_K_PER_S;
use super::probe_curve::{STANDARD_START_C, TEMPERATURE_RANGE_C};
use crate::units::{
    TemperatureScale, format_cooling_rate, format_fixed, format_kelvin, format_refused,
    format_temperature, told_apart,
};
use recalesce_texts::heat::own as texts;
use serde::{Serialize, Serializer};
use std::fmt;

/// Why a text is not read as a curve of the probe.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CurveError {
    /// No row of numbers.
    NoNumbers,
    /// Longer than is read.
    TooManyRows {
        /// The most that are read.
        most: usize,
    },
    /// Commas that may part columns or stand before decimals.
    Commas {
        /// The line, from 1.
        line: u64,
    },
    /// More than two columns.
    WhichColumns {
        /// The line, from 1.
        line: u64,
        /// Number and name of each column.
        names: String,
    },
    /// Columns asked for that are not there.
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
    Temperature {
        /// The line, from 1.
        line: u64,
        /// The temperature, °C.
        temperature_c: f64,
    },
    /// Time runs back.
    TimeRunsBack {
        /// The line, from 1.
        line: u64,
        /// Its time, in the unit of the text.
        time: f64,
        /// The time before, in the same unit.
        before: f64,
    },
    /// The start is not that of the standard test on any scale.
    Start {
        /// The line of the hottest reading, from 1.
        line: u64,
        /// The hottest reading, as it stands in the text or, where the scale is told, in °C.
        hottest: f64,
    },
    /// Readings end too early.
    EndsHot {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// Where it has to end, °C.
        needed_c: f64,
    },
    /// A gap in the record, or a bad reading.
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
    Entry {
        /// The time told, s.
        entry_s: f64,
        /// The first reading, s.
        first_s: f64,
        /// The last reading, s.
        last_s: f64,
    },
    /// Units of time that make no quench.
    Duration {
        /// As it stands in the text.
        taken: f64,
    },
    /// The probe is never seen to cool.
    NoEntry,
    /// Readings scatter more than a couple does.
    Noisy {
        /// Standard deviation of a reading, K.
        noise_k: f64,
        /// The most allowed, K.
        most_k: f64,
    },
}

impl CurveError {
    /// What is wrong, with temperatures on a scale, whichever that of the text is.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let degrees = |c: f64| format_temperature(c, scale);
        match self {
            Self::NoNumbers => texts::NO_NUMBERS.to_owned(),
            Self::TooManyRows { most } => texts::too_many_lines(*most),
            Self::Commas { line } => texts::doubtful_commas(*line),
            Self::WhichColumns { line, names } => texts::which_columns(*line, names),
            Self::NoSuchColumns {
                time,
                temperature,
                line,
                width,
            } => texts::no_such_columns(*line, [*time, *temperature], *width),
            Self::NotANumber {
                line,
                field,
                what,
                form,
            } => texts::not_a_number(*line, field, what, form),
            Self::Temperature {
                line,
                temperature_c,
            } => {
                let [least, most] = TEMPERATURE_RANGE_C;
                let told = [*temperature_c, least, most].map(|c| scale.of_celsius(c));
                texts::temperature_outside(*line, &told_apart(told), scale.symbol())
            }
            Self::TimeRunsBack { line, time, before } => {
                texts::time_runs_back(*line, *time, *before)
            }
            Self::Start { line, hottest } => texts::wrong_start(*line, *hottest),
            Self::EndsHot {
                coldest_c,
                needed_c,
            } => texts::ends_hot(&degrees(*coldest_c), &degrees(*needed_c)),
            Self::Step {
                line,
                from_c,
                to_c,
                most_k,
            } => {
                let from = format_fixed(scale.of_celsius(*from_c), 0);
                let most = format_kelvin(*most_k, 0, scale);
                texts::large_step(*line, &from, &degrees(*to_c), &most)
            }
            Self::Entry {
                entry_s,
                first_s,
                last_s,
            } => texts::entry_outside(*entry_s, *first_s, *last_s),
            Self::Duration { taken } => {
                let [from, to] = QUENCH_BETWEEN_C.map(degrees);
                texts::no_quench_lasts(&from, &to, *taken)
            }
            Self::NoEntry => texts::no_entry(&format_cooling_rate(BATH_RATE_K_PER_S, scale)),
            Self::Noisy { noise_k, most_k } => {
                let [noise, most] = [*noise_k, *most_k].map(|k| format_kelvin(k, 0, scale));
                texts::noisy(&noise, &most)
            }
        }
    }
}

impl fmt::Display for CurveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

/// Why a curve is not fitted.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CurveFitError {
    /// The bath is not a number or outside of -20 to 250 °C.
    Bath {
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The probe gets colder than the bath.
    ColderThanBath {
        /// The coldest reading, °C.
        coldest_c: f64,
        /// The temperature given, °C.
        bath_c: f64,
    },
    /// The readings leave the curve open.
    Undetermined,
    /// The computed probe stays away from the readings.
    NotFollowed {
        /// Root mean square of the difference, K.
        rms_k: f64,
    },
    /// Too little of the curve is above the bath.
    FewReadings {
        /// How many are.
        count: usize,
    },
}

impl CurveFitError {
    /// What is wrong, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        match *self {
            Self::Bath { bath_c } => bath_outside(bath_c, scale),
            Self::ColderThanBath { coldest_c, bath_c } => texts::colder_than_bath(
                &format_temperature(coldest_c, scale),
                &format_refused(bath_c, scale),
            ),
            Self::Undetermined => texts::UNDETERMINED.to_owned(),
            Self::NotFollowed { rms_k } => texts::not_followed(&format_kelvin(rms_k, 0, scale)),
            Self::FewReadings { count } => texts::few_readings(count),
        }
    }
}

impl fmt::Display for CurveFitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
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

impl CurveNote {
    /// What was done, with temperatures on a scale.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let degrees = |c: f64| format_temperature(c, scale);
        match *self {
            Self::ScaleGuessed(of_text) => {
                texts::scale_guessed(of_text.symbol(), &degrees(STANDARD_START_C))
            }
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
            Self::StartIs(start_c) => {
                texts::start_is(&degrees(start_c), &degrees(STANDARD_START_C))
            }
        }
    }
}

impl fmt::Display for CurveNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.words(TemperatureScale::Celsius))
    }
}

impl Serialize for CurveNote {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{CurveOptions, ProbeCurve};

    fn refused(text: &str) -> [String; 2] {
        let error = ProbeCurve::read(text, &CurveOptions::default()).unwrap_err();
        assert_eq!(error.to_string(), error.words(TemperatureScale::Celsius));
        [error.to_string(), error.words(TemperatureScale::Fahrenheit)]
    }

    #[test]
    fn temperatures_of_a_refusal_follow_the_scale_whatever_that_of_the_text() {
        let hot = [
            "the curve ends at 600\u{a0}°C; it has to go below 400\u{a0}°C",
            "the curve ends at 1112\u{a0}°F; it has to go below 752\u{a0}°F",
        ];
        assert_eq!(refused("s; °C\n0; 850\n5; 700\n9; 600\n"), hot);
        assert_eq!(refused("s; °F\n0; 1562\n5; 1292\n9; 1112\n"), hot);
        assert_eq!(
            refused("s; °C\n0; 850\n1; 700\n2; 500\n3; 300\n4; -95\n"),
            [
                "line 6: \u{2212}95\u{a0}°C is outside \u{2212}80 to 1100\u{a0}°C",
                "line 6: \u{2212}139\u{a0}°F is outside \u{2212}112 to 2012\u{a0}°F",
            ]
        );
        let [celsius, fahrenheit] = refused("s; °C\n0; 850\n1; 700\n1.1; 500\n3; 300\n");
        assert!(celsius.starts_with("from 700\u{a0}°C to 500\u{a0}°C the curve takes"));
        assert!(fahrenheit.starts_with("from 1292\u{a0}°F to 932\u{a0}°F the curve takes"));
    }

    #[test]
    fn a_difference_in_a_refusal_has_no_offset() {
        let step = CurveError::Step {
            line: 7,
            from_c: 800.0,
            to_c: 600.0,
            most_k: 150.0,
        };
        assert_eq!(
            [step.to_string(), step.words(TemperatureScale::Fahrenheit)],
            [
                "line 7: from 800 to 600\u{a0}°C in one step; at most 150\u{a0}K is allowed between two readings",
                "line 7: from 1472 to 1112\u{a0}°F in one step; at most 270\u{a0}°F is allowed between two readings",
            ]
        );
        let noisy = CurveError::Noisy {
            noise_k: 20.0,
            most_k: 10.0,
        };
        assert_eq!(
            noisy.words(TemperatureScale::Fahrenheit),
            "the readings scatter by 36\u{a0}°F; at most 18\u{a0}°F is allowed"
        );
    }

    #[test]
    fn a_fit_and_a_note_follow_the_scale() {
        let colder = CurveFitError::ColderThanBath {
            coldest_c: 40.0,
            bath_c: 60.5,
        };
        assert_eq!(
            colder.to_string(),
            "the probe cools to 40\u{a0}°C, below the bath of 60.5\u{a0}°C"
        );
        assert_eq!(
            colder.words(TemperatureScale::Fahrenheit),
            "the probe cools to 104\u{a0}°F, below the bath of 141\u{a0}°F"
        );
        let start = CurveNote::StartIs(800.0);
        assert!(
            start
                .words(TemperatureScale::Fahrenheit)
                .starts_with("the probe starts at 1472\u{a0}°F, not at 1562\u{a0}°F:")
        );
    }
}
