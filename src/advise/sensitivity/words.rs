//! What matters most, in words.

use super::{Quantity, Share};
use crate::advise::Input;
use recalesce_texts::advise::{RETAINED_AUSTENITE, sensitivity as texts};
use recalesce_texts::grammar::at_the_head;

/// Parts of a whole as they are said, by themselves and after an article, from the largest: each from where
/// it is nearer than the next.
const PARTS: [(f64, [&str; 2]); 12] = [
    (0.95, texts::NEARLY_ALL),
    (0.85, texts::NINE_TENTHS),
    (0.775, texts::FOUR_FIFTHS),
    (0.71, texts::THREE_QUARTERS),
    (0.63, texts::TWO_THIRDS),
    (0.55, texts::THREE_FIFTHS),
    (0.45, texts::HALF),
    (0.365, texts::TWO_FIFTHS),
    (0.29, texts::A_THIRD),
    (0.225, texts::A_QUARTER),
    (0.15, texts::A_FIFTH),
    (0.05, texts::A_TENTH),
];

fn said(part: f64) -> [&'static str; 2] {
    PARTS
        .iter()
        .find(|(from, _)| part >= *from)
        .map_or(texts::NEXT_TO_NOTHING, |(_, words)| *words)
}

/// A part of a whole in words.
fn part_words(part: f64) -> &'static str {
    let [words, _] = said(part);
    words
}

/// A part that the shop has, after a definite article.
fn part_of_it(part: f64) -> &'static str {
    let [_, words] = said(part);
    words
}

impl Quantity {
    const fn words(self) -> &'static str {
        match self {
            Self::FinalHrc => texts::HARDNESS,
            Self::QuenchedHrc => texts::HARDNESS_QUENCHED,
            Self::FinalAustenite => RETAINED_AUSTENITE,
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
        return texts::nothing_to_measure(name);
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
        return texts::nothing_open(name);
    };
    let mut told = vec![texts::decides(
        &at_the_head(first.input.name()),
        part_words(first.index.total / all),
        name,
    )];
    if first.input == Input::Chemistry {
        told.push(texts::CERTIFICATE_WOULD_TELL.to_owned());
    }
    if first.input.is_in_shops_hands() {
        let next = of_shop
            .next()
            .filter(|share| share.index.total / all >= 0.05);
        told.extend(next.map(|next| {
            let part = part_words(next.index.total / all);
            texts::next_is(next.input.name(), part)
        }));
    } else {
        let shop_first = shop_first.filter(|_| shops / all >= 0.02);
        told.extend(shop_first.map(|share| {
            let part = part_words(share.index.total / shops);
            texts::decides_of_shops_part(part_of_it(shops / all), share.input.name(), part)
        }));
    }
    told.join(" ")
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
