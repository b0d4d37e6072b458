//! The style sheets of `style/` as two sheets: that of the page as it opens, and that of what is
//! loaded later, whose sheets lie in `style/later/`.

use std::collections::BTreeMap;

use anyhow::{Result, bail};

/// The sheets that come before all others, in this order.
const FIRST: [&str; 3] = ["tokens.css", "base.css", "layout.css"];
/// How the paths of the sheets begin that are loaded later.
const LATER: &str = "later/";

/// When a sheet is loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum When {
    /// With the page.
    First,
    /// With the parts of the page that are loaded when they are opened.
    Later,
}

/// Joins the sheets (by path below `style/`) of one time in their order: tokens, base, layout, then
/// the rest by name.
///
/// `address` gives the new address for a file named relative to the top of the project.
pub(crate) fn join(
    sheets: &BTreeMap<String, String>,
    when: When,
    mut address: impl FnMut(&str) -> Result<String>,
) -> Result<String> {
    let is_of = |name: &&String| name.starts_with(LATER) == (when == When::Later);
    let mut names: Vec<&String> = sheets.keys().filter(is_of).collect();
    names.sort_by_key(|name| {
        FIRST
            .iter()
            .position(|first| first == name)
            .unwrap_or(FIRST.len())
    });
    let mut joined = String::new();
    for name in names {
        joined.push_str(&rewrite_urls(name, &sheets[name], &mut address)?);
        joined.push('\n');
    }
    Ok(joined)
}

/// Replaces every `url(..)` of a sheet in `style/`.
fn rewrite_urls(
    sheet: &str,
    css: &str,
    address: &mut impl FnMut(&str) -> Result<String>,
) -> Result<String> {
    let mut rewritten = String::with_capacity(css.len());
    let mut rest = css;
    while let Some(start) = rest.find("url(") {
        let (before, after) = rest.split_at(start + "url(".len());
        rewritten.push_str(before);
        let Some(end) = after.find(')') else {
            bail!("style/{sheet}: a url( is not closed");
        };
        let url = after[..end].trim().trim_matches(['"', '\'']);
        if url.starts_with('#') || url.starts_with("data:") {
            rewritten.push_str(&after[..end]);
        } else {
            let Some(path) = from_sheet(sheet, url) else {
                bail!("style/{sheet}: url({url}) is not a file of the project");
            };
            rewritten.push_str(&address(&path)?);
        }
        rest = &after[end..];
    }
    rewritten.push_str(rest);
    Ok(rewritten)
}

/// The path from the top of the project for an address relative to a sheet in `style/`.
fn from_sheet(sheet: &str, url: &str) -> Option<String> {
    if url.is_empty() || url.starts_with('/') || url.contains(':') {
        return None;
    }
    let mut parts = vec!["style"];
    if let Some((dirs, _)) = sheet.rsplit_once('/') {
        parts.extend(dirs.split('/'));
    }
    for part in url.split('/') {
        match part {
            "." => {}
            ".." => {
                parts.pop()?;
            }
            part => parts.push(part),
        }
    }
    Some(parts.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheets(list: &[(&str, &str)]) -> BTreeMap<String, String> {
        list.iter()
            .map(|(name, css)| ((*name).to_owned(), (*css).to_owned()))
            .collect()
    }

    #[test]
    fn tokens_base_and_layout_come_first() {
        let sheets = sheets(&[
            ("card.css", "card"),
            ("bench.css", "bench"),
            ("layout.css", "layout"),
            ("base.css", "base"),
            ("tokens.css", "tokens"),
            ("later/decide.css", "decide"),
        ]);
        let joined = join(&sheets, When::First, |_| unreachable!()).unwrap();
        assert_eq!(
            joined.split_whitespace().collect::<Vec<_>>(),
            ["tokens", "base", "layout", "bench", "card"]
        );
    }

    #[test]
    fn what_is_loaded_later_is_a_sheet_of_its_own() {
        let sheets = sheets(&[
            ("base.css", "base"),
            ("later/decide.css", "decide"),
            ("later/card.css", "url(../../public/icon.svg)"),
        ]);
        let joined = join(&sheets, When::Later, |path| Ok(format!("<{path}>"))).unwrap();
        assert_eq!(joined, "url(<public/icon.svg>)\ndecide\n");
    }

    #[test]
    fn the_font_gets_its_new_address() {
        let sheets = sheets(&[(
            "tokens.css",
            "src:url(../public/fonts/archivo.woff2) format(\"woff2\")",
        )]);
        let joined = join(&sheets, When::First, |path| {
            assert_eq!(path, "public/fonts/archivo.woff2");
            Ok("archivo-1.woff2".to_owned())
        })
        .unwrap();
        assert_eq!(joined.trim(), "src:url(archivo-1.woff2) format(\"woff2\")");
    }

    #[test]
    fn quotes_are_understood_and_fragments_left_alone() {
        let css = "a{b:url( \"./x.png\" );c:url(#p-mart);d:url(data:image/png;base64,AA==)}";
        let joined = join(&sheets(&[("a.css", css)]), When::First, |path| {
            Ok(format!("<{path}>"))
        })
        .unwrap();
        assert_eq!(
            joined.trim(),
            "a{b:url(<style/x.png>);c:url(#p-mart);d:url(data:image/png;base64,AA==)}"
        );
    }

    #[test]
    fn other_hosts_and_paths_above_the_project_are_refused() {
        for css in [
            "url(https://example.org/a.woff2)",
            "url(//example.org/a.woff2)",
            "url(../../secret)",
            "url(unclosed",
        ] {
            assert!(
                join(&sheets(&[("a.css", css)]), When::First, |_| Ok(
                    String::new()
                ))
                .is_err()
            );
        }
    }
}
