//! What moves the final hardness: one thing changed at a time, everything else as planned.

use super::agitation::until_past;
use super::baths::Baths;
use super::furnace_ends::FurnaceEnd;
use super::hardening::{Hardened, Hardening};
use super::outcome::{Influence, InfluenceKind, Outcome};
use super::plan::{Route, Temper};
use super::quenched::QuenchedPiece;
use super::settled::settled_c;
use super::taught::hottest_temper_c;
use super::tempering::Tempering;
use crate::heat::{Cooled, CoolingCurve, Quenching, Section, cool_core, cool_turning};
use crate::soak::Hold;

/// The changes that are tried.
const TEMPER_STEP_K: f64 = 10.0;
const SOAK_STEP_MIN: f64 = 5.0;
const THICKNESS_STEP_MM: f64 = 1.0;
/// Where the passage of two plates is compared, °C: near the nose of pearlite.
const NOSE_C: f64 = 540.0;

/// The route as planned, with what it has come to so far.
pub(super) struct Planned<'a> {
    pub(super) route: &'a Route,
    pub(super) hardening: &'a Hardening,
    pub(super) quenched: &'a Hardened,
    /// After the cold bath, if there is one.
    pub(super) ready: &'a Hardened,
    /// As quenched with one thing changed.
    pub(super) tried: &'a Tried,
    /// The coldest and the hottest of the furnace.
    pub(super) ends: &'a [Option<FurnaceEnd>; 2],
    /// The cooling curve of the place that is told, where it is not the one that decides.
    pub(super) along: Option<&'a CoolingCurve>,
}

/// The piece as quenched with one thing changed before; none where a model does not reach.
pub(super) struct Tried {
    /// One step thicker.
    thicker: Option<Hardened>,
    /// Soaked for less time.
    shorter: Option<(Hardening, Hardened)>,
    /// Soaked for more time.
    longer: Option<(Hardening, Hardened)>,
}

impl Tried {
    /// Tries the changes on a route that is soaked and quenched.
    pub(super) fn of(route: &Route, baths: &Baths, hold: &Hold<'_>, piece: &QuenchedPiece) -> Self {
        let soaked_for = |soak_min: f64| {
            let soaked = hold.end(60.0 * soak_min).ok()?;
            let hardening = Hardening::of_route(route, &soaked.point, &soaked.dissolved).ok()?;
            let quenched = hardening.quench(piece.cooled.slowest()?).ok()?;
            Some((hardening, quenched))
        };
        let soak_min = route.soak.time_min;
        let thicker = |hardening: &Hardening| {
            let trial = Thicker {
                route,
                baths,
                cooled: &piece.cooled,
                hardening,
            };
            hardening.quench(&trial.curve()?).ok()
        };
        Self {
            thicker: piece.hardening.as_ref().ok().and_then(thicker),
            shorter: soaked_for((soak_min - SOAK_STEP_MIN).max(0.5 * soak_min)),
            longer: soaked_for(soak_min + SOAK_STEP_MIN),
        }
    }
}

/// The quench of a piece that is one step thicker.
struct Thicker<'a> {
    route: &'a Route,
    baths: &'a Baths,
    cooled: &'a Cooled,
    hardening: &'a Hardening,
}

/// Hardness after tempers of the steel of a route.
fn tempered_hrc(route: &Route, tempers: &[Temper], ready: &Hardened) -> Option<f64> {
    if tempers.is_empty() {
        return Some(ready.hardness.hrc()? + route.taught().off.quenched_hrc);
    }
    let tempering = Tempering::of(&route.composition, tempers, Some(ready)).ok()?;
    let hrc = tempering.stages().last()?.hardness?.hrc()?;
    let taught = route.taught();
    let taught = hottest_temper_c(tempers).map_or(taught, |hottest_temper_c| {
        taught.as_made_at(hottest_temper_c)
    });
    Some(hrc + taught.off.tempered_hrc)
}

impl Thicker<'_> {
    /// Cooling curve of the place that decides.
    fn curve(&self) -> Option<CoolingCurve> {
        let section = self.route.section;
        let mut curve = match section {
            Section::Plate { .. } | Section::Round { .. } | Section::Square { .. } => {
                self.settled_curve(section.thicker_by(THICKNESS_STEP_MM))
            }
            Section::Blade { spine_mm, .. } => self.curve_of_thicker_spine(spine_mm),
        }?;
        go_on_to(&mut curve, *self.cooled.slowest()?.temperature_c.last()?);
        Some(curve)
    }

    /// Cooling curve of the slowest place of another section, to where its martensite is settled.
    fn settled_curve(&self, section: Section) -> Option<CoolingCurve> {
        let quench = Quenching {
            section,
            end_c: settled_c(
                self.hardening.kinetics(),
                self.baths,
                self.route.quench.end_c,
            ),
            ..self.baths.quenching(self.route)
        };
        let mut cooled = cool_turning(&quench, &mut self.hardening.turning()).ok()?;
        let slowest = cooled.slowest;
        (slowest < cooled.curves.len()).then(|| cooled.curves.swap_remove(slowest))
    }

    /// The planned curve of a blade, slower as the plate of its spine becomes by one step of
    /// thickness: a plate is ten times quicker to compute, and a glance tells how much slower it becomes.
    fn curve_of_thicker_spine(&self, spine_mm: f64) -> Option<CoolingCurve> {
        // A fixed stay in the first of several baths does not stretch with the piece.
        if !self.baths.later.is_empty() {
            return None;
        }
        let in_bath_s = |thickness_mm: f64| {
            let section = Section::Plate { thickness_mm };
            let agitation = self.route.quench.agitation;
            let quench = until_past(self.route, self.baths, section, agitation, NOSE_C);
            let core = cool_core(&quench).ok()??;
            Some(core.time_to_c(NOSE_C)? - self.cooled.bath_entry_s)
        };
        let slower = in_bath_s(spine_mm + THICKNESS_STEP_MM)? / in_bath_s(spine_mm)?;
        let mut curve = self.cooled.slowest()?.clone();
        let entry_s = self.cooled.bath_entry_s;
        for (time_s, rate) in curve.time_s.iter_mut().zip(&mut curve.rate_k_per_s) {
            if *time_s > entry_s {
                *time_s = entry_s + (*time_s - entry_s) * slower;
                *rate /= slower;
            }
        }
        slower.is_finite().then_some(curve)
    }
}

impl Planned<'_> {
    /// Hardness after the cold bath and the tempers of a piece as quenched.
    fn final_hrc(&self, hardening: &Hardening, quenched: &Hardened) -> Option<f64> {
        match &self.route.cold {
            Some(cold) => {
                let chilled = hardening
                    .cold(&self.route.composition, quenched, cold)
                    .ok()?;
                tempered_hrc(self.route, &self.route.tempers, &chilled)
            }
            None => tempered_hrc(self.route, &self.route.tempers, quenched),
        }
    }

    /// The same of a piece with another austenite, at the place that is told.
    fn final_hrc_there(&self, tried: &Option<(Hardening, Hardened)>) -> Option<f64> {
        let (hardening, deciding) = tried.as_ref()?;
        match self.along {
            Some(curve) => self.final_hrc(hardening, &hardening.quench(curve).ok()?),
            None => self.final_hrc(hardening, deciding),
        }
    }

    fn all_tempers_shifted(&self, shift_k: f64) -> Option<f64> {
        let mut tempers = self.route.tempers.clone();
        for temper in &mut tempers {
            temper.temperature_c += shift_k;
        }
        tempered_hrc(self.route, &tempers, self.ready)
    }

    /// The influences on the final hardness, as far as the models reach.
    pub(super) fn influences(&self, outcome: &Outcome) -> Vec<Influence> {
        let Some(planned_hrc) = outcome
            .judged_stages()
            .last()
            .and_then(|stage| stage.hardness?.hrc())
        else {
            return Vec::new();
        };
        let route = self.route;
        let mut found = Vec::new();
        let mut note = |kind, less: Option<f64>, more: Option<f64>| {
            if less.is_some() || more.is_some() {
                found.push(Influence {
                    kind,
                    less_hrc: less.map(|hrc| hrc - planned_hrc),
                    more_hrc: more.map(|hrc| hrc - planned_hrc),
                });
            }
        };
        if !route.tempers.is_empty() {
            note(
                InfluenceKind::TemperTemperature {
                    step_k: TEMPER_STEP_K,
                },
                self.all_tempers_shifted(-TEMPER_STEP_K),
                self.all_tempers_shifted(TEMPER_STEP_K),
            );
        }
        if route.cold.is_some() {
            note(
                InfluenceKind::NoCold,
                tempered_hrc(route, &route.tempers, self.quenched),
                None,
            );
        }
        note(
            InfluenceKind::Thickness {
                step_mm: THICKNESS_STEP_MM,
            },
            None,
            self.tried
                .thicker
                .as_ref()
                // A blade is thicker at the spine.
                .filter(|_| self.along.is_none())
                .and_then(|quenched| self.final_hrc(self.hardening, quenched)),
        );
        let band_k = route.soak_band_k();
        if band_k > 0.0 {
            let [coldest, hottest] = self
                .ends
                .each_ref()
                .map(|end| self.final_hrc_there(&end.as_ref()?.hardened));
            note(InfluenceKind::Furnace { step_k: band_k }, coldest, hottest);
        }
        note(
            InfluenceKind::SoakTime {
                step_min: SOAK_STEP_MIN,
            },
            self.final_hrc_there(&self.tried.shorter),
            self.final_hrc_there(&self.tried.longer),
        );
        found
    }
}

/// Carries a curve that ends where martensite begins on to the end of the quench: below, only the
/// coldest temperature counts.
fn go_on_to(curve: &mut CoolingCurve, end_c: f64) {
    let (Some(&time_s), Some(&temperature_c), Some(&rate)) = (
        curve.time_s.last(),
        curve.temperature_c.last(),
        curve.rate_k_per_s.last(),
    ) else {
        return;
    };
    if temperature_c > end_c {
        curve
            .time_s
            .push(time_s + (temperature_c - end_c) / rate.max(1e-3));
        curve.temperature_c.push(end_c);
        curve.rate_k_per_s.push(rate);
    }
}
