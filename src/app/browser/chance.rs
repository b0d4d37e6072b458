//! What a pure program does not have: chance and the calendar.

use js_sys::{Date, Math};

/// Sixteen digits that nobody else has drawn.
pub(crate) fn digits() -> String {
    let part = || (Math::random() * 4_294_967_296.0) as u32;
    format!("{:08x}{:08x}", part(), part())
}

/// Today where the browser is, as `2026-11-27`.
pub(crate) fn today() -> String {
    let now = Date::new_0();
    format!(
        "{:04}-{:02}-{:02}",
        now.get_full_year(),
        now.get_month() + 1,
        now.get_date()
    )
}
