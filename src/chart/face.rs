//! The typeface of charts: families, weights, widths of characters, lowered runs.
//!
//! The widths are those of the bundled face at 88 % width, so that labels can be placed without a
//! page; a browser may measure instead.

/// Families in order of preference, as a style sheet writes them.
pub const FAMILIES: &str = "Archivo, \"Liberation Sans\", \"Helvetica Neue\", Arial, sans-serif";

/// Width of chart text, percent of the normal width.
pub const STRETCH_PERCENT: u32 = 88;

/// Size of a lowered run against the text it belongs to.
pub const LOWERED_SIZE: f64 = 0.72;

/// How far a lowered run sits below the line, against the size of the text.
pub const LOWERED_DROP: f64 = 0.21;

/// Weights in use.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Weight {
    /// Running text.
    Text,
    /// Strong labels.
    Strong,
    /// Titles and values.
    Name,
}

impl Weight {
    /// As a style sheet writes it.
    pub fn css(self) -> u16 {
        match self {
            Self::Text => 400,
            Self::Strong => 600,
            Self::Name => 650,
        }
    }
}

/// A piece of a label on one level.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Run<'a> {
    /// The characters.
    pub text: &'a str,
    /// Whether it stands lower and smaller, such as the 3 of A3.
    pub lowered: bool,
}

/// Splits a label at its lowered parts, written `A_{cm}`.
pub fn runs(label: &str) -> Vec<Run<'_>> {
    let mut rest = label;
    let mut runs = Vec::new();
    while let Some((before, after)) = rest.split_once("_{") {
        let (low, behind) = after.split_once('}').unwrap_or((after, ""));
        runs.push(Run {
            text: before,
            lowered: false,
        });
        runs.push(Run {
            text: low,
            lowered: true,
        });
        rest = behind;
    }
    runs.push(Run {
        text: rest,
        lowered: false,
    });
    runs.retain(|run| !run.text.is_empty());
    runs
}

/// Thousandths of the size, characters 32 to 126, text weight.
const TEXT: [u16; 95] = [
    184, 263, 349, 537, 452, 846, 620, 197, 342, 342, 395, 575, 250, 304, 250, 282, 517, 517, 517,
    517, 517, 517, 517, 517, 517, 517, 272, 272, 575, 575, 575, 515, 896, 604, 621, 652, 657, 599,
    539, 705, 657, 246, 498, 600, 482, 772, 657, 703, 594, 703, 648, 593, 547, 652, 580, 836, 610,
    599, 573, 289, 282, 289, 575, 432, 169, 495, 509, 470, 509, 496, 259, 494, 504, 210, 207, 463,
    210, 771, 505, 512, 509, 509, 298, 452, 267, 504, 442, 652, 460, 442, 446, 341, 226, 341, 575,
];

/// The same, strong and heavier weights.
const STRONG: [u16; 95] = [
    174, 282, 413, 551, 487, 874, 670, 230, 355, 355, 395, 592, 272, 304, 272, 288, 535, 535, 535,
    535, 535, 535, 535, 535, 535, 535, 299, 299, 592, 592, 592, 544, 896, 639, 636, 654, 659, 603,
    544, 711, 665, 270, 533, 641, 521, 792, 666, 707, 608, 707, 649, 599, 570, 658, 611, 870, 626,
    622, 583, 337, 288, 337, 592, 458, 199, 518, 539, 505, 539, 518, 292, 530, 532, 240, 237, 506,
    239, 791, 532, 542, 539, 539, 334, 487, 299, 532, 478, 707, 504, 477, 463, 378, 231, 378, 592,
];

/// Width of plain text, px, at a size in px.
pub fn width_px(text: &str, size_px: f64, weight: Weight) -> f64 {
    let table = match weight {
        Weight::Text => &TEXT,
        Weight::Strong | Weight::Name => &STRONG,
    };
    let thousandths: u32 = text
        .chars()
        .map(|c| {
            let wide = match c {
                '\u{a0}' => 184,
                '−' | '±' | '×' => 584,
                '–' => 440,
                '°' => 400,
                _ => (c as usize)
                    .checked_sub(32)
                    .and_then(|i| table.get(i).copied())
                    .unwrap_or(560),
            };
            u32::from(wide)
        })
        .sum();
    f64::from(thousandths) * size_px / 1000.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lowered_runs() {
        let low = |text| Run {
            text,
            lowered: true,
        };
        let line = |text| Run {
            text,
            lowered: false,
        };
        assert_eq!(runs("A_{cm}"), [line("A"), low("cm")]);
        assert_eq!(runs("A_{1} 748"), [line("A"), low("1"), line(" 748")]);
        assert_eq!(runs("bainite"), [line("bainite")]);
        assert_eq!(runs("A_{1"), [line("A"), low("1")]);
        assert!(runs("").is_empty());
    }

    #[test]
    fn widths() {
        assert_eq!(width_px("0", 10.0, Weight::Text), 5.17);
        assert!(width_px("margin", 12.0, Weight::Name) > width_px("margin", 12.0, Weight::Text));
        assert!(width_px("−75\u{a0}°C ☃", 11.0, Weight::Text) > 30.0);
    }
}
