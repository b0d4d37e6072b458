//! What the page loads before it answers, against what it may weigh.

use std::fmt;

use anyhow::{Result, bail};

use crate::bundle::Bundle;
use crate::compress;

/// A part of the page, by the endings of its files.
#[derive(Debug)]
struct Part {
    name: &'static str,
    endings: &'static [&'static str],
    /// The most that it may weigh compressed with gzip, bytes.
    limit: usize,
}

/// The parts with their limits. The aim is 600 kB together; the fields of the phase map, the table of
/// quenchants, the fits of a user's own, the end-quench bar, the steps before hardening and the logbook
/// (62 kB) brought the program above it. One part may gain what
/// another gives up.
const PARTS: [Part; 5] = [
    Part {
        name: "WebAssembly",
        endings: &["wasm"],
        limit: 880_000,
    },
    Part {
        name: "typeface",
        endings: &["woff2"],
        limit: 41_500,
    },
    Part {
        name: "JavaScript",
        endings: &["js"],
        limit: 13_900,
    },
    Part {
        name: "style sheet",
        endings: &["css"],
        limit: 10_900,
    },
    Part {
        name: "document and icon",
        endings: &["html", "svg"],
        limit: 1_300,
    },
];

/// What the parts of a page weigh compressed with gzip, bytes, in the order of [`PARTS`].
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Weights([usize; PARTS.len()]);

impl Weights {
    /// Weighs what a browser loads: the document and all assets.
    pub(crate) fn of(bundle: &Bundle) -> Result<Self> {
        Self::of_files(bundle.loaded())
    }

    fn of_files<'a>(files: impl Iterator<Item = (&'a str, &'a [u8])>) -> Result<Self> {
        let mut weights = [0; PARTS.len()];
        for (path, content) in files {
            let ending = path.rsplit('.').next().unwrap_or_default();
            let part = PARTS.iter().position(|part| part.endings.contains(&ending));
            let Some(part) = part else {
                bail!("{path} is loaded with the page, but no part of the budget allows for it");
            };
            weights[part] += compress::gzip_size(path, content)?;
        }
        Ok(Self(weights))
    }

    /// Fails when a part weighs more than it may.
    pub(crate) fn check(&self) -> Result<()> {
        let over: Vec<String> = PARTS
            .iter()
            .zip(self.0)
            .filter(|(part, bytes)| *bytes > part.limit)
            .map(|(part, bytes)| {
                let limit = part.limit;
                format!(
                    "{} is {bytes} B with gzip, {} B over its limit of {limit} B",
                    part.name,
                    bytes - limit
                )
            })
            .collect();
        if !over.is_empty() {
            bail!("{}", over.join("; "));
        }
        Ok(())
    }
}

impl fmt::Display for Weights {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut line = |name: &str, bytes: usize, limit: usize| {
            writeln!(f, "  {name:<18}{bytes:>8} B of {limit} B")
        };
        for (part, bytes) in PARTS.iter().zip(self.0) {
            line(part.name, bytes, part.limit)?;
        }
        let limits = PARTS.iter().map(|part| part.limit).sum();
        line("together", self.0.iter().sum(), limits)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limits_together_do_not_grow_unseen() {
        assert_eq!(PARTS.iter().map(|part| part.limit).sum::<usize>(), 947_600);
    }

    #[test]
    fn each_file_counts_to_its_part_as_it_is_sent() {
        let repeated = b"austenite ".repeat(200);
        let files: [(&str, &[u8]); 3] = [
            ("assets/a.woff2", &repeated),
            ("assets/b.js", &repeated),
            ("assets/c.js", b"1"),
        ];
        let Weights([wasm, typeface, script, ..]) = Weights::of_files(files.into_iter()).unwrap();
        assert_eq!((wasm, typeface), (0, repeated.len()));
        assert!((2..100).contains(&script), "{script}");
    }

    #[test]
    fn a_part_over_its_limit_is_named() {
        let mut weights = Weights(PARTS.map(|part| part.limit));
        weights.check().unwrap();
        weights.0[1] += 7;
        let message = weights.check().unwrap_err().to_string();
        assert!(
            message.starts_with("typeface is 41507 B with gzip, 7 B over"),
            "{message}"
        );
    }

    #[test]
    fn a_kind_of_file_without_a_limit_is_an_error() {
        let files: [(&str, &[u8]); 1] = [("assets/photo.png", b"")];
        assert!(Weights::of_files(files.into_iter()).is_err());
    }
}
