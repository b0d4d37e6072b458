//! A sentence in pieces: its words, and each number of it a key that can be opened.

use super::why::Quantity;

/// How a sentence is marked: by shape and colour, never colour alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// A fact, neither good nor bad.
    Plain,
    /// As it should be.
    Holds,
    /// At the edge: look closer.
    Narrow,
    /// Not as it should be.
    Misses,
}

/// A number of a sentence, as a key to what stands behind it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumberKey {
    /// Carbon in solution after the soak.
    DissolvedCarbon,
    /// Carbide left after the soak.
    CarbideLeft,
    /// Grain after the soak.
    Grain,
    /// Seconds to spare at the nose.
    Margin,
    /// Seconds of the next slower quenchant.
    NextSlower,
    /// Austenite left after the quench.
    RetainedAustenite,
    /// Austenite left after the cold bath, and the gain in hardness.
    ColdTreatment,
    /// Hardness after the last step.
    FinalHardness,
    /// Time until the core is at the temperature of the furnace.
    HeatingUp,
    /// Grain after a soak that was too hot.
    Overheated,
    /// What air does to the surface.
    Skin,
    /// Hardness after a step before hardening, counted from zero.
    StepHardness(usize),
    /// Grain of the heat of such a step.
    StepGrain(usize),
    /// Carbide after such a step.
    StepCarbide(usize),
    /// A number behind another.
    Behind(Quantity),
}

/// A piece of a sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Part {
    /// Plain words.
    Text(String),
    /// The verdict's words.
    Lead(String),
    /// A number that can be opened.
    Number(String, NumberKey),
}

/// A sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sentence {
    /// How it is marked.
    pub tone: Tone,
    /// Its pieces, in order.
    pub parts: Vec<Part>,
}

impl Sentence {
    /// The sentence as plain text.
    #[must_use]
    pub fn text(&self) -> String {
        self.parts
            .iter()
            .map(|part| match part {
                Part::Text(text) | Part::Lead(text) | Part::Number(text, _) => text.as_str(),
            })
            .collect()
    }

    pub(super) const fn new(tone: Tone) -> Self {
        Self {
            tone,
            parts: Vec::new(),
        }
    }

    pub(super) fn text_part(mut self, text: impl Into<String>) -> Self {
        self.push(Part::Text(text.into()));
        self
    }

    /// Says one more text. Each place in it, such as `{grain}`, takes the parts of its name, so that a
    /// translation orders them as it likes; one without a part is seen by its name. Every part given has its
    /// place: a text that has lost one would leave out a number in silence, which tests do not let pass.
    pub(super) fn say(mut self, text: &str, parts: &[(&str, Part)]) -> Self {
        #[cfg(test)]
        for (name, _) in parts {
            let has_place = text.contains(&format!("{{{name}}}"));
            assert!(has_place, "{name}: {text}");
        }
        if !self.parts.is_empty() {
            self.push(Part::Text(" ".to_owned()));
        }
        let mut rest = text;
        while let Some((before, place)) = rest.split_once('{')
            && let Some((name, after)) = place.split_once('}')
        {
            self.push(Part::Text(before.to_owned()));
            let mut of_place = parts.iter().filter(|(of, _)| *of == name).peekable();
            if of_place.peek().is_none() {
                self.push(Part::Text(format!("{{{name}}}")));
            }
            for (_, part) in of_place {
                self.push(part.clone());
            }
            rest = after;
        }
        self.push(Part::Text(rest.to_owned()));
        self
    }

    /// Adds a part; texts side by side become one.
    fn push(&mut self, part: Part) {
        match (self.parts.last_mut(), part) {
            (Some(Part::Text(last)), Part::Text(more)) => last.push_str(&more),
            (_, Part::Text(none)) if none.is_empty() => {}
            (_, part) => self.parts.push(part),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_take_their_parts_in_the_order_of_the_text() {
        let grain = ("grain", Part::Number("8".to_owned(), NumberKey::Grain));
        let words = ["old", " steel"].map(|text| ("words", Part::Text(text.to_owned())));
        let [old, steel] = words;
        let said = Sentence::new(Tone::Holds)
            .say("{grain} in {words}: {lost}", &[old, grain.clone(), steel])
            .say("Open {", &[]);
        let rest = Part::Text(" in old steel: {lost} Open {".to_owned());
        assert_eq!(said.parts, [grain.1, rest]);
    }
}
