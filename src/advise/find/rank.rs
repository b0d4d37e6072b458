//! Routes in order, with the reason for each place; and the trade-off between hardness and
//! toughness.

use super::chance::Weighed;
use super::nearest::Limit;
use super::run::{Choice, FindRun};
use crate::numeric::order;
use crate::route::{Property, Route, Target};
use crate::units::{format_fixed, format_hrc, format_percent};
use recalesce_texts::advise::find::rank as texts;
use recalesce_texts::grammar::inside_a_sentence;
use serde::{Deserialize, Serialize};

/// Routes that are told.
const MOST_ROUTES: usize = 10;
/// Points of the trade-off that are told.
const MOST_TRADE_OFFS: usize = 40;
/// Chances that differ by less count as equal (expert value, as those that follow).
const SAME_CHANCE: f64 = 0.05;
/// Half bands of hardness that differ by less count as equal, HRC.
const SAME_BAND_HRC: f64 = 0.2;
/// Grain numbers, volume fractions of austenite and times, h, that differ by less are not told apart.
const SAME_GRAIN_ASTM: f64 = 0.2;
const SAME_AUSTENITE: f64 = 0.01;
const SAME_TIME_H: f64 = 0.1;

/// A route that was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FoundRoute {
    /// The whole route, as it may be saved.
    pub route: Route,
    /// Hardness after the last step as planned, HRC.
    pub hrc: f64,
    /// Between which nine in ten pieces lie, HRC.
    pub band_hrc: [f64; 2],
    /// Part of the pieces that meet the target and keep to the limits: of those that the models tell,
    /// and those too cold to harden. None where a limit that is set cannot be
    /// checked, or the models reach less than half of them.
    pub chance: Option<f64>,
    /// What the models do not tell of it and was taken as kept: `margin`, and `austenite` where a
    /// limit is set to it.
    pub not_checked: Vec<Limit>,
    /// Factor by which the quench may be slower and still harden; none where the models do not reach.
    pub margin_factor: Option<f64>,
    /// Retained austenite after the last step, volume fraction.
    pub austenite: Option<f64>,
    /// ASTM grain number.
    pub grain_astm: f64,
    /// Points for what the use asks beside hardness: an order, not a quantity.
    pub points: f64,
    /// Time of soak, cold and tempers, h.
    pub time_h: f64,
    /// Whether the quench is so harsh that the piece may crack.
    pub may_crack: bool,
    /// Whether a temper lies in the embrittling range.
    pub embrittles: bool,
    /// Why it stands where it does.
    pub reason: String,
}

/// A route that no other beats in both hardness and toughness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TradeOff {
    /// Hardness after the last step, HRC.
    pub hrc: f64,
    /// Points for toughness: an order, not a quantity.
    pub toughness_points: f64,
    /// As of a route found.
    pub not_checked: Vec<Limit>,
    /// The whole route, as it may be saved.
    pub route: Route,
}

impl FindRun {
    /// The whole route of a choice.
    pub(super) fn route(&self, choice: &Choice) -> Option<Route> {
        let upstream = self.upstreams.get(choice.upstream)?;
        let plan = self.soakings.get(upstream.soaking)?;
        let tempers = self.tempers.get(choice.tempers)?.all();
        Some(Route {
            quench: self.quench_in(upstream.quenchant)?,
            cold: *self.colds.get(choice.cold)?,
            taught: upstream.taught_with(&tempers),
            tempers,
            ..self.piece_in(plan)
        })
    }

    fn points(&self, choice: &Choice) -> f64 {
        choice.piece.points(self.sought.purpose.property())
    }

    fn may_crack(&self, choice: &Choice) -> bool {
        self.upstreams
            .get(choice.upstream)
            .is_some_and(|upstream| upstream.may_crack)
    }

    /// What two choices must differ in to be told as two routes.
    fn kind(&self, choice: &Choice) -> Option<(u64, usize, usize)> {
        let upstream = self.upstreams.get(choice.upstream)?;
        let soak_c = self.soakings.get(upstream.soaking)?.soak.temperature_c;
        Some((soak_c.to_bits(), upstream.quenchant, choice.cold))
    }
}

/// Sound quenches and tempers first; then by chance, in steps; then by what the use asks for; then
/// the shorter.
pub(super) fn ranked(run: &FindRun, weighed: &[Weighed]) -> Vec<FoundRoute> {
    let mut order: Vec<&Weighed> = weighed.iter().collect();
    // Without a chance comes after every chance.
    let step = |weighed: &Weighed| {
        weighed
            .chance
            .map_or(-1.0, |part| (part / SAME_CHANCE).round())
    };
    order::sort_by(&mut order, |a, b| {
        let (one, other) = (&a.choice, &b.choice);
        run.may_crack(one)
            .cmp(&run.may_crack(other))
            .then(one.piece.is_embrittled.cmp(&other.piece.is_embrittled))
            .then(step(b).total_cmp(&step(a)))
            .then(run.points(other).total_cmp(&run.points(one)))
            .then(one.time_min.total_cmp(&other.time_min))
    });
    let mut kinds = Vec::new();
    let mut told: Vec<FoundRoute> = Vec::new();
    let best = order.first().copied();
    for weighed in &order {
        let Some(kind) = run
            .kind(&weighed.choice)
            .filter(|kind| !kinds.contains(kind))
        else {
            continue;
        };
        kinds.push(kind);
        told.extend(best.and_then(|best| found(run, weighed, best)));
        if told.len() == MOST_ROUTES {
            break;
        }
    }
    told
}

fn found(run: &FindRun, weighed: &Weighed, best: &Weighed) -> Option<FoundRoute> {
    let choice = &weighed.choice;
    let mut told = vec![reason(run, weighed, best)];
    told.extend(not_checked_words(&run.not_checked(choice)).map(str::to_owned));
    Some(FoundRoute {
        route: run.route(choice)?,
        hrc: choice.hrc,
        band_hrc: weighed.band_hrc,
        chance: weighed.chance,
        not_checked: run.not_checked(choice),
        margin_factor: run.upstreams.get(choice.upstream)?.margin_factor,
        austenite: choice.piece.austenite,
        grain_astm: choice.piece.grain_astm,
        points: run.points(choice),
        time_h: choice.time_min / 60.0,
        may_crack: run.may_crack(choice),
        embrittles: choice.piece.is_embrittled,
        reason: told.join(" "),
    })
}

/// Why a route stands where it does, against the best.
fn reason(run: &FindRun, weighed: &Weighed, best: &Weighed) -> String {
    let Some(part) = weighed.chance else {
        return texts::CHANCE_NOT_TOLD.to_owned();
    };
    let chance = format_percent(part);
    let (one, other) = (&weighed.choice, &best.choice);
    if weighed == best {
        let target = run.sought.target;
        let told = texts::best_chance(&range_words(&target), &chance);
        return match (run.may_crack(one), one.piece.is_embrittled) {
            (true, _) => format!("{} {told}", texts::ALL_MAY_CRACK),
            (false, true) => format!("{} {told}", texts::ALL_EMBRITTLE),
            (false, false) => told,
        };
    }
    if run.may_crack(one) && !run.may_crack(other) {
        return texts::may_crack(&chance);
    }
    if one.piece.is_embrittled && !other.piece.is_embrittled {
        return texts::embrittles(&chance);
    }
    if let Some(most) = best.chance
        && most - part >= SAME_CHANCE
    {
        let cause = less_likely(run, weighed, best);
        return texts::less_likely(&chance, &format_percent(most), &cause);
    }
    let less = less_fit(one, other).unwrap_or_else(|| {
        let property = inside_a_sentence(run.sought.purpose.property().name());
        texts::behind_in(&property)
    });
    texts::about_as_likely(&chance, &less)
}

/// What was taken as kept, after the reason; none where all was checked.
fn not_checked_words(limits: &[Limit]) -> Option<&'static str> {
    let of = |limit| limits.contains(&limit);
    match (of(Limit::Margin), of(Limit::Austenite)) {
        (true, true) => Some(texts::NEITHER_CHECKED),
        (true, false) => Some(texts::MARGIN_NOT_CHECKED),
        (false, true) => Some(texts::AUSTENITE_NOT_CHECKED),
        (false, false) => None,
    }
}

/// A hardness range, with a decimal only where it has one.
fn range_words(target: &Target) -> String {
    let (least, most) = (target.least_hrc, target.most_hrc);
    let decimals = usize::from(least.fract() != 0.0 || most.fract() != 0.0);
    texts::target(
        &format_fixed(least, decimals),
        &format_fixed(most, decimals),
    )
}

fn less_likely(run: &FindRun, weighed: &Weighed, best: &Weighed) -> String {
    let half = |weighed: &Weighed| 0.5 * (weighed.band_hrc[1] - weighed.band_hrc[0]);
    if half(weighed) > half(best) + SAME_BAND_HRC {
        return texts::spreads_wider(&format_hrc(half(weighed)), &format_fixed(half(best), 1));
    }
    let middle = |weighed: &Weighed| f64::midpoint(weighed.band_hrc[0], weighed.band_hrc[1]);
    let target = run.sought.target;
    let wanted = f64::midpoint(target.least_hrc, target.most_hrc);
    if (middle(weighed) - wanted).abs() > (middle(best) - wanted).abs() + SAME_BAND_HRC {
        return texts::off_the_middle(&format_hrc(middle(weighed)));
    }
    let limits = &run.sought.limits;
    if limits.most_austenite.is_some() || limits.least_grain_astm.is_some() {
        texts::MISSES_A_LIMIT.to_owned()
    } else {
        texts::SPREAD_AND_DISTANCE.to_owned()
    }
}

/// What speaks most plainly against a choice beside its hardness, if any one thing does.
fn less_fit(one: &Choice, other: &Choice) -> Option<String> {
    let [grain, other_grain] = [one, other].map(|choice| choice.piece.grain_astm);
    if grain < other_grain - SAME_GRAIN_ASTM {
        return Some(texts::coarser_grain(
            &format_fixed(grain, 1),
            &format_fixed(other_grain, 1),
        ));
    }
    if let (Some(austenite), Some(other_austenite)) = (one.piece.austenite, other.piece.austenite)
        && austenite > other_austenite + SAME_AUSTENITE
    {
        return Some(texts::more_austenite(
            &format_percent(austenite),
            &format_percent(other_austenite),
        ));
    }
    let [time_h, other_h] = [one, other].map(|choice| choice.time_min / 60.0);
    (time_h > other_h + SAME_TIME_H)
        .then(|| texts::longer(&format_fixed(time_h, 1), &format_fixed(other_h, 1)))
}

/// The choices that none other beats in both hardness and toughness.
pub(super) fn trade_off(run: &FindRun) -> Vec<TradeOff> {
    let toughness = |choice: &Choice| choice.piece.points(Property::Toughness);
    let sound = |choice: &&Choice| run.keeps_to_limits(choice) && !run.may_crack(choice);
    let mut order: Vec<&Choice> = run.choices.iter().filter(sound).collect();
    order::sort_by(&mut order, |a, b| {
        b.hrc
            .total_cmp(&a.hrc)
            .then(toughness(b).total_cmp(&toughness(a)))
    });
    let mut front: Vec<&Choice> = Vec::new();
    for choice in order {
        if front
            .last()
            .is_none_or(|last| toughness(choice) > toughness(last))
        {
            front.push(choice);
        }
    }
    let every = front.len().div_ceil(MOST_TRADE_OFFS).max(1);
    let told = front.iter().step_by(every).filter_map(|choice| {
        Some(TradeOff {
            hrc: choice.hrc,
            toughness_points: toughness(choice),
            not_checked: run.not_checked(choice),
            route: run.route(choice)?,
        })
    });
    told.collect()
}
