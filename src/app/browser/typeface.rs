//! When the page's typeface has arrived: the widths of texts on charts change with it.

use wasm_bindgen_futures::JsFuture;

/// Calls back once every typeface that the page asked for has arrived.
pub(crate) fn when_ready(then: impl FnOnce() + 'static) {
    let Some(document) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    let Ok(ready) = document.fonts().ready() else {
        return;
    };
    leptos::task::spawn_local(async move {
        if JsFuture::from(ready).await.is_ok() {
            then();
        }
    });
}
