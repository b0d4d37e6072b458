//! Auto-tempering: the martensite that forms first is warm for longest, and tempers on the way down.

use super::Hardness;
use super::mixture::Parts;
use super::stages::{Law, Stages};
use crate::sources::tempering_stages::RANGE;
use crate::steel::{Composition, OutOfRange};
use crate::transform::{Formed, Fractions, HistoryPoint};

/// Parts into which the martensite is divided by when it has formed.
const CLASSES: usize = 8;

/// What the martensite of a quench has been through below Ms, each eighth of it from when it formed.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct AutoTempered {
    classes: [Stages; CLASSES],
    /// Part of all martensite that has been through it.
    share: f64,
}

impl AutoTempered {
    /// Adds up the reduced times of the tempering stages along a cooling curve. The law of the
    /// stages is fitted to holds of 10 s and more; shorter ones are extrapolated.
    #[must_use]
    pub fn along(history: &[HistoryPoint]) -> Self {
        let mut found = Self {
            share: 1.0,
            ..Self::default()
        };
        let whole = history.last().map_or(0.0, |end| end.fractions.martensite);
        if whole <= 0.0 {
            return Self::default();
        }
        for pair in history.windows(2) {
            let [before, after] = pair else { continue };
            let there = 0.5 * (before.fractions.martensite + after.fractions.martensite) / whole;
            let middle_c = 0.5 * (before.temperature_c + after.temperature_c);
            let formed = (0..CLASSES).zip(&mut found.classes);
            for (_, stages) in
                formed.take_while(|(class, _)| there >= (*class as f64 + 0.5) / CLASSES as f64)
            {
                stages.hold(middle_c, after.time_s - before.time_s);
            }
        }
        found
    }

    /// The same when that martensite is only a share of what there is: the rest is fresh.
    #[must_use]
    pub fn among(self, share: f64) -> Self {
        Self {
            share: self.share * share.clamp(0.0, 1.0),
            ..self
        }
    }

    /// By how much the martensite has fallen in the mean, HRC; none outside the law of tempering.
    #[must_use]
    pub fn fall_hrc(&self, dissolved: &Composition) -> Option<f64> {
        RANGE.check(dissolved).ok()?;
        let law = Law::of(dissolved);
        let falls = self.classes.iter().map(|stages| law.drop_hrc(stages));
        Some(self.share * falls.sum::<f64>() / CLASSES as f64)
    }

    /// The mean of what it has been through: where a temper goes on from.
    pub(super) fn mean(&self) -> Stages {
        let mut mean = Stages::default();
        for stages in &self.classes {
            mean.add(stages, self.share / CLASSES as f64);
        }
        mean
    }
}

/// Hardness of a piece as quenched, as [`super::mixture`], less what its martensite has tempered on
/// the way down.
///
/// # Errors
/// As [`super::mixture`].
pub fn auto_tempered(
    dissolved: &Composition,
    constituents: &Fractions,
    formed: &Formed,
    auto: &AutoTempered,
) -> Result<Hardness, OutOfRange> {
    let parts = Parts::of(dissolved, constituents, formed)?;
    Ok(parts.mix_after(constituents, auto.fall_hrc(dissolved).unwrap_or(0.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hardness::mixture;
    use crate::transform::{Austenite, Kinetics, Transformed};

    fn low_carbon() -> Composition {
        Composition {
            c: 0.25,
            mn: 1.4,
            si: 0.25,
            cr: 0.9,
            mo: 0.2,
            ..Composition::default()
        }
    }

    /// Cooled from 850 °C to 20 °C with a time constant, s, as in a bath.
    fn cooled(composition: Composition, constant_s: f64) -> Transformed {
        let kinetics = Kinetics::new(&Austenite {
            composition,
            grain_astm: 8.0,
            undissolved_carbide_volume_fraction: 0.0,
        })
        .unwrap();
        let temperature_c: Vec<f64> = (0..=400).map(|i| 850.0 - 2.06 * f64::from(i)).collect();
        let time_s: Vec<f64> = temperature_c
            .iter()
            .map(|t| constant_s * (830.0 / (t - 20.0)).ln())
            .collect();
        kinetics.along(&time_s, &temperature_c).unwrap()
    }

    fn fall_hrc(composition: Composition, constant_s: f64) -> f64 {
        AutoTempered::along(&cooled(composition, constant_s).history)
            .fall_hrc(&composition)
            .unwrap()
    }

    /// Common practice, no source: thin pieces in oil do not notice it; low-carbon steel, whose Ms is
    /// high, tempers more than high-carbon steel, and slow cooling more than fast.
    #[test]
    fn it_grows_with_ms_and_with_slowness() {
        assert!(fall_hrc(low_carbon(), 1.0) < 0.4);
        let slow = fall_hrc(low_carbon(), 60.0);
        assert!(
            slow > 3.0 * fall_hrc(low_carbon(), 1.0) && slow < 6.0,
            "{slow}"
        );
        let high_carbon = Composition {
            c: 0.8,
            ..low_carbon()
        };
        assert!(fall_hrc(high_carbon, 60.0) < slow);
    }

    /// Two ways to the same softening: Maynier's regression on measured coolings gives martensite
    /// 21 HV less for each factor of ten in the rate, whatever its carbon. Within a factor of three.
    #[test]
    fn martensite_softens_with_the_rate_as_maynier_has_it() {
        for carbon in [0.25, 0.30, 0.35, 0.40] {
            let steel = Composition {
                c: carbon,
                mn: 0.7,
                si: 0.25,
                ni: 1.8,
                cr: 0.8,
                mo: 0.25,
                ..Composition::default()
            };
            let hv = |rate_k_per_s: f64| {
                let kinetics = Kinetics::new(&Austenite {
                    composition: steel,
                    grain_astm: 6.0,
                    undissolved_carbide_volume_fraction: 0.0,
                });
                let cooling = kinetics.unwrap().cooling_at(rate_k_per_s).unwrap();
                let auto = AutoTempered::along(&cooling.history);
                // Martensite alone: what else forms at the slower rate is left out.
                let martensite = Fractions {
                    martensite: 1.0,
                    ..Fractions::default()
                };
                let formed = &Formed::default();
                auto_tempered(&steel, &martensite, formed, &auto)
                    .unwrap()
                    .hv
            };
            let ours = hv(100.0) - hv(10.0);
            assert!((ours / 21.0).ln().abs() < 3_f64.ln(), "{carbon}: {ours}");
        }
    }

    #[test]
    fn without_it_the_mixture_is_as_before() {
        let found = cooled(low_carbon(), 1.0);
        let (x, formed) = (&found.fractions, &found.formed);
        let none = auto_tempered(&low_carbon(), x, formed, &AutoTempered::default());
        assert_eq!(none, mixture(&low_carbon(), x, formed));
    }
}
