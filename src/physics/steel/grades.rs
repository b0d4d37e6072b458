//! The grades of the list, by any of their designations.

use super::grade_text::{led_down, nominal, span};
use super::{Composition, Element, Line, List};
use crate::numeric::decimal::decimal;
use crate::numeric::order;
use recalesce_texts::steel as texts;
use std::sync::OnceLock;

/// The list as kept: one grade a line, texts as the handbooks print them.
const LIST: &str = include_str!("grades.csv");

/// A handbook entry: its text, and the first range in it as numbers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Entry {
    /// As the list gives it; empty when nothing is known.
    pub text: String,
    /// Least and largest value of the first range; none when the text gives no range.
    pub span: Option<(f64, f64)>,
}

impl Entry {
    fn new(text: &str) -> Self {
        Self {
            text: text.to_owned(),
            span: span(text),
        }
    }
}

/// Limits of one element in the standard, wt %; a limit that the standard does not set is none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The element.
    pub element: Element,
    /// Least content, wt %.
    pub least_wt: Option<f64>,
    /// Largest content, wt %.
    pub most_wt: Option<f64>,
}

/// One grade of hardenable steel with its usual treatment.
#[derive(Debug, Clone, PartialEq)]
pub struct Grade {
    /// Designation under which the list keeps it.
    pub designation: String,
    /// AISI or SAE number.
    pub aisi_sae: String,
    /// UNS number.
    pub uns: String,
    /// EN designation; `near` where the standards do not match exactly.
    pub en_name: String,
    /// Material number (W.-Nr.).
    pub en_number: String,
    /// Standard that the limits come from.
    pub composition_standard: String,
    /// Limits of the standard for the elements that it names.
    pub limits: Vec<Limits>,
    /// Composition of a usual heat, wt %. What the list does not name is the middle of the
    /// standard's limits; of Mn, Si, P and S, which every heat holds, half the largest content
    /// where only that is limited; else zero.
    pub nominal: Composition,
    /// Forging range, °C.
    pub forge_c: Entry,
    /// Normalising temperature, °C.
    pub normalise_c: Entry,
    /// Annealing, °C.
    pub anneal_c: Entry,
    /// Austenitising range for hardening, °C.
    pub austenitise_c: Entry,
    /// Soak at hardening temperature, min.
    pub soak_min: Entry,
    /// Usual quench.
    pub quench_class: String,
    /// Tempering range, °C.
    pub temper_c: Entry,
    /// Hardness as quenched, HRC.
    pub as_quenched_hrc: Entry,
    /// How the composition was obtained: seen in print or from memory.
    pub composition_status: String,
    /// How the heat treatment was obtained: seen in print or from memory.
    pub heat_treatment_status: String,
    /// Where the composition comes from.
    pub composition_source: String,
    /// Where the heat treatment comes from.
    pub heat_treatment_source: String,
}

/// No grade of the list goes by that name.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}", texts::unknown_grade(asked, close))]
pub struct UnknownGrade {
    /// The name as asked.
    pub asked: String,
    /// Designations that come close, at most five.
    pub close: Vec<String>,
}

/// Every grade, in the order of the list.
#[must_use]
pub fn grades() -> &'static [Grade] {
    static GRADES: OnceLock<Vec<Grade>> = OnceLock::new();
    // A test makes sure that no line is left out.
    GRADES.get_or_init(|| List::read(LIST).lines().map(read).collect())
}

/// The grade of a designation: AISI/SAE, UNS, EN name or material number, in any case and
/// spacing. A designation that matches exactly goes before one that the list gives as near;
/// a family name (`W1`) gives its first member.
///
/// # Errors
/// [`UnknownGrade`] with close designations.
pub fn find(designation: &str) -> Result<&'static Grade, UnknownGrade> {
    // Most are asked for by their own name, at every move of a drag: without a copy of all the others.
    if let Some(grade) = grades().iter().find(|g| g.designation == designation) {
        return Ok(grade);
    }
    let key = plain(designation);
    grades()
        .iter()
        .flat_map(|grade| {
            grade
                .names()
                .into_iter()
                .map(move |(rank, n)| (rank, n, grade))
        })
        .filter(|(_, name, _)| !key.is_empty() && *name == key)
        .min_by_key(|&(rank, ..)| rank)
        .map(|(.., grade)| grade)
        .ok_or_else(|| UnknownGrade {
            asked: designation.to_owned(),
            close: close_to(&key),
        })
}

impl Grade {
    /// How fast the furnace is led down in annealing, K/h, and to which temperature, °C; none where
    /// the handbook entry does not tell.
    #[must_use]
    pub fn anneal_led_down(&self) -> Option<(f64, f64)> {
        led_down(&self.anneal_c.text)
    }

    /// The standard's limits of an element, if it sets any.
    #[must_use]
    pub fn limits_of(&self, element: Element) -> Option<&Limits> {
        self.limits.iter().find(|l| l.element == element)
    }

    /// Names in plain form with their rank: the lower, the more surely meant.
    pub(super) fn names(&self) -> Vec<(u8, String)> {
        let is_near = |text: &str| {
            ["near", "family", "range", "etc", "no "]
                .iter()
                .any(|word| text.contains(word))
        };
        // A name that is only near makes its material number near as well.
        let near_en = is_near(&self.en_name) || is_near(&self.en_number);
        let mut names = vec![(0, plain(&self.designation))];
        for (rank, text) in [
            (1, &self.aisi_sae),
            (2, &self.uns),
            (3, &self.en_name),
            (4, &self.en_number),
        ] {
            let near = if rank > 2 { near_en } else { is_near(text) };
            names.extend(
                text.split(['/', '(', ')', ' ', ',', ';'])
                    .map(plain)
                    .filter(|name| name.chars().any(|c| c.is_ascii_digit()))
                    .map(|name| (if near { rank + 10 } else { rank }, name)),
            );
        }
        names
    }
}

/// Letters and digits only, upper case: how designations are compared.
pub(super) fn plain(text: &str) -> String {
    text.chars()
        .filter(|c| c.is_ascii_alphanumeric() || *c == '.')
        .map(|c| c.to_ascii_uppercase())
        .collect()
}

/// Up to five designations that hold the key, are held by it, or begin as it does.
fn close_to(key: &str) -> Vec<String> {
    let common = |name: &str| {
        name.chars()
            .zip(key.chars())
            .take_while(|(a, b)| a == b)
            .count()
    };
    let mut ranked: Vec<(usize, &str)> = grades()
        .iter()
        .filter_map(|grade| {
            let best = grade
                .names()
                .iter()
                .map(|(_, name)| {
                    let inside = key.len() > 1 && (name.contains(key) || key.contains(&**name));
                    common(name).max(if inside { key.len() } else { 0 })
                })
                .max()?;
            (best >= 2).then_some((best, grade.designation.as_str()))
        })
        .collect();
    order::sort_by_key(&mut ranked, |&(best, _)| std::cmp::Reverse(best));
    ranked
        .into_iter()
        .take(5)
        .map(|(_, name)| name.to_owned())
        .collect()
}

/// One grade from its line.
fn read(line: Line<'_>) -> Grade {
    let limit = |element: Element, end: &str| {
        decimal(line.text(&format!("{}_{end}", element.symbol())).trim())
    };
    let limits: Vec<Limits> = Element::ALL
        .into_iter()
        .map(|element| Limits {
            element,
            least_wt: limit(element, "min"),
            most_wt: limit(element, "max"),
        })
        .filter(|l| l.least_wt.is_some() || l.most_wt.is_some())
        .collect();
    let text = |name: &str| line.text(name).to_owned();
    let entry = |name: &str| Entry::new(line.text(name));
    Grade {
        nominal: usual_heat(line.text("typical_nominal"), &limits),
        limits,
        designation: text("grade"),
        aisi_sae: text("aisi_sae"),
        uns: text("uns"),
        en_name: text("en_name"),
        en_number: text("en_number"),
        composition_standard: text("composition_standard"),
        forge_c: entry("forge_C"),
        normalise_c: entry("normalise_C"),
        anneal_c: entry("anneal_C"),
        austenitise_c: entry("austenitise_C"),
        soak_min: entry("soak_min"),
        quench_class: text("quench_class"),
        temper_c: entry("temper_C"),
        as_quenched_hrc: entry("as_quenched_HRC"),
        composition_status: text("composition_status"),
        heat_treatment_status: text("heat_treatment_status"),
        composition_source: text("source_composition"),
        heat_treatment_source: text("source_heat_treatment"),
    }
}

fn usual_heat(text: &str, limits: &[Limits]) -> Composition {
    let mut heat = Composition::default();
    for l in limits {
        let always_there = matches!(
            l.element,
            Element::Mn | Element::Si | Element::P | Element::S
        );
        match (l.least_wt, l.most_wt) {
            (Some(least), Some(most)) => heat.set(l.element, f64::midpoint(least, most)),
            (None, Some(most)) if always_there => heat.set(l.element, 0.5 * most),
            _ => {}
        }
    }
    for (element, value_wt) in nominal(text) {
        heat.set(element, value_wt);
    }
    heat
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_becomes_a_valid_grade() {
        assert_eq!(grades().len(), LIST.lines().count() - 1);
        for grade in grades() {
            assert_eq!(grade.nominal.validate(), Ok(()), "{}", grade.designation);
            assert!(grade.nominal.c > 0.0, "{}", grade.designation);
            assert!(grade.austenitise_c.span.is_some(), "{}", grade.designation);
            assert!(grade.soak_min.span.is_some(), "{}", grade.designation);
            assert!(grade.temper_c.span.is_some(), "{}", grade.designation);
            assert!(
                grade.as_quenched_hrc.span.is_some(),
                "{}",
                grade.designation
            );
        }
    }

    #[test]
    fn usual_heat_lies_inside_the_standard() {
        for grade in grades() {
            for l in &grade.limits {
                let value = grade.nominal.get(l.element);
                let inside = l.least_wt.is_none_or(|least| value >= least)
                    && l.most_wt.is_none_or(|most| value <= most);
                assert!(inside, "{}: {:?} {value}", grade.designation, l);
            }
        }
    }

    #[test]
    fn any_designation_finds_its_grade() {
        for (asked, kept) in [
            ("52100", "52100"),
            ("100cr6", "52100"),
            ("1.3505", "52100"),
            ("g52986", "52100"),
            ("O1", "O1"),
            ("t31501", "O1"),
            ("1.2842", "90MnCrV8"),
            ("51 CrV 4", "51CrV4"),
            ("1.8159", "51CrV4"),
            ("W1", "W1 (1.0C)"),
            ("42CrMo4", "4140"),
            ("25CrMo4", "4130"),
            ("X 153 CrMoV 12", "D2"),
        ] {
            assert_eq!(
                find(asked).map(|g| g.designation.as_str()),
                Ok(kept),
                "{asked}"
            );
        }
        for grade in grades() {
            assert_eq!(find(&grade.designation), Ok(grade));
        }
    }

    #[test]
    fn unknown_name_is_answered_with_close_ones() {
        let error = find("5210").unwrap_err();
        assert!(error.close.contains(&"52100".to_owned()), "{error}");
        assert!(find("").unwrap_err().close.is_empty());
    }
}
