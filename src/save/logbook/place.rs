//! Places of a piece as words of the file and of the table, which read the same in every language.

use crate::heat::Place;
use recalesce_texts::save::run as texts;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serializer};

/// The places that a prediction may be of.
const WORDS: [(Place, &str); 9] = [
    (Place::Centre, "centre"),
    (Place::Surface, "surface"),
    (Place::Corner, "corner"),
    (Place::Edge, "edge"),
    (Place::Quarter, "quarter"),
    (Place::Middle, "middle"),
    (Place::ThreeQuarter, "three_quarter"),
    (Place::Spine, "spine"),
    (Place::SpineSurface, "spine_surface"),
];

/// The word of a place; empty of one that no prediction is of.
pub(super) fn place_word(place: Place) -> &'static str {
    let mut words = WORDS.iter();
    let found = words.find(|(named, _)| *named == place);
    found.map_or("", |(_, word)| word)
}

pub(super) fn serialize<S: Serializer>(place: &Option<Place>, to: S) -> Result<S::Ok, S::Error> {
    to.serialize_str(place.map_or("", place_word))
}

pub(super) fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Option<Place>, D::Error> {
    let written = String::deserialize(from)?;
    let mut words = WORDS.iter();
    let found = words.find(|(_, word)| *word == written);
    let known = || WORDS.map(|(_, word)| word).join(", ");
    found
        .map(|(place, _)| Some(*place))
        .ok_or_else(|| D::Error::custom(texts::no_place(&written, &known())))
}
