//! What the page loads before it answers, and what when something is opened, against what it may weigh.

use std::fmt;

use anyhow::{Result, bail};

use crate::bundle::Bundle;
use crate::compress;

/// A part of the page, by its files.
#[derive(Debug)]
struct Part {
    name: &'static str,
    /// How their paths begin.
    begins: &'static str,
    endings: &'static [&'static str],
    /// Loaded once the page has answered, or when something is opened before that.
    is_later: bool,
    /// The most that it may weigh compressed with gzip, bytes.
    limit: usize,
}

/// The parts with their limits; a file counts to the last that it fits. What is loaded before the page
/// answers is to stay below 600 kB together. One part may gain what another gives up.
const PARTS: [Part; 16] = [
    Part {
        name: "WebAssembly",
        begins: "",
        endings: &["wasm"],
        is_later: false,
        limit: 546_500,
    },
    Part {
        name: "typeface",
        begins: "",
        endings: &["woff2"],
        is_later: false,
        limit: 22_620,
    },
    Part {
        name: "JavaScript",
        begins: "",
        endings: &["js"],
        is_later: false,
        limit: 16_500,
    },
    Part {
        name: "style sheet",
        begins: "",
        endings: &["css"],
        is_later: false,
        limit: 8_430,
    },
    Part {
        name: "document and icon",
        begins: "",
        endings: &["html", "svg"],
        is_later: false,
        limit: 1_220,
    },
    Part {
        name: "decimal comma",
        begins: "assets/decimals",
        endings: &["js"],
        // Loaded at first, but only where it is wanted, beside the program that is far larger.
        is_later: true,
        limit: 1_700,
    },
    Part {
        name: "keeping the page",
        begins: "assets/offline",
        endings: &["js"],
        is_later: true,
        limit: 1_200,
    },
    Part {
        name: "service worker",
        begins: "sw",
        endings: &["js"],
        is_later: true,
        limit: 4_500,
    },
    Part {
        name: "installed icons",
        begins: "",
        endings: &["png", "webmanifest"],
        is_later: true,
        limit: 51_000,
    },
    Part {
        name: "later style sheet",
        begins: "assets/later",
        endings: &["css"],
        is_later: true,
        limit: 8_400,
    },
    Part {
        name: "panels",
        begins: "assets/parts/split_panels",
        endings: &["wasm"],
        is_later: true,
        limit: 281_000,
    },
    Part {
        name: "places",
        begins: "assets/parts/split_places",
        endings: &["wasm"],
        is_later: true,
        limit: 160_000,
    },
    Part {
        name: "deciding",
        begins: "assets/parts/split_decide",
        endings: &["wasm"],
        is_later: true,
        limit: 100_000,
    },
    Part {
        name: "experiments",
        begins: "assets/parts/split_lessons",
        endings: &["wasm"],
        is_later: true,
        limit: 78_000,
    },
    Part {
        name: "errands",
        begins: "assets/parts/split_errands",
        endings: &["wasm"],
        is_later: true,
        limit: 161_500,
    },
    Part {
        name: "shared by these",
        begins: "assets/parts/chunk_",
        endings: &["wasm"],
        is_later: true,
        limit: 255_300,
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
            let part = PARTS
                .iter()
                .rposition(|part| path.starts_with(part.begins) && part.endings.contains(&ending));
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

/// Limits together of what is loaded before the page answers.
fn limit_at_first() -> usize {
    let at_first = PARTS.iter().filter(|part| !part.is_later);
    at_first.map(|part| part.limit).sum()
}

impl fmt::Display for Weights {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let line = |f: &mut fmt::Formatter<'_>, name: &str, bytes: usize, limit: usize| {
            writeln!(f, "  {name:<18}{bytes:>8} B of {limit} B")
        };
        let parts = || PARTS.iter().zip(self.0);
        for (part, bytes) in parts().filter(|(part, _)| !part.is_later) {
            line(f, part.name, bytes, part.limit)?;
        }
        let at_first = parts().filter(|(part, _)| !part.is_later);
        line(
            f,
            "together",
            at_first.map(|(_, bytes)| bytes).sum(),
            limit_at_first(),
        )?;
        writeln!(f, "and later")?;
        for (part, bytes) in parts().filter(|(part, _)| part.is_later) {
            line(f, part.name, bytes, part.limit)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limits_together_do_not_grow_unseen() {
        assert_eq!(limit_at_first(), 595_270);
    }

    #[test]
    fn each_file_counts_to_its_part_as_it_is_sent() {
        let repeated = b"austenite ".repeat(200);
        let files: [(&str, &[u8]); 4] = [
            ("assets/a.woff2", &repeated),
            ("assets/b.js", &repeated),
            ("assets/c.js", b"1"),
            ("assets/parts/split_panels-0.wasm", b"2"),
        ];
        let weights = Weights::of_files(files.into_iter()).unwrap();
        let of = |name: &str| {
            let place = PARTS.iter().position(|part| part.name == name);
            weights.0[place.unwrap()]
        };
        let [wasm, typeface, script, panels] =
            ["WebAssembly", "typeface", "JavaScript", "panels"].map(of);
        assert_eq!((wasm, typeface), (0, repeated.len()));
        assert!(panels > 0);
        assert!((2..100).contains(&script), "{script}");
    }

    #[test]
    fn a_part_without_a_limit_of_its_own_counts_to_what_is_loaded_at_first() {
        let files: [(&str, &[u8]); 1] = [("assets/parts/split_new-0.wasm", b"1")];
        let Weights([wasm, ..]) = Weights::of_files(files.into_iter()).unwrap();
        assert!(wasm > 0);
    }

    #[test]
    fn a_part_over_its_limit_is_named() {
        let mut weights = Weights(PARTS.map(|part| part.limit));
        weights.check().unwrap();
        weights.0[1] += 7;
        let message = weights.check().unwrap_err().to_string();
        assert!(
            message.starts_with("typeface is 22627 B with gzip, 7 B over"),
            "{message}"
        );
    }

    #[test]
    fn a_kind_of_file_without_a_limit_is_an_error() {
        let files: [(&str, &[u8]); 1] = [("assets/photo.jpeg", b"")];
        assert!(Weights::of_files(files.into_iter()).is_err());
    }
}
