//! Rules of the language by which a text stands inside another. A translation has its own.

/// By how much the small letters of Latin-1 lie behind their capitals.
const BEHIND: u32 = 'à' as u32 - 'À' as u32;

/// The small letter of one of ASCII or Latin-1. The tables of all others would weigh 8 kB with gzip in what is
/// loaded first.
fn small(letter: char) -> char {
    match letter {
        'À'..='Ö' | 'Ø'..='Þ' => char::from_u32(letter as u32 + BEHIND).unwrap_or(letter),
        _ => letter.to_ascii_lowercase(),
    }
}

/// The capital of one of ASCII or Latin-1.
fn capital(letter: char) -> char {
    match letter {
        'à'..='ö' | 'ø'..='þ' => char::from_u32(letter as u32 - BEHIND).unwrap_or(letter),
        _ => letter.to_ascii_uppercase(),
    }
}

/// A title inside a sentence: its first letter small, unless what follows shows a symbol or an abbreviation,
/// such as N₂ or PAG, which keep their capital.
#[must_use]
pub fn inside_a_sentence(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if capital(second) != second => {
            std::iter::once(small(first)).chain(letters).collect()
        }
        _ => title.to_owned(),
    }
}

/// A text at the head of a sentence: its first letter a capital.
#[must_use]
pub fn at_the_head(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(capital);
    first.into_iter().chain(letters).collect()
}

/// The article before a thing at the head of a sentence, with the space behind it: by how the thing is said.
#[must_use]
pub fn article(thing: &str) -> &'static str {
    /// Begin with a vowel in writing, not in speech.
    const SAID_OTHERWISE: [&str; 7] = ["eu", "one", "uni", "use", "usu", "ute", "uti"];
    let thing = thing.trim_start().as_bytes();
    let begins = |with: &str| {
        let begin = thing.get(..with.len());
        begin.is_some_and(|begin| begin.eq_ignore_ascii_case(with.as_bytes()))
    };
    let digits = thing
        .iter()
        .take_while(|byte| byte.is_ascii_digit())
        .count();
    let has_vowel = match digits {
        0 => ["a", "e", "i", "o", "u"].into_iter().any(begins),
        2 if begins("11") || begins("18") => true,
        _ => begins("8"),
    };
    if has_vowel && !SAID_OTHERWISE.into_iter().any(begins) {
        "An "
    } else {
        "A "
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_article_goes_by_what_is_said() {
        for (thing, said) in [
            ("marking knife", "A "),
            ("axe", "An "),
            ("Adze", "An "),
            ("utility knife", "A "),
            ("upholstery needle", "An "),
            ("one-piece chisel", "A "),
            ("8 mm gouge", "An "),
            ("18 mm chisel", "An "),
            ("12 mm chisel", "A "),
            ("180 mm slick", "A "),
            ("", "A "),
        ] {
            assert_eq!(article(thing), said, "{thing}");
        }
    }

    #[test]
    fn a_title_inside_a_sentence_begins_small_but_for_symbols() {
        for (title, said) in [
            ("Canola oil, 60 °C", "canola oil, 60 °C"),
            ("Anneal below A1", "anneal below A1"),
            ("Öl, schnell", "öl, schnell"),
            ("N₂ at 6 bar", "N₂ at 6 bar"),
            ("PAG, 15 %", "PAG, 15 %"),
            ("A", "A"),
            ("60 °C", "60 °C"),
            ("", ""),
        ] {
            assert_eq!(inside_a_sentence(title), said);
        }
    }

    #[test]
    fn the_head_of_a_sentence_is_a_capital() {
        for (text, said) in [
            ("the offset of “Öfchen”", "The offset of “Öfchen”"),
            ("öl", "Öl"),
            ("N₂", "N₂"),
            ("60 °C", "60 °C"),
            ("", ""),
        ] {
            assert_eq!(at_the_head(text), said);
        }
    }
}
