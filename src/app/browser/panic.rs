//! A panic stops the program for good; the first script then speaks for it.

use web_sys::{CustomEvent, CustomEventInit};

/// Event that the first script waits for.
const EVENT: &str = "recalesce-panic";

/// Tells the console and the first script when the program panics.
pub(crate) fn watch() {
    std::panic::set_hook(Box::new(|info| {
        console_error_panic_hook::hook(info);
        let init = CustomEventInit::new();
        init.set_detail(&info.to_string().into());
        if let (Some(window), Ok(event)) = (
            web_sys::window(),
            CustomEvent::new_with_event_init_dict(EVENT, &init),
        ) {
            // Nobody is left to tell if even this fails.
            let _ = window.dispatch_event(&event);
        }
    }));
}
