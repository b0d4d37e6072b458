//! Rounds against the end-quench bar, and what is found in quenched rounds.

use super::Row;
use super::transform::{Line, austenite, composition, read, usually_dissolved};
use recalesce::hardness::mixture;
use recalesce::heat::{Material, Piece, Place, Shape, medium};
use recalesce::sources::astm_a255_cooling_rates::RATE_AT_704C;
use recalesce::sources::grossmann_1964::{Agitation, OIL, WATER, severity_per_in};
use recalesce::steel::Composition;
use recalesce::transform::{
    Kinetics, bar_like_ideal_round_mm, bar_like_round_mm, critical_cooling, end_quench,
    round_like_bar_mm,
};

const TRANSFORMATIONS: &str = include_str!("../checks/transformations.csv");
const QUENCHING: &str = include_str!("../checks/quenching.csv");

const MM_PER_INCH: f64 = 25.4;

/// Every row.
pub fn rows() -> Vec<Row> {
    let mut rows = equivalents();
    rows.extend(places_of_rounds());
    rows.extend(largest_bars());
    rows.extend(upper_bands());
    rows.extend(quenched_rounds());
    rows
}

/// The first number that a text holds after a word.
fn after(text: &str, word: &str) -> f64 {
    let (_, rest) = text.split_once(word).expect(word);
    let rest = rest.trim_start();
    let end = rest.find(|c: char| !c.is_ascii_digit() && c != '.');
    rest[..end.unwrap_or(rest.len())].parse().expect("a number")
}

/// Middle of the range of severity that Grossmann's table has for a word, 1/in.
fn severity(bath: &recalesce::sources::grossmann_1964::Row, agitation: Agitation) -> f64 {
    let [least, most] = severity_per_in(bath, agitation).expect("a word of the table");
    0.5 * (least + most)
}

/// The severity of a row, 1/in, as it prints it or by its words; none in an ideal quench.
fn severity_of(condition: &str) -> Option<f64> {
    if condition.contains("inf") {
        None
    } else if condition.contains("H=") {
        Some(after(condition, "H="))
    } else if condition.contains("oil") {
        Some(severity(&OIL, Agitation::Mild))
    } else {
        Some(severity(&WATER, Agitation::Mild))
    }
}

fn row_of(line: &Line, case: String, predicted: Result<f64, String>, tolerance: f64) -> Row {
    Row {
        quantity: line.get("quantity"),
        case,
        predicted,
        value: line.get("value").parse().expect("a value"),
        tolerance,
        source: format!("{} [{}]", line.get("source"), line.get("seen_or_memory")),
    }
}

/// Rounds and places on the bar of the file on quenching.
fn equivalents() -> Vec<Row> {
    let mut rows = Vec::new();
    for line in read(QUENCHING) {
        let condition = line.get("condition");
        let told = |e: recalesce::transform::RoundError| e.to_string();
        let place_mm = |mark| MM_PER_INCH / 16.0 * after(&condition, mark);
        let predicted = match line.get("quantity").as_str() {
            "jominy_equivalent_of_bar_centre" => match severity_of(&condition) {
                None => bar_like_ideal_round_mm(after(&condition, "")),
                Some(severity) => bar_like_round_mm(after(&condition, ""), severity),
            },
            "bar_diameter_for_J12.5mm" => {
                round_like_bar_mm(12.5, severity_of(&condition).expect("a severity"))
            }
            "critical_diameter" => round_like_bar_mm(
                after(&condition, "at J "),
                severity_of(&condition).expect("a severity"),
            ),
            "round_diameter_equivalent" => {
                round_like_bar_mm(place_mm("J="), severity_of(&condition).expect("a severity"))
                    .map(|mm| mm / MM_PER_INCH)
            }
            _ => continue,
        };
        let value: f64 = line.get("value").parse().expect("a value");
        let percent = after(&line.get("acceptable_tolerance"), "");
        rows.push(row_of(
            &line,
            condition.clone(),
            predicted.map_err(told),
            value * percent / 100.0,
        ));
    }
    rows
}

fn lines(of: impl Fn(&str) -> bool) -> Vec<Line> {
    let all = read(TRANSFORMATIONS).into_iter();
    all.filter(|line| of(&line.get("quantity"))).collect()
}

fn tolerance(line: &Line) -> f64 {
    line.get("tolerance").parse().expect("a tolerance")
}

/// "centre of 50 mm bar, still water (H=1)".
fn places_of_rounds() -> Vec<Row> {
    let lines = lines(|quantity| quantity == "equivalent Jominy distance");
    let row = |line: &Line| {
        let condition = line.get("condition");
        let diameter_mm = after(&condition, "centre of");
        let place = match severity_of(&condition) {
            None => bar_like_ideal_round_mm(diameter_mm),
            Some(severity) => bar_like_round_mm(diameter_mm, severity),
        };
        row_of(
            line,
            condition,
            place.map_err(|e| e.to_string()),
            tolerance(line),
        )
    };
    lines.iter().map(row).collect()
}

/// Middle of a grade's range with a part of the width more of what hardens.
fn richer(part: f64) -> Composition {
    // 42CrMo4, EN ISO 683-2 (memory, as in the band rows): C 0.38-0.45, Mn 0.60-0.90, Cr 0.90-1.20,
    // Mo 0.15-0.30.
    let middle = composition("C 0.415 Si 0.25 Mn 0.75 Cr 1.05 Mo 0.225");
    Composition {
        c: middle.c + part * 0.07,
        mn: middle.mn + part * 0.30,
        cr: middle.cr + part * 0.30,
        mo: middle.mo + part * 0.15,
        ..middle
    }
}

/// The largest round that hardens through, 95 % martensite at its centre. The severity is not told: the
/// middle of still to strong oil and of still to good water.
fn largest_bars() -> Vec<Row> {
    let lines = lines(|quantity| quantity.starts_with("largest bar with martensite"));
    let row = |line: &Line| {
        let quantity = line.get("quantity");
        let severity = if quantity.contains("oil") { 0.375 } else { 1.2 };
        let a = recalesce::transform::Austenite {
            composition: richer(0.0),
            ..austenite("", 8.0)
        };
        let diameter_mm = critical_cooling(&a, 0.95)
            .map_err(|e| e.to_string())
            .and_then(|critical| {
                let (ln_rate, ln_place): (Vec<f64>, Vec<f64>) = RATE_AT_704C
                    .iter()
                    .rev()
                    .map(|[sixteenths, rate]| (rate.ln(), sixteenths.ln()))
                    .unzip();
                let ln_place =
                    super::transform::at(&ln_rate, &ln_place, critical.rate_k_per_s.ln());
                round_like_bar_mm(ln_place.exp() * MM_PER_INCH / 16.0, severity)
                    .map_err(|e| e.to_string())
            });
        let case = format!("{}; {}", line.get("steel"), line.get("condition"));
        row_of(line, case, diameter_mm, tolerance(line))
    };
    lines.iter().map(row).collect()
}

/// The upper two thirds of a band: its middle is a heat a sixth of each range above the middle of the
/// grade.
fn upper_bands() -> Vec<Row> {
    let lines = lines(|quantity| quantity.contains("HH band"));
    let row = |line: &Line| {
        let quantity = line.get("quantity");
        let at_mm = after(&quantity, "hardness at ");
        let hrc = end_quench(&richer(1.0 / 6.0), 7.0)
            .map(|curve| super::transform::at(&curve.distance_mm, &curve.hrc, at_mm))
            .map_err(|e| e.to_string());
        let case = format!("{}; {}", line.get("steel"), line.get("composition"));
        row_of(line, case, hrc, tolerance(line))
    };
    lines.iter().map(row).collect()
}

/// "Assume H about 0.35-0.5": the oil of the list with that severity.
const OIL_NAME: &str = "oil_medfast";

/// Hardness across rounds of 1C-1.5Cr steel, quenched in oil.
fn quenched_rounds() -> Vec<Row> {
    let lines = lines(|quantity| quantity.starts_with("as-quenched hardness, round bar"));
    let row = |line: &Line| {
        let (quantity, condition) = (line.get("quantity"), line.get("condition"));
        let radius_mm = 0.5 * after(&condition, "dia ");
        let place = if quantity.ends_with("surface") {
            Place::Surface
        } else if quantity.ends_with("centre") {
            Place::Centre
        } else {
            Place::Within(1.0 - after(&quantity, "bar ") / radius_mm)
        };
        let case = format!("{}; {condition}", line.get("steel"));
        let quantity = line
            .get("quantity")
            .replace("as-quenched hardness, r", "hardness in r");
        Row {
            quantity,
            ..row_of(line, case, quenched_hrc(radius_mm, place), tolerance(line))
        }
    };
    lines.iter().map(row).collect()
}

fn quenched_hrc(radius_mm: f64, place: Place) -> Result<f64, String> {
    let oil = medium(OIL_NAME).ok_or("not in the list")?;
    let a = usually_dissolved("100Cr6", "", "G 9");
    let kinetics = Kinetics::new(&a).map_err(|e| e.to_string())?;
    let material = Material::austenite_to_martensite(kinetics.ms_c());
    let piece = Piece::new(Shape::Cylinder, 1e-3 * radius_mm, material);
    let curves = piece.cool(oil, 1.0, 850.0, 52.0, 5000.0, &[place]);
    let curve = curves.first().ok_or("no curve")?;
    let mut temperature_c = curve.temperature_c.clone();
    let mut time_s = curve.time_s.clone();
    // Out of the oil it goes on to room temperature.
    time_s.push(time_s.last().ok_or("no time")? + 3600.0);
    temperature_c.push(20.0);
    let made = kinetics
        .along(&time_s, &temperature_c)
        .map_err(|e| e.to_string())?;
    mixture(&a.composition, &made.fractions, &made.formed)
        .map(|hardness| hardness.hrc_carried())
        .map_err(|e| e.to_string())
}
