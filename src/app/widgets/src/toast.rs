//! A word about what was just done, with the way back.

use ::words::app::widgets as say;
use leptos::prelude::*;

/// A strip at the foot of the screen. It stays until it is answered or the page takes it away: nothing moves under the
/// finger, and nobody has to read against a clock.
#[component]
pub fn Toast(
    /// The strip's id. Its parts are `{id}-act` and `{id}-close`.
    #[prop(into)]
    id: String,
    /// What was done; none hides the strip.
    #[prop(into)]
    words: Signal<Option<String>>,
    /// The way back, such as "undo".
    #[prop(default = say::undo().into(), into)]
    action: String,
    /// Called when the way back is taken.
    #[prop(into)]
    on_action: Callback<()>,
    /// Called when the strip is put away.
    #[prop(into)]
    on_close: Callback<()>,
) -> impl IntoView {
    let ids = (format!("{id}-act"), format!("{id}-close"));
    view! {
        <div class="toast" id=id data-part="toast" class:toast-empty=move || words.with(Option::is_none)>
            <span class="toast-words" role="status">{words}</span>
            <Show when=move || words.with(Option::is_some)>
                <button type="button" class="pill" id=ids.0.clone() on:click=move |_| on_action.run(())>{action.clone()}</button>
                <button type="button" class="pill" id=ids.1.clone() on:click=move |_| on_close.run(())>{say::close()}</button>
            </Show>
        </div>
    }
}
