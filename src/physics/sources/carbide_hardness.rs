//! Hardness of the carbides of steel, as handbooks of tool steel give it: ranges from memory, no single
//! source. They tell what stands abrasion by quartz, about 1000 HV, and by harder grit.

use super::{Source, Standing};
use crate::steel::Composition;

/// Where these numbers come from.
pub const SOURCE: Source = Source {
    key: "carbide_hardness",
    authors: "handbooks of tool steel",
    year: 1998,
    title: "Hardness of carbides in tool steel",
    venue: "ranges as recalled, no single source",
    link: None,
    used_for: "wear: hardness of the carbide that is left",
    standing: Standing::CommonPractice,
};

/// Kinds of carbide, by rising hardness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CarbideKind {
    /// Cementite, with or without alloy.
    Cementite,
    /// Chromium carbide M23C6.
    M23C6,
    /// Chromium carbide M7C3.
    M7C3,
    /// Mostly carbides of vanadium, tungsten and molybdenum.
    MC,
}

impl CarbideKind {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cementite => "cementite",
            Self::M23C6 => "chromium carbide M23C6",
            Self::M7C3 => "chromium carbide M7C3",
            Self::MC => "carbide of vanadium, tungsten and molybdenum",
        }
    }

    /// Range of Vickers hardness.
    #[must_use]
    pub const fn hv(self) -> [u16; 2] {
        match self {
            Self::Cementite => [1000, 1200],
            Self::M23C6 => [1200, 1500],
            Self::M7C3 => [1500, 1800],
            Self::MC => [1500, 2900],
        }
    }

    /// What most of a carbide is, told by the composition of all of it together, wt %: M7C3 holds 9 %
    /// carbon, M23C6 5.5 %, cementite 6.7 % and at most about 20 % chromium.
    #[must_use]
    pub fn of(carbide: &Composition) -> Option<Self> {
        if carbide.c <= 0.0 {
            None
        } else if carbide.v + carbide.w + carbide.mo > MOSTLY_WT {
            Some(Self::MC)
        } else if carbide.cr < CHROMIUM_WT {
            Some(Self::Cementite)
        } else if carbide.c < BETWEEN_CARBON_WT {
            Some(Self::M23C6)
        } else {
            Some(Self::M7C3)
        }
    }
}

/// Vanadium, tungsten and molybdenum that make a carbide mostly theirs, wt %.
const MOSTLY_WT: f64 = 40.0;
/// Chromium from which it is no cementite, wt %.
const CHROMIUM_WT: f64 = 25.0;
/// Carbon between M23C6 and M7C3, wt %.
const BETWEEN_CARBON_WT: f64 = 7.2;

#[cfg(test)]
mod tests {
    use super::*;

    /// Formulas: (Cr4Fe3)C3, Cr15Fe8C6, Fe3C and VC by the weights of their atoms.
    #[test]
    fn kinds_by_their_formulas() {
        let carbide = |c, cr, v| Composition {
            c,
            cr,
            v,
            ..Composition::default()
        };
        for (carbide, kind) in [
            (carbide(8.8, 50.9, 0.0), CarbideKind::M7C3),
            (carbide(5.6, 60.0, 0.0), CarbideKind::M23C6),
            (carbide(6.7, 10.0, 0.0), CarbideKind::Cementite),
            (carbide(19.1, 0.0, 80.9), CarbideKind::MC),
        ] {
            assert_eq!(CarbideKind::of(&carbide), Some(kind));
        }
        assert_eq!(CarbideKind::of(&Composition::default()), None);
    }
}
