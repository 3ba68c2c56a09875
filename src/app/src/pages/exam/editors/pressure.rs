//! Pressure: by which device, when, and every reading.

use super::super::fields;
use super::super::fields::{
    Part, Slate, adding, at, card, cards, eyes, missing, moment, row, toggle, words, written,
};
use crate::edge::clock;
use crate::words as shown_as;
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::format::plain;
use optics::limits;
use record::{Device, Eye, Eyes, Finding, Pressure, Readings, Taken, Usual};
use widgets::{Sheet, Stepper, TextKind, Unit};

/// The section's fields.
pub fn pressure(slate: Slate) -> AnyView {
    let all = Part::<Pressure>::whole(slate);
    let list = at!(all, taken);
    let (each, length) = (list.clone(), list.shown(Vec::len));
    let devices = Device::all().map(|device| device.in_words());
    let add = move |place: usize| {
        if let Some(device) = Device::all().into_iter().nth(place) {
            list.change(|taken| {
                taken.push(Taken {
                    device,
                    at: clock::now(),
                    after_dilating: false,
                    eyes: Eyes::default(),
                    note: String::new(),
                });
            });
        }
    };
    view! {
        <section class="sheet asks">{adding("take", say::take_now(), devices.into(), add)}</section>
        {cards(length, move |place| taken(&each, place))}
        <p class="caution">{say::devices_disagree()}</p>
    }
    .into_any()
}

fn taken(list: &Part<Vec<Taken>>, place: usize) -> AnyView {
    let one = list.item(place);
    let id = move |name: &str| format!("{name}-{place}");
    let kind = at!(one, device).some(
        |device| match device {
            Device::Other(kind) => Some(kind),
            _ => None,
        },
        |device| match device {
            Device::Other(kind) => Some(kind),
            _ => None,
        },
    );
    let at_time = at!(one, at).spot(
        |at| written(*at),
        |at, text| *at = fields::read(&text).unwrap_or(*at),
    );
    let each = eyes(one.slate, |eye| {
        readings(&at!(one, eyes).eye(eye), place, eye)
    });
    let holds = view! {
        {fields::then_words(&kind, id("device"), say::which_device())}
        <div class="asked-ways">{toggle(&at!(one, after_dilating), id("after-dilating"), say::after_dilating_drops())}</div>
        {moment((&id("pressure-at"), say::when()), TextKind::Time, at_time, Some((say::now, || written(clock::now()))))}
        {each}
        {words(&at!(one, note), id("pressure-note"), say::how_borne(), Usual::PressureNote)}
    };
    let heading = one.shown(Taken::heading);
    let list = list.clone();
    card(
        id("taken"),
        heading,
        move || list.remove(place),
        holds.into_any(),
    )
}

/// The readings of one eye, each on a pill that takes it out; a sheet of figures adds one a tap.
fn readings(part: &Part<Finding<Readings>>, place: usize, eye: Eye) -> AnyView {
    let id = format!("mmhg-{place}-{}", eye.word());
    let asked = part.asked(id.clone(), say::mean_readings(), Readings::in_words);
    let open = RwSignal::new(false);
    let all = part.shown(|found| found.done().map(|all| all.mmhg.clone()).unwrap_or_default());
    // The pills below show each reading: of several the mean is said here.
    let mean = part.shown(|found| {
        let mean = found.done().and_then(Readings::mean_mmhg)?;
        Some(say::mmhg(&plain(mean, 1)))
    });
    let (adds, takes) = (part.clone(), part.clone());
    let add = Callback::new(move |mmhg: f64| {
        adds.change(|found| match found {
            Finding::Done(all) => all.mmhg.push(mmhg),
            other => *other = Finding::Done(Readings { mmhg: vec![mmhg] }),
        });
    });
    let take = Callback::new(move |at: usize| {
        takes.change(|found| {
            if let Finding::Done(all) = found {
                all.mmhg.remove(at);
                if all.mmhg.is_empty() {
                    *found = Finding::Blank;
                }
            }
        });
    });
    let taken_id = id.clone();
    let pills = move || {
        let each = all.get().into_iter().enumerate();
        each.map(|(at, mmhg)| {
            let shown = shown_as::number(&plain(mmhg, 1));
            let label = say::take_reading_out(&shown);
            view! { <button type="button" class="pill" id=format!("{taken_id}-{at}") aria-label=label on:click=move |_| take.run(at)>{shown}" \u{d7}"</button> }
        })
        .collect_view()
    };
    let title = say::mmhg_eye(&eye.said());
    let control = view! {
        <p class="lens-value">{move || mean.get().map_or_else(|| shown_as::NOTHING.into(), |mean| shown_as::number(&mean))}</p>
        <div class="asked-ways">
            {pills}
            <button type="button" class="pill" id=format!("{id}-add") on:click=move |_| open.set(true)>{say::add_reading()}</button>
            {missing(&asked, say::not_done())}
        </div>
        <Sheet id=format!("{id}-sheet") title=title open=open on_close=move |()| open.set(false)>
            {figures(&id, all, add)}
        </Sheet>
    };
    row(&asked, control.into_any())
}

/// The figures that most eyes have; a rarer one is stepped to.
fn figures(id: &str, all: Signal<Vec<f64>>, add: Callback<f64>) -> AnyView {
    let other = RwSignal::new(35.0);
    let squares = (5..=34).map(|mmhg| {
        let add = move |_| add.run(f64::from(mmhg));
        view! { <button type="button" class="pick" id=format!("{id}-figure-{mmhg}") on:click=add>{mmhg}</button> }
    });
    let check =
        Callback::new(|mmhg| limits::pressure_mmhg(mmhg).map_err(|error| error.to_string()));
    let so_far = move || shown_as::number(&Readings { mmhg: all.get() }.in_words());
    view! {
        <p class="big-value" aria-live="polite">{so_far}</p>
        <div class="figures">{squares.collect_view()}</div>
        <Stepper id=format!("{id}-other") label=say::another_2() value=Signal::derive(move || Some(other.get())) step=1.0 min=limits::PRESSURE_MMHG.low
            max=limits::PRESSURE_MMHG.high decimals=1 unit=Unit::Mercury check=check on_change=move |mmhg| other.set(mmhg)/>
        <button type="button" class="pill" id=format!("{id}-other-add") on:click=move |_| add.run(other.get_untracked())>{say::add_one()}</button>
    }
    .into_any()
}
