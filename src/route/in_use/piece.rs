//! What a route leaves in the piece, and points to rank pieces by.

use super::Property;
use super::acts::{
    AUSTENITE_RANKED, Acts, CARBIDE, COARSE_CARBIDE, COUNTS_AUSTENITE, COUNTS_CARBIDE,
    COUNTS_CARBON_WT, COUNTS_GRAIN, COUNTS_HRC, COUNTS_SIZE_FACTOR, COUNTS_SOFT, EMBRITTLED,
    FINER_GRAIN, FINEST_UM, HARDNESS, LEAST_CARBIDE, PLATES, SOFT, TEMPERED,
};
use crate::hardness::embrittling_range_c;
use crate::route::cautions::PLATE_CARBON_WT;
use crate::route::outcome::Outcome;
use crate::route::plan::Route;
use crate::sources::carbide_hardness::CarbideKind;

/// What embrittling, or a temper, is worth in points: as much as 4 HRC (expert value).
const POINTS_OF_A_FACT: f64 = 4.0;

/// What a route leaves in the piece where it is judged, as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Piece {
    pub(crate) hrc: Option<f64>,
    pub(crate) austenite: Option<f64>,
    pub(crate) soft: Option<f64>,
    pub(crate) carbide: f64,
    /// Mean radius of the carbide by volume, µm.
    pub(crate) carbide_radius_um: f64,
    /// What most of the carbide is; none where that is the same in all that are compared.
    pub(crate) carbide_kind: Option<CarbideKind>,
    pub(crate) carbon_in_solution_wt: f64,
    pub(crate) grain_astm: f64,
    pub(crate) is_tempered: bool,
    pub(crate) is_embrittled: bool,
}

impl Piece {
    pub(super) fn of(route: &Route, outcome: &Outcome) -> Self {
        let stages = || outcome.judged_stages().iter().rev();
        let known = || stages().filter(|stage| stage.hardness.is_some());
        let fractions = known().find_map(|stage| stage.fractions);
        let [from_c, to_c] = embrittling_range_c(&route.composition);
        let mut tempers = route.tempers.iter();
        Self {
            hrc: stages()
                .find_map(|stage| stage.hardness)
                .map(|hardness| hardness.hrc_carried()),
            austenite: fractions.map(|f| f.austenite),
            soft: fractions.map(|f| f.ferrite + f.pearlite + f.bainite),
            carbide: outcome.soak.end.carbide_volume_fraction,
            carbide_radius_um: outcome.soak.carbide_radius_um,
            carbide_kind: CarbideKind::of(&outcome.soak.limit.carbide),
            carbon_in_solution_wt: outcome.soak.end.carbon_wt,
            grain_astm: outcome.soak.end.grain_astm,
            is_tempered: !route.tempers.is_empty(),
            is_embrittled: tempers.any(|temper| (from_c..=to_c).contains(&temper.temperature_c)),
        }
    }

    /// Points for a property, to rank pieces of one steel by and for nothing else: of all that acts on
    /// it, how many times over it differs by as much as counts. A difference of points says which of
    /// two pieces is ahead and by about how many such differences, never by how much the property
    /// itself.
    pub(crate) fn points(&self, property: Property) -> f64 {
        let plates_wt = (self.carbon_in_solution_wt - PLATE_CARBON_WT).max(0.0);
        let fact = |is: bool| POINTS_OF_A_FACT * f64::from(u8::from(is));
        [
            (self.hrc.unwrap_or_default() / COUNTS_HRC, HARDNESS),
            (self.carbide / COUNTS_CARBIDE, CARBIDE),
            (
                self.austenite.unwrap_or_default() / COUNTS_AUSTENITE,
                AUSTENITE_RANKED,
            ),
            (self.sizes_of_carbide(), COARSE_CARBIDE),
            (self.soft.unwrap_or_default() / COUNTS_SOFT, SOFT),
            (plates_wt / COUNTS_CARBON_WT, PLATES),
            (self.grain_astm / COUNTS_GRAIN, FINER_GRAIN),
            (fact(self.is_embrittled), EMBRITTLED),
            (fact(self.is_tempered), TEMPERED),
        ]
        .into_iter()
        .map(|(times, Acts(acts))| {
            let act = acts.get(property as usize).copied().unwrap_or_default();
            times * f64::from(act)
        })
        .sum()
    }

    /// Whether there is enough carbide for its size and hardness to count.
    pub(super) fn has_carbide(&self) -> bool {
        self.carbide >= LEAST_CARBIDE && self.carbide_radius_um > 0.0
    }

    /// How many times over its carbide is larger by as much as counts than the finest that counts, as
    /// far as there is carbide: nothing where there is none.
    fn sizes_of_carbide(&self) -> f64 {
        let larger = (self.carbide_radius_um / FINEST_UM).ln() / COUNTS_SIZE_FACTOR.ln();
        larger.max(0.0) * (self.carbide / COUNTS_CARBIDE).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Points order two pieces as the directions do, where all speaks for one of them.
    #[test]
    fn points_agree_with_directions() {
        let piece = Piece {
            hrc: Some(60.0),
            austenite: Some(0.05),
            soft: Some(0.0),
            carbide: 0.04,
            carbide_radius_um: 0.3,
            carbide_kind: None,
            carbon_in_solution_wt: 0.65,
            grain_astm: 9.0,
            is_tempered: true,
            is_embrittled: false,
        };
        let softer = Piece {
            hrc: Some(58.0),
            ..piece
        };
        let finer = Piece {
            grain_astm: 10.0,
            ..piece
        };
        let embrittled = Piece {
            is_embrittled: true,
            ..softer
        };
        let tough = |piece: &Piece| piece.points(Property::Toughness);
        approx::assert_abs_diff_eq!(tough(&softer) - tough(&piece), 2.0, epsilon = 1e-9);
        assert!(tough(&finer) > tough(&piece) && tough(&embrittled) < tough(&piece));
        assert!(softer.points(Property::Wear) < piece.points(Property::Wear));
        assert_eq!(finer.points(Property::Wear), piece.points(Property::Wear));
    }
}
