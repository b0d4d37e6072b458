//! The lines that have names, picked from the borders of fields.

use super::fields::{Border, Outlined};
use super::strip::Point;
use crate::phases::PhaseName::{Austenite, Ferrite};
use crate::phases::critical::CARBIDES;
use crate::phases::equilibrium::PhaseSet;

/// A3, Acm and the lower and upper line of A1.
#[derive(Debug, Default)]
pub(super) struct Lines {
    pub(super) a3: Vec<Point>,
    pub(super) acm: Vec<Point>,
    pub(super) a1_lower: Vec<Point>,
    pub(super) a1_upper: Vec<Point>,
}

impl Lines {
    pub(super) fn of(fields: &[Outlined], borders: &[Border]) -> Self {
        // steep lines may lean over, so that either side may be the lower one
        let line = |is_of_it: fn(PhaseSet, PhaseSet) -> bool| {
            let pieces = borders.iter().filter(|border| {
                match border.fields.map(|i| fields.get(i).map(|f| f.set)) {
                    [Some(a), Some(b)] => is_of_it(a, b) || is_of_it(b, a),
                    _ => false,
                }
            });
            longest(pieces.map(|border| border.points.clone()).collect())
        };
        let a3 = line(|cold, hot| {
            let austenite = cold.has(Austenite) && hot.has(Austenite);
            let carbide = cold.has_any(CARBIDES) || hot.has_any(CARBIDES);
            austenite && !carbide && cold.has(Ferrite) && !hot.has(Ferrite)
        });
        let acm = line(|cold, hot| {
            let austenite = cold.has(Austenite) && hot.has(Austenite);
            let ferrite = cold.has(Ferrite) || hot.has(Ferrite);
            austenite && !ferrite && cold.has_any(CARBIDES) && !hot.has_any(CARBIDES)
        });
        let in_order = |mut line: Vec<Point>| {
            if line.first() > line.last() {
                line.reverse();
            }
            line
        };
        Self {
            a3: in_order(a3),
            acm: in_order(acm),
            a1_lower: in_order(line(|cold, hot| {
                is_pearlite(cold) && !cold.has(Austenite) && hot.has(Austenite)
            })),
            a1_upper: in_order(line(|cold, hot| {
                is_pearlite(cold) && !is_pearlite(hot) && hot.has(Austenite)
            })),
        }
    }
}

/// Ferrite and carbide side by side.
fn is_pearlite(set: PhaseSet) -> bool {
    set.has(Ferrite) && set.has_any(CARBIDES)
}

/// The longest line that can be made of pieces by joining their ends.
fn longest(mut pieces: Vec<Vec<Point>>) -> Vec<Point> {
    let mut best: Vec<Point> = Vec::new();
    while let Some(mut line) = pieces.pop() {
        loop {
            let (first, last) = (line.first().copied(), line.last().copied());
            let touches = |piece: &Vec<Point>| {
                [piece.first().copied(), piece.last().copied()]
                    .iter()
                    .any(|end| *end == first || *end == last)
            };
            let Some(place) = pieces.iter().position(touches) else {
                break;
            };
            let mut piece = pieces.swap_remove(place);
            if piece.last().copied() == last || piece.first().copied() == first {
                piece.reverse();
            }
            if piece.first().copied() == last {
                line.extend(piece.into_iter().skip(1));
            } else {
                piece.extend(line.into_iter().skip(1));
                line = piece;
            }
        }
        if line.len() > best.len() {
            best = line;
        }
    }
    best
}
