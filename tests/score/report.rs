//! What the score tells: a table of the groups, the rows out of tolerance, the end-quench bands.

use super::groups::Group;
use super::rows::bar::{Band, bands};
use super::rows::{Row, score};
use std::collections::BTreeSet;
use std::fmt::Write as _;

/// Check files whose quantities have to be answered or named as unanswered.
const FILES: [(&str, &str); 3] = [
    ("hardness", include_str!("../checks/hardness.csv")),
    ("quenching", include_str!("../checks/quenching.csv")),
    (
        "transformations",
        include_str!("../checks/transformations.csv"),
    ),
];

/// Quantities of the check files that no row answers, with their number of lines.
fn unanswered(rows: &[Row]) -> Vec<(&'static str, String, usize)> {
    let answered: BTreeSet<&str> = rows.iter().map(|row| row.quantity.as_str()).collect();
    let mut left: Vec<(&str, String, usize)> = Vec::new();
    for (file, text) in FILES {
        for record in csv::Reader::from_reader(text.as_bytes()).records() {
            let record = record.expect("a record");
            let quantity = record[0].trim().to_owned();
            let renamed = quantity.replace("as-quenched hardness, r", "hardness in r");
            let is_named = |a: &&&str| a.contains(quantity.as_str()) || **a == renamed;
            if answered.iter().any(|a| is_named(&a)) {
                continue;
            }
            match left
                .iter_mut()
                .find(|(f, q, _)| *f == file && *q == quantity)
            {
                Some((.., count)) => *count += 1,
                None => left.push((file, quantity, 1)),
            }
        }
    }
    left
}

/// The table of the groups, then the rows out of tolerance and the refusals, group by group.
pub(super) fn report(
    grouped: &[(&Group, Vec<&Row>)],
    rows: &[Row],
) -> Result<String, std::fmt::Error> {
    let mut text = String::new();
    writeln!(
        text,
        "{:<40}{:>5}{:>8}{:>8}{:>10}{:>10}{:>10}  {:<16}aim",
        "quantity", "rows", "refused", "inside", "mean", "rms", "bias", "unit"
    )?;
    for (group, rows) in grouped {
        let s = score(rows.iter().copied());
        let is_factor = rows.iter().any(|row| row.is_factor());
        // Errors of rows with a factor are logarithms: told as factors.
        let [mean, rms, bias] = [s.mean, s.rms, s.bias]
            .map(|x| if is_factor { x.exp() } else { x })
            .map(|x| {
                if s.predicted == 0 {
                    "–".to_owned()
                } else {
                    short(x)
                }
            });
        let verdict = match group.aim.reached(&s, is_factor) {
            None => String::new(),
            Some(true) => format!("{}: reached", group.aim.words()),
            Some(false) => format!("{}: NOT reached", group.aim.words()),
        };
        writeln!(
            text,
            "{:<40}{:>5}{:>8}{:>8}{mean:>10}{rms:>10}{bias:>10}  {:<16}{verdict}",
            group.title,
            s.rows,
            s.rows - s.predicted,
            s.inside,
            group.unit,
        )?;
    }
    let total = score(rows);
    writeln!(
        text,
        "{:<40}{:>5}{:>8}{:>8}",
        "all",
        total.rows,
        total.rows - total.predicted,
        total.inside
    )?;
    writeln!(text, "\nRows out of tolerance, and refusals:")?;
    for (group, rows) in grouped {
        let mut outside = rows.iter().filter(|row| !row.is_inside()).peekable();
        if outside.peek().is_some() {
            writeln!(text, "{}", group.title)?;
        }
        for row in outside {
            let answer = match &row.predicted {
                Ok(value) => format!("predicted {}", short(*value)),
                Err(reason) => format!("refused: {reason}"),
            };
            let sign = if row.is_factor() { "×/÷" } else { "±" };
            writeln!(
                text,
                "  {} | {} | {answer} | value {} {sign} {} | {}",
                row.quantity,
                row.case,
                short(row.value),
                short(row.tolerance),
                row.source
            )?;
        }
    }
    writeln!(
        text,
        "\nQuantities of the check files that no model answers alone:"
    )?;
    for (file, quantity, count) in unanswered(rows) {
        writeln!(text, "  {file}: {quantity}, {count}")?;
    }
    Ok(text)
}

/// A curve along the bar, and its name.
type Along = (&'static str, fn(&Band) -> Result<Vec<f64>, String>);

/// How much of each end-quench band lies around a curve of the middle of its chemical range.
pub(super) fn bands_met() -> String {
    let curves: [Along; 2] = [
        ("end-quench curve", Band::reported),
        ("end-quench bar, simulated", Band::simulated),
    ];
    let mut text = "Part of the positions of each end-quench band that a curve meets:\n".to_owned();
    for (name, curve) in curves {
        let told: Vec<String> = bands()
            .iter()
            .map(|band| match curve(band) {
                Ok(hrc) => format!("{} {:.0} %", band.steel, 100.0 * band.inside(&hrc)),
                Err(reason) => format!("{}: {reason}", band.steel),
            })
            .collect();
        text += &format!("  {name}: {}\n", told.join(", "));
    }
    text
}

/// Four significant digits.
fn short(x: f64) -> String {
    let digits = if x == 0.0 {
        0
    } else {
        (3 - x.abs().log10().floor() as i32).clamp(0, 5)
    };
    format!("{x:.*}", digits as usize)
}
