//! Two runs side by side.

use super::Run;
use crate::route::{place_name, route_lines};
use crate::units::{LengthUnit, TemperatureScale, format_fixed};
use recalesce_texts::save::run as texts;

/// A thing that two runs have, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beside {
    /// What it is.
    pub name: String,
    /// Of the one and the other run; a dash where it has none.
    pub texts: [String; 2],
}

impl Beside {
    /// Whether the two differ.
    #[must_use]
    pub fn differs(&self) -> bool {
        let [one, other] = &self.texts;
        one != other
    }
}

/// Two runs side by side: what differs first, each part in the order of the work. What neither has is
/// left out.
#[must_use]
pub fn beside(runs: [&Run; 2], scale: TemperatureScale, length: LengthUnit) -> Vec<Beside> {
    let [one, other] = runs.map(|run| lines(run, scale, length));
    let mut names: Vec<String> = Vec::new();
    for (name, _) in one.iter().chain(&other) {
        if !names.contains(name) {
            names.push(name.clone());
        }
    }
    let text_of = |lines: &[(String, String)], name: &str| {
        let found = lines
            .iter()
            .find(|(of, text)| of == name && !text.is_empty());
        found.map_or_else(|| "–".to_owned(), |(_, text)| text.clone())
    };
    let all = names.into_iter().map(|name| Beside {
        texts: [&one, &other].map(|lines| text_of(lines, &name)),
        name,
    });
    let told = all.filter(|row| row.texts.iter().any(|text| text != "–"));
    let (mut differing, alike): (Vec<_>, Vec<_>) = told.partition(Beside::differs);
    differing.extend(alike);
    differing
}

/// What a run has, by name.
fn lines(run: &Run, scale: TemperatureScale, length: LengthUnit) -> Vec<(String, String)> {
    let route = &run.route;
    let hrc = |hrc: Option<f64>| hrc.map_or_else(String::new, |hrc| format_fixed(hrc, 1));
    let joined = |all: Vec<String>| all.join("; ");
    let readings = run.readings.iter().map(|reading| {
        format!(
            "{} {} {} {}",
            format_fixed(reading.value, 1),
            reading.scale.symbol(),
            reading.place,
            reading.after.words()
        )
    });
    let compared = run.compared_first();
    let planned = route_lines(route, scale, length);
    let head = [
        (texts::DAY, run.day.to_string()),
        (texts::PIECE, route.piece.clone()),
    ];
    let made = [
        (texts::PREDICTED, hrc(compared.map(|at| at.predicted.hrc))),
        (
            texts::PREDICTED_AT,
            compared
                .and_then(|at| at.predicted.place)
                .map_or_else(String::new, |place| place_name(place).to_owned()),
        ),
        (
            texts::PREDICTED_AS_TAUGHT,
            match &run.predicted {
                Some(predicted) if predicted.is_taught => texts::YES.to_owned(),
                Some(_) => texts::NO.to_owned(),
                None => String::new(),
            },
        ),
        (texts::MEASURED, hrc(run.measured_hrc())),
        (texts::DIFFERENCE, hrc(run.difference_hrc())),
        (texts::READINGS, joined(readings.collect())),
        (texts::GRAIN, hrc(run.fracture_grain_astm)),
        (texts::AUSTENITE, hrc(run.austenite_vol_percent)),
        (texts::COUPON, run.coupon.clone()),
        (texts::BEFORE_DONE, run.done.before.clone()),
        (texts::SOAK_DONE, run.done.soak.clone()),
        (texts::QUENCH_DONE, run.done.quench.clone()),
        (texts::COLD_AND_TEMPER_DONE, {
            let done = [&run.done.cold, &run.done.temper];
            let written = done.into_iter().filter(|text| !text.is_empty());
            joined(written.cloned().collect())
        }),
        (texts::NOTES, run.notes.clone()),
    ];
    let in_use = run.use_tests.iter().map(|test| {
        let result = format!("{} {}", test.value, test.unit);
        (test.name.clone(), result.trim().to_owned())
    });
    head.into_iter()
        .chain(planned)
        .chain(made)
        .map(|(name, text)| (name.to_owned(), text))
        .chain(in_use)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::{Day, Id, UseTest};
    use super::*;
    use crate::route::Route;

    #[test]
    fn what_differs_stands_first_and_what_neither_has_nowhere() {
        let id = Id::try_from("1".to_owned()).unwrap();
        let day = Day::parse("2026-11-27").unwrap();
        let one = Run::of(id, day, Route::example(), None);
        let mut other = one.clone();
        other.route.soak.temperature_c = 845.0;
        other.coupon = "65 HRC, velvety".to_owned();
        other.use_tests.push(UseTest {
            name: "brass rod".to_owned(),
            value: 12.0,
            unit: "strokes".to_owned(),
        });
        let units = (TemperatureScale::Celsius, LengthUnit::Millimetre);
        let rows = beside([&one, &other], units.0, units.1);
        let differing: Vec<&str> = rows
            .iter()
            .take_while(|row| row.differs())
            .map(|row| row.name.as_str())
            .collect();
        assert_eq!(differing, ["Soak", "Coupon", "brass rod"]);
        assert!(rows[3..].iter().all(|row| !row.differs()));
        assert_eq!(rows[1].texts, ["–", "65 HRC, velvety"]);
        assert!(rows.iter().all(|row| row.name != "Notes"));
        let same = beside([&one, &one], units.0, units.1);
        assert!(same.iter().all(|row| !row.differs()));
    }
}
