//! Both eyes side by side, the right eye on the left as it faces the examiner; the one being worked on is outlined.

use leptos::prelude::*;
use record::Eye;

/// The card of one eye. Tapping it makes it the one being worked on.
#[component]
pub fn EyeCard(
    /// Which eye.
    eye: Eye,
    /// The eye being worked on.
    working: RwSignal<Eye>,
    /// A word at the other end of the heading.
    #[prop(optional, into)]
    beside: Signal<String>,
    /// What stands in it.
    children: Children,
) -> impl IntoView {
    let here = move || working.get() == eye;
    view! {
        <section class="eye-card" class:working=here id=format!("eye-{}", eye.word())
            aria-label=format!("{} eye", eye.word()) on:click=move |_| working.set(eye) on:focusin=move |_| working.set(eye)>
            <div class="eye-head">
                <button type="button" class="eye-name" id=format!("work-{}", eye.word()) aria-pressed=move || here().to_string()>
                    {eye.word().to_uppercase()}
                </button>
                <span class="eye-beside">{beside}</span>
            </div>
            {children()}
        </section>
    }
}
