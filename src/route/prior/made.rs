//! What a piece has become when it is cold after a step above A1.

use super::state::{
    FIRST_GRAIN_IN_MARTENSITE_UM, LEAST_BELOW_A1_K, NETWORK_ENRICHMENT, PieceState, Settled,
    first_grain_on_lamellae_um, first_grain_on_spheroids_um, lamellae, mean_radius_um,
};
use crate::hardness::{self, AS_QUENCHED_BAND_HRC, AsQuenched, Hardness};
use crate::route::hardening::CooledPiece;
use crate::soak::{BoundaryCarbide, CEMENTITE_WT, Network, Ripening, SoakEnd, Structure};
use crate::steel::Composition;
use crate::transform::{Formed, Fractions};

/// Carbides of martensite and bainite once they are heated: radius, µm, enrichment, and half the
/// width of the ferrite. Expert values, those of the structure quenched and refined.
const IN_MARTENSITE: (f64, f64, f64) = (0.037, 0.2, 1.0);
/// Half the width of ferrite between coarse lamellae, µm, at a grain of the second, and the powers
/// of both. Expert values, through those of the named structures.
const PEARLITE_HALF_WIDTH_UM: (f64, f64) = (10.0, 25.0);
/// Half the width of ferrite between spheroids, µm. Expert value.
const SPHEROID_HALF_WIDTH_UM: f64 = 5.0;
/// Spacing of carbides times the square of how far below A1 they are, below which carbon goes to
/// them instead of forming pearlite, µm K². Expert value: carbides 3 µm apart take all of it at the
/// 10 K below A1 of an anneal in the furnace, and those 1 µm apart little at the 40 K of cooling in
/// air (common practice, no source).
const DIVORCED_UM_K2: f64 = 400.0;
/// The austenite grain of the heating before counts so much for the first of the next. Expert
/// value: with it three cycles take a forged grain to within a tenth of what more of them give.
const INHERITED: f64 = 1.0 / 3.0;
/// Ferrite of a hypoeutectoid steel is wide by its amount and by the grain on whose boundaries it
/// formed: this part of their product is half the width. Expert value.
const FREE_FERRITE: f64 = 0.25;
/// An old network of which less than this is left, volume fraction, is broken; of a fifth of it
/// nothing is told. Expert value.
pub(in crate::route) const WHOLE_NETWORK: f64 = 0.01;
/// From so much of it martensite tempers when it is heated, volume fraction.
const LEAST_HARD: f64 = 0.05;
/// A steel without kinetics that is cooled in the furnace is taken to transform so far below A1,
/// K. Expert value.
const SLOW_BELOW_A1_K: f64 = 10.0;
/// Fine pearlite forms so far below A1, K. Expert value, that of the named structure.
const FINE_BELOW_A1_K: f64 = 77.0;
/// Manganese, chromium, nickel and molybdenum together from which steel without kinetics is taken to
/// harden in air, wt %. Expert value, between the oil- and the air-hardening grades of the list.
const HARDENS_IN_AIR_WT: f64 = 4.0;

/// All that decides what the piece is when it is cold.
pub(super) struct Made<'a> {
    pub(super) steel: &'a Composition,
    pub(super) soaked: &'a SoakEnd,
    pub(super) settled: &'a Settled,
    /// Carbide on the grain boundaries.
    pub(super) films: &'a BoundaryCarbide,
    /// The network that went into the fire.
    pub(super) network_before: Network,
    /// What the way down from A1 does to carbide.
    pub(super) ripening: Ripening,
    /// Part of the steel's carbide that lies outside pearlite.
    pub(super) outside_pearlite: f64,
}

/// What austenite has become, by volume fraction of the piece.
#[derive(Clone, Copy)]
struct Shares {
    /// Pearlite with lamellae.
    lamellar: f64,
    /// Pearlite whose carbide has gone to carbide that was there already.
    divorced: f64,
    /// Bainite, martensite and austenite.
    hard: f64,
    ferrite: f64,
    /// How far below A1 the pearlite formed.
    below_a1_k: f64,
}

impl Shares {
    fn sum(&self) -> f64 {
        (self.lamellar + self.divorced + self.hard + self.ferrite).max(1e-9)
    }
}

/// Where the carbide is, by volume fraction of the piece, and how large it is.
struct Carbides {
    /// What the soak has left and what has grown on it.
    round: f64,
    round_um: f64,
    network: f64,
    fine: f64,
    fine_um: f64,
    fine_enrichment: f64,
}

impl Made<'_> {
    /// The piece as its kinetics tell it.
    pub(super) fn known(&self, piece: &CooledPiece) -> PieceState {
        let fractions = piece.fractions;
        let formed = piece.formed.pearlite;
        let below_a1_k = formed.map_or(0.0, |p| self.settled.a1_c - p.temperature_c);
        let divorced = self.divorced(below_a1_k) * fractions.pearlite;
        let lamellar = fractions.pearlite - divorced;
        let structure = self.structure(&Shares {
            lamellar,
            divorced,
            hard: fractions.bainite + fractions.martensite + fractions.austenite,
            ferrite: fractions.ferrite,
            below_a1_k,
        });
        let hard = fractions.martensite + fractions.austenite;
        let soft = fractions.ferrite + fractions.pearlite + fractions.bainite;
        let hardness = piece.hardened.as_ref().map(|piece| {
            let mixed_hv = piece.hardness.hv;
            let round_hv = self.annealed(&structure).map_or(mixed_hv, |h| h.hv);
            Hardness {
                hv: mixed_hv + divorced * (round_hv - mixed_hv).min(0.0),
            }
        });
        let hardened = piece.hardened.as_ref().filter(|_| hard > LEAST_HARD);
        PieceState {
            fractions: Some(self.with_round_carbide(&fractions, divorced)),
            hardness,
            band_hv: hardness.map_or(hardness::ANNEALED_BAND_HV, |h| band_hv(h, hard, lamellar)),
            hardened: hardened.map(|piece| (piece.as_quenched(), Vec::new())),
            ..self.state(structure, soft, hard)
        }
    }

    /// The piece of a steel without kinetics. High alloy hardens in a medium as in a furnace that is
    /// led down too fast; annealed, its carbide takes all carbon. Of other steel nothing is told but
    /// what counts for the next heating, which is taken as that of fine pearlite.
    pub(super) fn unknown(&self, is_annealed: bool) -> PieceState {
        let matrix = 1.0 - self.soaked.point.carbide_volume_fraction;
        if is_annealed {
            let divorced = self.divorced(SLOW_BELOW_A1_K) * matrix;
            let structure = self.structure(&Shares {
                lamellar: matrix - divorced,
                divorced,
                hard: 0.0,
                ferrite: 0.0,
                below_a1_k: SLOW_BELOW_A1_K,
            });
            let all = self.settled.carbide_volume_fraction;
            return PieceState {
                fractions: Some(Fractions {
                    ferrite: 1.0 - all,
                    carbide: all,
                    ..Fractions::default()
                }),
                hardness: self.annealed(&structure),
                ..self.state(structure, matrix, 0.0)
            };
        }
        if !self.hardens_in_air() {
            let structure = self.structure(&Shares {
                lamellar: matrix,
                divorced: 0.0,
                hard: 0.0,
                ferrite: 0.0,
                below_a1_k: FINE_BELOW_A1_K,
            });
            return self.state(structure, matrix, 0.0);
        }
        let structure = self.structure(&Shares {
            lamellar: 0.0,
            divorced: 0.0,
            hard: matrix,
            ferrite: 0.0,
            below_a1_k: 0.0,
        });
        let start = AsQuenched::fully_martensitic(&self.soaked.dissolved);
        let hardness = hardness::mixture(&start.dissolved, &start.constituents, &Formed::default());
        let hardness = hardness.ok();
        PieceState {
            hardness,
            band_hv: hardness.map_or(0.0, |h| band_hv(h, 1.0, 0.0)),
            hardened: Some((start, Vec::new())),
            ..self.state(structure, 0.0, matrix)
        }
    }

    /// Whether steel hardens in any medium by the sum of what slows pearlite.
    fn hardens_in_air(&self) -> bool {
        let Composition { mn, cr, ni, mo, .. } = *self.steel;
        mn + cr + ni + mo >= HARDENS_IN_AIR_WT
    }

    /// The piece without constituents and hardness, when so much of it is ferrite, pearlite and
    /// bainite, and so much martensite and austenite, by volume.
    fn state(&self, structure: Structure, soft: f64, hard: f64) -> PieceState {
        // What the soak had dissolved, less what films have taken, is shared in proportion to volume.
        let in_solution_wt = self.soaked.carbon_in_solution_wt;
        let taken = self.films.volume_fraction * CEMENTITE_WT / self.soaked.dissolved.c.max(1e-6);
        let films_wt = in_solution_wt * taken.min(1.0);
        let part_wt = |share: f64| (in_solution_wt - films_wt) * share / (soft + hard).max(1e-6);
        PieceState {
            fractions: None,
            structure,
            grain_um: Some(self.soaked.grain_um),
            network: self.network(),
            carbon_in_carbide_wt: self.soaked.masses.carbide_content.c + films_wt + part_wt(soft),
            carbon_in_solution_wt: part_wt(hard),
            dissolved: self.soaked.dissolved,
            hardness: None,
            band_hv: hardness::ANNEALED_BAND_HV,
            hardened: None,
        }
    }

    fn network(&self) -> Network {
        let old = self.soaked.network_part * self.soaked.point.carbide_volume_fraction;
        let left = if old >= WHOLE_NETWORK {
            Network::Continuous
        } else if old >= 0.5 * WHOLE_NETWORK {
            Network::Broken
        } else {
            Network::None
        };
        // What was broken does not become whole by lying in the fire.
        self.films.network().max(left.min(self.network_before))
    }

    /// Part of the pearlite whose carbide grows on carbide that the soak has left.
    fn divorced(&self, below_a1_k: f64) -> f64 {
        let spacing_um = self.soaked.carbide_spacing_um(self.steel);
        if !spacing_um.is_finite() {
            return 0.0;
        }
        let far = spacing_um * below_a1_k.max(LEAST_BELOW_A1_K).powi(2) / DIVORCED_UM_K2;
        1.0 / (1.0 + far.powi(4))
    }

    fn carbides(&self, shares: &Shares) -> Carbides {
        let soaked = self.soaked;
        let all = self.settled.carbide_volume_fraction;
        let left = soaked.point.carbide_volume_fraction.min(all);
        let old_network = soaked.network_part * left;
        let films = (self.films.volume_fraction * (1.0 - left)).min(all - left);
        let new = all - left - films;
        let carrying = (shares.lamellar + shares.divorced + shares.hard).max(1e-9);
        let grown = new * shares.divorced / carrying;
        let round = left - old_network + grown;
        let growth = if left > old_network {
            (round / (left - old_network)).cbrt()
        } else {
            1.0
        };
        let of_lamellae = if shares.lamellar + shares.hard > 0.0 {
            shares.lamellar / (shares.lamellar + shares.hard)
        } else {
            1.0
        };
        let mixed = |lamellae: f64, martensite: f64| {
            (of_lamellae * lamellae.ln() + (1.0 - of_lamellae) * martensite.ln()).exp()
        };
        let (lamella_um, lamella_enrichment) = lamellae(shares.below_a1_k);
        let (martensite_um, martensite_enrichment, _) = IN_MARTENSITE;
        Carbides {
            round,
            round_um: self.ripening.radius_um(growth * soaked.carbide_radius_um),
            network: films + old_network,
            fine: new - grown,
            fine_um: self.ripening.radius_um(mixed(lamella_um, martensite_um)),
            fine_enrichment: mixed(lamella_enrichment, martensite_enrichment),
        }
    }

    fn structure(&self, shares: &Shares) -> Structure {
        let carbides = self.carbides(shares);
        let Carbides {
            round,
            round_um,
            network,
            fine,
            fine_um,
            fine_enrichment,
        } = carbides;
        let all = (round + network + fine).max(1e-9);
        let enrichment = (round * self.soaked.carbide_enrichment
            + network * NETWORK_ENRICHMENT
            + fine * fine_enrichment)
            / all;
        Structure {
            carbide_radius_um: fine_um,
            left_over_part: (round / (round + fine).max(1e-9)).clamp(0.0, 1.0),
            left_over_radius_um: round_um,
            network_part: (network / (all * self.outside_pearlite).max(1e-9)).clamp(0.0, 1.0),
            network_radius_um: network_radius_um(self.films),
            carbide_enrichment: self.ripening.enrichment(enrichment.clamp(0.0, 1.0)),
            ferrite_half_width_um: self.ferrite_half_width_um(shares),
            first_grain_um: self.first_grain_um(shares, round_um),
        }
    }

    fn ferrite_half_width_um(&self, shares: &Shares) -> f64 {
        let grain_um = self.soaked.grain_um;
        let (lamella_um, _) = lamellae(shares.below_a1_k);
        let (half_um, at_grain_um) = PEARLITE_HALF_WIDTH_UM;
        let between_lamellae_um =
            half_um * (lamella_um / 0.083).powf(0.75) * (grain_um / at_grain_um).powf(0.39);
        let (.., in_martensite_um) = IN_MARTENSITE;
        (shares.lamellar * between_lamellae_um
            + shares.divorced * SPHEROID_HALF_WIDTH_UM
            + shares.hard * in_martensite_um)
            / shares.sum()
            + FREE_FERRITE * shares.ferrite * grain_um
    }

    /// Austenite grain that the next heating begins with, µm.
    fn first_grain_um(&self, shares: &Shares, round_um: f64) -> f64 {
        let grain_um = self.soaked.grain_um;
        let (lamella_um, _) = lamellae(shares.below_a1_k);
        let logarithm = (shares.lamellar * first_grain_on_lamellae_um(lamella_um).ln()
            + shares.divorced * first_grain_on_spheroids_um(round_um).ln()
            + shares.hard * FIRST_GRAIN_IN_MARTENSITE_UM.ln()
            + shares.ferrite * grain_um.ln())
            / shares.sum();
        let begun_um = logarithm.exp();
        begun_um.powf(1.0 - INHERITED) * grain_um.max(begun_um).powf(INHERITED)
    }

    /// Pearlite whose carbide has gone to carbide that was there is ferrite with round carbide.
    fn with_round_carbide(&self, fractions: &Fractions, divorced: f64) -> Fractions {
        let formed = fractions.pearlite + fractions.bainite + fractions.martensite;
        let carrying = (formed + fractions.austenite).max(1e-9);
        let missing = (self.settled.carbide_volume_fraction - fractions.carbide).max(0.0);
        let carbide = (missing * divorced / carrying).min(divorced);
        Fractions {
            pearlite: fractions.pearlite - divorced,
            ferrite: fractions.ferrite + divorced - carbide,
            carbide: fractions.carbide + carbide,
            ..*fractions
        }
    }

    /// Hardness as if all carbide were round.
    fn annealed(&self, structure: &Structure) -> Option<Hardness> {
        let all = self.settled.carbide_volume_fraction;
        hardness::annealed(self.steel, all, mean_radius_um(structure)).ok()
    }
}

/// Radius of the spheres that dissolve as fast as films, µm: those of a network as it is forged are
/// half a µm.
fn network_radius_um(films: &BoundaryCarbide) -> f64 {
    const RADIUS_UM: (f64, f64) = (0.2, 2.0);
    (2.0 * films.half_thickness_um).clamp(RADIUS_UM.0, RADIUS_UM.1)
}

/// Band of a piece with a part of martensite and austenite and one of pearlite with lamellae, HV.
fn band_hv(hardness: Hardness, hard: f64, lamellar: f64) -> f64 {
    let quenched = Hardness::from_hrc_carried(hardness.hrc_carried() + AS_QUENCHED_BAND_HRC);
    hard * (quenched.hv - hardness.hv)
        + lamellar * hardness::SLOW_PEARLITE_BAND_HV
        + (1.0 - hard - lamellar) * hardness::ANNEALED_BAND_HV
}
