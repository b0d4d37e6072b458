//! Lists kept as CSV: one entry a line, its columns by their names in the first line.

use csv::{Reader, StringRecord};

/// The lines of a list.
#[derive(Debug, Default)]
pub(crate) struct List {
    columns: StringRecord,
    lines: Vec<StringRecord>,
}

/// A line of a list.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Line<'a> {
    columns: &'a StringRecord,
    fields: &'a StringRecord,
}

impl List {
    /// Reads a list. A line that has not as many fields as there are columns is left out.
    pub(crate) fn read(text: &str) -> Self {
        let mut reader = Reader::from_reader(text.as_bytes());
        Self {
            columns: reader.headers().cloned().unwrap_or_default(),
            lines: reader.records().filter_map(Result::ok).collect(),
        }
    }

    pub(crate) fn lines(&self) -> impl Iterator<Item = Line<'_>> {
        self.lines.iter().map(|fields| Line {
            columns: &self.columns,
            fields,
        })
    }
}

impl<'a> Line<'a> {
    /// What stands in a column; nothing where there is no such column.
    pub(crate) fn text(self, column: &str) -> &'a str {
        let place = self.columns.iter().position(|name| name == column);
        place.and_then(|i| self.fields.get(i)).unwrap_or_default()
    }
}
