//! The colour that hot steel shows in a dim shop.
//!
//! Planck's law through the standard observer gives the chromaticity (grey body). What follows is
//! ours: colours outside the display are mixed with white at constant luminance, 5 % veiling glare
//! is added, brightness grows with the cube root of luminance from first glow at 525 °C, and each
//! channel saturates as the eye does, which turns red to yellow.

use std::sync::LazyLock;

use crate::sources::{bipm_2019, cie_1931, iec_1999};

/// First glow in a dim shop, °C: below it steel is painted as the dark ground.
pub const FIRST_GLOW_C: f64 = 525.0;

/// Highest temperature of the table, °C: above it the colour stays.
pub const HOTTEST_C: f64 = 1400.0;

const KELVIN: f64 = 273.15;
const BRIGHTNESS: f64 = 0.025;
const VEIL: f64 = 0.05;
const STEP_K: f64 = 2.5;

/// X, Y, Z of a grey body at a temperature above absolute zero, in a common but arbitrary unit.
fn tristimulus(temperature_c: f64) -> [f64; 3] {
    let kelvin = (temperature_c + KELVIN).max(1.0);
    let c2_nm_k = 1e9 * bipm_2019::PLANCK_J_S * bipm_2019::LIGHT_M_S / bipm_2019::BOLTZMANN_J_K;
    let mut xyz = [0.0; 3];
    for [nm, x, y, z] in cie_1931::OBSERVER {
        let radiance = (500.0 / nm).powi(5) / (c2_nm_k / (nm * kelvin)).exp_m1();
        xyz[0] += x * radiance;
        xyz[1] += y * radiance;
        xyz[2] += z * radiance;
    }
    xyz
}

/// Chromaticity x, y of a grey body at a temperature in °C (above about −200 °C).
pub fn chromaticity(temperature_c: f64) -> [f64; 2] {
    let [x, y, z] = tristimulus(temperature_c);
    let sum = x + y + z;
    [x / sum, y / sum]
}

fn display(temperature_c: f64, luminance_at_first_glow: f64) -> [f64; 3] {
    let xyz = tristimulus(temperature_c);
    let relative = xyz[1] / luminance_at_first_glow;
    let brightness = BRIGHTNESS * (relative.cbrt() - 1.0).max(0.0);
    let unit = iec_1999::RGB_OF_XYZ
        .map(|row| row.iter().zip(xyz).map(|(m, v)| m * v).sum::<f64>() / xyz[1]);
    let lowest = unit.iter().copied().fold(0.0, f64::min);
    let white = -lowest / (1.0 - lowest);
    unit.map(|channel| {
        let inside = (1.0 - white) * channel + white;
        let veiled = (1.0 - VEIL) * inside + VEIL;
        iec_1999::encode(-(-brightness * veiled).exp_m1())
    })
}

static TABLE: LazyLock<Vec<[f64; 3]>> = LazyLock::new(|| {
    let first = tristimulus(FIRST_GLOW_C)[1];
    let rows = ((HOTTEST_C - FIRST_GLOW_C) / STEP_K).round() as usize;
    (0..=rows)
        .map(|i| display(FIRST_GLOW_C + STEP_K * i as f64, first))
        .collect()
});

/// Displayed sRGB of steel at a temperature in °C; `None` while it is too cold to glow (below
/// [`FIRST_GLOW_C`]) or when the temperature is not a number. Above [`HOTTEST_C`] the colour stays.
pub fn glow(temperature_c: f64) -> Option<[u8; 3]> {
    if temperature_c.is_nan() || temperature_c < FIRST_GLOW_C {
        return None;
    }
    let place = (temperature_c.min(HOTTEST_C) - FIRST_GLOW_C) / STEP_K;
    let row = place.floor() as usize;
    let low = TABLE.get(row)?;
    let high = TABLE.get(row + 1).unwrap_or(low);
    let part = place - row as f64;
    let channel = |i: usize| {
        let value = low[i] + part * (high[i] - low[i]);
        (255.0 * value).round().clamp(0.0, 255.0) as u8
    };
    Some([channel(0), channel(1), channel(2)])
}

/// As [`glow`], black while the steel is too cold to glow.
pub fn glow_srgb(temperature_c: f64) -> [u8; 3] {
    glow(temperature_c).unwrap_or([0; 3])
}

#[cfg(test)]
mod tests {
    use super::*;

    /// tests/checks/glow.csv: chromaticity to 0.002, displayed colour to 2/255.
    #[test]
    fn agrees_with_the_table() {
        let text = include_str!("../../tests/checks/glow.csv");
        let mut rows = 0;
        let (mut worst_xy, mut worst_rgb) = (0.0_f64, 0_i32);
        for line in text.lines().skip(1) {
            let cells: Vec<&str> = line.split(',').collect();
            let number = |i: usize| cells[i].parse::<f64>().expect("number");
            let [x, y] = chromaticity(number(0));
            worst_xy = worst_xy
                .max((x - number(1)).abs())
                .max((y - number(2)).abs());
            let shown = glow_srgb(number(0));
            for (i, channel) in shown.iter().enumerate() {
                let hex = &cells[14][1 + 2 * i..3 + 2 * i];
                let wanted = i32::from_str_radix(hex, 16).expect("hex");
                worst_rgb = worst_rgb.max((i32::from(*channel) - wanted).abs());
            }
            rows += 1;
        }
        assert_eq!(rows, 81);
        println!("chromaticity {worst_xy:.6}, displayed {worst_rgb}/255");
        assert!(worst_xy < 0.002, "chromaticity {worst_xy}");
        assert!(worst_rgb <= 2, "displayed colour {worst_rgb}");
    }

    #[test]
    fn dark_and_absurd_temperatures() {
        assert_eq!(glow(524.9), None);
        assert_eq!(glow(f64::NAN), None);
        assert_eq!(glow(f64::INFINITY), glow(HOTTEST_C));
        assert_eq!(glow_srgb(-40.0), [0; 3]);
    }
}
