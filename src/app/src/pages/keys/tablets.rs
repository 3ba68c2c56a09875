//! The tablets of the vault: what they are called, what they may do, when they wrote last; renaming, removing.

use super::{TABLETS_NEW, roles};
use crate::edge::clock;
use crate::shell::{TopBar, app};
use crate::words;
use ::words::app::keys as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use sync::{Place, Tablet};
use vault::{DeviceId, Role};
use widgets::{Choice, Sheet, TextField};

/// The page.
#[component]
pub fn TabletsPage() -> impl IntoView {
    let standing = app().door.standing;
    let going = RwSignal::new(None::<Tablet>);
    let said = RwSignal::new(None::<String>);
    let (leads, tablets) = (
        Memo::new(move |_| standing.leads()),
        Memo::new(move |_| standing.tablets.get()),
    );
    view! {
        <TopBar title=say::tablets()><a class="pill" id="back-to-vault" href="/vault">{say::vault()}</a></TopBar>
        <main class="page">
            <p class="field-error" id="tablets-said" role="alert">{move || said.get()}</p>
            <ul class="tablets" id="tablets">
                {move || {
                    let leads = leads.get();
                    tablets.get().into_iter().map(|tablet| view! { <Row tablet leads going said/> }).collect_view()
                }}
            </ul>
            <Show when=move || leads.get() fallback=|| view! { <p class="soft">{say::only_lead()}</p> }>
                <p><a class="act" id="add-tablet" href=TABLETS_NEW>{say::add_tablet()}</a></p>
            </Show>
            <Renaming/>
            <Removing going said/>
        </main>
    }
}

#[component]
fn Row(
    tablet: Tablet,
    leads: bool,
    going: RwSignal<Option<Tablet>>,
    said: RwSignal<Option<String>>,
) -> impl IntoView {
    let id = format!("tablet-{}", &tablet.device.to_string()[..8]);
    let others = leads && !tablet.own;
    let here = matches!(tablet.place, Place::Here(_));
    let stands = place(tablet.place);
    let wrote = last_wrote(tablet.device, tablet.entries);
    let removable = others && here;
    let changed = others && tablet.place != Place::Removed;
    let name = called(&tablet);
    let own = tablet.own.then_some(say::tablet());
    let kept = StoredValue::new(tablet);
    view! {
        <li class="sheet tablet" id=id.clone() class:tablet-gone=!here>
            <div class="tablet-head"><b class="tablet-name">{name}</b><span class="soft">{own}</span></div>
            <p class="tablet-stands">{stands}</p>
            <p class="soft">{wrote}</p>
            {changed.then(|| view! { <Roles id=format!("{id}-role") tablet=kept.get_value() said/> })}
            {removable.then(|| view! {
                <div><button class="pill" type="button" id=format!("{id}-remove") on:click=move |_| going.set(Some(kept.get_value()))>{say::remove()}</button></div>
            })}
        </li>
    }
    .into_any()
}

#[component]
fn Roles(id: String, tablet: Tablet, said: RwSignal<Option<String>>) -> impl IntoView {
    let door = app().door;
    let (device, chosen) = (tablet.device, role_of(tablet.place));
    let change = move |role: Role| {
        leptos::task::spawn_local(async move {
            said.set(door.set_role(device, role).await.err());
        });
    };
    let label = if chosen.is_some() {
        say::what_it_may()
    } else {
        say::let_word()
    };
    view! { <Choice id=id label=label picks=roles() value=Signal::stored(chosen) on_change=change/> }
        .into_any()
}

fn role_of(place: Place) -> Option<Role> {
    match place {
        Place::Here(role) => Some(role),
        Place::Removed | Place::NotAdmitted => None,
    }
}

fn place(place: Place) -> &'static str {
    match place {
        Place::Here(Role::Lead) => say::lead_may(),
        Place::Here(Role::Clinician) => say::clinician_may(),
        Place::Here(Role::Viewer) => say::viewer_may(),
        Place::Removed => say::removed(),
        Place::NotAdmitted => say::not_admitted(),
    }
}

fn called(tablet: &Tablet) -> String {
    let short = || say::tablet_2(&&tablet.device.to_string()[..8]);
    tablet.name.clone().unwrap_or_else(short)
}

/// When it wrote last, as far as that is known here.
fn last_wrote(device: DeviceId, entries: u64) -> String {
    let heard = app().door.standing.heard;
    let last = heard.with(|heard| heard.get(&device).copied());
    match (last, entries) {
        (Some(last), _) => say::last_wrote(&words::moment(clock::at(last))),
        (None, 0) => say::not_heard_of().to_owned(),
        (None, _) => say::written_nothing_yet().to_owned(),
    }
}

/// This tablet's own name.
#[component]
fn Renaming() -> impl IntoView {
    let door = app().door;
    let own = Memo::new(move |_| {
        let tablets = door.standing.tablets.get();
        tablets.iter().find(|tablet| tablet.own).map(called)
    });
    let name = RwSignal::new(own.get_untracked().unwrap_or_default());
    let said = RwSignal::new(None::<String>);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        leptos::task::spawn_local(async move {
            said.set(door.rename_tablet(&name.get_untracked()).await.err());
        });
    };
    view! {
        <form class="sheet" id="rename" on:submit=submit>
            <h2>{say::tablets_name()}</h2>
            <TextField id="tablet-called" label=say::what_called_all_tablets() value=name on_change=move |text| name.set(text) error=said/>
            <div class="row"><button class="pill" type="submit" id="keep-name">{say::call()}</button></div>
        </form>
    }
    .into_any()
}

/// The question before a tablet is removed.
#[component]
fn Removing(going: RwSignal<Option<Tablet>>, said: RwSignal<Option<String>>) -> impl IntoView {
    let door = app().door;
    let title = move || {
        let name = going.with(|tablet| tablet.as_ref().map(called));
        say::remove_name(&name.unwrap_or_default())
    };
    let remove = move |_| {
        let Some(tablet) = going.get_untracked() else {
            return;
        };
        going.set(None);
        leptos::task::spawn_local(async move {
            said.set(door.remove_tablet(tablet.device).await.err());
        });
    };
    view! {
        <Sheet id="removing" title=Signal::derive(title) open=Signal::derive(move || going.with(Option::is_some)) on_close=move |()| going.set(None)>
            <p>{say::removing_means()}</p>
            <div class="row">
                <button class="pill" type="button" id="keep-it" on:click=move |_| going.set(None)>{say::keep()}</button>
                <button class="act" type="button" id="remove-it" on:click=remove>{say::remove_2()}</button>
            </div>
        </Sheet>
    }
    .into_any()
}
