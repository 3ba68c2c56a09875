//! Every tablet is lost: the recovery sheet and a carry file bring the records back on a new one.

use super::coming::{Named, Who};
use super::new_passphrase::{NewPassphrase, Passphrase, Written};
use crate::pages::keys::Picker;
use crate::session::Coming;
use crate::shell::app;
use ::words::app::gate as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use std::sync::Arc;
use widgets::TextField;

/// Asks for the code, the file, and what a new tablet needs.
#[component]
pub fn BringBack() -> impl IntoView {
    let door = app().door;
    let (who, passphrase) = (Named::new(), Passphrase::offered());
    let code = RwSignal::new(String::new());
    let file = RwSignal::new(None::<Arc<Vec<u8>>>);
    let said = RwSignal::new(None::<String>);
    let bringing = RwSignal::new(false);
    let picked = move |bytes: Result<Vec<u8>, String>| match bytes {
        Ok(bytes) => {
            file.set(Some(Arc::new(bytes)));
            said.set(None);
        }
        Err(sentence) => said.set(Some(sentence)),
    };
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if bringing.get_untracked() {
            return;
        }
        let given = || {
            let carried = file
                .get_untracked()
                .ok_or_else(|| say::pick_carry_file_first().to_owned())?;
            let (examiner, tablet) = who.given()?;
            let passphrase = passphrase.written_down()?;
            let coming = Coming {
                examiner,
                tablet,
                passphrase,
            };
            Ok((carried, coming))
        };
        let (carried, coming) = match given() {
            Ok(given) => given,
            Err(sentence) => return said.set(Some(sentence)),
        };
        bringing.set(true);
        said.set(None);
        leptos::task::spawn_local(async move {
            let code = code.get_untracked();
            if let Err(sentence) = door.bring_back(&code, &carried, coming).await {
                said.set(Some(sentence));
                bringing.set(false);
            }
        });
    };
    let size = move || {
        file.with(|file| {
            file.as_ref()
                .map(|file| say::kb_picked(&file.len().div_ceil(1000)))
        })
    };
    view! {
        <form class="sheet gate-sheet" id="bring-back" on:submit=submit>
            <h1>{say::bring_vault_back()}</h1>
            <p>{say::bring_back_how()}</p>
            <TextField id="recovery-code" label=say::seven_groups() value=code on_change=move |text| { code.set(text); said.set(None); }/>
            <div class="row"><Picker id="carried" label=say::pick_carry_file() on_picked=picked/><span id="carried-size">{size}</span></div>
            <Who named=who/>
            <NewPassphrase passphrase/>
            <Written passphrase/>
            <p class="field-error" id="bring-said" role="alert">{move || said.get()}</p>
            <button class="act" type="submit" id="bring-it-back" aria-disabled=move || bringing.get().to_string()>
                {move || if bringing.get() { say::bringing_back() } else { say::bring_it_back() }}
            </button>
        </form>
    }
    .into_any()
}
