//! Ways into a vault that is elsewhere, and who comes by them.

use super::bring_back::BringBack;
use super::found::FoundVault;
use super::join::Join;
use super::made_up::LookAround;
use ::words::app::gate as say;
use leptos::prelude::*;
use widgets::TextField;

/// A way in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Make,
    Join,
    BringBack,
}

/// A tablet without a vault: make one, or come to one that is elsewhere.
#[component]
pub fn NoVault() -> impl IntoView {
    let way = RwSignal::new(Way::Make);
    view! {
        {move || match way.get() {
            Way::Make => view! { <LookAround/><FoundVault/><Elsewhere way/> }.into_any(),
            Way::Join => view! { <Join/><Back way/> }.into_any(),
            Way::BringBack => view! { <BringBack/><Back way/> }.into_any(),
        }}
    }
}

#[component]
fn Elsewhere(way: RwSignal<Way>) -> impl IntoView {
    view! {
        <section class="sheet gate-sheet" id="elsewhere">
            <h2>{say::vault_already()}</h2>
            <div class="row">
                <button class="pill" type="button" id="to-join" on:click=move |_| way.set(Way::Join)>{say::to_join()}</button>
                <button class="pill" type="button" id="to-bring-back" on:click=move |_| way.set(Way::BringBack)>{say::to_bring_back()}</button>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn Back(way: RwSignal<Way>) -> impl IntoView {
    view! { <button class="pill" type="button" id="to-make" on:click=move |_| way.set(Way::Make)>{say::back_to_making()}</button> }
        .into_any()
}

/// The examiner's and the tablet's names.
#[derive(Clone, Copy)]
pub struct Named {
    examiner: RwSignal<String>,
    tablet: RwSignal<String>,
}

impl Named {
    /// Nothing typed yet.
    pub fn new() -> Self {
        Self {
            examiner: RwSignal::new(String::new()),
            tablet: RwSignal::new(say::second_tablet().to_owned()),
        }
    }

    /// Both, without blanks around them.
    ///
    /// # Errors
    /// A sentence where one is missing.
    pub fn given(self) -> Result<(String, String), String> {
        let given = |text: RwSignal<String>| text.get_untracked().trim().to_owned();
        let (examiner, tablet) = (given(self.examiner), given(self.tablet));
        if examiner.is_empty() {
            return Err(say::whose_name().into());
        }
        if tablet.is_empty() {
            return Err(say::what_tablet_called().into());
        }
        Ok((examiner, tablet))
    }
}

/// Asks for both.
#[component]
pub fn Who(named: Named) -> impl IntoView {
    let Named { examiner, tablet } = named;
    view! {
        <TextField id="examiner" label=say::your_name() value=examiner on_change=move |text| examiner.set(text)/>
        <TextField id="tablet-name" label=say::tablet_called() value=tablet on_change=move |text| tablet.set(text)/>
    }
    .into_any()
}
