//! The places beside the bench, and what brings something to them.

use crate::link;
use crate::panels::card::CardPlace;
use crate::panels::embed::Embedded;
use crate::panels::logbook::{self, LogbookPlace};
use crate::panels::shelf::{self, ShelfPanel};
use crate::panels::sources::Sources;
use crate::state::{Bench, Place};
use leptos::prelude::*;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Places {
    /// Shows a place; nothing for the bench, which is always there, and for what is a part by itself.
    pub(crate) show: fn(Place) -> AnyView,
    /// Logs a run of the route on the bench, and opens it.
    pub(crate) log: fn(Bench),
    /// Takes in what the address brings: a route, or an experiment.
    pub(crate) take_link: fn(Bench),
    /// Keeps the route of the bench on the shelf.
    pub(crate) keep: fn(Bench),
    /// Shows the one chart that the address asks for.
    pub(crate) embedded: fn() -> AnyView,
}

/// Brings the part.
#[wasm_split(places, fallible)]
pub(crate) fn places() -> Result<Places, SplitLoaderError> {
    Ok(Places {
        show,
        log: logbook::log,
        take_link: link::take,
        keep: shelf::keep,
        embedded,
    })
}

fn embedded() -> AnyView {
    view! { <Embedded /> }.into_any()
}

fn show(place: Place) -> AnyView {
    match place {
        Place::Bench | Place::Decide | Place::Experiments => ().into_any(),
        Place::Shelf => view! { <ShelfPanel /> }.into_any(),
        Place::Logbook => view! { <LogbookPlace /> }.into_any(),
        Place::Card => view! { <CardPlace /> }.into_any(),
        Place::Sources => view! { <Sources /> }.into_any(),
    }
}
