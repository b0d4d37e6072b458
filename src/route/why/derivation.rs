//! How a number comes about: its formula, what goes in, and how that is shown.

use super::Balance;
use crate::numeric::formula::{Formula, Symbol, short};
use crate::route::sentence::NumberKey;
use crate::sources::{Source, Standing};
use crate::steel::{Composition, Element};
use crate::units::{
    TemperatureScale, format_duration_s, format_fixed, format_hrc, format_hv, format_temperature,
    format_weight_percent,
};
use recalesce_texts::route::why as texts;
use std::borrow::Cow;

/// What goes into a formula.
#[derive(Debug, Clone)]
pub struct Input {
    /// Its letter, with its value in the unit of the formula.
    pub symbol: Symbol,
    /// What it is.
    pub name: String,
    /// The unit in which the formula counts; empty for a plain number.
    pub unit: &'static str,
    /// The number that it is; none for a setting of the route or a fact of the cooling.
    pub came_from: Option<NumberKey>,
}

/// How a number comes about.
#[derive(Debug, Clone)]
pub struct Derivation {
    /// What it is.
    pub title: String,
    /// Its letter, with its value.
    pub symbol: Symbol,
    /// Its unit.
    pub unit: &'static str,
    /// The formula; none where the number is given, or found in another way.
    pub formula: Option<Formula>,
    /// The equation that it solves, where it was found by steps.
    pub balance: Option<Balance>,
    /// What goes in.
    pub inputs: Vec<Input>,
    /// How it was found, in words.
    pub how: Cow<'static, str>,
    /// Where the law is from.
    pub sources: Vec<&'static Source>,
    /// Where it holds.
    pub validity: Cow<'static, str>,
    /// How far it errs.
    pub error: Cow<'static, str>,
}

impl Derivation {
    pub(super) fn new(
        title: impl Into<String>,
        symbol: impl Into<Cow<'static, str>>,
        value: f64,
        unit: &'static str,
    ) -> Self {
        Self {
            title: title.into(),
            symbol: Symbol {
                name: symbol.into(),
                value,
            },
            unit,
            formula: None,
            balance: None,
            inputs: Vec::new(),
            how: Cow::Borrowed(""),
            sources: Vec::new(),
            validity: Cow::Borrowed(""),
            error: Cow::Borrowed(""),
        }
    }

    pub(super) fn by(
        mut self,
        inputs: Vec<Input>,
        law: impl FnOnce(&Letters<'_>) -> Formula,
    ) -> Self {
        self.formula = Some(law(&Letters(&inputs)));
        self.inputs = inputs;
        self
    }

    pub(super) fn from(mut self, inputs: Vec<Input>) -> Self {
        self.inputs = inputs;
        self
    }

    pub(super) fn how(mut self, words: impl Into<Cow<'static, str>>) -> Self {
        self.how = words.into();
        self
    }

    pub(super) fn source(mut self, sources: &[&'static Source]) -> Self {
        self.sources.extend_from_slice(sources);
        self
    }

    pub(super) fn valid(mut self, words: impl Into<Cow<'static, str>>) -> Self {
        self.validity = words.into();
        self
    }

    pub(super) fn errs(mut self, words: impl Into<Cow<'static, str>>) -> Self {
        self.error = words.into();
        self
    }
}

/// A value with its unit, as it is shown.
fn shown(value: f64, unit: &str, scale: TemperatureScale) -> String {
    match unit {
        "°C" => format_temperature(value, scale),
        "HRC" => format_hrc(value),
        "HV" => format_hv(value),
        "wt %" => format_weight_percent(value),
        "s" => format_duration_s(value),
        "ASTM" => format!("ASTM\u{a0}{}", format_fixed(value, 1)),
        "µm" => format!("{}\u{a0}µm", format_fixed(value, 1)),
        "" => short(value),
        other => format!("{}\u{a0}{other}", short(value)),
    }
}

impl Input {
    /// Its value with its unit.
    #[must_use]
    pub fn figure(&self) -> String {
        let space = if self.unit.is_empty() { "" } else { "\u{a0}" };
        format!("{}{space}{}", self.symbol.value_text(), self.unit)
    }
}

impl Derivation {
    /// The number with its unit.
    #[must_use]
    pub fn figure(&self, scale: TemperatureScale) -> String {
        shown(self.symbol.value, self.unit, scale)
    }

    /// The formula in pieces of MathML between which a line may break, first with letters, then with the
    /// values in their place; and in plain text.
    #[must_use]
    pub fn typeset(&self) -> Option<Typeset> {
        let formula = self.formula.as_ref()?;
        let begun = |mut pieces: Vec<String>| {
            if let Some(first) = pieces.first_mut() {
                *first = format!("{}<mo>=</mo>{first}", self.symbol.mathml());
            }
            pieces
        };
        Some(Typeset {
            letters: begun(formula.mathml()),
            values: begun(formula.mathml_of_values()),
            plain: format!("{} = {}", self.symbol.plain(), formula.plain()),
        })
    }

    /// Pairs of term and text: how it was found, source, validity, error.
    #[must_use]
    pub fn rows(&self) -> Vec<(&'static str, String)> {
        let sources = self.sources.iter().map(|source| {
            let standing = match source.standing {
                Standing::Read => texts::READ_IN_SOURCE,
                Standing::FromMemory => texts::FROM_MEMORY,
                Standing::FittedHere => texts::FITTED_HERE,
                Standing::CommonPractice => texts::COMMON_PRACTICE,
            };
            let Source {
                authors,
                year,
                title,
                venue,
                ..
            } = source;
            (
                texts::SOURCE,
                texts::source(authors, *year, title, venue, standing),
            )
        });
        let words = |term, text: &Cow<'static, str>| {
            (!text.is_empty()).then(|| (term, text.clone().into_owned()))
        };
        let check = self.balance.as_ref();
        words(texts::HOW, &self.how)
            .into_iter()
            .chain(check.map(|balance| (texts::CHECK, balance.told())))
            .chain(sources)
            .chain(words(texts::VALID_FOR, &self.validity))
            .chain(words(texts::KNOWN_ERROR, &self.error))
            .collect()
    }
}

/// A formula as it is shown.
#[derive(Debug, Clone)]
pub struct Typeset {
    /// With letters.
    pub letters: Vec<String>,
    /// With values in their place.
    pub values: Vec<String>,
    /// In a line of text.
    pub plain: String,
}

/// The letters of what goes in.
pub(super) struct Letters<'a>(&'a [Input]);

impl Letters<'_> {
    /// A letter by its name; a name that is not there counts as zero.
    pub(super) fn get(&self, name: &str) -> Formula {
        let found = self.0.iter().find(|input| input.symbol.name == name);
        found.map_or(Formula::Constant(0.0), |input| {
            Formula::Symbol(input.symbol.clone())
        })
    }

    /// The letter of an element.
    pub(super) fn content(&self, element: Element) -> Formula {
        self.get(element.symbol())
    }
}

/// Something that goes in and is a number by itself.
pub(super) fn number(
    symbol: impl Into<Cow<'static, str>>,
    name: impl Into<String>,
    value: f64,
    unit: &'static str,
    came_from: NumberKey,
) -> Input {
    Input {
        came_from: Some(came_from),
        ..given(symbol, name, value, unit)
    }
}

/// Something that is given.
pub(super) fn given(
    symbol: impl Into<Cow<'static, str>>,
    name: impl Into<String>,
    value: f64,
    unit: &'static str,
) -> Input {
    Input {
        symbol: Symbol {
            name: symbol.into(),
            value,
        },
        name: name.into(),
        unit,
        came_from: None,
    }
}

/// Contents of a composition, each under its own key.
pub(super) fn contents(
    elements: &[Element],
    steel: &Composition,
    name: impl Fn(&str) -> String,
    key: impl Fn(Element) -> NumberKey,
) -> Vec<Input> {
    let each = elements.iter().map(|&element| {
        number(
            element.symbol(),
            name(element.name()),
            steel.get(element),
            "wt %",
            key(element),
        )
    });
    each.collect()
}
