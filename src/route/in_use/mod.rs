//! What a route means for the use of the piece, against another route: wear, edge and toughness as
//! directions with reasons, never as a number. What counts for what is common practice, no source;
//! the differences from which something counts are about what a shop can see or measure.

mod acts;
mod differences;
mod piece;

pub(crate) use piece::Piece;

use super::outcome::Outcome;
use super::plan::Route;
use acts::Acts;
use differences::differences;
use recalesce_texts::route::in_use as texts;

/// What the use asks of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Property {
    /// How long it stands abrasion.
    Wear,
    /// How a thin edge stands rolling over and crumbling.
    Edge,
    /// How it stands blows and bending.
    Toughness,
}

impl Property {
    /// Its name at the head of a line.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Wear => texts::WEAR,
            Self::Edge => texts::EDGE,
            Self::Toughness => texts::TOUGHNESS,
        }
    }
}

/// How a property compares with that of the other route.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// All that differs speaks for it.
    Better,
    /// All that differs speaks against it.
    Worse,
    /// Nothing that counts differs.
    Same,
    /// Some speaks for it and some against it.
    Mixed,
}

/// Why.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// Whether it speaks for the property.
    pub helps: bool,
    /// What differs, with both figures.
    pub words: String,
}

/// A property against that of another route.
#[derive(Debug, Clone, PartialEq)]
pub struct InUse {
    /// The property.
    pub property: Property,
    /// How it compares.
    pub direction: Direction,
    /// What differs.
    pub reasons: Vec<Reason>,
}

/// Compares the piece of a route with that of another.
#[must_use]
pub fn in_use(this: (&Route, &Outcome), other: (&Route, &Outcome)) -> [InUse; 3] {
    let differences = differences(&Piece::of(this.0, this.1), &Piece::of(other.0, other.1));
    [Property::Wear, Property::Edge, Property::Toughness].map(|property| {
        let reasons: Vec<Reason> = differences
            .iter()
            .filter_map(|difference| {
                let Acts(acts) = difference.acts;
                let act = acts
                    .get(property as usize)
                    .copied()
                    .filter(|act| *act != 0)?;
                Some(Reason {
                    helps: (act > 0) == difference.is_more,
                    words: difference.words.clone(),
                })
            })
            .collect();
        let helps = reasons.iter().any(|reason| reason.helps);
        let harms = reasons.iter().any(|reason| !reason.helps);
        InUse {
            property,
            direction: match (helps, harms) {
                (true, true) => Direction::Mixed,
                (true, false) => Direction::Better,
                (false, true) => Direction::Worse,
                (false, false) => Direction::Same,
            },
            reasons,
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::run;

    fn directions(change: impl Fn(&mut Route)) -> [Direction; 3] {
        let other = Route::example();
        let mut this = other.clone();
        change(&mut this);
        let outcomes = [&this, &other].map(|route| run(route).unwrap());
        in_use((&this, &outcomes[0]), (&other, &outcomes[1])).map(|found| found.direction)
    }

    #[test]
    fn the_same_route_differs_in_nothing() {
        assert_eq!(directions(|_| ()), [Direction::Same; 3]);
    }

    #[test]
    fn a_cooler_temper_trades_toughness_for_wear() {
        let found = directions(|route| {
            route
                .tempers
                .iter_mut()
                .for_each(|t| t.temperature_c = 150.0)
        });
        assert_eq!(
            found,
            [Direction::Better, Direction::Better, Direction::Worse]
        );
    }

    /// Soaked 80 K hotter: coarser grain, more carbon in solution, less carbide, more austenite.
    #[test]
    fn overheating_helps_nothing_but_one_reason_of_toughness() {
        let [_, edge, toughness] = directions(|route| {
            route.soak.temperature_c += 80.0;
            route.cold = None;
        });
        assert_ne!(edge, Direction::Better);
        assert_eq!(toughness, Direction::Mixed);
    }

    #[test]
    fn without_a_temper_it_is_harder_and_brittle() {
        let [wear, _, toughness] = directions(|route| route.tempers.clear());
        assert_eq!((wear, toughness), (Direction::Better, Direction::Worse));
    }

    /// A piece tempered softer than the C scale is compared as what it is, not as it was before.
    #[test]
    fn a_soft_temper_is_compared_as_it_ends() {
        let mut other = Route::example();
        other.take_grade(crate::steel::find("1045").unwrap());
        let mut this = other.clone();
        this.tempers
            .iter_mut()
            .for_each(|t| t.temperature_c = 690.0);
        let outcomes = [&this, &other].map(|route| run(route).unwrap());
        let [wear, ..] = in_use((&this, &outcomes[0]), (&other, &outcomes[1]));
        assert_eq!(wear.direction, Direction::Worse);
    }

    #[test]
    fn reasons_tell_both_figures() {
        let other = Route::example();
        let mut this = other.clone();
        this.tempers
            .iter_mut()
            .for_each(|t| t.temperature_c = 260.0);
        let outcomes = [&this, &other].map(|route| run(route).unwrap());
        let [wear, _, toughness] = in_use((&this, &outcomes[0]), (&other, &outcomes[1]));
        assert!(wear.reasons[0].words.contains("hardness") && !wear.reasons[0].helps);
        assert_eq!(
            toughness.direction,
            Direction::Mixed,
            "softer, but embrittled"
        );
    }
}
