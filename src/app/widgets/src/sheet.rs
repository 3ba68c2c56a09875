//! A sheet laid over the page for one question.

use ::words::app::widgets as say;
use leptos::html;
use leptos::prelude::*;

/// A sheet over the page. The browser keeps the focus inside and gives it back; Escape, the close pill and a tap beside
/// the sheet all ask the page to close it.
#[component]
pub fn Sheet(
    /// The sheet's id. The close pill is `{id}-close`.
    #[prop(into)]
    id: String,
    /// What it is about.
    #[prop(into)]
    title: Signal<String>,
    /// Whether it is open.
    #[prop(into)]
    open: Signal<bool>,
    /// Called when it is asked to close.
    #[prop(into)]
    on_close: Callback<()>,
    /// What it holds; made afresh each time it opens.
    children: ChildrenFn,
) -> impl IntoView {
    let node = NodeRef::<html::Dialog>::new();
    Effect::new(move |_| {
        let (open, Some(dialog)) = (open.get(), node.get()) else {
            return;
        };
        if open && !dialog.open() {
            let _ = dialog.show_modal();
        } else if !open && dialog.open() {
            dialog.close();
        }
    });
    // The dialog's own box is hidden under its page, so what hits it hits the page behind. Both press and click must: a
    // number dragged beyond the sheet's edge closes nothing.
    let on_dialog = move |ev: &web_sys::Event| {
        node.get_untracked()
            .is_some_and(|dialog| event_target::<web_sys::Element>(ev) == **dialog)
    };
    let pressed = StoredValue::new(false);
    let beside = move |ev: leptos::ev::MouseEvent| {
        if on_dialog(&ev) && pressed.get_value() {
            on_close.run(());
        }
    };
    let title_id = format!("{id}-title");
    view! {
        <dialog class="over" id=id.clone() node_ref=node data-part="sheet" aria-labelledby=title_id
            on:pointerdown=move |ev| pressed.set_value(on_dialog(&ev))
            on:click=beside
            on:cancel=move |ev: leptos::ev::Event| {
                ev.prevent_default();
                on_close.run(());
            }
        >
            <div class="over-page">
                <header class="over-head">
                    <h2 id=title_id.clone()>{title}</h2>
                    <button type="button" class="pill" id=format!("{id}-close") on:click=move |_| on_close.run(())>{say::close()}</button>
                </header>
                <Show when=move || open.get()>{children()}</Show>
            </div>
        </dialog>
    }
}
