//! The list of media.

use super::medium::{ClassFigures, Confidence};
use super::title::MediumTitle;
use super::{Cooled, Family, HeatTransfer, Medium, Quenching, Section, cool};
use crate::numeric::decimal::decimal;
use crate::steel::{Line, List};
use recalesce_texts::heat::media as texts;
use std::sync::OnceLock;

/// The list as kept.
const LIST: &str = include_str!("media.csv");

/// All media of the list, from the fastest to the slowest: by the time that the centre of a 3 mm
/// plate takes from entry at 800 °C to 540 °C.
///
/// The curves are fits of this project (see `sources::quench_media`): heat transfer was given at
/// every 50 °C between 100 and 850 °C, and the corners between those temperatures were restored
/// by extending the straight pieces on both sides; the outer pieces are extended to 60 and
/// 1000 °C.
///
/// | name | s | name | s |
/// |---|---|---|---|
/// | `brine10` | 0.43 | `salt200_still` | 5.71 |
/// | `water20` | 0.80 | `ref_fluid` | 5.93 |
/// | `polymer15` | 1.05 | `plate_Al_foil` | 6.12 |
/// | `oil_fast` | 1.31 | `N2_10bar` | 6.26 |
/// | `canola60` | 1.51 | `water60` | 7.56 |
/// | `oil_medfast` | 1.52 | `N2_6bar` | 7.88 |
/// | `oil_medium` | 1.99 | `N2_4bar` | 9.96 |
/// | `plate_Al_clamped` | 2.14 | `N2_2bar` | 16.6 |
/// | `salt200_agit_wet` | 2.25 | `N2_1bar` | 19.3 |
/// | `water40` | 2.62 | `air_fan` | 25.5 |
/// | `oil_marq150` | 2.68 | `air_still` | 45.2 |
/// | `oil_slow` | 3.04 |  | |
#[must_use]
pub fn media() -> &'static [Medium] {
    static MEDIA: OnceLock<Vec<Medium>> = OnceLock::new();
    // The file is part of the program and a test reads it strictly, so no row is lost here.
    MEDIA.get_or_init(|| {
        let titles = List::read(texts::TITLES);
        let list = List::read(LIST);
        list.lines()
            .filter_map(|line| read(line, &titles))
            .collect()
    })
}

/// The medium of the list with this name.
#[must_use]
pub fn medium(name: &str) -> Option<&'static Medium> {
    media().iter().find(|medium| medium.name == name)
}

/// What else is told of a medium: read where it is shown, and nothing computes with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MediumNote {
    /// Grossmann's severity of quench H as handbooks have it, 1/in, in words; empty where they have
    /// none.
    pub grossmann_h: String,
    /// What else to know about its curve.
    pub words: String,
}

/// That of a medium of the list; none where it has none.
#[must_use]
pub fn medium_note(name: &str) -> Option<MediumNote> {
    let notes = List::read(texts::NOTES);
    let line = of(&notes, name)?;
    Some(MediumNote {
        grossmann_h: line.text("grossmann_h_per_in").to_owned(),
        words: line.text("note").to_owned(),
    })
}

/// The line of texts that is of a medium.
fn of<'a>(texts: &'a List, name: &str) -> Option<Line<'a>> {
    texts.lines().find(|line| line.text("name") == name)
}

/// A medium from its line, and from the titles of all.
fn read(line: Line<'_>, titles: &List) -> Option<Medium> {
    let text = |column: &str| line.text(column).to_owned();
    let number = |column: &str| decimal(line.text(column));
    let range = |column: &str| range(line.text(column));
    let points: Option<Vec<[f64; 2]>> = line
        .text("h_w_m2k")
        .split_whitespace()
        .map(|pair| {
            let (temperature, h) = pair.split_once(':')?;
            Some([decimal(temperature)?, decimal(h)?])
        })
        .collect();
    let bath_c = number("bath_c")?;
    let name = text("name");
    Some(Medium {
        title: MediumTitle::new(of(titles, &name)?.text("title"), bath_c),
        name,
        family: Family::named(line.text("family"))?,
        moves: match line.text("moves") {
            "yes" => true,
            "no" => false,
            _ => return None,
        },
        h_w_m2k: HeatTransfer::new(&points?).ok()?,
        bath_c,
        usual_bath_c: range("usual_bath_c")?,
        radiation: false,
        h_band_factor: number("h_band_factor")?,
        confidence: Confidence::named(line.text("confidence"))?,
        class: ClassFigures {
            nickel_ball_s: range("nickel_ball_s")?,
            max_rate_k_per_s: range("max_rate_k_per_s")?,
            max_rate_at_c: range("max_rate_at_c")?,
            rate_at_300c_k_per_s: range("rate_at_300c_k_per_s")?,
        },
    })
}

/// Reads `40-65` or `40`; an empty field is no range, anything else no reading.
fn range(text: &str) -> Option<Option<[f64; 2]>> {
    if text.is_empty() {
        return Some(None);
    }
    let (least, most) = text.split_once('-').unwrap_or((text, text));
    Some(Some([decimal(least)?, decimal(most)?]))
}

/// Time of the centre of a 3 mm plate from 800 to 540 °C, s, by which the list is ordered.
pub fn plate_to_nose_s(medium: &Medium) -> f64 {
    let cooled = cool(&Quenching {
        section: Section::Plate { thickness_mm: 3.0 },
        medium,
        agitation: 1.0,
        start_c: 800.0,
        air_delay_s: 0.0,
        end_c: 530.0,
        then: &[],
        martensite_start_c: None,
    });
    let curve = cooled.as_ref().ok().and_then(Cooled::slowest);
    curve
        .and_then(|curve| curve.time_to_c(540.0))
        .unwrap_or(f64::INFINITY)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_line_is_read_and_sound() {
        let list = List::read(LIST);
        let titles = List::read(texts::TITLES);
        let rows: Vec<Option<Medium>> = list.lines().map(|line| read(line, &titles)).collect();
        assert_eq!(rows.len(), 23);
        for medium in rows {
            let medium = medium.expect("a readable line");
            assert!(medium.h_band_factor >= 1.2 && !medium.title.to_string().is_empty());
            assert!(!medium.cautions().is_empty());
            let [least, most] = medium.usual_bath_c.expect("a usual range");
            assert!(
                least <= medium.bath_c && medium.bath_c <= most,
                "{}",
                medium.name
            );
        }
    }

    /// The order of the list is that of its 3 mm plate.
    #[test]
    fn the_list_goes_from_fast_to_slow() {
        let times: Vec<f64> = media().iter().map(plate_to_nose_s).collect();
        assert!(times.is_sorted(), "{times:?}");
    }

    /// Notes on quenching, from memory: 100 to 150 W/m²K in nitrogen of 1 bar, 300 to 400 at 6, 400 to
    /// 500 at 10; each band covers its range.
    #[test]
    fn gas_is_as_the_notes_have_it() {
        for (name, [least, most]) in [
            ("N2_1bar", [100.0, 150.0]),
            ("N2_6bar", [300.0, 400.0]),
            ("N2_10bar", [400.0, 500.0]),
        ] {
            let gas = medium(name).unwrap();
            let cold = gas.h_w_m2k.at(100.0);
            assert!(least < cold && cold < most, "{name}: {cold}");
            let band = gas.h_band_factor;
            assert!(cold / band < least && most < cold * band, "{name}");
        }
        let cold: Vec<f64> = [1, 2, 4, 6, 10]
            .map(|bar| medium(&format!("N2_{bar}bar")).unwrap().h_w_m2k.at(100.0))
            .to_vec();
        assert!(cold.is_sorted(), "{cold:?}");
    }

    #[test]
    fn every_medium_has_a_note() {
        for medium in media() {
            let note = medium_note(&medium.name).expect("a line");
            assert!(!note.words.is_empty(), "{}", medium.name);
        }
        for texts in [texts::TITLES, texts::NOTES] {
            assert_eq!(List::read(texts).lines().count(), media().len());
        }
        assert_eq!(
            medium_note("oil_medium").unwrap().grossmann_h,
            "0.30 to 0.40"
        );
        assert_eq!(medium_note("own"), None);
    }

    #[test]
    fn names_are_unique() {
        for (i, one) in media().iter().enumerate() {
            assert!(
                media()
                    .iter()
                    .skip(i + 1)
                    .all(|other| other.name != one.name)
            );
        }
    }

    /// Natural convection 8 to 15 W/m²K and the radiation of scaled steel, 0.8, add up to the
    /// curve of still air: it has radiation in it.
    #[test]
    fn still_air_includes_radiation() {
        let air = medium("air_still").expect("in the list");
        for t in [200.0_f64, 500.0, 800.0] {
            let radiation = 0.8 * 5.670374419e-8 * ((t + 273.15).powi(4) - 293.15_f64.powi(4));
            let convection = air.h_w_m2k.at(t) - radiation / (t - 20.0);
            assert!((8.0..=15.0).contains(&convection), "{t} °C: {convection}");
        }
    }
}
