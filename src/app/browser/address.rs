//! The page's address, and what it carries behind the `#`.

use recalesce::save::asks_for_chart;
use wasm_bindgen::JsValue;
use web_sys::Window;

/// Begins the part of the address that carries a route.
const ROUTE: &str = "#route=";
/// Begins the part of the address that carries an experiment.
const EXPERIMENT: &str = recalesce::teach::EXPERIMENT_MARK;

/// The address of the page that brings a route, by the text of its link.
pub(crate) fn with_route(link: &str) -> Option<String> {
    with(ROUTE, link)
}

/// The address of the page that brings an experiment, by the text of its link.
pub(crate) fn with_experiment(link: &str) -> Option<String> {
    with(EXPERIMENT, link)
}

fn with(mark: &str, link: &str) -> Option<String> {
    let address = web_sys::window()?.location().href().ok()?;
    let page = address.split('#').next().unwrap_or_default();
    Some(format!("{page}{mark}{link}"))
}

/// What the address carries behind a mark.
fn carried(mark: &str) -> Option<String> {
    let hash = web_sys::window()?.location().hash().ok()?;
    hash.strip_prefix(mark).map(str::to_owned)
}

/// Whether the address brings a route or an experiment.
pub(crate) fn brings_something() -> bool {
    [ROUTE, EXPERIMENT]
        .into_iter()
        .any(|mark| carried(mark).is_some())
}

/// The text of an address that asks for one chart by itself.
pub(crate) fn shown_chart() -> Option<String> {
    carried(ROUTE).filter(|text| asks_for_chart(text))
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
    take(ROUTE)
}

/// Takes the experiment out of the address, as [`take_route`] does.
pub(crate) fn take_experiment() -> Option<String> {
    take(EXPERIMENT)
}

fn take(mark: &str) -> Option<String> {
    let window = web_sys::window()?;
    let link = carried(mark)?;
    // An address that cannot be changed brings it once more: no harm.
    let _ = without_link(&window);
    Some(link)
}

fn without_link(window: &Window) -> Result<(), JsValue> {
    let location = window.location();
    let page = location.pathname()? + &location.search()?;
    window
        .history()?
        .replace_state_with_url(&JsValue::NULL, "", Some(&page))
}
