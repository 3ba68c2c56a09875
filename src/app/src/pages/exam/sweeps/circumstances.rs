//! What the eye being worked on lets see, and what it starts from, each on its pill.

use super::desk::Desk;
use super::start::StartPill;
use super::words;
use crate::words::NOTHING;
use ::words::app::exam_sweeps as say;
use leptos::prelude::*;
use optics::format::plain;
use optics::retinoscopy::{Circumstances, Media, Reflex};
use optics::{Meridian, limits};
use record::{Cycloplegic, OneOf};
use widgets::{AxisDial, Choice, ChoiceLook, Pick, Pill, Sheet, Stepper, TextField, Unit};

/// Pupil, reflex, media, meridians and start of the eye being worked on.
#[component]
pub fn EyePills(
    /// Both eyes' sweeping.
    desk: Desk,
) -> impl IntoView {
    view! {
        <PupilPill desk/>
        <OneOfPill desk id="reflex" label=say::reflex() title=say::how_does_reflex_look() all=Reflex::ALL.to_vec() word=|reflex: Reflex| reflex.in_words()
            of=|eye| eye.reflex put=|eye, reflex| eye.reflex = reflex/>
        <OneOfPill desk id="media" label=say::media() title=say::how_clear_media() all=Media::ALL.to_vec() word=|media: Media| media.in_words()
            of=|eye| eye.media put=|eye, media| eye.media = media/>
        <MeridiansPill desk/>
        <AlsoPill desk/>
        <StartPill desk/>
    }
}

fn now(desk: Desk) -> Circumstances {
    desk.circumstances(desk.working.get()).get()
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
        let mm = |mm| say::mm(&plain(mm, 1));
        width.get().map_or_else(|| NOTHING.to_owned(), mm)
    });
    let put = move |mm: Option<f64>| {
        put_now(desk, |eye| {
            // The stepper's own check has refused what is no pupil.
            if let Ok(said) = Circumstances::new(mm, eye.media, eye.reflex)
                .and_then(|said| said.off_the_line_of_sight(eye.off_sight()))
            {
                *eye = said;
            }
        });
    };
    let check = Callback::new(|mm| limits::pupil_mm(mm).map_err(|error| error.to_string()));
    view! {
        <Pill id="pupil" label=say::pupil() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="pupil-sheet" title=say::how_wide_pupil() open=open on_close=move |()| open.set(false)>
            <Stepper id="pupil-mm" label=say::pupil() value=width step=0.5 min=limits::PUPIL_MM.low max=limits::PUPIL_MM.high decimals=1
                start=3.0 unit=Unit::Millimetres check=check on_change=move |mm| put(Some(mm)) on_clear=move |()| put(None)/>
        </Sheet>
    }
    .into_any()
}

/// What else bears on the eye: a look from beside the line of sight, and drops that keep it from focusing.
#[component]
fn AlsoPill(desk: Desk) -> impl IntoView {
    let open = RwSignal::new(false);
    let given = Memo::new(move |_| {
        let eye = desk.working.get();
        desk.value
            .with(|section| section.swept.of(eye).drops.clone())
    });
    let shown = Signal::derive(move || {
        let beside = now(desk)
            .off_sight()
            .map(|degrees| say::beside(&plain(degrees, 0)));
        let drops = given.get().map(|given| say::drops_before(&given.minutes));
        let said: Vec<String> = beside.into_iter().chain(drops).collect();
        if said.is_empty() {
            NOTHING.to_owned()
        } else {
            said.join(", ")
        }
    });
    view! {
        <Pill id="also" label=say::also() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="also-sheet" title=say::what_else_bears_eye() open=open on_close=move |()| open.set(false)>
            <Beside desk/>
            <Drops desk given=given.into()/>
        </Sheet>
    }
    .into_any()
}

/// How far beside the line of sight the examiner looks from.
#[component]
fn Beside(desk: Desk) -> impl IntoView {
    let degrees = Signal::derive(move || Some(now(desk).off_sight().unwrap_or_default()));
    let put = move |degrees: f64| {
        put_now(desk, |eye| {
            // The stepper's own check has refused what no figures reach.
            if let Ok(said) = eye.off_the_line_of_sight((degrees > 0.0).then_some(degrees)) {
                *eye = said;
            }
        });
    };
    let check =
        Callback::new(|degrees| limits::off_sight(degrees).map_err(|error| error.to_string()));
    view! {
        <Stepper id="beside-degrees" label=say::degrees_beside_line_sight() value=degrees step=1.0 min=limits::OFF_SIGHT.low
            max=limits::OFF_SIGHT.high decimals=0 unit=Unit::Degrees check=check on_change=put/>
    }
}

/// Drops that keep the eye from focusing.
#[component]
fn Drops(desk: Desk, given: Signal<Option<Cycloplegic>>) -> impl IntoView {
    let change = move |change: &dyn Fn(&mut Cycloplegic)| {
        let mut now = given.get_untracked().unwrap_or_default();
        change(&mut now);
        let given = !now.drug.trim().is_empty();
        desk.put_drops(desk.working.get_untracked(), given.then_some(now));
    };
    let drug = Signal::derive(move || given.get().map(|given| given.drug).unwrap_or_default());
    let minutes = Signal::derive(move || given.get().map(|given| f64::from(given.minutes)));
    view! {
        <TextField id="drops-drug" label=say::drops_keep_focusing() hint=say::drug_strength_empty_where_none() value=drug
            on_change=move |text: String| change(&|drops| drops.drug.clone_from(&text))/>
        <div class:hidden=move || given.get().is_none()>
            <Stepper id="drops-minutes" label=say::given_before_first_sweep() value=minutes step=5.0 min=0.0 max=1440.0 decimals=0 unit=Unit::Minutes
                on_change=move |minutes: f64| change(&|drops| drops.minutes = minutes as u16)/>
        </div>
    }
}

/// One word of a few. Chosen, it closes its sheet.
#[component]
fn OneOfPill<T>(
    desk: Desk,
    id: &'static str,
    label: &'static str,
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
            .map(|each| Pick::new(*each, || word(*each)))
            .collect()
    };
    let choose = move |each| {
        put_now(desk, |eye| put(eye, Some(each)));
        open.set(false);
    };
    view! {
        <Pill id=id label=label value=shown on_press=move |()| open.set(true)/>
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
    let cross = Memo::new(move |_| desk.hand(desk.working.get()).cross());
    let shown = Signal::derive(move || {
        let [one, other] = cross.get().map(words::degrees);
        format!("{one}, {other}")
    });
    let first = Signal::derive(move || Some(cross.get()[0].degrees()));
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
        <Pill id="meridians" label=say::meridians() value=shown on_press=move |()| open.set(true)/>
        <Sheet id="meridians-sheet" title=say::which_meridians() open=open on_close=move |()| open.set(false)>
            <p class="soft">{say::meridians_how()}</p>
            <AxisDial id="meridians-dial" label=say::meridian() value=first cyl=fine check=check on_change=turn/>
        </Sheet>
    }
    .into_any()
}
