//! Axes: sanitised ranges, the way between values and fractions, ticks a person would choose.

use super::numbers;

/// How values are spread along an axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spread {
    /// Equal steps for equal differences.
    Linear,
    /// Equal steps for equal ratios, base ten.
    Log10,
}

/// A range of values with its spread. Always finite, never empty, low below high.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Axis {
    spread: Spread,
    low: f64,
    high: f64,
}

/// A labelled place on an axis, in the axis' own unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// Where the tick sits.
    pub value: f64,
    /// What stands beside it.
    pub label: String,
}

/// How an axis' values are shown: `shown = slope · value + offset`, such as °C shown in °F.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    slope: f64,
    offset: f64,
}

impl Shown {
    /// Shown as they are.
    pub const SAME: Self = Self {
        slope: 1.0,
        offset: 0.0,
    };

    /// From a converter that is a straight line; anything else is shown as it is.
    pub fn by(convert: fn(f64) -> f64) -> Self {
        let offset = convert(0.0);
        let slope = convert(1.0) - offset;
        if slope.is_finite() && slope.abs() > 1e-9 && offset.is_finite() {
            Self { slope, offset }
        } else {
            Self::SAME
        }
    }

    fn to(self, value: f64) -> f64 {
        self.slope * value + self.offset
    }

    fn back(self, shown: f64) -> f64 {
        (shown - self.offset) / self.slope
    }
}

impl Axis {
    /// A linear axis. Ends that are not finite become 0 and 1; swapped ends are put in order; a
    /// range too narrow to divide is widened about its middle.
    pub fn linear(low: f64, high: f64) -> Self {
        let low = if low.is_finite() {
            low.clamp(-1e12, 1e12)
        } else {
            0.0
        };
        let high = if high.is_finite() {
            high.clamp(-1e12, 1e12)
        } else {
            low + 1.0
        };
        let (low, high) = if low <= high {
            (low, high)
        } else {
            (high, low)
        };
        let least = 1e-6 * low.abs().max(high.abs()).max(1e-3);
        let pad = if high - low < least {
            (0.5 * (low.abs().max(high.abs()) * 0.1)).max(0.5)
        } else {
            0.0
        };
        Self {
            spread: Spread::Linear,
            low: low - pad,
            high: high + pad,
        }
    }

    /// A logarithmic axis. Ends that are not finite and above 0 become 0.1 and ten times the low
    /// end; swapped ends are put in order; the range is at least a factor of two.
    pub fn log10(low: f64, high: f64) -> Self {
        let usable = |end: f64| (end.is_finite() && end > 0.0).then(|| end.clamp(1e-12, 1e12));
        let low = usable(low).unwrap_or(0.1);
        let high = usable(high).unwrap_or(10.0 * low);
        let (low, high) = if low <= high {
            (low, high)
        } else {
            (high, low)
        };
        let high = if high < 2.0 * low { 10.0 * low } else { high };
        Self {
            spread: Spread::Log10,
            low,
            high,
        }
    }

    /// Low end.
    pub fn low(&self) -> f64 {
        self.low
    }

    /// High end.
    pub fn high(&self) -> f64 {
        self.high
    }

    /// How values are spread.
    pub fn spread(&self) -> Spread {
        self.spread
    }

    /// The value held between the two ends; the low end for a value that is not a number.
    pub fn hold(&self, value: f64) -> f64 {
        if value.is_nan() {
            self.low
        } else {
            value.clamp(self.low, self.high)
        }
    }

    /// Where a value lies: 0 at the low end, 1 at the high end, beyond that outside. Not finite
    /// for a value that has no place (not a number; zero or less on a logarithmic axis).
    pub fn fraction(&self, value: f64) -> f64 {
        match self.spread {
            Spread::Linear => (value - self.low) / (self.high - self.low),
            Spread::Log10 if value > 0.0 => (value / self.low).ln() / (self.high / self.low).ln(),
            Spread::Log10 => f64::NAN,
        }
    }

    /// The value at a fraction: inverse of [`Axis::fraction`].
    pub fn value(&self, fraction: f64) -> f64 {
        match self.spread {
            Spread::Linear => self.low + fraction * (self.high - self.low),
            Spread::Log10 => self.low * (fraction * (self.high / self.low).ln()).exp(),
        }
    }

    /// Ticks at round shown numbers, about so many (at least two).
    pub fn ticks(&self, about: usize, shown: Shown) -> Vec<Tick> {
        match self.spread {
            Spread::Linear => self.round_ticks(about.clamp(2, 20), shown),
            Spread::Log10 => self.time_ticks(),
        }
    }

    fn round_ticks(&self, about: usize, shown: Shown) -> Vec<Tick> {
        let ends = [shown.to(self.low), shown.to(self.high)];
        let (first, last) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let rough = (last - first) / about as f64;
        let decade = 10f64.powf(rough.log10().floor());
        // Halves between whole numbers read badly: 2.5 is for tens and more.
        let step = [1.0, 2.0, 2.5, 4.0, 5.0, 10.0]
            .into_iter()
            .filter(|digit| *digit != 2.5 || decade != 1.0)
            .map(|digit| digit * decade)
            .min_by(|a, b| (a / rough).ln().abs().total_cmp(&(b / rough).ln().abs()))
            .unwrap_or(rough);
        let decimals = (0..6)
            .find(|d| {
                let scaled = step * 10f64.powi(*d);
                (scaled - scaled.round()).abs() < 1e-6 * scaled
            })
            .unwrap_or(6) as usize;
        let slack = 1e-9 * (last - first);
        let start = ((first - slack) / step).ceil();
        (0..=2 * about)
            .map(|i| (start + i as f64) * step)
            .take_while(|number| *number <= last + slack)
            .map(|number| Tick {
                value: self.hold(shown.back(number)),
                label: numbers::fixed(number, decimals),
            })
            .collect()
    }

    /// Decades of seconds; minutes and hours as well where the axis goes on beyond 2000 s.
    fn time_ticks(&self) -> Vec<Tick> {
        const LONG: [(f64, &str); 6] = [
            (60.0, "1 min"),
            (600.0, "10 min"),
            (3600.0, "1 h"),
            (36000.0, "10 h"),
            (360000.0, "100 h"),
            (3600000.0, "1000 h"),
        ];
        let inside = |value: f64| (-1e-9..=1.0 + 1e-9).contains(&self.fraction(value));
        let long = self.high > 2000.0;
        let decades = (-12..=12).map(|power| 10f64.powi(power)).map(|value| {
            let decimals = if value < 0.9 {
                -value.log10().round()
            } else {
                0.0
            };
            (value, numbers::with_unit(value, decimals as usize, "s"))
        });
        let mut ticks: Vec<Tick> = decades
            .filter(|(value, _)| inside(*value) && !(long && *value > 20.0))
            .map(|(value, label)| Tick { value, label })
            .collect();
        if long {
            ticks.extend(
                LONG.iter()
                    .filter(|(value, _)| inside(*value))
                    .map(|(value, label)| Tick {
                        value: *value,
                        label: label.replace(' ', "\u{a0}"),
                    }),
            );
        }
        ticks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn labels(axis: Axis, about: usize, shown: Shown) -> Vec<String> {
        axis.ticks(about, shown)
            .into_iter()
            .map(|t| t.label)
            .collect()
    }

    #[test]
    fn ranges_are_always_usable() {
        for low in [f64::NAN, f64::NEG_INFINITY, -1.0, 0.0, 3.0, 1e300] {
            for high in [f64::NAN, f64::INFINITY, -1.0, 0.0, 3.0, 1e-300] {
                for axis in [Axis::linear(low, high), Axis::log10(low, high)] {
                    assert!(axis.low().is_finite() && axis.high().is_finite());
                    assert!(axis.low() < axis.high(), "{axis:?}");
                    assert!(axis.ticks(5, Shown::SAME).len() < 60);
                    for value in [axis.low(), axis.high(), axis.value(0.37)] {
                        let back = axis.value(axis.fraction(value));
                        assert!((back - value).abs() <= 1e-9 * value.abs().max(1e-3));
                    }
                }
            }
        }
    }

    #[test]
    fn round_numbers() {
        let soak = Axis::linear(650.0, 1100.0);
        assert_eq!(
            labels(soak, 5, Shown::SAME),
            ["700", "800", "900", "1000", "1100"]
        );
        let carbon = Axis::linear(0.0, 1.6);
        assert_eq!(
            labels(carbon, 4, Shown::SAME),
            ["0.0", "0.4", "0.8", "1.2", "1.6"]
        );
        let cold = Axis::linear(-100.0, 1000.0);
        assert_eq!(
            labels(cold, 5, Shown::SAME),
            ["0", "200", "400", "600", "800", "1000"]
        );
        let fahrenheit = Shown::by(|c| 1.8 * c + 32.0);
        let ticks = soak.ticks(5, fahrenheit);
        assert_eq!(ticks[0].label, "1400");
        assert!((ticks[0].value - (1400.0 - 32.0) / 1.8).abs() < 1e-9);
    }

    #[test]
    fn times() {
        let quench = Axis::log10(0.1, 1000.0);
        assert_eq!(
            labels(quench, 5, Shown::SAME),
            [
                "0.1\u{a0}s",
                "1\u{a0}s",
                "10\u{a0}s",
                "100\u{a0}s",
                "1000\u{a0}s"
            ]
        );
        let long = labels(Axis::log10(0.1, 1e5), 5, Shown::SAME);
        assert_eq!(long.last().map(String::as_str), Some("10\u{a0}h"));
        assert!(long.contains(&"1\u{a0}min".to_owned()));
        assert!(Axis::log10(0.1, 10.0).fraction(0.0).is_nan());
    }
}
