//! Programs that the tests need beside cargo: found, or installed where that is ours to do, or asked for.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::project::run;

/// The oldest Node that the page tests run on.
const NODE_MAJOR: u32 = 18;

/// A program by the variable that may name it, its names on PATH, and other places where it may be.
struct Program {
    variable: &'static str,
    names: &'static [&'static str],
    places: &'static [&'static str],
}

const CHROMIUM: Program = Program {
    variable: "CHROMIUM",
    names: &[
        "chromium",
        "chromium-browser",
        "google-chrome-stable",
        "google-chrome",
        "chrome",
    ],
    places: &[
        "/snap/bin/chromium",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    ],
};

/// Chromium without a desktop around it: the same page, opened for half the work.
const HEADLESS: Program = Program {
    variable: "CHROMIUM",
    names: &["chromium-headless-shell", "chrome-headless-shell"],
    places: &["/usr/lib/chromium/chromium-headless-shell"],
};

const CHROMEDRIVER: Program = Program {
    variable: "CHROMEDRIVER",
    names: &["chromedriver", "chromium.chromedriver"],
    places: &[
        "/usr/lib/chromium/chromedriver",
        "/usr/lib/chromium-browser/chromedriver",
        "/snap/bin/chromium.chromedriver",
    ],
};

const NODE: Program = Program {
    variable: "NODE",
    names: &["node", "nodejs"],
    places: &[],
};

const NPM: Program = Program {
    variable: "NPM",
    names: &["npm"],
    places: &[],
};

impl Program {
    fn find(&self) -> Option<PathBuf> {
        if let Some(path) = env::var_os(self.variable) {
            return Some(path.into());
        }
        let on_path = self.names.iter().find_map(|name| which::which(name).ok());
        on_path.or_else(|| {
            let place = self
                .places
                .iter()
                .find(|place| Path::new(place).is_file())?;
            Some(place.into())
        })
    }
}

/// A browser that tests can drive.
#[derive(Debug)]
pub(crate) struct Browser {
    /// Chromium, or a browser of its family.
    pub(crate) chromium: PathBuf,
    /// The WebDriver program of the same version.
    pub(crate) driver: PathBuf,
}

impl Browser {
    /// Finds the browser; installs it when it is missing and this is a Debian of our own.
    pub(crate) fn ensure() -> Result<Self> {
        let find = || {
            Some(Self {
                chromium: CHROMIUM.find()?,
                driver: CHROMEDRIVER.find()?,
            })
        };
        ensure(
            find,
            &["chromium", "chromium-driver"],
            "Chromium and chromedriver of the same version (set CHROMIUM and CHROMEDRIVER to their \
             paths if they are not on PATH)",
        )
    }

    /// Chromium without a desktop, installed where it is missing and to be had; Chromium itself where it is
    /// not.
    pub(crate) fn headless(&self) -> PathBuf {
        if HEADLESS.find().is_none()
            && is_own_debian()
            && let Err(error) = install(&["chromium-headless-shell"])
        {
            eprintln!("{error:#}; Chromium does as well, but takes longer");
        }
        HEADLESS.find().unwrap_or_else(|| self.chromium.clone())
    }
}

/// Node with its package manager.
#[derive(Debug)]
pub(crate) struct Node {
    /// The program that runs JavaScript.
    pub(crate) node: PathBuf,
    /// The program that installs packages.
    pub(crate) npm: PathBuf,
}

impl Node {
    /// Finds Node; installs it when it is missing and this is a Debian of our own.
    pub(crate) fn ensure() -> Result<Self> {
        let find = || {
            Some(Self {
                node: NODE.find()?,
                npm: NPM.find()?,
            })
        };
        let found = ensure(find, &["nodejs", "npm"], "Node 18 or newer with npm")?;
        let output = Command::new(&found.node)
            .arg("--version")
            .output()
            .with_context(|| format!("cannot run {}", found.node.display()))?;
        let version = String::from_utf8_lossy(&output.stdout).trim().to_owned();
        if major(&version).is_none_or(|major| major < NODE_MAJOR) {
            bail!(
                "{} is Node {version:?}: the page tests need {NODE_MAJOR} or newer",
                found.node.display()
            );
        }
        Ok(found)
    }
}

/// The first number of a version such as `v20.1.0`.
fn major(version: &str) -> Option<u32> {
    version
        .trim_start_matches('v')
        .split('.')
        .next()?
        .parse()
        .ok()
}

fn ensure<T>(find: impl Fn() -> Option<T>, packages: &[&str], what: &str) -> Result<T> {
    if let Some(found) = find() {
        return Ok(found);
    }
    if is_own_debian() {
        install(packages)?;
        if let Some(found) = find() {
            return Ok(found);
        }
    }
    bail!(
        "the tests need {what}: install them, on Debian with `apt-get install {}`",
        packages.join(" ")
    )
}

fn install(packages: &[&str]) -> Result<()> {
    eprintln!("Installing {}", packages.join(" "));
    run(apt_get().arg("update"))?;
    run(apt_get()
        .args(["install", "--yes", "--no-install-recommends"])
        .args(packages))
}

fn apt_get() -> Command {
    let mut command = Command::new("apt-get");
    command.env("DEBIAN_FRONTEND", "noninteractive");
    command
}

/// Whether this is Debian and we may install packages.
fn is_own_debian() -> bool {
    let release = fs::read_to_string("/etc/os-release").unwrap_or_default();
    let user = Command::new("id").arg("-u").output();
    release.lines().any(|line| line == "ID=debian")
        && user.is_ok_and(|output| output.stdout.trim_ascii() == b"0")
        && which::which("apt-get").is_ok()
}

/// Adds rustfmt and clippy to the toolchain when they are not there.
pub(crate) fn ensure_components() -> Result<()> {
    for (component, subcommand) in [("rustfmt", "fmt"), ("clippy", "clippy")] {
        let there = Command::new("cargo")
            .args([subcommand, "--version"])
            .output()
            .is_ok_and(|output| output.status.success());
        if there {
            continue;
        }
        eprintln!("Adding {component} to the toolchain");
        match Command::new("rustup")
            .args(["component", "add", component])
            .status()
        {
            Ok(status) if status.success() => {}
            Ok(_) => bail!("`rustup component add {component}` failed"),
            Err(_) => bail!("`cargo {subcommand}` is missing: install {component}"),
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_major_version_is_read() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("18.0.0-nightly"), Some(18));
        assert_eq!(major(""), None);
    }

    #[test]
    fn a_program_that_is_nowhere_is_not_found() {
        let program = Program {
            variable: "RECALESCE_NO_SUCH_VARIABLE",
            names: &["recalesce-no-such-program"],
            places: &["/recalesce/no/such/place"],
        };
        assert_eq!(program.find(), None);
    }
}
