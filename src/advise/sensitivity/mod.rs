//! What matters most: how the spread of an outcome divides up among what is open.

mod indices;
mod stages;
mod words;

pub use indices::Index;

use super::case::{Case, coordinates};
use super::error::{AdviseError, check};
use super::inputs::{Input, OpenInput, Tolerances, open_inputs};
use super::points::point;
use crate::numeric::order;
use crate::route::{Route, RouteError, TrialSteel};
use indices::{Row, indices};
use serde::Serialize;
use stages::{Numbers, Staged};
use std::rc::Rc;

/// Fewest and most pairs of rows of a sample.
const ROWS: (u32, u32) = (16, 8192);
/// Pairs of rows that are enough to rank what is open.
pub const USUAL_ROWS: u32 = 256;
/// Blocks of the sample, each scrambled by itself: their differences tell the errors.
const BLOCKS: u32 = 8;

/// A number whose spread is divided up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Hardness after the last step, HRC.
    FinalHrc,
    /// Hardness as quenched, HRC.
    QuenchedHrc,
    /// Retained austenite after the last step, volume fraction.
    FinalAustenite,
}

impl Quantity {
    const ALL: [Self; 3] = [Self::FinalHrc, Self::QuenchedHrc, Self::FinalAustenite];

    const fn of(self, numbers: &Numbers) -> Option<f64> {
        match self {
            Self::FinalHrc => numbers.final_hrc,
            Self::QuenchedHrc => numbers.quenched_hrc,
            Self::FinalAustenite => numbers.final_austenite,
        }
    }
}

/// What something open does to the spread of a number.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Share {
    /// What is open.
    pub input: Input,
    /// Its indices.
    #[serde(flatten)]
    pub index: Index,
}

/// How the spread of a number divides up.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Divided {
    /// The number.
    pub quantity: Quantity,
    /// Its standard deviation, in its unit.
    pub sd: f64,
    /// What is open, that which does most first.
    pub shares: Vec<Share>,
    /// The same in a sentence or two.
    pub words: String,
}

/// What matters most on a route.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Sensitivity {
    /// Seed of the sample: the same one gives the same numbers.
    pub seed: u32,
    /// Pairs of rows of which every case has an outcome.
    pub rows: usize,
    /// Pairs with a case without one.
    pub refused: usize,
    /// What was open, with its distribution.
    pub inputs: Vec<OpenInput>,
    /// Each number that varies.
    pub quantities: Vec<Divided>,
}

/// What matters most on a route.
///
/// # Errors
/// A route without an outcome, tolerances or a number of rows out of range, or no row with an
/// outcome.
pub fn sensitivity(
    route: &Route,
    tolerances: &Tolerances,
    rows: u32,
    seed: u32,
) -> Result<Sensitivity, AdviseError> {
    let mut run = SensitivityRun::new(route, tolerances, rows, seed)?;
    while run.step() {}
    run.so_far()
}

/// The sample of a sensitivity, one pair of rows at a time; see [`super::SpreadRun`].
pub struct SensitivityRun {
    route: Route,
    steel: Rc<TrialSteel>,
    inputs: Vec<OpenInput>,
    rows: u32,
    seed: u32,
    done: u32,
    /// The cases of every pair of rows that has an outcome, with its block.
    found: Vec<(usize, Pair)>,
    first_refusal: Option<RouteError>,
}

/// Numbers of a pair of rows: `A`, `B`, and `A` with each input in turn of `B`.
struct Pair {
    a: Numbers,
    b: Numbers,
    mixed: Vec<Numbers>,
}

impl SensitivityRun {
    /// Prepares a sample; the number of rows is rounded up to whole blocks.
    ///
    /// # Errors
    /// As [`sensitivity`].
    pub fn new(
        route: &Route,
        tolerances: &Tolerances,
        rows: u32,
        seed: u32,
    ) -> Result<Self, AdviseError> {
        tolerances.check()?;
        let (fewest, most) = ROWS;
        check("rows", rows.into(), (fewest.into(), most.into()), "")?;
        let steel = TrialSteel::of(route)?;
        let planned = steel.trial(route, &route.taught().off)?;
        Ok(Self {
            inputs: open_inputs(route, &planned, tolerances)?,
            route: route.clone(),
            steel: Rc::new(steel),
            rows: rows.div_ceil(BLOCKS) * BLOCKS,
            seed,
            done: 0,
            found: Vec::new(),
            first_refusal: None,
        })
    }

    /// Computes the next pair of rows; false when all are done.
    pub fn step(&mut self) -> bool {
        if self.done >= self.rows {
            return false;
        }
        // Blocks in turn, so that there is something to tell early.
        let block = self.done % BLOCKS;
        match self.pair(block, self.done / BLOCKS) {
            Ok(pair) => self.found.push((block as usize, pair)),
            Err(refusal) => {
                self.first_refusal.get_or_insert(refusal);
            }
        }
        self.done += 1;
        self.done < self.rows
    }

    /// Part of the rows that is done.
    #[must_use]
    pub fn progress(&self) -> f64 {
        f64::from(self.done) / f64::from(self.rows)
    }

    fn pair(&self, block: u32, row: u32) -> Result<Pair, RouteError> {
        let coordinates = coordinates(&self.inputs);
        let seed = self.seed.wrapping_mul(BLOCKS).wrapping_add(block);
        let at = point(row, 2 * coordinates, seed);
        let (at_a, at_b) = at.split_at(coordinates);
        let staged = |from_b: &dyn Fn(usize) -> bool, others: &[&Staged]| {
            Staged::of(
                &self.route,
                &self.steel,
                self.case(at_a, at_b, from_b),
                others,
            )
        };
        let a = staged(&|_| false, &[])?;
        let b = staged(&|_| true, &[&a])?;
        let mixed = (0..self.inputs.len())
            .map(|input| Ok(staged(&|other| other == input, &[&a, &b])?.numbers))
            .collect::<Result<_, RouteError>>()?;
        Ok(Pair {
            a: a.numbers,
            b: b.numbers,
            mixed,
        })
    }

    /// The case of row `A`, but for the inputs that are from row `B`.
    fn case(&self, at_a: &[f64], at_b: &[f64], from_b: &dyn Fn(usize) -> bool) -> Case {
        Case::at(&self.route, &self.inputs, |input| {
            if from_b(input) { at_b } else { at_a }
        })
    }

    /// What the rows done so far tell.
    ///
    /// # Errors
    /// When none of them has an outcome.
    pub fn so_far(&self) -> Result<Sensitivity, AdviseError> {
        if let (true, Some(refusal)) = (self.found.is_empty(), &self.first_refusal) {
            return Err(AdviseError::NoCase {
                cases: self.done as usize,
                first: refusal.to_string(),
            });
        }
        let divided = Quantity::ALL
            .into_iter()
            .filter_map(|quantity| self.divided(quantity));
        Ok(Sensitivity {
            seed: self.seed,
            rows: self.found.len(),
            refused: self.done as usize - self.found.len(),
            inputs: self.inputs.clone(),
            quantities: divided.collect(),
        })
    }

    fn divided(&self, quantity: Quantity) -> Option<Divided> {
        let mut blocks = vec![Vec::new(); BLOCKS as usize];
        for (block, pair) in &self.found {
            let of = |numbers: &Numbers| quantity.of(numbers);
            let (Some(a), Some(b), Some(ab)) = (
                of(&pair.a),
                of(&pair.b),
                pair.mixed.iter().map(of).collect(),
            ) else {
                continue;
            };
            if let Some(block) = blocks.get_mut(*block) {
                block.push(Row { a, b, ab });
            }
        }
        let (sd, found) = indices(&blocks)?;
        let inputs = self.inputs.iter().map(|open| open.input);
        let mut shares: Vec<Share> = inputs
            .zip(found)
            .map(|(input, index)| Share { input, index })
            .collect();
        order::sort_by(&mut shares, |a, b| b.index.total.total_cmp(&a.index.total));
        Some(Divided {
            quantity,
            sd,
            words: words::words(quantity, sd, &shares),
            shares,
        })
    }
}

#[cfg(test)]
mod tests;
