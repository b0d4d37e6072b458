//! Why a number is what it is: the formula by which it was computed, what went in, and where each of
//! those came from in turn, from the final hardness back to the composition.
//!
//! The formulas are the laws of the models themselves, traced ([`crate::numeric::formula`]): nothing is
//! written a second time. Where a number comes of a search or of steps in time, the balance is shown
//! that holds between the numbers found, with what found them.

mod balance;
mod hardness;
mod margin;
mod parts;
mod quench;
mod soak;
mod starts;
mod temper;
#[cfg(test)]
mod tests;
mod workings;

pub use balance::Balance;

use super::outcome::{Outcome, Step};
use super::plan::Route;
use super::sentence::NumberKey;
use crate::numeric::formula::{Formula, Symbol, short};
use crate::sources::{Source, Standing};
use crate::steel::{Composition, Element};
use crate::transform::Product;
use crate::units::{
    TemperatureScale, format_duration_s, format_fixed, format_hrc, format_hv, format_temperature,
    format_weight_percent,
};
use recalesce_texts::route::why as texts;
use std::borrow::Cow;
use workings::Workings;

/// A number on the way from composition to hardness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Content of the steel.
    Content(Element),
    /// Where austenite begins.
    A1,
    /// Where the second phase ends.
    SecondPhase,
    /// Carbon that equilibrium allows in the austenite at the soak.
    AllowedCarbon,
    /// What is dissolved in the austenite after the soak.
    Dissolved(Element),
    /// Mass fraction of carbide after the soak.
    CarbideMass,
    /// Its volume fraction.
    CarbideVolume,
    /// Mean intercept of the austenite grain.
    Intercept,
    /// ASTM number of the austenite grain.
    Grain,
    /// Start of martensite.
    Ms,
    /// Start of martensite of the austenite that is left at the place that decides.
    MsOfRest,
    /// Start of bainite.
    Bs,
    /// Rate parameter of martensite.
    RateParameter,
    /// Temperature at and above which a product does not form.
    UpperLimit(Product),
    /// What composition and grain make of its start time, as a logarithm.
    StartTerm(Product),
    /// Its shortest start time.
    NoseTime(Product),
    /// Time that the deciding place takes from A1 to the nose.
    TimeTaken,
    /// Time that it may take.
    TimeAllowed,
    /// Factor by which the quench may be slower.
    Factor,
    /// The least and the most that the factor may be.
    FactorEnd {
        /// Whether the least.
        is_least: bool,
    },
    /// Seconds to spare.
    Seconds,
    /// Volume fraction of a product of diffusion after the quench.
    Part(Product),
    /// Its age after the quench, in multiples of its 1 % start time.
    Age(Product),
    /// Volume fraction of martensite after the quench.
    Martensite,
    /// Volume fraction of retained austenite after a step.
    Austenite(Step),
    /// How much of the austenite hardened.
    Hardened,
    /// Hardness of martensite by its carbon.
    MartensiteHrc,
    /// Hardness of martensite after it has tempered on the way down.
    MartensiteHv(Step),
    /// The same without its usual austenite.
    AloneHv(Step),
    /// Hardness of a product of diffusion.
    ProductHv(Product),
    /// Hardness after a step, HV.
    Hv(Step),
    /// Hardness after a step, HRC.
    Hrc(Step),
    /// What alloying holds against tempering.
    Held,
    /// Whole fall of a stage of tempering, counted from zero.
    WholeFall(usize),
    /// Middle of a stage.
    Middle(usize),
    /// Reduced time of a stage after a temper, both counted from zero.
    Reduced {
        /// The temper.
        temper: usize,
        /// The stage.
        stage: usize,
    },
    /// Fall of a stage after a temper.
    StageFall {
        /// The temper.
        temper: usize,
        /// The stage.
        stage: usize,
    },
    /// Fall by all stages after a temper.
    Fall(usize),
    /// Hollomon-Jaffe parameter after a temper.
    Parameter(usize),
    /// Half width of the band of the final hardness.
    FinalBand,
    /// Depth without carbon after the soak.
    Decarburised,
    /// Thickness of the scale.
    Scale,
    /// Stock to leave for grinding.
    Stock,
}

impl Quantity {
    /// Under what it is opened: numbers of sentences are explained in words too.
    fn key(self, outcome: &Outcome) -> NumberKey {
        let last = outcome.stages.iter().rev().find(|s| s.hardness.is_some());
        match self {
            Self::Dissolved(Element::C) => NumberKey::DissolvedCarbon,
            Self::CarbideVolume => NumberKey::CarbideLeft,
            Self::Grain => NumberKey::Grain,
            Self::Seconds => NumberKey::Margin,
            Self::Austenite(Step::Quench) => NumberKey::RetainedAustenite,
            Self::Austenite(Step::Cold) => NumberKey::ColdTreatment,
            Self::Stock => NumberKey::Skin,
            Self::Hrc(step) if last.is_some_and(|stage| stage.step == step) => {
                NumberKey::FinalHardness
            }
            other => NumberKey::Behind(other),
        }
    }

    /// What is meant by a key; none for numbers that are explained in words alone.
    fn of(key: NumberKey, outcome: &Outcome) -> Option<Self> {
        Some(match key {
            NumberKey::DissolvedCarbon => Self::Dissolved(Element::C),
            NumberKey::CarbideLeft => Self::CarbideVolume,
            NumberKey::Grain => Self::Grain,
            NumberKey::Margin => Self::Seconds,
            NumberKey::RetainedAustenite => Self::Austenite(Step::Quench),
            NumberKey::ColdTreatment => Self::Austenite(Step::Cold),
            NumberKey::Skin => Self::Stock,
            NumberKey::FinalHardness => {
                let mut stages = outcome.stages.iter().rev();
                Self::Hrc(stages.find(|stage| stage.hardness.is_some())?.step)
            }
            NumberKey::Behind(quantity) => quantity,
            NumberKey::NextSlower
            | NumberKey::HeatingUp
            | NumberKey::Overheated
            | NumberKey::StepHardness(_)
            | NumberKey::StepGrain(_)
            | NumberKey::StepCarbide(_) => return None,
        })
    }
}

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

/// How a number of an outcome comes about; none where it is told in words alone, or where the route
/// has no such number.
#[must_use]
pub fn why(key: NumberKey, route: &Route, outcome: &Outcome) -> Option<Derivation> {
    let quantity = Quantity::of(key, outcome)?;
    let workings = Workings::of(route, outcome);
    soak::derive(quantity, &workings)
        .or_else(|| starts::derive(quantity, &workings))
        .or_else(|| quench::derive(quantity, &workings))
        .or_else(|| parts::derive(quantity, &workings))
        .or_else(|| margin::derive(quantity, &workings))
        .or_else(|| hardness::derive(quantity, &workings))
        .or_else(|| temper::derive(quantity, &workings))
}

/// Numbers that belong beside one, though they do not go into it.
#[must_use]
pub fn beside(key: NumberKey) -> &'static [Quantity] {
    match key {
        NumberKey::DissolvedCarbon => {
            &[Quantity::AllowedCarbon, Quantity::A1, Quantity::SecondPhase]
        }
        NumberKey::Margin | NumberKey::Behind(Quantity::Factor) => &[
            Quantity::FactorEnd { is_least: true },
            Quantity::FactorEnd { is_least: false },
            Quantity::Hardened,
            Quantity::Bs,
        ],
        NumberKey::RetainedAustenite => &[Quantity::Martensite],
        NumberKey::FinalHardness => &[Quantity::FinalBand],
        _ => &[],
    }
}

impl Derivation {
    fn new(
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

    fn by(mut self, inputs: Vec<Input>, law: impl FnOnce(&Letters<'_>) -> Formula) -> Self {
        self.formula = Some(law(&Letters(&inputs)));
        self.inputs = inputs;
        self
    }

    fn from(mut self, inputs: Vec<Input>) -> Self {
        self.inputs = inputs;
        self
    }

    fn how(mut self, words: impl Into<Cow<'static, str>>) -> Self {
        self.how = words.into();
        self
    }

    fn source(mut self, sources: &[&'static Source]) -> Self {
        self.sources.extend_from_slice(sources);
        self
    }

    fn valid(mut self, words: impl Into<Cow<'static, str>>) -> Self {
        self.validity = words.into();
        self
    }

    fn errs(mut self, words: impl Into<Cow<'static, str>>) -> Self {
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
struct Letters<'a>(&'a [Input]);

impl Letters<'_> {
    /// A letter by its name; a name that is not there counts as zero.
    fn get(&self, name: &str) -> Formula {
        let found = self.0.iter().find(|input| input.symbol.name == name);
        found.map_or(Formula::Constant(0.0), |input| {
            Formula::Symbol(input.symbol.clone())
        })
    }

    /// The letter of an element.
    fn content(&self, element: Element) -> Formula {
        self.get(element.symbol())
    }
}

/// Something that goes in and is a number by itself.
fn number(
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
fn given(
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
fn contents(
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
