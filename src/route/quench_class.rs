//! The quench class of a handbook: which quenchants it names, and whether one of another kind is
//! taken.

use crate::heat::Family;

/// Quenchants that a class can name, from gentle to harsh: a word of the class, and the quenchant of
/// the list. Thin pieces that harden in air are kept flat between plates. Common practice, no source.
const OFFERED: [(Named, &str); 6] = [
    (Named::Air, "plate_Al_clamped"),
    (Named::Oil, "oil_medium"),
    (Named::AnyOil, "oil_medfast"),
    (Named::FastOil, "oil_fast"),
    (Named::Water, "water20"),
    (Named::Brine, "brine10"),
];

/// What a part of a class names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Named {
    /// Air or plates.
    Air,
    /// Air for thin pieces alone.
    ThinAir,
    /// Medium, warm or interrupted oil.
    Oil,
    /// Fast oil.
    FastOil,
    /// Oil of no kind in particular.
    AnyOil,
    Salt,
    Water,
    Brine,
}

impl Named {
    fn of(part: &str) -> Option<Self> {
        let (word, aside) = part.split_once('(').unwrap_or((part, ""));
        let word = word.trim();
        if word.starts_with("air") {
            Some(if aside.starts_with("thin") {
                Self::ThinAir
            } else {
                Self::Air
            })
        } else if word.starts_with("plate") {
            Some(Self::Air)
        } else if word.starts_with("salt") {
            Some(Self::Salt)
        } else if word.starts_with("water") {
            Some(Self::Water)
        } else if word.starts_with("brine") {
            Some(Self::Brine)
        } else if word.starts_with("fast") {
            Some(Self::FastOil)
        } else if word == "oil" {
            Some(Self::AnyOil)
        } else {
            (word.ends_with("oil") || word == "medium").then_some(Self::Oil)
        }
    }

    /// Whether this names a quenchant that is offered under a word.
    fn offers(self, under: Self) -> bool {
        self == under || self == Self::AnyOil && matches!(under, Self::Oil | Self::FastOil)
    }

    /// Whether a quenchant of a family is of this kind.
    const fn has(self, family: Family) -> bool {
        match self {
            Self::Air | Self::ThinAir => {
                matches!(family, Family::Air | Family::Gas | Family::Plates)
            }
            Self::Oil | Self::FastOil | Self::AnyOil => {
                matches!(family, Family::Oil | Family::HotOil | Family::VegetableOil)
            }
            Self::Salt => matches!(family, Family::Salt),
            Self::Water => matches!(family, Family::Water),
            Self::Brine => matches!(family, Family::Brine),
        }
    }
}

fn named(class: &str) -> impl Iterator<Item = Named> {
    class
        .split(['/', ';'])
        .flat_map(|part| part.split(" or "))
        .filter_map(|part| Named::of(part.trim()))
}

/// The quenchants of the list that a class names, from gentle to harsh. Salt is left out: it is
/// named beside oil, and few shops have it.
pub(super) fn offered(class: &str) -> impl Iterator<Item = &'static str> {
    OFFERED
        .into_iter()
        .filter(move |(under, _)| named(class).any(|named| named.offers(*under)))
        .map(|(_, name)| name)
}

/// Whether a class names quenchants of this family. One of the user's own may be of any.
pub(super) fn names(class: &str, family: Family) -> bool {
    family == Family::Own || named(class).any(|named| named.has(family))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::media;
    use crate::steel::grades;

    #[test]
    fn classes_name_quenchants_from_gentle_to_harsh() {
        for (class, expected) in [
            ("water/brine", &["water20", "brine10"][..]),
            ("water or fast oil (thin)", &["oil_fast", "water20"]),
            ("fast/medium oil", &["oil_medium", "oil_fast"]),
            ("oil", &["oil_medium", "oil_medfast", "oil_fast"]),
            (
                "oil (<=150 C bath: martensite)",
                &["oil_medium", "oil_medfast", "oil_fast"],
            ),
            (
                "oil / air (thin)",
                &["oil_medium", "oil_medfast", "oil_fast"],
            ),
            (
                "air / interrupted oil (>65 mm)",
                &["plate_Al_clamped", "oil_medium"],
            ),
            ("warm agitated oil", &["oil_medium"]),
            (
                "oil / salt 180-220",
                &["oil_medium", "oil_medfast", "oil_fast"],
            ),
        ] {
            assert_eq!(offered(class).collect::<Vec<_>>(), expected, "{class}");
        }
    }

    #[test]
    fn every_part_of_every_class_is_understood() {
        for grade in grades() {
            let class = &grade.quench_class;
            let parts = class.split(['/', ';']).flat_map(|part| part.split(" or "));
            assert_eq!(parts.count(), named(class).count(), "{class}");
            for name in offered(class) {
                let medium = media().iter().find(|medium| medium.name == name);
                assert!(names(class, medium.unwrap().family), "{class} {name}");
            }
        }
        assert!(!names("water/brine", Family::Oil));
        assert!(names("oil / salt 180-220", Family::Salt));
        assert!(names("oil", Family::Own));
    }
}
