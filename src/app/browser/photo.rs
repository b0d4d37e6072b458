//! Photos as they come from a camera, made small.

use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;
use web_sys::{CanvasRenderingContext2d, File, HtmlCanvasElement, HtmlImageElement, Url};

/// Longest side of a photo that is kept, px.
const LONGEST_SIDE_PX: f64 = 1024.0;
/// How much of its detail a JPEG keeps, 0 to 1.
const QUALITY: f64 = 0.8;

/// Hands on the address of the scaled photo; none when the file is no image that the browser knows.
pub(crate) fn scale_down(file: &File, done: impl FnOnce(Option<String>) + 'static) {
    let (Ok(image), Ok(url)) = (
        HtmlImageElement::new(),
        Url::create_object_url_with_blob(file),
    ) else {
        return done(None);
    };
    let (shown, address) = (image.clone(), url.clone());
    let closure = Closure::once_into_js(move || {
        shown.set_onload(None);
        shown.set_onerror(None);
        done(drawn(&shown));
        // An address that is gone already needs no freeing.
        let _ = Url::revoke_object_url(&address);
    });
    image.set_onload(Some(closure.unchecked_ref()));
    image.set_onerror(Some(closure.unchecked_ref()));
    image.set_src(&url);
}

fn drawn(image: &HtmlImageElement) -> Option<String> {
    let size = [image.natural_width(), image.natural_height()].map(f64::from);
    let longest = size[0].max(size[1]);
    if longest <= 0.0 {
        return None;
    }
    let factor = (LONGEST_SIDE_PX / longest).min(1.0);
    let [width, height] = size.map(|side| (side * factor).round().max(1.0));
    let canvas: HtmlCanvasElement = web_sys::window()?
        .document()?
        .create_element("canvas")
        .ok()?
        .dyn_into()
        .ok()?;
    canvas.set_width(width as u32);
    canvas.set_height(height as u32);
    let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
    context
        .draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width, height)
        .ok()?;
    canvas
        .to_data_url_with_type_and_encoder_options("image/jpeg", &JsValue::from(QUALITY))
        .ok()
}
