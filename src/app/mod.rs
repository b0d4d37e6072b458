//! The page.

use leptos::prelude::*;

/// Mounts the page.
pub fn start() {
    leptos::mount::mount_to_body(|| view! { <p>"Recalesce"</p> });
}
