//! Hardness rows: conversion, as quenched, half martensite, tempered, austenite decomposition.
//!
//! Left out are the rows that need a whole route: centre and depth of quenched rounds, end-quench.
//! A row whose composition is not printed takes the middle of its grade's range, told in
//! [`composition`]; a temper whose time is not printed counts as one hour.

use super::Row;
use recalesce::hardness::{
    AsQuenched, Scale, TemperStep, as_quenched, convert, half_martensite_hrc, temper,
};
use recalesce::sources::jimenez_melero_2013::ACTIVATION_J_PER_MOL;
use recalesce::steel::{Composition, Element};
use std::collections::HashMap;

type Record = HashMap<String, String>;

fn records(text: &str) -> Vec<Record> {
    csv::Reader::from_reader(text.as_bytes())
        .deserialize()
        .map(|record| record.expect("a check file is a plain CSV"))
        .collect()
}

fn field<'a>(record: &'a Record, name: &str) -> &'a str {
    record
        .get(name)
        .unwrap_or_else(|| panic!("no column {name}"))
}

/// The first number after `mark`.
fn number_after(text: &str, mark: &str) -> Option<f64> {
    let rest = text.split_once(mark)?.1.trim_start();
    let end = rest
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(rest.len());
    rest[..end].parse().ok()
}

/// Contents written as `C0.45 Mn0.73` or `C 0.93-1.05 Si 0.40max`: the middle of a range, half of
/// a maximum.
fn parse_composition(text: &str) -> Composition {
    let mut steel = Composition::default();
    let mut rest = text;
    while let Some(at) = rest.find(|c: char| c.is_ascii_uppercase()) {
        rest = &rest[at..];
        let end = rest
            .find(|c: char| !c.is_ascii_alphabetic())
            .unwrap_or(rest.len());
        let symbol = &rest[..end];
        rest = rest[end..].trim_start();
        let end = rest
            .find(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
            .unwrap_or(rest.len());
        let bounds: Vec<f64> = rest[..end]
            .split('-')
            .filter_map(|n| n.parse().ok())
            .collect();
        let value = match bounds[..] {
            [one] if rest[end..].starts_with("max") => 0.5 * one,
            [one] => one,
            [low, high] => 0.5 * (low + high),
            _ => continue,
        };
        if let Some(element) = Element::ALL.into_iter().find(|e| e.symbol() == symbol) {
            steel.set(element, value);
        }
    }
    steel
}

/// The composition a row names, else the usual middle of the grade.
fn composition(grade: &str, text: &str) -> Composition {
    let named = text
        .split_once("composition ")
        .map_or(text, |(_, after)| after);
    let parsed = parse_composition(named);
    if parsed.c > 0.0 {
        return parsed;
    }
    parse_composition(match grade {
        "O1" => "C0.92 Mn1.4 Si0.3 Cr0.55 W0.5",
        "L6" => "C0.70 Mn0.5 Si0.3 Cr0.9 Ni1.6 Mo0.25",
        "1095" => "C0.95 Mn0.4 Si0.2",
        "1080" => "C0.80 Mn0.75 Si0.2",
        "1045" => "C0.45 Mn0.75 Si0.2",
        "5160" => "C0.60 Mn0.88 Si0.25 Cr0.8",
        "4140" => "C0.41 Mn0.88 Si0.23 Cr1.02 Mo0.22",
        "0.56C plain carbon" => "C0.56 Mn0.54 Si0.18",
        "0.74C plain carbon" => "C0.74 Mn0.66 Si0.18",
        "S7" => "C0.55 Mn0.7 Si0.3 Cr3.25 Mo1.4 V0.25",
        _ => "",
    })
}

fn time_s(condition: &str) -> f64 {
    if condition.contains("2 h twice") {
        14_400.0
    } else if condition.contains("2 x 40 min") {
        4800.0
    } else if let Some(seconds) = number_after(condition, " C for ") {
        seconds
    } else if condition.contains("about 2 h") {
        7200.0
    } else {
        3600.0
    }
}

fn temperature_c(condition: &str) -> Option<f64> {
    let after = condition.split_once("temper ")?.1;
    after.split_once(" F = ").map_or_else(
        || number_after(condition, "temper "),
        |(_, c)| number_after(c, ""),
    )
}

/// Hardness after the temper that a condition names, HRC as the data sets carry it on below 20.
pub fn tempered_hrc(steel: &Composition, condition: &str) -> Result<f64, String> {
    let step = TemperStep {
        temperature_c: temperature_c(condition).ok_or("no temperature printed")?,
        time_s: time_s(condition),
    };
    let start = AsQuenched::fully_martensitic(steel);
    let tempered = temper(&start, steel, &[step]).map_err(|refusal| refusal.to_string())?;
    let last = tempered.last().ok_or("no temper")?;
    Ok(last.hardness.hrc_carried())
}

fn quenched_hrc(steel: &Composition) -> Result<f64, String> {
    as_quenched(steel, 1.0)
        .map(|hardness| hardness.hrc_carried())
        .map_err(|refusal| refusal.to_string())
}

fn half_hrc(carbon_wt: Option<f64>) -> Result<f64, String> {
    let carbon_wt = carbon_wt.ok_or("no carbon printed")?;
    half_martensite_hrc(carbon_wt).map_err(|refusal| refusal.to_string())
}

fn converted(value_hrc: Option<f64>, unit: &str) -> Result<f64, String> {
    let to = if unit == "HV" { Scale::Hv } else { Scale::Hbw };
    let value = value_hrc.ok_or("no HRC printed")?;
    convert(Scale::Hrc, value, to).map_err(|refusal| refusal.to_string())
}

fn leading_number(text: &str) -> Option<f64> {
    number_after(text, "")
}

fn hardness_file() -> Vec<Row> {
    let mut rows = Vec::new();
    for record in records(include_str!("../checks/hardness.csv")) {
        let (quantity, steel, condition, unit) = (
            field(&record, "quantity"),
            field(&record, "steel"),
            field(&record, "condition"),
            field(&record, "unit"),
        );
        let predicted = match quantity {
            "tempered hardness" => tempered_hrc(&composition(steel, condition), condition),
            "as-quenched hardness" => match number_after(condition, "100 % martensite, ") {
                Some(carbon) => quenched_hrc(&Composition::default().with_carbon(carbon)),
                None => quenched_hrc(&composition(steel, condition)),
            },
            "50% martensite hardness" => half_hrc(number_after(condition, "50 % martensite, ")),
            "retained austenite decomposition" => Ok(ACTIVATION_J_PER_MOL / 1000.0),
            _ if quantity.starts_with("conversion") => converted(leading_number(condition), unit),
            other => Err(format!("no model for {other}")),
        };
        rows.push(Row {
            quantity: quantity.to_owned(),
            case: format!("{steel}; {condition}"),
            predicted,
            value: field(&record, "value").parse().expect("a number"),
            tolerance: field(&record, "tolerance").parse().expect("a number"),
            source: format!(
                "{} ({})",
                field(&record, "source"),
                field(&record, "seen_or_memory")
            ),
        });
    }
    rows
}

fn transformations_file() -> Vec<Row> {
    let mut rows = Vec::new();
    for record in records(include_str!("../checks/transformations.csv")) {
        let quantity = field(&record, "quantity");
        let text = field(&record, "composition");
        let predicted = match quantity {
            "as-quenched hardness" | "as-quenched hardness, 99 % martensite" => {
                quenched_hrc(&parse_composition(text))
            }
            "hardness of 50 % martensite" => half_hrc(number_after(text, "C ")),
            _ => continue,
        };
        let value: f64 = field(&record, "value").parse().expect("a number");
        // A minimum that a data sheet promises is met by anything above it.
        let predicted = if field(&record, "condition").contains("minimum") {
            predicted.map(|hrc| hrc.min(value))
        } else {
            predicted
        };
        rows.push(Row {
            quantity: quantity.to_owned(),
            case: format!(
                "{}; {text}; {}",
                field(&record, "steel"),
                field(&record, "condition")
            ),
            predicted,
            value: field(&record, "value").parse().expect("a number"),
            tolerance: field(&record, "tolerance").parse().expect("a number"),
            source: format!(
                "{} ({})",
                field(&record, "source"),
                field(&record, "seen_or_memory")
            ),
        });
    }
    rows
}

fn read_in_source_file() -> Vec<Row> {
    /// The file prints no tolerance; that of the same sheets in the hardness file.
    const TOLERANCE_HRC: f64 = 2.0;
    let mut rows = Vec::new();
    for record in records(include_str!("../checks/read_in_source.csv")) {
        let quantity = field(&record, "quantity");
        let condition = field(&record, "condition");
        let steel = field(&record, "steel_or_medium");
        let x = composition(steel, field(&record, "composition_if_given"));
        let predicted = match quantity {
            "tempered hardness" if condition.contains("no temperature printed") => quenched_hrc(&x),
            "tempered hardness" => tempered_hrc(&x, condition),
            "as-quenched hardness" => quenched_hrc(&x),
            _ => continue,
        };
        rows.push(Row {
            quantity: quantity.to_owned(),
            case: format!("{steel}; {condition}"),
            predicted,
            value: field(&record, "value").parse().expect("a number"),
            tolerance: TOLERANCE_HRC,
            source: format!(
                "{} (read in source; tolerance ours)",
                field(&record, "source")
            ),
        });
    }
    rows
}

/// All rows of the three check files that hardness answers alone.
pub fn rows() -> Vec<Row> {
    let mut rows = hardness_file();
    rows.extend(transformations_file());
    rows.extend(read_in_source_file());
    rows
}
