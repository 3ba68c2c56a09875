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

/// Where less than half of the screen is left below a field, it goes to the top: what is found has to be seen while a phone's
/// keyboard takes the lower half.
fn make_room_below(field: &web_sys::Element) {
    let height = window()
        .inner_height()
        .ok()
        .and_then(|height| height.as_f64());
    if height.is_some_and(|height| field.get_bounding_client_rect().top() > height / 2.0) {
        field.scroll_into_view();
    }
}

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
                    autocomplete="off" prop:value=search.asked on:focus:target=move |event| make_room_below(&event.target()) on:input:target=move |event| search.ask(event.target().value())/>
                <a class="act writes" id="new-person" href="/people/new">{say::new_person()}</a>
            </div>
            <FoundPlaces places=search.places()/>
            <People search/>
        </main>
    }
}
