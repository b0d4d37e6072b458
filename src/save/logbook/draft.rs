//! A run as it is being typed: texts, right or wrong. What is wrong is told beside its field and
//! stays typed; the last good value stays in the run.

use super::check::{self, Checked};
use super::{
    After, Day, Done, MOST_READINGS, MOST_USE_TESTS, Reading, Run, RunFieldError, UseTest,
};
use crate::hardness::Scale;
use crate::units::parse_number;
use recalesce_texts::save::run as texts;

/// The texts of a run.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The day.
    pub day: String,
    /// What was really done.
    pub done: Done,
    /// Hardness readings.
    pub readings: Vec<DraftReading>,
    /// Grain by fracture; empty when it is not known.
    pub fracture_grain_astm: String,
    /// Retained austenite in vol %; empty when it is not known.
    pub austenite_vol_percent: String,
    /// What a coupon showed.
    pub coupon: String,
    /// Tests in use.
    pub use_tests: Vec<DraftUseTest>,
    /// Notes.
    pub notes: String,
    next_key: usize,
}

/// The texts of a hardness reading.
#[derive(Debug, Clone, PartialEq)]
pub struct DraftReading {
    /// What tells it from the others of its draft.
    pub key: usize,
    /// The number.
    pub value: String,
    /// Its scale.
    pub scale: Scale,
    /// Where on the piece.
    pub place: String,
    /// After which step.
    pub after: After,
    good: Option<Reading>,
}

/// The texts of a test in use.
#[derive(Debug, Clone, PartialEq)]
pub struct DraftUseTest {
    /// What tells it from the others of its draft.
    pub key: usize,
    /// What was tested.
    pub name: String,
    /// What came out.
    pub value: String,
    /// Its unit.
    pub unit: String,
    good: Option<UseTest>,
}

/// The number of a text.
fn number(text: &str, has_decimal_comma: bool, advice: &str) -> Result<f64, String> {
    parse_number(text, has_decimal_comma).map_err(|doubt| {
        doubt.map_or_else(
            || {
                let shown: String = text.trim().chars().take(20).collect();
                texts::no_number(&shown, advice)
            },
            |doubt| doubt.to_string(),
        )
    })
}

/// A value that may be unknown: none for an empty text.
fn optional(
    text: &str,
    has_decimal_comma: bool,
    advice: &str,
    check: fn(f64) -> Checked,
) -> Result<Option<f64>, String> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let value = number(text, has_decimal_comma, advice)?;
    check(value).map(|()| Some(value))
}

fn text_of(value: Option<f64>) -> String {
    value.map_or_else(String::new, |value| value.to_string())
}

/// The texts of a row that hold nothing at all.
fn is_blank(texts: &[&str]) -> bool {
    texts.iter().all(|text| text.trim().is_empty())
}

impl DraftReading {
    fn read(&self, has_decimal_comma: bool) -> Result<Option<Reading>, String> {
        if is_blank(&[&self.value, &self.place]) {
            return Ok(None);
        }
        let value = number(&self.value, has_decimal_comma, texts::WRITE_READING)?;
        check::hardness(value, self.scale)?;
        check::short(&self.place)?;
        Ok(Some(Reading {
            value,
            scale: self.scale,
            place: self.place.trim().to_owned(),
            after: self.after,
        }))
    }
}

impl DraftUseTest {
    fn read(&self, has_decimal_comma: bool) -> Result<Option<UseTest>, String> {
        if is_blank(&[&self.name, &self.value, &self.unit]) {
            return Ok(None);
        }
        if is_blank(&[&self.name]) {
            return Err(texts::WRITE_TEST.to_owned());
        }
        let value = number(&self.value, has_decimal_comma, texts::WRITE_RESULT)?;
        check::in_use(value)?;
        for text in [&self.name, &self.unit] {
            check::short(text)?;
        }
        Ok(Some(UseTest {
            name: self.name.trim().to_owned(),
            value,
            unit: self.unit.trim().to_owned(),
        }))
    }
}

impl Draft {
    /// The texts of a run as it is.
    #[must_use]
    pub fn of(run: &Run) -> Self {
        let readings: Vec<_> = run
            .readings
            .iter()
            .enumerate()
            .map(|(key, reading)| DraftReading {
                key,
                value: reading.value.to_string(),
                scale: reading.scale,
                place: reading.place.clone(),
                after: reading.after,
                good: Some(reading.clone()),
            })
            .collect();
        let use_tests: Vec<_> = run
            .use_tests
            .iter()
            .enumerate()
            .map(|(key, test)| DraftUseTest {
                key,
                name: test.name.clone(),
                value: test.value.to_string(),
                unit: test.unit.clone(),
                good: Some(test.clone()),
            })
            .collect();
        Self {
            day: run.day.to_string(),
            done: run.done.clone(),
            next_key: readings.len().max(use_tests.len()),
            readings,
            fracture_grain_astm: text_of(run.fracture_grain_astm),
            austenite_vol_percent: text_of(run.austenite_vol_percent),
            coupon: run.coupon.clone(),
            use_tests,
            notes: run.notes.clone(),
        }
    }

    fn key(&mut self) -> usize {
        self.next_key += 1;
        self.next_key
    }

    /// Adds an empty reading, on the scale of the one before it; none where there is no room.
    pub fn add_reading(&mut self, after: After) {
        if self.readings.len() < MOST_READINGS {
            let key = self.key();
            self.readings.push(DraftReading {
                key,
                value: String::new(),
                scale: self.readings.last().map_or(Scale::Hrc, |last| last.scale),
                place: String::new(),
                after: self.readings.last().map_or(after, |last| last.after),
                good: None,
            });
        }
    }

    /// Adds an empty test in use; none where there is no room.
    pub fn add_use_test(&mut self) {
        if self.use_tests.len() < MOST_USE_TESTS {
            let key = self.key();
            self.use_tests.push(DraftUseTest {
                key,
                name: String::new(),
                value: String::new(),
                unit: String::new(),
                good: None,
            });
        }
    }

    /// Puts into a run what is right, and says what is wrong, by the field as the draft has it:
    /// `day`, `readings 3` with the key of the row. Whoever types writes a decimal comma or not.
    pub fn apply(&mut self, run: &mut Run, has_decimal_comma: bool) -> Vec<RunFieldError> {
        let mut faults = Vec::new();
        let mut take = |field: &str, read: Checked| {
            if let Err(message) = read {
                faults.push(RunFieldError {
                    field: field.to_owned(),
                    message,
                });
            }
        };
        take("day", Day::parse(&self.day).map(|day| run.day = day));
        let grain = optional(
            &self.fracture_grain_astm,
            has_decimal_comma,
            texts::WRITE_GRAIN,
            check::grain,
        );
        take(
            "fracture_grain_astm",
            grain.map(|grain| run.fracture_grain_astm = grain),
        );
        let austenite = optional(
            &self.austenite_vol_percent,
            has_decimal_comma,
            texts::WRITE_SHARE,
            check::austenite,
        );
        take(
            "austenite_vol_percent",
            austenite.map(|austenite| run.austenite_vol_percent = austenite),
        );
        for (field, text, place) in [
            ("done.before", &self.done.before, &mut run.done.before),
            ("done.soak", &self.done.soak, &mut run.done.soak),
            ("done.quench", &self.done.quench, &mut run.done.quench),
            ("done.cold", &self.done.cold, &mut run.done.cold),
            ("done.temper", &self.done.temper, &mut run.done.temper),
            ("coupon", &self.coupon, &mut run.coupon),
            ("notes", &self.notes, &mut run.notes),
        ] {
            take(field, check::long(text).map(|()| place.clone_from(text)));
        }
        for row in &mut self.readings {
            let read = row.read(has_decimal_comma).map(|good| row.good = good);
            take(&format!("readings {}", row.key), read);
        }
        for row in &mut self.use_tests {
            let read = row.read(has_decimal_comma).map(|good| row.good = good);
            take(&format!("use_tests {}", row.key), read);
        }
        run.readings = self
            .readings
            .iter()
            .filter_map(|row| row.good.clone())
            .collect();
        run.use_tests = self
            .use_tests
            .iter()
            .filter_map(|row| row.good.clone())
            .collect();
        faults
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Id, check_run};
    use super::*;
    use crate::route::Route;

    fn run() -> Run {
        let id = Id::try_from("1".to_owned()).unwrap();
        Run::of(
            id,
            Day::parse("2026-11-27").unwrap(),
            Route::example(),
            None,
        )
    }

    #[test]
    fn what_is_wrong_is_told_and_the_last_good_value_stays() {
        let mut run = run();
        let mut draft = Draft::of(&run);
        draft.add_reading(After::Temper);
        draft.readings[0].value = "61,5".to_owned();
        draft.fracture_grain_astm = "8".to_owned();
        assert_eq!(draft.apply(&mut run, false), []);
        assert_eq!(run.measured_hrc(), Some(61.5));
        draft.readings[0].value = "615".to_owned();
        draft.fracture_grain_astm = "fine".to_owned();
        draft.day = "soon".to_owned();
        let faults = draft.apply(&mut run, false);
        let fields: Vec<&str> = faults.iter().map(|fault| fault.field.as_str()).collect();
        assert_eq!(fields, ["day", "fracture_grain_astm", "readings 1"]);
        assert_eq!(
            faults[2].message,
            "A reading of 615\u{a0}HRC is outside 0 to 72\u{a0}HRC."
        );
        assert_eq!(run.measured_hrc(), Some(61.5));
        assert_eq!(run.fracture_grain_astm, Some(8.0));
        draft.readings.clear();
        draft.apply(&mut run, false);
        assert_eq!(run.measured_hrc(), None);
        check_run(&run).unwrap();
    }

    #[test]
    fn an_empty_row_is_no_reading_and_a_half_empty_one_is_wrong() {
        let mut run = run();
        let mut draft = Draft::of(&run);
        draft.add_reading(After::Temper);
        draft.add_use_test();
        assert_eq!(draft.apply(&mut run, false), []);
        assert_eq!((run.readings.len(), run.use_tests.len()), (0, 0));
        draft.readings[0].place = "edge".to_owned();
        draft.use_tests[0].value = "120".to_owned();
        assert_eq!(draft.apply(&mut run, false).len(), 2);
        assert_eq!((run.readings.len(), run.use_tests.len()), (0, 0));
    }

    #[test]
    fn a_draft_of_a_run_is_the_run() {
        let mut full = run();
        full.readings.push(Reading {
            value: 780.0,
            scale: Scale::Hv,
            place: "edge".to_owned(),
            after: After::Quench,
        });
        full.use_tests.push(UseTest {
            name: "cuts until it no longer shaves".to_owned(),
            value: 120.0,
            unit: "cuts".to_owned(),
        });
        full.austenite_vol_percent = Some(7.5);
        full.coupon = "65 HRC, velvety".to_owned();
        let mut again = full.clone();
        assert_eq!(Draft::of(&full).apply(&mut again, false), []);
        assert_eq!(again, full);
    }
}
