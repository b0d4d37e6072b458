//! Where the project and its build directory are, and how its commands are run.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, anyhow, bail};

/// The target of the page.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";

/// The checked-out project.
#[derive(Debug, Clone)]
pub(crate) struct Project {
    root: PathBuf,
    target: PathBuf,
}

impl Project {
    /// Asks cargo where the workspace and its target directory are, so that `CARGO_TARGET_DIR` and
    /// configuration files count.
    pub(crate) fn find() -> Result<Self> {
        let manifest_dir =
            env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
        let output = Command::new(cargo_program())
            .args(["metadata", "--no-deps", "--format-version", "1"])
            .current_dir(&manifest_dir)
            .output()
            .context("cannot run `cargo metadata`")?;
        if !output.status.success() {
            bail!(
                "`cargo metadata` failed:\n{}",
                String::from_utf8_lossy(&output.stderr).trim()
            );
        }
        let metadata: serde_json::Value = serde_json::from_slice(&output.stdout)?;
        let directory = |key: &str| {
            metadata[key]
                .as_str()
                .map(PathBuf::from)
                .ok_or_else(|| anyhow!("`cargo metadata` names no {key}"))
        };
        Ok(Self {
            root: directory("workspace_root")?,
            target: directory("target_directory")?,
        })
    }

    /// A path below the top of the project.
    pub(crate) fn path(&self, relative: &str) -> PathBuf {
        self.root.join(relative)
    }

    /// A path below cargo's target directory.
    pub(crate) fn target(&self, relative: &str) -> PathBuf {
        self.target.join(relative)
    }

    /// A cargo command that runs at the top of the project.
    pub(crate) fn cargo<'a>(&self, arguments: impl IntoIterator<Item = &'a str>) -> Command {
        let mut command = Command::new(cargo_program());
        command.args(arguments).current_dir(&self.root);
        command
    }
}

fn cargo_program() -> OsString {
    env::var_os("CARGO").unwrap_or_else(|| "cargo".into())
}

/// Runs a command with its output shown, and fails when it fails.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    let shown = shown(command);
    let status = command
        .status()
        .with_context(|| format!("cannot run `{shown}`"))?;
    if !status.success() {
        bail!("`{shown}` failed ({status})");
    }
    Ok(())
}

/// The command as a person would type it.
pub(crate) fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let program = program.file_stem().unwrap_or(command.get_program());
    std::iter::once(program)
        .chain(command.get_args())
        .map(|word| word.to_string_lossy())
        .collect::<Vec<_>>()
        .join(" ")
}
