//! `cargo xtask serve` and `cargo xtask dist`.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;
use std::thread;
use std::time::{Duration, SystemTime};

use anyhow::Result;

use crate::budget::Weights;
use crate::bundle::Bundle;
use crate::compress::Effort;
use crate::files;
use crate::http;
use crate::live::Live;
use crate::project::Project;
use crate::site::{self, Site};
use crate::wasm::{self, Build};

/// What the page is made of.
const SOURCES: [&str; 6] = [
    "src",
    "style",
    "public",
    "index.html",
    "Cargo.toml",
    "Cargo.lock",
];

/// Builds the page for publishing into `dist/`.
pub(crate) fn dist(project: &Project) -> Result<()> {
    let dir = project.path("dist");
    publish(project, &dir)?;
    eprintln!(
        "The page is in {}: any static host can serve it",
        dir.display()
    );
    Ok(())
}

/// Builds the page as it is published into a directory.
pub(crate) fn publish(project: &Project, dir: &Path) -> Result<()> {
    let bindings = wasm::build(project, Build::Release)?;
    let bundle = Bundle::assemble(project, &bindings)?;
    bundle.write(dir, Effort::Best)?;
    eprint!("Loaded with the page, gzip:\n{}", Weights::of(&bundle)?);
    Ok(())
}

/// Builds the page and serves it until the program is stopped.
pub(crate) fn serve(project: &Project, port: u16, open: bool, watch: bool) -> Result<()> {
    // A taken port shows now, not after minutes of compiling.
    let listener = http::listen(port)?;
    let build = if watch { Build::Quick } else { Build::Release };
    let dir = project.path("dist");
    let mut seen = snapshot(project)?;
    lay_out(project, build, &dir)?;

    let live = watch.then(|| Arc::new(Live::default()));
    let site = Site {
        dir: dir.clone(),
        prefix: "/".to_owned(),
        live: live.clone(),
    };
    let address = http::start(listener, move |request| {
        site::answer(std::slice::from_ref(&site), request)
    })?;
    let url = format!("http://{address}/");
    eprintln!();
    println!("Recalesce is at {url}   (Ctrl-C stops it)");
    if open && let Err(error) = open::that_detached(&url) {
        eprintln!("No browser could be opened ({error}): open the address yourself");
    }

    let Some(live) = live else {
        loop {
            thread::park();
        }
    };
    loop {
        thread::sleep(Duration::from_millis(400));
        let now = snapshot(project)?;
        if now != seen {
            seen = now;
            match lay_out(project, build, &dir) {
                Ok(()) => {
                    live.changed();
                    eprintln!("The page is new");
                }
                Err(error) => eprintln!("{error:#}\nThe page stays as it was"),
            }
        }
    }
}

fn lay_out(project: &Project, build: Build, dir: &Path) -> Result<()> {
    let bindings = wasm::build(project, build)?;
    Bundle::assemble(project, &bindings)?.write(dir, Effort::Quick)
}

/// When each source file was last changed.
fn snapshot(project: &Project) -> Result<BTreeMap<String, Option<SystemTime>>> {
    let mut files = BTreeMap::new();
    for source in SOURCES {
        let path = project.path(source);
        let names = if path.is_dir() {
            let below = files::below(&path)?;
            below
                .iter()
                .map(|name| format!("{source}/{name}"))
                .collect()
        } else {
            vec![source.to_owned()]
        };
        for name in names {
            let changed = fs::metadata(project.path(&name)).and_then(|file| file.modified());
            files.insert(name, changed.ok());
        }
    }
    Ok(files)
}
