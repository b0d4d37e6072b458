//! What differs between two pieces by enough to count.

use super::acts::{
    AUSTENITE, Acts, CARBIDE, COARSE_CARBIDE, COUNTS_AUSTENITE, COUNTS_CARBIDE, COUNTS_CARBON_WT,
    COUNTS_GRAIN, COUNTS_HRC, COUNTS_SIZE_FACTOR, COUNTS_SOFT, EMBRITTLED, FINER_GRAIN,
    HARD_CARBIDE, HARDNESS, PLATES, SOFT, TEMPERED,
};
use super::piece::Piece;
use crate::route::cautions::PLATE_CARBON_WT;
use crate::sources::carbide_hardness::CarbideKind;
use crate::units::{format_fixed, format_hrc, format_percent, format_weight_percent};
use recalesce_texts::route::in_use as texts;

/// What differs by enough to count: more of it in this route, or less.
pub(super) struct Difference {
    pub(super) words: String,
    pub(super) is_more: bool,
    pub(super) acts: Acts,
}

/// What differs in the size and the hardness of the carbide.
fn carbide_differences(this: &Piece, other: &Piece) -> impl Iterator<Item = Difference> {
    let both = this.has_carbide() && other.has_carbide();
    let [here_um, there_um] = [this, other].map(|piece| 2.0 * piece.carbide_radius_um);
    let size = (both && (here_um / there_um).ln().abs() >= COUNTS_SIZE_FACTOR.ln()).then(|| {
        let [here, there] = [here_um, there_um].map(|um| format_fixed(um, 1));
        Difference {
            words: texts::carbide_sizes(&here, &there),
            is_more: here_um > there_um,
            acts: COARSE_CARBIDE,
        }
    });
    let kinds = this.carbide_kind.zip(other.carbide_kind);
    let kind = kinds
        .filter(|(here, there)| both && here != there)
        .map(|(here, there)| {
            let told = |kind: CarbideKind| texts::carbide_kind(kind.name(), kind.hv());
            Difference {
                words: texts::carbide_kinds(&told(here), &told(there)),
                is_more: here > there,
                acts: HARD_CARBIDE,
            }
        });
    size.into_iter().chain(kind)
}

pub(super) fn differences(this: &Piece, other: &Piece) -> Vec<Difference> {
    let mut all = Vec::new();
    let mut number = |name: &str,
                      [a, b]: [Option<f64>; 2],
                      counts: f64,
                      acts: Acts,
                      written: fn(f64) -> String| {
        let (Some(a), Some(b)) = (a, b) else { return };
        if (a - b).abs() >= counts {
            all.push(Difference {
                words: texts::differs(name, &written(a), &written(b)),
                is_more: a > b,
                acts,
            });
        }
    };
    let both = |of: fn(&Piece) -> Option<f64>| [of(this), of(other)];
    number(
        texts::HARDNESS,
        both(|p| p.hrc),
        COUNTS_HRC,
        HARDNESS,
        format_hrc,
    );
    let carbide = both(|p| Some(p.carbide));
    number(
        texts::CARBIDE,
        carbide,
        COUNTS_CARBIDE,
        CARBIDE,
        format_percent,
    );
    let austenite = both(|p| p.austenite);
    number(
        texts::AUSTENITE,
        austenite,
        COUNTS_AUSTENITE,
        AUSTENITE,
        format_percent,
    );
    let soft = both(|p| p.soft);
    number(texts::SOFT, soft, COUNTS_SOFT, SOFT, format_percent);
    let grain = both(|p| Some(p.grain_astm));
    number(texts::GRAIN, grain, COUNTS_GRAIN, FINER_GRAIN, |g| {
        format_fixed(g, 1)
    });
    let [here_wt, there_wt] = [this, other].map(|piece| piece.carbon_in_solution_wt);
    let [here, there] = [here_wt, there_wt].map(|c| c.max(PLATE_CARBON_WT));
    if (here - there).abs() >= COUNTS_CARBON_WT {
        all.push(Difference {
            words: texts::plates(
                &format_weight_percent(here_wt),
                &format_weight_percent(there_wt),
                &format_weight_percent(PLATE_CARBON_WT),
            ),
            is_more: here > there,
            acts: PLATES,
        });
    }
    all.extend(carbide_differences(this, other));
    let mut fact = |what: &str, a: bool, b: bool, acts: Acts| {
        if a != b {
            all.push(Difference {
                words: if a {
                    texts::only_here(what)
                } else {
                    texts::only_there(what)
                },
                is_more: a,
                acts,
            });
        }
    };
    fact(
        texts::EMBRITTLING_TEMPER,
        this.is_embrittled,
        other.is_embrittled,
        EMBRITTLED,
    );
    fact(
        texts::TEMPERED,
        this.is_tempered,
        other.is_tempered,
        TEMPERED,
    );
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::route::in_use::Property;

    /// Larger carbide wears longer and serves a thin edge and blows worse; a harder one wears longer.
    #[test]
    fn size_and_hardness_of_carbide_are_reasons() {
        let fine = Piece {
            hrc: None,
            austenite: None,
            soft: None,
            carbide: 0.08,
            carbide_radius_um: 0.3,
            carbide_kind: Some(CarbideKind::Cementite),
            carbon_in_solution_wt: 0.6,
            grain_astm: 9.0,
            is_tempered: true,
            is_embrittled: false,
        };
        let coarse = Piece {
            carbide_radius_um: 0.6,
            ..fine
        };
        let points = |property| coarse.points(property) - fine.points(property);
        assert!(points(Property::Wear) > 0.0 && points(Property::Edge) < 0.0);
        let found = differences(&coarse, &fine);
        assert_eq!(found.len(), 1);
        assert!(
            found[0].is_more && found[0].words.contains("1.2") && found[0].words.contains("0.6")
        );
        let hard = Piece {
            carbide_kind: Some(CarbideKind::M7C3),
            ..fine
        };
        let found = differences(&hard, &fine);
        assert_eq!(found.len(), 1);
        let Acts(acts) = found[0].acts;
        assert!(found[0].is_more && acts == [1, 0, 0], "{}", found[0].words);
        let none = Piece {
            carbide: 0.0,
            ..coarse
        };
        assert!(
            differences(&none, &fine)
                .iter()
                .all(|d| !d.words.contains("µm"))
        );
    }
}
