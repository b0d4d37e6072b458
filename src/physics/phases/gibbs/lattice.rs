//! The sublattice models: which constituents share which sites, and the magnetic constants.

use super::parameters::Component::{self, C, Cr, Fe, Mn, Mo, Ni, Si, V, Va, W};
use super::parameters::{BCC_A2, CEMENTITE, FCC_A1, M6C, M7C3, M23C6, Parameter};

/// Constants of the magnetic term.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Magnetism {
    /// Divisor of negative ordering temperatures and moments.
    pub(crate) antiferromagnetic_factor: f64,
    /// Share of the enthalpy absorbed above the ordering temperature.
    pub(crate) short_range_share: f64,
}

/// The crystal structures described. MC is austenite's structure with its carbon sites filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) enum Structure {
    /// Face-centred cubic: austenite and MC.
    Fcc,
    /// Body-centred cubic: ferrite.
    Bcc,
    /// Orthorhombic M3C.
    Cementite,
    /// M7C3.
    M7C3,
    /// M23C6.
    M23C6,
    /// M6C.
    M6C,
}

impl Structure {
    pub(crate) const ALL: [Self; 6] = [
        Self::Fcc,
        Self::Bcc,
        Self::Cementite,
        Self::M7C3,
        Self::M23C6,
        Self::M6C,
    ];

    /// Sites per formula unit and constituents of each sublattice.
    pub(crate) const fn sublattices(self) -> &'static [(f64, &'static [Component])] {
        const METALS: &[Component] = &[Cr, Fe, Mn, Mo, Ni, Si, V, W];
        match self {
            Self::Fcc => &[(1.0, METALS), (1.0, &[C, Va])],
            Self::Bcc => &[(1.0, METALS), (3.0, &[C, Va])],
            Self::Cementite => &[(3.0, METALS), (1.0, &[C])],
            Self::M7C3 => &[(7.0, &[Cr, Fe, Mn, Mo, Ni, V, W]), (3.0, &[C])],
            Self::M23C6 => &[
                (20.0, &[Cr, Fe, Mn, Ni, V]),
                (3.0, &[Cr, Fe, Mn, Mo, Ni, V, W]),
                (6.0, &[C]),
            ],
            Self::M6C => &[
                (2.0, &[Fe]),
                (2.0, &[Fe, Mo, W]),
                (2.0, &[Cr, Fe, Mo, W]),
                (1.0, &[C]),
            ],
        }
    }

    /// Magnetic constants, where the phase has a magnetic term.
    pub(crate) const fn magnetism(self) -> Option<Magnetism> {
        match self {
            Self::Fcc | Self::Cementite => Some(Magnetism {
                antiferromagnetic_factor: -3.0,
                short_range_share: 0.28,
            }),
            Self::Bcc => Some(Magnetism {
                antiferromagnetic_factor: -1.0,
                short_range_share: 0.40,
            }),
            Self::M7C3 | Self::M23C6 | Self::M6C => None,
        }
    }

    /// Parameters of the phase.
    pub(crate) const fn parameters(self) -> &'static [Parameter] {
        match self {
            Self::Fcc => FCC_A1,
            Self::Bcc => BCC_A2,
            Self::Cementite => CEMENTITE,
            Self::M7C3 => M7C3,
            Self::M23C6 => M23C6,
            Self::M6C => M6C,
        }
    }
}
