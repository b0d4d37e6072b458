//! What a route means for the use of the piece, against another route: wear, edge and toughness as
//! directions with reasons, never as a number. What counts for what is common practice, no source;
//! the differences from which something counts are about what a shop can see or measure.

use super::cautions::PLATE_CARBON_WT;
use super::outcome::Outcome;
use super::plan::Route;
use crate::hardness::embrittling_range_c;
use crate::sources::carbide_hardness::CarbideKind;
use crate::units::{format_fixed, format_hrc, format_percent, format_weight_percent};
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

/// What a route leaves in the piece, as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Piece {
    pub(crate) hrc: Option<f64>,
    pub(crate) austenite: Option<f64>,
    pub(crate) soft: Option<f64>,
    pub(crate) carbide: f64,
    /// Mean radius of the carbide by volume, µm.
    pub(crate) carbide_radius_um: f64,
    /// What most of the carbide is; none where that is the same in all that are compared.
    pub(crate) carbide_kind: Option<CarbideKind>,
    pub(crate) carbon_in_solution_wt: f64,
    pub(crate) grain_astm: f64,
    pub(crate) is_tempered: bool,
    pub(crate) is_embrittled: bool,
}

impl Piece {
    fn of(route: &Route, outcome: &Outcome) -> Self {
        let stages = || outcome.stages.iter().rev();
        let known = || stages().filter(|stage| stage.hardness.is_some());
        let fractions = known().find_map(|stage| stage.fractions);
        let [from_c, to_c] = embrittling_range_c(&route.composition);
        let mut tempers = route.tempers.iter();
        Self {
            hrc: stages()
                .find_map(|stage| stage.hardness)
                .map(|hardness| hardness.hrc_carried()),
            austenite: fractions.map(|f| f.austenite),
            soft: fractions.map(|f| f.ferrite + f.pearlite + f.bainite),
            carbide: outcome.soak.end.carbide_volume_fraction,
            carbide_radius_um: outcome.soak.carbide_radius_um,
            carbide_kind: CarbideKind::of(&outcome.soak.limit.carbide),
            carbon_in_solution_wt: outcome.soak.end.carbon_wt,
            grain_astm: outcome.soak.end.grain_astm,
            is_tempered: !route.tempers.is_empty(),
            is_embrittled: tempers.any(|temper| (from_c..=to_c).contains(&temper.temperature_c)),
        }
    }
}

/// What differs by enough to count: more of it in this route, or less.
struct Difference {
    words: String,
    is_more: bool,
    acts: Acts,
}

/// How more of something acts on wear, edge and toughness: 1 for, -1 against, 0 not told.
#[derive(Clone, Copy)]
struct Acts([i8; 3]);

const HARDNESS: Acts = Acts([1, 1, -1]);
const CARBIDE: Acts = Acts([1, -1, -1]);
/// Large carbides are not lifted out by grit, but break out of a thin edge and start cracks.
const COARSE_CARBIDE: Acts = Acts([1, -1, -1]);
const HARD_CARBIDE: Acts = Acts([1, 0, 0]);
/// Retained austenite is soft under an edge; it stretches where martensite would crack.
const AUSTENITE: Acts = Acts([0, -1, 1]);
/// The same for ranking, where it is left out of toughness: how much of it helps before it turns to
/// fresh martensite under load is not known.
const AUSTENITE_RANKED: Acts = Acts([0, -1, 0]);
const SOFT: Acts = Acts([-1, -1, 0]);
const PLATES: Acts = Acts([0, -1, -1]);
const FINER_GRAIN: Acts = Acts([0, 1, 1]);
const EMBRITTLED: Acts = Acts([0, 0, -1]);
const TEMPERED: Acts = Acts([0, 1, 1]);

/// Differences from which something counts.
const COUNTS_HRC: f64 = 1.0;
const COUNTS_CARBIDE: f64 = 0.015;
/// Radius of carbide that is no coarser than the finest that counts, µm (expert value).
const FINEST_UM: f64 = 0.1;
/// Least carbide whose size and hardness count, and the ratio of sizes that does.
const LEAST_CARBIDE: f64 = 0.01;
const COUNTS_SIZE_FACTOR: f64 = 1.3;
const COUNTS_AUSTENITE: f64 = 0.03;
const COUNTS_SOFT: f64 = 0.05;
const COUNTS_CARBON_WT: f64 = 0.03;
const COUNTS_GRAIN: f64 = 0.7;

/// What embrittling, or a temper, is worth in points: as much as 4 HRC (expert value).
const POINTS_OF_A_FACT: f64 = 4.0;

impl Piece {
    /// Points for a property, to rank pieces of one steel by and for nothing else: of all that acts on
    /// it, how many times over it differs by as much as counts. A difference of points says which of
    /// two pieces is ahead and by about how many such differences, never by how much the property
    /// itself.
    pub(crate) fn points(&self, property: Property) -> f64 {
        let plates_wt = (self.carbon_in_solution_wt - PLATE_CARBON_WT).max(0.0);
        let fact = |is: bool| POINTS_OF_A_FACT * f64::from(u8::from(is));
        [
            (self.hrc.unwrap_or_default() / COUNTS_HRC, HARDNESS),
            (self.carbide / COUNTS_CARBIDE, CARBIDE),
            (
                self.austenite.unwrap_or_default() / COUNTS_AUSTENITE,
                AUSTENITE_RANKED,
            ),
            (self.sizes_of_carbide(), COARSE_CARBIDE),
            (self.soft.unwrap_or_default() / COUNTS_SOFT, SOFT),
            (plates_wt / COUNTS_CARBON_WT, PLATES),
            (self.grain_astm / COUNTS_GRAIN, FINER_GRAIN),
            (fact(self.is_embrittled), EMBRITTLED),
            (fact(self.is_tempered), TEMPERED),
        ]
        .into_iter()
        .map(|(times, Acts(acts))| {
            let act = acts.get(property as usize).copied().unwrap_or_default();
            times * f64::from(act)
        })
        .sum()
    }
}

impl Piece {
    /// Whether there is enough carbide for its size and hardness to count.
    fn has_carbide(&self) -> bool {
        self.carbide >= LEAST_CARBIDE && self.carbide_radius_um > 0.0
    }

    /// How many times over its carbide is larger by as much as counts than the finest that counts, as
    /// far as there is carbide: nothing where there is none.
    fn sizes_of_carbide(&self) -> f64 {
        let larger = (self.carbide_radius_um / FINEST_UM).ln() / COUNTS_SIZE_FACTOR.ln();
        larger.max(0.0) * (self.carbide / COUNTS_CARBIDE).clamp(0.0, 1.0)
    }
}

/// What differs in the size and the hardness of the carbide.
fn carbide_differences(this: &Piece, other: &Piece) -> impl Iterator<Item = Difference> {
    let both = this.has_carbide() && other.has_carbide();
    let [here_um, there_um] = [this, other].map(|piece| 2.0 * piece.carbide_radius_um);
    let size = (both && (here_um / there_um).ln().abs() >= COUNTS_SIZE_FACTOR.ln()).then(|| {
        let [here, there] = [here_um, there_um].map(|um| format_fixed(um, 1));
        Difference {
            words: texts::carbide_sizes(&here, &there),
            is_more: here_um > there_um,
            acts: COARSE_CARBIDE,
        }
    });
    let kinds = this.carbide_kind.zip(other.carbide_kind);
    let kind = kinds
        .filter(|(here, there)| both && here != there)
        .map(|(here, there)| {
            let told = |kind: CarbideKind| texts::carbide_kind(kind.name(), kind.hv());
            Difference {
                words: texts::carbide_kinds(&told(here), &told(there)),
                is_more: here > there,
                acts: HARD_CARBIDE,
            }
        });
    size.into_iter().chain(kind)
}

fn differences(this: &Piece, other: &Piece) -> Vec<Difference> {
    let mut all = Vec::new();
    let mut number = |name: &str,
                      [a, b]: [Option<f64>; 2],
                      counts: f64,
                      acts: Acts,
                      written: fn(f64) -> String| {
        let (Some(a), Some(b)) = (a, b) else { return };
        if (a - b).abs() >= counts {
            all.push(Difference {
                words: texts::differs(name, &written(a), &written(b)),
                is_more: a > b,
                acts,
            });
        }
    };
    let both = |of: fn(&Piece) -> Option<f64>| [of(this), of(other)];
    number(
        texts::HARDNESS,
        both(|p| p.hrc),
        COUNTS_HRC,
        HARDNESS,
        format_hrc,
    );
    let carbide = both(|p| Some(p.carbide));
    number(
        texts::CARBIDE,
        carbide,
        COUNTS_CARBIDE,
        CARBIDE,
        format_percent,
    );
    let austenite = both(|p| p.austenite);
    number(
        texts::AUSTENITE,
        austenite,
        COUNTS_AUSTENITE,
        AUSTENITE,
        format_percent,
    );
    let soft = both(|p| p.soft);
    number(texts::SOFT, soft, COUNTS_SOFT, SOFT, format_percent);
    let grain = both(|p| Some(p.grain_astm));
    number(texts::GRAIN, grain, COUNTS_GRAIN, FINER_GRAIN, |g| {
        format_fixed(g, 1)
    });
    let [here_wt, there_wt] = [this, other].map(|piece| piece.carbon_in_solution_wt);
    let [here, there] = [here_wt, there_wt].map(|c| c.max(PLATE_CARBON_WT));
    if (here - there).abs() >= COUNTS_CARBON_WT {
        all.push(Difference {
            words: texts::plates(
                &format_weight_percent(here_wt),
                &format_weight_percent(there_wt),
                &format_weight_percent(PLATE_CARBON_WT),
            ),
            is_more: here > there,
            acts: PLATES,
        });
    }
    all.extend(carbide_differences(this, other));
    let mut fact = |what: &str, a: bool, b: bool, acts: Acts| {
        if a != b {
            all.push(Difference {
                words: if a {
                    texts::only_here(what)
                } else {
                    texts::only_there(what)
                },
                is_more: a,
                acts,
            });
        }
    };
    fact(
        texts::EMBRITTLING_TEMPER,
        this.is_embrittled,
        other.is_embrittled,
        EMBRITTLED,
    );
    fact(
        texts::TEMPERED,
        this.is_tempered,
        other.is_tempered,
        TEMPERED,
    );
    all
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

    /// Points order two pieces as the directions do, where all speaks for one of them.
    #[test]
    fn points_agree_with_directions() {
        let piece = Piece {
            hrc: Some(60.0),
            austenite: Some(0.05),
            soft: Some(0.0),
            carbide: 0.04,
            carbide_radius_um: 0.3,
            carbide_kind: None,
            carbon_in_solution_wt: 0.65,
            grain_astm: 9.0,
            is_tempered: true,
            is_embrittled: false,
        };
        let softer = Piece {
            hrc: Some(58.0),
            ..piece
        };
        let finer = Piece {
            grain_astm: 10.0,
            ..piece
        };
        let embrittled = Piece {
            is_embrittled: true,
            ..softer
        };
        let tough = |piece: &Piece| piece.points(Property::Toughness);
        approx::assert_abs_diff_eq!(tough(&softer) - tough(&piece), 2.0, epsilon = 1e-9);
        assert!(tough(&finer) > tough(&piece) && tough(&embrittled) < tough(&piece));
        assert!(softer.points(Property::Wear) < piece.points(Property::Wear));
        assert_eq!(finer.points(Property::Wear), piece.points(Property::Wear));
    }

    /// Larger carbide wears longer and serves a thin edge and blows worse; a harder one wears longer.
    #[test]
    fn size_and_hardness_of_carbide_are_reasons() {
        let fine = Piece {
            hrc: None,
            austenite: None,
            soft: None,
            carbide: 0.08,
            carbide_radius_um: 0.3,
            carbide_kind: Some(CarbideKind::Cementite),
            carbon_in_solution_wt: 0.6,
            grain_astm: 9.0,
            is_tempered: true,
            is_embrittled: false,
        };
        let coarse = Piece {
            carbide_radius_um: 0.6,
            ..fine
        };
        let points = |property| coarse.points(property) - fine.points(property);
        assert!(points(Property::Wear) > 0.0 && points(Property::Edge) < 0.0);
        let found = differences(&coarse, &fine);
        assert_eq!(found.len(), 1);
        assert!(
            found[0].is_more && found[0].words.contains("1.2") && found[0].words.contains("0.6")
        );
        let hard = Piece {
            carbide_kind: Some(CarbideKind::M7C3),
            ..fine
        };
        let found = differences(&hard, &fine);
        assert_eq!(found.len(), 1);
        let Acts(acts) = found[0].acts;
        assert!(found[0].is_more && acts == [1, 0, 0], "{}", found[0].words);
        let none = Piece {
            carbide: 0.0,
            ..coarse
        };
        assert!(
            differences(&none, &fine)
                .iter()
                .all(|d| !d.words.contains("µm"))
        );
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
