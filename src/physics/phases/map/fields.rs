//! From cells to fields: cells of the same phases that touch along a side are one field, and what
//! is left of their sides is its outline.

use std::collections::BTreeMap;

use super::strip::{Cell, Point};
use crate::numeric::order;
use crate::phases::equilibrium::PhaseSet;

/// A field with its outline, anticlockwise with carbon to the right and temperature upwards.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Outlined {
    pub(super) set: PhaseSet,
    pub(super) outline: Vec<Point>,
}

/// Where two fields touch, from left to right.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Border {
    /// Places of the fields below and above.
    pub(super) fields: [usize; 2],
    pub(super) points: Vec<Point>,
}

/// A corner as a key: shared corners are the same to the last bit.
type Key = [u64; 2];

fn key(point: Point) -> Key {
    point.map(f64::to_bits)
}

/// Sides of all cells: of which cell, and its ends.
type Sides = BTreeMap<(Key, Key), (usize, [Point; 2])>;

/// Fields and what lies between them.
pub(super) fn joined(cells: &[Cell]) -> (Vec<Outlined>, Vec<Border>) {
    let columns = columns_of(cells);
    let mut sides: Sides = BTreeMap::new();
    for (place, cell) in cells.iter().enumerate() {
        let ends = cell.corners.iter().zip(cell.corners.iter().cycle().skip(1));
        for (from, to) in ends.filter(|(from, to)| from != to) {
            for [from, to] in on_column(&columns, *from, *to) {
                sides.insert((key(from), key(to)), (place, [from, to]));
            }
        }
    }
    let field_of = fields_of(cells, &sides);
    let count = field_of.iter().max().map_or(0, |most| most + 1);
    let mut open: Vec<BTreeMap<Key, Vec<[Point; 2]>>> = vec![BTreeMap::new(); count];
    let mut between: BTreeMap<[usize; 2], Vec<[Point; 2]>> = BTreeMap::new();
    for ((from, to), (cell, ends)) in &sides {
        let field = field_of[*cell];
        let beside = sides.get(&(*to, *from)).map(|(other, _)| field_of[*other]);
        if beside == Some(field) {
            continue;
        }
        open[field].entry(*from).or_default().push(*ends);
        // the field lies left of its side: above one that leads to the right
        let leads_right = ends[0] < ends[1];
        if let (Some(below), true) = (beside, leads_right) {
            between.entry([below, field]).or_default().push(*ends);
        }
    }
    let mut fields = Vec::with_capacity(count);
    for (field, open) in open.into_iter().enumerate() {
        let set = cells.iter().zip(&field_of).find(|(_, f)| **f == field);
        if let Some((cell, _)) = set {
            fields.push(Outlined {
                set: cell.set,
                outline: outline(open),
            });
        }
    }
    let mut borders = Vec::new();
    for (fields, pieces) in between {
        for points in chained(pieces) {
            borders.push(Border { fields, points });
        }
    }
    (fields, borders)
}

/// Temperatures of all corners, rising, by the carbon of their column.
fn columns_of(cells: &[Cell]) -> BTreeMap<u64, Vec<f64>> {
    let mut columns: BTreeMap<u64, Vec<f64>> = BTreeMap::new();
    for [carbon_wt, temperature_c] in cells.iter().flat_map(|cell| &cell.corners) {
        let column = columns.entry(carbon_wt.to_bits()).or_default();
        column.push(*temperature_c);
    }
    for column in columns.values_mut() {
        column.sort_by(f64::total_cmp);
        column.dedup();
    }
    columns
}

/// A side in parts, divided where it lies on a column and passes corners of cells beyond that.
fn on_column(columns: &BTreeMap<u64, Vec<f64>>, from: Point, to: Point) -> Vec<[Point; 2]> {
    let column = columns.get(&from[0].to_bits()).filter(|_| from[0] == to[0]);
    let Some(column) = column else {
        return vec![[from, to]];
    };
    let (low, high) = (from[1].min(to[1]), from[1].max(to[1]));
    let within = column.iter().filter(|t| (low..=high).contains(*t));
    let mut points: Vec<Point> = within.map(|t| [from[0], *t]).collect();
    if from[1] > to[1] {
        points.reverse();
    }
    let pairs = points.windows(2).map(|pair| [pair[0], pair[1]]);
    pairs.collect()
}

/// The field of each cell, numbered in the order of the cells.
fn fields_of(cells: &[Cell], sides: &Sides) -> Vec<usize> {
    let mut beside: Vec<Vec<usize>> = vec![Vec::new(); cells.len()];
    for ((from, to), (cell, _)) in sides {
        if let Some((other, _)) = sides.get(&(*to, *from))
            && cells[*cell].set == cells[*other].set
        {
            beside[*cell].push(*other);
        }
    }
    let mut field_of = vec![usize::MAX; cells.len()];
    let mut count = 0;
    for start in 0..cells.len() {
        if field_of[start] != usize::MAX {
            continue;
        }
        let mut reached = vec![start];
        while let Some(cell) = reached.pop() {
            if field_of[cell] == usize::MAX {
                field_of[cell] = count;
                reached.extend(&beside[cell]);
            }
        }
        count += 1;
    }
    field_of
}

/// One closed line through all open sides of a field; what lies inside the field is reached from
/// its rim and left the same way.
fn outline(mut open: BTreeMap<Key, Vec<[Point; 2]>>) -> Vec<Point> {
    let mut loops: Vec<Vec<Point>> = Vec::new();
    while let Some((start, _)) = open.first_key_value() {
        let start = *start;
        let mut points = Vec::new();
        let mut at = start;
        while let Some(from_here) = open.get_mut(&at) {
            let Some([from, to]) = from_here.pop() else {
                break;
            };
            if from_here.is_empty() {
                open.remove(&at);
            }
            points.push(from);
            at = key(to);
            if at == start {
                break;
            }
        }
        if points.is_empty() {
            break;
        }
        loops.push(points);
    }
    let size = |points: &Vec<Point>| area(points).abs();
    order::sort_by(&mut loops, |a, b| size(b).total_cmp(&size(a)));
    let mut loops = loops.into_iter();
    let mut rim = loops.next().unwrap_or_default();
    for inner in loops {
        let Some(last) = rim.last().copied() else {
            break;
        };
        rim.extend(inner.iter().chain(inner.first()).copied());
        rim.push(last);
    }
    rim
}

/// Area within a closed line, positive when it runs anticlockwise.
pub(super) fn area(points: &[Point]) -> f64 {
    let ends = points.iter().zip(points.iter().cycle().skip(1));
    ends.map(|(a, b)| 0.5 * (a[0] * b[1] - b[0] * a[1])).sum()
}

/// Pieces that lead to the right, joined where one ends and the next begins.
pub(super) fn chained(mut pieces: Vec<[Point; 2]>) -> Vec<Vec<Point>> {
    order::sort_by(&mut pieces, |a, b| {
        a[0][0]
            .total_cmp(&b[0][0])
            .then(a[0][1].total_cmp(&b[0][1]))
    });
    let mut lines: Vec<Vec<Point>> = Vec::new();
    for [from, to] in pieces {
        let before = lines.iter_mut().find(|line| line.last() == Some(&from));
        match before {
            Some(line) => line.push(to),
            None => lines.push(vec![from, to]),
        }
    }
    lines
}
