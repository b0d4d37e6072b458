//! Questions and answers of the terminal program: form, errors, order.
#![cfg(not(target_arch = "wasm32"))]

mod lines;
mod quenchants;
mod routes;
mod steel;

use recalesce::terminal::{answer, run};
use serde_json::{Map, Value};
use std::process::ExitCode;

fn object(reply: &str) -> Map<String, Value> {
    match serde_json::from_str(reply) {
        Ok(Value::Object(fields)) => fields,
        other => panic!("{reply}: {other:?}"),
    }
}

fn answered(question: &str) -> Map<String, Value> {
    let reply = object(&answer(question, 1));
    assert!(!reply.contains_key("error"), "{question}: {reply:?}");
    reply
}

fn error(question: &str) -> String {
    let reply = object(&answer(question, 7));
    assert_eq!(reply["line"], 7, "{question}");
    reply["error"].as_str().expect("error text").to_owned()
}

fn number(reply: &Map<String, Value>, field: &str) -> f64 {
    let value = reply.get(field).and_then(Value::as_f64);
    value.unwrap_or_else(|| panic!("{field} in {reply:?}"))
}

fn help() -> String {
    let mut output = Vec::new();
    let code = run(&b""[..], &mut output, ["--help".to_owned()]);
    assert_eq!(format!("{code:?}"), format!("{:?}", ExitCode::SUCCESS));
    String::from_utf8(output).expect("text")
}
