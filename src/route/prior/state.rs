//! The piece between two steps: what it consists of, its carbide, its grain, its hardness.

use crate::hardness::{self, AsQuenched, Hardness, TemperStep};
use crate::soak::{Network, StartingStructure, Structure};
use crate::steel::Composition;
use crate::transform::{Formed, FormedProduct, Fractions};
use recalesce_texts::route::prior as texts;
use serde::Serialize;

/// Spacing of pearlite goes inversely with how far below A1 it forms; the sphere that dissolves as
/// fast as its lamellae with it, µm K. Expert value: coarse lamellae form 37 K below A1.
const LAMELLA_UM_K: f64 = 0.083 * 37.0;
/// Bounds of that sphere, µm: the coarsest that furnace cooling leaves, and the finest of the
/// structures.
const LAMELLA_UM: (f64, f64) = (0.025, 0.12);
/// How far alloy has gone into pearlite that formed 37 K below A1, and how that falls with how far
/// below it formed. Expert values: those of coarse and of fine pearlite.
const LAMELLA_ENRICHMENT: (f64, f64) = (0.5, 1.25);
/// How far alloy has gone into a network. Expert value, as forged.
pub(super) const NETWORK_ENRICHMENT: f64 = 0.7;
/// Nothing transforms closer to A1, K. Expert value.
pub(super) const LEAST_BELOW_A1_K: f64 = 5.0;

/// What a piece is after a step before hardening.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PieceState {
    /// Constituents; none where no model tells them.
    pub fractions: Option<Fractions>,
    /// What counts of it when it is heated next.
    pub structure: Structure,
    /// Austenite grain of the last heating above A1, as mean intercept, µm; none for stock of which
    /// it is not known.
    pub grain_um: Option<f64>,
    /// Carbide on the grain boundaries.
    pub network: Network,
    /// Carbon in carbide, that of pearlite and bainite included, wt % of the piece.
    pub carbon_in_carbide_wt: f64,
    /// Carbon in solution in martensite and retained austenite, wt % of the piece.
    pub carbon_in_solution_wt: f64,
    /// What the matrix has dissolved, wt %: the austenite before it cooled, or all but carbide.
    pub dissolved: Composition,
    /// Hardness; none where no model tells it.
    pub hardness: Option<Hardness>,
    /// Half width of its band, nine times in ten, HV.
    pub band_hv: f64,
    /// The piece as quenched and its tempers since, where it holds martensite.
    #[serde(skip)]
    pub(super) hardened: Option<(AsQuenched, Vec<TemperStep>)>,
}

/// What all steps of a steel share.
#[derive(Debug, Clone, Copy)]
pub(super) struct Settled {
    /// All carbide that the steel can have, volume fraction.
    pub(super) carbide_volume_fraction: f64,
    /// Carbon of its eutectoid, wt %.
    pub(super) eutectoid_carbon_wt: f64,
    /// A1, °C.
    pub(super) a1_c: f64,
}

/// Pearlite as carbide: the sphere that dissolves as fast, µm, and how far alloy has gone into it.
pub(super) fn lamellae(below_a1_k: f64) -> (f64, f64) {
    let below_a1_k = below_a1_k.max(LEAST_BELOW_A1_K);
    let (least_um, most_um) = LAMELLA_UM;
    let (at_37_k, power) = LAMELLA_ENRICHMENT;
    (
        (LAMELLA_UM_K / below_a1_k).clamp(least_um, most_um),
        (at_37_k * (37.0 / below_a1_k).powf(power)).clamp(0.05, 0.9),
    )
}

/// Austenite grain that begins on a piece, µm: on lamellae, on round carbides, in martensite.
/// Expert values, through those of the named structures.
pub(super) fn first_grain_on_lamellae_um(radius_um: f64) -> f64 {
    10.0 * (radius_um / 0.083).sqrt()
}

/// As [`first_grain_on_lamellae_um`], on round carbides.
pub(super) fn first_grain_on_spheroids_um(radius_um: f64) -> f64 {
    8.4 * (radius_um / 0.373).powf(0.3)
}

/// As [`first_grain_on_lamellae_um`], in martensite and bainite.
pub(super) const FIRST_GRAIN_IN_MARTENSITE_UM: f64 = 5.0;

/// Mean radius by volume of all carbide but the network, µm.
pub(super) fn mean_radius_um(structure: &Structure) -> f64 {
    let left = structure.left_over_part;
    (left * structure.left_over_radius_um.ln() + (1.0 - left) * structure.carbide_radius_um.ln())
        .exp()
}

impl PieceState {
    /// Stock in one of the named structures.
    pub(super) fn of_stock(
        steel: &Composition,
        start: StartingStructure,
        settled: &Settled,
    ) -> Self {
        use StartingStructure as S;
        let structure = start.structure();
        let eutectoid_wt = settled.eutectoid_carbon_wt;
        let all = settled.carbide_volume_fraction;
        let (fractions, hardness, carbon_in_solution_wt) = match start {
            S::Spheroidised | S::CoarseSpheroidised | S::SubcriticalAnnealed => (
                Fractions {
                    ferrite: 1.0 - all,
                    carbide: all,
                    ..Fractions::default()
                },
                hardness::annealed(steel, all, structure.carbide_radius_um).ok(),
                0.0,
            ),
            S::LamellarPearlite | S::MediumPearlite | S::FinePearlite | S::AsForged => {
                let pearlite = (steel.c / eutectoid_wt.max(0.05)).clamp(0.0, 1.0);
                let fractions = Fractions {
                    pearlite,
                    ferrite: 1.0 - pearlite,
                    ..Fractions::default()
                };
                let formed = Formed {
                    pearlite: Some(FormedProduct {
                        temperature_c: settled.a1_c - LAMELLA_UM_K / structure.carbide_radius_um,
                        carbon_wt: eutectoid_wt,
                    }),
                    bainite: None,
                };
                let hardness = hardness::mixture(steel, &fractions, &formed).ok();
                (fractions, hardness, 0.0)
            }
            S::QuenchedAndRefined => (
                Fractions {
                    martensite: 1.0,
                    ..Fractions::default()
                },
                None,
                steel.c,
            ),
        };
        Self {
            fractions: Some(fractions),
            structure,
            grain_um: None,
            network: match start {
                S::AsForged if steel.c > eutectoid_wt + 0.05 => Network::Continuous,
                _ => Network::None,
            },
            carbon_in_carbide_wt: steel.c - carbon_in_solution_wt,
            carbon_in_solution_wt,
            dissolved: *steel,
            hardness,
            band_hv: hardness::ANNEALED_BAND_HV,
            hardened: None,
        }
    }

    /// How a shop's tools take it.
    #[must_use]
    pub fn worked_by(&self) -> Option<WorkedBy> {
        Some(WorkedBy::of(self.hardness?))
    }
}

/// What can still cut a piece. Common practice, no source: high-speed steel drills to about 35 HRC,
/// and a file of 62 to 65 HRC slides off from about 58 HRC.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WorkedBy {
    /// Drills, saws and files with ease.
    DrillEasily,
    /// Drills slowly with coolant; files.
    DrillSlowly,
    /// Too hard for a drill; a file still bites.
    FileOnly,
    /// A file slides more than it bites.
    FileHardly,
    /// Only grinds.
    Grinder,
}

impl WorkedBy {
    /// What can still cut a piece of this hardness.
    #[must_use]
    pub fn of(hardness: Hardness) -> Self {
        let hv = hardness.hv;
        if hv <= 250.0 {
            Self::DrillEasily
        } else if hv <= 340.0 {
            Self::DrillSlowly
        } else if hv <= 550.0 {
            Self::FileOnly
        } else if hv <= 650.0 {
            Self::FileHardly
        } else {
            Self::Grinder
        }
    }

    /// In words that follow "it".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::DrillEasily => texts::DRILLS_EASILY,
            Self::DrillSlowly => texts::DRILLS_SLOWLY,
            Self::FileOnly => texts::FILE_ONLY,
            Self::FileHardly => texts::FILE_HARDLY,
            Self::Grinder => texts::GROUND_ONLY,
        }
    }
}
