//! Both eyes side by side, the right eye on the left as it faces the examiner; the one being worked on is outlined.

use ::words::app::exam as say;
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
    let fellow = if eye == Eye::Right {
        Eye::Left
    } else {
        Eye::Right
    };
    // Where only one card fits, the other eye is reached from this one.
    let over_there = move |ev: leptos::ev::MouseEvent| {
        ev.stop_propagation();
        working.set(fellow);
    };
    view! {
        <section class="eye-card" class:working=here id=format!("eye-{}", eye.word())
            aria-label=say::eye(&eye.said()) on:click=move |_| working.set(eye) on:focusin=move |_| working.set(eye)>
            <div class="eye-head">
                <button type="button" class="eye-name" id=format!("work-{}", eye.word()) aria-pressed=move || here().to_string()>
                    {eye.said().to_uppercase()}
                </button>
                <button type="button" class="eye-name eye-fellow" id=format!("work-{}-instead", fellow.word()) on:click=over_there>
                    {fellow.said().to_uppercase()}
                </button>
                <span class="eye-beside">{beside}</span>
            </div>
            {children()}
        </section>
    }
}
