//! One piece of all that might come of a route.

use super::inputs::OpenInput;
use crate::route::{Deviation, Route};
use crate::steel::Composition;

/// A piece: its steel, and what is off about it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Case {
    pub(super) steel: Composition,
    pub(super) off: Deviation,
}

impl Case {
    /// The piece of a route at points of the unit cube, whose coordinates are those of the inputs in order;
    /// `point_of` tells for the place of each input from which point it takes its own.
    pub(super) fn at<'a>(
        route: &Route,
        inputs: &[OpenInput],
        point_of: impl Fn(usize) -> &'a [f64],
    ) -> Self {
        let mut case = Self {
            steel: route.composition,
            off: route.taught().off,
        };
        let mut first = 0;
        for (place, open) in inputs.iter().enumerate() {
            let end = first + open.coordinates();
            let own = point_of(place).get(first..end);
            open.enter(&mut case, own.unwrap_or_default());
            first = end;
        }
        case
    }
}

/// Coordinates of the points for some inputs.
pub(super) fn coordinates(inputs: &[OpenInput]) -> usize {
    inputs.iter().map(OpenInput::coordinates).sum()
}
