//! The list that a day works through: readiness first, then people by room.

mod begin;
mod people;

use super::keys::SheetDue;
use super::places::FoundPlaces;
use super::readiness::Readiness;
use super::round::AtHand;
use crate::shell::TopBar;
use crate::words;
use ::words::app::pages as say;
pub use begin::{Action, Begin};
use leptos::prelude::*;
use people::{People, Search};

/// Readiness, then everybody on this tablet.
#[component]
pub fn RoundsPage() -> impl IntoView {
    let search = Search::new();
    view! {
        <TopBar title=say::rounds() beside=words::long_date(crate::edge::clock::today())>
            <a class="pill" id="to-sums" href="/sums">{say::sums()}</a>
            <a class="pill" id="to-log" href="/log">{say::log()}</a>
            <a class="pill" id="to-vault" href="/vault">{say::vault()}</a>
        </TopBar>
        <main class="page">
            <SheetDue/>
            <Readiness/>
            <AtHand/>
            <div class="find-row">
                <input id="find" class="text-input" type="search" aria-label=say::find_by() placeholder=say::find()
                    autocomplete="off" prop:value=search.asked on:input:target=move |event| search.ask(event.target().value())/>
                <a class="act writes" id="new-person" href="/people/new">{say::new_person()}</a>
            </div>
            <FoundPlaces places=search.places()/>
            <People search/>
        </main>
    }
}
