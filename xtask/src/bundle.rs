//! The page as a set of files for any static host.
//!
//! Everything that the page loads lies in `assets/` under a name that changes with its content;
//! all addresses are relative, so the page works below any path.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};

use crate::compress::{self, Effort};
use crate::files;
use crate::offline;
use crate::project::Project;
use crate::style::{self, When};
use crate::wasm::Bindings;

/// The directory of the files whose names change with their content.
pub(crate) const ASSETS: &str = "assets";
/// The directory within it of the parts of the program that are loaded when they are opened.
const PARTS: &str = "parts";

/// The files of the page, by path.
#[derive(Debug, Default)]
pub(crate) struct Bundle {
    files: BTreeMap<String, Vec<u8>>,
}

impl Bundle {
    /// Lays out `index.html`, `style/`, `public/` and the compiled program.
    pub(crate) fn assemble(project: &Project, bindings: &Bindings) -> Result<Self> {
        let mut public = BTreeMap::new();
        for path in files::below(&project.path("public"))? {
            let content = fs::read(project.path("public").join(&path))?;
            public.insert(path, content);
        }
        let mut sheets = BTreeMap::new();
        for path in files::below(&project.path("style"))? {
            if path.ends_with(".css") {
                let css = fs::read_to_string(project.path("style").join(&path))?;
                sheets.insert(path, css);
            }
        }
        let index = fs::read_to_string(project.path("index.html"))
            .with_context(|| format!("cannot read {}", project.path("index.html").display()))?;
        assemble(&index, &sheets, &public, bindings)
    }

    /// Writes the files with their compressed forms, and removes what was there before.
    ///
    /// The page itself is written last, but for the worker that keeps it: until then the old one stands
    /// with all that it needs.
    pub(crate) fn write(&self, dir: &Path, effort: Effort) -> Result<()> {
        let mut written = BTreeSet::new();
        let mut in_order: Vec<_> = self.files.iter().collect();
        in_order.sort_by_key(|(path, _)| match path.as_str() {
            "index.html" => 1,
            offline::WORKER => 2,
            _ => 0,
        });
        for (path, content) in in_order {
            let mut forms = compress::forms(path, content, effort)?;
            forms.insert(0, (path.clone(), content.clone()));
            for (path, content) in forms {
                let target = dir.join(&path);
                if let Some(parent) = target.parent() {
                    fs::create_dir_all(parent)?;
                }
                fs::write(&target, content)
                    .with_context(|| format!("cannot write {}", target.display()))?;
                written.insert(path);
            }
        }
        for path in files::below(dir)?.difference(&written) {
            fs::remove_file(dir.join(path))?;
        }
        Ok(())
    }

    /// Path and content of each file that a browser loads: with the page, when something is opened, or
    /// when the page is kept for later; the others only lie beside it.
    pub(crate) fn loaded(&self) -> impl Iterator<Item = (&str, &[u8])> {
        loaded(&self.files)
    }
}

fn loaded(files: &BTreeMap<String, Vec<u8>>) -> impl Iterator<Item = (&str, &[u8])> {
    files
        .iter()
        .map(|(path, content)| (path.as_str(), content.as_slice()))
        .filter(|(path, _)| !path.ends_with(".txt"))
}

fn assemble(
    index: &str,
    sheets: &BTreeMap<String, String>,
    public: &BTreeMap<String, Vec<u8>>,
    bindings: &Bindings,
) -> Result<Bundle> {
    let mut files = BTreeMap::new();
    // The script names the parts as they are called now: it never loads those of another version.
    let mut script = bindings.script.clone();
    for (name, content) in &bindings.parts {
        let named = format!("\"./{name}\"");
        if !script.contains(&named) {
            bail!("the script does not name the part {name}");
        }
        let hashed = format!("{PARTS}/{}", files::hashed_name(name, content));
        script = script.replace(&named, &format!("\"./{hashed}\""));
        files.insert(format!("{ASSETS}/{hashed}"), content.clone());
    }
    let mut add = |name: &str, content: &[u8]| {
        let hashed = files::hashed_name(name, content);
        files.insert(format!("{ASSETS}/{hashed}"), content.to_vec());
        hashed
    };
    // What the page or its style names moves to the assets; the rest keeps its place.
    let mut named = BTreeSet::new();

    let mut join = |when| {
        style::join(sheets, when, |path| {
            let public_path = path.strip_prefix("public/");
            match public_path.and_then(|path| public.get_key_value(path)) {
                Some((path, content)) => {
                    named.insert(path.as_str());
                    Ok(add(path, content))
                }
                None => bail!("the style names {path}, which is not in public/"),
            }
        })
    };
    let (first, later) = (join(When::First)?, join(When::Later)?);
    let style = add("page.css", first.as_bytes());
    let later_style = add("later.css", later.as_bytes());
    let script = add("recalesce.js", script.as_bytes());
    let wasm = add("recalesce.wasm", &bindings.wasm);
    let page = fill(index, |name| {
        let hashed = match name {
            "style" => style.clone(),
            "later-style" => later_style.clone(),
            "script" => script.clone(),
            "wasm" => wasm.clone(),
            path => match public.get_key_value(path) {
                Some((path, content)) => {
                    named.insert(path.as_str());
                    add(path, content)
                }
                None => bail!("index.html names {{{path}}}, which is not in public/"),
            },
        };
        Ok(format!("{ASSETS}/{hashed}"))
    })?;

    for (path, content) in &bindings.snippets {
        files.insert(format!("{ASSETS}/{path}"), content.clone());
    }
    for (path, content) in public {
        if !named.contains(path.as_str()) {
            files.insert(path.clone(), content.clone());
        }
    }
    files.insert("index.html".to_owned(), page.into_bytes());
    if let Some(worker) = files.remove(offline::WORKER) {
        let script = String::from_utf8(worker).context("the service worker is not text")?;
        let filled = offline::fill(&script, loaded(&files))?;
        files.insert(offline::WORKER.to_owned(), filled.into_bytes());
    }
    Ok(Bundle { files })
}

/// Replaces each `{name}`.
fn fill(template: &str, mut address: impl FnMut(&str) -> Result<String>) -> Result<String> {
    let mut filled = String::with_capacity(template.len());
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        let Some((name, after)) = after.split_once('}') else {
            bail!("index.html: a {{ is not closed");
        };
        filled.push_str(before);
        filled.push_str(&address(name)?);
        rest = after;
    }
    filled.push_str(rest);
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bindings() -> Bindings {
        Bindings {
            script: "import './snippets/a.js'; load(\"./split_card.wasm\")".to_owned(),
            wasm: b"\0asm".to_vec(),
            parts: BTreeMap::from([("split_card.wasm".to_owned(), b"\0asm part".to_vec())]),
            snippets: BTreeMap::from([("snippets/a.js".to_owned(), b"//".to_vec())]),
        }
    }

    fn public() -> BTreeMap<String, Vec<u8>> {
        BTreeMap::from([
            ("boot.js".to_owned(), b"boot".to_vec()),
            ("fonts/OFL.txt".to_owned(), b"licence".to_vec()),
            ("fonts/archivo.woff2".to_owned(), b"font".to_vec()),
        ])
    }

    fn sheets() -> BTreeMap<String, String> {
        BTreeMap::from([(
            "tokens.css".to_owned(),
            "url(../public/fonts/archivo.woff2)".to_owned(),
        )])
    }

    const INDEX: &str = r#"<link href="{style}"><script src="{boot.js}" data-script="{script}" data-wasm="{wasm}">"#;

    #[test]
    fn every_address_of_the_page_is_relative_and_leads_to_a_file() {
        let bundle = assemble(INDEX, &sheets(), &public(), &bindings()).unwrap();
        let page = String::from_utf8(bundle.files["index.html"].clone()).unwrap();
        let addresses: Vec<&str> = page
            .split('"')
            .filter(|part| part.starts_with("assets/"))
            .collect();
        assert_eq!(addresses.len(), 4);
        for address in addresses {
            assert!(bundle.files.contains_key(address), "{address}");
        }
    }

    #[test]
    fn the_font_lies_beside_the_style_that_names_it() {
        let bundle = assemble(INDEX, &sheets(), &public(), &bindings()).unwrap();
        let (_, css) = bundle
            .files
            .iter()
            .find(|(path, _)| path.starts_with("assets/page-") && path.ends_with(".css"))
            .unwrap();
        let css = std::str::from_utf8(css).unwrap();
        let font = css.trim().strip_prefix("url(").unwrap();
        let font = font.strip_suffix(')').unwrap();
        assert!(bundle.files.contains_key(&format!("{ASSETS}/{font}")));
        assert!(!bundle.files.contains_key("fonts/archivo.woff2"));
    }

    #[test]
    fn the_script_names_the_parts_of_its_own_version() {
        let bundle = assemble(INDEX, &sheets(), &public(), &bindings()).unwrap();
        let script =
            |path: &&String| path.starts_with("assets/recalesce-") && path.ends_with(".js");
        let script = &bundle.files[bundle.files.keys().find(script).unwrap()];
        let script = std::str::from_utf8(script).unwrap();
        let named = script.split('"').nth(1).unwrap();
        let part = named.strip_prefix("./").unwrap();
        assert_eq!(bundle.files[&format!("{ASSETS}/{part}")], b"\0asm part");
        assert!(part.starts_with("parts/split_card-"), "{part}");
    }

    #[test]
    fn a_part_that_the_script_does_not_name_is_an_error() {
        let mut bindings = bindings();
        bindings.script = String::new();
        assert!(assemble(INDEX, &sheets(), &public(), &bindings).is_err());
    }

    #[test]
    fn the_worker_keeps_what_the_page_loads_and_not_itself() {
        let mut public = public();
        let script = br#"const VERSION = "{version}", FILES = "{files}";"#;
        public.insert("sw.js".to_owned(), script.to_vec());
        let bundle = assemble(INDEX, &sheets(), &public, &bindings()).unwrap();
        let worker = std::str::from_utf8(&bundle.files["sw.js"]).unwrap();
        let (_, kept) = worker.split_once("FILES = ").unwrap();
        let kept: BTreeMap<String, String> =
            serde_json::from_str(kept.trim_end_matches(';')).unwrap();
        let files = bundle.files.keys().filter(|path| *path != "sw.js");
        for path in files.filter(|path| *path != "fonts/OFL.txt") {
            let path = if path == "index.html" { "./" } else { path };
            assert!(kept.contains_key(path), "{path}");
        }
        assert!(!kept.contains_key("sw.js") && !kept.contains_key("fonts/OFL.txt"));
    }

    #[test]
    fn files_that_nothing_names_keep_their_place() {
        let bundle = assemble(INDEX, &sheets(), &public(), &bindings()).unwrap();
        assert_eq!(bundle.files["fonts/OFL.txt"], b"licence");
        assert_eq!(bundle.files["assets/snippets/a.js"], b"//");
    }

    #[test]
    fn a_name_that_is_not_there_is_an_error() {
        for index in ["{favicon.ico}", "{unclosed"] {
            assert!(assemble(index, &sheets(), &public(), &bindings()).is_err());
        }
        let empty = BTreeMap::new();
        assert!(assemble("", &sheets(), &empty, &bindings()).is_err());
    }
}
