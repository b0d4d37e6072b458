//! What matters most, in words.

use super::{Quantity, Share};
use crate::advise::Input;

/// Parts of a whole as they are said, from the largest: each from where it is nearer than the next.
const PARTS: [(f64, &str); 12] = [
    (0.95, "nearly all"),
    (0.85, "nine tenths"),
    (0.775, "four fifths"),
    (0.71, "three quarters"),
    (0.63, "two thirds"),
    (0.55, "three fifths"),
    (0.45, "half"),
    (0.365, "two fifths"),
    (0.29, "a third"),
    (0.225, "a quarter"),
    (0.15, "a fifth"),
    (0.05, "a tenth"),
];

/// A part of a whole in words.
fn part_words(part: f64) -> &'static str {
    PARTS
        .iter()
        .find(|(from, _)| part >= *from)
        .map_or("next to nothing", |(_, words)| words)
}

impl Quantity {
    const fn words(self) -> &'static str {
        match self {
            Self::FinalHrc => "hardness",
            Self::QuenchedHrc => "hardness as quenched",
            Self::FinalAustenite => "retained austenite",
        }
    }

    /// Standard deviation below which no shop could tell a spread (expert values).
    const fn tellable_sd(self) -> f64 {
        match self {
            Self::FinalHrc | Self::QuenchedHrc => 0.1,
            Self::FinalAustenite => 0.003,
        }
    }
}

/// What matters most for a number: shares from the largest. Parts are those of the sum of the
/// totals, so that what inputs do together counts for each of them.
pub(super) fn words(quantity: Quantity, sd: f64, shares: &[Share]) -> String {
    let name = quantity.words();
    if sd < quantity.tellable_sd() {
        return format!("Nothing that is open moves the {name} by what can be measured.");
    }
    let sum = |counts: fn(Input) -> bool| -> f64 {
        let counted = shares.iter().filter(|share| counts(share.input));
        counted.map(|share| share.index.total.max(0.0)).sum()
    };
    let all = sum(|_| true).max(f64::MIN_POSITIVE);
    let shops = sum(Input::is_in_shops_hands);
    let mut of_shop = shares
        .iter()
        .filter(|share| share.input.is_in_shops_hands());
    let (Some(first), shop_first) = (shares.first(), of_shop.next()) else {
        return format!("Nothing is open that moves the {name}.");
    };
    let opening = |share: &Share| {
        let help = match share.input {
            Input::Chemistry => " A certificate of the heat would tell more.",
            _ => "",
        };
        format!(
            "{} decides {} of the spread in {name}.{help}",
            capital(share.input.name()),
            part_words(share.index.total / all)
        )
    };
    if first.input.is_in_shops_hands() {
        let next = of_shop
            .next()
            .filter(|share| share.index.total / all >= 0.05);
        return match next {
            Some(next) => format!(
                "{} Next is {}, with {}.",
                opening(first),
                next.input.name(),
                part_words(next.index.total / all)
            ),
            None => opening(first),
        };
    }
    match shop_first.filter(|_| shops / all >= 0.02) {
        Some(share) => format!(
            "{} Of the {} that is in the shop's hands, {} decides {}.",
            opening(first),
            part_of_it(shops / all),
            share.input.name(),
            part_words(share.index.total / shops)
        ),
        None => opening(first),
    }
}

/// A part that the shop has, after a definite article.
fn part_of_it(part: f64) -> &'static str {
    let words = part_words(part);
    match words {
        "next to nothing" => "little",
        _ => words.trim_start_matches("a "),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::super::Index;
    use super::*;

    fn share(input: Input, total: f64) -> Share {
        let index = Index {
            first: total,
            first_error: 0.0,
            total,
            total_error: 0.0,
        };
        Share { input, index }
    }

    #[test]
    fn the_largest_comes_first() {
        let shares = [
            share(Input::Furnace, 0.66),
            share(Input::TemperOven, 0.24),
            share(Input::Nose, 0.1),
        ];
        assert_eq!(
            words(Quantity::FinalHrc, 1.0, &shares),
            "Furnace temperature decides two thirds of the spread in hardness. Next is temper \
             temperature, with a quarter."
        );
    }

    #[test]
    fn what_the_shop_can_do_is_told_beside_the_model() {
        let shares = [
            share(Input::TemperedHardness, 0.7),
            share(Input::TemperOven, 0.2),
            share(Input::Furnace, 0.1),
        ];
        assert_eq!(
            words(Quantity::FinalHrc, 1.0, &shares),
            "The model's hardness after tempering decides two thirds of the spread in hardness. Of the \
             third that is in the shop's hands, temper temperature decides two thirds."
        );
        let shares = [
            share(Input::Chemistry, 0.6),
            share(Input::Nose, 0.2),
            share(Input::Furnace, 0.2),
        ];
        assert_eq!(
            words(Quantity::FinalHrc, 1.0, &shares),
            "The steel's composition within its grade decides three fifths of the spread in hardness. A \
             certificate of the heat would tell more. Of the fifth that is in the shop's hands, furnace \
             temperature decides nearly all."
        );
        assert_eq!(
            words(Quantity::FinalAustenite, 0.001, &shares),
            "Nothing that is open moves the retained austenite by what can be measured."
        );
    }
}
