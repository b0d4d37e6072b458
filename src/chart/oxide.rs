//! Oxide colours of bright steel after an hour at heat: common practice, no source. They shift with
//! time, steel and surface.

use recalesce_texts::charts::oxide as texts;

/// Temperature in °C, displayed sRGB, name in the shop.
pub const COLOURS: [(f64, [u8; 3], &str); 14] = [
    (200.0, [0xdc, 0xd6, 0xbd], texts::FAINTEST_STRAW),
    (210.0, [0xdc, 0xcf, 0x9d], texts::FAINT_STRAW),
    (220.0, [0xd9, 0xc3, 0x78], texts::LIGHT_STRAW),
    (230.0, [0xd2, 0xb1, 0x58], texts::STRAW),
    (240.0, [0xc2, 0x95, 0x40], texts::DARK_STRAW),
    (250.0, [0xa8, 0x74, 0x37], texts::BROWN_STRAW),
    (260.0, [0x8f, 0x55, 0x40], texts::BROWN),
    (270.0, [0x7a, 0x3f, 0x55], texts::PURPLE_BROWN),
    (280.0, [0x64, 0x3a, 0x78], texts::PURPLE),
    (290.0, [0x4a, 0x41, 0x93], texts::VIOLET_BLUE),
    (300.0, [0x38, 0x56, 0x9f], texts::DARK_BLUE),
    (310.0, [0x45, 0x79, 0xb0], texts::BLUE),
    (320.0, [0x6f, 0x9d, 0xbd], texts::LIGHT_BLUE),
    (330.0, [0x93, 0xae, 0xbb], texts::GREY_BLUE),
];

/// Lowest and highest temperature of the colours, °C: bright below, grey above.
pub const RANGE_C: [f64; 2] = [200.0, 330.0];

/// Displayed sRGB of the oxide at a temperature in °C, between rows linearly; `None` where the
/// steel is still bright, already grey, or the temperature is not a number.
pub fn oxide_srgb(temperature_c: f64) -> Option<[u8; 3]> {
    let pair = COLOURS
        .windows(2)
        .find(|pair| (pair[0].0..=pair[1].0).contains(&temperature_c))?;
    let part = (temperature_c - pair[0].0) / (pair[1].0 - pair[0].0);
    let channel = |i: usize| {
        let (low, high) = (f64::from(pair[0].1[i]), f64::from(pair[1].1[i]));
        (low + part * (high - low)).round() as u8
    };
    Some([channel(0), channel(1), channel(2)])
}

/// What the shop calls the colour at a temperature in °C.
pub fn oxide_name(temperature_c: f64) -> &'static str {
    if temperature_c.is_nan() || temperature_c < RANGE_C[0] - 5.0 {
        return texts::BRIGHT;
    }
    COLOURS
        .iter()
        .find(|(row_c, _, _)| temperature_c < row_c + 5.0)
        .map_or(texts::GREY, |(_, _, name)| name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn same_as_the_table() {
        let text = include_str!("../../tests/checks/oxide.csv");
        let lines: Vec<&str> = text.lines().skip(1).collect();
        assert_eq!(lines.len(), COLOURS.len());
        for (line, (temperature_c, [r, g, b], name)) in lines.iter().zip(COLOURS) {
            let row = format!("{temperature_c},#{r:02x}{g:02x}{b:02x},{name},");
            assert!(line.starts_with(&row), "{line} is not {row}");
            assert_eq!(oxide_srgb(temperature_c), Some([r, g, b]));
            assert_eq!(oxide_name(temperature_c), name);
        }
        assert_eq!(oxide_srgb(190.0), None);
        assert_eq!(oxide_srgb(f64::NAN), None);
        assert_eq!(oxide_name(120.0), "bright");
        assert_eq!(oxide_name(400.0), "grey");
    }
}
