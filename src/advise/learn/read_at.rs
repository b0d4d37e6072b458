//! Where on a piece a hardness was read, by the user's own words. They read what was written: another language
//! adds its words and replaces none, for old runs keep theirs.

use crate::heat::{Place, Section};

/// Words that tell a cutting edge.
const EDGE: [&str; 2] = ["edge", "tip"];
/// Words that tell the thick side of a blade.
const SPINE: [&str; 2] = ["spine", "back"];
/// Words that tell a surface.
const SURFACE: [&str; 4] = ["surface", "skin", "face", "rim"];
/// Words that tell the inside of a piece that was cut through.
const INSIDE: [&str; 5] = ["centre", "center", "core", "axis", "inside"];
/// Words that tell another place that cools faster than the one that decides.
const CORNER: [&str; 1] = ["corner"];
/// Words by which it is not the place that is named: `10 mm from the edge`.
const AWAY_FROM: [&str; 1] = ["from"];

/// Where a hardness was read on a piece that does not harden through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadAt {
    /// Where the piece decides: near the spine of a blade, inside another section.
    Deciding,
    /// At what is reached from outside: the cutting edge of a blade, the surface of another section, which is
    /// where a tester is set if nothing is told.
    Outside,
    /// At another place, or on a blade at one that is not told.
    Elsewhere,
}

/// The words of a text.
struct Words(String);

impl Words {
    fn of(text: &str) -> Self {
        Self(text.to_ascii_lowercase())
    }

    fn tell(&self, those: &[&str]) -> bool {
        let mut words = self.0.split(|c: char| !c.is_alphabetic());
        words.any(|word| those.contains(&word))
    }
}

impl ReadAt {
    /// By the words of a reading of a piece of a section.
    #[must_use]
    pub fn of(words: &str, section: Section) -> Self {
        let words = Words::of(words);
        let [edge, spine, surface, inside] =
            [&EDGE[..], &SPINE, &SURFACE, &INSIDE].map(|those| words.tell(those));
        let is_blade = matches!(section, Section::Blade { .. });
        if words.tell(&CORNER) || words.tell(&AWAY_FROM) {
            return Self::Elsewhere;
        }
        match (is_blade, edge, surface) {
            (true, true, false) if !spine => Self::Outside,
            (true, false, false) if spine => Self::Deciding,
            (true, ..) | (false, true, _) => Self::Elsewhere,
            (false, false, false) if inside => Self::Deciding,
            (false, false, _) => Self::Outside,
        }
    }

    /// The word by which a reading is told to be of the place that is predicted for a section.
    #[must_use]
    pub const fn word(self, section: Section) -> &'static str {
        let is_blade = matches!(section, Section::Blade { .. });
        match (self, is_blade) {
            (Self::Outside, true) => EDGE[0],
            (Self::Outside, false) => SURFACE[0],
            (_, true) => SPINE[0],
            (_, false) => INSIDE[0],
        }
    }
}

/// Whether words tell a place that cools faster than the one that decides, whatever the section.
pub(super) fn is_faster(words: &str) -> bool {
    let words = Words::of(words);
    let tells = |those: &[&str]| words.tell(those);
    (tells(&EDGE) || tells(&SURFACE) || tells(&CORNER)) && !tells(&AWAY_FROM)
}

/// Whether a prediction of a place is of what is reached from outside.
pub(crate) const fn is_outside(place: Place) -> bool {
    matches!(place, Place::Edge | Place::Surface)
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
        use ReadAt::{Deciding, Elsewhere, Outside};
        for (words, of_blade, of_round) in [
            ("", Elsewhere, Outside),
            ("by the stamp", Elsewhere, Outside),
            ("Spine", Deciding, Outside),
            ("core, cut through", Elsewhere, Deciding),
            ("Edge, near the tip", Outside, Elsewhere),
            ("back of the edge", Elsewhere, Elsewhere),
            ("10 mm from the edge", Elsewhere, Elsewhere),
            ("surface", Elsewhere, Outside),
            ("face of the spine", Elsewhere, Outside),
            ("surface at the corner", Elsewhere, Elsewhere),
            ("ledge", Elsewhere, Outside),
        ] {
            assert_eq!(ReadAt::of(words, blade), of_blade, "{words}");
            assert_eq!(ReadAt::of(words, round), of_round, "{words}");
        }
        for section in [blade, round] {
            for place in [Deciding, Outside] {
                assert_eq!(ReadAt::of(place.word(section), section), place);
            }
        }
    }

    #[test]
    fn ten_millimetres_from_the_edge_is_not_at_it() {
        for (words, is) in [
            ("Edge", true),
            ("surface", true),
            ("corner", true),
            ("10 mm from the edge", false),
            ("spine", false),
            ("", false),
            ("ledge", false),
        ] {
            assert_eq!(is_faster(words), is, "{words}");
        }
    }
}
