//! Properties of scales, units and typed quantities.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::units::{
    DurationUnit, LengthUnit, TemperatureScale, format_duration_s, format_length,
    format_temperature, parse_duration_s, parse_length_mm, parse_temperature_c,
};

const SCALES: [TemperatureScale; 2] = [TemperatureScale::Celsius, TemperatureScale::Fahrenheit];
const LENGTHS: [LengthUnit; 2] = [LengthUnit::Millimetre, LengthUnit::Inch];

proptest! {
    #[test]
    fn a_temperature_goes_to_a_scale_and_back(temperature_c in -273.15..2000.0f64) {
        for scale in SCALES {
            let back = scale.to_celsius(scale.of_celsius(temperature_c));
            prop_assert!((back - temperature_c).abs() < 1e-9);
            let band = scale.to_kelvin_difference(scale.of_kelvin_difference(temperature_c));
            prop_assert!((band - temperature_c).abs() < 1e-9);
        }
    }

    #[test]
    fn a_shown_temperature_reads_back_within_half_a_degree(temperature_c in -200.0..1300.0f64) {
        for scale in SCALES {
            // The unit is in the text, so the scale of the page does not matter.
            for page in SCALES {
                let shown = format_temperature(temperature_c, scale);
                let back = parse_temperature_c(&shown, page).map_err(|e| {
                    TestCaseError::fail(e.to_string())
                })?;
                prop_assert!((back - temperature_c).abs() <= 0.5 + 1e-9);
                prop_assert_eq!(format_temperature(back, scale), shown);
            }
        }
    }

    #[test]
    fn a_shown_length_reads_back_as_shown(length_mm in 0.0..300.0f64) {
        for unit in LENGTHS {
            let shown = format_length(length_mm, unit);
            let back = parse_length_mm(&shown, LengthUnit::Millimetre).map_err(|e| {
                TestCaseError::fail(e.to_string())
            })?;
            prop_assert_eq!(format_length(back, unit), shown);
        }
    }

    #[test]
    fn a_shown_time_reads_back_as_shown(time_s in 0.0..1e6f64) {
        let shown = format_duration_s(time_s);
        let back = parse_duration_s(&shown, DurationUnit::Minute).map_err(|e| {
            TestCaseError::fail(e.to_string())
        })?;
        prop_assert_eq!(format_duration_s(back), shown);
        prop_assert!((back - time_s).abs() <= 0.01f64.max(0.06 * time_s));
    }

    #[test]
    fn any_text_is_read_or_refused(text in any::<String>()) {
        for scale in SCALES {
            if let Ok(temperature_c) = parse_temperature_c(&text, scale) {
                prop_assert!(temperature_c >= -273.15 && temperature_c.is_finite());
            }
        }
        if let Ok(length_mm) = parse_length_mm(&text, LengthUnit::Inch) {
            prop_assert!(length_mm >= 0.0 && length_mm.is_finite());
        }
        if let Ok(time_s) = parse_duration_s(&text, DurationUnit::Hour) {
            prop_assert!(time_s >= 0.0 && time_s.is_finite());
        }
    }

    #[test]
    fn texts_close_to_quantities_are_read_or_refused(
        text in "[0-9.,/ −½+-]{0,8} ?[°fFcChminCs\".]{0,4}[0-9 ]{0,3}"
    ) {
        let _ = parse_temperature_c(&text, TemperatureScale::Celsius);
        let _ = parse_length_mm(&text, LengthUnit::Millimetre);
        let _ = parse_duration_s(&text, DurationUnit::Minute);
    }
}
