//! The house rules that a compiler does not hold: which room may import which, and who may speak
//! to the browser.
#![cfg(not(target_arch = "wasm32"))]

use std::fs;
use std::path::{Path, PathBuf};

/// Rooms from the ground up: a room may import itself and what stands before it. Those of physics, to
/// hardness, are a package of their own.
const ROOMS: [&str; 15] = [
    "numeric",
    "units",
    "steel",
    "sources",
    "phases",
    "soak",
    "heat",
    "transform",
    "hardness",
    "route",
    "advise",
    "save",
    "teach",
    "terminal",
    "chart",
];

/// Crates that only the page may name.
const BROWSER: [&str; 5] = ["leptos", "web_sys", "js_sys", "gloo_", "idb::"];

fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    let mut entries: Vec<_> = fs::read_dir(folder)
        .expect("a folder of the source")
        .map(|entry| entry.expect("an entry").path())
        .collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

fn sources() -> Vec<(PathBuf, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    rust_files(&root, &mut files);
    files
        .into_iter()
        .map(|path| {
            let text = fs::read_to_string(&path).expect("a source file");
            let short = path.strip_prefix(&root).expect("below src").to_path_buf();
            (short, text)
        })
        .collect()
}

fn room_of(path: &Path) -> Option<usize> {
    let path = path.strip_prefix("physics").unwrap_or(path);
    let first = path.components().next()?.as_os_str().to_str()?;
    ROOMS
        .iter()
        .position(|room| *room == first.trim_end_matches(".rs"))
}

#[test]
fn imports_point_one_way() {
    let mut wrong = Vec::new();
    for (path, text) in sources() {
        let Some(own) = room_of(&path) else { continue };
        for line in text.lines() {
            for mention in line.split("crate::").skip(1) {
                let name: String = mention
                    .chars()
                    .take_while(|c| c.is_ascii_alphanumeric() || *c == '_')
                    .collect();
                if let Some(other) = ROOMS.iter().position(|room| *room == name)
                    && other > own
                {
                    wrong.push(format!("{}: {}", path.display(), line.trim()));
                }
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "imports that point back:\n{}",
        wrong.join("\n")
    );
}

#[test]
fn only_the_page_speaks_to_the_browser() {
    let mut wrong = Vec::new();
    for (path, text) in sources() {
        if path.starts_with("app") {
            continue;
        }
        for line in text
            .lines()
            .filter(|line| !line.trim_start().starts_with("//"))
        {
            if BROWSER.iter().any(|name| line.contains(name)) {
                wrong.push(format!("{}: {}", path.display(), line.trim()));
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "browser crates outside the page:\n{}",
        wrong.join("\n")
    );
}

#[test]
fn files_can_be_held_in_the_head() {
    let long: Vec<_> = sources()
        .into_iter()
        .filter(|(_, text)| text.lines().count() > 600)
        .map(|(path, text)| format!("{}: {} lines", path.display(), text.lines().count()))
        .collect();
    assert!(
        long.is_empty(),
        "files that want to be two:\n{}",
        long.join("\n")
    );
}
