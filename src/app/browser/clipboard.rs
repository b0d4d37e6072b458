//! Texts onto the clipboard.

use wasm_bindgen_futures::JsFuture;

/// Puts a text onto the clipboard, and then says whether it is there: a page that is not served
/// safely, or a browser that asks its user, may refuse.
pub(crate) fn copy(text: &str, done: impl FnOnce(bool) + 'static) {
    let clipboard = web_sys::window()
        .filter(|window| window.is_secure_context())
        .map(|window| window.navigator().clipboard());
    let Some(clipboard) = clipboard else {
        return done(false);
    };
    let written = JsFuture::from(clipboard.write_text(text));
    leptos::task::spawn_local(async move { done(written.await.is_ok()) });
}
