//! A curve of the standard probe, read from text.

use super::curve_error::{CurveError, CurveNote};
use super::curve_units::{START_RANGE_C, scale_told, to_celsius, to_seconds, unit_told};
use super::entry::{self, Entry};
use super::noise::noise_k;
use super::table::{Row, Table, told};
use super::thin::{Point, thin};
use crate::units::TemperatureScale;
use recalesce_texts::heat::own as texts;

/// Temperatures that a couple in the probe may show, °C.
pub(super) const TEMPERATURE_RANGE_C: [f64; 2] = [-80.0, 1100.0];
/// A start so near to the standard's passes for it, K.
pub(super) const STANDARD_START_C: f64 = 850.0;
const STANDARD_WITHIN_K: f64 = 8.0;
/// Largest step between two readings, K.
const MOST_STEP_K: f64 = 120.0;
/// A record may begin so long after the entry that is told, s.
const BEFORE_RECORD_S: f64 = 2.0;
/// Most scatter of a reading, K.
const MOST_NOISE_K: f64 = 10.0;

/// What the reader of a text is told about it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CurveOptions {
    /// Columns of time and temperature, from 1, where the text does not tell.
    pub columns: Option<[usize; 2]>,
    /// Scale of the temperatures, where the text does not tell.
    pub scale: Option<TemperatureScale>,
    /// When the probe entered the bath on the clock of the text, s; found from the curve
    /// otherwise.
    pub entry_s: Option<f64>,
}

/// A curve of the centre of the 12.5 mm probe of ISO 9950 and ASTM D6200 as measured.
#[derive(Debug, Clone, PartialEq)]
pub struct ProbeCurve {
    /// Readings by rising time, each the mean of one or more.
    pub(super) points: Vec<Point>,
    /// Temperature of the probe as it enters the bath, °C.
    pub start_c: f64,
    /// Whether the time of entry is known, or only found to a tenth of a second or two.
    pub(super) entry_known: bool,
    /// Standard deviation of a single reading, K.
    pub noise_k: f64,
    /// What was guessed, mended or left out.
    pub notes: Vec<CurveNote>,
}

impl ProbeCurve {
    /// Reads a curve: one reading per line, time and temperature, in columns parted by comma,
    /// semicolon, tab or space, with or without a heading.
    ///
    /// Decimals may have a comma; times may be in seconds, milliseconds, minutes by the heading,
    /// or min:s; temperatures in °C or °F, by the heading, by the options, or by the start near
    /// 850 °C. Time before the bath is found and cut off. Readings of one time are averaged, and
    /// long records thinned to several hundred points without loss. [`ProbeCurve::notes`] says
    /// what was taken for granted.
    ///
    /// # Errors
    /// What is not understood or not a quench of this probe, with its line and what is allowed.
    pub fn read(text: &str, options: &CurveOptions) -> Result<Self, CurveError> {
        let mut notes = Vec::new();
        let table = Table::read(text)?;
        let [time, temperature] = columns(&table, options, &mut notes)?;
        let mut readings = readings(&table, [time, temperature], &mut notes)?;
        let by_text = scale_told(&table.name(temperature), &table.heading);
        to_celsius(&mut readings, options.scale.or(by_text), &mut notes)?;
        check_order(&readings)?;
        to_seconds(&mut readings, unit_told(&table, time), &mut notes)?;
        merge(&mut readings, &mut notes);
        check_range(&readings)?;
        let noise_k = noise_k(&readings);
        if noise_k > MOST_NOISE_K {
            return Err(CurveError::Noisy {
                noise_k,
                most_k: MOST_NOISE_K,
            });
        }
        let Entry {
            time_s: entry_s,
            start_c,
            is_found,
        } = entry(&readings, options.entry_s)?;
        if is_found {
            let first_s = readings.first().map_or(entry_s, |r| r.time_s);
            notes.push(CurveNote::IdleCut(entry_s - first_s));
        }
        if (start_c - STANDARD_START_C).abs() > STANDARD_WITHIN_K {
            notes.push(CurveNote::StartIs(start_c));
        }
        readings.retain(|reading| reading.time_s > entry_s);
        for reading in &mut readings {
            reading.time_s -= entry_s;
        }
        check_steps(&readings, start_c)?;
        let points = thin(&readings);
        if points.len() < readings.len() {
            notes.push(CurveNote::Thinned {
                from: readings.len(),
                to: points.len(),
            });
        }
        Ok(Self {
            points,
            start_c,
            entry_known: !is_found,
            noise_k,
            notes,
        })
    }

    /// The curve as it is used: time since entry, s, and temperature, °C.
    pub fn points(&self) -> impl Iterator<Item = [f64; 2]> + '_ {
        self.points.iter().map(|p| [p.time_s, p.temperature_c])
    }
}

/// One reading, with the line it stands in.
#[derive(Debug, Clone, Copy)]
pub(super) struct Reading {
    pub(super) line: u64,
    pub(super) time_s: f64,
    pub(super) temperature_c: f64,
}

/// Columns of time and temperature, from 0.
fn columns(
    table: &Table,
    options: &CurveOptions,
    notes: &mut Vec<CurveNote>,
) -> Result<[usize; 2], CurveError> {
    let [mut time, mut temperature] = table.columns(options.columns)?;
    let width = table.rows.first().map_or(0, |row| row.fields.len());
    let rises = |column: usize| {
        let values = table
            .rows
            .iter()
            .filter_map(|row| time_s(table, row, column));
        values.is_sorted()
    };
    if options.columns.is_none() && width == 2 && !rises(time) && rises(temperature) {
        (time, temperature) = (temperature, time);
        notes.push(CurveNote::ColumnsSwapped);
    }
    if width > 2 {
        notes.push(CurveNote::ColumnsChosen {
            time: time + 1,
            temperature: temperature + 1,
            of: width,
        });
    }
    Ok([time, temperature])
}

/// A time in its own unit, that of a clock in seconds.
fn time_s(table: &Table, row: &Row, column: usize) -> Option<f64> {
    let field = row.field(column);
    table.number(field).or_else(|| table.clock_s(field))
}

/// The numbers of the two columns, in the units of the text.
fn readings(
    table: &Table,
    [time, temperature]: [usize; 2],
    notes: &mut Vec<CurveNote>,
) -> Result<Vec<Reading>, CurveError> {
    let mut readings = Vec::with_capacity(table.rows.len());
    let mut empty = 0;
    for row in &table.rows {
        if row.field(time).is_empty() || row.field(temperature).is_empty() {
            empty += 1;
            continue;
        }
        let wrong = |column: usize, what, form| CurveError::NotANumber {
            line: row.line,
            field: told(row.field(column)),
            what,
            form,
        };
        let time_s = time_s(table, row, time)
            .ok_or_else(|| wrong(time, texts::TIME, texts::FORMS_OF_TIME))?;
        let temperature_c = table
            .number(row.field(temperature))
            .ok_or_else(|| wrong(temperature, texts::TEMPERATURE, ""))?;
        readings.push(Reading {
            line: row.line,
            time_s,
            temperature_c,
        });
    }
    if empty > 0 {
        notes.push(CurveNote::Empty(empty));
    }
    Ok(readings)
}

/// The entry that is told, or that which the curve shows, with a start that the test allows.
fn entry(readings: &[Reading], told_s: Option<f64>) -> Result<Entry, CurveError> {
    let (Some(first), Some(last)) = (readings.first(), readings.last()) else {
        return Err(CurveError::NoNumbers);
    };
    let entry = match told_s {
        Some(entry_s) if (first.time_s - BEFORE_RECORD_S..last.time_s).contains(&entry_s) => {
            entry::given(readings, entry_s)
        }
        Some(entry_s) => {
            return Err(CurveError::Entry {
                entry_s,
                first_s: first.time_s,
                last_s: last.time_s,
            });
        }
        None => entry::find(readings),
    };
    let entry = entry.ok_or(CurveError::NoEntry)?;
    if !(START_RANGE_C[0]..=START_RANGE_C[1]).contains(&entry.start_c) {
        return Err(CurveError::Start {
            line: first.line,
            hottest: entry.start_c,
        });
    }
    Ok(entry)
}

fn check_order(readings: &[Reading]) -> Result<(), CurveError> {
    for pair in readings.windows(2) {
        if let [before, after] = pair
            && after.time_s < before.time_s
        {
            return Err(CurveError::TimeRunsBack {
                line: after.line,
                time: after.time_s,
                before: before.time_s,
            });
        }
    }
    Ok(())
}

/// Averages readings of one time.
fn merge(readings: &mut Vec<Reading>, notes: &mut Vec<CurveNote>) {
    let before = readings.len();
    let mut same = 1.0;
    readings.dedup_by(|later, kept| {
        let repeats = later.time_s <= kept.time_s;
        if repeats {
            same += 1.0;
            kept.temperature_c += (later.temperature_c - kept.temperature_c) / same;
        } else {
            same = 1.0;
        }
        repeats
    });
    if readings.len() < before {
        notes.push(CurveNote::Repeated(before - readings.len()));
    }
}

fn check_range(readings: &[Reading]) -> Result<(), CurveError> {
    let [least, most] = TEMPERATURE_RANGE_C;
    let wrong = readings
        .iter()
        .find(|reading| !(least..=most).contains(&reading.temperature_c));
    wrong.map_or(Ok(()), |reading| {
        Err(CurveError::Temperature {
            line: reading.line,
            temperature_c: reading.temperature_c,
        })
    })
}

/// No step may be so large that it hides a stage of boiling.
fn check_steps(readings: &[Reading], start_c: f64) -> Result<(), CurveError> {
    let mut before_c = start_c;
    for reading in readings {
        if (before_c - reading.temperature_c).abs() > MOST_STEP_K {
            return Err(CurveError::Step {
                line: reading.line,
                from_c: before_c,
                to_c: reading.temperature_c,
                most_k: MOST_STEP_K,
            });
        }
        before_c = reading.temperature_c;
    }
    Ok(())
}
