//! The house rules that a compiler does not hold: which room may import which, and who may speak
//! to the browser.
#![cfg(not(target_arch = "wasm32"))]

use std::collections::HashMap;
use std::fs;
use std::path::{Path, PathBuf};

/// Rooms from the ground up: a room may import itself and what stands before it. Those of physics, to
/// hardness, are a package of their own.
const ROOMS: [&str; 16] = [
    "texts",
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

/// The string literals of a source, each with what stands before it; comments are left out.
fn literals(source: &str) -> Vec<(&str, &str)> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(rest) = source.get(at..).filter(|rest| !rest.is_empty()) {
        let skip_to = |end: &str| rest.find(end).map_or(source.len(), |i| at + i);
        let raw = rest.strip_prefix('r').map(|r| r.trim_start_matches('#'));
        if rest.starts_with("//") {
            at = skip_to("\n");
        } else if let Some(inside) = raw.filter(|r| r.starts_with('"')) {
            let begin = at + rest.len() - inside.len();
            let end = format!("\"{}", "#".repeat(begin - at - 1));
            let length = source[begin + 1..].find(&end).expect("a raw text ends");
            found.push((&source[..at], &source[begin + 1..][..length]));
            at = begin + 1 + length + end.len();
        } else if let Some(inside) = rest.strip_prefix('"') {
            let mut escaped = false;
            let length = inside
                .find(|c| {
                    let ends = c == '"' && !escaped;
                    escaped = c == '\\' && !escaped;
                    ends
                })
                .expect("a text ends");
            found.push((&source[..at], &inside[..length]));
            at += length + 2;
        } else if rest.starts_with("'\"'") || rest.starts_with("'\\") {
            // A letter that is no end of a text.
            at += 2 + rest[2..].find('\'').map_or(0, |i| i + 1);
        } else {
            at += rest.chars().next().map_or(1, char::len_utf8);
        }
    }
    found
}

/// Words of a text: what has two letters and more between spaces, but for what is filled in.
fn words(text: &str) -> usize {
    let mut plain = String::new();
    let mut depth = 0_usize;
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            _ if depth == 0 => plain.push(c),
            _ => {}
        }
    }
    plain
        .split_whitespace()
        .filter(|word| {
            let letters = word.split(|c: char| !c.is_alphabetic());
            letters.map(|run| run.chars().count()).max() >= Some(2)
        })
        .count()
}

/// What stands before a text that nobody reads: classes, selectors, reasons of lints, what is looked for in
/// a text.
const BEFORE_NO_WORDS: [&str; 6] = [
    "class=",
    "class=format!(",
    "query_selector(",
    "reason =",
    "strip_prefix(",
    "split_once(",
];

/// Texts of that kind that stand elsewhere: classes by what is shown, typefaces, attributes of a drawing, a
/// media query, what a thread says to the page, cells that are words of a file's format.
const NO_WORDS: [&str; 10] = [
    "say holds",
    "say narrow",
    "say misses",
    "Archivo, \\\"Liberation Sans\\\", \\\"Helvetica Neue\\\", Arial, sans-serif",
    " stroke=\\\"#{r:02x}{g:02x}{b:02x}\\\" stroke-width=\\\"{width}\\\" paint-order=\\\"stroke\\\"",
    "{} semi-condensed {}px {}",
    "(resolution: {}dppx)",
    "gave up",
    "blade: edge; spine; height",
    "own quenchant",
];

/// Where texts of two words and more stand beside what they name: publications with their titles, origins of
/// published parameters, and the terminal program, which is not the page.
const BESIDE_WHAT_THEY_NAME: [&str; 3] = [
    "physics/sources",
    "physics/phases/gibbs/parameters",
    "terminal",
];

/// Whether a file holds tests alone.
fn is_test(path: &Path) -> bool {
    let name = path.file_stem().and_then(|name| name.to_str());
    name.is_some_and(|name| name == "tests" || name.ends_with("_tests"))
        || path.components().any(|part| part.as_os_str() == "tests")
}

/// A source as far as its tests, which stand last.
fn without_tests(source: &str) -> &str {
    let mut tests = source.match_indices("#[cfg(test)]\nmod ");
    let begin = tests.find(|(at, _)| {
        source[*at..]
            .lines()
            .nth(1)
            .is_some_and(|line| line.ends_with('{'))
    });
    begin.map_or(source, |(at, _)| &source[..at])
}

#[test]
fn texts_are_in_one_place() {
    let mut wrong = Vec::new();
    for (path, text) in sources() {
        if path.starts_with("texts")
            || is_test(&path)
            || BESIDE_WHAT_THEY_NAME
                .iter()
                .any(|room| path.starts_with(room))
        {
            continue;
        }
        for (before, literal) in literals(without_tests(&text)) {
            let before = before.trim_end();
            let is_read = words(literal) >= 2
                && !literal.trim_start().starts_with('<')
                && !NO_WORDS.contains(&literal)
                && !BEFORE_NO_WORDS.iter().any(|kind| before.ends_with(kind));
            if is_read {
                let line = before.lines().count();
                wrong.push(format!("{}:{line}: {literal}", path.display()));
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} words outside src/texts:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

/// The names of a source, in its program and not in comments or tests, and how often each stands there.
fn names(source: &str) -> HashMap<&str, usize> {
    let is_part = |c: char| c.is_alphanumeric() || c == '_';
    let mut counts = HashMap::new();
    let lines = without_tests(source).lines();
    for line in lines.filter(|line| !line.trim_start().starts_with("//")) {
        for name in line.split(|c| !is_part(c)) {
            *counts.entry(name).or_default() += 1;
        }
    }
    counts
}

/// The module of a file of texts: what a room that says one of them names as well.
fn module_of(path: &Path) -> &str {
    let stem = path.file_stem().and_then(|stem| stem.to_str());
    let folder = path.parent().and_then(Path::file_name);
    stem.filter(|stem| *stem != "mod")
        .or_else(|| folder?.to_str())
        .expect("a name in Unicode")
}

#[test]
fn every_text_is_said() {
    let all = sources();
    let named: Vec<_> = all.iter().map(|(path, text)| (path, names(text))).collect();
    let mut unsaid = Vec::new();
    for (path, text) in all.iter().filter(|(path, _)| path.starts_with("texts")) {
        let module = module_of(path);
        for line in text.lines().map(str::trim_start) {
            let kinds = ["pub const ", "pub fn ", "pub static "];
            let rest = kinds.iter().find_map(|kind| line.strip_prefix(kind));
            let Some(rest) = rest else { continue };
            let name = rest.split([':', '(', '<']).next().unwrap_or_default();
            let is_said = named.iter().any(|(other, names)| {
                let times = names.get(name).copied().unwrap_or_default();
                if *other == path {
                    times > 1
                } else {
                    times > 0 && names.contains_key(module)
                }
            });
            if !is_said {
                unsaid.push(format!("{}: {name}", path.display()));
            }
        }
    }
    assert!(
        unsaid.is_empty(),
        "texts that nothing says:\n{}",
        unsaid.join("\n")
    );
}

#[test]
fn words_are_found_where_they_stand() {
    let source = "// \"a comment here\"\nlet a = \"two words\"; 'x'; '\"'; '\\''; \
                  let b = r#\"raw \"quoted\" text\"#; view! { <p class=\"big bold\">\"It \\\" is {n} so\"</p> }";
    let found: Vec<_> = literals(source).into_iter().map(|(_, text)| text).collect();
    assert_eq!(
        found,
        [
            "two words",
            "raw \"quoted\" text",
            "big bold",
            "It \\\" is {n} so"
        ]
    );
    assert_eq!(words("{a} b.c 12 \u{b1} one {two three}"), 1);
    assert_eq!(words("At {place}: so far"), 3);
}
