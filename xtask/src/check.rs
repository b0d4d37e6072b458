//! `cargo xtask test`, `score` and `bench`.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};
use clap::ValueEnum;
use serde_json::json;

use crate::budget::Weights;
use crate::bundle::Bundle;
use crate::http;
use crate::project::{Project, WASM, run};
use crate::serve;
use crate::site::{self, Site};
use crate::tools::{self, Browser, Node};
use crate::wasm::{self, Build};

/// The parts of the test, in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(crate) enum Step {
    /// The code is formatted
    Format,
    /// No warning, on this machine's target
    Lint,
    /// No warning, on the target of the page
    LintPage,
    /// Unit, outside-value, property and documentation tests
    Native,
    /// tests/web.rs as WebAssembly in Chromium
    Wasm,
    /// What the published page loads is within its budget
    Size,
    /// tests/page in Chromium, on the page as it is published
    Page,
}

impl Step {
    fn needs_browser(self) -> bool {
        matches!(self, Self::Wasm | Self::Page)
    }

    fn needs_page(self) -> bool {
        matches!(self, Self::Size | Self::Page)
    }

    fn title(self) -> &'static str {
        match self {
            Self::Format => "format",
            Self::Lint => "lint",
            Self::LintPage => "lint for the page",
            Self::Native => "native tests",
            Self::Wasm => "WebAssembly tests in Chromium",
            Self::Size => "size of the page",
            Self::Page => "page tests in Chromium",
        }
    }
}

/// Runs the given steps, or all: each to its end, also when one before it has failed.
pub(crate) fn test(project: &Project, chosen: &[Step]) -> Result<()> {
    let steps: Vec<Step> = Step::value_variants()
        .iter()
        .copied()
        .filter(|step| chosen.is_empty() || chosen.contains(step))
        .collect();
    // What is missing shows now, not after minutes of compiling.
    tools::ensure_components()?;
    wasm::ensure_target()?;
    if steps.iter().any(|step| step.needs_browser()) {
        Browser::ensure()?;
    }
    if steps.contains(&Step::Page) {
        Node::ensure()?;
    }

    let needs_page = steps.iter().any(|step| step.needs_page());
    let mut results: Vec<(Step, Duration, Result<()>)> = Vec::new();
    for step in steps {
        eprintln!("\n=== {} ===", step.title());
        let start = Instant::now();
        let result = thread::scope(|scope| {
            if step == Step::Native && needs_page {
                // Linking the page keeps one core busy for minutes. What fails here fails again, and is
                // told, where the page is needed.
                scope.spawn(|| wasm::compile(project, Build::Release));
            }
            perform(project, step)
        });
        if let Err(error) = &result {
            eprintln!("error: {error:#}");
        }
        results.push((step, start.elapsed(), result));
    }

    eprintln!("\n=== result ===");
    for (step, time, result) in &results {
        let word = if result.is_ok() { "ok" } else { "FAILED" };
        eprintln!("{word:<7}{:<32}{:>5} s", step.title(), time.as_secs());
    }
    let failed = results
        .iter()
        .filter(|(_, _, result)| result.is_err())
        .count();
    println!("steps: {} passed, {failed} failed", results.len() - failed);
    if failed > 0 {
        bail!("the test has failed");
    }
    Ok(())
}

fn perform(project: &Project, step: Step) -> Result<()> {
    let cargo = |arguments: &[&str]| run(&mut project.cargo(arguments.iter().copied()));
    match step {
        Step::Format => cargo(&["fmt", "--all", "--check"]),
        Step::Lint => cargo(&[
            "clippy",
            "--locked",
            "--all-targets",
            "--",
            "-D",
            "warnings",
        ]),
        Step::LintPage => cargo(&[
            "clippy",
            "--locked",
            "--package",
            "recalesce",
            "--package",
            "recalesce-physics",
            "--package",
            "recalesce-texts",
            "--package",
            wasm::PROGRAM,
            "--lib",
            "--bins",
            "--test",
            "web",
            "--target",
            WASM,
            "--",
            "-D",
            "warnings",
        ]),
        Step::Native => {
            let mut command = project.cargo(["test", "--locked"]);
            if std::env::var_os(SEED).is_none() {
                command.env(SEED, "1");
            }
            run(&mut command)
        }
        Step::Wasm => wasm_tests(project),
        Step::Size => {
            let bindings = wasm::build(project, Build::Release)?;
            let weights = Weights::of(&Bundle::assemble(project, &bindings)?)?;
            eprint!("{weights}");
            weights.check()
        }
        Step::Page => {
            let page = published(project)?;
            let tests = page_files(project, ".test.mjs")?;
            run(page
                .node(project, &page.browser.headless())
                .args(["--test", "--test-reporter=spec", "--test-concurrency=2"])
                .args(tests))
        }
    }
}

/// Where property tests take the seed of their cases from: what has passed passes again, unless another
/// is asked for.
const SEED: &str = "PROPTEST_RNG_SEED";

fn wasm_tests(project: &Project) -> Result<()> {
    let browser = Browser::ensure()?;
    run(&mut project.cargo([
        "build",
        "--locked",
        "--package",
        "xtask",
        "--features",
        "browser-tests",
        "--bin",
        "browser-tests",
    ]))?;
    let runner = project.target(&format!(
        "debug/browser-tests{}",
        std::env::consts::EXE_SUFFIX
    ));
    // A JSON string is a TOML string as well.
    let runner = json!([runner
        .to_str()
        .context("the target directory is not Unicode")?]);
    let capabilities = project.target("page/webdriver.json");
    fs::create_dir_all(project.target("page"))?;
    fs::write(&capabilities, capabilities_of(&browser).to_string())?;
    run(project
        .cargo([
            "test",
            "--locked",
            "--package",
            "recalesce",
            "--test",
            "web",
        ])
        .args(["--target", WASM, "--config"])
        .arg(format!("target.{WASM}.runner = {runner}"))
        .env("CHROMEDRIVER", &browser.driver)
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &capabilities)
        .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60")
        .env("WASM_BINDGEN_TEST_TIMEOUT", "300"))
}

fn capabilities_of(browser: &Browser) -> serde_json::Value {
    json!({
        "goog:chromeOptions": {
            "binary": browser.chromium,
            "args": [
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-gpu",
                "--disable-sync",
                "--no-first-run",
            ],
        },
    })
}

/// The published page on a server of our own, with what the scripts of `tests/page` need.
struct Published {
    browser: Browser,
    node: Node,
    root_url: String,
    below_url: String,
}

fn published(project: &Project) -> Result<Published> {
    let browser = Browser::ensure()?;
    let node = Node::ensure()?;
    install_packages(project, &node)?;
    let dir = project.target("page/site");
    serve::publish(project, &dir)?;
    // The deeper one first: the root holds every path.
    let prefixes = ["/some/where/", "/"];
    let sites = prefixes.map(|prefix| Site {
        dir: dir.clone(),
        prefix: prefix.to_owned(),
        live: None,
    });
    let address = http::start(http::listen(0)?, move |request| {
        site::answer(&sites, request)
    })?;
    Ok(Published {
        browser,
        node,
        root_url: format!("http://{address}/"),
        below_url: format!("http://{address}/some/where/"),
    })
}

impl Published {
    /// Node, told where the page and the browser are.
    fn node(&self, project: &Project, browser: &Path) -> Command {
        let mut command = Command::new(&self.node.node);
        command
            .current_dir(project.path("tests/page"))
            .env("CHROMIUM", browser)
            .env("RECALESCE_URL", &self.root_url)
            .env("RECALESCE_URL_BELOW", &self.below_url);
        command
    }
}

/// Installs the packages of `tests/page` when its lock file is not the one installed.
fn install_packages(project: &Project, node: &Node) -> Result<()> {
    let dir = project.path("tests/page");
    let lock = fs::read(dir.join("package-lock.json"))?;
    let installed = dir.join("node_modules/.installed-lock.json");
    if fs::read(&installed).is_ok_and(|known| known == lock) {
        return Ok(());
    }
    run(Command::new(&node.npm)
        .args(["ci", "--no-audit", "--no-fund"])
        .current_dir(&dir)
        .env("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1"))?;
    fs::write(installed, lock)?;
    Ok(())
}

/// The files of `tests/page` with an ending.
fn page_files(project: &Project, ending: &str) -> Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(project.path("tests/page"))? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name.ends_with(ending) {
            names.push(name);
        }
    }
    if names.is_empty() {
        bail!("tests/page has no file *{ending}");
    }
    names.sort();
    Ok(names)
}

/// Prints how far the models are from the values measured outside, and the error of each fit on what is left
/// out of it, in some minutes.
pub(crate) fn score(project: &Project) -> Result<()> {
    run(&mut project.cargo([
        "test",
        "--locked",
        "--test",
        "score",
        "--",
        "--nocapture",
        "--include-ignored",
    ]))
}

/// Measures the time that the pipeline takes, natively and in the page.
pub(crate) fn bench(project: &Project) -> Result<()> {
    run(&mut project.cargo([
        "bench",
        "--locked",
        "--package",
        "recalesce",
        "--bench",
        "*",
    ]))?;
    let page = published(project)?;
    run(page.node(project, &page.browser.chromium).arg("bench.mjs"))
}
