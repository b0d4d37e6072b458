//! The program taken apart: what the page needs at once, and the parts that it loads when they are
//! opened.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, anyhow, bail};
use wasm_split_cli_support::{Options, transform};

use crate::files;

/// Stands in the main program for the script that loads the parts.
const LOADER: &str = "./parts.js";
/// Stands in that script for the script of the main program.
const MAIN: &str = "./recalesce.js";

/// How the loader instantiates a part that it fetches, and how the main program is: that also works
/// where a host does not know the media type.
const INSTANTIATE: &str = "WebAssembly.instantiateStreaming(src, imports)";
const LOAD: &str = "__wbg_load(await src, imports)";

/// A program that has been taken apart.
#[derive(Debug)]
pub(crate) struct Apart {
    /// What the page needs at once, not bound to the browser yet.
    pub(crate) main: Vec<u8>,
    /// The parts, by the file names that the loader has for them.
    pub(crate) parts: BTreeMap<String, Vec<u8>>,
    /// The script that loads them.
    loader: String,
}

/// Takes a program apart that was linked with its relocations. `dir` is for the library's files.
pub(crate) fn apart(program: &Path, dir: &Path) -> Result<Apart> {
    files::remove_dir(dir)?;
    let input = fs::read(program)?;
    let main = dir.join("main.wasm");
    let mut options = Options::new(&input);
    options.output_dir = dir;
    options.main_out_path = &main;
    options.link_name = LOADER;
    options.main_module = MAIN;
    let split = transform(options)
        .map_err(|error| anyhow!("cannot take {} apart: {error}", program.display()))?;
    let mut parts = BTreeMap::new();
    for path in split.split_modules {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        parts.insert(name.into_owned(), fs::read(&path)?);
    }
    Ok(Apart {
        main: fs::read(main)?,
        parts,
        loader: fs::read_to_string(dir.join(LOADER))?,
    })
}

impl Apart {
    /// The script of the main program with the loader in it: one file less to wait for, and neither
    /// has to know the other's name, which changes with its content.
    pub(crate) fn with_loader(&self, script: &str) -> Result<String> {
        let own = self
            .loader
            .split_once(&format!("from \"{MAIN}\";\n"))
            .context("the loader of the parts does not import the program's script")?
            .1;
        let names: Vec<&str> = own
            .lines()
            .filter_map(|line| line.strip_prefix("export const ")?.split(' ').next())
            .collect();
        if !own.contains(INSTANTIATE) {
            bail!("the loader of the parts does not load them as expected");
        }
        let own = own
            .replace("export const ", "const ")
            .replace(INSTANTIATE, LOAD);
        let passed = format!("\"{LOADER}\": {{ {} }},", names.join(", "));
        // wasm-bindgen imports the loader as often as something is taken from it, and lists it as often
        // among what it passes to the program.
        let is_import = |line: &str| line.starts_with("import ") && line.contains(LOADER);
        let is_listed = |line: &str| line.trim_start().starts_with(&format!("\"{LOADER}\":"));
        if !script.lines().any(is_import) || !script.lines().any(is_listed) {
            bail!("the program's script does not pass the loader of the parts on");
        }
        let mut joined = String::with_capacity(script.len() + own.len());
        let mut is_passed = false;
        for line in script.lines().filter(|line| !is_import(line)) {
            if !is_listed(line) {
                joined.push_str(line);
            } else if !std::mem::replace(&mut is_passed, true) {
                joined.push_str(&passed);
            }
            joined.push('\n');
        }
        Ok(joined + &own)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SCRIPT: &str = r#"import * as import1 from "./parts.js"
import * as import2 from "./parts.js"
let wasm;
const imports = {
    "./parts.js": import1,
    "./parts.js": import2,
};
"#;

    const PARTS: &str = r#"import { initSync } from "./recalesce.js";
export const load_a = async () => (WebAssembly.instantiateStreaming(src, imports));
export const load_b = load_a;
"#;

    fn taken(loader: &str) -> Apart {
        Apart {
            main: Vec::new(),
            parts: BTreeMap::new(),
            loader: loader.to_owned(),
        }
    }

    #[test]
    fn the_loader_is_put_into_the_script() {
        assert_eq!(
            taken(PARTS).with_loader(SCRIPT).unwrap(),
            r#"let wasm;
const imports = {
"./parts.js": { load_a, load_b },

};
const load_a = async () => (__wbg_load(await src, imports));
const load_b = load_a;
"#
        );
    }

    #[test]
    fn scripts_of_another_form_are_an_error() {
        assert!(taken("").with_loader(SCRIPT).is_err());
        assert!(taken(PARTS).with_loader("let wasm;").is_err());
        let unlisted = "import * as import1 from './parts.js'\n";
        assert!(taken(PARTS).with_loader(unlisted).is_err());
    }
}
