//! The program as WebAssembly, with the JavaScript that binds it to the browser.

use std::collections::BTreeMap;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, anyhow, bail};
use wasm_bindgen_cli_support::Bindgen;

use crate::arrange;
use crate::compiler;
use crate::files;
use crate::project::{Project, WASM, run};
use crate::split::{self, Apart};

/// The package of the page, and its program.
pub(crate) const PROGRAM: &str = "recalesce-page";

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
    pub(crate) script: String,
    /// The program, without its parts.
    pub(crate) wasm: Vec<u8>,
    /// Parts of the program that are loaded when they are opened, by the names that the script has for
    /// them.
    pub(crate) parts: BTreeMap<String, Vec<u8>>,
    /// Further modules that the script imports, by their path beside it.
    pub(crate) snippets: BTreeMap<String, Vec<u8>>,
}

/// Compiles the program for the browser and generates its bindings.
pub(crate) fn build(project: &Project, build: Build) -> Result<Bindings> {
    let compiled = compile(project, build)?;
    let apart = split::apart(&compiled, &project.target("page/parts"))?;
    bind(apart, &project.target("page/bindings"), build)
}

/// Compiles the program for the browser, to the path that is returned.
pub(crate) fn compile(project: &Project, build: Build) -> Result<PathBuf> {
    ensure_target()?;
    let compiled = project.target(&format!("{WASM}/{}/{PROGRAM}.wasm", build.profile()));
    if !compiled.exists() {
        eprintln!("Compiling the page: the first time this takes some minutes");
    }
    let paths_alike = paths_alike()?;
    run(compiler::stand_in(
        &mut project.cargo([
            "--config",
            &paths_alike,
            "rustc",
            "--locked",
            "--profile",
            build.profile(),
            "--target",
            WASM,
            "--package",
            PROGRAM,
            // Tell what refers to what, so that the program can be taken apart.
            "--",
            "-C",
            "link-arg=--emit-relocs",
        ]),
        &project.target("page"),
    )?)?;
    Ok(compiled)
}

/// Configuration by which messages name the files of packages from the same place everywhere: where cargo
/// keeps them differs, and moves all else in the program by some bytes.
fn paths_alike() -> Result<String> {
    let home = env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home
        .or_else(|| Some(env::home_dir()?.join(".cargo")))
        .context("cannot tell where cargo keeps packages: set CARGO_HOME")?;
    let home = home.display();
    Ok(format!(
        "target.{WASM}.rustflags=['--remap-path-prefix={home}=/cargo']"
    ))
}

fn bind(apart: Apart, out: &Path, build: Build) -> Result<Bindings> {
    files::remove_dir(out)?;
    Bindgen::new()
        .input_bytes("recalesce", apart.main.clone())
        .web(true)?
        .typescript(false)
        .omit_default_module_path(true)
        // The parts use the table of functions that the linker exports.
        .keep_lld_exports(true)
        .remove_name_section(build == Build::Release)
        .remove_producers_section(true)
        .generate(out)
        .context("cannot bind the program to the browser")?;

    let mut snippets = BTreeMap::new();
    for path in files::below(out)? {
        snippets.insert(path.clone(), fs::read(out.join(&path))?);
    }
    let mut take = |name: &str| {
        snippets
            .remove(name)
            .ok_or_else(|| anyhow!("the bindings have no {name}"))
    };
    let script = apart.with_loader(std::str::from_utf8(&take("recalesce.js")?)?)?;
    let wasm = take("recalesce_bg.wasm")?;
    let finished = |wasm: Vec<u8>| match build {
        Build::Release => arrange::by_likeness(&wasm),
        Build::Quick => Ok(wasm),
    };
    let mut parts = BTreeMap::new();
    for (name, part) in apart.parts {
        parts.insert(name, finished(part)?);
    }
    Ok(Bindings {
        script,
        wasm: finished(wasm)?,
        parts,
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
