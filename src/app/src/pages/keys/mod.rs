//! What opens the vault, who belongs to it, and how it is carried: the sheets on the vault's page and the pages behind them.

mod by_tablet;
mod carry;
mod copy;
mod enrol;
mod erase;
mod message;
mod passphrase;
mod sheet;
mod tablets;

pub use carry::{CarryPage, Picker};
pub use enrol::EnrolPage;
pub use erase::Erasing;
pub use message::{Camera, Heard, Told};
pub use passphrase::PassphrasePage;
pub use sheet::SheetPage;
pub use tablets::TabletsPage;

use crate::shell::app;
use ::words::app::keys as say;
use leptos::prelude::*;
use sync::Place;
use vault::Role;
use widgets::{Notice, Pick};

/// Where the recovery sheet is made.
pub const SHEET: &str = "/vault/sheet";
/// Where the passphrase is changed.
pub const PASSPHRASE: &str = "/vault/passphrase";
/// Where carry files are made and taken in.
pub const CARRY: &str = "/vault/carry";
/// The vault's tablets.
pub const TABLETS: &str = "/vault/tablets";
/// Where another one is added.
pub const TABLETS_NEW: &str = "/vault/tablets/new";

/// What a tablet may do, to choose from.
fn roles() -> Vec<Pick<Role>> {
    vec![
        Pick::new(Role::Lead, say::lead),
        Pick::new(Role::Clinician, say::clinician),
        Pick::new(Role::Viewer, say::viewer),
    ]
}

/// The sheets on the vault's page.
#[component]
pub fn KeysSheets() -> impl IntoView {
    let made_up = app().door.made_up;
    view! {
        <copy::SetUpAnew/>
        <Show when=move || !made_up.get()><Opening/></Show>
        <Carrying/>
        <Tablets/>
    }
    .into_any()
}

#[component]
fn Opening() -> impl IntoView {
    let sheet = app().door.standing.sheet;
    let due = move || sheet.get() == Some(false);
    view! {
        <section class="sheet" id="opening">
            <h2>{say::what_opens()}</h2>
            <Show when=due fallback=|| view! { <p class="soft" id="sheet-made">{say::sheet_made()}</p> }>
                <p class="caution" id="sheet-due">{say::sheet_due()}</p>
            </Show>
            <div class="row">
                <a class=move || if due() { "act" } else { "pill" } id="to-sheet" href=SHEET>{move || if due() { say::make_sheet_long() } else { say::make_new_sheet() }}</a>
                <a class="pill" id="to-passphrase" href=PASSPHRASE>{say::change_passphrase()}</a>
            </div>
            <by_tablet::ByTablet/>
        </section>
    }
    .into_any()
}

#[component]
fn Carrying() -> impl IntoView {
    view! {
        <section class="sheet" id="carrying">
            <h2>{say::carry_file()}</h2>
            <p>{say::carry_why()}</p>
            <div class="row"><a class="pill" id="to-carry" href=CARRY>{say::make_carry_file_take_one()}</a></div>
        </section>
    }
    .into_any()
}

#[component]
fn Tablets() -> impl IntoView {
    let standing = app().door.standing;
    // One that was removed is none of them, and says only that.
    let count = move || {
        standing.role.get()?;
        let here = standing.tablets.with(|tablets| {
            let here = tablets.iter();
            here.filter(|tablet| matches!(tablet.place, Place::Here(_)))
                .count()
        });
        Some(say::tablets_belong(here))
    };
    let role = move || match standing.role.get() {
        Some(Role::Viewer) => Some(say::reads_only()),
        Some(_) => None,
        None => Some(say::not_belonging()),
    };
    view! {
        <section class="sheet" id="tablets-sheet">
            <h2>{say::tablets()}</h2>
            {move || count().map(|said| view! { <p>{said}</p> })}
            {move || role().map(|said| view! { <p class="caution" id="own-role">{said}</p> })}
            <div class="row"><a class="pill" id="to-tablets" href=TABLETS>{say::tablets_add_rename_remove()}</a></div>
        </section>
    }
    .into_any()
}

/// Right after the vault was made: the sheet, now or later.
#[component]
pub fn SheetDue() -> impl IntoView {
    let standing = app().door.standing;
    view! {
        <Show when=move || standing.fresh.get()>
            <Notice id="sheet-first">
                <span>{say::sheet_first()}</span>
                <a class="pill" id="sheet-now" href=SHEET>{say::make_sheet()}</a>
                <button class="pill" type="button" id="sheet-later" on:click=move |_| standing.settled()>{say::later()}</button>
            </Notice>
        </Show>
    }
    .into_any()
}
