//! A text as a QR code, drawn as one path.

use qrcodegen::{QrCode, QrCodeEcc};
use std::fmt::Write as _;

/// Light modules around a code, as the standard asks (ISO/IEC 18004).
const QUIET: i32 = 4;
/// Longest text that is drawn, bytes: a code of it, 117 modules wide, is still read from paper 4 cm
/// wide. Expert value.
pub const LONGEST_CODE: usize = 1000;

/// A QR code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Code {
    /// Modules along a side, light ones around it included.
    pub side: i32,
    /// Its dark modules as the data of an SVG path, one module wide each.
    pub path: String,
}

/// The QR code of a text, with error correction of the lowest level or better; none for a text
/// longer than [`LONGEST_CODE`].
#[must_use]
pub fn code(text: &str) -> Option<Code> {
    if text.len() > LONGEST_CODE {
        return None;
    }
    let drawn = QrCode::encode_text(text, QrCodeEcc::Low).ok()?;
    let size = drawn.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let from = x;
            while x < size && drawn.get_module(x, y) {
                x += 1;
            }
            if x > from {
                let (left, top, run) = (from + QUIET, y + QUIET, x - from);
                // A text takes whatever is written to it.
                let _ = write!(path, "M{left} {top}h{run}v1h-{run}z");
            } else {
                x += 1;
            }
        }
    }
    Some(Code {
        side: size + 2 * QUIET,
        path,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_path_draws_every_dark_module_and_no_other() {
        let text = "https://example.org/#route=5.AbC_-";
        let shown = code(text).unwrap();
        let wanted = QrCode::encode_text(text, QrCodeEcc::Low).unwrap();
        let mut dark = std::collections::HashSet::new();
        for run in shown.path.split('M').skip(1) {
            let (at, rest) = run.split_once('h').unwrap();
            let (x, y) = at.split_once(' ').unwrap();
            let (long, _) = rest.split_once('v').unwrap();
            let [x, y, long]: [i32; 3] = [x, y, long].map(|n| n.parse().unwrap());
            dark.extend((x..x + long).map(|x| (x, y)));
        }
        assert_eq!(shown.side, wanted.size() + 8);
        for x in 0..shown.side {
            for y in 0..shown.side {
                let is_dark = wanted.get_module(x - QUIET, y - QUIET);
                assert_eq!(dark.contains(&(x, y)), is_dark, "{x} {y}");
            }
        }
    }

    #[test]
    fn a_text_that_is_too_long_has_no_code() {
        assert!(code(&"a".repeat(LONGEST_CODE)).is_some_and(|c| c.side <= 125));
        assert_eq!(code(&"a".repeat(LONGEST_CODE + 1)), None);
        assert!(code("").is_some());
    }
}
