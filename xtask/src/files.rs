//! Files and their names.

use std::collections::BTreeSet;
use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use anyhow::{Context, Result, anyhow};
use sha2::{Digest, Sha256};

/// All files below a directory as paths relative to it, with `/` between the parts, in order.
pub(crate) fn below(dir: &Path) -> Result<BTreeSet<String>> {
    let mut found = BTreeSet::new();
    collect(dir, "", &mut found).with_context(|| format!("cannot read {}", dir.display()))?;
    Ok(found)
}

fn collect(dir: &Path, prefix: &str, found: &mut BTreeSet<String>) -> Result<()> {
    for entry in fs::read_dir(dir)? {
        let entry = entry?;
        let name = entry
            .file_name()
            .into_string()
            .map_err(|name| anyhow!("the name {} is not Unicode", name.display()))?;
        let path = format!("{prefix}{name}");
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{path}/"), found)?;
        } else {
            found.insert(path);
        }
    }
    Ok(())
}

/// Removes a directory and all in it; one that is not there is as good as removed.
pub(crate) fn remove_dir(dir: &Path) -> Result<()> {
    match fs::remove_dir_all(dir) {
        Err(error) if error.kind() != ErrorKind::NotFound => {
            Err(error).with_context(|| format!("cannot remove {}", dir.display()))
        }
        _ => Ok(()),
    }
}

/// A file name that changes when the content does, so that it may be cached for ever.
///
/// The directories of `path` are dropped: `fonts/archivo.woff2` becomes `archivo-0123456789abcdef.woff2`.
pub(crate) fn hashed_name(path: &str, content: &[u8]) -> String {
    let digest = Sha256::digest(content);
    let hash: String = digest[..8]
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let name = path.rsplit('/').next().unwrap_or(path);
    match name.rsplit_once('.') {
        Some((stem, extension)) => format!("{stem}-{hash}.{extension}"),
        None => format!("{name}-{hash}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hashed_name_keeps_stem_and_extension() {
        // SHA-256 of "abc", FIPS 180-4 example: ba7816bf 8f01cfea ...
        assert_eq!(
            hashed_name("fonts/archivo.woff2", b"abc"),
            "archivo-ba7816bf8f01cfea.woff2"
        );
        assert_eq!(hashed_name("LICENSE", b"abc"), "LICENSE-ba7816bf8f01cfea");
    }

    #[test]
    fn a_hashed_name_follows_the_content() {
        assert_ne!(hashed_name("a.js", b"1"), hashed_name("a.js", b"2"));
    }
}
