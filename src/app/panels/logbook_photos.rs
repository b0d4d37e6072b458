//! The photos of an open run.

use super::logbook_run::button;
use crate::browser::photo;
use crate::logbook::Log;
use leptos::html::Input;
use leptos::prelude::*;
use recalesce::save::logbook::{Id, MOST_PHOTOS, Photo};
use recalesce_texts::page as texts;

/// The photos of the run.
#[component]
pub(super) fn Photos(log: Log) -> impl IntoView {
    let picker = NodeRef::<Input>::new();
    let ids = Memo::new(move |_| log.opened().map(|run| run.photos).unwrap_or_default());
    let picked = move |_| {
        let Some(input) = picker.get_untracked() else {
            return;
        };
        if let Some(file) = input.files().and_then(|list| list.get(0)) {
            photo::scale_down(&file, move |address| {
                let made = address.ok_or(texts::logbook::NO_IMAGE.to_owned());
                match made.and_then(|address| Photo::from_address(&address)) {
                    Ok(photo) => log.add_photo(photo),
                    Err(why) => log.say(texts::logbook::photo_not_added(&why), true, None),
                }
            });
        }
        // So that the same file can be picked again.
        input.set_value("");
    };
    let photo_view = move |id: Id| {
        let of_this = id.clone();
        let address = move || log.photos.with(|all| all.get(&of_this).map(Photo::address));
        view! {
            <li>
                <img src=address alt=texts::logbook::PHOTO_OF_RUN />
                {button(texts::logbook::REMOVE_PHOTO, move || log.remove_photo(id.clone()))}
            </li>
        }
    };
    view! {
        <section class="photos">
            <h3>{texts::logbook::PHOTOS}</h3>
            <ul>
                <For each=move || ids.get() key=Id::clone children=photo_view />
            </ul>
            <button
                type="button"
                class="press"
                disabled=move || ids.with(|ids| ids.len() >= MOST_PHOTOS)
                on:click=move |_| {
                    if let Some(input) = picker.get_untracked() {
                        input.click();
                    }
                }
            >
                {texts::logbook::ADD_A_PHOTO}
            </button>
            <input
                node_ref=picker
                class="unseen"
                type="file"
                accept="image/*"
                tabindex="-1"
                aria-label=texts::logbook::PHOTO_TO_ADD
                on:change=picked
            />
        </section>
    }
    .into_any()
}
