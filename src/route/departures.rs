//! Where a route departs from the handbook's practice for its grade.

use super::plan::Route;
use super::prior::Work;
use super::quench_class;
use crate::phases::critical_temperatures;
use crate::steel::{Entry, Grade};
use crate::units::{TemperatureScale, format_duration_s, format_temperature};
use recalesce_texts::route::departures as texts;

/// A setting that lies outside the handbook's range for the grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Departure {
    /// Which setting.
    pub of: Setting,
    /// What the handbook has.
    pub handbook: Handbook,
}

/// What a handbook has for a setting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Handbook {
    /// Least and largest, °C or, for a time, min.
    Between(f64, f64),
    /// The quench class, in its words.
    Class(&'static str),
}

/// A setting of a route that handbooks give a range for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Setting {
    /// Temperature of a step before hardening, counted from zero.
    Prior(usize),
    /// Finishing temperature of a forging, counted from zero.
    Finish(usize),
    /// Soak temperature.
    SoakTemperature,
    /// Soak time.
    SoakTime,
    /// The first quenchant.
    Quenchant,
    /// Temperature of a temper, counted from zero.
    Temper(usize),
}

impl Departure {
    /// The handbook's range in words.
    #[must_use]
    pub fn words(&self, scale: TemperatureScale) -> String {
        let shown = |value: f64| match self.of {
            Setting::SoakTime => format_duration_s(60.0 * value),
            _ => format_temperature(value, scale),
        };
        match self.handbook {
            Handbook::Class(class) => texts::handbook(&class_words(class, scale)),
            Handbook::Between(least, most) if least >= most => texts::handbook(&shown(least)),
            Handbook::Between(least, most) => texts::handbook_range(&shown(least), &shown(most)),
        }
    }
}

/// A class of quenchants as handbooks write it, with a temperature that one gives on a scale.
fn class_words(class: &str, scale: TemperatureScale) -> String {
    let told = || {
        let (before, rest) = class.split_once("<=")?;
        let (number, after) = rest.split_once(" C")?;
        // Read as a whole number: reading of decimals weighs more than all of this.
        let most_c: u16 = number.parse().ok()?;
        let most = format_temperature(f64::from(most_c), scale);
        Some(texts::up_to(before, &most, after))
    };
    told().unwrap_or_else(|| class.to_owned())
}

/// Where a route departs from the handbook's practice for its grade, in the order of the route.
/// Nothing for a steel of no grade, and where the handbook gives no range.
#[must_use]
pub fn departures(route: &Route) -> Vec<Departure> {
    let Some(grade) = route.listed_grade() else {
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut check = |of, value, entry| found.extend(departure(of, value, entry));
    for (i, step) in route.prior.iter().enumerate() {
        let of = Setting::Prior(i);
        match step.work {
            Work::Forge { finish_c, .. } => {
                check(of, step.temperature_c, &grade.forge_c);
                check(Setting::Finish(i), finish_c, &grade.forge_c);
            }
            Work::Normalise => check(of, step.temperature_c, &grade.normalise_c),
            Work::SlowAnneal => check(of, step.temperature_c, &grade.anneal_c),
            // The anneal of a handbook is the one below A1 where it lies there.
            Work::SubcriticalAnneal if anneals_below_a1(grade) => {
                check(of, step.temperature_c, &grade.anneal_c);
            }
            Work::Refine | Work::SubcriticalAnneal | Work::StressRelief => {}
        }
    }
    let soak = route.soak;
    check(
        Setting::SoakTemperature,
        soak.temperature_c,
        &grade.austenitise_c,
    );
    check(Setting::SoakTime, soak.time_min, &grade.soak_min);
    found.extend(from_quench_on(route, grade));
    found
}

/// Where the quenchant and the tempers depart.
fn from_quench_on(route: &Route, grade: &'static Grade) -> Vec<Departure> {
    let class = grade.quench_class.as_str();
    let medium = route.quench.medium.resolve().ok();
    let departs = medium.is_some_and(|medium| !quench_class::names(class, medium.family));
    let quenchant = departs.then_some(Departure {
        of: Setting::Quenchant,
        handbook: Handbook::Class(class),
    });
    let tempers = route.tempers.iter().enumerate();
    tempers
        .filter_map(|(i, temper)| {
            departure(Setting::Temper(i), temper.temperature_c, &grade.temper_c)
        })
        .chain(quenchant)
        .collect()
}

/// Whether a setting departs from an entry of the handbook.
fn departure(of: Setting, value: f64, entry: &Entry) -> Option<Departure> {
    /// A single temperature of a handbook stands for so much either way, K.
    const ABOUT_K: f64 = 15.0;
    let (least, most) = entry.span?;
    let about = if least < most || of == Setting::SoakTime {
        0.0
    } else {
        ABOUT_K
    };
    (!(least - about..=most + about).contains(&value)).then_some(Departure {
        of,
        handbook: Handbook::Between(least, most),
    })
}

fn anneals_below_a1(grade: &Grade) -> bool {
    let critical = critical_temperatures(&grade.nominal).ok();
    critical
        .zip(grade.anneal_c.span)
        .is_some_and(|(critical, (_, most_c))| most_c <= critical.a1_c)
}

/// Where the quenchant and the tempers of a route depart from the handbook, in lines.
#[must_use]
pub fn departure_lines(route: &Route, scale: TemperatureScale) -> Vec<String> {
    let Some(grade) = route.listed_grade() else {
        return Vec::new();
    };
    from_quench_on(route, grade)
        .iter()
        .filter_map(|departure| {
            let step = match departure.of {
                Setting::Quenchant => texts::QUENCH.to_owned(),
                Setting::Temper(i) => texts::temper(i + 1),
                _ => return None,
            };
            Some(texts::departs(&step, &departure.words(scale)))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::MediumChoice;
    use crate::route::PriorStep;
    use crate::steel::find;

    #[test]
    fn what_goes_beyond_is_told() {
        let mut route = Route::example();
        route.take_handbook(find("52100").unwrap());
        route.soak.temperature_c = 900.0;
        route.prior[1].temperature_c = 950.0;
        let told: Vec<String> = departures(&route)
            .iter()
            .map(|d| d.words(TemperatureScale::Celsius).replace('\u{a0}', " "))
            .collect();
        assert_eq!(told, ["handbook: 885 °C", "handbook: 800 °C to 845 °C"]);
        route.quench.medium = MediumChoice::Named("water20".to_owned());
        route.tempers[1].temperature_c = 420.0;
        let lines = departure_lines(&route, TemperatureScale::Celsius).join(" ");
        assert_eq!(
            lines.replace('\u{a0}', " "),
            "Temper 2 departs from the handbook: 150 °C to 230 °C. \
             Quench departs from the handbook: oil (up to 150 °C bath: martensite)."
        );
        let quench = departure_lines(&route, TemperatureScale::Fahrenheit).pop();
        assert!(quench.unwrap().contains("up to 302\u{a0}°F bath"));
        route.grade = None;
        assert_eq!(departures(&route), []);
    }

    /// Handbooks anneal 80CrV2 below A1, and O1 above it.
    #[test]
    fn an_anneal_below_a1_departs_where_the_handbook_has_one() {
        let departs = |grade: &str| {
            let mut route = Route::example();
            route.take_handbook(find(grade).unwrap());
            route.prior = vec![PriorStep::first_offered(Work::SubcriticalAnneal, 660.0)];
            departures(&route).iter().any(|d| d.of == Setting::Prior(0))
        };
        assert!(departs("80CrV2") && !departs("O1"));
    }
}
