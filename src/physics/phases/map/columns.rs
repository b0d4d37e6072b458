//! The columns of the map: what comes and goes over temperature at chosen contents of carbon, close
//! together where lines bend or fields begin and end.

use crate::phases::equilibrium::{Change, Column, ColumnSearch};
use crate::phases::{EquilibriumError, PhaseError};
use crate::steel::Composition;

use super::strip::Strip;
use super::{HIGHEST_C, LOWEST_C, MOST_CARBON_WT};

/// Contents of carbon that every map has, wt %; lines are steep near zero.
const FIRST_WT: [f64; 13] = [
    0.0, 0.01, 0.025, 0.06, 0.12, 0.25, 0.4, 0.6, 0.8, 1.0, 1.3, 1.65, 2.0,
];

/// Columns nearer to one of the steel's own or the eutectoid are left out, wt %.
const SAME_WT: f64 = 0.003;

/// Accuracy of each temperature, K, a small part of a pixel.
const TOLERANCE_K: f64 = 0.1;

/// How far a line may be from straight between two columns, K.
const BEND_K: f64 = 2.0;

/// Least width of a strip that is cut for a bend, wt %.
const NARROWEST_WT: f64 = 0.02;

/// Most columns.
const MOST_COLUMNS: usize = 72;

/// Columns in order of carbon, among them those of the given contents.
pub(super) fn columns(steel: &Composition, wanted_wt: &[f64]) -> Result<Vec<Column>, PhaseError> {
    let mut contents: Vec<f64> = FIRST_WT.to_vec();
    contents.retain(|c| {
        let is_edge = *c == 0.0 || *c == MOST_CARBON_WT;
        is_edge || wanted_wt.iter().all(|w| (w - c).abs() > SAME_WT)
    });
    let inside = wanted_wt.iter().copied().filter(|w| {
        let from_edge_wt = w.min(MOST_CARBON_WT - w);
        from_edge_wt > 0.0
    });
    contents.extend(inside);
    contents.sort_by(f64::total_cmp);
    contents.dedup();
    let mut search = ColumnSearch::new([LOWEST_C, HIGHEST_C], TOLERANCE_K);
    // from the highest carbon down: the last one, without any, has no carbide to follow
    let mut columns: Vec<Column> = Vec::with_capacity(MOST_COLUMNS);
    for carbon_wt in contents.into_iter().rev() {
        let expected = match columns.as_slice() {
            [.., earlier, before] => expected(carbon_wt, before, earlier),
            [before] => before.changes.clone(),
            [] => Vec::new(),
        };
        let nearby = columns.last();
        columns.push(search.at(&steel.with_carbon(carbon_wt), &expected, nearby)?);
    }
    columns.reverse();
    refine(&mut columns, |carbon_wt, expected, nearby| {
        search.at(&steel.with_carbon(carbon_wt), expected, Some(nearby))
    })?;
    Ok(columns)
}

/// Puts columns between others until every strip is narrow or plain.
fn refine(
    columns: &mut Vec<Column>,
    mut at: impl FnMut(f64, &[Change], &Column) -> Result<Column, EquilibriumError>,
) -> Result<(), EquilibriumError> {
    let mut place = 0;
    while place + 1 < columns.len() && columns.len() < MOST_COLUMNS {
        let (left, right) = (&columns[place], &columns[place + 1]);
        if is_plain(columns, place) {
            place += 1;
            continue;
        }
        let carbon_wt = 0.5 * (left.carbon_wt + right.carbon_wt);
        // beginning from the one that has more in it
        let (near, other) = if left.changes.len() > right.changes.len() {
            (left, right)
        } else {
            (right, left)
        };
        let column = at(carbon_wt, &expected(carbon_wt, near, other), near)?;
        columns.insert(place + 1, column);
        place = place.saturating_sub(1);
    }
    Ok(())
}

/// Whether straight lines do from one column to the next.
fn is_plain(columns: &[Column], place: usize) -> bool {
    let (left, right) = (&columns[place], &columns[place + 1]);
    let width_wt = right.carbon_wt - left.carbon_wt;
    if left.sets != right.sets {
        return Strip::after(columns, place).is_none_or(|strip| width_wt <= strip.widest_wt());
    }
    if width_wt <= NARROWEST_WT {
        return true;
    }
    let slopes = |a: &Column, b: &Column| -> Option<Vec<f64>> {
        let run_wt = b.carbon_wt - a.carbon_wt;
        (a.sets == b.sets).then(|| {
            let pairs = a.changes.iter().zip(&b.changes);
            pairs.map(|(a, b)| (b.at_c - a.at_c) / run_wt).collect()
        })
    };
    let Some(here) = slopes(left, right) else {
        return true;
    };
    let before = place.checked_sub(1).and_then(|i| columns.get(i));
    let after = columns.get(place + 2);
    let beside = [
        before.and_then(|column| slopes(column, left)),
        after.and_then(|column| slopes(right, column)),
    ];
    beside.iter().flatten().all(|beside| {
        let turns = here.iter().zip(beside).map(|(a, b)| (a - b).abs());
        turns.fold(0.0, f64::max) * width_wt / 8.0 < BEND_K
    })
}

/// Changes as they are expected at a content of carbon from two columns, the nearer first.
fn expected(carbon_wt: f64, near: &Column, other: &Column) -> Vec<Change> {
    let share = (carbon_wt - near.carbon_wt) / (other.carbon_wt - near.carbon_wt);
    if near.sets != other.sets {
        return near.changes.clone();
    }
    let pairs = near.changes.iter().zip(&other.changes);
    pairs
        .map(|(a, b)| a.moved_to(a.at_c + share * (b.at_c - a.at_c)))
        .collect()
}
