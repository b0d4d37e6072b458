//! Tempered hardness from the supplier tables of grades that the fitted law does not cover.

use crate::numeric::formula::Number;
use crate::numeric::interpolate::pchip;
use crate::sources::tool_steel_tempering::{GradeTable, HOLLOMON_JAFFE_HOURS, TABLES};
use crate::steel::{Composition, OutOfRange};
use crate::units::NumberOutside;
use recalesce_texts::hardness as texts;

/// The tempering table that holds for this composition, if there is one.
#[must_use]
pub fn grade_table(steel: &Composition) -> Option<&'static GradeTable> {
    const { &TABLES }
        .iter()
        .find(|table| table.range.check(steel).is_ok())
}

/// The Hollomon-Jaffe parameter of a hold: temperature in K, time in h.
pub fn hollomon_jaffe_of<N: Number>(temperature_k: N, time_h: N) -> N {
    temperature_k * (N::constant(HOLLOMON_JAFFE_HOURS) + time_h.log10())
}

/// The temperature, °C, at which a table of tempers of a time, h, has a parameter.
pub fn equivalent_c_of<N: Number>(parameter: N, table_h: N) -> N {
    let n = N::constant;
    parameter / (n(HOLLOMON_JAFFE_HOURS) + table_h.log10()) - n(273.15)
}

/// How far tempering has gone along the Hollomon-Jaffe parameter T (20 + log t), K, t in h.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Parameter {
    pub(super) value: Option<f64>,
}

impl Parameter {
    /// Adds a hold: the time already spent counts as that time at the new temperature which gives
    /// the same parameter.
    pub(super) fn hold(&mut self, temperature_c: f64, time_s: f64) {
        let temperature_k = temperature_c + 273.15;
        let before_h = self.value.map_or(0.0, |value| {
            f64::powf(10.0, value / temperature_k - HOLLOMON_JAFFE_HOURS)
        });
        let hours = before_h + time_s / 3600.0;
        if hours > 0.0 {
            self.value = Some(hollomon_jaffe_of(temperature_k, hours));
        }
    }

    /// Hardness of the table, HRC: none before any temper.
    pub(super) fn hrc(self, table: &GradeTable) -> Result<Option<f64>, OutOfRange> {
        let Some(value) = self.value else {
            return Ok(None);
        };
        let temperature_c = equivalent_c_of(value, table.time_h);
        let (least, largest) = match table.points {
            [first, .., last] => (first[0], last[0]),
            _ => (0.0, 0.0),
        };
        // The inverse of the parameter loses some last digits at the table's ends.
        let held = if (temperature_c - temperature_c.clamp(least, largest)).abs() < 1e-6 {
            temperature_c.clamp(least, largest)
        } else {
            temperature_c
        };
        pchip(table.points, held).map(Some).ok_or(OutOfRange {
            model: table.range.model,
            number: NumberOutside {
                field: texts::ALL_HOLDS_AS_ONE,
                value: temperature_c,
                least,
                most: largest,
                unit: "°C",
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_are_met_at_the_tables_time() {
        for table in &TABLES {
            for &[temperature_c, hrc] in table.points {
                let mut state = Parameter::default();
                state.hold(temperature_c, table.time_h * 3600.0);
                let found = state.hrc(table).unwrap().unwrap();
                assert!((found - hrc).abs() < 1e-6);
            }
        }
    }

    #[test]
    fn two_holds_are_one_of_both_times() {
        let (mut two, mut one) = (Parameter::default(), Parameter::default());
        two.hold(520.0, 3600.0);
        two.hold(520.0, 3600.0);
        one.hold(520.0, 7200.0);
        assert!((two.value.unwrap() - one.value.unwrap()).abs() < 1e-6);
    }
}
