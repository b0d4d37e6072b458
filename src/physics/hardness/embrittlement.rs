//! Ranges of tempering temperature that embrittle: warnings, not hardness.

use crate::sources::temper_embrittlement::{
    EASING_MOLYBDENUM_WT, REVERSIBLE_ALLOY_WT, REVERSIBLE_C, SILICON_TROUGH_C, SILICON_WT,
    STAINLESS_BELOW_CARBON_WT, STAINLESS_C, STAINLESS_CHROMIUM_WT, TROUGH_C,
};
use crate::steel::Composition;

/// Tempering temperatures that embrittle martensite for good, °C: 260 to 370 usually, up to 350 to
/// 450 with 1.5 % silicon, 425 to 565 in hardenable stainless steel.
#[must_use]
pub fn embrittling_range_c(steel: &Composition) -> [f64; 2] {
    if steel.cr >= STAINLESS_CHROMIUM_WT && steel.c < STAINLESS_BELOW_CARBON_WT {
        return STAINLESS_C;
    }
    let (begin, complete) = SILICON_WT;
    let shift = ((steel.si - begin) / (complete - begin)).clamp(0.0, 1.0);
    let at = |i: usize| TROUGH_C[i] + shift * (SILICON_TROUGH_C[i] - TROUGH_C[i]);
    [at(0), at(1)]
}

/// Embrittlement by slow cooling after a high temper, undone by heating again and cooling fast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReversibleEmbrittlement {
    /// Temperatures to cool through fast, °C.
    pub range_c: [f64; 2],
    /// Whether the steel holds molybdenum enough to ease it.
    pub eased_by_molybdenum: bool,
}

/// The warning for steels alloyed with manganese, nickel and chromium; none for others.
#[must_use]
pub fn reversible_embrittlement(steel: &Composition) -> Option<ReversibleEmbrittlement> {
    (steel.mn + steel.ni + steel.cr >= REVERSIBLE_ALLOY_WT).then_some(ReversibleEmbrittlement {
        range_c: REVERSIBLE_C,
        eased_by_molybdenum: steel.mo >= EASING_MOLYBDENUM_WT,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn silicon_moves_the_range_up() {
        let steel = |si| Composition {
            c: 0.6,
            si,
            ..Composition::default()
        };
        assert_eq!(embrittling_range_c(&steel(0.25)), [260.0, 370.0]);
        assert_eq!(embrittling_range_c(&steel(2.0)), [350.0, 450.0]);
        let [low, high] = embrittling_range_c(&steel(1.0));
        assert!(low > 260.0 && low < 350.0 && high > 370.0 && high < 450.0);
    }

    /// D2 is tempered near 520 °C as a matter of course (common practice, no source).
    #[test]
    fn a_tool_steel_of_much_chromium_is_not_stainless() {
        let chromium = |c, cr| Composition {
            c,
            cr,
            ..Composition::default()
        };
        assert_eq!(embrittling_range_c(&chromium(1.0, 17.0)), STAINLESS_C);
        assert_eq!(embrittling_range_c(&chromium(1.5, 12.0)), TROUGH_C);
    }

    #[test]
    fn reversible_kind_asks_for_alloying() {
        let plain = Composition {
            c: 0.9,
            mn: 0.7,
            ..Composition::default()
        };
        assert_eq!(reversible_embrittlement(&plain), None);
        let nickel_chromium = Composition {
            ni: 1.3,
            cr: 0.6,
            ..plain
        };
        assert!(
            reversible_embrittlement(&nickel_chromium)
                .is_some_and(|warning| !warning.eased_by_molybdenum)
        );
    }
}
