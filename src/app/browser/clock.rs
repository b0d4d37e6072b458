//! The clock of the page.

/// Time since the page was opened, ms: no change of the clock moves it.
pub(crate) fn now_ms() -> f64 {
    web_sys::window()
        .and_then(|window| window.performance())
        .map_or(0.0, |clock| clock.now())
}
