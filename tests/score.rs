//! How near the models come to outside values: `cargo xtask score`.
//!
//! Every row of the check files that a model answers counts, also those that it refuses. Groups
//! carry the aim of the project where there is one. The test fails only when fewer rows lie
//! inside their tolerance than the ratchet in [`GROUPS`] says: a number there only ever rises. The fits
//! of this project are run again with each heat or steel left out of them in turn.
//!
//! The page shows the same table: `UPDATE_SCORE=1 cargo test --test score` writes it anew.
#![cfg(not(target_arch = "wasm32"))]

mod fits;
mod rows;
#[path = "score/shown.rs"]
mod shown;
#[path = "score/written.rs"]
mod written;

use recalesce::sources::score::Against;
use rows::bar::{Band, bands};
use rows::{Row, Score, score};
use std::collections::BTreeSet;
use std::fmt::Write as _;

/// What the project aims at for a group.
#[derive(Debug, Clone, Copy)]
enum Aim {
    None,
    /// Largest error.
    Largest(f64),
    /// Mean absolute error.
    Mean(f64),
    /// Root of the mean square; for rows with a factor as a factor.
    Rms(f64),
    /// Part of the predicted rows inside their tolerance.
    Inside(f64),
}

impl Aim {
    fn reached(self, score: &Score, is_factor: bool) -> Option<bool> {
        let shown = |x: f64| if is_factor { x.exp() } else { x };
        match self {
            Self::None => None,
            Self::Largest(most) => Some(shown(score.largest) <= most),
            Self::Mean(most) => Some(shown(score.mean) <= most),
            Self::Rms(most) => Some(shown(score.rms) <= most),
            Self::Inside(part) => Some(score.inside as f64 >= part * score.predicted as f64),
        }
    }

    fn words(self) -> String {
        match self {
            Self::None => String::new(),
            Self::Largest(most) => format!("no error above {most}"),
            Self::Mean(most) => format!("mean error {most}"),
            Self::Rms(most) => format!("rms {most}"),
            Self::Inside(part) => format!("{:.0} % inside", 100.0 * part),
        }
    }
}

/// A group of rows of one quantity.
struct Group {
    title: &'static str,
    unit: &'static str,
    takes: fn(&Row) -> bool,
    aim: Aim,
    /// What its values are.
    against: Against,
    /// Rows inside their tolerance when this was last written: never fewer.
    ratchet: usize,
}

const fn group(
    title: &'static str,
    unit: &'static str,
    takes: fn(&Row) -> bool,
    aim: Aim,
    ratchet: usize,
) -> Group {
    Group {
        title,
        unit,
        takes,
        aim,
        against: Against::Published,
        ratchet,
    }
}

impl Group {
    /// The same, of values that are no published ones.
    const fn of(self, against: Against) -> Self {
        Self { against, ..self }
    }
}

/// A row belongs to the first group that takes it.
const GROUPS: [Group; 42] = [
    group(
        "equilibria that the reference misses",
        "–",
        rows::equilibrium::reference_is_incomplete,
        Aim::None,
        17,
    )
    .of(Against::FaultyReference),
    group(
        "phase fractions at equilibrium",
        "mass fraction",
        |r| is(r, "mass fraction of"),
        Aim::Largest(0.005),
        1138,
    )
    .of(Against::Computed),
    group(
        "carbon in austenite at equilibrium",
        "wt %",
        |r| r.quantity == "C in austenite, wt %",
        Aim::Largest(0.005),
        264,
    )
    .of(Against::Computed),
    group(
        "alloy in austenite at equilibrium",
        "wt %",
        |r| r.quantity.ends_with("in austenite, wt %"),
        Aim::None,
        528,
    )
    .of(Against::Computed),
    group(
        "boundaries against computed ones",
        "K",
        |r| is(r, "transition") || is(r, "T_"),
        Aim::Largest(1.0),
        74,
    )
    .of(Against::Computed),
    group(
        "carbon beside cementite for the soak",
        "wt %",
        |r| is(r, "carbon in austenite beside"),
        Aim::None,
        53,
    )
    .of(Against::Computed),
    group(
        "iron and carbon of the textbook",
        "K, wt %",
        |r| {
            ["A3 pure iron", "eutectoid", "max C in", "C in austenite in"]
                .iter()
                .any(|q| is(r, q))
        },
        Aim::None,
        14,
    ),
    group(
        "regressions of Ae1 and Ae3",
        "K",
        |r| r.quantity.starts_with("Ae"),
        Aim::None,
        33,
    ),
    group(
        "austenite of stainless steels",
        "wt %",
        |r| r.quantity.contains(" in austenite at"),
        Aim::None,
        3,
    ),
    group(
        "heating points Ac1, Ac3, Accm",
        "K",
        |r| is(r, "critical temperature"),
        Aim::None,
        5,
    ),
    group(
        "regressions as keyed in",
        "K",
        |r| is(r, "regression"),
        Aim::None,
        34,
    )
    .of(Against::OwnData),
    group(
        "dissolved carbon after a soak",
        "wt %",
        |r| is(r, "dissolved carbon"),
        Aim::None,
        5,
    ),
    group(
        "carbide left after a soak",
        "vol %",
        |r| is(r, "carbide left"),
        Aim::None,
        2,
    ),
    group(
        "austenite grain",
        "ASTM number",
        |r| is(r, "austenite grain"),
        Aim::None,
        4,
    ),
    group(
        "forging windows of handbooks",
        "K",
        |r| is(r, "forging"),
        Aim::None,
        47,
    ),
    group(
        "grain numbers of the standard",
        "grains/in², µm",
        |r| is(r, "E112"),
        Aim::None,
        4,
    )
    .of(Against::OwnData),
    group(
        "conduction against series",
        "of the range",
        |r| r.quantity.ends_with("_theta") || is(r, "semi_infinite"),
        Aim::Largest(0.001),
        43,
    )
    .of(Against::Computed),
    group(
        "eigenvalues and half-temperature time",
        "–",
        |r| r.quantity.ends_with("eigenvalue") || is(r, "half_temperature"),
        Aim::None,
        5,
    )
    .of(Against::Computed),
    group(
        "plates and lumps in given baths",
        "s, °C",
        |r| is(r, "plate_centre_time") || is(r, "lumped") || is(r, "air_delay"),
        Aim::None,
        14,
    )
    .of(Against::Computed),
    group(
        "probe figures",
        "s, °C, K/s",
        |r| is(r, "probe_") || is(r, "ref_fluid"),
        Aim::Inside(1.0),
        23,
    )
    .of(Against::Computed),
    group(
        "severity and ideal diameter of bars",
        "in",
        |r| is(r, "grossmann_"),
        Aim::None,
        23,
    )
    .of(Against::Computed),
    group(
        "cooling of the end-quench bar",
        "K/s",
        |r| is(r, "jominy_cooling_rate"),
        Aim::None,
        13,
    ),
    group(
        "bars and end-quench positions",
        "mm, in",
        |r| {
            is(r, "jominy_equivalent")
                || is(r, "bar_diameter")
                || is(r, "critical_diameter")
                || is(r, "round_diameter")
                || is(r, "equivalent Jominy")
                || is(r, "largest bar")
        },
        Aim::None,
        14,
    ),
    group(
        "hardness across quenched rounds",
        "HRC",
        |r| is(r, "hardness in round"),
        Aim::None,
        3,
    ),
    group(
        "heat transfer as published",
        "W/m²K",
        |r| is(r, "published_HTC"),
        Aim::None,
        4,
    ),
    group(
        "properties, furnaces, thermocouples",
        "–",
        |r| is(r, "latent") || is(r, "typeK") || is(r, "AMS") || is(r, "EC3"),
        Aim::None,
        15,
    ),
    group(
        "Ms, 0.2 to 0.7 % C dissolved",
        "K",
        |r| r.quantity == "Ms" && carbon(r) < 0.7,
        Aim::Rms(18.0),
        35,
    ),
    group(
        "Ms, 0.7 to 1.3 % C dissolved",
        "K",
        |r| r.quantity == "Ms",
        Aim::Rms(33.0),
        21,
    ),
    group(
        "Mf, M90 and Bs",
        "K",
        |r| ["Mf", "M90", "Bs"].contains(&r.quantity.as_str()),
        Aim::None,
        9,
    ),
    group(
        "retained austenite",
        "vol %",
        |r| is(r, "retained austenite after"),
        Aim::Mean(3.0),
        5,
    ),
    group(
        "time of the first nose",
        "factor",
        |r| is(r, "IT start nose time"),
        Aim::Inside(0.8),
        8,
    ),
    group(
        "temperature of the first nose",
        "K",
        |r| is(r, "IT start nose temp"),
        Aim::None,
        5,
    ),
    group(
        "isothermal bainite",
        "factor",
        |r| is(r, "isothermal bainite"),
        Aim::None,
        12,
    ),
    group(
        "half-martensite end-quench rate",
        "factor",
        |r| is(r, "half-martensite"),
        Aim::Rms(1.4),
        7,
    ),
    group(
        "critical cooling, time past the nose",
        "factor",
        |r| is(r, "critical cooling") || is(r, "time allowed"),
        Aim::None,
        4,
    ),
    group(
        "end-quench curve",
        "HRC",
        |r| is(r, "Jominy"),
        Aim::Mean(2.0),
        77,
    ),
    group(
        "end-quench bar, simulated",
        "HRC",
        |r| is(r, "simulated end-quench"),
        Aim::Mean(2.0),
        70,
    ),
    group(
        "ideal critical diameter",
        "in",
        |r| is(r, "ideal critical"),
        Aim::None,
        3,
    ),
    group(
        "as-quenched hardness",
        "HRC",
        |r| is(r, "as-quenched") || is(r, "hardness of 50") || is(r, "50% martensite"),
        Aim::Mean(1.2),
        30,
    ),
    group(
        "tempered hardness, the models' own data",
        "HRC",
        |r| is(r, "tempered") && is_own_tempering(r),
        Aim::None,
        99,
    )
    .of(Against::OwnData),
    group(
        "tempered hardness, data not used",
        "HRC",
        |r| is(r, "tempered"),
        Aim::Mean(1.8),
        52,
    ),
    group(
        "conversions, decomposition of austenite",
        "HV, HBW, kJ/mol",
        |r| is(r, "conversion") || is(r, "retained austenite decomposition"),
        Aim::None,
        29,
    ),
];

fn is(row: &Row, quantity: &str) -> bool {
    row.quantity.starts_with(quantity)
}

/// Whether the law of tempering was fitted to a row, or the table of its grade is made of such sheets.
fn is_own_tempering(row: &Row) -> bool {
    let is_tabled = ["A2", "D2", "S7"]
        .iter()
        .any(|name| row.case.starts_with(name));
    is_tabled || row.source.contains("raiipa")
}

/// Carbon of the composition in a row's case.
fn carbon(row: &Row) -> f64 {
    let words = row.case.split(';').nth(1).unwrap_or_default();
    rows::transform::composition(words).c
}

/// Check files whose quantities have to be answered or named as unanswered.
const FILES: [(&str, &str); 3] = [
    ("hardness", include_str!("checks/hardness.csv")),
    ("quenching", include_str!("checks/quenching.csv")),
    (
        "transformations",
        include_str!("checks/transformations.csv"),
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
fn report(grouped: &[(&Group, Vec<&Row>)], rows: &[Row]) -> Result<String, std::fmt::Error> {
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
fn bands_met() -> String {
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

#[test]
fn score_of_every_quantity() {
    let rows = rows::all();
    let mut grouped: Vec<(&Group, Vec<&Row>)> = GROUPS.iter().map(|g| (g, Vec::new())).collect();
    let mut homeless = Vec::new();
    for row in &rows {
        match grouped.iter_mut().find(|(group, _)| (group.takes)(row)) {
            Some((_, taken)) => taken.push(row),
            None => homeless.push(row),
        }
    }
    println!("{}", report(&grouped, &rows).expect("a report"));
    println!("{}", bands_met());
    assert!(homeless.is_empty(), "rows without a group: {homeless:#?}");
    written::check(&grouped);
    for (group, rows) in &grouped {
        let s = score(rows.iter().copied());
        assert!(s.rows > 0, "no rows: {}", group.title);
        assert!(
            s.inside >= group.ratchet,
            "{}: {} inside, were {}",
            group.title,
            s.inside,
            group.ratchet
        );
    }
}

/// Every fit of this project, run again with its folds; each tells its error as it is.
fn errors_of(fits: &[fits::Fit]) {
    println!("\n{}", fits::table(fits));
    for fit in fits {
        assert!(fit.is_told_rightly(), "{fit:#?}");
        // The constants of the program are as good as those that the same data give again.
        assert!(fit.stored.rms < 1.3 * fit.fitted.rms + 0.02, "{fit:#?}");
    }
}

#[test]
fn errors_of_the_fits_on_what_is_left_out() {
    errors_of(&[
        fits::tempering::fitted(),
        fits::dividing_factor::fitted(),
        fits::annealed::fitted(),
        fits::grain::fitted(),
    ]);
}

#[test]
#[ignore = "takes some minutes; cargo xtask score runs it"]
fn errors_of_the_isothermal_fit_on_what_is_left_out() {
    errors_of(&fits::isothermal::fitted());
}
