//! Fields that are a lens or a prism of one eye.

use super::super::halves;
use super::part::{Part, Spot};
use super::row::{Asked, row};
use super::slate::Slate;
use ::words::app::exam_fields as say;
use leptos::prelude::*;
use optics::prism::{Base, Prism};
use optics::{SphereCyl, limits};
use record::{Eye, Finding, lens_of_pair};
use widgets::{Choice, LensField, Pick, Pill, Sheet, Stepper, Unit};

/// The lens of one eye of a pair in a list; half of it stays in the draft.
pub fn lens(
    slate: Slate,
    (name, place, eye): (&str, usize, Eye),
    spot: Spot<Option<SphereCyl>>,
    last: Signal<Option<SphereCyl>>,
) -> AnyView {
    let part = lens_of_pair(place);
    let begun = halves::to_lens(untrack(|| slate.halves.of(eye, &part)));
    let keep = move |now| slate.halves.keep(eye, &part, halves::of_lens(now));
    let id = format!("{name}-{}-{}", place + 1, eye.word());
    view! { <LensField id=id eye=eye.said() value=spot.value on_change=spot.put last=last begun=begun on_half=keep/> }
        .into_any()
}

/// A finding that holds a lens and more. What stands beside the lens outlives the moment in which the lens is only half
/// entered.
pub fn found_lens<T: Clone + Send + Sync + 'static>(
    part: &Part<Finding<T>>,
    read: fn(&T) -> SphereCyl,
    with: fn(Option<T>, SphereCyl) -> T,
) -> Spot<Option<SphereCyl>> {
    let beside = StoredValue::new(None::<T>);
    part.spot(
        move |found| found.done().map(read),
        move |found, lens| {
            if let Finding::Done(stands) = found {
                beside.set_value(Some(stands.clone()));
            }
            *found = lens.map_or(Finding::Blank, |lens| {
                Finding::Done(with(beside.get_value(), lens))
            });
        },
    )
}

/// Where the base may lie, of one direction.
const BASES: [[Base; 2]; 2] = [[Base::In, Base::Out], [Base::Up, Base::Down]];

/// A prism before one eye, on a pill; it opens to both directions.
pub fn prism(asked: &Asked, eye: Eye, spot: Spot<Option<Prism>>) -> AnyView {
    let open = RwSignal::new(false);
    let id = asked.id.clone();
    let shown = Signal::derive(move || {
        let prism = spot.value.get();
        prism.map_or_else(|| say::none().to_owned(), |prism| prism.written(eye))
    });
    let title = say::title_eye(&asked.label, &eye.said());
    let none = move |_| {
        spot.put.run(None);
        open.set(false);
    };
    let control = view! {
        <Pill id=id.clone() value=shown on_press=move |()| open.set(true)/>
        <Sheet id=format!("{id}-sheet") title=title open=open on_close=move |()| open.set(false)>
            {direction(&format!("{id}-across"), say::across(), eye, spot, false)}
            {direction(&format!("{id}-up"), say::up_down(), eye, spot, true)}
            <button type="button" class="pill" id=format!("{id}-none") on:click=none>{say::no_prism()}</button>
        </Sheet>
    };
    row(asked, control.into_any())
}

fn direction(
    id: &str,
    label: &'static str,
    eye: Eye,
    spot: Spot<Option<Prism>>,
    upright: bool,
) -> AnyView {
    let along = move |prism: Prism, upright: bool| {
        if upright {
            prism.vertical()
        } else {
            prism.horizontal(eye)
        }
    };
    let now = move || spot.value.get().unwrap_or(Prism::NONE);
    let bases = BASES[usize::from(upright)];
    let first = along(untrack(now), upright);
    let base = RwSignal::new(if first.amount > 0.0 {
        first.base
    } else {
        bases[0]
    });
    let amount = Signal::derive(move || Some(along(now(), upright).amount));
    let put = move |amount: f64, base: Base| {
        let other = along(untrack(now), !upright);
        let both = [(amount, base), (other.amount, other.base)];
        let parts = both.map(|(amount, base)| Prism::toward(amount, base, eye));
        if let [Ok(one), Ok(other)] = parts {
            spot.put.run(Some(one + other));
        }
    };
    let turn = move |to| {
        base.set(to);
        put(amount.get_untracked().unwrap_or_default(), to);
    };
    let check = Callback::new(|size| limits::prism(size).map_err(|error| error.to_string()));
    let picks = bases
        .map(|base| {
            Pick::new(base, || say::base(&base.said())).slug(format!("base-{}", base.word()))
        })
        .into();
    view! {
        <Choice id=format!("{id}-base") label=say::where_base_lies(&label) unseen_label=true picks=picks
            value=Signal::derive(move || Some(base.get())) on_change=turn/>
        <Stepper id=id.to_owned() label=label value=amount step=0.5 min=0.0 max=limits::PRISM.high unit=Unit::PrismDioptres check=check
            on_change=move |amount| put(amount, base.get_untracked())/>
    }
    .into_any()
}
