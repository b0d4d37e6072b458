//! The strip between two columns: each set goes on where both columns have it, and ends in a point
//! where one of them has not.

use std::ops::Range;

use crate::phases::equilibrium::{Column, PhaseSet};

/// A place of the map: carbon, wt %, and temperature, °C.
pub(super) type Point = [f64; 2];

/// A part of a field between two columns.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cell {
    pub(super) set: PhaseSet,
    /// Corners, anticlockwise with carbon to the right and temperature upwards.
    pub(super) corners: Vec<Point>,
}

/// Widest strips, wt %: where two lines cross, seen from both sides; where a field ends, as far as
/// it is seen; and where that is not known, about three pixels.
const CROSSING_WT: f64 = 0.1;
const END_WT: f64 = 0.05;
const UNCERTAIN_WT: f64 = 0.02;

/// How far apart the ends foreseen from both sides may be, wt %.
const DOUBT_WT: f64 = 0.01;

/// How near to the column that lacks it a field must be foreseen to end to be taken as ending on
/// that column, where more than one phase comes or goes at once, as a share of the strip.
const ON_COLUMN: f64 = 0.3;

/// Least distance of other ends from both columns, as a share of the strip.
const OFF_COLUMN: f64 = 0.05;

/// Sets of two columns that are one field. One column has it once; the other may have it twice
/// with something in between, which begins inside the field.
#[derive(Debug, Clone)]
struct Going {
    set: PhaseSet,
    sides: [Range<usize>; 2],
}

/// What lies between two fields that go on, or between one and the edge of the map.
struct Gap {
    sides: [Range<usize>; 2],
    /// Where all that is in it ends; none where nothing is.
    point: Option<Point>,
    /// Whether that place is known well.
    is_certain: bool,
}

/// Two neighbouring columns, left and right, with those beyond them.
pub(super) struct Strip<'a> {
    sides: [&'a Column; 2],
    beyond: [Option<&'a Column>; 2],
}

impl<'a> Strip<'a> {
    /// The strip that begins at a column.
    pub(super) fn after(columns: &'a [Column], place: usize) -> Option<Self> {
        let at = |i: usize| columns.get(i);
        Some(Self {
            sides: [at(place)?, at(place + 1)?],
            beyond: [place.checked_sub(1).and_then(at), at(place + 2)],
        })
    }

    /// Its cells. Neighbours share their corners.
    pub(super) fn cells(&self) -> Vec<Cell> {
        let going = self.going_on();
        if going.is_empty() {
            return self.changed_over();
        }
        let gaps = self.gaps(&going);
        let mut cells = Vec::new();
        for gap in &gaps {
            for side in [0, 1] {
                self.end_in(gap.point, side, gap.sides[side].clone(), &mut cells);
            }
        }
        for (here, gaps) in going.iter().zip(gaps.windows(2)) {
            let mut corners = Vec::with_capacity(8);
            let [left, right] = here.sides.clone();
            // along the lower side, up the right, back along the upper side, down the left
            corners.push(self.edge(0, left.start));
            corners.extend(gaps[0].point);
            corners.extend(self.along(1, right, &mut cells));
            corners.extend(gaps[1].point);
            let mut down = self.along(0, left, &mut cells);
            down.reverse();
            down.pop();
            corners.extend(down);
            cells.push(Cell {
                set: here.set,
                corners,
            });
        }
        cells
    }

    /// Widest strip, wt %, in which the points where fields begin and end are known well enough.
    pub(super) fn widest_wt(&self) -> f64 {
        let going = self.going_on();
        let is_split = |g: &Going| g.sides.iter().any(|side| side.len() > 1);
        let most_wt = if going.is_empty() || going.iter().any(is_split) {
            UNCERTAIN_WT
        } else {
            f64::INFINITY
        };
        let gaps = self.gaps(&going);
        let widths_wt = gaps
            .iter()
            .map(|gap| match gap.sides.clone().map(|side| side.len()) {
                [0, 0] => f64::INFINITY,
                [1, 1] if gap.is_certain => CROSSING_WT,
                _ if gap.is_certain => END_WT,
                _ => UNCERTAIN_WT,
            });
        widths_wt.fold(most_wt, f64::min)
    }

    fn gaps(&self, going: &[Going]) -> Vec<Gap> {
        (0..=going.len())
            .map(|i| {
                let below = i.checked_sub(1).and_then(|i| going.get(i));
                self.gap(below, going.get(i))
            })
            .collect()
    }

    fn carbon_wt(&self, side: usize) -> f64 {
        self.sides[side].carbon_wt
    }

    /// The place on a column below one of its sets.
    fn edge(&self, side: usize, set: usize) -> Point {
        [self.carbon_wt(side), self.sides[side].edge_c(set)]
    }

    /// The side of a field on a column, upwards, through the point in which what begins inside the
    /// field ends; that goes to the cells.
    fn along(&self, side: usize, sets: Range<usize>, cells: &mut Vec<Cell>) -> Vec<Point> {
        let mut points = vec![self.edge(side, sets.start)];
        if sets.len() > 2 {
            let inside = sets.start + 1..sets.end - 1;
            let (low, high) = (self.edge(side, inside.start), self.edge(side, inside.end));
            let point = [
                0.5 * (self.carbon_wt(0) + self.carbon_wt(1)),
                0.5 * (low[1] + high[1]),
            ];
            self.end_in(Some(point), side, inside, cells);
            points.extend([low, point, high]);
        }
        points.push(self.edge(side, sets.end));
        points
    }

    /// Sets of a column that end in a point of the strip.
    fn end_in(&self, point: Option<Point>, side: usize, sets: Range<usize>, cells: &mut Vec<Cell>) {
        let Some(point) = point else { return };
        for place in sets {
            let (low, high) = (self.edge(side, place), self.edge(side, place + 1));
            cells.push(Cell {
                set: self.sides[side].sets[place],
                corners: if side == 0 {
                    vec![low, point, high]
                } else {
                    vec![high, point, low]
                },
            });
        }
    }

    /// Where nothing goes on, the fields change over in the middle of the strip.
    fn changed_over(&self) -> Vec<Cell> {
        let middle_wt = 0.5 * (self.carbon_wt(0) + self.carbon_wt(1));
        let mut cells = Vec::new();
        for (column, from_wt, to_wt) in [
            (self.sides[0], self.carbon_wt(0), middle_wt),
            (self.sides[1], middle_wt, self.carbon_wt(1)),
        ] {
            for (place, set) in column.sets.iter().enumerate() {
                let (low_c, high_c) = (column.edge_c(place), column.edge_c(place + 1));
                let corners = vec![
                    [from_wt, low_c],
                    [to_wt, low_c],
                    [to_wt, high_c],
                    [from_wt, high_c],
                ];
                cells.push(Cell { set: *set, corners });
            }
        }
        cells
    }

    /// What is between a field that goes on and the next.
    fn gap(&self, below: Option<&Going>, above: Option<&Going>) -> Gap {
        let sides = [0, 1].map(|s| {
            let end = self.sides[s].sets.len();
            below.map_or(0, |b| b.sides[s].end)..above.map_or(end, |a| a.sides[s].start)
        });
        if sides.iter().all(Range::is_empty) {
            return Gap {
                sides,
                point: None,
                is_certain: true,
            };
        }
        let [left_wt, right_wt] = [0, 1].map(|s| self.carbon_wt(s));
        let width_wt = right_wt - left_wt;
        let ends = [0, 1].map(|s| self.end_of(s, &sides[s]));
        let (end, doubt_wt) = match ends {
            [Some(a), Some(b)] => (
                [0, 1].map(|i| f64::midpoint(a[i], b[i])),
                (a[0] - b[0]).abs(),
            ),
            [Some(a), None] | [None, Some(a)] => {
                let is_sole = sides.iter().any(Range::is_empty);
                (a, if is_sole { 0.0 } else { width_wt })
            }
            [None, None] => {
                let middle_c = |s: usize| {
                    f64::midpoint(
                        self.edge(s, sides[s].start)[1],
                        self.edge(s, sides[s].end)[1],
                    )
                };
                let at_c = f64::midpoint(middle_c(0), middle_c(1));
                ([f64::midpoint(left_wt, right_wt), at_c], width_wt)
            }
        };
        // more than one phase comes or goes at once where a column passes through the point
        let is_meeting = below
            .zip(above)
            .is_some_and(|(b, a)| b.set.differs_by(a.set) > 1);
        let (off_wt, on_wt) = (OFF_COLUMN * width_wt, ON_COLUMN * width_wt);
        let carbon_wt = if is_meeting && sides[1].is_empty() && end[0] > right_wt - on_wt {
            right_wt
        } else if is_meeting && sides[0].is_empty() && end[0] < left_wt + on_wt {
            left_wt
        } else {
            end[0].clamp(left_wt + off_wt, right_wt - off_wt)
        };
        let is_certain = doubt_wt < DOUBT_WT;
        let [low_c, high_c] = self.sides[0].range_c;
        let edges_c = [0, 1].map(|s| [sides[s].start, sides[s].end].map(|i| self.edge(s, i)[1]));
        let of_edges = |pick: fn(f64, f64) -> f64| {
            let [left, right] = edges_c.map(|[a, b]| pick(a, b));
            pick(left, right)
        };
        let at_c = match (below, above) {
            (None, _) => low_c,
            (_, None) => high_c,
            // on a column, the point is where the fields beside it touch
            _ if carbon_wt == left_wt => self.edge(0, sides[0].start)[1],
            _ if carbon_wt == right_wt => self.edge(1, sides[1].start)[1],
            // steep lines lead too far
            (Some(below), Some(above)) => {
                let led_c = if is_certain {
                    self.line_at(&sides, carbon_wt)
                } else {
                    self.limit_at([below.set, above.set], &sides, carbon_wt)
                };
                led_c
                    .unwrap_or(end[1])
                    .clamp(of_edges(f64::min), of_edges(f64::max))
            }
        };
        Gap {
            sides,
            point: Some([carbon_wt, at_c]),
            is_certain,
        }
    }

    /// Temperature of the limit of a field of one phase above or below a gap, straight from column
    /// to column, °C: all that comes beside that phase ends on its limit, while what several corners
    /// in the gap have inside is not known. `None` where neither or both are of one phase.
    fn limit_at(
        &self,
        [below, above]: [PhaseSet; 2],
        sides: &[Range<usize>; 2],
        carbon_wt: f64,
    ) -> Option<f64> {
        let is_above = match [below, above].map(PhaseSet::is_one_phase) {
            [false, true] => true,
            [true, false] => false,
            _ => return None,
        };
        let [left, right] = [0, 1].map(|s| {
            let set = if is_above {
                sides[s].end
            } else {
                sides[s].start
            };
            self.edge(s, set)
        });
        let share = (carbon_wt - left[0]) / (right[0] - left[0]);
        Some(left[1] + share * (right[1] - left[1]))
    }

    /// Temperature at which the line that begins where all sets of one column end reaches a content
    /// of carbon, °C; `None` where both columns have such sets or the line is not known.
    fn line_at(&self, sides: &[Range<usize>; 2], carbon_wt: f64) -> Option<f64> {
        let side = sides.iter().position(Range::is_empty)?;
        let (here, beyond) = (self.sides[side], self.beyond[side]?);
        let place = sides[side].start;
        let pair = here.sets.get(place.checked_sub(1)?..=place)?;
        let there = beyond.sets.windows(2).position(|sets| sets == pair)? + 1;
        let (now_c, before_c) = (here.edge_c(place), beyond.edge_c(there));
        let slope = (now_c - before_c) / (here.carbon_wt - beyond.carbon_wt);
        Some(now_c + slope * (carbon_wt - here.carbon_wt))
    }

    /// Where sets that a column has end in the strip, as the way from the column beyond leads.
    fn end_of(&self, side: usize, sets: &Range<usize>) -> Option<Point> {
        let (here, beyond) = (self.sides[side], self.beyond[side]?);
        let first = here.sets.get(sets.start).filter(|_| !sets.is_empty())?;
        let start = beyond.sets.iter().position(|set| set == first)?;
        let end = start + sets.len();
        if beyond.sets.get(start..end) != here.sets.get(sets.clone()) {
            return None;
        }
        let now = [sets.start, sets.end].map(|i| here.edge_c(i));
        let before = [start, end].map(|i| beyond.edge_c(i));
        let (width_k, before_k) = (now[1] - now[0], before[1] - before[0]);
        // in units of the way from the column beyond
        let share = width_k / (before_k - width_k);
        let run_wt = here.carbon_wt - beyond.carbon_wt;
        let other_wt = self.carbon_wt(1 - side);
        let carbon_wt = here.carbon_wt + share * run_wt;
        let is_inside = share > 0.0
            && (carbon_wt - here.carbon_wt).abs() < 2.0 * (other_wt - here.carbon_wt).abs();
        is_inside.then(|| [carbon_wt, now[0] + share * (now[0] - before[0])])
    }

    /// The longest run of sets that both columns have in the same order, those preferred that lie
    /// at the same temperatures.
    fn going_on(&self) -> Vec<Going> {
        let [left, right] = self.sides;
        let (rows, columns) = (left.sets.len(), right.sets.len());
        // best[i][j]: of the sets from i and j up
        let mut best = vec![vec![0.0_f64; columns + 1]; rows + 1];
        let worth = |i: usize, j: usize| {
            let common_k =
                left.edge_c(i + 1).min(right.edge_c(j + 1)) - left.edge_c(i).max(right.edge_c(j));
            (left.sets[i] == right.sets[j]).then(|| 1.0 + 1e-4 * common_k.max(0.0))
        };
        for i in (0..rows).rev() {
            for j in (0..columns).rev() {
                let both = worth(i, j).map_or(0.0, |w| w + best[i + 1][j + 1]);
                best[i][j] = both.max(best[i + 1][j]).max(best[i][j + 1]);
            }
        }
        let mut going: Vec<Going> = Vec::new();
        let (mut i, mut j) = (0, 0);
        while i < rows && j < columns {
            if worth(i, j).is_some_and(|w| best[i][j] == w + best[i + 1][j + 1]) {
                going.push(Going {
                    set: left.sets[i],
                    sides: [i..i + 1, j..j + 1],
                });
                (i, j) = (i + 1, j + 1);
            } else if best[i][j] == best[i + 1][j] {
                i += 1;
            } else {
                j += 1;
            }
        }
        self.widen(&mut going);
        going
    }

    /// Lets fields that go on take in the same set once more on one side.
    fn widen(&self, going: &mut [Going]) {
        for place in 0..going.len() {
            for side in [0, 1] {
                let sets = &self.sides[side].sets;
                let below = place.checked_sub(1).map_or(0, |i| going[i].sides[side].end);
                let above = going
                    .get(place + 1)
                    .map_or(sets.len(), |g| g.sides[side].start);
                let here = &mut going[place];
                let own = here.sides[side].clone();
                let again = |places: Range<usize>| places.clone().find(|i| sets[*i] == here.set);
                if let Some(again) = again(own.end..above) {
                    here.sides[side].end = again + 1;
                } else if let Some(again) = again(below..own.start) {
                    here.sides[side].start = again;
                }
            }
        }
    }
}
