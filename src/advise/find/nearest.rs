//! What a route must keep to, and what stands in the way where none does.

use super::options::{TEMPER_C, soak_range};
use super::run::{Choice, FindRun, Upstream};
use crate::heat::{Medium, MediumChoice};
use crate::route::{Cold, Quench, finished_stage, may_crack, shop_media};
use crate::units::{format_factor, format_fixed, format_hrc, format_percent, format_temperature};
use recalesce_texts::advise::find::nearest as texts;
use recalesce_texts::grammar::inside_a_sentence;
use serde::{Deserialize, Serialize};

/// Something that a route must keep to, in the order of the route.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Limit {
    /// A furnace that reaches the soak.
    Furnace,
    /// An oven that reaches a temper.
    TemperOven,
    /// A quench that hardens the section.
    Margin,
    /// The coarsest grain.
    Grain,
    /// The most retained austenite.
    Austenite,
    /// The longest time.
    Time,
    /// The hardness range.
    Hardness,
}

/// The limit that stands in the way: of those that do so alone the first on the route, else the
/// first that no route keeps to. With the smallest change that would help.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Nearest {
    /// The limit.
    pub limit: Limit,
    /// The nearest that any route comes to it, in its unit: a factor for the margin, ASTM number,
    /// volume fraction, h, HRC; none for furnaces and ovens, and where the models tell nothing.
    pub nearest: Option<f64>,
    /// What stands in the way, and what would help, in words.
    pub words: String,
}

/// The limits that are checked on whole routes, in order.
const CHECKED: [Limit; 5] = [
    Limit::Margin,
    Limit::Grain,
    Limit::Austenite,
    Limit::Time,
    Limit::Hardness,
];

impl FindRun {
    /// The limits of a choice that the models do not reach, in order: the margin of its quench, and
    /// where a limit is set to it the austenite. They count as kept, and are told.
    pub(super) fn not_checked(&self, choice: &Choice) -> Vec<Limit> {
        let upstream = self.upstreams.get(choice.upstream);
        let margin = upstream.and_then(|up| up.margin_factor);
        let most_austenite = self.sought.limits.most_austenite;
        let open = [
            (Limit::Margin, margin.is_none()),
            (
                Limit::Austenite,
                most_austenite.is_some() && choice.piece.austenite.is_none(),
            ),
        ];
        let open = open.into_iter().filter(|(_, is_open)| *is_open);
        open.map(|(limit, _)| limit).collect()
    }

    /// Whether a choice keeps to one limit, as planned; see [`Self::not_checked`] for what the models
    /// do not tell.
    fn keeps_to(&self, choice: &Choice, limit: Limit) -> bool {
        self.excess(choice, limit) <= 0.0
    }

    pub(super) fn keeps_to_all(&self, choice: &Choice) -> bool {
        CHECKED.iter().all(|limit| self.keeps_to(choice, *limit))
    }

    /// Whether a choice hardens and keeps to the limits, whatever its hardness.
    pub(super) fn keeps_to_limits(&self, choice: &Choice) -> bool {
        let limits = CHECKED.iter().filter(|limit| **limit != Limit::Hardness);
        limits
            .into_iter()
            .all(|limit| self.keeps_to(choice, *limit))
    }

    /// By how much a choice is beyond a limit, in its unit; not above zero where it keeps to it.
    fn excess(&self, choice: &Choice, limit: Limit) -> f64 {
        let limits = &self.sought.limits;
        let beyond = |value: Option<f64>, most: Option<f64>| match (value, most) {
            (Some(value), Some(most)) => value - most,
            _ => 0.0,
        };
        match limit {
            Limit::Furnace | Limit::TemperOven => 0.0,
            Limit::Margin => {
                let margin = self
                    .upstreams
                    .get(choice.upstream)
                    .and_then(|up| up.margin_factor);
                beyond(margin.map(|margin| -margin), Some(-1.0))
            }
            Limit::Grain => {
                let least = limits.least_grain_astm.map(|least| -least);
                beyond(Some(-choice.piece.grain_astm), least)
            }
            Limit::Austenite => beyond(choice.piece.austenite, limits.most_austenite),
            Limit::Time => beyond(Some(choice.time_min / 60.0), limits.longest_h),
            Limit::Hardness => {
                let target = self.sought.target;
                (target.least_hrc - choice.hrc).max(choice.hrc - target.most_hrc)
            }
        }
    }
}

/// A number that advice gives, rounded to a step on the side on which the advice holds.
fn up(value: f64, step: f64) -> f64 {
    // What lies on a step but for the last bits stays there.
    ((value / step - 1e-9).ceil()) * step
}

fn down(value: f64, step: f64) -> f64 {
    -up(-value, step)
}

/// A volume fraction as a limit that is kept: rounded up to what is written.
fn most_percent(part: f64) -> String {
    format_percent(up(part, if part < 0.099 { 0.001 } else { 0.01 }))
}

/// What stands in the way; none where some route keeps to everything.
pub(super) fn nearest(run: &FindRun) -> Option<Nearest> {
    if run.soakings.is_empty() {
        let ([from_c, to_c], _) = soak_range(&run.piece).ok()?;
        let degrees = |c: f64| format_temperature(c, run.scale);
        return Some(Nearest {
            limit: Limit::Furnace,
            nearest: None,
            words: texts::no_furnace_reaches(&degrees(from_c), &degrees(to_c)),
        });
    }
    if run.tempers.is_empty() {
        return Some(Nearest {
            limit: Limit::TemperOven,
            nearest: None,
            words: texts::nothing_tempers(&format_temperature(TEMPER_C.0.into(), run.scale)),
        });
    }
    if run.choices.is_empty() {
        return Some(Nearest {
            limit: Limit::Hardness,
            nearest: None,
            words: texts::HARDNESS_NOT_TOLD.to_owned(),
        });
    }
    if run.choices.iter().any(|choice| run.keeps_to_all(choice)) {
        return None;
    }
    // A limit that stands in the way alone is what to change, the first of them on the route.
    for limit in CHECKED {
        let others = |choice: &&Choice| {
            let mut others = CHECKED.iter().filter(|other| **other != limit);
            others.all(|other| run.keeps_to(choice, *other))
        };
        let kept: Vec<&Choice> = run.choices.iter().filter(others).collect();
        if let Some(best) = least_excess(run, &kept, limit) {
            return told(run, limit, best);
        }
    }
    let mut left: Vec<&Choice> = run.choices.iter().collect();
    for limit in CHECKED {
        let kept: Vec<&Choice> = left
            .iter()
            .filter(|choice| run.keeps_to(choice, limit))
            .copied()
            .collect();
        if kept.is_empty() {
            return told(run, limit, least_excess(run, &left, limit)?);
        }
        left = kept;
    }
    None
}

fn least_excess<'a>(run: &FindRun, among: &[&'a Choice], limit: Limit) -> Option<&'a Choice> {
    let excess = |choice: &Choice| run.excess(choice, limit);
    among
        .iter()
        .copied()
        .min_by(|a, b| excess(a).total_cmp(&excess(b)))
}

fn told(run: &FindRun, limit: Limit, best: &Choice) -> Option<Nearest> {
    let upstream = run.upstreams.get(best.upstream)?;
    let hours = best.time_min / 60.0;
    let target = run.sought.target;
    let (nearest, words) = match limit {
        Limit::Margin => (upstream.margin_factor, too_slow(run, upstream)),
        Limit::Grain => {
            let grain = format_fixed(down(best.piece.grain_astm, 0.1), 1);
            (Some(best.piece.grain_astm), texts::coarser_grain(&grain))
        }
        Limit::Austenite => (
            best.piece.austenite,
            too_much_austenite(run, upstream, best),
        ),
        Limit::Time => (Some(hours), texts::longer(&format_fixed(up(hours, 0.1), 1))),
        Limit::Hardness => {
            let words = if best.hrc < target.least_hrc {
                texts::too_soft(&format_hrc(down(best.hrc, 0.1)))
            } else {
                texts::not_tempered_to(&format_hrc(up(best.hrc, 0.1)))
            };
            (Some(best.hrc), words)
        }
        Limit::Furnace | Limit::TemperOven => return None,
    };
    Some(Nearest {
        limit,
        nearest,
        words,
    })
}

/// What to say where every quench is too slow: the slowest quenchant of the list that would harden
/// the section after the soak that comes nearest, of those that do not crack it where there is one.
fn too_slow(run: &FindRun, upstream: &Upstream) -> String {
    let factor = 1.0 / upstream.margin_factor.unwrap_or(1.0).max(f64::MIN_POSITIVE);
    let carbon_wt = upstream.soaked.point.carbon_wt;
    let would_do = shop_media()
        .filter_map(|medium| {
            let margin = margin_in(run, upstream, medium).filter(|margin| *margin >= 1.0)?;
            Some((medium, may_crack(medium, carbon_wt), margin))
        })
        .min_by(|a, b| a.1.cmp(&b.1).then(a.2.total_cmp(&b.2)));
    let help = would_do.map_or_else(
        || texts::NO_QUENCHANT_HARDENS.to_owned(),
        |(medium, cracks, _)| {
            let title = inside_a_sentence(&medium.title.words(run.scale));
            if cracks {
                texts::slowest_that_hardens_and_may_crack(&title)
            } else {
                texts::slowest_that_hardens(&title)
            }
        },
    );
    let slower = format_factor(up(factor, if factor < 10.0 { 0.1 } else { 1.0 }));
    format!("{} {help}", texts::too_slow(&slower))
}

/// The factor by which a quenchant of the list, still, may be slower and still harden the section after a
/// soak; none where the models do not reach.
fn margin_in(run: &FindRun, upstream: &Upstream, medium: &Medium) -> Option<f64> {
    let plan = run.soakings.get(upstream.soaking)?;
    let quench = Quench {
        medium: MediumChoice::Named(medium.name.clone()),
        agitation: 1.0,
        then: Vec::new(),
        ..run.piece.quench.clone()
    };
    let planned = run.taught_in(plan, &quench).unwrap_or_default().off;
    let soak_c = plan.soak.temperature_c + planned.soak_k;
    let (soaked, section) = (&upstream.soaked, run.piece.section);
    let quenched = run.steel.quench(soaked, soak_c, section, &quench, &planned);
    quenched.ok()?.margin_factor()
}

fn too_much_austenite(run: &FindRun, upstream: &Upstream, best: &Choice) -> String {
    let part = most_percent(best.piece.austenite.unwrap_or_default());
    let told = texts::more_austenite(&part);
    if run.colds.len() > 1 {
        return told;
    }
    let tempers = run.tempers.get(best.tempers).map(|plan| plan.all());
    let tempers = tempers.unwrap_or_default();
    let stages = upstream
        .quenched
        .finish(Some(&Cold::FIRST_OFFERED), &tempers, &upstream.off());
    let after = finished_stage(&stages, Some(&Cold::FIRST_OFFERED), &tempers)
        .and_then(|stage| Some(stage.fractions?.austenite));
    match after {
        Some(after) => {
            let bath = format_temperature(Cold::FIRST_OFFERED.temperature_c, run.scale);
            let leaves = texts::cold_bath_leaves(&bath, &most_percent(after));
            format!("{told} {leaves}")
        }
        None => told,
    }
}
