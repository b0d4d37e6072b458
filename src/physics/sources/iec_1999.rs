//! The sRGB display: primaries, white and transfer curve.

use super::{Source, Standing};

/// Where the constants come from.
pub const SOURCE: Source = Source {
    key: "iec_1999",
    authors: "International Electrotechnical Commission",
    year: 1999,
    title: "Colour measurement and management: default RGB colour space, sRGB",
    venue: "IEC 61966-2-1:1999",
    link: Some("https://webstore.iec.ch/en/publication/6169"),
    used_for: "glow colours on the display",
    standing: Standing::FromMemory,
};

/// Rows giving linear red, green, blue from X, Y, Z (white D65, Y = 1).
pub const RGB_OF_XYZ: [[f64; 3]; 3] = [
    [3.2406, -1.5372, -0.4986],
    [-0.9689, 1.8758, 0.0415],
    [0.0557, -0.2040, 1.0570],
];

/// Display value 0 to 1 of a linear channel 0 to 1.
pub fn encode(linear: f64) -> f64 {
    if linear <= 0.0031308 {
        12.92 * linear
    } else {
        1.055 * linear.powf(1.0 / 2.4) - 0.055
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn white_is_white() {
        let d65 = [0.9505, 1.0, 1.0890];
        for row in RGB_OF_XYZ {
            let channel: f64 = row.iter().zip(d65).map(|(a, b)| a * b).sum();
            assert!((channel - 1.0).abs() < 1e-3);
        }
        assert!((encode(1.0) - 1.0).abs() < 1e-12);
        assert!((encode(0.0031308) - encode(0.0031309)).abs() < 1e-5);
    }
}
