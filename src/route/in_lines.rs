//! What a route decides, line by line: two of them can be read side by side.

use super::furnace::Thermocouple;
use super::plan::{NextBath, Quench, Route, Temper};
use super::prior::prior_line;
use crate::heat::{Grind, Leave, MediumChoice, Section};
use crate::steel::{Composition, Element};
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_factor, format_fixed,
    format_given_length, format_temperature, format_temperature_band,
    format_temperature_difference,
};
use recalesce_texts::route::{in_lines as texts, plan as plan_texts, prior as prior_texts};

/// What a route decides, each with its name, in the order of the work. Every route has the same lines;
/// that of what it does without is empty.
#[must_use]
pub fn route_lines(
    route: &Route,
    scale: TemperatureScale,
    length: LengthUnit,
) -> Vec<(&'static str, String)> {
    // Every field by name, so that a new one is not forgotten.
    let Route {
        piece: _,
        grade,
        composition,
        end_quench,
        start,
        prior,
        section,
        furnace_band_k: _,
        thermocouple: _,
        furnace_offset_k: _,
        soak,
        quench,
        cold,
        tempers,
        target,
        seed: _,
        taught: _,
    } = route;
    let cold = cold.as_ref();
    let held = |temper: &Temper| held_words(temper.temperature_c, temper.time_min, scale);
    let prior = prior
        .iter()
        .map(|step| prior_texts::step(step.work.title(), &prior_line(step, scale)));
    vec![
        (
            texts::STEEL,
            grade
                .clone()
                .unwrap_or_else(|| plan_texts::OWN_STEEL.to_owned()),
        ),
        (texts::COMPOSITION, composition_words(composition)),
        (
            texts::END_QUENCH,
            joined(end_quench.iter().map(|point| {
                let place = format_given_length(point.distance_mm, length);
                texts::bar_point(&format_fixed(point.hrc, 1), &place)
            })),
        ),
        (texts::STOCK, start.title().to_owned()),
        (texts::STEPS_BEFORE, joined(prior)),
        (texts::SECTION, section_words(section, length)),
        (texts::FURNACE, furnace_words(route, scale)),
        (
            texts::SOAK,
            held_words(soak.temperature_c, soak.time_min, scale),
        ),
        (texts::IN_AIR, format_duration_s(quench.air_delay_s)),
        (
            texts::QUENCH,
            bath_words(&quench.medium, quench.agitation, scale),
        ),
        (
            texts::LATER_BATHS,
            joined(quench.then.iter().map(|next| next_words(next, scale))),
        ),
        (texts::QUENCHED_TO, end_words(quench, scale)),
        (
            texts::SNAP_TEMPER,
            joined(
                cold.and_then(|cold| cold.snap.as_ref())
                    .into_iter()
                    .map(held),
            ),
        ),
        (
            texts::COLD,
            joined(cold.into_iter().map(|cold| {
                let bath = held_words(cold.temperature_c, cold.time_min, scale);
                let wait = format_duration_s(60.0 * cold.delay_min);
                texts::chilled(&bath, &wait)
            })),
        ),
        (texts::TEMPERS, joined(tempers.iter().map(held))),
        (
            texts::TARGET,
            texts::target(
                &format_fixed(target.least_hrc, 1),
                &format_fixed(target.most_hrc, 1),
            ),
        ),
    ]
}

/// Texts of one line.
fn joined(texts: impl Iterator<Item = String>) -> String {
    texts.collect::<Vec<_>>().join("; ")
}

/// A temperature and the time at it.
fn held_words(temperature_c: f64, time_min: f64, scale: TemperatureScale) -> String {
    let time = format_duration_s(60.0 * time_min);
    format!("{}, {time}", format_temperature(temperature_c, scale))
}

fn composition_words(steel: &Composition) -> String {
    joined(Element::ALL.into_iter().filter_map(|element| {
        let wt = steel.get(element);
        let decimals = if wt < 0.1 { 3 } else { 2 };
        (wt > 0.0).then(|| format!("{} {}", element.symbol(), format_fixed(wt, decimals)))
    }))
}

fn section_words(section: &Section, unit: LengthUnit) -> String {
    let length = |mm: f64| format_given_length(mm, unit);
    match *section {
        Section::Plate { thickness_mm } => texts::flat(&length(thickness_mm)),
        Section::Round { diameter_mm } => plan_texts::round(&length(diameter_mm)),
        Section::Square { side_mm } => plan_texts::square(&length(side_mm)),
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            grind,
        } => {
            let blade = texts::blade(&length(edge_mm), &length(spine_mm), &length(height_mm));
            match grind {
                Grind::Straight => blade,
                Grind::Convex => texts::convex(&blade),
            }
        }
    }
}

fn furnace_words(route: &Route, scale: TemperatureScale) -> String {
    let thermocouple = match route.thermocouple {
        Thermocouple::Checked => texts::THERMOCOUPLE_CHECKED,
        Thermocouple::TypeKClass1 => texts::TYPE_K_CLASS_1,
        Thermocouple::TypeKClass2 => texts::TYPE_K_CLASS_2,
    };
    let offset_k = route.furnace_offset_k;
    let band = format_temperature_band(route.furnace_band_k, scale);
    if offset_k == 0.0 {
        return texts::furnace(&band, thermocouple);
    }
    let off = format_temperature_difference(offset_k, scale);
    texts::furnace_off(&band, thermocouple, &off)
}

/// A quenchant with its bath, and how it is stirred.
fn bath_words(choice: &MediumChoice, agitation: f64, scale: TemperatureScale) -> String {
    let medium = match choice.resolve() {
        Ok(medium) => medium,
        Err(error) => return error.words(scale),
    };
    let mut words = medium.title.words(scale);
    if !medium.title.names_bath() {
        words = plan_texts::medium_at(&words, &format_temperature(medium.bath_c, scale));
    }
    if (agitation - 1.0).abs() > f64::EPSILON {
        words = texts::stirred(&words, &format_factor(agitation));
    }
    words
}

fn next_words(next: &NextBath, scale: TemperatureScale) -> String {
    let bath = bath_words(&next.medium, next.agitation, scale);
    match next.leave {
        Leave::AfterS(stay_s) => texts::after(&format_duration_s(stay_s), &bath),
        Leave::AtC(c) => texts::at(&format_temperature(c, scale), &bath),
    }
}

fn end_words(quench: &Quench, scale: TemperatureScale) -> String {
    format_temperature(quench.end_c, scale)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::{Cold, PriorStep, Soak, Work};

    const UNITS: (TemperatureScale, LengthUnit) =
        (TemperatureScale::Celsius, LengthUnit::Millimetre);

    fn differing(other: &Route) -> Vec<&'static str> {
        let example = Route::example();
        let [one, other] = [&example, other].map(|route| route_lines(route, UNITS.0, UNITS.1));
        let pairs = one.into_iter().zip(other);
        pairs
            .filter(|(one, other)| one != other)
            .map(|(one, _)| one.0)
            .collect()
    }

    /// Each part of a route has its line; the name of the piece and the seed of its samples have none.
    #[test]
    fn each_decision_has_its_line() {
        let changed = |change: fn(&mut Route)| {
            let mut route = Route::example();
            change(&mut route);
            differing(&route)
        };
        assert_eq!(differing(&Route::example()), Vec::<&str>::new());
        assert_eq!(changed(|r| r.grade = None), ["Steel"]);
        assert_eq!(changed(|r| r.composition.cr = 1.2), ["Composition, wt %"]);
        let bar = |r: &mut Route| {
            r.end_quench = vec![crate::transform::BarPoint {
                distance_mm: 9.0,
                hrc: 50.0,
            }];
        };
        assert_eq!(changed(bar), ["End-quench test of the heat"]);
        assert_eq!(
            changed(|r| r.start = crate::soak::StartingStructure::FinePearlite),
            ["Structure of the stock"]
        );
        assert_eq!(
            changed(|r| r.prior = vec![PriorStep::first_offered(Work::Normalise, 750.0)]),
            ["Steps before"]
        );
        assert_eq!(
            changed(|r| r.section = Section::Round { diameter_mm: 8.0 }),
            ["Section"]
        );
        assert_eq!(changed(|r| r.furnace_band_k = 3.0), ["Furnace"]);
        assert_eq!(changed(|r| r.furnace_offset_k = -4.0), ["Furnace"]);
        assert_eq!(
            changed(|r| r.thermocouple = Thermocouple::TypeKClass2),
            ["Furnace"]
        );
        assert_eq!(
            changed(|r| r.soak = Soak {
                temperature_c: 801.0,
                ..r.soak
            }),
            ["Soak"]
        );
        assert_eq!(
            changed(|r| r.quench.air_delay_s = 3.0),
            ["In air before the bath"]
        );
        assert_eq!(changed(|r| r.quench.agitation = 2.0), ["Quench"]);
        assert_eq!(changed(|r| r.quench.end_c = 65.0), ["Quenched to"]);
        let second = |r: &mut Route| {
            r.quench.then = vec![NextBath {
                leave: Leave::AfterS(4.0),
                medium: MediumChoice::Named("air_still".to_owned()),
                agitation: 1.0,
            }];
        };
        assert_eq!(changed(second), ["Baths after it"]);
        let cold = |r: &mut Route| {
            r.cold = Some(Cold {
                temperature_c: -80.0,
                time_min: 60.0,
                delay_min: 10.0,
                snap: Some(Temper {
                    temperature_c: 150.0,
                    time_min: 60.0,
                }),
            });
        };
        assert_eq!(changed(cold), ["Snap temper", "Cold"]);
        assert_eq!(changed(|r| r.tempers.clear()), ["Tempers"]);
        assert_eq!(
            changed(|r| r.target.most_hrc = 66.0),
            ["Hardness asked for"]
        );
    }
}
