//! The law of mixtures: the hardness of a whole from those of its parts, in Vickers.

use super::Hardness;
use crate::numeric::formula::Number;
use crate::sources::krauss_1999::{REFRIGERATED_HV, RETAINED_AUSTENITE_HV};
use crate::transform::Fractions;

/// Martensite counts this much harder for each part of undissolved carbide in it: a hard particle
/// carries load as its matrix allows. Cementite has about 1000 to 1150 HV in martensite of 830 to
/// 900 HV (memory).
pub(super) const CARBIDE_FACTOR: f64 = 1.2;

/// Martensite without the austenite that its measured hardness `hv` holds.
pub fn martensite_alone_hv<N: Number>(hv: N, austenite: N) -> N {
    let n = N::constant;
    (hv - austenite.clone() * n(RETAINED_AUSTENITE_HV)) / (n(1.0) - austenite)
}

/// A mixture: volume fractions, and what is as hard as its own history has made it, HV.
pub struct Mixed<N> {
    /// Martensite.
    pub martensite: N,
    /// Hardness of that martensite without austenite.
    pub alone_hv: N,
    /// Martensite that has formed later.
    pub fresh: N,
    /// Its hardness.
    pub fresh_hv: N,
    /// Retained austenite.
    pub austenite: N,
    /// Carbide.
    pub carbide: N,
    /// Ferrite, pearlite and bainite.
    pub soft: Soft<N>,
}

/// How the soft parts of a mixture, ferrite, pearlite and bainite, stand beside the hard ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Beside {
    /// There is nothing soft.
    Nothing,
    /// Both are there.
    Hard,
    /// There is nothing hard.
    Alone,
}

/// Volume fraction that does not count.
const NOTHING: f64 = 1e-9;

/// What a mixture consists of, with `fresh` martensite that the fractions do not hold.
#[must_use]
pub fn beside(x: &Fractions, fresh: f64) -> Beside {
    let soft = x.bainite + x.pearlite + x.ferrite;
    let hard = x.martensite + fresh + x.austenite + x.carbide;
    if soft <= NOTHING {
        Beside::Nothing
    } else if hard <= NOTHING {
        Beside::Alone
    } else {
        Beside::Hard
    }
}

/// Ferrite, pearlite and bainite of a mixture.
pub struct Soft<N> {
    beside: Beside,
    /// Their volume fraction.
    share: N,
    /// Sum of their hardnesses, each times its volume fraction, HV.
    hv: N,
}

impl<N: Number> Soft<N> {
    /// Bainite, pearlite and ferrite by their volume fractions, none harder than the martensite beside
    /// it.
    pub fn of(beside: Beside, parts: [N; 3], each_hv: [N; 3], limit_hv: &N) -> Self {
        let [bainite, pearlite, ferrite] = parts;
        let [bainite_hv, pearlite_hv, ferrite_hv] = each_hv.map(|hv| hv.min(limit_hv.clone()));
        Self {
            beside,
            share: bainite.clone() + pearlite.clone() + ferrite.clone(),
            hv: bainite * bainite_hv + pearlite * pearlite_hv + ferrite * ferrite_hv,
        }
    }

    /// The mixture with hard parts: their volume fraction, and the sum of their hardnesses, each times
    /// its volume fraction, HV.
    fn with(self, hard: N, hard_hv: N) -> N {
        let n = N::constant;
        let mixed = match self.beside {
            Beside::Nothing => hard_hv,
            Beside::Hard => n(1.0) / (hard.powi(2) / hard_hv + self.share.powi(2) / self.hv),
            Beside::Alone => self.hv,
        };
        mixed.min(n(REFRIGERATED_HV))
    }
}

/// The law of mixtures, HV, up to what no mixture exceeds. Martensite, austenite and carbide count by
/// their volume, and so do ferrite, pearlite and bainite. Between the two, what is soft yields first:
/// both bear the same stress, and the hardness of the whole is the harmonic mean, the lower of the
/// two bounds of a composite.
pub fn mixed_hv<N: Number>(x: Mixed<N>) -> N {
    let n = N::constant;
    let hard = x.martensite.clone() + x.fresh.clone() + x.austenite.clone() + x.carbide.clone();
    let hard_hv = x.martensite * x.alone_hv.clone()
        + x.fresh * x.fresh_hv
        + x.austenite * n(RETAINED_AUSTENITE_HV)
        + x.carbide * n(CARBIDE_FACTOR) * x.alone_hv;
    x.soft.with(hard, hard_hv)
}

/// The same where all that is hard has one hardness, HV.
pub(super) fn evenly_hard(hard: f64, hv: f64, soft: Soft<f64>) -> Hardness {
    Hardness {
        hv: soft.with(hard, hard * hv),
    }
}

/// A sum of shares as a hardness: no mixture exceeds refrigerated high-carbon martensite.
pub(super) fn sum(hv: f64) -> Hardness {
    Hardness {
        hv: hv.min(REFRIGERATED_HV),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hardness::{AutoTempered, auto_tempered, half_martensite_hrc};
    use crate::sources::hodge_orehoski_1946::ROWS;
    use crate::steel::Composition;
    use crate::transform::{Austenite, Kinetics};

    /// Content of Mn, Ni, Cr and Mo, wt %, of steels like those of the tests of hardenability.
    const ALLOYS: [[f64; 4]; 7] = [
        [0.75, 0.10, 0.10, 0.02],
        [1.70, 0.10, 0.10, 0.02],
        [0.80, 0.10, 0.10, 0.25],
        [0.85, 0.10, 0.95, 0.20],
        [0.80, 0.10, 0.80, 0.02],
        [0.85, 0.55, 0.50, 0.20],
        [0.70, 1.80, 0.80, 0.25],
    ];

    /// Hardness, HRC, of each of the steels cooled to a fraction of martensite.
    fn cooled_hrc(carbon_wt: f64, martensite: f64) -> impl Iterator<Item = f64> {
        ALLOYS.into_iter().map(move |[mn, ni, cr, mo]| {
            let steel = Composition {
                c: carbon_wt,
                mn,
                si: 0.25,
                ni,
                cr,
                mo,
                ..Composition::default()
            };
            let kinetics = Kinetics::new(&Austenite {
                composition: steel,
                grain_astm: 7.0,
                undissolved_carbide_volume_fraction: 0.0,
            })
            .unwrap();
            let rate = kinetics.critical_cooling(martensite).unwrap().rate_k_per_s;
            let cooled = kinetics.cooling_at(rate).unwrap();
            let auto = AutoTempered::along(&cooled.history);
            auto_tempered(&steel, &cooled.fractions, &cooled.formed, &auto)
                .unwrap()
                .hrc_carried()
        })
    }

    /// ASTM A255 (recalled): hardness of half martensite against carbon.
    #[test]
    fn half_martensite_is_as_hard_as_the_standard_has_it() {
        let mut errors = Vec::new();
        for carbon_wt in [0.2, 0.3, 0.4, 0.5, 0.6] {
            let standard_hrc = half_martensite_hrc(carbon_wt).unwrap();
            errors.extend(cooled_hrc(carbon_wt, 0.5).map(|hrc| hrc - standard_hrc));
        }
        let mean = errors.iter().sum::<f64>() / errors.len() as f64;
        assert!(errors.iter().all(|e| e.abs() < 4.0), "{errors:.1?}");
        assert!(mean.abs() < 1.5, "{mean}");
    }

    /// Hodge and Orehoski 1946, recalled and rounded: with 80 to 95 % martensite their steels are softer
    /// than even the harmonic mean, the least that a mixture can have: among what counts as martensite
    /// there is some that is not.
    #[test]
    fn less_martensite_softens_towards_what_hodge_and_orehoski_have() {
        for (column, martensite) in [0.5, 0.8, 0.9, 0.95].into_iter().enumerate() {
            let mut errors = Vec::new();
            for row in ROWS {
                let found = cooled_hrc(row[0], martensite);
                errors.extend(found.map(|hrc| hrc - row[column + 1]));
            }
            let mean = errors.iter().sum::<f64>() / errors.len() as f64;
            assert!((0.0..4.0).contains(&mean), "{martensite}: {mean}");
            assert!(
                errors.iter().all(|e| (-1.0..5.5).contains(e)),
                "{errors:.1?}"
            );
        }
    }

    /// Both ends of a mixture are its parts, and between them it is softer than the mean by volume.
    #[test]
    fn the_harmonic_mean_joins_its_ends() {
        let hv = |hard: f64| {
            let x = Fractions {
                martensite: hard,
                bainite: 1.0 - hard,
                ..Fractions::default()
            };
            let soft = Soft::of(beside(&x, 0.0), [1.0 - hard, 0.0, 0.0], [300.0; 3], &700.0);
            evenly_hard(hard, 700.0, soft).hv
        };
        assert!((hv(0.0) - 300.0).abs() < 1e-9 && (hv(1.0) - 700.0).abs() < 1e-9);
        assert!((hv(1e-8) - 300.0).abs() < 1e-3 && (hv(1.0 - 1e-8) - 700.0).abs() < 1e-3);
        assert!((hv(0.5) - 420.0).abs() < 1e-9);
    }
}
