//! The style sheet of what is loaded later: the page's first script knows where it is.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Name of the first script's function that loads the sheet, once.
const LOAD: &str = "laterStyle";

/// Loads the sheet; what comes back waits until it is there.
///
/// # Errors
/// What the browser says where there is nothing to load.
pub(crate) fn later() -> Result<JsFuture, JsValue> {
    let load: Function = Reflect::get(&js_sys::global(), &LOAD.into())?.dyn_into()?;
    let loaded: Promise = load.call0(&JsValue::NULL)?.dyn_into()?;
    Ok(JsFuture::from(loaded))
}
