//! Under which licences what the project builds on may be used, and where it comes from.

use std::collections::BTreeSet;

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

/// The packages that any part of the project is built with.
fn packages() -> Vec<Value> {
    let project = Project::find().unwrap();
    let output = project
        .cargo(["metadata", "--locked", "--format-version", "1"])
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
