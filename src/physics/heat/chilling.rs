//! How long the core of a hardened piece takes to be as cold as a cold bath.
//!
//! Martensite goes by the coldest temperature alone, so all that the time in the bath has to do is to
//! bring the core there. The slowest mode of a plate, a round or a square bar with a constant
//! coefficient: its rate is that of a body without gradients and that of an ideally cooled one, one
//! after the other, which lies within 6 % of the root of `ζ tan ζ = Bi`, on the slow side.

use super::Section;
use crate::sources::simsir_gur_2008;

/// Room temperature from which the piece goes in, °C.
const ROOM_C: f64 = 20.0;
/// So near to the bath counts as there, K.
const NEAR_K: f64 = 5.0;
/// A film of vapour stands on the piece in liquid nitrogen down to here, °C; below it, it cools at
/// once. Estimate of the notes on quenching, from memory.
const FILM_BREAKS_C: f64 = -150.0;
/// Coefficients, W/m²K: air of a freezer (5 to 10), dry ice in solvent (100 to 300), the film in
/// liquid nitrogen (100 to 200). Middle of the estimates of the notes on quenching, from memory.
const FREEZER_W_M2K: f64 = 7.5;
const DRY_ICE_W_M2K: f64 = 200.0;
const NITROGEN_W_M2K: f64 = 150.0;
/// Bath temperatures from which on each is meant, °C.
const FREEZER_FROM_C: f64 = -40.0;
const DRY_ICE_FROM_C: f64 = -120.0;

/// Time from the room into a cold bath until the core is within 5 K of it, s. True to a factor of
/// one and a half to two either way, as the coefficients are. Of a blade, the spine counts.
#[must_use]
pub fn core_cold_s(section: Section, bath_c: f64) -> f64 {
    let h_w_m2k = if bath_c >= FREEZER_FROM_C {
        FREEZER_W_M2K
    } else if bath_c >= DRY_ICE_FROM_C {
        DRY_ICE_W_M2K
    } else {
        NITROGEN_W_M2K
    };
    let from_k = ROOM_C - bath_c;
    let until_k = if bath_c < DRY_ICE_FROM_C {
        (FILM_BREAKS_C - bath_c).max(NEAR_K)
    } else {
        NEAR_K
    };
    if from_k <= until_k {
        return 0.0;
    }
    // Half the thickness with the surfaces over volume and the ideal root squared of its shape.
    let (surfaces, ideal) = match section {
        Section::Plate { .. } | Section::Blade { .. } => (1.0, 2.467),
        Section::Round { .. } => (2.0, 5.783),
        Section::Square { .. } => (2.0, 4.935),
    };
    let half_m = 0.5e-3 * section.thickness_mm();
    // The cold end of the table, held below it.
    let [_, k_w_mk, capacity_mj_m3k] = simsir_gur_2008::MARTENSITE_AT_0C;
    let biot = h_w_m2k * half_m / k_w_mk;
    let diffusivity_m2_s = k_w_mk / (1e6 * capacity_mj_m3k);
    let root_squared = 1.0 / (1.0 / (surfaces * biot) + 1.0 / ideal);
    (from_k / until_k).ln() * half_m * half_m / (diffusivity_m2_s * root_squared)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Notes on quenching, estimates: a 3 mm blade takes about 1 min in liquid nitrogen, 1.3 min in dry
    /// ice and solvent, 15 to 30 min in a freezer.
    #[test]
    fn three_millimetres_are_cold_when_the_notes_have_them() {
        let blade = Section::Plate { thickness_mm: 3.0 };
        let minutes = |bath_c| core_cold_s(blade, bath_c) / 60.0;
        let [nitrogen, dry_ice, freezer] = [-196.0, -75.0, -18.0].map(minutes);
        assert!((0.7..1.4).contains(&nitrogen), "{nitrogen}");
        assert!((1.0..1.7).contains(&dry_ice), "{dry_ice}");
        assert!((15.0..30.0).contains(&freezer), "{freezer}");
    }

    #[test]
    fn a_thicker_piece_takes_longer_and_a_round_less_than_a_plate() {
        let plate = |thickness_mm| core_cold_s(Section::Plate { thickness_mm }, -75.0);
        let round = |diameter_mm| core_cold_s(Section::Round { diameter_mm }, -75.0);
        assert!(plate(40.0) > 10.0 * plate(4.0));
        assert!(round(40.0) < plate(40.0));
        assert_eq!(core_cold_s(Section::Plate { thickness_mm: 4.0 }, 18.0), 0.0);
    }
}
