//! An end-quench test as it is written down: a distance and a hardness a line.

use super::BarPoint;
use crate::numeric::decimal::decimal;
use crate::units::{LengthUnit, format_fixed, parse_length_mm};
use recalesce_texts::transform as texts;

/// A sixteenth of an inch, mm: the distance that standards call J1.
const SIXTEENTH_MM: f64 = 25.4 / 16.0;

/// What is wrong with a line.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}", texts::in_line(*line, reason))]
pub struct BarPointsError {
    /// Counted from 1.
    pub line: usize,
    /// What is wrong, and what may be written.
    pub reason: String,
}

/// Reads lines such as `9 mm 54`, `3/8 in; 52 HRC` or `J6 50`, the last for sixteenths of an inch. A
/// distance without a unit is in mm. Empty lines count for nothing.
///
/// # Errors
/// The first line that is no distance with a hardness.
pub fn read_bar_points(text: &str) -> Result<Vec<BarPoint>, BarPointsError> {
    let lines = text.lines().enumerate();
    lines
        .filter(|(_, line)| !line.trim().is_empty())
        .map(|(index, line)| {
            read_line(line).map_err(|reason| BarPointsError {
                line: index + 1,
                reason,
            })
        })
        .collect()
}

fn read_line(line: &str) -> Result<BarPoint, String> {
    let bare = line.trim().trim_end_matches(char::is_alphabetic);
    let scale = line.trim().get(bare.len()..).unwrap_or_default();
    if !scale.is_empty() && !scale.eq_ignore_ascii_case("HRC") {
        return Err(texts::another_scale(scale));
    }
    let line = bare.trim_end();
    let parts = line.rsplit_once(|c: char| c.is_whitespace() || c == ';' || c == ':');
    let Some((distance, hardness)) = parts else {
        return Err(texts::WRITE_A_POINT.to_owned());
    };
    let distance = distance.trim_end_matches(|c: char| c.is_whitespace() || ";:,".contains(c));
    let distance_mm = match distance.strip_prefix(['J', 'j']) {
        Some(sixteenths) => SIXTEENTH_MM * number(sixteenths)?,
        None => parse_length_mm(distance, LengthUnit::Millimetre).map_err(|e| e.to_string())?,
    };
    Ok(BarPoint {
        distance_mm,
        hrc: number(hardness)?,
    })
}

/// A number with a point or a comma.
fn number(text: &str) -> Result<f64, String> {
    let text = text.trim();
    decimal(&text.replace(',', ".")).ok_or_else(|| texts::not_a_number(text))
}

/// Writes points so that [`read_bar_points`] reads them.
#[must_use]
pub fn write_bar_points(points: &[BarPoint]) -> String {
    let lines: Vec<String> = points
        .iter()
        .map(|point| {
            format!(
                "{} mm  {}",
                format_fixed(point.distance_mm, 2),
                format_fixed(point.hrc, 1)
            )
        })
        .collect();
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_read_as_shops_write_them() {
        let text = "1.5 56\n\n 9 mm; 54,5\nJ8: 50 HRC\n1 in 45\n";
        let points = read_bar_points(text).unwrap();
        let read: Vec<[f64; 2]> = points.iter().map(|p| [p.distance_mm, p.hrc]).collect();
        assert_eq!(read, [[1.5, 56.0], [9.0, 54.5], [12.7, 50.0], [25.4, 45.0]]);
        let back = read_bar_points(&write_bar_points(&points)).unwrap();
        assert_eq!(back, points);
    }

    #[test]
    fn the_line_that_is_wrong_is_named() {
        let wrong = |text| read_bar_points(text).unwrap_err().line;
        assert_eq!(wrong("1.5 56\n9"), 2);
        assert_eq!(wrong("1.5 56\n\nsoft 30"), 3);
        assert_eq!(wrong("9 -- "), 1);
        assert_eq!(wrong("1.5 56\n40 60 HRA"), 2);
    }
}
