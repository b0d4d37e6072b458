//! Numbers with a decimal comma: texts are made with a point, and a script that is loaded where it is wanted
//! gives them the comma as they come into the document or onto a canvas.

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Element;

/// Name of the first script's function that loads that script and turns it on or off.
const SHOW: &str = "decimalComma";
/// Name of what that script offers once it is loaded.
const OFFERED: &str = "decimals";

/// Whether numbers have a comma, as the document's root tells.
pub(crate) fn have_comma() -> bool {
    super::root::said("comma").is_some()
}

/// Shows numbers with a comma, or with a point. Where the script cannot be loaded all stays as it is.
pub(crate) async fn show(has_comma: bool) {
    let shown = || -> Result<JsFuture, JsValue> {
        let show: Function = Reflect::get(&js_sys::global(), &SHOW.into())?.dyn_into()?;
        let shown: Promise = show.call1(&JsValue::NULL, &has_comma.into())?.dyn_into()?;
        Ok(JsFuture::from(shown))
    };
    if let Ok(shown) = shown() {
        // The root tells what came of it.
        let _ = shown.await;
    }
}

fn offered(name: &str, of: &JsValue) -> Option<String> {
    let all = Reflect::get(&js_sys::global(), &OFFERED.into()).ok()?;
    let one: Function = Reflect::get(&all, &name.into()).ok()?.dyn_into().ok()?;
    one.call1(&JsValue::NULL, of).ok()?.as_string()
}

/// A drawing as the page shows it.
pub(crate) fn drawing(svg: String) -> String {
    offered("drawing", &svg.as_str().into()).unwrap_or(svg)
}

/// The text of an element as it was made, whatever its numbers are shown with.
pub(crate) fn written(element: &Element) -> Option<String> {
    offered("written", element).or_else(|| element.text_content())
}
