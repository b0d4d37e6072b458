//! Martensite: its start, its fraction, what the cold step still turns.

use super::Austenite;
use super::fractions::Fractions;
use crate::numeric::formula::Number;
use crate::sources::{
    harris_cohen_1949 as lag, isothermal_fit, koistinen_marburger_1959, lee_park_2013,
    van_bohemen_2012,
};
use crate::steel::{Composition, CompositionRange, Element, OutOfRange};
use recalesce_texts::transform as texts;

/// Dissolved compositions for which starts of bainite and martensite were compared with measured
/// ones. High-chromium and air-hardening grades are not among them and are refused.
const RANGE: CompositionRange = CompositionRange {
    model: texts::START_OF_MARTENSITE,
    limits_wt: &[
        (Element::C, 0.10, 1.30),
        (Element::Mn, 0.0, 2.5),
        (Element::Si, 0.0, 2.3),
        (Element::Cr, 0.0, 2.5),
        (Element::Ni, 0.0, 3.5),
        (Element::Mo, 0.0, 0.8),
        (Element::V, 0.0, 0.5),
        (Element::W, 0.0, 2.0),
    ],
};
/// Largest undissolved carbide fraction that still leaves a matrix to speak of.
const LARGEST_CARBIDE_FRACTION: f64 = 0.4;
/// Part of the austenite that has turned at the finish of martensite.
const FINISH: f64 = 0.95;
/// Grain of the diagrams from which starts of martensite were read: usual hardening gives 8.
const USUAL_GRAIN_ASTM: f64 = 8.0;

/// Checks the range of the martensite models.
pub(super) fn check(a: &Austenite) -> Result<(), OutOfRange> {
    RANGE.check_dissolved(&a.composition)?;
    OutOfRange::check(
        RANGE.model,
        texts::GRAIN,
        "ASTM",
        a.grain_astm,
        isothermal_fit::GRAIN_RANGE_ASTM,
    )?;
    OutOfRange::check(
        RANGE.model,
        texts::UNDISSOLVED_CARBIDE,
        texts::VOLUME_FRACTION,
        a.undissolved_carbide_volume_fraction,
        (0.0, LARGEST_CARBIDE_FRACTION),
    )
}

/// Checks a temperature of a martensite question.
fn check_temperature(quantity: &'static str, temperature_c: f64) -> Result<(), OutOfRange> {
    OutOfRange::check(
        RANGE.model,
        quantity,
        "°C",
        temperature_c,
        (-273.15, 1500.0),
    )
}

/// Start of martensite without range check, °C.
pub(super) fn ms_of(composition: &Composition, grain_astm: f64) -> f64 {
    ms_of_content(|element| composition.get(element), grain_astm)
}

/// The law of the start of martensite, °C, over contents in wt % and the grain number.
pub fn ms_of_content<N: Number>(content: impl Fn(Element) -> N, grain_astm: N) -> N {
    let n = N::constant;
    // The grain diameter halves with every two numbers.
    let ln_diameter_ratio = n(0.5 * std::f64::consts::LN_2) * (n(USUAL_GRAIN_ASTM) - grain_astm);
    van_bohemen_2012::ms_c_of(content)
        + n(lee_park_2013::RISE_K_PER_LN_DIAMETER) * ln_diameter_ratio
}

/// Start of martensite, °C, of what is dissolved: van Bohemen 2012 for grain 8, raised by
/// 4 K for each grain number coarser (Lee and Park 2013). Error 18 K (rms) up to 0.7 wt % C in
/// solution, 33 K above.
///
/// # Errors
/// Outside the compositions compared with measured starts.
pub fn martensite_start_c(a: &Austenite) -> Result<f64, OutOfRange> {
    check(a)?;
    Ok(ms_of(&a.composition, a.grain_astm))
}

/// Start of bainite, °C, of what is dissolved (van Bohemen 2012). Error 19 K (rms).
///
/// # Errors
/// Outside the compositions compared with measured starts.
pub fn bainite_start_c(a: &Austenite) -> Result<f64, OutOfRange> {
    check(a)?;
    Ok(van_bohemen_2012::bs_c(&a.composition))
}

/// Rate parameter of the martensite fraction `1 - exp(-rate (Ms - T))`, 1/K: mean of Koistinen
/// and Marburger's constant and van Bohemen's, which together miss retained austenite by less
/// than either.
#[must_use]
pub fn rate_parameter_per_k(composition: &Composition) -> f64 {
    rate_parameter_of(|element| composition.get(element))
}

/// The law of [`rate_parameter_per_k`], over contents in wt %.
pub fn rate_parameter_of<N: Number>(content: impl Fn(Element) -> N) -> N {
    let n = N::constant;
    n(0.5)
        * (n(koistinen_marburger_1959::RATE_PARAMETER_PER_K)
            + van_bohemen_2012::rate_parameter_per_k_of(content))
}

/// Temperature at which a fraction (0 to below 1) of the austenite has become martensite, °C.
///
/// # Errors
/// Outside the compositions compared with measured starts, or for a fraction outside 0 to 0.9999.
pub fn martensite_temperature_c(a: &Austenite, fraction: f64) -> Result<f64, OutOfRange> {
    OutOfRange::check(
        RANGE.model,
        texts::FRACTION_OF_MARTENSITE,
        "",
        fraction,
        (0.0, 0.9999),
    )?;
    let ms_c = martensite_start_c(a)?;
    Ok(ms_c + (1.0 - fraction).ln() / rate_parameter_per_k(&a.composition))
}

/// Finish of martensite, °C: the temperature at which 95 % of the austenite has turned. The law
/// has no end; with this part it agrees with producers' cards, whose Mf fits no one part exactly.
///
/// # Errors
/// Outside the compositions compared with measured starts.
pub fn martensite_finish_c(a: &Austenite) -> Result<f64, OutOfRange> {
    martensite_temperature_c(a, FINISH)
}

/// Austenite retained at the coldest temperature of a quench that formed nothing but martensite,
/// volume fraction of the piece.
///
/// # Errors
/// Outside the compositions compared with measured starts, or for an impossible temperature.
pub fn retained_austenite(a: &Austenite, coldest_c: f64) -> Result<f64, OutOfRange> {
    check_temperature(texts::END_OF_QUENCH, coldest_c)?;
    let ms_c = martensite_start_c(a)?;
    let matrix = 1.0 - a.undissolved_carbide_volume_fraction;
    Ok(matrix * left_at(&a.composition, ms_c, coldest_c))
}

/// Fraction of austenite left at a temperature.
fn left_at(composition: &Composition, ms_c: f64, coldest_c: f64) -> f64 {
    left_at_of(rate_parameter_per_k(composition), ms_c, coldest_c)
}

/// The law of what martensite leaves: of the rate parameter, 1/K, from the temperature at which it
/// begins or goes on down to the coldest, °C.
pub fn left_at_of<N: Number>(rate_per_k: N, from_c: N, coldest_c: N) -> N {
    (-rate_per_k * (from_c - coldest_c).max(N::constant(0.0))).exp()
}

/// A cold treatment after the quench.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ColdStep {
    /// Coldest temperature of the piece before the cold step, °C.
    pub coldest_before_c: f64,
    /// Coldest temperature of the piece, °C.
    pub cold_c: f64,
    /// Wait between the end of the quench and the cold step, s.
    pub delay_s: f64,
    /// Temperature at which the piece waited, °C.
    pub wait_c: f64,
    /// A short temper before the cold step, if any.
    pub snap: Option<WarmStay>,
}

/// A stay at a warm temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WarmStay {
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Time, s.
    pub time_s: f64,
}

impl WarmStay {
    /// Its age in time constants of the lag, each shorter the warmer it is.
    fn age(&self) -> f64 {
        let time_constant_s =
            lag::TIME_CONSTANT_S * ((lag::REFERENCE_C - self.temperature_c) / lag::E_FOLD_K).exp();
        self.time_s.max(0.0) / time_constant_s
    }

    /// Nothing ages below 0 °C.
    fn warmth(&self) -> f64 {
        (self.temperature_c / 20.0).clamp(0.0, 1.0)
    }
}

/// Lag of the martensite reaction by waiting, K: the trend of Harris and Cohen 1949. Zero when the
/// piece goes straight into the cold or waits below 0 °C; 20 to 40 K after some hours at room
/// temperature; sooner when it waits warm. A snap temper is such a wait: the times add, each counted
/// in the time constant of its temperature, which the notes know up to 150 °C (from memory).
#[must_use]
pub fn stabilisation_k(carbon_wt: f64, step: &ColdStep) -> f64 {
    let largest_k = (lag::LARGEST_LAG_K_PER_WT * (carbon_wt - lag::CARBON_WITHOUT_LAG_WT))
        .clamp(0.0, lag::LARGEST_LAG_K);
    let wait = WarmStay {
        temperature_c: step.wait_c,
        time_s: step.delay_s,
    };
    let snap_age = step.snap.map_or(0.0, |snap| snap.age());
    let warmth = step
        .snap
        .map_or(0.0, |snap| snap.warmth())
        .max(wait.warmth());
    let age = (wait.age() + snap_age).powf(lag::TIME_EXPONENT);
    let lag_k = largest_k * warmth * -(-age).exp_m1();
    if lag_k.is_finite() { lag_k } else { 0.0 }
}

/// What a cold treatment makes of a quenched piece: the martensite law goes on from the coldest
/// temperature so far, after the lag of the wait. Never adds retained austenite.
///
/// # Errors
/// Outside the compositions compared with measured starts, or for impossible temperatures.
pub fn cold_treated(
    quenched: &Fractions,
    a: &Austenite,
    step: &ColdStep,
) -> Result<Fractions, OutOfRange> {
    cold_treated_with_lag(quenched, a, step, stabilisation_k(a.composition.c, step))
}

/// The same with a lag, K, that is given: what it might be, where it is not known.
///
/// # Errors
/// As [`cold_treated`].
pub fn cold_treated_with_lag(
    quenched: &Fractions,
    a: &Austenite,
    step: &ColdStep,
    lag_k: f64,
) -> Result<Fractions, OutOfRange> {
    check(a)?;
    check_temperature(texts::COLD_TREATMENT, step.cold_c)?;
    check_temperature(texts::WAIT_BEFORE_COLD, step.wait_c)?;
    check_temperature(texts::COLDEST_BEFORE_COLD, step.coldest_before_c)?;
    if let Some(snap) = &step.snap {
        check_temperature(texts::TEMPER_BEFORE_COLD, snap.temperature_c)?;
    }
    let resumes_c = step.coldest_before_c - lag_k.max(0.0);
    let austenite = quenched.austenite * left_at(&a.composition, resumes_c, step.cold_c);
    Ok(Fractions {
        martensite: quenched.martensite + (quenched.austenite - austenite),
        austenite,
        ..*quenched
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bearing(carbon_wt: f64) -> Austenite {
        Austenite {
            composition: Composition {
                c: carbon_wt,
                mn: 0.35,
                si: 0.25,
                cr: 1.05,
                ..Composition::default()
            },
            grain_astm: 9.0,
            undissolved_carbide_volume_fraction: 0.05,
        }
    }

    #[test]
    fn high_chromium_is_refused() {
        let mut stainless = bearing(0.5);
        stainless.composition.cr = 13.0;
        let error = martensite_start_c(&stainless).map_err(|e| (e.number.field, e.number.most));
        assert_eq!(error, Err(("chromium", 2.5)));
    }

    /// From memory: 10 % retained austenite of 1C-1.5Cr steel falls to 2.5-3 % at -80 °C at once
    /// and to 4-5 % after a day at room temperature.
    #[test]
    fn waiting_costs_part_of_the_gain() {
        let a = bearing(0.7);
        let quenched = Fractions {
            ferrite: 0.0,
            pearlite: 0.0,
            bainite: 0.0,
            martensite: 0.85,
            austenite: 0.10,
            carbide: 0.05,
        };
        let after = |delay_s| {
            let step = ColdStep {
                coldest_before_c: 20.0,
                cold_c: -80.0,
                delay_s,
                wait_c: 20.0,
                snap: None,
            };
            cold_treated(&quenched, &a, &step).map_or(f64::NAN, |f| f.austenite)
        };
        let (at_once, next_day) = (after(0.0), after(86_400.0));
        assert!((0.02..0.04).contains(&at_once), "{at_once}");
        assert!(next_day > at_once + 0.008 && next_day < 0.055, "{next_day}");
    }

    /// The lag of a snap temper is a wait's, sooner: no less than without it, no more than the
    /// largest, and in part there after minutes.
    #[test]
    fn a_snap_temper_stabilises_as_a_long_wait() {
        let lag_k = |delay_s: f64, snap: Option<WarmStay>| {
            let step = ColdStep {
                coldest_before_c: 20.0,
                cold_c: -80.0,
                delay_s,
                wait_c: 20.0,
                snap,
            };
            stabilisation_k(0.7, &step)
        };
        let snap = |temperature_c, minutes: f64| {
            Some(WarmStay {
                temperature_c,
                time_s: 60.0 * minutes,
            })
        };
        assert_eq!(lag_k(0.0, None), 0.0);
        let hour = lag_k(0.0, snap(150.0, 60.0));
        assert!((25.0..=30.0).contains(&hour), "{hour}");
        assert!(lag_k(600.0, snap(150.0, 60.0)) > hour.max(lag_k(600.0, None)));
        assert!(lag_k(0.0, snap(150.0, 5.0)) < hour && lag_k(0.0, snap(130.0, 60.0)) < hour);
        // A wait and a stay of the same warmth add up.
        let apart = lag_k(1800.0, snap(20.0, 30.0));
        assert!((apart - lag_k(3600.0, None)).abs() < 1e-9);
    }

    #[test]
    fn warm_cold_step_changes_nothing() {
        let a = bearing(0.7);
        let quenched = Fractions {
            ferrite: 0.0,
            pearlite: 0.0,
            bainite: 0.0,
            martensite: 0.85,
            austenite: 0.10,
            carbide: 0.05,
        };
        let step = ColdStep {
            coldest_before_c: 20.0,
            cold_c: 20.0,
            delay_s: 0.0,
            wait_c: 20.0,
            snap: None,
        };
        let after = cold_treated(&quenched, &a, &step);
        assert_eq!(after, Ok(quenched));
    }

    #[test]
    fn finish_is_below_half() {
        let a = bearing(0.65);
        let half = martensite_temperature_c(&a, 0.5).unwrap_or(f64::NAN);
        let finish = martensite_finish_c(&a).unwrap_or(f64::NAN);
        assert!(finish < half && half < ms_of(&a.composition, 9.0));
    }
}
