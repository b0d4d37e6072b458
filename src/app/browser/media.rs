//! Media queries, followed as their answer changes.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::MediaQueryList;

const CHANGE: &str = "change";

/// A media query that is being followed; dropped, it is followed no more.
pub(crate) struct Followed {
    list: MediaQueryList,
    closure: Closure<dyn FnMut()>,
}

impl Drop for Followed {
    fn drop(&mut self) {
        // Nothing is lost by a listener that was never there.
        let _ = self
            .list
            .remove_event_listener_with_callback(CHANGE, self.closure.as_ref().unchecked_ref());
    }
}

/// Hands on the answer of a query each time that it changes.
pub(crate) fn follow(query: &str, mut changed: impl FnMut(bool) + 'static) -> Option<Followed> {
    let list = web_sys::window()?.match_media(query).ok().flatten()?;
    let asked = list.clone();
    let closure = Closure::<dyn FnMut()>::new(move || changed(asked.matches()));
    list.add_event_listener_with_callback(CHANGE, closure.as_ref().unchecked_ref())
        .ok()?;
    Some(Followed { list, closure })
}
