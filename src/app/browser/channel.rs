//! A word to the other tabs of the page, and from them.

use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::BroadcastChannel;

/// A channel that is listened to for as long as it is held.
pub(crate) struct Channel {
    inner: BroadcastChannel,
    _heard: Closure<dyn FnMut()>,
}

impl Channel {
    /// Opens the channel of a name; none where the browser has none.
    pub(crate) fn open(name: &str, hear: impl FnMut() + 'static) -> Option<Self> {
        let inner = BroadcastChannel::new(name).ok()?;
        let heard = Closure::new(hear);
        inner.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        Some(Self {
            inner,
            _heard: heard,
        })
    }

    /// Calls the others.
    pub(crate) fn call(&self) {
        // A closed channel has nobody to hear.
        let _ = self.inner.post_message(&JsValue::TRUE);
    }
}

impl Drop for Channel {
    fn drop(&mut self) {
        self.inner.set_onmessage(None);
        self.inner.close();
    }
}
