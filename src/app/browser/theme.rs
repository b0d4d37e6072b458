//! Day or shop: the theme on the document's root.

use super::storage;

/// Light page for the day, dark page for the dim shop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Theme {
    /// Light.
    Day,
    /// Dark.
    Shop,
}

/// The theme that the first script has set on the root.
pub(crate) fn current() -> Theme {
    let dark = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.document_element())
        .and_then(|root| root.get_attribute("data-theme"))
        .is_some_and(|name| name == "dark");
    if dark { Theme::Shop } else { Theme::Day }
}

/// Sets the theme on the root and keeps it for the next visit.
pub(crate) fn set(theme: Theme) {
    let name = match theme {
        Theme::Day => "light",
        Theme::Shop => "dark",
    };
    if let Some(root) = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.document_element())
    {
        let _ = root.set_attribute("data-theme", name);
    }
    // Where nothing can be kept the theme still holds for this visit.
    let _ = storage::write(storage::THEME, name);
}
