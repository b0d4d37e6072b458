//! Formulas as text and as MathML.

use super::{Between, Formula, Of, Symbol};
use recalesce_texts::numeric as texts;
use std::fmt::Write;

/// Whether letters stand, or their values.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Letters {
    Names,
    Values,
}

/// How tightly a formula holds together: what is looser than its place is put in brackets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Grip {
    Sum,
    Product,
    Power,
    Whole,
}

/// Digits that count of a value in a formula.
pub(super) const DIGITS: i32 = 4;

/// A number with the digits that count, without zeros behind.
#[must_use]
pub(super) fn short(value: f64, digits: i32) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let size = value.abs();
    if size != 0.0 && !(1e-4..1e6).contains(&size) {
        let power = size.log10().floor() as i32;
        let front = short(value / 10_f64.powi(power), digits);
        return format!("{front} · 10^{power}").replace('-', "\u{2212}");
    }
    let whole = if size > 0.0 {
        size.log10().floor() as i32 + 1
    } else {
        1
    };
    let decimals = usize::try_from(digits - whole).unwrap_or(0);
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    let text = if text == "-0" { "0" } else { text };
    text.replace('-', "\u{2212}")
}

/// A constant as it is printed, unless it is itself computed.
fn printed(value: f64) -> String {
    short(value, 7)
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;")
}

impl Symbol {
    /// Its name in a line of text.
    #[must_use]
    pub fn plain(&self) -> String {
        self.name.replace('_', " ")
    }

    /// Its name in MathML.
    #[must_use]
    pub fn mathml(&self) -> String {
        let letters = |text: &str| {
            let upright = if text.chars().count() > 1 {
                " mathvariant=\"normal\""
            } else {
                ""
            };
            format!("<mi{upright}>{}</mi>", escaped(text))
        };
        match self.name.split_once('_') {
            Some((letter, low)) => {
                format!("<msub>{}{}</msub>", letters(letter), letters(low))
            }
            None => letters(&self.name),
        }
    }

    /// Its value with the digits that are shown.
    #[must_use]
    pub fn value_text(&self) -> String {
        short(self.value, DIGITS)
    }
}

/// A number in MathML, a power of ten with its exponent on high.
fn number(text: &str) -> String {
    match text.split_once(" · 10^") {
        Some((front, power)) => {
            format!("<mn>{front}</mn><mo>·</mo><msup><mn>10</mn><mn>{power}</mn></msup>")
        }
        None => format!("<mn>{text}</mn>"),
    }
}

impl Formula {
    fn grip(&self, letters: Letters) -> Grip {
        let of_value = |value: f64| {
            if value < 0.0 || (value != 0.0 && !(1e-4..1e6).contains(&value.abs())) {
                Grip::Sum
            } else {
                Grip::Whole
            }
        };
        match self {
            Self::Constant(value) => of_value(*value),
            Self::Symbol(symbol) if letters == Letters::Values => of_value(symbol.value),
            Self::Symbol(_) => Grip::Whole,
            Self::Pair(Between::Plus | Between::Minus, _) | Self::One(Of::Negative, _) => Grip::Sum,
            Self::Pair(Between::Times | Between::Over, _) => Grip::Product,
            Self::One(Of::Exp | Of::Exp2 | Of::Power(_), _) => Grip::Power,
            Self::Pair(Between::Least | Between::Most, _) | Self::One(..) => Grip::Whole,
        }
    }

    /// The formula in a line of text, for who hears it and where nothing is typeset.
    #[must_use]
    pub fn plain(&self) -> String {
        let held = |inside: &Self, least: Grip| {
            let text = inside.plain();
            if inside.grip(Letters::Names) < least {
                format!("({text})")
            } else {
                text
            }
        };
        match self {
            Self::Constant(value) => printed(*value),
            Self::Symbol(symbol) => symbol.plain(),
            Self::Pair(between, sides) => {
                let [left, right] = sides.each_ref();
                match between {
                    Between::Plus => format!("{} + {}", left.plain(), right.plain()),
                    Between::Minus => {
                        format!("{} − {}", left.plain(), held(right, Grip::Product))
                    }
                    Between::Times => {
                        format!(
                            "{} · {}",
                            held(left, Grip::Product),
                            held(right, Grip::Product)
                        )
                    }
                    Between::Over => {
                        format!(
                            "{} / {}",
                            held(left, Grip::Product),
                            held(right, Grip::Power)
                        )
                    }
                    Between::Least => texts::least_of(&left.plain(), &right.plain()),
                    Between::Most => texts::most_of(&left.plain(), &right.plain()),
                }
            }
            Self::One(of, inside) => {
                let text = inside.plain();
                match of {
                    Of::Negative => format!("−{}", held(inside, Grip::Product)),
                    Of::Exp => format!("exp({text})"),
                    Of::Exp2 => format!("2^({text})"),
                    Of::Ln => format!("ln({text})"),
                    Of::Log10 => format!("log({text})"),
                    Of::Root => texts::root_of(&text),
                    Of::Power(exponent) => format!("{}^{exponent}", held(inside, Grip::Whole)),
                    Of::Curve(curve) => format!("{}({text})", curve.name),
                }
            }
        }
    }

    /// The formula in MathML, in pieces between which a line may break.
    #[must_use]
    pub fn mathml(&self) -> Vec<String> {
        self.pieces(Letters::Names)
    }

    /// The same with the values in place of the letters.
    #[must_use]
    pub fn mathml_of_values(&self) -> Vec<String> {
        self.pieces(Letters::Values)
    }

    fn pieces(&self, letters: Letters) -> Vec<String> {
        match self {
            Self::Pair(between @ (Between::Plus | Between::Minus), sides) => {
                let [left, right] = sides.each_ref();
                let (sign, least) = match between {
                    Between::Plus => ("+", Grip::Sum),
                    _ => ("−", Grip::Product),
                };
                let mut pieces = left.pieces(letters);
                let mut piece = format!("<mo form=\"infix\">{sign}</mo>");
                right.put_held(&mut piece, letters, least);
                pieces.push(piece);
                pieces
            }
            _ => {
                let mut piece = String::new();
                self.put(&mut piece, letters);
                vec![piece]
            }
        }
    }

    fn put_held(&self, out: &mut String, letters: Letters, least: Grip) {
        // After a sign a negative number stands in brackets too.
        let is_held = self.grip(letters) >= least
            && !(matches!(self, Self::Constant(value) if *value < 0.0) && least > Grip::Sum);
        if is_held {
            self.put(out, letters);
        } else {
            out.push_str("<mrow><mo>(</mo>");
            self.put(out, letters);
            out.push_str("<mo>)</mo></mrow>");
        }
    }

    fn put(&self, out: &mut String, letters: Letters) {
        match self {
            Self::Constant(value) => out.push_str(&number(&printed(*value))),
            Self::Symbol(symbol) => out.push_str(&match letters {
                Letters::Names => symbol.mathml(),
                Letters::Values => number(&symbol.value_text()),
            }),
            Self::Pair(between, sides) => Self::put_pair(out, *between, sides, letters),
            Self::One(of, inside) => Self::put_one(out, of, inside, letters),
        }
    }

    fn put_pair(out: &mut String, between: Between, sides: &[Self; 2], letters: Letters) {
        let [left, right] = sides;
        match between {
            Between::Plus | Between::Minus => {
                for piece in Self::Pair(between, Box::new(sides.clone())).pieces(letters) {
                    out.push_str(&piece);
                }
            }
            Between::Times => {
                left.put_held(out, letters, Grip::Product);
                out.push_str("<mo>·</mo>");
                right.put_held(out, letters, Grip::Product);
            }
            Between::Over => {
                out.push_str("<mfrac><mrow>");
                left.put(out, letters);
                out.push_str("</mrow><mrow>");
                right.put(out, letters);
                out.push_str("</mrow></mfrac>");
            }
            Between::Least | Between::Most => {
                let name = if between == Between::Least {
                    "min"
                } else {
                    "max"
                };
                let _ = write!(out, "<mi>{name}</mi><mo>(</mo>");
                left.put(out, letters);
                out.push_str("<mo>,</mo>");
                right.put(out, letters);
                out.push_str("<mo>)</mo>");
            }
        }
    }

    fn put_one(out: &mut String, of: &Of, inside: &Self, letters: Letters) {
        let mut on_high = |base: &str| {
            let _ = write!(out, "<msup>{base}<mrow>");
            inside.put(out, letters);
            out.push_str("</mrow></msup>");
        };
        match of {
            Of::Exp => on_high("<mi mathvariant=\"normal\">e</mi>"),
            Of::Exp2 => on_high("<mn>2</mn>"),
            Of::Negative => {
                out.push_str("<mo form=\"prefix\">−</mo>");
                inside.put_held(out, letters, Grip::Product);
            }
            Of::Root => {
                // A drawn root is missing where no typeface for formulas is installed.
                out.push_str("<mo form=\"prefix\">√</mo>");
                inside.put_held(out, letters, Grip::Whole);
            }
            Of::Power(exponent) => {
                out.push_str("<msup><mrow>");
                inside.put_held(out, letters, Grip::Whole);
                let _ = write!(out, "</mrow><mn>{exponent}</mn></msup>");
            }
            Of::Ln | Of::Log10 | Of::Curve(..) => {
                let name = match of {
                    Of::Ln => "ln",
                    Of::Log10 => "log",
                    Of::Curve(curve) => curve.name,
                    _ => "",
                };
                let _ = write!(
                    out,
                    "<mi mathvariant=\"normal\">{}</mi><mo>(</mo>",
                    escaped(name)
                );
                inside.put(out, letters);
                out.push_str("<mo>)</mo>");
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Formula, Number};
    use super::short;

    #[test]
    fn digits_that_count() {
        let cases = [
            (0.96, "0.96"),
            (600.0, "600"),
            (0.650_04, "0.65"),
            (-12.345_6, "−12.35"),
            (143_000.0, "143000"),
            (0.0, "0"),
            (-0.000_01, "−1 · 10^−5"),
            (2.5e7, "2.5 · 10^7"),
            (f64::NAN, "–"),
        ];
        for (value, text) in cases {
            assert_eq!(short(value, 4), text);
        }
        // Constants keep what is printed.
        assert_eq!(short(-6.643_856, 7), "−6.643856");
    }

    #[test]
    fn brackets_stand_where_they_must() {
        let n = Formula::constant;
        let c = || Formula::symbol("C", 0.8);
        let ms = n(565.0) - n(600.0) * (n(1.0) - (n(-0.96) * c()).exp()) - n(31.0) * c();
        assert_eq!(ms.plain(), "565 − 600 · (1 − exp((−0.96) · C)) − 31 · C");
        let pieces = ms.mathml();
        assert_eq!(pieces.len(), 3);
        assert!(pieces[1].contains("<mo>(</mo><mn>1</mn>"), "{pieces:?}");
        let less = n(1.0) - (c() - n(2.0));
        assert_eq!(less.plain(), "1 − (C − 2)");
        assert!(ms.mathml_of_values()[2].contains("<mn>0.8</mn>"));
        let low = Formula::symbol("M_s", 200.0).mathml();
        assert_eq!(low, ["<msub><mi>M</mi><mi>s</mi></msub>".to_owned()]);
    }
}
