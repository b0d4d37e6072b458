//! Lines of an input, none held in memory beyond a limit.

use std::io::{self, BufRead, Read};

/// One line.
pub(super) enum Line<'a> {
    Text(&'a str),
    /// Longer than the limit; the rest of it is skipped.
    TooLong,
    /// Not UTF-8.
    NotText,
}

/// Calls `act` with the number, from 1, and the content of every line.
pub(super) fn for_each(
    mut input: impl BufRead,
    longest_bytes: usize,
    mut act: impl FnMut(u64, Line<'_>) -> io::Result<()>,
) -> io::Result<()> {
    let mut line = Vec::new();
    // One byte more than allowed tells a line at the limit from a longer one.
    let limit = u64::try_from(longest_bytes)
        .unwrap_or(u64::MAX)
        .saturating_add(1);
    for number in 1.. {
        line.clear();
        if input.by_ref().take(limit).read_until(b'\n', &mut line)? == 0 {
            break;
        }
        let whole = line.last() == Some(&b'\n');
        if !whole && line.len() > longest_bytes {
            skip_line(&mut input)?;
            act(number, Line::TooLong)?;
            continue;
        }
        match std::str::from_utf8(&line) {
            Ok(text) => act(number, Line::Text(text.trim_end_matches(['\r', '\n'])))?,
            Err(_) => act(number, Line::NotText)?,
        }
    }
    Ok(())
}

fn skip_line(input: &mut impl BufRead) -> io::Result<()> {
    loop {
        let buffer = input.fill_buf()?;
        if buffer.is_empty() {
            return Ok(());
        }
        let newline = buffer.iter().position(|&b| b == b'\n');
        let read = newline.map_or(buffer.len(), |at| at + 1);
        input.consume(read);
        if newline.is_some() {
            return Ok(());
        }
    }
}
