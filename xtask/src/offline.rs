//! What the service worker of the page keeps: one version, file by file.

use anyhow::{Result, bail};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};

use crate::files;

/// The service worker: at the top, because it serves what lies below it.
pub(crate) const WORKER: &str = "sw.js";
/// The page stands for its directory: a host may send whoever asks for its file there.
const PAGE: &str = "./";

/// Writes the version and its files, with their check sums as browsers compare them, into the script
/// of the service worker.
pub(crate) fn fill<'a>(
    script: &str,
    kept: impl Iterator<Item = (&'a str, &'a [u8])>,
) -> Result<String> {
    let mut sums = Map::new();
    for (path, content) in kept {
        let address = if path == "index.html" { PAGE } else { path };
        let sum = STANDARD.encode(Sha256::digest(content));
        sums.insert(address.to_owned(), Value::String(format!("sha256-{sum}")));
    }
    let sums = Value::Object(sums).to_string();
    // Another worker makes another version of the same files.
    let version = files::hashed_name("", format!("{script}{sums}").as_bytes());
    let mut filled = script.to_owned();
    for (place, text) in [
        (
            "\"{version}\"",
            Value::from(version.trim_matches('-')).to_string(),
        ),
        ("\"{files}\"", sums),
    ] {
        if filled.matches(place).count() != 1 {
            bail!("{WORKER} has not one place for {place}");
        }
        filled = filled.replace(place, &text);
    }
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SCRIPT: &str = r#"const VERSION = "{version}", FILES = "{files}";"#;

    #[test]
    fn files_stand_with_their_check_sums() {
        let kept: [(&str, &[u8]); 2] = [("assets/a.js", b"abc"), ("index.html", b"")];
        let filled = fill(SCRIPT, kept.into_iter()).unwrap();
        // SHA-256 of "abc" and of nothing, FIPS 180-4 examples, in base64.
        assert!(filled.ends_with(concat!(
            r#"FILES = {"./":"sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=","#,
            r#""assets/a.js":"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="};"#
        )));
    }

    #[test]
    fn the_version_follows_files_and_script() {
        let version = |script: &str, content: &[u8]| {
            let filled = fill(script, [("a", content)].into_iter()).unwrap();
            filled.split('"').nth(1).unwrap().to_owned()
        };
        let first = version(SCRIPT, b"1");
        assert_eq!(first.len(), 16);
        assert_eq!(first, version(SCRIPT, b"1"));
        assert_ne!(first, version(SCRIPT, b"2"));
        assert_ne!(first, version(&format!("{SCRIPT} "), b"1"));
    }

    #[test]
    fn a_script_without_its_places_is_an_error() {
        assert!(fill("const VERSION = 1;", std::iter::empty()).is_err());
    }
}
