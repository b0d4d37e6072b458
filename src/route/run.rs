//! The pipeline: soak, cooling, transformation, cold bath, hardness, temper; then verdicts, bands
//! and cautions.

use super::baths::{Baths, until_arrival};
use super::cautions::cautions;
use super::cold::Chilled;
use super::error::RouteError;
use super::furnace_ends::{FurnaceEnd, furnace_band};
use super::hardening::{Hardened, Hardening};
use super::influence::{Planned, Tried};
use super::known::Known;
use super::other_quenches::Quencher;
use super::outcome::{Outcome, QuenchOutcome, QuenchTransformed, Stage};
use super::outside::{Outside, OutsidePiece, QuenchedWhole};
use super::places::Places;
use super::plan::Route;
use super::prepared::{Prepared, anew};
use super::quench_ends::{QuenchEnds, swings_hrc, widen_chart};
use super::quenched::{Finished, Judged, QuenchedPiece};
use super::replay::{Stopped, stopped_at};
use super::spread::Spread;
use super::taught::Left;
use super::validate::validate;
use super::verdict::HARDENED;
use crate::heat::{Cooled, CoolingCurve, Heating, Place, Section, heat_up};
use crate::numeric::order;
use crate::soak::{Hold, LONGEST_S, SoakError, SoakOutcome, skin};
use crate::steel::OutOfRange;
use crate::transform::{Kinetics, martensite_temperature_c};
use recalesce_texts::route::error as texts;

/// Below this a piece that heats up loses next to no carbon and grows little scale, °C.
const SCALES_FROM_C: f64 = 700.0;
/// The history of a soak is shown to at least this time, s.
const SHORTEST_HISTORY_S: f64 = 1800.0;

/// A route as far as its quench: kept while the cold bath and the tempers are tried out.
pub struct HardenedRoute {
    /// The route, without what follows the quench.
    route: Route,
    baths: Baths,
    piece: QuenchedPiece,
    ends: [Option<FurnaceEnd>; 2],
    quench_ends: Option<QuenchEnds>,
    tried: Tried,
    /// The outcome as far as the quench.
    begun: Outcome,
}

impl HardenedRoute {
    /// Soaks and quenches a valid route whose steel is prepared.
    pub(super) fn of(route: &Route, baths: Baths, prepared: &Prepared) -> Result<Self, RouteError> {
        let stock = &prepared.stock;
        let hold = stock.at(route.soak.temperature_c)?;
        let soaked = soak_for(&hold, route.soak.time_min)?;
        let heating = heat_up(route.section, route.soak.temperature_c)?;
        let piece = QuenchedPiece::of(
            Hardening::of_route(route, &soaked.end, &soaked.dissolved),
            &baths.quenching(route),
        )?;
        let ends = [-1.0, 1.0].map(|side| {
            let soak_c = route.soak.temperature_c + side * route.soak_band_k();
            FurnaceEnd::at(route, stock, soak_c, &piece.cooled)
        });
        let spread = |kinetics: &Kinetics| {
            let ends = ends.each_ref().map(|end| end.as_ref()?.kinetics());
            Spread::of(route, &prepared.heats, kinetics, ends)
        };
        let transformed = match (&piece.hardening, &piece.quenched, piece.cooled.slowest()) {
            (Ok(hardening), Ok(Some(quenched)), Some(curve)) => {
                let spread = spread(hardening.kinetics());
                Known::from(transformed(
                    route,
                    &baths,
                    hardening,
                    spread,
                    &piece.cooled,
                    curve,
                    quenched,
                ))
            }
            (Err(refusal), ..) | (_, Err(refusal), _) => Known::Refused {
                refused: refusal.into(),
            },
            _ => Known::Refused {
                refused: texts::NO_COOLING_CURVE.into(),
            },
        };
        let quench_ends = transformed.given().zip(piece.cooled.slowest());
        let quench_ends = quench_ends.map(|(transformed, curve)| {
            let is_held = transformed.held_c.is_some();
            QuenchEnds::of(route, &soaked, curve, &transformed.margin, is_held)
        });
        Ok(Self {
            begun: Outcome {
                critical: prepared.critical,
                stock: (!route.prior.is_empty()).then(|| prepared.prior.stock.clone()),
                prior: prepared.prior.outcomes.clone(),
                skin: Known::from(skin(route.soak.temperature_c, hot_s(route, &heating))),
                heating,
                stages: vec![Stage::after_soak(&soaked)],
                soak: soaked,
                furnace: furnace_band(route, &ends),
                quench: QuenchOutcome {
                    medium_title: baths.first.title.clone(),
                    deciding: piece.cooled.slowest,
                    curves: piece.cooled.curves.clone(),
                    changes_s: piece.cooled.changes_s.clone(),
                    transformed,
                },
                outside: None,
                cold: Known::Refused {
                    refused: texts::AUSTENITE_UNKNOWN.into(),
                },
                temper: Known::Refused {
                    refused: texts::TEMPERS_TO_COME.into(),
                },
                influences: Vec::new(),
                cautions: Vec::new(),
            },
            tried: Tried::of(route, &baths, &hold, &piece),
            route: route.as_far_as_quench(),
            baths,
            piece,
            ends,
            quench_ends,
        })
    }

    /// Whether a route is this one as far as the quench.
    #[must_use]
    pub fn is_of(&self, route: &Route) -> bool {
        self.route == route.as_far_as_quench()
    }

    /// The quench stopped at a time, s from leaving the furnace: what there is so far at the place
    /// that decides, and the hardness if it were cooled from there at once. None where the models do
    /// not reach.
    #[must_use]
    pub fn stopped_at(&self, time_s: f64) -> Option<Stopped> {
        let hardening = self.piece.hardening.as_ref().ok()?;
        let curve = self.piece.cooled.slowest()?;
        stopped_at(hardening, curve, self.route.quench.end_c, time_s)
    }

    /// As [`super::run`]: the same outcome to the last bit. A route of another soak or quench is
    /// computed anew.
    ///
    /// # Errors
    /// As [`super::run`].
    pub fn run(&self, route: &Route) -> Result<Outcome, RouteError> {
        if !self.is_of(route) {
            return anew(route);
        }
        validate(route)?;
        Ok(self.finished(route))
    }

    /// The whole outcome of a valid route that is this one as far as the quench.
    pub(super) fn finished(&self, route: &Route) -> Outcome {
        let (hardening, quenched) = (self.piece.hardening.as_ref(), self.piece.quenched.as_ref());
        let hardened = match (hardening, quenched) {
            (Ok(hardening), Ok(Some(quenched))) => Some((hardening, quenched)),
            _ => None,
        };
        let chilled = hardened.map(|(hardening, quenched)| Chilled::of(route, hardening, quenched));
        let Finished {
            mut stages,
            ready,
            tempering,
        } = Finished::of(
            &route.composition,
            hardened.map(|(_, quenched)| quenched),
            chilled
                .as_ref()
                .and_then(|chilled| route.cold.and(chilled.as_ref().ok()))
                .map(|chilled| &chilled.piece),
            &route.tempers,
        );
        let mut outcome = self.begun.clone();
        if let Some(chilled) = &chilled {
            outcome.cold = Known::from(chilled.as_ref().map(|chilled| chilled.outcome));
        }
        let open_hrc = ready.as_ref().map_or(0.0, Hardened::open_hrc);
        let ends = self.quench_ends.as_ref().map(|ends| ends.finished(route));
        let swings_hrc = ends.as_ref().map(|ends| swings_hrc(&stages, ends));
        enter_taught(&mut stages, route, open_hrc);
        outcome.stages.extend(stages);
        let (outside, outside_piece) = self.outside(route).unzip();
        outcome.outside = outside;
        // What can be done about the hardness is told of what is judged.
        let edge = outside_piece.filter(|_| outcome.judged_edge().is_some());
        let (tempering, ends, edge) = match edge {
            Some(edge) => (edge.tempering, edge.ends, Some(edge.steel)),
            None => (tempering, ends, None),
        };
        let mut chart = tempering.and_then(|tempering| tempering.chart(route));
        if let (Ok(chart), Some(ends)) = (&mut chart, &ends) {
            widen_chart(chart, route, ends);
        }
        outcome.temper = Known::from(chart);
        if let Some((hardening, quenched)) = hardened {
            let ready = ready.as_ref().unwrap_or(quenched);
            let (quenched, ready) = match &edge {
                Some(edge) => (&edge.quenched, &edge.ready),
                None => (quenched, ready),
            };
            let planned = Planned {
                route,
                hardening,
                quenched,
                ready,
                tried: &self.tried,
                ends: &self.ends,
                along: edge.as_ref().map(|edge| edge.curve),
            };
            outcome.influences = planned.influences(&outcome);
        }
        outcome.widen_by_furnace();
        // The soak has no hardness, and no swing.
        let after_soak = outcome.stages.iter_mut().skip(1);
        let swings = swings_hrc.into_iter().flatten();
        for (stage, swing_hrc) in after_soak.zip(swings) {
            stage.widen_by_quench(swing_hrc);
        }
        outcome.cautions = cautions(route, &self.baths, &outcome);
        outcome
    }
}

impl HardenedRoute {
    /// What is reached from outside of a piece that does not harden through.
    fn outside(&self, route: &Route) -> Option<(Outside, OutsidePiece<'_>)> {
        let whole = QuenchedWhole {
            soaked: &self.begun.soak,
            hardening: self.piece.hardening.as_ref().ok()?,
            cooled: &self.piece.cooled,
            deciding: self.piece.quenched.as_ref().ok()?.as_ref()?,
            transformed: self.begun.quench.transformed.given()?,
            furnace_ends: &self.ends,
        };
        whole.outside(route)
    }
}

/// Puts into stages what runs have taught.
fn enter_taught(stages: &mut [Stage], route: &Route, open_hrc: f64) {
    let taught = route.taught();
    for stage in stages {
        taught.enter(stage, open_hrc);
    }
}

/// Time for which the surface of the piece is hot enough to scale, s: with its heating up.
pub(super) fn hot_s(route: &Route, heating: &Heating) -> f64 {
    let soak_s = 60.0 * route.soak.time_min;
    (soak_s + heating.above_s(SCALES_FROM_C)).min(LONGEST_S)
}

/// The soak for a time, min, with its history.
pub(super) fn soak_for(hold: &Hold<'_>, time_min: f64) -> Result<SoakOutcome, SoakError> {
    let time_s = 60.0 * time_min;
    hold.soak(time_s, history_end_s(time_s))
}

/// Time to which the history of a soak is shown, s: half an hour, doubled until the soak fits with
/// room behind it.
fn history_end_s(time_s: f64) -> f64 {
    let mut end_s = SHORTEST_HISTORY_S;
    while end_s < 1.2 * time_s {
        end_s *= 2.0;
    }
    end_s.min(LONGEST_S)
}

fn transformed(
    route: &Route,
    baths: &Baths,
    hardening: &Hardening,
    spread: Spread,
    cooled: &Cooled,
    curve: &CoolingCurve,
    quenched: &Hardened,
) -> Result<QuenchTransformed, OutOfRange> {
    let fractions = quenched.fractions;
    let kinetics = hardening.kinetics();
    let austenite = kinetics.austenite();
    let ms_c = kinetics.ms_c();
    let quench = baths.quenching(route);
    let judged = Judged::of(&quench, baths, kinetics, cooled, curve, &fractions);
    let Judged {
        held_c, bath_at_ms, ..
    } = judged;
    let places = Places {
        hardening,
        judged: &judged,
        band_factor: Left::of_factor(
            baths.widest_band_factor(bath_at_ms),
            spread.left.heat_transfer,
        ),
        spread: &spread,
    };
    let deciding = places.place(cooled.slowest, curve, fractions)?;
    let places = places.all(cooled, &deciding)?;
    let quencher = Quencher {
        route,
        baths,
        kinetics,
        spread,
    };
    let slowest_medium = quencher.slowest_medium(deciding.margin.factor);
    Ok(QuenchTransformed {
        isothermal: kinetics.isothermal(),
        ms_c,
        auto_tempered_hrc: quenched.auto_tempered_hrc(),
        m50_c: martensite_temperature_c(austenite, 0.5)?,
        m90_c: martensite_temperature_c(austenite, 0.9)?,
        fractions,
        hardened_fraction: deciding.hardened_fraction,
        bath_at_ms,
        held_c,
        margin: deciding.margin,
        next_slower: quencher.next_slower(),
        slowest_medium,
        thickest_mm: quencher.thickest_mm(deciding.margin.factor),
        hardened_depth_mm: hardened_depth_mm(route, kinetics, cooled, held_c),
        places,
        boundary_carbide: quenched.films,
    })
}

/// How far the section hardens, mm, between the places that are computed: in a blade from the edge
/// up, else from the surface inwards.
fn hardened_depth_mm(
    route: &Route,
    kinetics: &Kinetics,
    cooled: &Cooled,
    held_c: Option<f64>,
) -> Option<f64> {
    let depth_of = |place: Place| match (route.section, place) {
        (Section::Blade { .. }, Place::Edge) => Some(0.0),
        (Section::Blade { height_mm, .. }, Place::Quarter) => Some(0.25 * height_mm),
        (Section::Blade { height_mm, .. }, Place::Middle) => Some(0.5 * height_mm),
        (Section::Blade { height_mm, .. }, Place::ThreeQuarter) => Some(0.75 * height_mm),
        (Section::Blade { .. }, Place::Spine) => route.section.spine_core_mm(),
        (
            Section::Plate { .. } | Section::Round { .. } | Section::Square { .. },
            Place::Surface,
        ) => Some(0.0),
        (Section::Plate { thickness_mm: size }, Place::Centre)
        | (Section::Round { diameter_mm: size }, Place::Centre)
        | (Section::Square { side_mm: size }, Place::Centre) => Some(0.5 * size),
        _ => None,
    };
    let whole_mm = match route.section {
        Section::Blade { height_mm, .. } => height_mm,
        Section::Plate { thickness_mm: size }
        | Section::Round { diameter_mm: size }
        | Section::Square { side_mm: size } => 0.5 * size,
    };
    let mut places: Vec<(f64, f64)> = cooled
        .curves
        .iter()
        .filter_map(|curve| {
            let depth_mm = depth_of(curve.place)?;
            let arriving = held_c.map(|bath_c| until_arrival(curve, bath_c));
            let curve = arriving.as_ref().unwrap_or(curve);
            let hardened = kinetics
                .hardened(&curve.time_s, &curve.temperature_c)
                .ok()?;
            Some((depth_mm, hardened))
        })
        .collect();
    order::sort_by(&mut places, |a, b| a.0.total_cmp(&b.0));
    let mut before: Option<(f64, f64)> = None;
    for (depth_mm, hardened) in places {
        if hardened < HARDENED {
            return Some(before.map_or(0.0, |(reached_mm, was)| {
                reached_mm + (depth_mm - reached_mm) * (was - HARDENED) / (was - hardened)
            }));
        }
        before = Some((depth_mm, hardened));
    }
    before.map(|_| whole_mm)
}
