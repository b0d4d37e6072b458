//! The builder: `cargo xtask serve`, `cargo xtask test`, `cargo xtask dist`.

use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

use crate::check::Step;
use crate::project::Project;

mod arrange;
mod audit;
mod budget;
mod bundle;
mod check;
mod compiler;
mod compress;
#[cfg(test)]
mod dependencies;
mod files;
mod http;
mod live;
mod offline;
mod project;
mod serve;
mod site;
mod split;
mod style;
mod tools;
mod wasm;

/// Builds, serves and tests Recalesce.
#[derive(Debug, Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Arguments {
    #[command(subcommand)]
    task: Task,
}

#[derive(Debug, Subcommand)]
enum Task {
    /// Build the page and serve it on this machine
    Serve {
        /// The port on 127.0.0.1
        #[arg(long, default_value_t = 8080)]
        port: u16,
        /// Open the page in the browser
        #[arg(long)]
        open: bool,
        /// Build again and reload the page when a file changes
        #[arg(long)]
        watch: bool,
    },
    /// Build the page into dist/, ready for any static host
    Dist,
    /// Test everything, or the named steps
    Test {
        /// The steps to run, in their own order
        #[arg(value_enum)]
        steps: Vec<Step>,
    },
    /// Print how far the models are from measured values
    Score,
    /// Measure speed, natively and in the page
    Bench,
    /// Ask the register of advisories what is known against the packages used; needs the network
    Audit,
}

fn main() -> ExitCode {
    let done = compiler::called()
        .unwrap_or_else(|| perform(Arguments::parse().task).map(|()| ExitCode::SUCCESS));
    match done {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn perform(task: Task) -> Result<()> {
    let project = Project::find()?;
    match task {
        Task::Serve { port, open, watch } => serve::serve(&project, port, open, watch),
        Task::Dist => serve::dist(&project),
        Task::Test { steps } => check::test(&project, &steps),
        Task::Score => check::score(&project),
        Task::Bench => check::bench(&project),
        Task::Audit => audit::audit(&project),
    }
}
