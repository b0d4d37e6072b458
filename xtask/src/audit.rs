//! Whether anything is known against the packages that the project builds on. It asks a register on the
//! network, which changes from day to day: no test, but what comes before a release.

use anyhow::{Result, bail};

use crate::project::{Project, run};

/// Asks for the advisories on every package of `Cargo.lock`, and fails where there is one.
pub(crate) fn audit(project: &Project) -> Result<()> {
    let asked = project.cargo(["audit", "--version"]).output();
    if !asked.is_ok_and(|output| output.status.success()) {
        bail!("`cargo audit` is not there: install it with `cargo install cargo-audit --locked`");
    }
    run(&mut project.cargo(["audit"]))
}
