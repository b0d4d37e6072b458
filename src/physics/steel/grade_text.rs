//! The short texts of the grade list: nominal compositions and temperature ranges.

use super::Element;
use crate::numeric::decimal::decimal;

/// Reads a nominal composition such as `0.45C 0.75Mn 0.2Si` or `0.90-0.95C 0.1-0.2V`.
///
/// A range gives its middle. Where the list names two makes of one grade (`0.5 or 1.0C`), the
/// first is taken. Elements that the project does not carry (boron) and remarks in brackets are
/// passed over.
pub(super) fn nominal(text: &str) -> Vec<(Element, f64)> {
    let text = without_brackets(text);
    let mut contents = Vec::new();
    let mut first_of_two = None;
    for word in text.split_whitespace() {
        let split = word
            .find(|c: char| c.is_ascii_alphabetic())
            .unwrap_or(word.len());
        let (number, symbol) = word.split_at(split);
        let value = span(number).map(|(least, most)| f64::midpoint(least, most));
        match (value, element(symbol)) {
            (Some(value), Some(element)) => {
                contents.push((element, first_of_two.take().unwrap_or(value)));
            }
            (Some(value), None) if symbol.is_empty() => first_of_two = Some(value),
            _ => {}
        }
    }
    contents
}

/// Reads the first range of a text: `790-815`, `66`, `150-540 (twice)`, `800-845 (furnace)`.
///
/// `up to 1230, not below 900` is 900 to 1230; a text that gives only an upper limit or no
/// number gives nothing.
pub(super) fn span(text: &str) -> Option<(f64, f64)> {
    let text = text.trim();
    if let Some(rest) = text.strip_prefix("up to ") {
        let (most, least) = rest.split_once("not below ")?;
        return Some((leading_number(least)?.0, leading_number(most)?.0));
    }
    let (least, rest) = leading_number(text)?;
    match rest.strip_prefix('-').and_then(leading_number) {
        Some((most, _)) if most >= least => Some((least, most)),
        _ => Some((least, least)),
    }
}

/// Reads how an annealing entry wants the furnace led down: `760-790, 11-22 C/h to 480-540`,
/// `830 then 705 to 650 at <=11 C/h`. Gives the fastest rate that it allows, K/h, and the temperature
/// that it goes down to, °C; none where the entry tells no rate.
pub(super) fn led_down(text: &str) -> Option<(f64, f64)> {
    let words: Vec<&str> = text
        .split([' ', ',', ';'])
        .filter(|w| !w.is_empty())
        .collect();
    let unit = words.iter().position(|word| *word == "C/h")?;
    let (before, after) = (words.get(..unit)?, words.get(unit + 1..)?);
    let rate = span(before.last()?.trim_start_matches("<="))?.1;
    let down_to = |words: &[&str]| {
        let to = words.iter().rposition(|word| *word == "to")?;
        let (least, most) = span(words.get(to + 1)?)?;
        Some(f64::midpoint(least, most))
    };
    let until_c = match after.first() {
        Some(&"to") => down_to(after)?,
        _ => down_to(before)?,
    };
    (rate > 0.0).then_some((rate, until_c))
}

/// A number at the start of a text, and what follows it.
fn leading_number(text: &str) -> Option<(f64, &str)> {
    let end = text
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(text.len());
    let (number, rest) = text.split_at(end);
    Some((decimal(number)?, rest))
}

fn element(symbol: &str) -> Option<Element> {
    Element::ALL.into_iter().find(|e| e.symbol() == symbol)
}

fn without_brackets(text: &str) -> String {
    let mut depth = 0_u32;
    text.chars()
        .filter(|&c| {
            if c == '(' {
                depth += 1;
            }
            let keep = depth == 0;
            if c == ')' {
                depth = depth.saturating_sub(1);
            }
            keep
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nominal_texts() {
        assert_eq!(
            nominal("0.35C 1.0Mn 0.25Si 0.002B (0.0005-0.003 B)"),
            [(Element::C, 0.35), (Element::Mn, 1.0), (Element::Si, 0.25)]
        );
        assert_eq!(nominal("0.5 or 1.0C 0.5Mn")[0], (Element::C, 0.5));
        let oil_hardening = nominal("0.90-0.95C 0.1-0.2V");
        assert!((oil_hardening[0].1 - 0.925).abs() < 1e-12);
        assert!((oil_hardening[1].1 - 0.15).abs() < 1e-12);
    }

    #[test]
    fn annealing_texts() {
        assert_eq!(
            led_down("760-790, 11-22 C/h to 480-540"),
            Some((22.0, 510.0))
        );
        assert_eq!(led_down("760-790, <=22 C/h to 540"), Some((22.0, 540.0)));
        assert_eq!(
            led_down("795 then 750 to 675 at <=6 C/h, or 690 16 h"),
            Some((6.0, 675.0))
        );
        assert_eq!(
            led_down(
                "830 then 705 to 650 at <=11 C/h, or 675 6 h; spheroidise 750 then 705-650 at <=6 C/h"
            ),
            Some((11.0, 650.0))
        );
        assert_eq!(led_down("790-845 slow cool"), None);
        assert_eq!(led_down("C/h"), None);
    }

    #[test]
    fn range_texts() {
        assert_eq!(
            span("800-845 (815-855 furnace practice)"),
            Some((800.0, 845.0))
        );
        assert_eq!(span("66"), Some((66.0, 66.0)));
        assert_eq!(span("up to 1230, not below 900"), Some((900.0, 1230.0)));
        assert_eq!(span("up to 1230"), None);
        assert_eq!(span("do not normalise"), None);
        assert_eq!(span(""), None);
    }
}
