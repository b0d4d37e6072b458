//! One of several: a list in a panel, or a row of pressable segments.

use leptos::prelude::*;

/// One entry of a list.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Entry {
    /// What it stands for in the route.
    pub(crate) value: String,
    /// Its name.
    pub(crate) title: String,
    /// A line below the name.
    pub(crate) note: String,
}

/// A list to pick from.
#[component]
pub(crate) fn Choice(
    /// What is picked, for screen readers.
    name: &'static str,
    /// What can be picked.
    #[prop(into)]
    entries: Signal<Vec<Entry>>,
    /// The value that is picked now.
    #[prop(into)]
    chosen: Signal<String>,
    /// Called with the value picked.
    #[prop(into)]
    pick: Callback<String>,
) -> impl IntoView {
    let rows = move || {
        let now = chosen.get();
        entries
            .get()
            .into_iter()
            .map(|entry| {
                let is_chosen = entry.value == now;
                let value = entry.value.clone();
                view! {
                    <button
                        type="button"
                        role="option"
                        data-value=entry.value
                        aria-selected=is_chosen.to_string()
                        on:click=move |_| pick.run(value.clone())
                    >
                        {entry.title}
                        <small>{entry.note}</small>
                    </button>
                }
            })
            .collect_view()
    };
    view! { <div class="options" role="listbox" aria-label=name>{rows}</div> }.into_any()
}

/// One of the few values that something can have, as a list shows it.
pub(crate) struct Alternative<T: 'static> {
    /// The value.
    pub(crate) is: T,
    /// Its name in the page's markup.
    pub(crate) value: &'static str,
    /// Its name.
    pub(crate) title: &'static str,
    /// A line below the name.
    pub(crate) note: &'static str,
}

/// A list of few values that are known beforehand.
#[component]
pub(crate) fn Alternatives<T>(
    /// What is picked, for screen readers.
    name: &'static str,
    /// What can be picked.
    all: &'static [Alternative<T>],
    /// The value now.
    #[prop(into)]
    chosen: Signal<T>,
    /// Called with the value picked.
    #[prop(into)]
    pick: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let entries: Vec<Entry> = all
        .iter()
        .map(|one| Entry {
            value: one.value.to_owned(),
            title: one.title.to_owned(),
            note: one.note.to_owned(),
        })
        .collect();
    let now = Signal::derive(move || {
        all.iter()
            .find(|one| one.is == chosen.get())
            .map_or_else(String::new, |one| one.value.to_owned())
    });
    view! {
        <Choice
            name=name
            entries=Signal::stored(entries)
            chosen=now
            pick=move |value: String| {
                if let Some(one) = all.iter().find(|one| one.value == value) {
                    pick.run(one.is);
                }
            }
        />
    }
    .into_any()
}

/// A row of segments, one of them pressed.
#[component]
pub(crate) fn Segment<T>(
    /// What the row sets, for screen readers.
    name: &'static str,
    /// Values and their words.
    entries: Vec<(T, &'static str)>,
    /// The value now.
    #[prop(into)]
    chosen: Signal<T>,
    /// Called with the value pressed.
    #[prop(into)]
    pick: Callback<T>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let buttons = entries
        .into_iter()
        .map(|(value, word)| {
            view! {
                <button
                    type="button"
                    aria-pressed=move || (chosen.get() == value).to_string()
                    on:click=move |_| pick.run(value)
                >
                    {word}
                </button>
            }
        })
        .collect_view();
    view! { <span class="seg" role="group" aria-label=name>{buttons}</span> }.into_any()
}
