//! In the browser: mounts the page. In a terminal: answers questions, one JSON object a line.

#[cfg(target_arch = "wasm32")]
fn main() {
    recalesce::app::start();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() -> std::process::ExitCode {
    let (input, output) = (std::io::stdin().lock(), std::io::stdout());
    recalesce::terminal::run(input, output, std::env::args().skip(1))
}
