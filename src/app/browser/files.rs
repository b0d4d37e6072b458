//! Files in and out: hand a text to the user as a download, read the files they pick or drop.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Blob, BlobPropertyBag, File, FileReader, HtmlAnchorElement, Url};

/// Offers `text` as a file of that name.
pub(crate) fn offer(name: &str, mime: &str, text: &str) -> Option<()> {
    let parts = js_sys::Array::of1(&text.into());
    let kind = BlobPropertyBag::new();
    kind.set_type(mime);
    offer_whole(
        name,
        &Blob::new_with_str_sequence_and_options(&parts, &kind).ok()?,
    )
}

/// Offers a table for a spreadsheet, with the mark by which spreadsheets tell UTF-8: °C reads as it should.
pub(crate) fn offer_table(name: &str, text: &str) -> Option<()> {
    offer(name, "text/csv", &format!("\u{feff}{text}"))
}

/// Offers what is a file already under that name.
pub(crate) fn offer_whole(name: &str, content: &Blob) -> Option<()> {
    let url = Url::create_object_url_with_blob(content).ok()?;
    let anchor: HtmlAnchorElement = web_sys::window()?
        .document()?
        .create_element("a")
        .ok()?
        .dyn_into()
        .ok()?;
    anchor.set_href(&url);
    anchor.set_download(name);
    anchor.click();
    Url::revoke_object_url(&url).ok()
}

/// Reads a file as text and hands it on; `None` when it cannot be read.
pub(crate) fn read_text(file: &File, done: impl FnOnce(Option<String>) + 'static) {
    let Ok(reader) = FileReader::new() else {
        return done(None);
    };
    let read = reader.clone();
    let closure = Closure::once_into_js(move || {
        done(read.result().ok().and_then(|text| text.as_string()));
    });
    reader.set_onloadend(Some(closure.unchecked_ref()));
    // A refusal also ends in `loadend`.
    let _ = reader.read_as_text(file);
}
