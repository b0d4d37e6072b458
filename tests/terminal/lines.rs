//! The lines that go in and come out: help, order, faults of form, whatever is asked.

use super::{answered, error, help, object};
use proptest::prelude::*;
use recalesce::terminal::{LONGEST_LINE_BYTES, answer, answer_all, run};
use serde_json::{Map, Value};
use std::process::ExitCode;

fn replies(input: &[u8]) -> Vec<Map<String, Value>> {
    let mut output = Vec::new();
    answer_all(input, &mut output).expect("written");
    let text = String::from_utf8(output).expect("text");
    text.lines().map(object).collect()
}

const NAMES: [&str; 20] = [
    "route",
    "find",
    "spread",
    "sensitivity",
    "learn",
    "critical_temperatures",
    "equilibrium",
    "soak",
    "isothermal",
    "continuous_cooling",
    "critical_cooling",
    "martensite",
    "end_quench",
    "cooling",
    "probe",
    "fit_quenchant",
    "coupon",
    "as_quenched",
    "temper",
    "convert",
];

#[test]
fn help_explains_every_question_with_an_example_that_is_answered() {
    let help = help();
    let examples: Vec<&str> = help
        .lines()
        .map(str::trim)
        .filter(|line| line.starts_with("{\"question\""))
        .collect();
    assert_eq!(examples.len(), NAMES.len());
    for (example, name) in examples.into_iter().zip(NAMES) {
        assert!(help.contains(&name.to_uppercase()), "{name}");
        assert_eq!(answered(example)["question"], name);
    }
    let widest = help
        .lines()
        .filter(|line| !line.contains("{\""))
        .map(|line| line.chars().count())
        .max();
    assert!(widest.is_some_and(|w| w <= 100), "{widest:?}");
}

#[test]
fn answers_come_in_order_and_errors_in_their_place() {
    let input = concat!(
        "{\"question\":\"martensite\",\"grade\":\"4140\",\"quench_end_c\":20,\"id\":1}\n",
        "\n",
        "nonsense\r\n",
        "  \t\n",
        "{\"id\":{\"piece\":[2]},\"question\":\"martensite\",\"grade\":\"1045\",\"quench_end_c\":20}\r\n",
        "{\"question\":\"martensite\",\"grade\":\"1045\",\"id\":null}"
    );
    let replies = replies(input.as_bytes());
    assert_eq!(replies.len(), 4);
    assert_eq!(replies[0]["id"], 1);
    assert!(replies[0].contains_key("ms_c"));
    assert_eq!(replies[1]["line"], 3);
    assert!(!replies[1].contains_key("id"));
    assert_eq!(replies[2]["id"]["piece"][0], 2);
    assert!(replies[2].contains_key("ms_c"));
    assert_eq!(replies[3]["line"], 6);
    assert_eq!(replies[3]["id"], Value::Null);
    assert_eq!(replies[3]["question"], "martensite");
}

#[test]
fn long_lines_and_bytes_that_are_no_text_are_errors_on_their_lines() {
    let good = br#"{"question":"martensite","grade":"4140","quench_end_c":20}"#;
    let mut input = vec![b'['; 3 * LONGEST_LINE_BYTES];
    input.extend(b"\n\xff\xfe\n");
    input.extend(good);
    input.push(b'\n');
    // Exactly at the limit, by spaces after the question.
    input.extend(good);
    input.extend(vec![b' '; LONGEST_LINE_BYTES - good.len()]);
    input.extend(b"\n");
    input.extend(vec![b'x'; LONGEST_LINE_BYTES + 1]);
    let replies = replies(&input);
    assert_eq!(replies.len(), 5);
    assert_eq!(replies[0]["line"], 1);
    assert!(
        replies[0]["error"]
            .as_str()
            .is_some_and(|e| e.contains("longer"))
    );
    assert_eq!(replies[1]["line"], 2);
    assert!(
        replies[1]["error"]
            .as_str()
            .is_some_and(|e| e.contains("UTF-8"))
    );
    assert!(replies[2].contains_key("ms_c"));
    assert!(replies[3].contains_key("ms_c"));
    assert_eq!(replies[4]["line"], 5);
}

#[test]
fn every_fault_is_named() {
    let cases = [
        ("[1]", "a JSON object"),
        ("{\"question\":", "not JSON"),
        ("{}", "`question` is missing"),
        ("{\"question\":\"melt\"}", "critical_temperatures"),
        ("{\"question\":5}", "5 is no question"),
        (
            "{\"question\":\"soak\",\"time_min\":1}",
            "`temperature_c` is missing",
        ),
        (
            "{\"question\":\"soak\",\"temperature_c\":845,\"time_min\":1}",
            "`composition` or `grade` is missing",
        ),
        (
            "{\"question\":\"soak\",\"grade\":\"52100\",\"temperature_c\":null,\"time_min\":1}",
            "`temperature_c` is missing",
        ),
        (
            "{\"question\":\"soak\",\"grade\":\"52100\",\"temperature\":845,\"time_min\":1}",
            "unknown field `temperature`; `soak` takes composition or grade, start?, temperature_c",
        ),
        (
            "{\"question\":\"probe\",\"medium\":\"water20\",\"grade\":\"52100\"}",
            "unknown field `grade`",
        ),
        (
            "{\"question\":\"martensite\",\"grade\":\"52199\",\"quench_end_c\":20}",
            "52100",
        ),
        (
            "{\"question\":\"martensite\",\"grade\":7,\"quench_end_c\":20}",
            "`grade`: invalid type",
        ),
        (
            "{\"question\":\"martensite\",\"composition\":{\"c\":-1},\"quench_end_c\":20}",
            "C: -1 % is outside 0 to 2.5 %",
        ),
        (
            "{\"question\":\"martensite\",\"composition\":{\"carbon\":1},\"quench_end_c\":20}",
            "unknown field `carbon`",
        ),
        (
            "{\"question\":\"martensite\",\"grade\":\"52100\",\"quench_end_c\":\"cold\"}",
            "`quench_end_c`: invalid type: string \"cold\"",
        ),
        (
            "{\"question\":\"isothermal\",\"grade\":\"52100\",\"grain_astm\":99}",
            "`grain_astm`: 99 is outside -2 to 15",
        ),
        (
            "{\"question\":\"martensite\",\"grade\":\"52100\",\"quench_end_c\":1e999}",
            "not JSON",
        ),
    ];
    for (question, words) in cases {
        let error = error(question);
        assert!(error.contains(words), "{question}: {error}");
    }
}

#[test]
fn a_composition_goes_before_a_grade_and_a_grade_is_told() {
    let grade = answered("{\"question\":\"martensite\",\"grade\":\"1.3505\",\"quench_end_c\":20}");
    assert!(
        grade["composition"]["cr"]
            .as_f64()
            .is_some_and(|cr| cr > 1.0)
    );
    let both = answered(
        "{\"question\":\"martensite\",\"grade\":\"52100\",\"composition\":{\"c\":0.4},\
         \"quench_end_c\":20}",
    );
    let alone =
        answered("{\"question\":\"martensite\",\"composition\":{\"c\":0.4},\"quench_end_c\":20}");
    assert_eq!(both["ms_c"], alone["ms_c"]);
    assert!(!both.contains_key("composition"));
}

#[test]
fn arguments_that_are_unknown_end_with_an_error() {
    let mut output = Vec::new();
    let code = run(&b""[..], &mut output, ["--fast".to_owned()]);
    assert_eq!(format!("{code:?}"), format!("{:?}", ExitCode::from(2)));
    assert!(output.is_empty());
}

proptest! {
    #[test]
    fn any_line_gives_one_line_of_json(line in any::<String>()) {
        let reply = answer(&line, 1);
        prop_assert!(!reply.contains('\n'));
        object(&reply);
    }

    #[test]
    fn any_numbers_are_answered_or_refused(
        name in prop::sample::select(NAMES.to_vec()),
        number in any::<f64>().prop_filter("JSON has no others", |x| x.is_finite()),
        field in prop::sample::select(vec![
            "temperature_c", "time_min", "grain_astm", "martensite", "quench_end_c", "cold_c",
            "delay_min", "start_c", "agitation", "air_delay_s", "value",
        ]),
    ) {
        let help = help();
        let example = help
            .lines()
            .map(str::trim)
            .find(|line| line.starts_with(&format!("{{\"question\":\"{name}\"")))
            .expect("example");
        let mut question = object(example);
        question.insert(field.to_owned(), number.into());
        let reply = answer(&Value::Object(question).to_string(), 1);
        prop_assert!(
            // Where the scale, the quench or what is known ends, null is said in the help.
            object(&reply).contains_key("error")
                || [
                    "as_quenched", "temper", "cooling", "continuous_cooling", "end_quench",
                    "probe", "coupon", "route",
                ].contains(&name)
                || !reply.contains("null"),
            "{}", reply
        );
    }
}
