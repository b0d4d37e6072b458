//! A logbook as a table for a spreadsheet: RFC 4180, one line per run. What is predicted is of the place that
//! is compared, `predicted_at`: what is reached from outside where that was measured.

use super::place::place_word;
use super::{Listed, Reading, Run, UseTest};
use crate::heat::{MediumChoice, Section};

const COLUMNS: [&str; 42] = [
    "id",
    "day",
    "piece",
    "grade",
    "section",
    "section_mm",
    "steps_before_c",
    "soak_c",
    "soak_min",
    "quenchants",
    "agitation",
    "air_delay_s",
    "cold_c",
    "cold_min",
    "tempers_c",
    "tempers_min",
    "target_least_hrc",
    "target_most_hrc",
    "predicted_hrc",
    "predicted_band_hrc",
    "model",
    "measured_hrc",
    "measured_minus_predicted_hrc",
    "readings",
    "fracture_grain_astm",
    "austenite_vol_percent",
    "use_tests",
    "done_before",
    "done_soak",
    "done_quench",
    "done_cold",
    "done_temper",
    "notes",
    "photos",
    "furnace_band_k",
    "furnace_offset_k",
    "snap_c",
    "snap_min",
    "coupon",
    "predicted_as_taught",
    "predicted_band_off_hrc",
    "predicted_at",
];

/// Cells that are words of the format, as its heads are: a file reads the same in every language. The shape of
/// a section, and where it has several sizes, what they are.
const PLATE: &str = "plate";
const ROUND: &str = "round";
const SQUARE: &str = "square";
const BLADE: &str = "blade: edge; spine; height";
/// In place of the name of a quenchant of the list.
const OWN_QUENCHANT: &str = "own quenchant";

/// Writes runs as a table. What a cell lists is parted by semicolons.
#[must_use]
pub fn write_csv(listed: &[Listed]) -> String {
    let mut table = String::new();
    add_line(&mut table, COLUMNS.iter().copied());
    for listed in listed {
        add_line(&mut table, cells(listed).iter().map(String::as_str));
    }
    table
}

/// Adds a line. Not by the library that reads tables: its writer brings 20 kB, most of them a second
/// reader of decimals, by which it tells numbers from texts.
pub(crate) fn add_line<'a>(table: &mut String, cells: impl Iterator<Item = &'a str>) {
    for (at, cell) in cells.enumerate() {
        if at > 0 {
            table.push(',');
        }
        if cell.contains([',', '"', '\r', '\n']) {
            table.push('"');
            table.push_str(&cell.replace('"', "\"\""));
            table.push('"');
        } else {
            table.push_str(cell);
        }
    }
    table.push_str("\r\n");
}

fn cells(listed: &Listed) -> [String; COLUMNS.len()] {
    let run = listed.run;
    let Run { route, done, .. } = run;
    let (section, section_mm) = section(route.section);
    let predicted = run.predicted.as_ref();
    let at = listed.compared.map(|compared| compared.predicted);
    let snap = route.cold.and_then(|cold| cold.snap);
    [
        run.id.to_string(),
        run.day.to_string(),
        words(&route.piece),
        words(run.grade()),
        section.to_owned(),
        section_mm,
        joined(
            route
                .prior
                .iter()
                .map(|step| format!("{} {}", step.work.title(), step.temperature_c)),
        ),
        route.soak.temperature_c.to_string(),
        route.soak.time_min.to_string(),
        words(&quenchants(run)),
        route.quench.agitation.to_string(),
        route.quench.air_delay_s.to_string(),
        number(route.cold.map(|cold| cold.temperature_c)),
        number(route.cold.map(|cold| cold.time_min)),
        joined(route.tempers.iter().map(|t| t.temperature_c.to_string())),
        joined(route.tempers.iter().map(|t| t.time_min.to_string())),
        route.target.least_hrc.to_string(),
        route.target.most_hrc.to_string(),
        number(at.map(|at| at.hrc)),
        number(at.map(|at| at.band_hrc)),
        words(predicted.map_or("", |predicted| &predicted.model)),
        number(listed.measured_hrc),
        number(listed.difference_hrc()),
        joined(run.readings.iter().map(reading)),
        number(run.fracture_grain_astm),
        number(run.austenite_vol_percent),
        words(&joined(run.use_tests.iter().map(use_test))),
        words(&done.before),
        words(&done.soak),
        words(&done.quench),
        words(&done.cold),
        words(&done.temper),
        words(&run.notes),
        run.photos.len().to_string(),
        route.furnace_band_k.to_string(),
        route.furnace_offset_k.to_string(),
        number(snap.map(|snap| snap.temperature_c)),
        number(snap.map(|snap| snap.time_min)),
        words(&run.coupon),
        predicted.map_or_else(String::new, |predicted| predicted.is_taught.to_string()),
        number(at.map(|at| at.band_off_hrc)),
        at.and_then(|at| at.place)
            .map_or_else(String::new, |place| place_word(place).to_owned()),
    ]
}

/// A text of the user's own. Spreadsheets take one that begins like a formula for a formula, so an
/// apostrophe goes in front, which they take for the sign of a text.
pub(crate) fn words(text: &str) -> String {
    let is_formula = text.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let sign = if is_formula { "'" } else { "" };
    format!("{sign}{text}")
}

fn number(value: Option<f64>) -> String {
    value.map_or_else(String::new, |value| value.to_string())
}

fn joined(texts: impl Iterator<Item = String>) -> String {
    texts.collect::<Vec<_>>().join("; ")
}

fn section(section: Section) -> (&'static str, String) {
    match section {
        Section::Plate { thickness_mm } => (PLATE, thickness_mm.to_string()),
        Section::Round { diameter_mm } => (ROUND, diameter_mm.to_string()),
        Section::Square { side_mm } => (SQUARE, side_mm.to_string()),
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            ..
        } => (BLADE, format!("{edge_mm}; {spine_mm}; {height_mm}")),
    }
}

fn quenchants(run: &Run) -> String {
    let quench = &run.route.quench;
    let later = quench.then.iter().map(|next| &next.medium);
    joined(
        [&quench.medium]
            .into_iter()
            .chain(later)
            .map(|medium| match medium {
                MediumChoice::Named(name) => name.clone(),
                MediumChoice::At(at) => format!("{} at {} °C", at.listed, at.bath_c),
                MediumChoice::Own(_) => OWN_QUENCHANT.to_owned(),
            }),
    )
}

fn reading(reading: &Reading) -> String {
    let Reading {
        value,
        scale,
        place,
        after,
    } = reading;
    let parts = format!("{value} {} {} {place}", scale.symbol(), after.words());
    parts.trim_end().to_owned()
}

fn use_test(test: &UseTest) -> String {
    let parts = format!("{}: {} {}", test.name, test.value, test.unit);
    parts.trim_end().to_owned()
}

#[cfg(test)]
mod tests {
    use super::super::{After, Day, Filter, Id, Logbook, Order, list};
    use super::*;
    use crate::hardness::Scale;
    use crate::route::Route;

    #[test]
    fn a_line_per_run_whatever_its_texts_hold() {
        let mut book = Logbook::default();
        for (id, piece) in [("1", "=1+1"), ("2", "iron, \"wide\"\nsecond line")] {
            let route = Route {
                piece: piece.to_owned(),
                ..Route::example()
            };
            let day = Day::parse("2026-11-27").unwrap();
            let mut run = Run::of(Id::try_from(id.to_owned()).unwrap(), day, route, None);
            run.readings.push(Reading {
                value: 61.5,
                scale: Scale::Hrc,
                place: "edge".to_owned(),
                after: After::Temper,
            });
            book.put(run).unwrap();
        }
        let text = write_csv(&list(&book, &Filter::default(), Order::Day));
        assert!(text.starts_with("id,day,piece,grade,"), "{text}");
        assert_eq!(text.matches("\r\n").count(), 3, "{text}");
        let mut reader = csv::Reader::from_reader(text.as_bytes());
        let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
        assert_eq!(rows.len(), 2);
        assert_eq!(rows.iter().map(|row| row.len()).max(), Some(COLUMNS.len()));
        assert_eq!(&rows[0][2], "'=1+1");
        assert_eq!(&rows[1][2], "iron, \"wide\"\nsecond line");
        assert_eq!(&rows[0][21], "61.5");
        assert_eq!(&rows[0][22], "", "nothing was predicted");
        assert_eq!(&rows[0][23], "61.5 HRC as tempered edge");
    }
}
