//! The end-quench bar against the bands of hardenability steels: hardness simulated by heat flow,
//! transformation and the hardness of what forms, and the curve of the formula.

use super::Row;
use super::transform::{at, austenite, distance_mm, read};
use recalesce::hardness::end_quenched;
use recalesce::transform::{Kinetics, end_quench};
use std::collections::BTreeMap;

const CHECKS: &str = include_str!("../checks/transformations.csv");

/// One printed position of a band, HRC.
#[derive(Debug, Clone)]
pub struct Position {
    pub at_mm: f64,
    pub least_hrc: f64,
    pub middle_hrc: f64,
    pub most_hrc: f64,
    pub source: String,
}

/// A band with the middle of the chemical range that it is printed for.
#[derive(Debug, Clone)]
pub struct Band {
    pub steel: String,
    pub composition: String,
    pub positions: Vec<Position>,
}

/// Every band of the check file: middle in the value, limits in the condition ("band 34-56").
pub fn bands() -> Vec<Band> {
    let mut bands: BTreeMap<(String, String), Vec<Position>> = BTreeMap::new();
    for line in read(CHECKS) {
        let (Some(at_mm), Ok(middle_hrc)) = (
            distance_mm(&line.get("quantity")),
            line.get("value").parse(),
        ) else {
            continue;
        };
        let condition = line.get("condition");
        let (_, limits) = condition.split_once("band ").expect("band");
        let (least, most) = limits.split_once('-').expect("limits");
        bands
            .entry((line.get("steel"), line.get("composition")))
            .or_default()
            .push(Position {
                at_mm,
                least_hrc: least.parse().expect("lower limit"),
                middle_hrc,
                most_hrc: most.parse().expect("upper limit"),
                source: format!("{} [{}]", line.get("source"), line.get("seen_or_memory")),
            });
    }
    bands
        .into_iter()
        .map(|((steel, composition), positions)| Band {
            steel,
            composition,
            positions,
        })
        .collect()
}

/// Temperature from which the standard quenches a steel of this carbon, °C (memory).
pub fn start_c(carbon_wt: f64) -> f64 {
    match carbon_wt {
        c if c <= 0.25 => 925.0,
        c if c <= 0.36 => 870.0,
        _ => 845.0,
    }
}

/// Hardness along the simulated bar, carried on below 20 HRC: distances, mm, and HRC.
pub fn simulated(kinetics: &Kinetics) -> Result<(Vec<f64>, Vec<f64>), String> {
    let start_c = start_c(kinetics.austenite().composition.c);
    let places = end_quenched(kinetics, start_c).map_err(|e| e.to_string())?;
    Ok(places
        .iter()
        .map(|place| (place.distance_mm, place.hardness.hrc_carried()))
        .unzip())
}

impl Band {
    /// Hardness of the simulated bar at each position.
    pub fn simulated(&self) -> Result<Vec<f64>, String> {
        let austenite = austenite(&self.composition, 7.0);
        let kinetics = Kinetics::new(&austenite).map_err(|e| e.to_string())?;
        let (x, y) = simulated(&kinetics)?;
        Ok(self.positions.iter().map(|p| at(&x, &y, p.at_mm)).collect())
    }

    /// The reported curve at each position.
    pub fn reported(&self) -> Result<Vec<f64>, String> {
        let austenite = austenite(&self.composition, 7.0);
        let curve = end_quench(&austenite.composition, 7.0).map_err(|e| e.to_string())?;
        let along = |p: &Position| at(&curve.distance_mm, &curve.hrc, p.at_mm);
        Ok(self.positions.iter().map(along).collect())
    }

    /// Part of the positions at which a curve lies inside the band.
    pub fn inside(&self, hrc: &[f64]) -> f64 {
        let inside = |(p, hrc): &(&Position, &f64)| (p.least_hrc..=p.most_hrc).contains(*hrc);
        let count = self.positions.iter().zip(hrc).filter(inside).count();
        count as f64 / self.positions.len() as f64
    }
}

/// Each position of each band with the hardness of the simulated bar.
pub fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for band in bands() {
        let simulated = band.simulated();
        for (i, position) in band.positions.iter().enumerate() {
            rows.push(Row {
                quantity: "simulated end-quench hardness".to_owned(),
                case: format!(
                    "{}; {}; {} mm",
                    band.steel, band.composition, position.at_mm
                ),
                predicted: simulated.clone().map(|hrc| hrc[i]),
                value: position.middle_hrc,
                tolerance: 0.5 * (position.most_hrc - position.least_hrc),
                source: position.source.clone(),
            });
        }
    }
    rows
}
