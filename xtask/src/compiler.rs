//! The compiler of the page, with an exception: cargo gives a package another optimisation, but not other
//! flags. The page is to be small, and so little is copied into its callers (`.cargo/config.toml`); the
//! physics is to be fast.

use std::env::{self, consts::EXE_SUFFIX};
use std::ffi::OsString;
use std::fs;
use std::iter;
use std::path::Path;
use std::process::{Command, ExitCode};

use anyhow::{Context, Result};

/// Set where cargo calls this program in place of the compiler.
const CALLED: &str = "RECALESCE_CALLED_FOR_RUSTC";

/// The flags that say how much is copied in begin so.
const COPIED_IN: &str = "-inline";
/// How much it is in the physics.
const IN_PHYSICS: u32 = 110;

/// Has cargo call a copy of this program, in a directory, for the packages of the project. What cargo takes
/// for compiled already goes by the name of the program it calls: it tells how much is copied in. Cargo
/// finds it by its bare name, as the compiled names take in what cargo is told: with its path, a program
/// would come out otherwise in every place that the project is checked out to.
pub(crate) fn stand_in<'a>(cargo: &'a mut Command, dir: &Path) -> Result<&'a mut Command> {
    let name = format!("recalesce-rustc-{IN_PHYSICS}");
    let copy = dir.join(format!("{name}{EXE_SUFFIX}"));
    fs::create_dir_all(dir)?;
    // Of a program that was built anew meanwhile there is nothing to copy.
    let fresh = copy.with_extension("new");
    if env::current_exe().is_ok_and(|this| fs::copy(this, &fresh).is_ok()) {
        fs::rename(fresh, &copy)?;
    }
    let path = env::var_os("PATH").unwrap_or_default();
    let path = env::join_paths(iter::once(dir.to_path_buf()).chain(env::split_paths(&path)))?;
    Ok(cargo
        .env("RUSTC_WORKSPACE_WRAPPER", name)
        .env("PATH", path)
        .env(CALLED, "1"))
}

/// Compiles, where cargo has called for that.
pub(crate) fn called() -> Option<Result<ExitCode>> {
    env::var_os(CALLED).map(|_| compile(env::args_os().skip(1)))
}

/// Calls the compiler, which is the first argument.
fn compile(mut arguments: impl Iterator<Item = OsString>) -> Result<ExitCode> {
    let rustc = arguments.next().context("no compiler is named")?;
    let status = Command::new(&rustc)
        .args(flags(arguments.collect()))
        .status()
        .with_context(|| format!("cannot run {}", rustc.display()))?;
    Ok(if status.success() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

fn flags(given: Vec<OsString>) -> Vec<OsString> {
    let is_physics = given
        .windows(2)
        .any(|pair| pair[0] == "--crate-name" && pair[1] == "recalesce_physics");
    if !is_physics {
        return given;
    }
    let of_llvm = |flag: &OsString| Some(flag.to_str()?.strip_prefix("llvm-args=")?.to_owned());
    let own = |option: &str| match option.split_once('=') {
        Some((name, _)) if name.starts_with(COPIED_IN) => format!("{name}={IN_PHYSICS}"),
        _ => option.to_owned(),
    };
    let flag_of = |flag: OsString| match of_llvm(&flag) {
        Some(options) => {
            let own: Vec<String> = options.split(' ').map(own).collect();
            format!("llvm-args={}", own.join(" ")).into()
        }
        None => flag,
    };
    given.into_iter().map(flag_of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_physics_alone_has_more_copied_in() {
        let of = |package: &str| {
            let given = [
                "--crate-name",
                package,
                "-C",
                "llvm-args=-inline-threshold=14 -inlinehint-threshold=14 -unroll-runtime=false",
                "-C",
                "opt-level=2",
            ];
            flags(given.map(OsString::from).to_vec())
        };
        assert_eq!(
            of("recalesce_physics"),
            [
                "--crate-name",
                "recalesce_physics",
                "-C",
                "llvm-args=-inline-threshold=110 -inlinehint-threshold=110 -unroll-runtime=false",
                "-C",
                "opt-level=2",
            ]
        );
        assert!(
            of("recalesce_page")[3]
                .to_string_lossy()
                .contains("-inline-threshold=14")
        );
    }
}
