//! How dense the screen is: it changes when a window moves to another screen, at the same size.

use super::media;
use leptos::prelude::*;

/// Most device pixels per CSS pixel that a canvas gets, so that it stays within memory.
const MOST: f64 = 3.0;

fn device_pixel_ratio() -> f64 {
    web_sys::window().map_or(1.0, |window| window.device_pixel_ratio())
}

/// Device pixels per CSS pixel for canvases, followed as it changes.
pub(crate) fn density() -> Signal<f64> {
    let ratio = RwSignal::new(device_pixel_ratio());
    let followed = StoredValue::new_local(None::<media::Followed>);
    Effect::new(move |_| {
        // A query asks for one density only: each new one needs a query of its own.
        let query = format!("(resolution: {}dppx)", ratio.get());
        followed.set_value(media::follow(&query, move |_| {
            ratio.try_set(device_pixel_ratio());
        }));
    });
    Signal::derive(move || ratio.get().clamp(1.0, MOST))
}
