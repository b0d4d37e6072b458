//! The browser's local storage under the project's own prefix. It may be absent, denied or full:
//! every call says so instead of failing.

use super::files;
use gloo_storage::{LocalStorage, Storage};
use recalesce_texts::page as texts;
use std::cell::RefCell;

thread_local! {
    /// Texts that could neither be read nor set aside, by their keys: they stay where they are.
    static HELD: RefCell<Vec<(&'static str, String)>> = const { RefCell::new(Vec::new()) };
}

/// Where the open bench is kept.
pub(crate) const BENCH: &str = "recalesce.bench";
/// Where the shelf is kept.
pub(crate) const SHELF: &str = "recalesce.shelf";
/// Over which shelf that one was written.
pub(crate) const SHELF_OVER: &str = "recalesce.shelf-over";
/// Where what the shop owns is kept.
pub(crate) const SHOP: &str = "recalesce.shop";
/// Where it is kept which experiments were played to their end.
pub(crate) const EXPERIMENTS: &str = "recalesce.experiments";
/// Where the experiments that are not of the project are kept, a link a line.
pub(crate) const BROUGHT: &str = "recalesce.brought-experiments";
/// Where units and theme are kept; the page's first script reads the theme before anything is
/// drawn.
pub(crate) const PREFERENCES: &str = "recalesce.preferences";
/// Where what was typed of a quenchant of the user's own is kept.
pub(crate) const OWN: &str = "recalesce.own";

/// Where the run is kept whose texts are being typed, until the database has it.
pub(crate) const TYPED: &str = "recalesce.typed";

/// Most texts that are set aside under one key.
const MOST_ASIDE: usize = 9;

/// Where the n-th text of a key is set aside, so that nothing is lost.
fn aside(key: &str, n: usize) -> String {
    if n == 1 {
        format!("{key}.set-aside")
    } else {
        format!("{key}.set-aside-{n}")
    }
}

/// Whether this browser lets the page keep anything. Asked first, since the storage library
/// throws where storage is denied.
pub(crate) fn is_open() -> bool {
    web_sys::window()
        .and_then(|window| window.local_storage().ok().flatten())
        .is_some()
}

/// The text under a key, if there is any.
pub(crate) fn read(key: &str) -> Option<String> {
    if !is_open() {
        return None;
    }
    LocalStorage::raw().get_item(key).ok().flatten()
}

/// Keeps text under a key.
///
/// # Errors
/// One line for the user when the store is closed or full, or holds what could not be read.
pub(crate) fn write(key: &str, text: &str) -> Result<(), &'static str> {
    if !is_open() {
        return Err(texts::general::STORE_CLOSED);
    }
    if is_held(key) {
        return Err(texts::general::PLACE_HELD);
    }
    LocalStorage::raw()
        .set_item(key, text)
        .map_err(|_| texts::general::STORE_FULL)
}

/// Forgets the text under a key.
pub(crate) fn remove(key: &str) {
    if is_open() {
        LocalStorage::delete(key);
    }
}

/// What this window alone keeps, for as long as it is open, over a reload.
fn of_window() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok()?
}

/// The text that this window keeps under a key, or else the browser.
pub(crate) fn read_of_window(key: &str) -> Option<String> {
    let own = of_window().and_then(|storage| storage.get_item(key).ok()?);
    own.or_else(|| read(key))
}

/// Keeps text under a key for this window alone; where it cannot, what the browser keeps is as good.
pub(crate) fn write_of_window(key: &str, text: &str) {
    if let Some(storage) = of_window()
        && storage.set_item(key, text).is_err()
    {
        // An older text would be taken for this window's.
        let _ = storage.remove_item(key);
    }
}

/// Puts text aside that cannot be read now, so that a later version still can. Where there is no room it
/// stays under its key, where nothing else is kept until [`offer_held`]: false.
pub(crate) fn set_aside_or_hold(key: &'static str, text: &str) -> bool {
    let is_aside = set_aside(key, text);
    if !is_aside {
        HELD.with_borrow_mut(|held| {
            held.retain(|(other, _)| *other != key);
            held.push((key, text.to_owned()));
        });
    }
    is_aside
}

/// Whether there is a text that is only held where it stands.
pub(crate) fn holds() -> bool {
    HELD.with_borrow(|held| !held.is_empty())
}

/// Whether what stands under a key is held there.
pub(crate) fn is_held(key: &str) -> bool {
    HELD.with_borrow(|held| held.iter().any(|(other, _)| *other == key))
}

/// Offers one of the texts that are held as a file, since browsers ask before a second one; then another text
/// is kept in its place. False where the browser takes no file.
pub(crate) fn offer_held() -> bool {
    let Some((key, text)) = HELD.with_borrow_mut(Vec::pop) else {
        return true;
    };
    let is_offered = files::offer(&format!("{key}.txt"), "text/plain", &text).is_some();
    if !is_offered {
        HELD.with_borrow_mut(|held| held.push((key, text)));
    }
    is_offered
}

/// Puts text aside so that it is not lost. False where there is no room.
pub(crate) fn set_aside(key: &str, text: &str) -> bool {
    for n in 1..=MOST_ASIDE {
        let place = aside(key, n);
        match read(&place) {
            Some(before) if before == text => return true,
            Some(_) => {}
            None => return write(&place, text).is_ok(),
        }
    }
    false
}
