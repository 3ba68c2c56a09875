//! As a page: the measures become its text.

use crate::measure;

/// Measures and shows.
pub fn main() {
    let window = web_sys::window().expect("a page has a window");
    let performance = window.performance().expect("every browser has this clock");
    let document = window.document().expect("a page has a document");
    let measured = measure::all("browser", || performance.now() * 1e6);
    let text = measured.map_or_else(|error| error.to_string(), |measures| measures.to_string());
    let shown = document.create_element("pre").expect("a pre can be made");
    shown.set_id("measured");
    shown.set_text_content(Some(&text));
    let body = document.body().expect("the page has a body");
    body.append_child(&shown).expect("the body takes a pre");
}
