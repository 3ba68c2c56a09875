//! How much room a drawing has, so that it can fill it without its words growing or shrinking.

use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::Closure;

/// The rem that drawings are made for, in CSS pixels: that of a reader who keeps the browser's size of type.
const DRAWN_FOR: f64 = 17.0;

/// The watch on one element; it ends when this is dropped.
struct Watch {
    observer: web_sys::ResizeObserver,
    _called: Closure<dyn FnMut()>,
}

impl Drop for Watch {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

/// Width and height of an element, in units that grow with the reader's size of type; none before it stands on the page.
pub fn of(node: NodeRef<html::Div>) -> Signal<Option<(f64, f64)>> {
    let room = RwSignal::new(None);
    let watch = StoredValue::new_local(None::<Watch>);
    Effect::new(move |_| {
        let Some(element) = node.get() else { return };
        let look = move || {
            let Some(element) = node.try_get_untracked().flatten() else {
                return;
            };
            let (width, height) = (
                f64::from(element.client_width()),
                f64::from(element.client_height()),
            );
            let unit = unit();
            if width > 0.0 && height > 0.0 {
                room.try_set(Some((width / unit, height / unit)));
            }
        };
        look();
        let called = Closure::<dyn FnMut()>::new(look);
        if let Ok(observer) = web_sys::ResizeObserver::new(called.as_ref().unchecked_ref()) {
            observer.observe(&element);
            watch.set_value(Some(Watch {
                observer,
                _called: called,
            }));
        }
    });
    room.into()
}

/// One unit of a drawing, in CSS pixels.
fn unit() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    let pixels = size.and_then(|size| size.trim_end_matches("px").parse::<f64>().ok());
    pixels.map_or(1.0, |pixels| pixels / DRAWN_FOR)
}
