//! Day or shop: the theme on the document's root.

use recalesce::chart::Palette;

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

/// Sets the theme on the root.
pub(crate) fn set(theme: Theme) {
    let name = match theme {
        Theme::Day => "light",
        Theme::Shop => "dark",
    };
    if let Some(root) = web_sys::window()
        .and_then(|w| w.document())
        .and_then(|d| d.document_element())
    {
        // Only a name with a control character could be refused.
        let _ = root.set_attribute("data-theme", name);
    }
}

/// The colours that the style sheet gives the charts now.
pub(crate) fn palette() -> Palette {
    let fallback = match current() {
        Theme::Day => Palette::LIGHT,
        Theme::Shop => Palette::DARK,
    };
    let style = web_sys::window().and_then(|window| {
        let root = window.document()?.document_element()?;
        window.get_computed_style(&root).ok().flatten()
    });
    match style {
        Some(style) => Palette::read(|name| style.get_property_value(name).ok(), &fallback),
        None => fallback,
    }
}
