//! Whether the page is being printed.

use leptos::prelude::*;

/// Follows the browser's printing.
pub(crate) fn follow(is_printing: RwSignal<bool>) {
    let before = window_event_listener_untyped("beforeprint", move |_| {
        is_printing.try_set(true);
    });
    let after = window_event_listener_untyped("afterprint", move |_| {
        is_printing.try_set(false);
    });
    on_cleanup(move || {
        before.remove();
        after.remove();
    });
}
