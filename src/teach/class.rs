//! A class: the routes of many files side by side. Files come from others, so each is read by itself:
//! what is wrong with one is told, and the others go on.

use super::Number;
use crate::route::{Route, run};
use crate::save::logbook::{add_line, read_logbook, words};
use crate::save::{LARGEST_FILE_BYTES, ReadError, read};
use crate::units::TemperatureScale;
use recalesce_texts::{save::run::OWN_STEEL, teach::class as texts};
use std::borrow::Borrow;
use std::cmp::Ordering;

/// Most files that are taken together.
pub const MOST_CLASS_FILES: usize = 200;
/// Most routes of all of them.
pub const MOST_CLASS_ROUTES: usize = 300;
/// Largest file that is read, bytes.
pub const LARGEST_CLASS_FILE_BYTES: usize = LARGEST_FILE_BYTES;

/// The numbers that stand beside each other, in the order of their columns.
pub const CLASS_NUMBERS: [Number; 10] = [
    Number::SoakC,
    Number::SoakMin,
    Number::ThicknessMm,
    Number::TemperC,
    Number::CarbonWt,
    Number::GrainAstm,
    Number::MarginFactor,
    Number::FinalHrc,
    Number::FinalBandHrc,
    Number::FinalAustenitePercent,
];

/// A route of a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Handed {
    /// Whose it is: the file's name, and that of the route where the file has several.
    pub name: String,
    /// The route.
    pub route: Route,
}

/// The routes of a file, and what is wrong with the file or with some of them, each in a line.
#[must_use]
pub fn read_handed(file: &str, text: &str) -> (Vec<Handed>, Vec<String>) {
    let pupil = file
        .strip_suffix(".json")
        .filter(|name| !name.is_empty())
        .unwrap_or(file);
    let (routes, faults) = match read(text) {
        Ok(loaded) => {
            let items = loaded.shelf.items().iter();
            let routes = items.map(|item| (item.name.clone(), item.route.clone()));
            let faults = loaded.rejected.iter();
            let faults = faults.map(|(at, why)| texts::of_route(at + 1, why));
            (routes.collect::<Vec<_>>(), faults.collect::<Vec<_>>())
        }
        // What was logged is a route as well, the one that was planned.
        Err(ReadError::Kind { .. }) => match read_logbook(text) {
            Ok(loaded) => {
                let runs = loaded.book.runs();
                let routes = runs.map(|run| {
                    let name = format!("{}, {}", run.route.piece, run.day);
                    (name, run.route.clone())
                });
                (routes.collect(), loaded.rejected)
            }
            Err(why) => (Vec::new(), vec![why.to_string()]),
        },
        Err(why) => (Vec::new(), vec![why.to_string()]),
    };
    let is_one = routes.len() == 1;
    let mut faults: Vec<String> = faults.iter().map(|why| texts::in_file(file, why)).collect();
    if routes.is_empty() && faults.is_empty() {
        faults.push(texts::in_file(file, texts::NO_ROUTE));
    }
    let handed = routes.into_iter().map(|(name, route)| Handed {
        name: if is_one {
            pupil.to_owned()
        } else {
            format!("{pupil}: {name}")
        },
        route,
    });
    (handed.collect(), faults)
}

/// A route of the class with its numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassRow {
    /// The route, and whose it is.
    pub handed: Handed,
    /// In the order of [`CLASS_NUMBERS`]; none where the models do not reach.
    pub numbers: [Option<f64>; CLASS_NUMBERS.len()],
    /// Why there is no outcome.
    pub fault: Option<String>,
}

impl ClassRow {
    /// Computes the route; why it has no outcome is told with temperatures on a scale.
    #[must_use]
    pub fn of(handed: Handed, scale: TemperatureScale) -> Self {
        let (numbers, fault) = match run(&handed.route) {
            Ok(outcome) => (
                CLASS_NUMBERS.map(|number| number.of(&handed.route, &outcome)),
                None,
            ),
            Err(why) => ([None; CLASS_NUMBERS.len()], Some(why.words(scale))),
        };
        Self {
            handed,
            numbers,
            fault,
        }
    }

    /// Its grade; "own steel" where it is of none.
    #[must_use]
    pub fn grade(&self) -> &str {
        self.handed.route.grade.as_deref().unwrap_or(OWN_STEEL)
    }

    /// The number of a column.
    #[must_use]
    pub fn number(&self, column: usize) -> Option<f64> {
        self.numbers.get(column).copied().flatten()
    }
}

/// What the rows are ordered by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ClassOrder {
    /// Whose they are.
    Name,
    /// The steel.
    Grade,
    /// A column of [`CLASS_NUMBERS`].
    Number(usize),
}

/// The places of the rows in an order, rising or falling; rows without the number come last. Rows that
/// are alike keep their order.
#[must_use]
pub fn class_order(rows: &[impl Borrow<ClassRow>], by: ClassOrder, is_falling: bool) -> Vec<usize> {
    let turned = |order: Ordering| if is_falling { order.reverse() } else { order };
    let mut keyed: Vec<(usize, &ClassRow)> = rows.iter().map(Borrow::borrow).enumerate().collect();
    keyed.sort_by(|(_, a), (_, b)| match by {
        ClassOrder::Name => turned(a.handed.name.cmp(&b.handed.name)),
        ClassOrder::Grade => turned(a.grade().cmp(b.grade())),
        ClassOrder::Number(column) => match (a.number(column), b.number(column)) {
            (Some(a), Some(b)) => turned(a.total_cmp(&b)),
            (Some(_), None) => Ordering::Less,
            (None, Some(_)) => Ordering::Greater,
            (None, None) => Ordering::Equal,
        },
    });
    keyed.into_iter().map(|(place, _)| place).collect()
}

/// The class as a table for a spreadsheet: RFC 4180, one line per route, temperatures in °C and
/// lengths in mm. `quench` gives the words for the quench of a route.
#[must_use]
pub fn class_csv(rows: &[impl Borrow<ClassRow>], quench: impl Fn(&Route) -> String) -> String {
    let columns = CLASS_NUMBERS.map(|number| {
        let unit = number.unit();
        let sign = if unit.is_empty() { "" } else { ", " };
        format!("{}{sign}{unit}", number.words())
    });
    let mut table = String::new();
    let head = ["name", "piece", "grade", "quench"].into_iter();
    add_line(&mut table, head.chain(columns.iter().map(String::as_str)));
    for row in rows.iter().map(Borrow::borrow) {
        let row: &ClassRow = row;
        let route = &row.handed.route;
        let mut cells = vec![
            words(&row.handed.name),
            words(&route.piece),
            words(row.grade()),
            words(&quench(route)),
        ];
        let numbers = row.numbers.iter();
        cells.extend(numbers.map(|n| n.map_or_else(String::new, |n| n.to_string())));
        add_line(&mut table, cells.iter().map(String::as_str));
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::save::logbook::{Day, Id, Run, write_run};
    use crate::save::{Shelf, write_bench, write_shelf};

    fn row(name: &str, soak_c: f64) -> ClassRow {
        let mut route = Route::example();
        route.soak.temperature_c = soak_c;
        let name = name.to_owned();
        ClassRow::of(Handed { name, route }, TemperatureScale::Celsius)
    }

    #[test]
    fn a_route_a_shelf_and_a_logbook_are_read_alike() {
        let route = Route::example();
        let bench = write_bench("", &route).unwrap();
        let (handed, faults) = read_handed("Ada.json", &bench);
        assert_eq!((handed.len(), faults.len()), (1, 0));
        assert_eq!((handed[0].name.as_str(), &handed[0].route), ("Ada", &route));

        let mut shelf = Shelf::default();
        shelf.add("first", route.clone()).unwrap();
        shelf.add("second", route.clone()).unwrap();
        let (handed, _) = read_handed("Ben.json", &write_shelf(&shelf).unwrap());
        let names: Vec<_> = handed.iter().map(|h| h.name.as_str()).collect();
        assert_eq!(names, ["Ben: first", "Ben: second"]);

        let id = Id::try_from("a1".to_owned()).unwrap();
        let day = Day::parse("2026-03-01").unwrap();
        let run = Run::of(id, day, route.clone(), None);
        let (handed, faults) = read_handed("Cleo.json", &write_run(&run).unwrap());
        assert_eq!((handed.len(), faults.len()), (1, 0));
        assert_eq!(handed[0].route, route);
    }

    #[test]
    fn what_is_wrong_with_a_file_is_a_line_with_its_name() {
        for text in [
            "",
            "{}",
            "[1,2",
            "<script>",
            "{\"format\":\"recalesce\",\"version\":999}",
        ] {
            let (handed, faults) = read_handed("x.json", text);
            assert!(handed.is_empty(), "{text}");
            assert_eq!(faults.len(), 1, "{text}");
            assert!(faults[0].starts_with("“x.json”: ") && !faults[0].contains('\n'));
        }
        let empty = write_shelf(&Shelf::default()).unwrap();
        assert_eq!(
            read_handed("x.json", &empty).1,
            ["“x.json”: The file holds no route."]
        );
    }

    #[test]
    fn rows_are_those_of_the_pipeline_and_are_ordered_by_any_column() {
        let rows = [row("b", 830.0), row("a", 850.0), row("c", 5000.0)];
        let outcome = run(&rows[0].handed.route).unwrap();
        for (column, number) in CLASS_NUMBERS.into_iter().enumerate() {
            let expected = number.of(&rows[0].handed.route, &outcome);
            assert_eq!(rows[0].number(column), expected);
        }
        assert!(
            rows[2]
                .fault
                .as_ref()
                .is_some_and(|why| why.contains("5000"))
        );
        assert_eq!(class_order(&rows, ClassOrder::Name, false), [1, 0, 2]);
        assert_eq!(class_order(&rows, ClassOrder::Name, true), [2, 0, 1]);
        // The one without an outcome is last both ways.
        assert_eq!(class_order(&rows, ClassOrder::Number(0), false), [0, 1, 2]);
        assert_eq!(class_order(&rows, ClassOrder::Number(0), true), [1, 0, 2]);
        assert_eq!(class_order(&rows, ClassOrder::Grade, false), [0, 1, 2]);
    }

    #[test]
    fn the_table_keeps_names_as_texts() {
        let rows = [row("=1+1", 830.0), row("Ada, \"A\"", 5000.0)];
        let table = class_csv(&rows, |_| "oil".to_owned());
        let lines: Vec<&str> = table.split("\r\n").collect();
        assert!(lines[0].starts_with("name,piece,grade,quench,\"soak temperature, °C\","));
        assert!(lines[1].starts_with("'=1+1,"));
        assert!(lines[1].contains(",oil,830,"));
        assert!(lines[2].starts_with("\"Ada, \"\"A\"\"\","));
        assert!(lines[2].ends_with(",,,,,,,,,,"));
    }
}
