//! The terminal program: reads questions as JSON, one object a line, and writes answers in order,
//! one a line, computed on all cores. A question that cannot be answered gets an object with `error`
//! and `line` in its place, and the rest goes on.

mod asked;
mod catalogue;
mod coupon;
mod decide;
mod hardness;
mod heat;
mod help;
mod in_order;
mod learn;
mod learnt;
mod lines;
mod quenchant;
mod refusal;
mod steel;
mod transform;
mod whole_route;

use asked::Asked;
use lines::Line;
use refusal::Refusal;
use serde::Serialize;
use serde_json::{Map, Value};
use std::io::{self, BufRead, Write};
use std::process::ExitCode;

/// Longest line that is read, bytes.
pub const LONGEST_LINE_BYTES: usize = 1_000_000;

/// Runs the program: `--help` or no arguments.
///
/// Ends well when the reader of the answers goes away; fails when reading or writing does.
pub fn run(
    input: impl BufRead,
    output: impl Write + Send,
    arguments: impl IntoIterator<Item = String>,
) -> ExitCode {
    let done = match arguments.into_iter().next().as_deref() {
        None => answer_all(input, output),
        Some("-h" | "--help") => write_help(output),
        Some(other) => {
            let mut errors = io::stderr().lock();
            let said = writeln!(
                errors,
                "{other:?} is not known here. Questions come on standard input; see --help."
            );
            return if said.is_ok() {
                ExitCode::from(2)
            } else {
                ExitCode::FAILURE
            };
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(e) if e.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(e) => {
            // Nothing is left to do if even this cannot be said.
            let _ = writeln!(io::stderr().lock(), "{e}");
            ExitCode::FAILURE
        }
    }
}

fn write_help(mut output: impl Write) -> io::Result<()> {
    output.write_all(help::text().as_bytes())?;
    output.flush()
}

/// Answers every line of an input, on all cores; an answer is written as soon as it and all before it
/// are there. Only a few dozen lines are held at any time.
///
/// # Errors
/// What reading and writing give; questions never do.
pub fn answer_all(input: impl BufRead, mut output: impl Write + Send) -> io::Result<()> {
    let write = |reply: String| {
        writeln!(output, "{reply}")?;
        output.flush()
    };
    in_order::on_all_cores(reply_to, write, |ask| {
        lines::for_each(input, LONGEST_LINE_BYTES, |number, line| match line {
            Line::Text(text) if text.trim().is_empty() => Ok(()),
            Line::Text(text) => ask((number, Asking::Text(text.to_owned()))),
            Line::TooLong => ask((number, Asking::TooLong)),
            Line::NotText => ask((number, Asking::NotText)),
        })
    })
}

/// A line that waits for its answer.
enum Asking {
    Text(String),
    TooLong,
    NotText,
}

fn reply_to((number, asking): (u64, Asking)) -> String {
    match asking {
        Asking::Text(text) => answer(&text, number),
        Asking::TooLong => failure(number, None, None, &Refusal::LongLine),
        Asking::NotText => failure(number, None, None, &Refusal::NotText),
    }
}

/// The answer to one line, as one line of JSON.
#[must_use]
pub fn answer(line: &str, number: u64) -> String {
    let asked: Map<String, Value> = match serde_json::from_str(line) {
        Ok(Value::Object(fields)) => fields,
        Ok(_) => return failure(number, None, None, &Refusal::NotAnObject),
        Err(e) => return failure(number, None, None, &Refusal::NotJson(e.to_string())),
    };
    let id = asked.get("id");
    let name = asked.get("question");
    let answered = catalogue::find(name).and_then(|question| {
        let asked = Asked::new(question, &asked)?;
        let mut fields = (question.answer)(&asked)?;
        if let Some(steel) = asked.steel_of_grade() {
            fields.insert("composition".to_owned(), serde_json::to_value(steel)?);
        }
        Ok(fields)
    });
    match answered {
        Ok(fields) => one_line(&Answer {
            id,
            question: name,
            fields,
        })
        .unwrap_or_else(|e| failure(number, id, name, &e)),
        Err(refusal) => failure(number, id, name, &refusal),
    }
}

#[derive(Serialize)]
struct Answer<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<&'a Value>,
    question: Option<&'a Value>,
    #[serde(flatten)]
    fields: Map<String, Value>,
}

#[derive(Serialize)]
struct Failure<'a> {
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<&'a Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    question: Option<&'a Value>,
    line: u64,
    error: String,
}

fn failure(line: u64, id: Option<&Value>, question: Option<&Value>, refusal: &Refusal) -> String {
    one_line(&Failure {
        id,
        question,
        line,
        error: refusal.to_string(),
    })
    .unwrap_or_else(|_| format!("{{\"line\":{line},\"error\":\"the answer cannot be written\"}}"))
}

fn one_line(object: &impl Serialize) -> Result<String, Refusal> {
    Ok(serde_json::to_string(object)?)
}
