//! Whether the page is being printed.

use super::media;
use leptos::prelude::*;

/// Follows the browser's printing, and the medium that the page is shown on.
pub(crate) fn follow(is_printing: RwSignal<bool>) {
    // Told in time to paint before the page goes to the printer; the medium alone may be too late.
    let before = window_event_listener_untyped("beforeprint", move |_| {
        is_printing.try_set(true);
    });
    let after = window_event_listener_untyped("afterprint", move |_| {
        is_printing.try_set(false);
    });
    let medium = StoredValue::new_local(media::follow("print", move |is_paper| {
        is_printing.try_set(is_paper);
    }));
    on_cleanup(move || {
        before.remove();
        after.remove();
        medium.try_set_value(None);
    });
}

/// Asks the browser to print the page, once what was changed before is in the document.
pub(crate) fn print() {
    leptos::task::spawn_local(async {
        leptos::task::tick().await;
        if let Some(window) = web_sys::window() {
            // A browser that does not print leaves the page as it is.
            let _ = window.print();
        }
    });
}
