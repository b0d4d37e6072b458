//! A table of numbers as loggers and spreadsheets write it: what parts the columns, which line is
//! the heading, which columns are time and temperature.

use super::curve_error::CurveError;
use crate::numeric::decimal;
use recalesce_texts::heat::own as texts;

/// Most rows that are read.
const MOST_ROWS: usize = 500_000;
/// Most lines before the first row of numbers.
const MOST_HEADING: usize = 100;
/// Longest part of a field that an error or a name repeats, characters.
const LONGEST_TOLD: usize = 40;

/// A row of the text: its line, from 1, and its fields.
pub(super) struct Row {
    pub(super) line: u64,
    pub(super) fields: Vec<String>,
}

impl Row {
    /// One field, from 0; empty where the row is shorter.
    pub(super) fn field(&self, column: usize) -> &str {
        self.fields.get(column).map_or("", String::as_str)
    }
}

/// The rows of numbers, and the names of their columns.
pub(super) struct Table {
    pub(super) rows: Vec<Row>,
    /// As many as the first row has fields; empty where the text has none.
    names: Vec<String>,
    /// All lines before the first row of numbers, in lower case.
    pub(super) heading: String,
    decimal: Decimal,
}

/// What stands before the decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Decimal {
    Point,
    Comma,
}

/// What stands between columns.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Separator {
    Byte(u8),
    Space,
}

impl Table {
    /// Parts the text into rows.
    ///
    /// # Errors
    /// No row with two numbers, too many rows, commas that may be either separators or decimals.
    pub(super) fn read(text: &str) -> Result<Self, CurveError> {
        let text = text.trim_start_matches('\u{feff}');
        let mut rows = Vec::new();
        let (separator, decimal) = separator(text)?;
        let mut push = |line: u64, fields: Vec<String>| {
            if fields.iter().any(|field| !field.is_empty()) {
                rows.push(Row { line, fields });
            }
            rows.len() <= MOST_ROWS
        };
        match separator {
            Separator::Space => {
                for (i, line) in text.lines().enumerate() {
                    let fields = line.split_whitespace().map(str::to_owned).collect();
                    if !push(i as u64 + 1, fields) {
                        break;
                    }
                }
            }
            Separator::Byte(byte) => {
                let lines: Vec<&str> = text.lines().collect();
                let mut reader = csv::ReaderBuilder::new()
                    .delimiter(byte)
                    .has_headers(false)
                    .flexible(true)
                    .trim(csv::Trim::All)
                    .from_reader(text.as_bytes());
                // The text is UTF-8 and rows may have any length, so none fails.
                for record in reader.records().flatten() {
                    // The reader tells where it began to read, before the empty lines it skips.
                    let began = record.position().map_or(1, csv::Position::line);
                    let skipped = lines.iter().skip((began as usize).saturating_sub(1));
                    let skipped = skipped.take_while(|line| line.is_empty()).count();
                    let line = began + skipped as u64;
                    let mut fields: Vec<String> = record.iter().map(str::to_owned).collect();
                    // A separator at the end of the line parts nothing.
                    while fields.len() > 2 && fields.last().is_some_and(String::is_empty) {
                        fields.pop();
                    }
                    if !push(line, fields) {
                        break;
                    }
                }
            }
        }
        if rows.len() > MOST_ROWS {
            return Err(CurveError::TooManyRows { most: MOST_ROWS });
        }
        let is_numbers = |row: &Row| {
            let numbers = |field: &&String| is_reading(field, decimal);
            row.fields.iter().filter(numbers).count() >= 2
        };
        let first = rows
            .iter()
            .take(MOST_HEADING)
            .position(is_numbers)
            .ok_or(CurveError::NoNumbers)?;
        let body = rows.split_off(first);
        let width = body.first().map_or(0, |row| row.fields.len());
        let heading: Vec<String> = rows.iter().map(|row| row.fields.join(" ")).collect();
        // The names stand in the last line before the numbers that has as many words, the units
        // perhaps in a line of their own below or above.
        let mut names: Vec<String> = Vec::new();
        for row in rows.iter().rev().filter(|row| row.fields.len() == width) {
            if names.is_empty() {
                names.clone_from(&row.fields);
            } else if names.iter().all(|name| !names_time(name)) {
                for (name, above) in names.iter_mut().zip(&row.fields) {
                    *name = format!("{above} {name}");
                }
            }
        }
        Ok(Self {
            rows: body,
            names,
            heading: heading.join("\n").to_ascii_lowercase(),
            decimal,
        })
    }

    /// Name of a column, from 0, in lower case; empty where it has none.
    pub(super) fn name(&self, column: usize) -> String {
        let name = self.names.get(column);
        name.map(|name| name.to_ascii_lowercase())
            .unwrap_or_default()
    }

    /// Number in a field; nothing when it is none.
    pub(super) fn number(&self, field: &str) -> Option<f64> {
        number(field, self.decimal)
    }

    /// Seconds of a clock such as `1:02.5` or `0:01:02.5`; nothing when the field is none.
    pub(super) fn clock_s(&self, field: &str) -> Option<f64> {
        clock_s(field, self.decimal)
    }

    /// Columns of time and temperature, from 0: those asked for (counted from 1), those that the
    /// names tell, or the only two.
    ///
    /// # Errors
    /// Columns that are not there; more than two that nothing tells apart.
    pub(super) fn columns(&self, asked: Option<[usize; 2]>) -> Result<[usize; 2], CurveError> {
        let width = self.rows.first().map_or(0, |row| row.fields.len());
        let line = self.rows.first().map_or(1, |row| row.line);
        if let Some([time, temperature]) = asked {
            let there = |column: usize| (1..=width).contains(&column);
            if !there(time) || !there(temperature) || time == temperature {
                return Err(CurveError::NoSuchColumns {
                    time,
                    temperature,
                    line,
                    width,
                });
            }
            return Ok([time - 1, temperature - 1]);
        }
        let only = |test: fn(&str) -> bool| {
            let mut found =
                (0..self.names.len()).filter(|i| self.names.get(*i).is_some_and(|n| test(n)));
            found.next().filter(|_| found.next().is_none())
        };
        match (only(names_time), only(names_temperature)) {
            (Some(time), Some(temperature)) if time != temperature => Ok([time, temperature]),
            _ if width == 2 => Ok([0, 1]),
            _ => Err(CurveError::WhichColumns {
                line,
                names: self.told_names().join(", "),
            }),
        }
    }

    fn told_names(&self) -> Vec<String> {
        let fields = self.rows.first().map(|row| row.fields.as_slice());
        fields
            .unwrap_or_default()
            .iter()
            .take(12)
            .enumerate()
            .map(|(i, value)| match self.names.get(i) {
                Some(name) => texts::column_of_name(i + 1, &told(name)),
                None => texts::column_of_value(i + 1, &told(value)),
            })
            .collect()
    }
}

/// A field as an error repeats it.
pub(super) fn told(field: &str) -> String {
    field.chars().take(LONGEST_TOLD).collect()
}

fn names_time(name: &str) -> bool {
    let name = name.to_ascii_lowercase();
    let temperature = name.contains("temper") || name.contains('°');
    !temperature
        && ["time", "zeit", "temps", "tiempo", "tempo", "elapsed", "sec"]
            .iter()
            .any(|word| name.contains(word))
        || matches!(
            name.trim(),
            "t" | "s" | "t/s" | "t [s]" | "t (s)" | "t [ms]" | "t (ms)"
        )
}

fn names_temperature(name: &str) -> bool {
    let name = name.to_ascii_lowercase();
    let rate = ["rate", "/s", "dt/d", "geschw", "vitesse"]
        .iter()
        .any(|word| name.contains(word));
    !rate
        && ([
            "temper",
            "°c",
            "°f",
            "degc",
            "degf",
            "deg c",
            "deg f",
            "celsius",
            "fahrenheit",
        ]
        .iter()
        .any(|word| name.contains(word))
            || (name.contains("temp") && !names_time(&name)))
}

/// What parts the columns, told by the first lines that have numbers.
fn separator(text: &str) -> Result<(Separator, Decimal), CurveError> {
    let sample = || {
        text.lines()
            .enumerate()
            .filter(|(_, line)| {
                let first = line.trim_start().chars().next();
                first.is_some_and(|c| c.is_ascii_digit() || "+-.\"".contains(c))
            })
            .take(MOST_HEADING)
    };
    let all_have =
        |c: char| sample().next().is_some() && sample().all(|(_, line)| line.contains(c));
    let any_has = |c: char| sample().any(|(_, line)| line.contains(c));
    let decimal = if any_has(',') && !any_has('.') {
        Decimal::Comma
    } else {
        Decimal::Point
    };
    for byte in [b'\t', b';', b'|'] {
        if all_have(char::from(byte)) {
            return Ok((Separator::Byte(byte), decimal));
        }
    }
    if !any_has(',') {
        return Ok((Separator::Space, Decimal::Point));
    }
    // Commas: between columns, or before decimals with space between columns.
    let decimals_only = sample().all(|(_, line)| {
        let mut fields = 0;
        let each = line.split_whitespace().all(|field| {
            fields += 1;
            is_reading(field, Decimal::Comma)
        });
        each && fields >= 2
    });
    if decimals_only && decimal == Decimal::Comma {
        return Ok((Separator::Space, Decimal::Comma));
    }
    // "0,1,850,3": whole numbers in an even number, and nothing to tell what the commas are.
    let doubtful = sample().find(|(_, line)| {
        let parts = line.trim().split(',').count();
        decimal == Decimal::Comma && parts >= 4 && !line.contains(['"', ' '])
    });
    match doubtful {
        Some((i, _)) => Err(CurveError::Commas { line: i as u64 + 1 }),
        None => Ok((Separator::Byte(b','), Decimal::Point)),
    }
}

fn is_reading(field: &str, decimal: Decimal) -> bool {
    number(field, decimal).is_some() || clock_s(field, decimal).is_some()
}

fn clock_s(field: &str, decimal: Decimal) -> Option<f64> {
    let (before, seconds) = field.rsplit_once(':')?;
    let below_sixty = |x: &f64| (0.0..60.0).contains(x);
    let seconds = number(seconds, decimal).filter(below_sixty)?;
    let (hours, minutes) = before.split_once(':').unwrap_or(("0", before));
    let whole = |text: &str| text.parse::<u16>().ok().map(f64::from);
    Some(3600.0 * whole(hours)? + 60.0 * whole(minutes)? + seconds)
}

/// A plain decimal number, finite.
fn number(field: &str, decimal: Decimal) -> Option<f64> {
    let field = field.trim();
    // Words such as "inf" and "nan", which are numbers elsewhere, are none here.
    let plain = |c: char| c.is_ascii_digit() || "+-.,eE".contains(c);
    if !field.chars().all(plain) || !field.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let value: f64 = match decimal {
        Decimal::Point => decimal::decimal(field)?,
        Decimal::Comma if field.contains('.') => return None,
        Decimal::Comma => decimal::decimal(&field.replacen(',', ".", 1))?,
    };
    value.is_finite().then_some(value)
}
