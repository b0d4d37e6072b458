//! Which runs are listed, and in which order.

use super::{Compared, Day, Logbook, Run};
use crate::numeric::order::{sort_by, sort_by_key};
use std::cmp::Reverse;

/// What a run must have to be listed. Empty, all are.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Filter {
    /// Its grade in words.
    pub grade: Option<String>,
    /// A text that the name of its piece contains; capitals count as small letters.
    pub piece: String,
    /// The first day.
    pub from: Option<Day>,
    /// The last day.
    pub to: Option<Day>,
    /// A measured hardness to compare with the predicted one.
    pub is_measured: bool,
}

/// The order of a list. Runs that are alike in it stand newest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Order {
    /// Newest first.
    #[default]
    Day,
    /// By the name of the piece.
    Piece,
    /// By the grade.
    Grade,
    /// Farthest from the prediction first, those without a measured hardness last.
    Difference,
}

/// A run with what it is compared by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Listed<'a> {
    /// The run.
    pub run: &'a Run,
    /// Measured hardness, HRC.
    pub measured_hrc: Option<f64>,
    /// What was predicted where it was read.
    pub compared: Option<Compared>,
}

impl<'a> Listed<'a> {
    fn of(run: &'a Run) -> Self {
        Self {
            run,
            measured_hrc: run.measured_hrc(),
            compared: run.compared_first(),
        }
    }

    /// Measured minus predicted, HRC.
    #[must_use]
    pub fn difference_hrc(&self) -> Option<f64> {
        self.compared?.difference_hrc()
    }
}

/// The runs that a filter leaves, in order.
#[must_use]
pub fn list<'a>(book: &'a Logbook, filter: &Filter, order: Order) -> Vec<Listed<'a>> {
    let wanted = filter.piece.trim().to_ascii_lowercase();
    let mut listed: Vec<_> = book
        .runs()
        .filter(|run| {
            filter
                .grade
                .as_deref()
                .is_none_or(|grade| run.grade() == grade)
                && filter.from.is_none_or(|day| run.day >= day)
                && filter.to.is_none_or(|day| run.day <= day)
                && (wanted.is_empty() || run.route.piece.to_ascii_lowercase().contains(&wanted))
        })
        .map(Listed::of)
        .filter(|listed| !filter.is_measured || listed.measured_hrc.is_some())
        .collect();
    sort_by_key(&mut listed, |listed| Reverse(listed.run.day));
    // What is alike stays newest first.
    match order {
        Order::Day => {}
        Order::Piece => {
            let names: Vec<_> = listed
                .iter()
                .map(|listed| listed.run.route.piece.to_ascii_lowercase())
                .collect();
            let mut named: Vec<_> = names.into_iter().zip(listed).collect();
            sort_by(&mut named, |a, b| a.0.cmp(&b.0));
            return named.into_iter().map(|(_, listed)| listed).collect();
        }
        Order::Grade => sort_by(&mut listed, |a, b| a.run.grade().cmp(b.run.grade())),
        Order::Difference => {
            let far = |listed: &Listed| listed.difference_hrc().map_or(-1.0, f64::abs);
            sort_by(&mut listed, |a, b| far(b).total_cmp(&far(a)));
        }
    }
    listed
}
