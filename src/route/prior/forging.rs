//! The forging window: how hot a heat may begin, how cold the hammer may still work, and why.

use crate::phases::{CriticalTemperatures, UpperLimit};
use crate::sources::takeuchi_brimacombe_1985::solidus_c;
use crate::steel::Composition;
use crate::units::{TemperatureScale, format_temperature, format_temperature_band};
use recalesce_texts::route::prior as texts;
use serde::Serialize;

/// Grain boundaries, where alloy, phosphorus and sulphur gather, open so far below the solidus, K.
/// Common practice, no source.
const BURNS_BELOW_SOLIDUS_K: f64 = 120.0;
/// A heat begins so far below that: forges and eyes are no better. Common practice, no source.
const START_BELOW_BURNING_K: f64 = 80.0;
/// Hot enough above the lower line that grains form anew under the hammer, K. Expert value.
const ABOVE_LINE_K: f64 = 90.0;
/// Alloyed austenite is stiffer: so much hotter for each wt % of it, up to one, K. Expert value.
const STIFFER_K_PER_WT: f64 = 40.0;
/// Chromium from which the carbides of hypereutectoid steel are too hard to be broken up under the
/// hammer, wt %: the hammer then stops above Acm by so much, K. Expert value.
const HARD_CARBIDE_CR_WT: f64 = 1.0;
const ABOVE_ACM_K: f64 = 45.0;
/// Chromium from which A3 and Acm lie so high that steel is forged between them and A1, wt %.
const HIGH_CR_WT: f64 = 4.0;

/// Between which temperatures a steel is forged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ForgingWindow {
    /// Where grain boundaries begin to melt, °C: a burnt piece is lost.
    pub burns_c: f64,
    /// Hottest that a heat should begin, °C.
    pub start_most_c: f64,
    /// Coldest that the hammer should still work, °C.
    pub finish_least_c: f64,
    /// What sets the coldest.
    pub lower: LowerLimit,
}

/// What sets the lower end of a forging window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LowerLimit {
    /// Ferrite below A3, and steel that no longer recrystallises.
    A3,
    /// Pearlite below A1, and steel that no longer recrystallises.
    A1,
    /// Hard carbide below Acm.
    Acm,
}

impl LowerLimit {
    /// The reason in words, after a comma.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::A3 => texts::LOWER_A3,
            Self::A1 => texts::LOWER_A1,
            Self::Acm => texts::LOWER_ACM,
        }
    }
}

impl ForgingWindow {
    /// How sure either end is, K.
    pub const BAND_K: f64 = 40.0;

    /// The window in sentences, beside a handbook's range, °C, where there is one: the narrower of
    /// the two is to be kept.
    #[must_use]
    pub fn words(&self, handbook_c: Option<(f64, f64)>, scale: TemperatureScale) -> String {
        let degrees = |c: f64| format_temperature(c, scale);
        let mut words = texts::forging_window(
            &degrees(self.start_most_c),
            &degrees(self.finish_least_c),
            &format_temperature_band(Self::BAND_K, scale),
            &degrees(self.burns_c),
            self.lower.words(),
        );
        if let Some((least_c, most_c)) = handbook_c {
            words += &texts::forging_by_handbook(&degrees(most_c), &degrees(least_c));
        }
        words
    }
}

/// The forging window of a steel. Uncertainty: [`ForgingWindow::BAND_K`] either end; handbooks keep
/// up to 90 K more from burning for tool steel, and more for some spring steel, as grain grows and
/// the surface loses carbon.
#[must_use]
pub fn forging_window(steel: &Composition, critical: &CriticalTemperatures) -> ForgingWindow {
    let burns_c = solidus_c(steel) - BURNS_BELOW_SOLIDUS_K;
    let start_most_c = burns_c - START_BELOW_BURNING_K;
    let alloy_wt = steel.cr + steel.mo + steel.w + 0.5 * steel.ni;
    let stiffer_k = STIFFER_K_PER_WT * alloy_wt.clamp(0.0, 1.0);
    let from_a1_c = critical.a1_c + ABOVE_LINE_K + stiffer_k;
    let (line_c, lower) = match critical.upper {
        _ if steel.cr >= HIGH_CR_WT => (from_a1_c, LowerLimit::A1),
        UpperLimit::A3 { temperature_c }
            if temperature_c + ABOVE_LINE_K + stiffer_k > from_a1_c =>
        {
            (temperature_c + ABOVE_LINE_K + stiffer_k, LowerLimit::A3)
        }
        UpperLimit::Acm { temperature_c }
            if steel.cr >= HARD_CARBIDE_CR_WT
                && temperature_c + ABOVE_ACM_K > from_a1_c
                && temperature_c + 3.0 * ABOVE_ACM_K < start_most_c =>
        {
            (temperature_c + ABOVE_ACM_K, LowerLimit::Acm)
        }
        _ => (from_a1_c, LowerLimit::A1),
    };
    ForgingWindow {
        burns_c,
        start_most_c,
        finish_least_c: line_c.min(start_most_c),
        lower,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phases::critical_temperatures;
    use crate::steel::grades;

    /// Handbook ranges of the grade list (ASM Heat Treater's Guide and producers, as its rows tell):
    /// both ends of at least sixteen grades within the uncertainty told.
    #[test]
    fn windows_of_the_grades() {
        let mut inside = Vec::new();
        let mut outside = Vec::new();
        for grade in grades() {
            let Some((least_c, most_c)) = grade.forge_c.span.filter(|(a, b)| b > a) else {
                continue;
            };
            let critical = critical_temperatures(&grade.nominal).unwrap();
            let window = forging_window(&grade.nominal, &critical);
            let off = [
                window.finish_least_c - least_c,
                window.start_most_c - most_c,
            ];
            let line = format!("{} {off:.0?} {:?}", grade.designation, window.lower);
            if off.iter().all(|k| k.abs() <= 40.0) {
                inside.push(line);
            } else {
                outside.push(line);
            }
        }
        assert!(inside.len() >= 16, "{inside:#?}\n{outside:#?}");
    }
}
