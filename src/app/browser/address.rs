//! The page's address, and what it carries behind the `#`.

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

/// Whether the address brings a route.
pub(crate) fn brings_route() -> bool {
    web_sys::window()
        .and_then(|window| window.location().hash().ok())
        .is_some_and(|hash| hash.starts_with(ROUTE))
}

/// Takes the route out of the address, so that a reload does not bring it again.
pub(crate) fn take_route() -> Option<String> {
    let window = web_sys::window()?;
    let hash = window.location().hash().ok()?;
    let link = hash.strip_prefix(ROUTE)?.to_owned();
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
