//! The document's root: what the first script leaves there for the page.

use web_sys::Element;

fn root() -> Option<Element> {
    web_sys::window()?.document()?.document_element()
}

/// Whether the user asked for a fresh start after the page had stopped.
pub(crate) fn starts_fresh() -> bool {
    root()
        .and_then(|root| root.get_attribute("data-start"))
        .is_some_and(|how| how == "fresh")
}

/// What stands there under a name: the address of a file of the page's, `script`, `wasm` or `worker`, `comma`
/// where numbers are shown with one, or whether one is `wanted`, where that was chosen.
pub(crate) fn said(name: &str) -> Option<String> {
    root()?.get_attribute(&format!("data-{name}"))
}
