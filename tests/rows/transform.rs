//! Rows of the transformation check files with what this project predicts for them.
//!
//! A tolerance printed as a factor ("x2") is kept as a factor above 1 on both sides; its quantity
//! then carries the mark `(factor)`. Compositions are what the row says is dissolved; rows that
//! give only the nominal composition of a steel with carbide left take what the nose rows of the
//! same steel and soak say is dissolved.

use super::{FACTOR, Row};
use recalesce::soak::{StartingStructure, soak};
use recalesce::steel::{Composition, Element};
use recalesce::transform::{
    Austenite, Kinetics, Product, bainite_start_c, critical_cooling, end_quench, isothermal,
    martensite_finish_c, martensite_start_c, martensite_temperature_c, retained_austenite,
};
use std::collections::BTreeMap;

const CHECKS: &str = include_str!("../checks/transformations.csv");
const READ: &str = include_str!("../checks/read_in_source.csv");

/// Every row of the check files that this room predicts.
pub fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    let mut last_composition = String::new();
    for line in read(CHECKS) {
        let [quantity, steel, composition, condition, value, _, tolerance] = [
            "quantity",
            "steel",
            "composition",
            "condition",
            "value",
            "unit",
            "tolerance",
        ]
        .map(|name| line.get(name));
        if composition != "same" {
            last_composition = composition.clone();
        }
        let Some(predicted) = predict(&quantity, &steel, &last_composition, &condition) else {
            continue;
        };
        let Ok(value) = value.parse::<f64>() else {
            continue;
        };
        let (mark, tolerance) = tolerance_of(&tolerance, value);
        rows.push(Row {
            quantity: format!("{quantity}{mark}"),
            case: format!("{steel}; {last_composition}; {condition}"),
            predicted,
            value,
            tolerance,
            source: format!("{} [{}]", line.get("source"), line.get("seen_or_memory")),
        });
    }
    rows.extend(half_martensite_rates());
    rows.extend(producer_starts());
    rows.extend(practice());
    rows.extend(super::bar::rows());
    rows
}

/// Where a band's middle has the hardness of half martensite, the bar cools at the rate that the
/// kinetics should give for half martensite. Derived from the band rows.
pub fn half_martensite_rates() -> Vec<Row> {
    let mut bands: BTreeMap<(String, String), Vec<(f64, f64)>> = BTreeMap::new();
    for line in read(CHECKS) {
        if let (Some(at_mm), Ok(hrc)) = (
            distance_mm(&line.get("quantity")),
            line.get("value").parse(),
        ) {
            bands
                .entry((line.get("steel"), line.get("composition")))
                .or_default()
                .push((at_mm, hrc));
        }
    }
    let mut rows = Vec::new();
    for ((steel, composition_text), band) in bands {
        let a = austenite(&composition_text, 7.0);
        let half_hrc = recalesce::sources::astm_a255::half_martensite_hrc(a.composition.c);
        let crossing = band
            .windows(2)
            .find(|w| w[0].1 >= half_hrc && w[1].1 < half_hrc);
        let Some(&[(x0, y0), (x1, y1)]) = crossing else {
            continue;
        };
        let at_mm = x0 + (x1 - x0) * (y0 - half_hrc) / (y0 - y1);
        let (j, rate): (Vec<f64>, Vec<f64>) =
            recalesce::sources::astm_a255_cooling_rates::RATE_AT_704C
                .iter()
                .map(|[sixteenths, rate]| (sixteenths.ln(), rate.ln()))
                .unzip();
        rows.push(Row {
            quantity: format!("half-martensite end-quench rate {FACTOR}"),
            case: format!("{steel}; {composition_text}; {at_mm:.1} mm"),
            predicted: critical_cooling(&a, 0.5)
                .map(|c| c.rate_k_per_s)
                .map_err(|e| e.to_string()),
            value: at(&j, &rate, (at_mm * 16.0 / 25.4).ln()).exp(),
            tolerance: 2.0,
            source: "derived from the band rows and the rate table of the end-quench bar [memory]"
                .to_owned(),
        });
    }
    rows
}

/// Longest time from A1 to 480 °C of Newtonian cooling that still gives 95 % martensite, s.
pub fn allowed_to_480_c_s(a: &Austenite) -> Result<f64, String> {
    let kinetics = Kinetics::new(a).map_err(|e| e.to_string())?;
    let critical = kinetics.critical_cooling(FULL).map_err(|e| e.to_string())?;
    Ok(680.0 / critical.rate_k_per_s * ((kinetics.ae1_c() - 20.0) / 460.0).ln())
}

/// Times of the trade past the nose.
fn practice() -> Vec<Row> {
    vec![Row {
        quantity: format!("time allowed past the nose {FACTOR}"),
        case: "52100; usual hardening".to_owned(),
        predicted: allowed_to_480_c_s(&usually_dissolved("52100", "", "G 9")),
        value: 2.75,
        tolerance: 1.5,
        source: "common practice, no source".to_owned(),
    }]
}

/// Starts of martensite on producers' cards.
fn producer_starts() -> impl Iterator<Item = Row> {
    read(READ)
        .into_iter()
        .filter(|line| {
            line.get("quantity") == "Ms" && line.get("steel_or_medium").starts_with("41Cr4")
        })
        .filter_map(|line| {
            let value = line.get("value").parse().ok()?;
            // Middle of the printed ranges, manganese and chromium as the card gives them.
            let a = austenite("C 0.415 Si 0.25 Mn 0.75 Cr 1.05", 8.0);
            Some(Row {
                quantity: "Ms".to_owned(),
                case: format!(
                    "{}; {}",
                    line.get("steel_or_medium"),
                    line.get("composition_if_given")
                ),
                predicted: martensite_start_c(&a).map_err(|e| e.to_string()),
                value,
                // Scatter of producers' cards for one grade, as in the transformation rows.
                tolerance: 20.0,
                source: format!("{} [{}]", line.get("source"), line.get("how_seen")),
            })
        })
}

/// A tolerance as printed: a number, a factor "x2", or a percentage.
fn tolerance_of(printed: &str, value: f64) -> (&'static str, f64) {
    if let Some(factor) = printed.strip_prefix('x') {
        (" (factor)", factor.parse().expect("factor"))
    } else if let Some(percent) = printed.strip_suffix('%') {
        (
            "",
            value * percent.parse::<f64>().expect("percentage") / 100.0,
        )
    } else {
        ("", printed.parse().expect("tolerance"))
    }
}

pub struct Line {
    header: csv::StringRecord,
    record: csv::StringRecord,
}

impl Line {
    pub fn get(&self, name: &str) -> String {
        let place = self.header.iter().position(|column| column == name);
        place
            .and_then(|place| self.record.get(place))
            .expect(name)
            .trim()
            .to_owned()
    }
}

pub fn read(text: &str) -> Vec<Line> {
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let header = reader.headers().expect("header").clone();
    reader
        .records()
        .map(|record| Line {
            header: header.clone(),
            record: record.expect("record"),
        })
        .collect()
}

/// "C 0.42 Mn 0.7 ..."; a range counts with its middle, what is not an element is skipped.
pub fn composition(text: &str) -> Composition {
    let mut steel = Composition::default();
    let words: Vec<&str> = text.split_whitespace().collect();
    for pair in words.windows(2) {
        let element = Element::ALL.into_iter().find(|e| e.symbol() == pair[0]);
        let limits: Vec<f64> = pair[1].split('-').filter_map(|x| x.parse().ok()).collect();
        if let (Some(element), false) = (element, limits.is_empty()) {
            steel.set(element, limits.iter().sum::<f64>() / limits.len() as f64);
        }
    }
    steel
}

pub fn austenite(text: &str, grain_astm: f64) -> Austenite {
    Austenite {
        composition: composition(text),
        grain_astm,
        undissolved_carbide_volume_fraction: 0.0,
    }
}

/// Grain number in a condition: "ASTM G 8.5", "ASTM G about 6", "G 9".
pub fn grain(condition: &str) -> f64 {
    let words: Vec<&str> = condition.split_whitespace().collect();
    let after = words.iter().position(|word| *word == "G" || *word == "(G");
    after
        .and_then(|at| {
            words[at + 1..]
                .iter()
                .map(|word| word.trim_matches(|c: char| !c.is_ascii_digit() && c != '.'))
                .find_map(|word| word.parse().ok())
        })
        .unwrap_or(8.0)
}

/// Usual hardening of 1C-1.5Cr steel at 845 to 850 °C: the carbon that its measured start of
/// martensite, 249 °C, asks for, and the chromium that cementite leaves.
pub const BEARING: &str = "C 0.69 Mn 0.36 Si 0.25 Ni 0.2 Cr 1.1";

/// What is dissolved after the usual soak of a steel that keeps carbide: by [`BEARING`], else as
/// in the nose rows, with the part of O1's tungsten that its carbide leaves.
pub fn usually_dissolved(steel: &str, composition_text: &str, condition: &str) -> Austenite {
    let grain_astm = grain(condition);
    let (text, carbide) = if steel.starts_with("100Cr6") || steel.starts_with("52100") {
        (BEARING, 0.05)
    } else if steel.starts_with("O1") {
        ("C 0.7 Mn 1.15 Si 0.26 Cr 0.45 W 0.3", 0.04)
    } else if steel.starts_with("W1") {
        ("C 0.8 Mn 0.25 Si 0.2", 0.03)
    } else {
        (composition_text, 0.0)
    };
    Austenite {
        undissolved_carbide_volume_fraction: carbide,
        ..austenite(text, grain_astm)
    }
}

/// The prediction for a row; none when another room answers it.
fn predict(
    quantity: &str,
    steel: &str,
    composition_text: &str,
    condition: &str,
) -> Option<Result<f64, String>> {
    let plain = austenite(composition_text, grain(condition));
    let usual = || usually_dissolved(steel, composition_text, condition);
    let told = |e: recalesce::steel::OutOfRange| e.to_string();
    let partly_dissolved = steel.starts_with("100Cr6")
        || steel.starts_with("52100")
        || condition.contains("carbide, G");
    Some(match quantity {
        "Ms" if partly_dissolved => martensite_start_c(&usual()).map_err(told),
        // The atlas composition of O1 at 790 °C: 0.70 wt % C in solution as in its nose row.
        "Ms" if steel == "O1" => martensite_start_c(&usual()).map_err(told),
        "Ms" => martensite_start_c(&plain).map_err(told),
        "Mf" => martensite_finish_c(&usual()).map_err(told),
        "M90" => martensite_temperature_c(&usual(), 0.90).map_err(told),
        "Bs" => bainite_start_c(&plain).map_err(told),
        "retained austenite after quench" => retained(steel, composition_text, condition),
        "IT start nose time (first product)" => {
            first_nose(&usual_nose(&plain, condition)).map(|n| n.1)
        }
        "IT start nose temperature" => first_nose(&usual_nose(&plain, condition)).map(|n| n.0),
        "isothermal bainite start (1 %)" => bainite_time(condition, 0.01),
        "isothermal bainite finish (99 %)" => bainite_time(condition, 0.99),
        "critical cooling rate for full martensite" => critical_cooling(&usual(), FULL)
            .map(|c| c.rate_k_per_s)
            .map_err(told),
        "ideal critical diameter DI (ASTM A255)" => end_quench(&plain.composition, 7.0)
            .map(|e| e.ideal_diameter_mm / 25.4)
            .map_err(told),
        _ if quantity.starts_with("Jominy hardness") => {
            let at_mm = distance_mm(quantity)?;
            end_quench(&plain.composition, 7.0)
                .map(|e| at(&e.distance_mm, &e.hrc, at_mm))
                .map_err(told)
        }
        _ => return None,
    })
}

/// "Full martensite" in a critical rate.
const FULL: f64 = 0.95;

fn usual_nose(plain: &Austenite, condition: &str) -> Austenite {
    Austenite {
        grain_astm: grain(condition),
        ..*plain
    }
}

/// Temperature and time of the first nose of all products.
fn first_nose(a: &Austenite) -> Result<(f64, f64), String> {
    let diagram = isothermal(a).map_err(|e| e.to_string())?;
    diagram
        .products
        .iter()
        .min_by(|a, b| a.nose_s.total_cmp(&b.nose_s))
        .map(|curve| (curve.nose_c, curve.nose_s))
        .ok_or_else(|| "no product".to_owned())
}

/// Bainite of 1C-1.5Cr steel at a constant temperature.
fn bainite_time(condition: &str, fraction: f64) -> Result<f64, String> {
    let temperature_c = condition
        .split_whitespace()
        .find_map(|word| word.parse::<f64>().ok())
        .ok_or("no temperature")?;
    let a = austenite(BEARING, 9.0);
    let kinetics = Kinetics::new(&a).map_err(|e| e.to_string())?;
    Ok(kinetics.time_to_s(Product::Bainite, temperature_c, fraction))
}

/// What a soak of spheroidised steel leaves: "816 C (1500 F), 25 min".
fn soaked(steel: &Composition, condition: &str) -> Result<Austenite, String> {
    let words: Vec<&str> = condition.split([' ', ',']).collect();
    let before = |unit: &str| {
        words
            .windows(2)
            .find(|pair| pair[1] == unit)
            .and_then(|pair| pair[0].parse::<f64>().ok())
            .ok_or_else(|| format!("no number before {unit}"))
    };
    let outcome = soak(
        steel,
        StartingStructure::Spheroidised,
        before("C")?,
        60.0 * before("min")?,
        0.0,
    )
    .map_err(|e| e.to_string())?;
    Ok(Austenite {
        composition: outcome.dissolved,
        grain_astm: outcome.end.grain_astm,
        undissolved_carbide_volume_fraction: outcome.end.carbide_volume_fraction,
    })
}

/// Where the row does not tell what is dissolved, what the soak leaves.
fn retained(steel: &str, composition_text: &str, condition: &str) -> Result<f64, String> {
    let coldest_c = if condition.contains("oil 60 C") {
        60.0
    } else {
        20.0
    };
    let a = if !steel.starts_with("52100") {
        austenite(composition_text, 8.0)
    } else if condition.starts_with("845") {
        usually_dissolved(steel, composition_text, "G 9")
    } else {
        soaked(&composition(composition_text), condition)?
    };
    retained_austenite(&a, coldest_c)
        .map(|fraction| 100.0 * fraction)
        .map_err(|e| e.to_string())
}

/// "Jominy hardness J4/16 in, ..." or "Jominy hardness at 3 mm, ...".
pub fn distance_mm(quantity: &str) -> Option<f64> {
    if quantity.contains("HH band") {
        // The upper two thirds of a band is not a mid-range composition.
        return None;
    }
    let rest = quantity.strip_prefix("Jominy hardness ")?;
    if let Some(j) = rest.strip_prefix('J') {
        let sixteenths: f64 = j.split('/').next()?.parse().ok()?;
        Some(sixteenths * 25.4 / 16.0)
    } else {
        rest.strip_prefix("at ")?.split(' ').next()?.parse().ok()
    }
}

pub fn at(x: &[f64], y: &[f64], at: f64) -> f64 {
    let cell = x
        .iter()
        .take_while(|x| **x < at)
        .count()
        .clamp(1, x.len() - 1);
    let (x0, x1, y0, y1) = (x[cell - 1], x[cell], y[cell - 1], y[cell]);
    y0 + (y1 - y0) * (at - x0) / (x1 - x0)
}
