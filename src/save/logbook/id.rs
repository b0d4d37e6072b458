//! What tells one run, or one photo, from all others, also those of another computer.

use recalesce_texts::save::logbook as texts;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Longest identity, characters.
const LONGEST: usize = 40;

/// Identity of a run or a photo: small letters, digits and hyphens, so that it may stand in a key
/// or a file name as it is.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Id(String);

impl Id {
    /// The identity as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The first of `id-2`, `id-3`, … that is not taken; none where the name has no room for it.
    #[must_use]
    pub fn beside(&self, is_taken: impl Fn(&Self) -> bool) -> Option<Self> {
        (2..=9999)
            .filter_map(|n| Self::try_from(format!("{}-{n}", self.0)).ok())
            .find(|id| !is_taken(id))
    }
}

impl TryFrom<String> for Id {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let is_allowed = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if text.is_empty() || text.len() > LONGEST || !text.bytes().all(is_allowed) {
            return Err(texts::no_id(LONGEST));
        }
        Ok(Self(text))
    }
}

impl From<Id> for String {
    fn from(id: Id) -> Self {
        id.0
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_may_stand_in_a_key() {
        for good in ["1", "2b7e151628aed2a6", "knife-3"] {
            assert_eq!(Id::try_from(good.to_owned()).unwrap().as_str(), good);
        }
        for bad in ["", "A", "a b", "<b>", "ü", &"x".repeat(41)] {
            assert!(Id::try_from(bad.to_owned()).is_err(), "{bad}");
        }
    }

    #[test]
    fn the_next_free_number_stands_beside() {
        let id = Id::try_from("a".to_owned()).unwrap();
        assert_eq!(id.beside(|_| false).unwrap().as_str(), "a-2");
        assert_eq!(
            id.beside(|other| other.as_str() == "a-2").unwrap().as_str(),
            "a-3"
        );
        let full = Id::try_from("x".repeat(40)).unwrap();
        assert_eq!(full.beside(|_| false), None);
    }
}
