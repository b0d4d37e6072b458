//! Experiments that are not of the project: told as such, and kept in the browser so that a reload does not
//! lose them.

use crate::browser::storage;
use leptos::prelude::*;
use recalesce::teach::{BUNDLED, Experiment, read_experiment_link, write_experiment_link};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Puts those that were kept behind those of the project.
pub(super) fn with_kept(mut all: Vec<Arc<Experiment>>) -> Vec<Arc<Experiment>> {
    let text = storage::read(storage::BROUGHT).unwrap_or_default();
    for experiment in text
        .lines()
        .filter_map(|link| read_experiment_link(link).ok())
    {
        if all.iter().all(|other| other.title != experiment.title) {
            all.push(Arc::new(experiment));
        }
    }
    all
}

/// Which were played to their end.
pub(super) fn played() -> Vec<String> {
    storage::read(storage::EXPERIMENTS)
        .and_then(|text| serde_json::from_str(&text).ok())
        .unwrap_or_default()
}

/// Keeps those behind the ones of the project, and those that another window has kept meanwhile.
///
/// # Errors
/// One line for the user when the store is closed or full.
pub(super) fn keep(all: &[Arc<Experiment>]) -> Result<(), &'static str> {
    let all = with_kept(all.to_vec());
    let brought = all.iter().skip(BUNDLED.len());
    // One that is too long for a link is there until the page is left, as its file remains.
    let links = brought.filter_map(|experiment| write_experiment_link(experiment).ok());
    storage::write(storage::BROUGHT, &links.collect::<Vec<_>>().join("\n"))
}

/// Says of an experiment that it is not of the project; nothing of one that is.
pub(super) fn foreign(experiment: &Experiment, all: &[Arc<Experiment>]) -> Option<AnyView> {
    let mut of_project = all.iter().take(BUNDLED.len());
    let is_foreign = of_project.all(|other| **other != *experiment);
    is_foreign.then(|| view! { <p class="hint">{texts::lessons::FOREIGN}</p> }.into_any())
}
