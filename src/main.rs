//! Answers questions in a terminal, one JSON object a line.

use std::process::ExitCode;

fn main() -> ExitCode {
    let (input, output) = (std::io::stdin().lock(), std::io::stdout());
    recalesce::terminal::run(input, output, std::env::args().skip(1))
}
