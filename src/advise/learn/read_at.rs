//! Where on a piece a hardness was read, by the user's own words. They read what was written: another language
//! adds its words and replaces none, for old runs keep theirs.

use crate::heat::{Place, Section};

/// Words that tell a cutting edge.
const EDGE: [&str; 2] = ["edge", "tip"];
/// Words that tell a surface.
const SURFACE: [&str; 4] = ["surface", "skin", "face", "rim"];
/// The word that tells another place that cools faster than the one that decides.
const CORNER: &str = "corner";
/// The word by which it is not that place: `10 mm from the edge`.
const AWAY_FROM: &str = "from";

/// Where a hardness was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadAt {
    /// Where the piece decides: nothing else is told.
    Deciding,
    /// At what is reached from outside: the cutting edge of a blade, the surface of another section.
    Outside,
    /// At another place that cools faster than the one that decides.
    Elsewhere,
}

impl ReadAt {
    /// By the words of a reading of a piece of a section.
    #[must_use]
    pub fn of(words: &str, section: Section) -> Self {
        let text = words.to_lowercase();
        let words = || text.split(|c: char| !c.is_alphabetic());
        let tells = |those: &[&str]| words().any(|word| those.contains(&word));
        let (outside, other) = match section {
            Section::Blade { .. } => (tells(&EDGE), tells(&SURFACE)),
            _ => (tells(&SURFACE), tells(&EDGE)),
        };
        match (outside, other || tells(&[CORNER])) {
            (false, false) => Self::Deciding,
            _ if tells(&[AWAY_FROM]) => Self::Deciding,
            (true, false) => Self::Outside,
            (_, true) => Self::Elsewhere,
        }
    }

    /// The word by which a reading is told to be of a place, if it is one that is told so.
    #[must_use]
    pub const fn word(place: Place) -> Option<&'static str> {
        match place {
            Place::Edge => Some(EDGE[0]),
            Place::Surface => Some(SURFACE[0]),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_tell_where_it_was_read() {
        let round = Section::Round { diameter_mm: 20.0 };
        let blade = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 3.0,
            height_mm: 30.0,
            grind: crate::heat::Grind::Straight,
        };
        for (words, of_blade, of_round) in [
            ("", ReadAt::Deciding, ReadAt::Deciding),
            ("spine", ReadAt::Deciding, ReadAt::Deciding),
            ("Edge, near the tip", ReadAt::Outside, ReadAt::Elsewhere),
            ("10 mm from the edge", ReadAt::Deciding, ReadAt::Deciding),
            ("surface", ReadAt::Elsewhere, ReadAt::Outside),
            ("face of the spine", ReadAt::Elsewhere, ReadAt::Outside),
            ("corner", ReadAt::Elsewhere, ReadAt::Elsewhere),
            (
                "surface at the corner",
                ReadAt::Elsewhere,
                ReadAt::Elsewhere,
            ),
            ("ledge", ReadAt::Deciding, ReadAt::Deciding),
        ] {
            assert_eq!(ReadAt::of(words, blade), of_blade, "{words}");
            assert_eq!(ReadAt::of(words, round), of_round, "{words}");
        }
    }
}
