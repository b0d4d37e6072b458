//! The named colours of charts, and the palettes that give them values.
//!
//! The names are the custom properties of `style/tokens.css`. The page reads them once per theme
//! change with [`Palette::read`]; [`Palette::LIGHT`], [`Palette::DARK`] and [`Palette::PRINT`] hold
//! the same values for drawing without a page.

use crate::numeric::decimal::decimal;
use recalesce_texts::charts::constituents as texts;

/// Red, green, blue, 0 to 255.
pub type Rgb = [u8; 3];

macro_rules! inks {
    ($($(#[$doc:meta])* $name:ident $css:literal $light:literal $dark:literal $print:literal,)*) => {
        /// A named colour.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Ink {
            $($(#[$doc])* $name,)*
        }

        /// Every named colour, in the order of the palettes.
        pub const INKS: [Ink; COUNT] = [$(Ink::$name),*];

        const COUNT: usize = [$($css),*].len();

        impl Ink {
            /// Name of the custom property.
            pub fn css_name(self) -> &'static str {
                match self {
                    $(Self::$name => $css,)*
                }
            }
        }

        impl Palette {
            /// The day theme.
            pub const LIGHT: Self = Self { values: [$(split($light)),*] };
            /// The shop theme.
            pub const DARK: Self = Self { values: [$(split($dark)),*] };
            /// Black ink on paper.
            pub const PRINT: Self = Self { values: [$(split($print)),*] };
        }
    };
}

inks! {
    /// Ground of the page.
    Bench "--bench" 0xe9ecee 0x101215 0xffffff,
    /// Ground of charts.
    Sheet "--sheet" 0xfbfcfc 0x181b1f 0xffffff,
    /// Ground of equations.
    Sunk "--sunk" 0xf1f3f5 0x121519 0xffffff,
    /// Ground of buttons.
    Raise "--raise" 0xffffff 0x22262b 0xffffff,
    /// Main text and curves.
    Ink "--ink" 0x13171c 0xeff1f3 0x000000,
    /// Second text.
    Ink2 "--ink-2" 0x414953 0xbac1c9 0x222222,
    /// Third text.
    Ink3 "--ink-3" 0x5b646e 0x98a1ab 0x444444,
    /// Hairline dividers.
    Rule "--rule" 0xc3c9cf 0x3a4048 0x777777,
    /// Grid lines.
    Grid "--grid" 0xe0e4e8 0x272c32 0xcccccc,
    /// Axis lines.
    Axis "--axis" 0x717a84 0x79828c 0x444444,
    /// Marking-out blue: all that moves.
    Mark "--mark" 0x3a3cb4 0xa9abff 0x000000,
    /// Soft ground of what moves.
    MarkSoft "--mark-soft" 0xe3e4f7 0x2a2b4d 0xffffff,
    /// Text on marking-out blue.
    OnMark "--on-mark" 0xffffff 0x12142e 0xffffff,
    /// Ground of the dim shop.
    Shop "--shop" 0x0a0b0d 0x0a0b0d 0xffffff,
    /// Plots in the dim shop.
    ShopPlot "--shop-plot" 0x15181c 0x15181c 0xffffff,
    /// Grid in the dim shop.
    ShopGrid "--shop-grid" 0x2b3138 0x2b3138 0xcccccc,
    /// Curves in the dim shop.
    ShopInk "--shop-ink" 0xf4f6f8 0xf4f6f8 0x000000,
    /// Text in the dim shop.
    ShopInk2 "--shop-ink-2" 0xb9c0c8 0xb9c0c8 0x333333,
    /// Marking-out blue in the dim shop.
    ShopMark "--shop-mark" 0xb4b6ff 0xb4b6ff 0x000000,
    /// Verdict: holds.
    Holds "--holds" 0x1a6650 0x6fcfae 0x000000,
    /// Verdict: narrow.
    Narrow "--narrow" 0x835200 0xefb75a 0x000000,
    /// Verdict: misses.
    Misses "--misses" 0xa8213d 0xff8d9d 0x000000,
    /// Bright steel.
    Steel "--steel" 0xc7ccd1 0x7c838b 0xc7ccd1,
    /// Embrittling range.
    Hatch "--hatch" 0x7a4550 0xc98d97 0x555555,
    /// Fill of martensite.
    PhMartensite "--ph-martensite" 0x253951 0x89c5fc 0x5b6570,
    /// Fill of austenite.
    PhAustenite "--ph-austenite" 0xcbae31 0xdcbc33 0xe9e5d2,
    /// Fill of carbide.
    PhCarbide "--ph-carbide" 0xf8f6e9 0xf8f9f4 0xffffff,
    /// Fill of pearlite.
    PhPearlite "--ph-pearlite" 0x975ac0 0x8b56be 0xb9aec3,
    /// Fill of bainite.
    PhBainite "--ph-bainite" 0x41836e 0x318465 0x97a5a0,
    /// Fill of ferrite.
    PhFerrite "--ph-ferrite" 0xa6c1e6 0x353e4b 0xeef1f5,
    /// Pattern of martensite.
    PmMartensite "--pm-martensite" 0x8ba3bf 0x1c4a74 0xffffff,
    /// Pattern of austenite.
    PmAustenite "--pm-austenite" 0x6a5500 0x584600 0x222222,
    /// Pattern of carbide.
    PmCarbide "--pm-carbide" 0x3b4249 0x3b4249 0x000000,
    /// Pattern of pearlite.
    PmPearlite "--pm-pearlite" 0xecdcf7 0xe6d2f6 0x111111,
    /// Pattern of bainite.
    PmBainite "--pm-bainite" 0xd3eee3 0xc4eadb 0x111111,
    /// Pattern of ferrite.
    PmFerrite "--pm-ferrite" 0x4d6588 0x93a5bd 0x333333,
    /// Lines and text of martensite.
    PlMartensite "--pl-martensite" 0x253951 0x89c5fc 0x000000,
    /// Lines and text of austenite.
    PlAustenite "--pl-austenite" 0x7a6400 0xdcbc33 0x333333,
    /// Lines and text of carbide.
    PlCarbide "--pl-carbide" 0x565e66 0xd3d6d6 0x333333,
    /// Lines and text of pearlite.
    PlPearlite "--pl-pearlite" 0x7d3fa8 0xc394ee 0x000000,
    /// Lines and text of bainite.
    PlBainite "--pl-bainite" 0x2b6b57 0x5cc09c 0x333333,
    /// Lines and text of ferrite.
    PlFerrite "--pl-ferrite" 0x46608a 0xa3b6d0 0x333333,
    /// Field of austenite.
    FieldA "--field-a" 0xf5edcd 0x2f2a17 0xffffff,
    /// Field of austenite and carbide.
    FieldAc "--field-ac" 0xf0e8d2 0x292618 0xffffff,
    /// Field of austenite and ferrite.
    FieldAf "--field-af" 0xeef0e6 0x22252a 0xffffff,
    /// Field of ferrite and carbide.
    FieldFc "--field-fc" 0xe3ebf6 0x1d242d 0xffffff,
}

const fn split(hex: u32) -> Rgb {
    [(hex >> 16) as u8, (hex >> 8) as u8, hex as u8]
}

/// Values of the named colours.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Palette {
    values: [Rgb; COUNT],
}

impl Palette {
    /// Reads every named colour from a lookup by custom property name, as the page's computed
    /// style gives them; a colour that is missing or not understood keeps its value in `fallback`.
    pub fn read(lookup: impl Fn(&str) -> Option<String>, fallback: &Palette) -> Self {
        let mut palette = fallback.clone();
        for (value, ink) in palette.values.iter_mut().zip(INKS) {
            if let Some(rgb) = lookup(ink.css_name()).as_deref().and_then(parse_css) {
                *value = rgb;
            }
        }
        palette
    }

    /// Value of a paint.
    pub fn rgb(&self, paint: Paint) -> Rgb {
        match paint {
            Paint::Named(ink) => self.values.get(ink as usize).copied().unwrap_or_default(),
            Paint::Own(rgb) => rgb,
        }
    }
}

/// Colours as computed styles write them: `#rgb`, `#rrggbb`, `rgb(1, 2, 3)`, `rgb(1 2 3)`; alpha is
/// ignored.
fn parse_css(text: &str) -> Option<Rgb> {
    let text = text.trim();
    if let Some(hex) = text.strip_prefix('#') {
        let digit = |i: usize| hex.get(i..=i).and_then(|d| u8::from_str_radix(d, 16).ok());
        let pair = |i: usize| {
            hex.get(i..i + 2)
                .and_then(|d| u8::from_str_radix(d, 16).ok())
        };
        return match hex.len() {
            3 | 4 => Some([17 * digit(0)?, 17 * digit(1)?, 17 * digit(2)?]),
            6 | 8 => Some([pair(0)?, pair(2)?, pair(4)?]),
            _ => None,
        };
    }
    let inner = text
        .strip_prefix("rgba(")
        .or_else(|| text.strip_prefix("rgb("))?;
    let mut channels = inner
        .split([',', ' ', '/', ')'])
        .filter(|part| !part.is_empty())
        .map(|part| decimal(part).map(|v| v.round().clamp(0.0, 255.0) as u8));
    Some([channels.next()??, channels.next()??, channels.next()??])
}

/// A colour of a mark: named, or a value of its own where colour is data (glow, oxide).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paint {
    /// From the palette.
    Named(Ink),
    /// The same in every theme.
    Own(Rgb),
}

impl From<Ink> for Paint {
    fn from(ink: Ink) -> Self {
        Self::Named(ink)
    }
}

/// What a piece of steel is made of, as charts show it: a fill, a pattern, a line colour, a name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Constituent {
    /// Martensite, tempered or not.
    Martensite,
    /// Austenite; retained after the quench.
    Austenite,
    /// Carbide not dissolved.
    Carbide,
    /// Pearlite.
    Pearlite,
    /// Bainite.
    Bainite,
    /// Ferrite.
    Ferrite,
}

impl Constituent {
    /// All, in the order in which bars show them.
    pub const ALL: [Self; 6] = [
        Self::Martensite,
        Self::Austenite,
        Self::Carbide,
        Self::Pearlite,
        Self::Bainite,
        Self::Ferrite,
    ];

    /// Colour of areas.
    pub fn fill(self) -> Ink {
        [
            Ink::PhMartensite,
            Ink::PhAustenite,
            Ink::PhCarbide,
            Ink::PhPearlite,
            Ink::PhBainite,
            Ink::PhFerrite,
        ][self as usize]
    }

    /// Colour of the pattern on the fill.
    pub fn pattern_ink(self) -> Ink {
        [
            Ink::PmMartensite,
            Ink::PmAustenite,
            Ink::PmCarbide,
            Ink::PmPearlite,
            Ink::PmBainite,
            Ink::PmFerrite,
        ][self as usize]
    }

    /// Colour of lines and text.
    pub fn line(self) -> Ink {
        [
            Ink::PlMartensite,
            Ink::PlAustenite,
            Ink::PlCarbide,
            Ink::PlPearlite,
            Ink::PlBainite,
            Ink::PlFerrite,
        ][self as usize]
    }

    /// Name in running text.
    pub fn name(self) -> &'static str {
        [
            texts::MARTENSITE,
            texts::AUSTENITE,
            texts::CARBIDE,
            texts::PEARLITE,
            texts::BAINITE,
            texts::FERRITE,
        ][self as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The palettes are the tokens of the page, read from the style sheet itself.
    #[test]
    fn same_as_the_style_sheet() {
        let css = include_str!("../../style/tokens.css");
        let block = |from: &str, to: &str| {
            let start = css.find(from).expect(from);
            let end = start + css[start..].find(to).expect(to);
            css[start..end].to_owned()
        };
        let value = |block: &str, name: &str| {
            let start = block.find(&format!("{name}:"))? + name.len() + 1;
            let end = block[start..]
                .find([';', '}'])
                .map_or(block.len(), |i| start + i);
            parse_css(&block[start..end])
        };
        let light = block(":root,[data-theme=light]{", "\n}");
        let dark = block("\n[data-theme=dark]{", "\n}");
        let print = block("@media print{", "}}");
        for ink in INKS {
            let day = value(&light, ink.css_name()).expect("every ink has a token");
            assert_eq!(Palette::LIGHT.rgb(ink.into()), day, "{ink:?}");
            let shop = value(&dark, ink.css_name()).unwrap_or(day);
            assert_eq!(Palette::DARK.rgb(ink.into()), shop, "{ink:?}");
            let paper = value(&print, ink.css_name()).unwrap_or(day);
            assert_eq!(Palette::PRINT.rgb(ink.into()), paper, "{ink:?}");
        }
    }

    #[test]
    fn computed_styles() {
        assert_eq!(parse_css(" #fff"), Some([255; 3]));
        assert_eq!(parse_css("#13171c80"), Some([0x13, 0x17, 0x1c]));
        assert_eq!(parse_css("rgb(19, 23, 28)"), Some([19, 23, 28]));
        assert_eq!(parse_css("rgba(19 23 28 / 0.5)"), Some([19, 23, 28]));
        assert_eq!(parse_css("Canvas"), None);
        assert_eq!(parse_css("#é1"), None);
        let read = Palette::read(
            |name| (name == "--ink").then(|| "#123".into()),
            &Palette::DARK,
        );
        assert_eq!(read.rgb(Ink::Ink.into()), [0x11, 0x22, 0x33]);
        assert_eq!(
            read.rgb(Ink::Sheet.into()),
            Palette::DARK.rgb(Ink::Sheet.into())
        );
    }
}
