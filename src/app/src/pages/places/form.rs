//! What is known of a place, as typed.

use crate::shell::app;
use crate::words;
use ::words::app::places as say;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leptos_router::hooks::use_navigate;
use record::{PlaceDetails, PlaceId, Unit};
use widgets::{TextField, TextKind};

/// The fields of a place; none for a new one.
#[component]
pub fn PlaceForm(place: Option<PlaceId>) -> impl IntoView {
    let door = app().door;
    let navigate = use_navigate();
    let before = door.story().with_untracked(|story| {
        place
            .and_then(|place| story.place(&place))
            .map(|place| place.details().clone())
    });
    let before = before.unwrap_or_default();
    let units = before
        .units
        .iter()
        .map(Unit::to_string)
        .collect::<Vec<_>>()
        .join("\n");
    let [name, address, contact, door_note, units] = [
        before.name,
        before.address,
        before.contact,
        before.door,
        units,
    ]
    .map(RwSignal::new);
    let past = RwSignal::new(before.past);
    let refused = RwSignal::new(Vec::<(String, String)>::new());
    let kept = RwSignal::new(false);
    let keeping = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        if keeping.get_untracked() {
            return;
        }
        kept.set(false);
        let text = |field: RwSignal<String>| field.get_untracked().trim().to_owned();
        let details = PlaceDetails {
            name: text(name),
            address: text(address),
            units: Unit::read_lines(&units.get_untracked()),
            contact: text(contact),
            door: text(door_note),
            past: past.get_untracked(),
        };
        let errors: Vec<_> = details
            .check()
            .into_iter()
            .map(|error| (error.field, error.sentence))
            .collect();
        let fine = errors.is_empty();
        refused.set(errors);
        if !fine {
            return;
        }
        keeping.set(true);
        let navigate = navigate.clone();
        leptos::task::spawn_local(async move {
            match door.put_place(place, details).await {
                Ok(new) if place.is_none() => navigate(
                    &words::place_path(&new),
                    leptos_router::NavigateOptions::default(),
                ),
                Ok(_) => kept.set(true),
                Err(sentence) => refused.set(vec![("all".into(), sentence)]),
            }
            keeping.try_set(false);
        });
    };
    let said = move |field: &'static str| {
        Signal::derive(move || {
            refused.with(|all| {
                all.iter()
                    .find(|(name, _)| name.starts_with(field))
                    .map(|(_, sentence)| sentence.clone())
            })
        })
    };
    view! {
        <form class="sheet form" id="place-form" on:submit=submit>
            <TextField id="place-name" label=say::name() value=name error=said("name") on_change=move |text| name.set(text)/>
            <TextField id="place-address" label=say::address() value=address on_change=move |text| address.set(text)/>
            <TextField id="place-units" label=say::units_their_rooms() hint=say::units_hint() kind=TextKind::Lines
                value=units error=said("units") on_change=move |text| units.set(text)/>
            <TextField id="place-contact" label=say::whom_ask() value=contact on_change=move |text| contact.set(text)/>
            <TextField id="place-door" label=say::know_door() kind=TextKind::Lines value=door_note on_change=move |text| door_note.set(text)/>
            <label class="tick"><input type="checkbox" id="place-past" prop:checked=past on:change:target=move |event| past.set(event.target().checked())/><span>{say::no_longer_visited()}</span></label>
            <p class="field-error" role="alert" id="place-said">{said("all")}</p>
            <div class="row writes"><span role="status" class="soft">{move || kept.get().then_some(say::kept())}</span><button class="act" type="submit" id="keep-place">{say::keep()}</button></div>
        </form>
    }
    .into_any()
}
