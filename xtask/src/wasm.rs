//! The program as WebAssembly, with the JavaScript that binds it to the browser.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, anyhow, bail};
use wasm_bindgen_cli_support::Bindgen;

use crate::arrange;
use crate::files;
use crate::project::{Project, WASM, run};

/// How the program is compiled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Build {
    /// As it is published.
    Release,
    /// Quicker to compile and with names in stack traces, for work on the page.
    Quick,
}

impl Build {
    fn profile(self) -> &'static str {
        match self {
            Self::Release => "page",
            Self::Quick => "quick",
        }
    }
}

/// What the page loads.
#[derive(Debug, Clone)]
pub(crate) struct Bindings {
    /// The module that starts the program.
    pub(crate) script: Vec<u8>,
    /// The program.
    pub(crate) wasm: Vec<u8>,
    /// Further modules that the script imports, by their path beside it.
    pub(crate) snippets: BTreeMap<String, Vec<u8>>,
}

/// Compiles the program for the browser and generates its bindings.
pub(crate) fn build(project: &Project, build: Build) -> Result<Bindings> {
    ensure_target()?;
    let compiled = project.target(&format!("{WASM}/{}/recalesce.wasm", build.profile()));
    if !compiled.exists() {
        eprintln!("Compiling the page: the first time this takes some minutes");
    }
    run(&mut project.cargo([
        "build",
        "--locked",
        "--profile",
        build.profile(),
        "--target",
        WASM,
        "--package",
        "recalesce",
        "--bin",
        "recalesce",
    ]))?;
    bind(&compiled, &project.target("page/bindings"), build)
}

fn bind(compiled: &Path, out: &Path, build: Build) -> Result<Bindings> {
    files::remove_dir(out)?;
    Bindgen::new()
        .input_path(compiled)
        .web(true)?
        .typescript(false)
        .omit_default_module_path(true)
        .remove_name_section(build == Build::Release)
        .remove_producers_section(true)
        .generate(out)
        .with_context(|| format!("cannot bind {}", compiled.display()))?;

    let mut snippets = BTreeMap::new();
    for path in files::below(out)? {
        snippets.insert(path.clone(), fs::read(out.join(&path))?);
    }
    let mut take = |name: &str| {
        snippets
            .remove(name)
            .ok_or_else(|| anyhow!("the bindings have no {name}"))
    };
    let script = take("recalesce.js")?;
    let wasm = take("recalesce_bg.wasm")?;
    Ok(Bindings {
        script,
        wasm: match build {
            Build::Release => arrange::by_likeness(&wasm)?,
            Build::Quick => wasm,
        },
        snippets,
    })
}

/// Adds the target to the toolchain when it is not there.
pub(crate) fn ensure_target() -> Result<()> {
    let output = Command::new("rustc")
        .args(["--print", "target-libdir", "--target", WASM])
        .output()
        .context("cannot run `rustc`")?;
    let library = String::from_utf8_lossy(&output.stdout);
    if output.status.success() && Path::new(library.trim()).is_dir() {
        return Ok(());
    }
    eprintln!("Adding the Rust target {WASM}");
    match Command::new("rustup")
        .args(["target", "add", WASM])
        .status()
    {
        Ok(status) if status.success() => Ok(()),
        Ok(_) => bail!("`rustup target add {WASM}` failed"),
        Err(_) => bail!(
            "the Rust target {WASM} is missing and rustup is not here to add it: \
             install it with your system's packages, or install Rust from https://rustup.rs"
        ),
    }
}
