//! The page's address, and what it carries behind the `#`.

use recalesce::save::asks_for_chart;
use wasm_bindgen::JsValue;
use web_sys::Window;

/// Begins the part of the address that carries a route.
const ROUTE: &str = "#route=";

/// The address of the page that brings a route, by the text of its link.
pub(crate) fn with_route(link: &str) -> Option<String> {
    let address = web_sys::window()?.location().href().ok()?;
    let page = address.split('#').next().unwrap_or_default();
    Some(format!("{page}{ROUTE}{link}"))
}

/// What the address carries of a route.
fn carried() -> Option<String> {
    let hash = web_sys::window()?.location().hash().ok()?;
    hash.strip_prefix(ROUTE).map(str::to_owned)
}

/// Whether the address brings a route.
pub(crate) fn brings_route() -> bool {
    carried().is_some()
}

/// The text of an address that asks for one chart by itself.
pub(crate) fn shown_chart() -> Option<String> {
    carried().filter(|text| asks_for_chart(text))
}

/// Loads the page anew, with the address as it is now.
pub(crate) fn reload() {
    if let Some(window) = web_sys::window() {
        // A page that cannot be loaded anew stays as it is.
        let _ = window.location().reload();
    }
}

/// Takes the route out of the address, so that a reload does not bring it again.
pub(crate) fn take_route() -> Option<String> {
    let window = web_sys::window()?;
    let link = carried()?;
    // An address that cannot be changed brings the route once more: no harm.
    let _ = without_route(&window);
    Some(link)
}

fn without_route(window: &Window) -> Result<(), JsValue> {
    let location = window.location();
    let page = location.pathname()? + &location.search()?;
    window
        .history()?
        .replace_state_with_url(&JsValue::NULL, "", Some(&page))
}
