//! What a route can be cautioned for, and in which words.

use super::soak_notes::up_to_hundredths;
use crate::heat::Hazard;
use crate::units::{
    LengthUnit, TemperatureScale, format_duration_s, format_fixed, format_length, format_percent,
    format_temperature, format_weight_percent,
};
use recalesce_texts::route::cautions as texts;
use serde::Serialize;

/// Something that can go wrong or hurt.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Caution {
    /// The furnace's hot end leaves more austenite.
    FurnaceHot {
        /// Hottest, °C.
        hottest_c: f64,
        /// Austenite left, volume fraction.
        austenite: f64,
    },
    /// The furnace's cold end does not harden the piece.
    FurnaceCold {
        /// Coldest, °C.
        coldest_c: f64,
    },
    /// Ferrite is left at this soak.
    FerriteLeft {
        /// Volume fraction.
        fraction: f64,
    },
    /// All carbide is dissolved in a steel with more carbon than the eutectoid: cooled slowly, it
    /// comes out as a network along the grain boundaries.
    Network {
        /// Acm, °C.
        acm_c: f64,
    },
    /// Carbide on the old grain boundaries that the soak has left.
    NetworkLeft {
        /// Volume fraction.
        fraction: f64,
    },
    /// Carbide comes out on the grain boundaries in the quench.
    NetworkFormed {
        /// Thickness of the films, µm.
        film_um: f64,
    },
    /// Open air takes carbon out of the whole cutting edge.
    SkinThroughEdge {
        /// How deep it goes from each side, mm.
        decarburised_mm: f64,
    },
    /// The time in the cold bath is too short for the core.
    ColdTooShort {
        /// About how long it takes, min.
        needs_min: f64,
    },
    /// Much austenite is left after the quench and the cold bath.
    MuchAustenite {
        /// Volume fraction.
        fraction: f64,
    },
    /// The snap temper keeps austenite from the cold.
    SnapKeeps {
        /// The most that it may keep, volume fraction.
        most: f64,
    },
    /// Part of the martensite forms as plates.
    PlateMartensite {
        /// Carbon in solution, wt %.
        carbon_wt: f64,
    },
    /// The grain is coarse.
    CoarseGrain {
        /// ASTM grain number.
        grain_astm: f64,
    },
    /// The temper lies in the embrittling range.
    Embrittling {
        /// The temper, counted from zero: a route that is put right for its oven has others.
        temper: usize,
        /// Temper, °C.
        temperature_c: f64,
        /// Range, °C.
        range_c: [f64; 2],
    },
    /// No temper is planned.
    NotTempered,
    /// A harsh quench for much carbon in solution.
    MayCrack,
    /// The soak is outside the grade's handbook range.
    OutsideHandbook {
        /// Range, °C.
        range_c: [f64; 2],
    },
    /// A hazard of the quenchant or of the cold bath, in words.
    Hazard {
        /// The caution.
        text: Hazard,
    },
}

/// A caution as one line.
#[must_use]
pub fn caution_text(caution: &Caution, scale: TemperatureScale, length: LengthUnit) -> String {
    let degrees = |c: f64| format_temperature(c, scale);
    match caution {
        Caution::FurnaceHot {
            hottest_c,
            austenite,
        } => texts::furnace_hot(&degrees(*hottest_c), &format_percent(*austenite)),
        Caution::FurnaceCold { coldest_c } => texts::furnace_cold(&degrees(*coldest_c)),
        Caution::FerriteLeft { fraction } => texts::ferrite_left(&format_percent(*fraction)),
        Caution::Network { acm_c } => texts::network(&degrees(*acm_c)),
        Caution::NetworkLeft { fraction } => texts::network_left(&format_percent(*fraction)),
        Caution::NetworkFormed { film_um } => texts::network_formed(&format_fixed(*film_um, 1)),
        Caution::SkinThroughEdge { decarburised_mm } => {
            texts::skin_through_edge(&format_length(up_to_hundredths(*decarburised_mm), length))
        }
        Caution::ColdTooShort { needs_min } => {
            texts::cold_too_short(&format_duration_s(60.0 * needs_min))
        }
        Caution::MuchAustenite { fraction } => texts::much_austenite(&format_percent(*fraction)),
        Caution::SnapKeeps { most } => texts::snap_keeps(&format_percent(*most)),
        Caution::PlateMartensite { carbon_wt } => {
            texts::plate_martensite(&format_weight_percent(*carbon_wt))
        }
        Caution::CoarseGrain { grain_astm } => texts::coarse_grain(&format_fixed(*grain_astm, 0)),
        Caution::Embrittling {
            temperature_c,
            range_c: [from_c, to_c],
            ..
        } => texts::embrittling(&degrees(*temperature_c), &degrees(*from_c), &degrees(*to_c)),
        Caution::NotTempered => texts::NOT_TEMPERED.to_owned(),
        Caution::MayCrack => texts::MAY_CRACK.to_owned(),
        Caution::OutsideHandbook {
            range_c: [from_c, to_c],
        } => texts::outside_handbook(&degrees(*from_c), &degrees(*to_c)),
        Caution::Hazard { text } => text.words(scale),
    }
}
