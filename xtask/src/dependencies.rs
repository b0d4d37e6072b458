//! Under which licences what the project builds on may be used, where it comes from, and what is known
//! against it.

use std::collections::{BTreeMap, BTreeSet};

use semver::{Version, VersionReq};

use serde_json::Value;
use spdx::{Expression, LicenseReq};

use crate::project::Project;

/// Licences that ask for no more than their notice.
const FREE: [&str; 10] = [
    "0BSD",
    "Apache-2.0",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "MIT",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

fn is_free(licence: &LicenseReq) -> bool {
    licence.addition.is_none()
        && licence
            .license
            .id()
            .is_some_and(|id| FREE.contains(&id.name))
}

/// What a register has against packages, as far as they were looked up.
const ADVISORIES: &str = include_str!("advisories.tsv");

/// Advisories that are lived with: all say that a package is maintained no longer.
const LIVED_WITH: [&str; 5] = [
    // paste: a macro that leptos is compiled with; nothing of it runs.
    "RUSTSEC-2024-0436",
    // buf_redux, multipart, safemem, twoway: of the local server that runs the tests of WebAssembly.
    "RUSTSEC-2023-0028",
    "RUSTSEC-2023-0050",
    "RUSTSEC-2023-0081",
    "RUSTSEC-2021-0146",
];

/// The packages that any part of the project is built with: all of `Cargo.lock`.
fn packages() -> Vec<Value> {
    let project = Project::find().unwrap();
    let output = project
        .cargo([
            "metadata",
            "--locked",
            "--all-features",
            "--format-version",
            "1",
        ])
        .output()
        .unwrap();
    let told: Value = serde_json::from_slice(&output.stdout).unwrap();
    told["packages"].as_array().unwrap().clone()
}

#[test]
fn every_package_may_be_used_under_the_licences_of_the_project() {
    let refused: Vec<String> = packages()
        .iter()
        .filter(|package| {
            let told = package["license"].as_str().unwrap_or_default();
            // Older packages part the licences that one may choose from by a slash.
            Expression::parse_mode(&told.replace('/', " OR "), spdx::ParseMode::LAX)
                .map_or(true, |licences| !licences.evaluate(is_free))
        })
        .map(|package| format!("{}: {}", package["name"], package["license"]))
        .collect();
    assert!(refused.is_empty(), "{}", refused.join("\n"));
}

#[test]
fn every_package_comes_from_the_registry_or_the_project() {
    let sources: BTreeSet<String> = packages()
        .iter()
        .filter_map(|package| package["source"].as_str())
        .map(ToOwned::to_owned)
        .collect();
    let expected = ["registry+https://github.com/rust-lang/crates.io-index".to_owned()];
    assert_eq!(sources, BTreeSet::from(expected));
}

/// An advisory: its name, and the versions it is not about.
type Advisory = (&'static str, Vec<VersionReq>);

/// What is known against each package that was looked up.
fn advisories() -> BTreeMap<&'static str, Vec<Advisory>> {
    let mut looked_up: BTreeMap<&str, Vec<Advisory>> = BTreeMap::new();
    for line in ADVISORIES.lines().filter(|line| !line.starts_with('#')) {
        let mut cells = line.split('\t');
        let of_package = looked_up.entry(cells.next().unwrap()).or_default();
        if let (Some(id), Some(free)) = (cells.next(), cells.next()) {
            let free = free.split(" || ").filter(|range| *range != "-");
            of_package.push((id, free.map(|range| range.parse().unwrap()).collect()));
        }
    }
    looked_up
}

#[test]
fn nothing_is_known_against_a_package_but_what_is_lived_with() {
    let looked_up = advisories();
    let mut found = BTreeSet::new();
    let mut doubts = Vec::new();
    let mut names = BTreeSet::new();
    for package in packages().iter().filter(|of| of["source"].is_string()) {
        let name = package["name"].as_str().unwrap();
        names.insert(name.to_owned());
        let version: Version = package["version"].as_str().unwrap().parse().unwrap();
        let Some(known) = looked_up.get(name) else {
            doubts.push(format!(
                "{name} was not looked up: see advisories in DEVELOPERS.md"
            ));
            continue;
        };
        let about = known
            .iter()
            .filter(|(_, free)| !free.iter().any(|range| range.matches(&version)));
        for (id, _) in about {
            found.insert(*id);
            if !LIVED_WITH.contains(id) {
                doubts.push(format!("{name} {version}: {id}"));
            }
        }
    }
    let gone = looked_up.keys().filter(|name| !names.contains(**name));
    doubts.extend(gone.map(|name| format!("{name} is looked up, and used no longer")));
    assert!(doubts.is_empty(), "{}", doubts.join("\n"));
    assert_eq!(found, BTreeSet::from(LIVED_WITH));
}
