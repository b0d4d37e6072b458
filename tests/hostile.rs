//! Files, links, tables and lines that were damaged or made to harm: each is read or refused with a
//! sentence, and nothing panics. `PROPTEST_CASES=1000000 cargo test --release --test hostile` tries a
//! million of each.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::heat::{CurveOptions, ProbeCurve};
use recalesce::route::run;
use recalesce::save::logbook::read_logbook;
use recalesce::save::{read, read_bench, read_link, read_preferences, read_shop, read_shown};
use recalesce::teach::{read_experiment, read_experiment_link, read_handed, read_pasted};
use recalesce::terminal::answer;
use serde_json::{Value, json};

const FILES: [&str; 13] = [
    include_str!("saved/v1_shelf.json"),
    include_str!("saved/v3_baths.json"),
    include_str!("saved/v5_logbook.json"),
    include_str!("saved/v7_bench.json"),
    include_str!("saved/v7_logbook.json"),
    include_str!("saved/v7_shop.json"),
    include_str!("saved/v8_shop.json"),
    include_str!("saved/v8_bench.json"),
    include_str!("saved/v8_logbook.json"),
    include_str!("saved/v8_preferences.json"),
    include_str!("saved/v9_bench.json"),
    include_str!("saved/v9_logbook.json"),
    include_str!("saved/v9_shop.json"),
];
const EXPERIMENT: &str = include_str!("../src/texts/experiments/09_refining_the_grain.json");
const LINKS: [&str; 6] = [
    include_str!("saved/v5_links.txt"),
    include_str!("saved/v6_link.txt"),
    include_str!("saved/v7_link.txt"),
    include_str!("saved/v8_link.txt"),
    include_str!("saved/v9_link.txt"),
    include_str!("saved/experiment_link_v1.txt"),
];
const LINES: [&str; 6] = [
    r#"{"question":"route","route":{"grade":"O1"}}"#,
    r#"{"question":"equilibrium","composition":{"c":1.0,"cr":1.5},"temperature_c":800}"#,
    r#"{"question":"isothermal","composition":{"c":0.6,"mn":0.8},"grain_astm":8}"#,
    r#"{"question":"cooling","section":{"shape":"plate","thickness_mm":3},"medium":"water20","start_c":850,"at_c":[540]}"#,
    r#"{"question":"temper","composition":{"c":0.6},"steps":[{"temperature_c":200,"time_s":3600}]}"#,
    r#"{"question":"convert","from":"hrc","value":60,"to":"hv"}"#,
];

/// What is put in the place of characters.
const PIECES: [&str; 16] = [
    "",
    "\"",
    "{",
    "]",
    "null",
    "-",
    "1e999",
    "0.0000001",
    "NaN",
    "\\u0000",
    "é",
    "\u{202e}",
    ",",
    "\n",
    "<script>",
    "99999999999999999999",
];

/// A damage to a text: from where, how much of it, and what stands there then.
#[derive(Debug, Clone)]
struct Damage {
    at: prop::sample::Index,
    long: usize,
    piece: &'static str,
}

fn damage() -> impl Strategy<Value = Damage> {
    let long = prop_oneof![Just(0), Just(1), 2..40_usize, Just(usize::MAX)];
    let piece = prop::sample::select(PIECES.to_vec());
    (any::<prop::sample::Index>(), long, piece).prop_map(|(at, long, piece)| Damage {
        at,
        long,
        piece,
    })
}

fn damaged(text: &str, damages: &[Damage]) -> String {
    let mut characters: Vec<char> = text.chars().collect();
    for damage in damages {
        let from = damage.at.index(characters.len() + 1);
        let to = from.saturating_add(damage.long).min(characters.len());
        characters.splice(from..to, damage.piece.chars());
    }
    characters.into_iter().collect()
}

fn damages() -> impl Strategy<Value = Vec<Damage>> {
    prop::collection::vec(damage(), 1..4)
}

/// What is put in the place of a value of JSON.
fn values() -> Vec<Value> {
    vec![
        Value::Null,
        json!(true),
        json!(-1),
        json!(0),
        json!(1e-300),
        json!(1e308),
        json!(-273.16),
        json!(u64::MAX),
        json!(""),
        json!("\u{0}\u{202e}<img src=x>"),
        json!("x".repeat(10_000)),
        json!([]),
        json!([[[[1]]]]),
        json!({}),
        json!({"shape": "plate", "thickness_mm": -3}),
    ]
}

/// How many values stand in a value, itself among them.
fn count(value: &Value) -> usize {
    1 + match value {
        Value::Array(items) => items.iter().map(count).sum(),
        Value::Object(fields) => fields.values().map(count).sum(),
        _ => 0,
    }
}

/// Puts another value in the place of one, counted from the outside inwards. Gives what of the number
/// is left, where it is not in this value.
fn replace(value: &mut Value, number: usize, other: &Value) -> Option<usize> {
    if number == 0 {
        *value = other.clone();
        return None;
    }
    let mut left = number - 1;
    let inner: Vec<&mut Value> = match value {
        Value::Array(items) => items.iter_mut().collect(),
        Value::Object(fields) => fields.values_mut().collect(),
        _ => Vec::new(),
    };
    for value in inner {
        left = replace(value, left, other)?;
    }
    Some(left)
}

fn replaced(text: &str, changes: &[(prop::sample::Index, Value)]) -> String {
    let mut whole: Value = serde_json::from_str(text).expect("JSON");
    for (at, other) in changes {
        let number = at.index(count(&whole));
        replace(&mut whole, number, other);
    }
    whole.to_string()
}

fn changes() -> impl Strategy<Value = Vec<(prop::sample::Index, Value)>> {
    let change = (any::<prop::sample::Index>(), prop::sample::select(values()));
    prop::collection::vec(change, 1..3)
}

/// Reads a text as everything that may come in from outside; what is refused says why.
fn taken_in(text: &str) {
    let told = [
        read(text).err().map(|e| e.to_string()),
        read_bench(text).err().map(|e| e.to_string()),
        read_preferences(text).err().map(|e| e.to_string()),
        read_shop(text).err().map(|e| e.to_string()),
        read_logbook(text).err().map(|e| e.to_string()),
        read_experiment(text).err().map(|e| e.to_string()),
        read_pasted(text).err().map(|e| e.to_string()),
        read_link(text).err().map(|e| e.to_string()),
        read_shown(text).err().map(|e| e.to_string()),
        read_experiment_link(text).err().map(|e| e.to_string()),
    ];
    let (_, of_class) = read_handed("handed in.json", text);
    for sentence in told.into_iter().flatten().chain(of_class) {
        assert!(!sentence.is_empty() && sentence.len() < 2_000, "{sentence}");
    }
}

proptest! {
    #[test]
    fn a_damaged_file_is_read_or_refused(
        file in prop::sample::select(FILES.to_vec()),
        damages in damages(),
    ) {
        taken_in(&damaged(file, &damages));
    }

    #[test]
    fn a_file_with_values_of_others_is_read_or_refused(
        file in prop::sample::select(FILES.to_vec()),
        changes in changes(),
    ) {
        taken_in(&replaced(file, &changes));
    }

    #[test]
    fn an_experiment_with_values_of_others_is_read_or_refused(changes in changes()) {
        taken_in(&replaced(EXPERIMENT, &changes));
    }

    #[test]
    fn a_damaged_link_is_read_or_refused(
        links in prop::sample::select(LINKS.to_vec()),
        line in any::<prop::sample::Index>(),
        damages in damages(),
    ) {
        let lines: Vec<&str> = links.lines().collect();
        taken_in(&damaged(lines[line.index(lines.len())], &damages));
    }

    #[test]
    fn a_damaged_probe_curve_is_read_or_refused(
        step_s in 0.01..0.5_f64,
        damages in damages(),
    ) {
        let rows: Vec<String> = (0..200)
            .map(|i| f64::from(i) * step_s)
            .map(|time_s| format!("{time_s:.3};{:.1}", 30.0 + 820.0 * (-0.1 * time_s).exp()))
            .collect();
        let text = damaged(&rows.join("\n"), &damages);
        if let Err(error) = ProbeCurve::read(&text, &CurveOptions::default()) {
            prop_assert!(!error.to_string().is_empty());
        }
    }

    #[test]
    fn a_damaged_line_gives_one_line_of_json(
        line in prop::sample::select(LINES.to_vec()),
        damages in damages(),
        changes in changes(),
    ) {
        for line in [damaged(line, &damages), replaced(line, &changes)] {
            let reply = answer(&line, 1);
            prop_assert!(!reply.contains('\n'));
            prop_assert!(serde_json::from_str::<Value>(&reply).is_ok_and(|reply| reply.is_object()));
        }
    }
}

/// Whatever is read of a file with values of others runs, or says what is wrong.
#[test]
fn a_route_that_is_read_runs_or_is_refused() {
    let cases = ProptestConfig::with_cases(ProptestConfig::default().cases.min(256) / 8);
    let file = FILES[3];
    proptest!(cases, |(changes in changes())| {
        if let Ok(item) = read_bench(&replaced(file, &changes))
            && let Err(error) = run(&item.route)
        {
            prop_assert!(!error.to_string().is_empty());
        }
    });
}
