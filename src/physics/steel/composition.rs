//! A steel's composition in weight per cent; iron is the balance.

use recalesce_texts::steel as texts;
use serde::{Deserialize, Serialize};

/// An alloying element that the project knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Element {
    /// Carbon.
    C,
    /// Manganese.
    Mn,
    /// Silicon.
    Si,
    /// Chromium.
    Cr,
    /// Nickel.
    Ni,
    /// Molybdenum.
    Mo,
    /// Vanadium.
    V,
    /// Tungsten.
    W,
    /// Phosphorus.
    P,
    /// Sulphur.
    S,
}

impl Element {
    /// All elements in the order in which certificates list them.
    pub const ALL: [Self; 10] = [
        Self::C,
        Self::Mn,
        Self::Si,
        Self::Cr,
        Self::Ni,
        Self::Mo,
        Self::V,
        Self::W,
        Self::P,
        Self::S,
    ];

    /// Chemical symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::C => "C",
            Self::Mn => "Mn",
            Self::Si => "Si",
            Self::Cr => "Cr",
            Self::Ni => "Ni",
            Self::Mo => "Mo",
            Self::V => "V",
            Self::W => "W",
            Self::P => "P",
            Self::S => "S",
        }
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::C => texts::CARBON,
            Self::Mn => texts::MANGANESE,
            Self::Si => texts::SILICON,
            Self::Cr => texts::CHROMIUM,
            Self::Ni => texts::NICKEL,
            Self::Mo => texts::MOLYBDENUM,
            Self::V => texts::VANADIUM,
            Self::W => texts::TUNGSTEN,
            Self::P => texts::PHOSPHORUS,
            Self::S => texts::SULPHUR,
        }
    }

    /// Largest content in weight per cent that a composition may name at all.
    /// Models have narrower ranges of their own.
    #[must_use]
    pub const fn largest_wt(self) -> f64 {
        match self {
            Self::C => 2.5,
            Self::Mn | Self::Si => 4.0,
            Self::Cr => 20.0,
            Self::Ni => 6.0,
            Self::Mo => 6.0,
            Self::V => 5.0,
            Self::W => 8.0,
            Self::P | Self::S => 0.4,
        }
    }
}

/// Contents in weight per cent of the whole; what is not named is zero, iron is the balance.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Composition {
    /// Carbon, wt %.
    pub c: f64,
    /// Manganese, wt %.
    pub mn: f64,
    /// Silicon, wt %.
    pub si: f64,
    /// Chromium, wt %.
    pub cr: f64,
    /// Nickel, wt %.
    pub ni: f64,
    /// Molybdenum, wt %.
    pub mo: f64,
    /// Vanadium, wt %.
    pub v: f64,
    /// Tungsten, wt %.
    pub w: f64,
    /// Phosphorus, wt %.
    pub p: f64,
    /// Sulphur, wt %.
    pub s: f64,
}

/// What is wrong with a composition.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum CompositionError {
    /// A content is not a number, negative or above what any steel here holds.
    #[error("{}", texts::content_outside(element.symbol(), *value, *largest_wt))]
    Content {
        /// The element concerned.
        element: Element,
        /// The value given, wt %.
        value: f64,
        /// The largest value allowed, wt %.
        largest_wt: f64,
    },
    /// The contents leave too little iron.
    #[error("{}", texts::too_much_alloying(*sum_wt, *largest_wt))]
    TooMuch {
        /// Sum of all contents, wt %.
        sum_wt: f64,
        /// The largest sum allowed, wt %.
        largest_wt: f64,
    },
}

/// Largest sum of contents, wt %: keeps iron the solvent.
const LARGEST_SUM_WT: f64 = 30.0;

impl Composition {
    /// Content of an element, wt %.
    #[must_use]
    pub const fn get(&self, element: Element) -> f64 {
        match element {
            Element::C => self.c,
            Element::Mn => self.mn,
            Element::Si => self.si,
            Element::Cr => self.cr,
            Element::Ni => self.ni,
            Element::Mo => self.mo,
            Element::V => self.v,
            Element::W => self.w,
            Element::P => self.p,
            Element::S => self.s,
        }
    }

    /// Sets the content of an element, wt %.
    pub const fn set(&mut self, element: Element, value_wt: f64) {
        match element {
            Element::C => self.c = value_wt,
            Element::Mn => self.mn = value_wt,
            Element::Si => self.si = value_wt,
            Element::Cr => self.cr = value_wt,
            Element::Ni => self.ni = value_wt,
            Element::Mo => self.mo = value_wt,
            Element::V => self.v = value_wt,
            Element::W => self.w = value_wt,
            Element::P => self.p = value_wt,
            Element::S => self.s = value_wt,
        }
    }

    /// The same steel with another carbon content, wt %.
    #[must_use]
    pub const fn with_carbon(mut self, carbon_wt: f64) -> Self {
        self.c = carbon_wt;
        self
    }

    /// Checks that every content is a number in its range and that iron remains the balance.
    ///
    /// # Errors
    /// The first content out of range, or the sum when it leaves too little iron.
    pub fn validate(&self) -> Result<(), CompositionError> {
        let mut sum_wt = 0.0;
        for element in Element::ALL {
            let value = self.get(element);
            let largest_wt = element.largest_wt();
            if !(0.0..=largest_wt).contains(&value) {
                return Err(CompositionError::Content {
                    element,
                    value,
                    largest_wt,
                });
            }
            sum_wt += value;
        }
        if sum_wt > LARGEST_SUM_WT {
            return Err(CompositionError::TooMuch {
                sum_wt,
                largest_wt: LARGEST_SUM_WT,
            });
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn content_that_is_not_a_number_is_refused() {
        let steel = Composition {
            c: f64::NAN,
            ..Composition::default()
        };
        assert!(matches!(
            steel.validate(),
            Err(CompositionError::Content {
                element: Element::C,
                ..
            })
        ));
    }

    #[test]
    fn message_names_element_value_and_limit() {
        let steel = Composition {
            mn: 9.0,
            ..Composition::default()
        };
        let message = steel.validate().map_err(|e| e.to_string());
        assert_eq!(message, Err("Mn: 9 % is outside 0 to 4 %".to_owned()));
    }

    #[test]
    fn set_then_get_round_trips() {
        let mut steel = Composition::default();
        for (i, element) in Element::ALL.into_iter().enumerate() {
            steel.set(element, 0.01 * i as f64);
            assert_eq!(steel.get(element), 0.01 * i as f64);
        }
    }
}
