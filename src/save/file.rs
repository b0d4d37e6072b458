//! Reading and writing files: the envelope, its version, and what can be wrong with it.

use super::shelf::{Shelf, ShelfItem};
use super::told::{shortened, told};
use super::v9;
use crate::route::{Route, RouteFieldError, validate};
use recalesce_texts::save::file as texts;
use serde::Serialize;
use serde_json::{Map, Value};
use std::fmt;

/// Value of `format` in every file of this project.
pub(super) const FORMAT: &str = "recalesce";

/// The version written; older ones are read as well.
pub const VERSION: u64 = 9;

/// Largest file that is read or written, bytes.
pub const LARGEST_FILE_BYTES: usize = 5_000_000;

/// What a file holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Saved routes.
    Shelf,
    /// The one route that is open.
    Bench,
}

impl Kind {
    /// Value of `kind` in a file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Shelf => "shelf",
            Self::Bench => "bench",
        }
    }
}

/// What could be read of a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// What the file says it holds.
    pub kind: Kind,
    /// The routes that make sense, in the order of the file.
    pub shelf: Shelf,
    /// The others: place in the file counted from 0, and what is wrong.
    pub rejected: Vec<(usize, String)>,
}

/// Why a file could not be read. The caller still has its text and must keep it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// The file is larger than any of its kind.
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The most that a file of its kind may have.
        most: usize,
    },
    /// The file ends in the middle.
    CutShort {
        /// Last line.
        line: usize,
    },
    /// The file is not JSON.
    NotJson {
        /// Line of the fault, from 1.
        line: usize,
        /// Column of the fault, from 1.
        column: usize,
        /// What the parser says.
        fault: String,
    },
    /// JSON, but not of this project.
    NotOurs,
    /// The version is no whole number from 1.
    Version {
        /// The version found.
        found: String,
    },
    /// The file comes from a later program.
    Newer {
        /// The version found.
        found: u64,
    },
    /// The file holds something else.
    Kind {
        /// What it holds, as it says.
        found: String,
        /// What can be read.
        wanted: &'static str,
    },
    /// A field of the envelope is missing, of a wrong type, or unknown.
    Field {
        /// The field.
        field: &'static str,
        /// What is wrong.
        fault: String,
    },
    /// A field of the envelope is unknown.
    UnknownField {
        /// Its name, shortened if long.
        name: String,
    },
    /// More routes than a file of the kind holds.
    TooMany {
        /// Routes found.
        found: usize,
        /// Most allowed.
        most: usize,
    },
    /// The open route of a bench file makes no sense.
    Route(String),
}

impl ReadError {
    /// What is wrong. One text for all kinds: derived for each by itself, the page would be heavier.
    fn said(&self) -> String {
        match self {
            Self::TooLarge { bytes, most } => texts::too_large(*bytes, *most),
            Self::CutShort { line } => texts::cut_short(*line),
            Self::NotJson {
                line,
                column,
                fault,
            } => texts::not_json(*line, *column, fault),
            Self::NotOurs => texts::not_ours(FORMAT),
            Self::Version { found } => texts::no_version(found),
            Self::Newer { found } => texts::newer(*found, VERSION),
            Self::Kind { found, wanted } => texts::other_kind(found, wanted),
            Self::Field { field, fault } => texts::field(field, fault),
            Self::UnknownField { name } => texts::unknown_field(name),
            Self::TooMany { found, most } => texts::too_many(*found, *most),
            Self::Route(error) => texts::bad_route(error),
        }
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said())
    }
}

impl ReadError {
    pub(super) fn kind(found: &Value, wanted: &'static str) -> Self {
        Self::Kind {
            found: brief(&found.to_string()),
            wanted,
        }
    }
}

/// Why a file could not be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum WriteError {
    /// It would be larger than what can be read back.
    #[error("{}", texts::too_large_to_write(*bytes, *most))]
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The most that a file of its kind may have.
        most: usize,
    },
    /// The open route makes no sense, so it could not be read back.
    #[error("{}", texts::route_not_saved(&.0.to_string()))]
    Route(#[from] RouteFieldError),
    /// The route is too long for a link.
    #[error("{}", texts::long_link(*length))]
    LongLink {
        /// Length of the link, characters.
        length: usize,
    },
    /// The text could not be made.
    #[error("{}", texts::not_written(.0))]
    Text(String),
}

/// A text from the file, short enough for a message.
fn brief(text: &str) -> String {
    const LONGEST: usize = 40;
    shortened(text, LONGEST)
}

/// The fields of an envelope that are still to be read.
pub(super) struct Fields(Map<String, Value>);

impl Fields {
    pub(super) fn take(&mut self, field: &'static str) -> Result<Value, ReadError> {
        self.0.remove(field).ok_or_else(|| ReadError::Field {
            field,
            fault: texts::MISSING.to_owned(),
        })
    }

    /// A field that may be left out.
    pub(super) fn take_optional(&mut self, field: &str) -> Option<Value> {
        self.0.remove(field)
    }

    pub(super) fn rest(self) -> Value {
        Value::Object(self.0)
    }

    /// Refuses what was not asked for.
    pub(super) fn finish(self) -> Result<(), ReadError> {
        match self.0.keys().next() {
            Some(name) => Err(ReadError::UnknownField { name: brief(name) }),
            None => Ok(()),
        }
    }
}

/// Opens the envelope: checks size, JSON, format and version; returns version and other fields.
pub(super) fn open(text: &str) -> Result<(u64, Fields), ReadError> {
    open_up_to(text, LARGEST_FILE_BYTES)
}

/// The same for a kind of file with a limit of its own.
pub(super) fn open_up_to(text: &str, most_bytes: usize) -> Result<(u64, Fields), ReadError> {
    if text.len() > most_bytes {
        return Err(ReadError::TooLarge {
            bytes: text.len(),
            most: most_bytes,
        });
    }
    // Some editors put a byte order mark in front.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let value: Value = serde_json::from_str(text).map_err(|e| {
        if e.is_eof() {
            ReadError::CutShort { line: e.line() }
        } else {
            ReadError::NotJson {
                line: e.line(),
                column: e.column(),
                fault: fault_without_place(&e),
            }
        }
    })?;
    let Value::Object(fields) = value else {
        return Err(ReadError::NotOurs);
    };
    let mut fields = Fields(fields);
    if fields.take("format").ok() != Some(Value::from(FORMAT)) {
        return Err(ReadError::NotOurs);
    }
    let found = fields.take("version")?;
    match found.as_u64() {
        Some(version) if version > VERSION => Err(ReadError::Newer { found: version }),
        Some(version) if version > 0 => Ok((version, fields)),
        _ => Err(ReadError::Version {
            found: brief(&found.to_string()),
        }),
    }
}

/// The parser's words without the line and column that it appends.
fn fault_without_place(error: &serde_json::Error) -> String {
    let words = told(error);
    words
        .split_once(" at line ")
        .map_or(words.clone(), |(fault, _)| fault.to_owned())
}

/// Reads a file of routes of any version so far.
///
/// # Errors
/// A file that cannot be read as a whole. A bad route among good ones is no error: it is told
/// in [`Loaded::rejected`].
pub fn read(text: &str) -> Result<Loaded, ReadError> {
    let (version, fields) = open(text)?;
    // Each version has its own reader; one that is no longer the newest turns what it reads into
    // the newest types.
    match version {
        1..=9 => v9::read(fields),
        newer => Err(ReadError::Newer { found: newer }),
    }
}

/// Reads the open route of a bench file: its name and the route.
///
/// # Errors
/// As [`read`], and a shelf, an empty file, or a route that makes no sense.
pub fn read_bench(text: &str) -> Result<ShelfItem, ReadError> {
    let loaded = read(text)?;
    if loaded.kind != Kind::Bench {
        return Err(ReadError::Kind {
            found: format!("\"{}\"", loaded.kind.name()),
            wanted: "\"bench\"",
        });
    }
    if let Some((_, fault)) = loaded.rejected.into_iter().next() {
        return Err(ReadError::Route(fault));
    }
    let item = loaded.shelf.items().first().cloned();
    item.ok_or_else(|| ReadError::Field {
        field: "routes",
        fault: texts::EMPTY.to_owned(),
    })
}

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    kind: &'static str,
    routes: &'a [ShelfItem],
}

/// Writes a shelf, for storage or export.
///
/// # Errors
/// A text larger than what [`read`] accepts.
pub fn write_shelf(shelf: &Shelf) -> Result<String, WriteError> {
    write(Kind::Shelf, shelf.items())
}

/// Writes the open route and its name.
///
/// # Errors
/// A route that [`read_bench`] would refuse.
pub fn write_bench(name: &str, route: &Route) -> Result<String, WriteError> {
    validate(route)?;
    let mut bench = Shelf::default();
    bench
        .add(name, route.clone())
        .map_err(|e| WriteError::Text(e.to_string()))?;
    write(Kind::Bench, bench.items())
}

fn write(kind: Kind, routes: &[ShelfItem]) -> Result<String, WriteError> {
    let file = File {
        format: FORMAT,
        version: VERSION,
        kind: kind.name(),
        routes,
    };
    let text = serde_json::to_string(&file).map_err(|e| WriteError::Text(e.to_string()))?;
    if text.len() > LARGEST_FILE_BYTES {
        return Err(WriteError::TooLarge {
            bytes: text.len(),
            most: LARGEST_FILE_BYTES,
        });
    }
    Ok(text)
}
