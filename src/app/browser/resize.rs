//! The size of an element in CSS pixels, followed as it changes.

use leptos::html::ElementType;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Element, ResizeObserver};

/// Width and height of the element in CSS pixels; zero until it is mounted.
pub(crate) fn size_of<E>(node: NodeRef<E>) -> RwSignal<(f64, f64)>
where
    E: ElementType + 'static,
    E::Output: JsCast + Clone + AsRef<Element> + 'static,
{
    let size = RwSignal::new((0.0, 0.0));
    let watching = StoredValue::new_local(None::<(ResizeObserver, Closure<dyn FnMut()>)>);
    Effect::new(move |_| {
        let Some(element) = node.get() else { return };
        let element: Element = AsRef::<Element>::as_ref(&element).clone();
        let watched = element.clone();
        let closure = Closure::<dyn FnMut()>::new(move || {
            // Fractions of a pixel count where a pixel is more than one of the screen's.
            let area = watched.get_bounding_client_rect();
            let now = (area.width(), area.height());
            if size.try_get_untracked().is_some_and(|before| before != now) {
                size.try_set(now);
            }
        });
        if let Ok(observer) = ResizeObserver::new(closure.as_ref().unchecked_ref()) {
            observer.observe(&element);
            watching.try_set_value(Some((observer, closure)));
        }
    });
    on_cleanup(move || {
        watching.try_update_value(|pair| {
            if let Some((observer, _)) = pair.take() {
                observer.disconnect();
            }
        });
    });
    size
}
