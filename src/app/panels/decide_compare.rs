//! Routes side by side: those that are picked for it, and what comes out of them.

use super::decide::{Deciding, Working};
use super::decide_acting::acting_on;
use super::decide_compare_courses::{Course, overlay};
use super::decide_compare_table::table;
use crate::controls::live;
use crate::decide::{Question, Told};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::{Correction, Courses, Numbers};
use recalesce::chart::MOST_LINES;
use recalesce::route::Route;
use recalesce::save::ItemId;
use recalesce_texts::page as texts;
use std::sync::Arc;

/// Most routes side by side.
const MOST: usize = MOST_LINES;

/// What is picked for it.
#[derive(Clone, Copy)]
pub(crate) struct Picked {
    /// Routes of the shelf.
    of_shelf: RwSignal<Vec<ItemId>>,
    /// Whether the handbook's is one.
    with_handbook: RwSignal<bool>,
    /// What is laid over one another.
    course: RwSignal<Course>,
}

impl Default for Picked {
    fn default() -> Self {
        Self {
            of_shelf: RwSignal::default(),
            with_handbook: RwSignal::new(true),
            course: RwSignal::new(Course::Cooling),
        }
    }
}

/// Routes that were compared, and what comes out of each.
pub(crate) struct Compared {
    pub(super) routes: Vec<(String, Route)>,
    pub(super) come_out: Vec<Result<(Numbers, Courses), String>>,
    /// What they were counted with.
    with: Correction,
}

/// The panel.
#[component]
pub(super) fn Comparing(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let Picked {
        of_shelf: chosen,
        with_handbook,
        course,
    } = deciding.picked;
    let items = Memo::new(move |_| {
        bench.shelf.with(|shelf| {
            let items = shelf.items().iter();
            items
                .map(|item| (item.id, item.name.clone()))
                .collect::<Vec<_>>()
        })
    });
    let handbook = move || {
        bench.route.with(|route| {
            let grade = route.listed_grade()?;
            let mut route = route.clone();
            route.take_handbook(grade);
            Some(route)
        })
    };
    let has_handbook = Memo::new(move |_| bench.route.with(|route| route.listed_grade().is_some()));
    // The bench, the handbook, and what is picked of the shelf.
    let room = move || {
        let taken = 1 + usize::from(has_handbook.get() && with_handbook.get());
        MOST.saturating_sub(taken + chosen.with(Vec::len))
    };
    let routes = move || {
        let mut routes = vec![(texts::decide::ON_THE_BENCH.to_owned(), bench.route.get())];
        if with_handbook.get()
            && let Some(route) = handbook()
        {
            routes.push((texts::decide::BY_THE_HANDBOOK.to_owned(), route));
        }
        bench.shelf.with(|shelf| {
            let of_shelf = chosen.get().into_iter();
            let of_shelf = of_shelf.filter_map(|id| shelf.get(id));
            routes.extend(of_shelf.map(|item| (item.name.clone(), item.route.clone())));
        });
        routes.truncate(MOST);
        routes
    };
    let question = move || {
        let routes = routes().into_iter();
        let routes = routes.map(|(_, route)| route).collect();
        Question::Compare(routes, deciding.counted_with())
    };
    let start = move |()| {
        let (routes, question) = untrack(|| (routes(), question()));
        let with = untrack(|| deciding.counted_with());
        deciding.comparing.ask(&question, move |told| match told {
            Told::Compared(come_out) => {
                let compared = Compared {
                    routes: routes.clone(),
                    come_out,
                    with: with.clone(),
                };
                deciding.compared.try_set(Some(Arc::new(compared)));
                true
            }
            _ => false,
        });
    };
    let boxes = live(move || {
        let of_shelf = items.get().into_iter().map(|(id, name)| {
            let is_in = move || chosen.with(|all| all.contains(&id));
            view! {
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=is_in
                        disabled=move || !is_in() && room() == 0
                        on:change=move |_| {
                            chosen
                                .update(|all| {
                                    if all.contains(&id) {
                                        all.retain(|one| *one != id);
                                    } else {
                                        all.push(id);
                                    }
                                });
                        }
                    />
                    <span translate="no">{name}</span>
                </label>
            }
        });
        of_shelf.collect_view().into_any()
    });
    view! {
        <h3>{texts::decide::SIDE_BY_SIDE}</h3>
        <p class="hint">
            {texts::decide::ABOUT_SIDE_BY_SIDE}
        </p>
        <div class="ticks" role="group" aria-label=texts::decide::ROUTES_TO_COMPARE>
            <Show when=move || has_handbook.get()>
                <label class="tick">
                    <input
                        type="checkbox"
                        prop:checked=with_handbook
                        on:change=move |_| with_handbook.update(|is| *is = !*is)
                    />
                    {texts::decide::BY_THE_HANDBOOK}
                </label>
            </Show>
            {boxes}
        </div>
        <Working
            task=deciding.comparing
            words=texts::decide::COMPARE
            start=start
            is_stale=Signal::derive(move || deciding.comparing.is_stale(&question()))
        />
        {live(move || {
            deciding
                .compared
                .get()
                .map_or_else(
                    || ().into_any(),
                    |compared| {
                        let routes = compared.routes.iter().map(|(_, route)| route);
                        view! {
                            {acting_on(deciding, &compared.with, routes)}
                            {table(bench, &compared)}
                            {overlay(bench, compared, course)}
                        }
                            .into_any()
                    },
                )
        })}
    }
    .into_any()
}
