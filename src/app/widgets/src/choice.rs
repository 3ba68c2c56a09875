//! One of a few.

use ::words::{Language, in_language};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;

/// One thing that may be chosen.
pub struct Pick<T> {
    value: T,
    label: Label,
    below: Option<String>,
    picture: Option<AnyView>,
}

/// What a button says, and the tail of its id, which is made of the English words and so is the same in every language.
pub struct Label {
    said: String,
    slug: String,
}

impl Label {
    /// What this says in the language spoken.
    pub fn of<W: Into<String>>(says: impl Fn() -> W) -> Self {
        Self {
            said: says().into(),
            slug: slug(&in_language(Language::English, || says().into())),
        }
    }
}

impl<T> Pick<T> {
    /// A value and what says its word.
    pub fn new<W: Into<String>>(value: T, says: impl Fn() -> W) -> Self {
        Self::labelled(value, Label::of(says))
    }

    /// A value and its label.
    pub const fn labelled(value: T, label: Label) -> Self {
        Self {
            value,
            label,
            below: None,
            picture: None,
        }
    }

    /// What it stands for.
    pub fn value(&self) -> &T {
        &self.value
    }

    /// A softer word below.
    #[must_use]
    pub fn below(mut self, below: impl Into<String>) -> Self {
        self.below = Some(below.into());
        self
    }

    /// The last part of the button's id, where the English label makes none that is plain or unlike the others.
    #[must_use]
    pub fn slug(mut self, slug: impl Into<String>) -> Self {
        self.label.slug = slug.into();
        self
    }

    /// A drawing before the word.
    #[must_use]
    pub fn picture(mut self, picture: impl IntoAny) -> Self {
        self.picture = Some(picture.into_any());
        self
    }
}

/// How the choice lies.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum ChoiceLook {
    /// Side by side in one frame: a setting.
    #[default]
    Segments,
    /// Squares apart: an observation.
    Squares,
}

/// A radio group: one stop for the tab key, arrows move and choose. Each button is `{id}-{slug of its English label}`.
#[component]
pub fn Choice<T>(
    /// The group's id.
    #[prop(into)]
    id: String,
    /// What is being chosen.
    #[prop(into)]
    label: String,
    /// Whether the label is only for a screen reader.
    #[prop(optional)]
    unseen_label: bool,
    /// What may be chosen.
    picks: Vec<Pick<T>>,
    /// What is chosen; nothing where none.
    #[prop(into)]
    value: Signal<Option<T>>,
    /// Called with what is chosen.
    #[prop(into)]
    on_change: Callback<T>,
    /// Whether nothing can be chosen at present.
    #[prop(optional, into)]
    off: Signal<bool>,
    /// How it lies.
    #[prop(optional)]
    look: ChoiceLook,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let ids = StoredValue::new(
        picks
            .iter()
            .map(|pick| format!("{id}-{}", pick.label.slug))
            .collect::<Vec<_>>(),
    );
    let values = StoredValue::new(
        picks
            .iter()
            .map(|pick| pick.value.clone())
            .collect::<Vec<_>>(),
    );
    let chosen = Memo::new(move |_| {
        value.with(|v| {
            v.as_ref()
                .and_then(|v| values.with_value(|all| all.iter().position(|x| x == v)))
        })
    });
    let choose = move |place: usize| {
        if let (false, Some(value)) = (
            off.get_untracked(),
            values.with_value(|all| all.get(place).cloned()),
        ) {
            on_change.run(value);
        }
    };
    let keys = move |ev: KeyboardEvent, place: usize| {
        let Some(next) = neighbour(&ev.key(), place, values.with_value(Vec::len)) else {
            return;
        };
        ev.prevent_default();
        choose(next);
        focus(&ids.with_value(|ids| ids[next].clone()));
    };
    let buttons = picks.into_iter().enumerate().map(|(place, pick)| {
        let is_chosen = move || chosen.get() == Some(place);
        let stop = move || if is_chosen() || (chosen.get().is_none() && place == 0) { "0" } else { "-1" };
        view! {
            <button type="button" class="pick" role="radio" id=ids.with_value(|ids| ids[place].clone())
                aria-checked=move || is_chosen().to_string() tabindex=stop aria-disabled=move || off.get().then_some("true")
                on:click=move |_| choose(place) on:keydown=move |ev| keys(ev, place)>
                {pick.picture}
                <span class="pick-label">{pick.label.said}</span>
                {pick.below.map(|below| view! { <small class="pick-below">{below}</small> })}
            </button>
        }
    });
    let frame = if look == ChoiceLook::Segments {
        "choice segments"
    } else {
        "choice squares"
    };
    let seen = (!unseen_label)
        .then(|| view! { <span class="choice-label" aria-hidden="true">{label.clone()}</span> });
    view! {
        <div class=frame data-part="choice">
            {seen}
            <div class="picks" role="radiogroup" id=id.clone() aria-label=label aria-disabled=move || off.get().then_some("true")>
                {buttons.collect_view()}
            </div>
        </div>
    }
    .into_any()
}

pub(crate) fn focus(id: &str) {
    use wasm_bindgen::JsCast;
    let button = document()
        .get_element_by_id(id)
        .and_then(|found| found.dyn_into::<web_sys::HtmlElement>().ok());
    if let Some(button) = button {
        let _ = button.focus();
    }
}

/// The place that a key leads to from `place` among `of`, round the ends.
fn neighbour(key: &str, place: usize, of: usize) -> Option<usize> {
    match key {
        "ArrowRight" | "ArrowDown" => Some((place + 1) % of),
        "ArrowLeft" | "ArrowUp" => Some((place + of - 1) % of),
        "Home" => Some(0),
        "End" => Some(of - 1),
        _ => None,
    }
}

/// A label as the tail of an id: "6/36" is "6-36", "−2" is "minus-2", "hand moves" is "hand-moves".
fn slug(label: &str) -> String {
    let spelt = label
        .replace(['\u{2212}'], "minus-")
        .replace('+', "plus-")
        .to_lowercase();
    let dashed: String = spelt
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { '-' })
        .collect();
    dashed
        .split('-')
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("-")
}

#[cfg(test)]
mod tests {
    use super::{Label, neighbour, slug};
    use ::words::{Language, app::widgets as say, in_language};

    #[test]
    fn ids_are_the_same_in_every_language() {
        let german = in_language(Language::German, || Label::of(say::no_light));
        assert_eq!(
            (german.said.as_str(), german.slug.as_str()),
            ("kein Licht", "no-light")
        );
    }

    #[test]
    fn arrows_go_round() {
        assert_eq!(neighbour("ArrowRight", 2, 3), Some(0));
        assert_eq!(neighbour("ArrowUp", 0, 3), Some(2));
        assert_eq!(neighbour("End", 0, 3), Some(2));
        assert_eq!(neighbour("Tab", 0, 3), None);
    }

    #[test]
    fn labels_make_plain_ids() {
        assert_eq!(slug("6/36"), "6-36");
        assert_eq!(slug("\u{2212}2"), "minus-2");
        assert_eq!(slug("+2"), "plus-2");
        assert_eq!(slug("can\u{2019}t tell"), "can-t-tell");
    }
}
