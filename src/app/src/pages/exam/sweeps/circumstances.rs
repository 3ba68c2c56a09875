//! What the eye being worked on lets see, and what it starts from, each on its pill.

use super::desk::Desk;
use super::start::StartPill;
use super::words;
use crate::words::NOTHING;
use leptos::prelude::*;
use optics::format::plain;
use optics::retinoscopy::{Circumstances, Media, Reflex};
use optics::{Meridian, limits};
use widgets::{AxisDial, Choice, ChoiceLook, Pick, Pill, Sheet, Stepper, Unit};

/// Pupil, reflex, media, meridians and start of the eye being worked on.
#[component]
pub fn EyePills(
    /// Both eyes' sweeping.
    desk: Desk,
) -> impl IntoView {
    view! {
        <PupilPill desk/>
        <OneOfPill desk id="reflex" title="How does the reflex look?" all=Reflex::ALL.to_vec() word=words::reflex
            of=|eye| eye.reflex put=|eye, reflex| eye.reflex = reflex/>
        <OneOfPill desk id="media" title="How clear are the media?" all=Media::ALL.to_vec() word=words::media
            of=|eye| eye.media put=|eye, media| eye.media = media/>
        <MeridiansPill desk/>
        <StartPill desk/>
    }
}

fn now(desk: Desk) -> Circumstances {
    desk.sweeping(desk.working.get()).circumstances
}

fn put_now(desk: Desk, change: impl FnOnce(&mut Circumstances)) {
    let mut circumstances = untrack(|| now(desk));
    change(&mut circumstances);
    desk.put_circumstances(desk.working.get_untracked(), circumstances);
}

#[component]
fn PupilPill(desk: Desk) -> impl IntoView {
    let open = RwSignal::new(false);
    let width = Signal::derive(move || now(desk).pupil_mm());
    let shown = Signal::derive(move || {
        let mm = |mm| format!("{} mm", plain(mm, 1));
        width.get().map_or_else(|| NOTHING.to_owned(), mm)
    });
    let put = move |mm: Option<f64>| {
        put_now(desk, |eye| {
            // The stepper's own check has refused what is no pupil.
            if let Ok(said) = Circumstances::new(mm, eye.media, eye.reflex) {
                *eye = said;
            }
        });
    };
    let check = Callback::new(|mm| limits::pupil_mm(mm).map_err(|error| error.to_string()));
    view! {
        <Pill id="pupil" label="pupil" value=shown on_press=move |()| open.set(true)/>
        <Sheet id="pupil-sheet" title="How wide is the pupil?" open=open on_close=move |()| open.set(false)>
            <Stepper id="pupil-mm" label="pupil" value=width step=0.5 min=limits::PUPIL_MM.low max=limits::PUPIL_MM.high decimals=1
                start=3.0 unit=Unit::Millimetres check=check on_change=move |mm| put(Some(mm)) on_clear=move |()| put(None)/>
        </Sheet>
    }
    .into_any()
}

/// One word of a few. Chosen, it closes its sheet.
#[component]
fn OneOfPill<T>(
    desk: Desk,
    id: &'static str,
    title: &'static str,
    all: Vec<T>,
    word: fn(T) -> &'static str,
    of: fn(&Circumstances) -> Option<T>,
    put: fn(&mut Circumstances, Option<T>),
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let open = RwSignal::new(false);
    let chosen = Signal::derive(move || of(&now(desk)));
    let shown = Signal::derive(move || chosen.get().map_or(NOTHING, word).to_owned());
    let picks = move || {
        all.iter()
            .map(|each| Pick::new(*each, word(*each)))
            .collect()
    };
    let choose = move |each| {
        put_now(desk, |eye| put(eye, Some(each)));
        open.set(false);
    };
    view! {
        <Pill id=id label=id value=shown on_press=move |()| open.set(true)/>
        <Sheet id=format!("{id}-sheet") title=title open=open on_close=move |()| open.set(false)>
            <Choice id=format!("{id}-is") label=title unseen_label=true look=ChoiceLook::Squares picks=picks() value=chosen on_change=choose/>
        </Sheet>
    }
    .into_any()
}

/// The two meridians that the streak is turned to.
#[component]
fn MeridiansPill(desk: Desk) -> impl IntoView {
    let open = RwSignal::new(false);
    let cross = move || desk.hand(desk.working.get()).cross();
    let shown = Signal::derive(move || {
        let [one, other] = cross().map(words::degrees);
        format!("{one}, {other}")
    });
    let first = Signal::derive(move || Some(cross()[0].degrees()));
    let check =
        Callback::new(|degrees| limits::meridian(degrees).map_err(|error| error.to_string()));
    let turn = move |degrees| {
        if let Ok(meridian) = Meridian::new(degrees) {
            desk.take_in_hand(desk.working.get_untracked(), |hand| {
                hand.meridian = meridian
            });
        }
    };
    // Meridians are turned as finely as a large cylinder's axis would be.
    let fine = Signal::stored(2.0);
    view! {
        <Pill id="meridians" label="meridians" value=shown on_press=move |()| open.set(true)/>
        <Sheet id="meridians-sheet" title="Which meridians?" open=open on_close=move |()| open.set(false)>
            <p class="soft">"Turn the meridian that is tested; the other lies 90 degrees from it. The streak stands across the meridian that it tests."</p>
            <AxisDial id="meridians-dial" label="meridian" value=first cyl=fine check=check on_change=turn/>
        </Sheet>
    }
    .into_any()
}
