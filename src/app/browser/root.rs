//! The document's root: how the page and its first script speak to each other.

use web_sys::Element;

fn root() -> Option<Element> {
    web_sys::window()?.document()?.document_element()
}

/// Tells the first script that the page runs.
pub(crate) fn say_started() {
    if let Some(root) = root() {
        // Only a name with a control character could be refused.
        let _ = root.set_attribute("data-started", "");
    }
}

/// Whether the user asked for a fresh start after the page had stopped.
pub(crate) fn starts_fresh() -> bool {
    root()
        .and_then(|root| root.get_attribute("data-start"))
        .is_some_and(|how| how == "fresh")
}
