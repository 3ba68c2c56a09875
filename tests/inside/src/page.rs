//! What became of each case, on the page: a section for each set, in it a line for each case.

use crate::{Case, Ended, Set};
use web_sys::{Document, Element, HtmlElement};

/// The page to show it on.
pub struct Page {
    document: Document,
    body: HtmlElement,
}

impl Page {
    pub fn open() -> Self {
        let window = web_sys::window().expect("a page has a window");
        let document = window.document().expect("a page has a document");
        let body = document.body().expect("the page has a body");
        Self { document, body }
    }

    /// Shows a set below those before it.
    pub fn show(&self, set: &Set) {
        let section = self.add(&self.body, "section", "");
        mark(&section, "data-set", set.name);
        mark(&section, "data-stated", &set.stated.to_string());
        self.add(&section, "h2", set.name);
        let list = self.add(&section, "ol", "");
        set.cases.iter().for_each(|case| self.line(&list, case));
    }

    /// Says that there is no more to come.
    pub fn end(&self) {
        let end = self.add(&self.body, "p", "That is all.");
        end.set_id("all");
    }

    fn line(&self, list: &Element, Case { name, ended }: &Case) {
        let (word, said) = match ended {
            Ended::Passed => ("passed", format!("{name}: passed")),
            Ended::LeftOut(why) => ("left-out", format!("{name}: left out, {why}")),
            Ended::Failed(how) => ("failed", format!("{name}: failed, {how}")),
        };
        let line = self.add(list, "li", &said);
        mark(&line, "data-ended", word);
    }

    fn add(&self, within: &Element, tag: &str, text: &str) -> Element {
        let made = self.document.create_element(tag);
        let made = made.expect("these are good names of elements");
        made.set_text_content(Some(text));
        let added = within.append_child(&made);
        added.expect("an element takes another");
        made
    }
}

fn mark(element: &Element, name: &str, value: &str) {
    let marked = element.set_attribute(name, value);
    marked.expect("these are good names of attributes");
}
