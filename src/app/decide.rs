//! Deciding as the page asks for it and hears of it: an errand of a thread of its own, from text to
//! texts, so that what the page loads at first need not hold how it is written or read.

use recalesce::advise::{
    AdviseError, Correction, Courses, FindRun, Found, LearnRun, Learned, LoggedRun, Numbers,
    OpenInput, Prediction, Quantiles, SensitivityRun, Shop, Sought, SpreadRun, Spreads, SweepBand,
    SweepBandRun, SweepPoint, SweepRun, SweptInput, Tolerances, USUAL_CASES, USUAL_ROWS,
    USUAL_STEPS,
};
use recalesce::route::Route;
use recalesce::units::{LengthUnit, TemperatureScale};
use recalesce_texts::page as texts;
use serde::{Deserialize, Serialize};

/// Part of a search after which what there is so far is told again.
const TOLD_EVERY: f64 = 0.1;
/// The part of the work on how sure a route is that the spread takes; the rest goes to what matters.
const SPREAD_PART: f64 = 0.2;
/// The part of the work on a sweep with its bands that the sweep takes.
const SWEEP_PART: f64 = 0.1;

/// What is to be decided.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Question {
    /// Which routes serve the piece of a route.
    Find(Box<Route>, Box<Shop>, Sought, Correction),
    /// How sure a route is, and what matters most.
    Sure(Box<Route>, Tolerances, Correction),
    /// How sure a route is by a few pieces, without what matters: while it is on the bench.
    Drawn(Box<Route>, Tolerances, Correction),
    /// What logged runs teach of a shop, and of the next piece of a route, with lengths in a unit.
    Learn(Vec<LoggedRun>, Box<Shop>, Box<Route>, LengthUnit),
    /// What comes out of several routes, counting with what a logbook has taught.
    Compare(Vec<Route>, Correction),
    /// What comes out while one input is taken from one value to another, and where tolerances are
    /// given, how sure that is; counting with what a logbook has taught.
    Sweep(
        Box<Route>,
        SweptInput,
        [f64; 2],
        Option<Tolerances>,
        Correction,
    ),
}

/// What is told on the way, and in the end with all of it done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) enum Told {
    /// Part of the work that is done.
    Progress(f64),
    /// Routes so far, with the part that is done.
    Found(f64, Box<Found>),
    /// How sure it is.
    Sure(Box<Sure>),
    /// What the logbook teaches.
    Taught(Box<Taught>),
    /// What comes out of each of several routes, or why nothing does.
    Compared(Vec<Result<(Numbers, Courses), String>>),
    /// What comes out along an input, with bands about it.
    Swept(Vec<SweepPoint>, Vec<SweepBand>),
    /// Nothing, and why.
    Refused(String),
}

/// How sure a route is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct Sure {
    /// Cases with an outcome and without.
    pub(crate) cases: usize,
    pub(crate) refused: usize,
    /// Part that meets the target, and part that hardens.
    pub(crate) meets_target_part: Option<f64>,
    pub(crate) hardens_part: Option<f64>,
    /// What varies, where the models tell it.
    pub(crate) numbers: Vec<(Varies, Quantiles)>,
    /// What was open, and where that comes from.
    pub(crate) open: Vec<(String, String)>,
    /// What matters, once it is known.
    pub(crate) matters: Vec<Matters>,
    /// Whether all is done.
    pub(crate) is_whole: bool,
}

/// A number that varies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) enum Varies {
    FinalHrc,
    QuenchedHrc,
    QuenchedMartensite,
    FinalAustenite,
    Carbon,
    Grain,
    Margin,
}

/// How the spread of a number divides up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct Matters {
    /// In a sentence or two.
    pub(crate) words: String,
    /// What is open, with the part of the variance that would be left were all else known, and its
    /// standard error; that which does most first.
    pub(crate) shares: Vec<(String, f64, f64)>,
}

/// What a logbook teaches, in sentences.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct Taught {
    /// Readings that count, and those that teach nothing with the reason.
    pub(crate) used: usize,
    pub(crate) not_used: Vec<String>,
    /// What was learnt, each with the part by which its band is narrower.
    pub(crate) learnt: Vec<(String, f64)>,
    /// What cannot be told apart.
    pub(crate) entangled: Vec<String>,
    /// Readings that lie too far off to count.
    pub(crate) outliers: Vec<String>,
    /// The next piece of the route on the bench.
    pub(crate) prediction: Option<Prediction>,
    /// What to measure next, that which would teach most first.
    pub(crate) next: Vec<String>,
    /// What later predictions may count with, switched off.
    pub(crate) correction: Correction,
}

impl Question {
    /// Answers it, telling temperatures on a scale; `tell` hears how far it is and then what came of
    /// it.
    pub(crate) fn answer(self, scale: TemperatureScale, tell: &dyn Fn(&Told)) {
        let told = match self {
            Self::Find(piece, shop, sought, learnt) => {
                find(&piece, &shop, &sought, &learnt, scale, tell)
            }
            Self::Sure(route, tolerances, learnt) => {
                let taught = learnt.taught(&route);
                sure(&Route { taught, ..*route }, &tolerances, tell)
            }
            Self::Drawn(route, tolerances, learnt) => {
                let taught = learnt.taught(&route);
                drawn(&Route { taught, ..*route }, &tolerances)
            }
            Self::Learn(runs, shop, route, length) => {
                let run = LearnRun::new(&runs, Some(&shop), Some(&route));
                run.and_then(|run| taught(run.on_scale(scale).in_lengths(length), tell))
            }
            Self::Compare(routes, learnt) => {
                let come = |route: Route| {
                    let taught = learnt.taught(&route);
                    let route = Route { taught, ..route };
                    Ok((Numbers::of(&route)?, Courses::of(&route)?))
                };
                let come = |route| come(route).map_err(|why: AdviseError| why.words(scale));
                Ok(Told::Compared(routes.into_iter().map(come).collect()))
            }
            Self::Sweep(route, input, range, tolerances, learnt) => {
                let run = SweepRun::new(&route, input, range, USUAL_STEPS);
                run.and_then(|run| {
                    let run = run.on_scale(scale).counting_with(&learnt);
                    swept(run, tell, || {
                        let bands = |tolerances| {
                            let run =
                                SweepBandRun::new(&route, input, range, &tolerances, route.seed);
                            run.map(|run| run.counting_with(&learnt))
                        };
                        tolerances.map(bands).transpose()
                    })
                })
            }
        };
        tell(&told.unwrap_or_else(|why| Told::Refused(why.words(scale))));
    }
}

fn find(
    piece: &Route,
    shop: &Shop,
    sought: &Sought,
    learnt: &Correction,
    scale: TemperatureScale,
    tell: &dyn Fn(&Told),
) -> Result<Told, AdviseError> {
    let tolerances = Tolerances::default();
    let run = FindRun::taught(piece, shop, sought, &tolerances, piece.seed, learnt)?;
    let mut run = run.on_scale(scale);
    let mut told = 0.0;
    while run.step() {
        let done = run.progress();
        if done < told + TOLD_EVERY {
            tell(&Told::Progress(done));
        } else if let Ok(found) = run.so_far() {
            told = done;
            tell(&Told::Found(done, Box::new(found)));
        }
    }
    Ok(Told::Found(1.0, Box::new(run.so_far()?)))
}

fn sure(route: &Route, tolerances: &Tolerances, tell: &dyn Fn(&Told)) -> Result<Told, AdviseError> {
    let mut run = SpreadRun::new(route, tolerances, USUAL_CASES, route.seed)?;
    while run.step() {
        tell(&Told::Progress(SPREAD_PART * run.progress()));
    }
    let mut sure = Sure::of(&run.so_far()?);
    tell(&Told::Sure(Box::new(sure.clone())));
    let mut run = SensitivityRun::new(route, tolerances, USUAL_ROWS, route.seed)?;
    while run.step() {
        tell(&Told::Progress(
            SPREAD_PART + (1.0 - SPREAD_PART) * run.progress(),
        ));
    }
    sure.is_whole = true;
    // What cannot be divided up is still spread as told.
    if let Ok(found) = run.so_far() {
        sure.matters = found
            .quantities
            .into_iter()
            .map(|divided| Matters {
                words: divided.words,
                shares: divided
                    .shares
                    .iter()
                    .map(|share| {
                        let name = share.input.name().to_owned();
                        (name, share.index.total, share.index.total_error)
                    })
                    .collect(),
            })
            .collect();
    }
    Ok(Told::Sure(Box::new(sure)))
}

/// Pieces that are drawn for the bench: enough for the ends of a band, few enough to come soon (expert
/// value).
const DRAWN: u32 = 64;

fn drawn(route: &Route, tolerances: &Tolerances) -> Result<Told, AdviseError> {
    let mut run = SpreadRun::new(route, tolerances, DRAWN, route.seed)?;
    while run.step() {}
    let mut sure = Sure::of(&run.so_far()?);
    sure.is_whole = true;
    Ok(Told::Sure(Box::new(sure)))
}

/// A sweep, and after it the bands where they are asked for.
fn swept(
    mut run: SweepRun,
    tell: &dyn Fn(&Told),
    bands: impl FnOnce() -> Result<Option<SweepBandRun>, AdviseError>,
) -> Result<Told, AdviseError> {
    while run.step() {
        tell(&Told::Progress(SWEEP_PART * run.progress()));
    }
    let Some(mut bands) = bands()? else {
        return Ok(Told::Swept(run.points, Vec::new()));
    };
    while bands.step() {
        tell(&Told::Progress(
            SWEEP_PART + (1.0 - SWEEP_PART) * bands.progress(),
        ));
    }
    Ok(Told::Swept(run.points, bands.bands))
}

fn taught(mut run: LearnRun, tell: &dyn Fn(&Told)) -> Result<Told, AdviseError> {
    while run.step()? {
        tell(&Told::Progress(run.progress()));
    }
    Ok(run.so_far().map_or_else(
        || Told::Refused(texts::decide::NOTHING_COMPARED.to_owned()),
        |learned| Told::Taught(Box::new(Taught::of(learned))),
    ))
}

impl Taught {
    fn of(learned: Learned) -> Self {
        let outliers = learned.compared.iter().filter(|one| one.is_outlier);
        Self {
            correction: learned.correction(),
            used: learned.compared.iter().map(|one| one.readings).sum(),
            not_used: learned
                .not_used
                .iter()
                .map(|one| format!("“{}”, {}: {}.", one.name, one.unused.words(), one.reason))
                .collect(),
            outliers: outliers.map(|one| one.name.clone()).collect(),
            learnt: learned
                .unknowns
                .into_iter()
                .map(|one| (one.words, one.narrower_part))
                .collect(),
            entangled: learned.entangled.into_iter().map(|one| one.words).collect(),
            prediction: learned.prediction,
            next: learned.next.into_iter().map(|one| one.words).collect(),
        }
    }
}

impl Sure {
    fn of(spreads: &Spreads) -> Self {
        let numbers = [
            (Varies::FinalHrc, spreads.final_hrc),
            (Varies::QuenchedHrc, spreads.quenched_hrc),
            (Varies::QuenchedMartensite, spreads.quenched_martensite),
            (Varies::FinalAustenite, spreads.final_austenite),
            (Varies::Carbon, spreads.carbon_wt),
            (Varies::Grain, spreads.grain_astm),
            (Varies::Margin, spreads.margin_factor),
        ];
        Self {
            cases: spreads.cases,
            refused: spreads.refused,
            meets_target_part: spreads.meets_target_part,
            hardens_part: spreads.hardens_part,
            numbers: numbers
                .into_iter()
                .filter_map(|(varies, quantiles)| Some((varies, quantiles?)))
                .collect(),
            open: spreads
                .inputs
                .iter()
                .map(|open: &OpenInput| (open.input.name().to_owned(), open.source.to_owned()))
                .collect(),
            matters: Vec::new(),
            is_whole: false,
        }
    }
}
