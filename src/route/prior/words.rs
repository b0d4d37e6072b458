//! A step before hardening in sentences: what it does, and what is wrong with it.

use super::forging::{ForgingWindow, forging_window};
use super::state::PieceState;
use super::step::{PriorStep, SlowCooling, Work};
use super::{PriorHeat, PriorOutcome};
use crate::hardness::Hardness;
use crate::heat::MediumChoice;
use crate::phases::UpperLimit;
use crate::route::outcome::Outcome;
use crate::route::plan::Route;
use crate::route::sentence::{Sentence, Tone};
use crate::route::soak_notes::surface_words;
use crate::soak::Network;
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_fixed, format_hrb, format_hv,
    format_percent, format_temperature, format_weight_percent,
};
use recalesce_texts::grammar::inside_a_sentence;
use recalesce_texts::route::prior as texts;

/// Grain from which a step is told to have overheated the piece, ASTM number.
const COARSE_ASTM: f64 = 5.0;
/// Carbide and ferrite that are worth telling, volume fraction.
const WORTH_TELLING: f64 = 0.01;
/// Carbide of which this is left is gone, volume fraction.
const TRACE: f64 = 1e-4;
/// A piece that is all of one kind, volume fraction.
const MOSTLY: f64 = 0.9;
/// From here on the ends of a hardness are told, volume fraction.
const MOSTLY_PEARLITE: f64 = 0.5;

/// The settings of a step in a line: `885 °C, 10 min, still air`.
#[must_use]
pub fn prior_line(step: &PriorStep, scale: TemperatureScale) -> String {
    let degrees = |c: f64| format_temperature(c, scale);
    if let Work::Forge { finish_c, heats } = step.work {
        let start = format_fixed(scale.of_celsius(step.temperature_c), 0);
        return texts::forging(&start, &degrees(finish_c), heats);
    }
    format!(
        "{}, {}, {}",
        degrees(step.temperature_c),
        format_duration_s(60.0 * step.time_min),
        cooling_words(&step.cooling, scale)
    )
}

/// How a step cools, in words that follow "then".
#[must_use]
pub fn cooling_words(cooling: &SlowCooling, scale: TemperatureScale) -> String {
    match cooling {
        SlowCooling::Medium { medium } => match medium {
            MediumChoice::Named(name) if name == "air_still" => texts::STILL_AIR.to_owned(),
            medium => medium.resolve().map_or_else(
                |error| error.words(scale),
                |medium| inside_a_sentence(&medium.title.words(scale)),
            ),
        },
        SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        } => texts::furnace_led_down(
            &degrees_per_hour(*rate_k_per_h, scale),
            &format_temperature(*until_c, scale),
        ),
    }
}

fn degrees_per_hour(rate_k_per_h: f64, scale: TemperatureScale) -> String {
    let rate = rate_k_per_h / scale.to_kelvin_difference(1.0);
    format!("{}\u{a0}{}", format_fixed(rate, 0), scale.symbol())
}

/// Hardness as a shop reads it: HRC above 20, HRB below it, HV where neither scale reaches.
#[must_use]
pub fn soft_hardness_words(state: &PieceState) -> Option<String> {
    state.hardness.map(soft_words)
}

fn soft_words(hardness: Hardness) -> String {
    match (hardness.hrc(), hardness.hrb()) {
        // Its band is several points wide.
        (Some(hrc), _) if hrc >= 20.0 => format!("{}\u{a0}HRC", format_fixed(hrc, 0)),
        (_, Some(hrb)) => format_hrb(hrb),
        _ => format_hv(hardness.hv),
    }
}

/// Both ends of the hardness of a piece that is mostly pearlite, of which little is sure.
fn pearlite_ends(state: &PieceState) -> Option<[String; 2]> {
    let is_pearlite = state
        .fractions
        .is_some_and(|x| x.pearlite > MOSTLY_PEARLITE);
    let hv = state.hardness.filter(|_| is_pearlite)?.hv;
    let ends = [hv - state.band_hv, hv + state.band_hv];
    Some(ends.map(|hv| soft_words(Hardness { hv })))
}

/// What a step does, in the order in which it happens.
#[must_use]
pub fn prior_sentences(
    step: &PriorStep,
    outcome: &PriorOutcome,
    window: &ForgingWindow,
    a1_c: f64,
    (scale, length): (TemperatureScale, LengthUnit),
) -> Vec<Sentence> {
    let say = |tone, text: String| Sentence::new(tone).text_part(text);
    let mut all = Vec::new();
    match &outcome.heated {
        Some(heat) => all.push(say(Tone::Plain, heated_words(heat))),
        None if outcome.state.given().is_some() => all.push(say(
            Tone::Plain,
            texts::below_a1(&format_temperature(a1_c, scale)),
        )),
        None => {}
    }
    match outcome.state.given() {
        Some(state) => all.extend(state_sentences(state)),
        None => {
            let reason = outcome.state.refusal().map(|r| r.words(scale));
            all.push(say(Tone::Narrow, reason.unwrap_or_default()));
        }
    }
    if let Some(skin) = outcome.skin.given() {
        let [decarburised, stock] = surface_words(skin, length);
        all.push(say(Tone::Plain, texts::skin(&decarburised, &stock)));
    }
    all.extend(
        warnings(step, outcome, window, scale)
            .into_iter()
            .map(|text| say(Tone::Narrow, text)),
    );
    all
}

fn heated_words(heat: &PriorHeat) -> String {
    let grain = format_fixed(heat.grain_astm, 0);
    let carbon = format_weight_percent(heat.carbon_wt);
    if heat.ferrite_volume_fraction > WORTH_TELLING {
        let ferrite = format_percent(heat.ferrite_volume_fraction);
        return texts::ferrite_stays(&ferrite, &grain, &carbon);
    }
    if heat.carbide_volume_fraction > WORTH_TELLING {
        let carbide = format_percent(heat.carbide_volume_fraction);
        return texts::carbide_stays(&carbon, &carbide, &grain);
    }
    if heat.carbide_volume_fraction > TRACE {
        return texts::little_carbide_stays(&carbon, &grain);
    }
    texts::all_dissolves(&carbon, &grain)
}

fn state_sentences(state: &PieceState) -> Vec<Sentence> {
    let mut all = Vec::new();
    if let Some(x) = state.fractions {
        let hard = x.martensite + x.austenite;
        let is_round = x.pearlite + x.bainite + hard < 0.1 && x.carbide > WORTH_TELLING;
        let cold = if is_round {
            texts::COLD_ROUND_CARBIDE.to_owned()
        } else if hard > MOSTLY {
            texts::HARDENS_ON_WAY_DOWN.to_owned()
        } else if x.pearlite > MOSTLY {
            pearlite_words(state).to_owned()
        } else {
            let parts = [
                (texts::MARTENSITE_AND_AUSTENITE, hard),
                (texts::BAINITE, x.bainite),
                (texts::PEARLITE, x.pearlite),
                (texts::FERRITE, x.ferrite),
                (texts::CARBIDE, x.carbide),
            ];
            let told: Vec<String> = parts
                .into_iter()
                .filter(|(_, part)| *part > 0.03)
                .map(|(name, part)| texts::part(&format_percent(part), name))
                .collect();
            texts::cold_mixed(&told.join(", "))
        };
        all.push(Sentence::new(Tone::Plain).text_part(with_tools(&cold, state)));
    } else if state.hardness.is_none() {
        all.push(Sentence::new(Tone::Narrow).text_part(texts::NOTHING_KNOWN));
    } else {
        let text = with_tools(texts::HARDENS_IN_AIR, state);
        all.push(Sentence::new(Tone::Narrow).text_part(text));
    }
    match state.network {
        Network::None => {}
        Network::Broken => {
            all.push(Sentence::new(Tone::Plain).text_part(texts::NETWORK_BROKEN));
        }
        Network::Continuous => {
            all.push(Sentence::new(Tone::Narrow).text_part(texts::NETWORK));
        }
    }
    all
}

/// What it is, with its hardness and what cuts it.
fn with_tools(what: &str, state: &PieceState) -> String {
    match (soft_hardness_words(state), state.worked_by()) {
        (Some(hardness), Some(tools)) => match pearlite_ends(state) {
            Some([least, most]) => {
                texts::with_hardness_between(what, &hardness, [&least, &most], tools.words())
            }
            None => texts::with_hardness(what, &hardness, tools.words()),
        },
        _ => texts::without_hardness(what),
    }
}

fn pearlite_words(state: &PieceState) -> &'static str {
    let um = state.structure.carbide_radius_um;
    if um < 0.05 {
        texts::COLD_FINE_PEARLITE
    } else if um < 0.075 {
        texts::COLD_MEDIUM_PEARLITE
    } else {
        texts::COLD_COARSE_PEARLITE
    }
}

/// What is wrong with the steps before hardening of a route, in their order, each with its name.
#[must_use]
pub fn step_cautions(route: &Route, outcome: &Outcome, scale: TemperatureScale) -> Vec<String> {
    let of_steps = cautions_by_step(route, outcome, scale);
    let stays = network_stays(outcome);
    let steps = route.prior.iter().zip(of_steps).enumerate();
    let named = steps.flat_map(|(i, (step, cautions))| {
        let title = step.work.title();
        let network = stays
            .filter(|began| *began == i)
            .map(|_| texts::NETWORK.to_owned());
        cautions
            .into_iter()
            .chain(network)
            .map(move |text| texts::of_step(title, &inside_a_sentence(&text)))
    });
    named.collect()
}

/// The step with which a network of carbide begins that goes into the hardening.
fn network_stays(outcome: &Outcome) -> Option<usize> {
    let whole = |done: &PriorOutcome| {
        let state = done.state.given();
        state.is_some_and(|state| state.network == Network::Continuous)
    };
    let carrying = outcome.prior.iter().rev().take_while(|done| whole(done));
    let count = carrying.count();
    (count > 0).then(|| outcome.prior.len() - count)
}

/// What is wrong with each of the steps before hardening.
pub(in crate::route) fn cautions_by_step(
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
) -> Vec<Vec<String>> {
    let window = forging_window(&route.composition, &outcome.critical);
    let steps = route.prior.iter().zip(&outcome.prior);
    steps
        .map(|(step, done)| {
            let mut all = warnings(step, done, &window, scale);
            let state = done.state.given();
            let has_network = state.is_some_and(|state| state.network == Network::Continuous);
            if let UpperLimit::Acm { temperature_c } = outcome.critical.upper
                && step.work == Work::Normalise
                && step.temperature_c < temperature_c
                && has_network
            {
                let acm = format_temperature(temperature_c, scale);
                all.push(texts::normalised_below_acm(&acm));
            }
            all
        })
        .collect()
}

/// What is wrong with a step, in sentences; nothing where all is well.
fn warnings(
    step: &PriorStep,
    outcome: &PriorOutcome,
    window: &ForgingWindow,
    scale: TemperatureScale,
) -> Vec<String> {
    let degrees = |c: f64| format_temperature(c, scale);
    let mut all = Vec::new();
    if step.temperature_c >= window.burns_c {
        all.push(texts::burns(&degrees(window.burns_c)));
    } else if let Work::Forge { finish_c, .. } = step.work {
        if step.temperature_c > window.start_most_c + ForgingWindow::BAND_K {
            all.push(texts::begin_no_hotter(
                &degrees(window.start_most_c),
                &degrees(window.burns_c),
            ));
        }
        if finish_c < window.finish_least_c - ForgingWindow::BAND_K {
            all.push(texts::stop_hammering(
                &degrees(window.finish_least_c),
                window.lower.words(),
            ));
        }
    }
    match (step.work, &outcome.heated) {
        (Work::Normalise | Work::Refine | Work::SlowAnneal, None)
            if outcome.state.given().is_some() =>
        {
            all.push(texts::TOO_COLD.to_owned());
        }
        (Work::SubcriticalAnneal | Work::StressRelief, Some(_)) => {
            all.push(texts::TOO_HOT.to_owned());
        }
        (Work::Normalise | Work::Refine | Work::SlowAnneal, Some(heat))
            if heat.grain_astm < COARSE_ASTM =>
        {
            all.push(texts::grain_grown(&format_fixed(heat.grain_astm, 0)));
        }
        _ => {}
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{Route, forging_window, run};
    use crate::steel::find;

    fn told(grade: &str, change: impl FnOnce(&mut PriorStep)) -> Vec<String> {
        let mut route = Route::example();
        route.take_handbook(find(grade).unwrap());
        route.prior.truncate(2);
        change(&mut route.prior[1]);
        let outcome = run(&route).unwrap();
        let window = forging_window(&route.composition, &outcome.critical);
        prior_sentences(
            &route.prior[1],
            &outcome.prior[1],
            &window,
            outcome.critical.a1_c,
            (TemperatureScale::Celsius, LengthUnit::Millimetre),
        )
        .iter()
        .map(|sentence| sentence.text().replace('\u{a0}', " "))
        .collect()
    }

    #[test]
    fn a_normalised_bearing_steel() {
        let told = told("52100", |_| {});
        assert!(told[0].contains("goes into solution"), "{told:?}");
        assert!(told[1].contains("fine pearlite"), "{told:?}");
        assert!(told[1].contains("HRC"), "{told:?}");
    }

    /// Textbooks of steel, from memory: what is hypereutectoid is normalised from above Acm, to break its network.
    #[test]
    fn a_normalising_below_acm_leaves_the_network() {
        let told = |temperature_c| {
            let mut route = Route::example();
            route.take_handbook(find("W1").unwrap());
            route.composition.c = 1.25;
            route.prior.truncate(2);
            route.prior[1].temperature_c = temperature_c;
            let outcome = run(&route).unwrap();
            step_cautions(&route, &outcome, TemperatureScale::Celsius).join(" ")
        };
        assert!(
            told(850.0).contains("Normalise: below Acm"),
            "{}",
            told(850.0)
        );
        assert!(!told(950.0).contains("below Acm"), "{}", told(950.0));
    }

    #[test]
    fn mistakes_are_told() {
        let cold = told("1084", |step| step.temperature_c = 690.0);
        assert!(cold.iter().any(|s| s.starts_with("Too cold")), "{cold:?}");
        let hot = told("1095", |step| {
            step.temperature_c = 1100.0;
            step.time_min = 30.0;
        });
        assert!(hot.iter().any(|s| s.contains("grain has grown")), "{hot:?}");
        let slow = told("52100", |step| {
            step.temperature_c = 960.0;
            step.cooling = SlowCooling::Furnace {
                rate_k_per_h: 40.0,
                until_c: 600.0,
            };
        });
        assert!(slow.iter().any(|s| s.contains("network")), "{slow:?}");
        let burnt = told("52100", |step| step.temperature_c = 1245.0);
        assert!(burnt.iter().any(|s| s.contains("burns")), "{burnt:?}");
    }

    #[test]
    fn settings_in_a_line() {
        let route = {
            let mut route = Route::example();
            route.take_handbook(find("52100").unwrap());
            route
        };
        let lines: Vec<String> = route
            .prior
            .iter()
            .map(|step| prior_line(step, TemperatureScale::Celsius).replace('\u{a0}', " "))
            .collect();
        assert_eq!(lines[0], "1110–\u{2060}925 °C, 2 heats");
        assert_eq!(lines[1], "885 °C, 10 min, still air");
    }
}
