//! Cautions in words.

use super::outcome::Caution;
use crate::units::{
    TemperatureScale, format_fixed, format_percent, format_temperature, format_weight_percent,
};

/// A caution as one line.
#[must_use]
pub fn caution_text(caution: &Caution, scale: TemperatureScale) -> String {
    let degrees = |c: f64| format_temperature(c, scale);
    match caution {
        Caution::FurnaceHot {
            hottest_c,
            austenite,
        } => format!(
            "Your furnace may reach {}: expect up to {} austenite left.",
            degrees(*hottest_c),
            format_percent(*austenite)
        ),
        Caution::FerriteLeft { fraction } => format!(
            "{} ferrite does not harden. Soak hotter or longer.",
            format_percent(*fraction)
        ),
        Caution::Network { acm_c } => format!(
            "Above {} all carbide is dissolved: a slow cool from here leaves a brittle network. Quench, or soak cooler.",
            degrees(*acm_c)
        ),
        Caution::MuchAustenite { fraction } => format!(
            "{} austenite is left: soft, and it may turn brittle later. Soak cooler, or go colder after the quench.",
            format_percent(*fraction)
        ),
        Caution::PlateMartensite { carbon_wt } => format!(
            "{} carbon in solution: part of the martensite grows as plates, which crack where they meet. Temper soon.",
            format_weight_percent(*carbon_wt)
        ),
        Caution::CoarseGrain { grain_astm } => format!(
            "Coarse grain, ASTM\u{a0}{}: brittle. Soak cooler.",
            format_fixed(*grain_astm, 0)
        ),
        Caution::Embrittling {
            temperature_c,
            range_c: [from_c, to_c],
        } => format!(
            "{} is inside the embrittling range. Stay below {} or go above {}.",
            degrees(*temperature_c),
            degrees(*from_c),
            degrees(*to_c)
        ),
        Caution::NotTempered => {
            "Untempered martensite can crack on the bench. Temper within the hour.".to_owned()
        }
        Caution::MayCrack => {
            "A harsh quench for this much carbon in solution: it may crack.".to_owned()
        }
        Caution::OutsideHandbook {
            range_c: [from_c, to_c],
        } => format!(
            "Handbooks harden this grade from {} to {}.",
            degrees(*from_c),
            degrees(*to_c)
        ),
        Caution::Hazard { text } => text.words(scale),
    }
}
