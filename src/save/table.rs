//! A table of the page as a file for a spreadsheet: RFC 4180, decimal points, units in the headers.

use super::logbook::{add_line, words};
use recalesce_texts::save::table as texts;

/// What stands in a cell that has nothing.
const NOTHING: &str = "–";

/// Units that the tables of the page write behind numbers; anything else behind digits is a text, as the
/// name of a grade.
const UNITS: [&str; 48] = [
    "",
    "°C",
    "°F",
    "K",
    "%",
    "wt %",
    "vol %",
    "s",
    "min",
    "h",
    "d",
    "mm",
    "cm",
    "m",
    "µm",
    "nm",
    "in",
    "in²",
    "mm²",
    "HRC",
    "HV",
    "HB",
    "HBW",
    "K/s",
    "°C/s",
    "°F/s",
    "K/min",
    "K/h",
    "°F/h",
    "MPa",
    "GPa",
    "ksi",
    "psi",
    "J",
    "kJ",
    "kJ/kg",
    "kJ/mol",
    "W",
    "kW",
    "W/m²K",
    "W/(m² K)",
    "kW/m²K",
    "kW/(m² K)",
    "kg",
    "g",
    "lb",
    "1/in",
    "pp",
];

/// Writes a table as it is shown, titles first. Where every number of a column has the same unit, the unit
/// goes into the title and the cells are bare numbers; any other column keeps its words. Rows that are
/// shorter than the titles are filled up with empty cells.
#[must_use]
pub fn write_table(rows: &[Vec<String>]) -> String {
    let Some((titles, rows)) = rows.split_first() else {
        return String::new();
    };
    let columns: Vec<(String, Vec<String>)> = titles
        .iter()
        .enumerate()
        .map(|(at, title)| {
            let cells = rows.iter().map(|row| row.get(at).map_or("", |c| c.trim()));
            column(title.trim(), &cells.collect::<Vec<_>>())
        })
        .collect();
    let mut table = String::new();
    add_line(&mut table, columns.iter().map(|(title, _)| title.as_str()));
    for at in 0..rows.len() {
        let cells = columns.iter().map(|(_, cells)| cells.get(at));
        add_line(
            &mut table,
            cells.map(|cell| cell.map_or("", String::as_str)),
        );
    }
    table
}

/// A column with its unit in the title, or as it is.
fn column(title: &str, cells: &[&str]) -> (String, Vec<String>) {
    let is_empty = |cell: &str| cell.is_empty() || cell == NOTHING;
    let mut unit = None;
    let mut numbers = Vec::new();
    for cell in cells {
        if is_empty(cell) {
            numbers.push(String::new());
            continue;
        }
        match measured(cell) {
            Some((number, of)) if unit.is_none_or(|unit| unit == of) => {
                unit = Some(of);
                numbers.push(number);
            }
            _ => {
                let texts = cells.iter().map(|cell| words(cell)).collect();
                return (words(title), texts);
            }
        }
    }
    let title = match unit {
        None | Some("") => words(title),
        Some(unit) if title.is_empty() => words(unit),
        Some(unit) => words(&format!("{title}, {unit}")),
    };
    (title, numbers)
}

/// A number, written for a spreadsheet, and its unit; none for any other text.
fn measured(text: &str) -> Option<(String, &str)> {
    let (sign, rest) = match text.strip_prefix(['\u{2212}', '-']) {
        Some(rest) => ("-", rest),
        None => ("", text.strip_prefix('+').unwrap_or(text)),
    };
    // A factor is told by the sign of multiplication before it.
    let (is_factor, rest) = match rest.strip_prefix('×') {
        Some(rest) => (true, rest),
        None => (false, rest),
    };
    let end = rest
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(rest.len());
    let (number, unit) = rest.split_at_checked(end)?;
    number.parse::<f64>().ok()?;
    let unit = unit.trim_start();
    let is_unit = UNITS.contains(&unit.replace('\u{a0}', " ").as_str());
    let unit = if is_factor && unit.is_empty() {
        texts::FACTOR
    } else {
        unit
    };
    is_unit.then(|| (format!("{sign}{number}"), unit))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(rows: &[&[&str]]) -> Vec<String> {
        let owned = |row: &&[&str]| row.iter().map(|&cell| cell.to_owned()).collect();
        let rows: Vec<Vec<String>> = rows.iter().map(owned).collect();
        write_table(&rows).lines().map(str::to_owned).collect()
    }

    #[test]
    fn units_go_into_the_titles() {
        let table = written(&[
            &["", "soak", "share", "slower by", "hardness"],
            &["one", "830 °C", "4 %", "×1.4", "61.5 HRC"],
            &["two", "\u{2212}75 °C", "–", "×0.8", "310 HV"],
        ]);
        assert_eq!(
            table,
            [
                ",\"soak, °C\",\"share, %\",\"slower by, factor\",hardness",
                "one,830,4,1.4,61.5 HRC",
                "two,-75,,0.8,310 HV",
            ]
        );
    }

    #[test]
    fn a_name_that_begins_with_digits_is_no_number() {
        let table = written(&[
            &["Grade", ""],
            &["440C", "5 %"],
            &["52100", "6 %"],
            &["–", "7 %"],
        ]);
        assert_eq!(table, ["Grade,%", "440C,5", "52100,6", "–,7"]);
        let table = written(&[&["Grade", "=sum"], &["440C", "5 =A1"]]);
        assert_eq!(table, ["Grade,'=sum", "440C,5 =A1"]);
    }

    #[test]
    fn words_stay_words_and_formulas_harmless() {
        let table = written(&[
            &["=1+1", "time"],
            &["a, \"b\"", "1 min 20 s"],
            &["=cmd()", "61.5 ±1.2"],
            &["short"],
        ]);
        assert_eq!(
            table,
            [
                "'=1+1,time",
                "\"a, \"\"b\"\"\",1 min 20 s",
                "'=cmd(),61.5 ±1.2",
                "short,",
            ]
        );
        assert_eq!(write_table(&[]), "");
    }
}
