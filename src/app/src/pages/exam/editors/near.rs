//! Near: where the person reads, and what they accept for it.

use super::super::fields::{
    Asked, Measure, Part, Slate, Spot, asks, at, choice, eyes, measured, number, several, words,
};
use ::words::app::exam_editors as say;
use leptos::prelude::*;
use optics::{Step, limits};
use record::{ClearBetween, Eye, Finding, Magnified, Near, PrintRead, PrintSize, Usual};
use widgets::{Disclosure, Label};

const TASK: Measure = Measure::new(limits::NEAR_CM, 1.0, 40.0, 0);
const AMPLITUDE: Measure = Measure::new(limits::AMPLITUDE, 0.25, 1.0, 2);
const ADDITION: Measure = Measure::new(limits::ADD_OR_NONE, 0.25, 2.0, 2).signed();
const NEAREST: Measure = Measure::new(limits::NEAR_CM, 1.0, 30.0, 0);
const FARTHEST: Measure = Measure::new(limits::CLEAR_TO_CM, 5.0, 50.0, 0);
const UNITS: Measure = Measure::new(limits::PRINT_M_UNITS, 0.1, 1.0, 2);
const TIMES: Measure = Measure::new(limits::MAGNIFIED, 0.5, 2.0, 1);

/// The section's fields.
pub fn near(slate: Slate) -> AnyView {
    let all = Part::<Near>::whole(slate);
    let each = eyes(slate, |eye| {
        let id = format!("accepted-{}", eye.word());
        measured(
            &at!(all, accepted_d).eye(eye),
            id,
            say::addition_accepted(),
            ADDITION,
        )
    });
    several(vec![
        asks(vec![
            words(
                &at!(all, task),
                "task",
                say::what_read_done_where(),
                Usual::Task,
            ),
            measured(
                &at!(all, distance_cm),
                "near-distance",
                say::how_far_away(),
                TASK,
            ),
            measured(
                &at!(all, amplitude_d),
                "amplitude",
                say::amplitude_accommodation(),
                AMPLITUDE,
            ),
        ]),
        begin_with(&all),
        each,
        clear(&at!(all, clear)),
        read(
            &at!(all, read),
            at!(all, distance_cm).shown(|cm| cm.done().copied()),
        ),
        magnified(&at!(all, magnified)),
    ])
}

/// The addition to begin with, for both eyes in one tap.
fn begin_with(all: &Part<Near>) -> AnyView {
    let (part, age) = (all.clone(), all.slate.age);
    let tentative = Memo::new(move |_| {
        let tentative = part.ask(|near| near.tentative(age.get())).flatten()?;
        Some((tentative.dioptres() / Step::Quarter.dioptres()).round() * Step::Quarter.dioptres())
    });
    let part = all.clone();
    let take = move |add: f64| {
        part.change(|near| {
            for eye in Eye::BOTH {
                *near.accepted_d.of_mut(eye) = Finding::Done(add);
            }
        });
    };
    view! {
        {move || tentative.get().map(|add| {
            let take = take.clone();
            view! {
                <button type="button" class="start" id="begin-with" on:click=move |_| take(add)>
                    <span class="soft">{say::begin_with()}</span><b>{crate::words::number(&ADDITION.in_words(add))}</b>
                </button>
            }
        })}
    }
    .into_any()
}

/// Two numbers that are a finding only together.
fn clear(part: &Part<Finding<ClearBetween>>) -> AnyView {
    let asked = part.asked("clear", say::clear(), ClearBetween::in_words);
    let first = untrack(|| part.ask(|found| found.done().copied())).flatten();
    let ends = RwSignal::new((
        first.map(|clear| clear.nearest_cm),
        first.map(|clear| clear.farthest_cm),
    ));
    let why = asked.why.clone();
    let part = part.clone();
    let put = Callback::new(move |now: (Option<f64>, Option<f64>)| {
        ends.set(now);
        part.change(|found| {
            *found = match now {
                (Some(nearest_cm), Some(farthest_cm)) => Finding::Done(ClearBetween {
                    nearest_cm,
                    farthest_cm,
                }),
                _ => Finding::Blank,
            }
        });
    });
    let one = |from: bool| Spot {
        value: Signal::derive(move || if from { ends.get().0 } else { ends.get().1 }),
        put: Callback::new(move |cm| {
            let (nearest, farthest) = ends.get_untracked();
            put.run(if from { (cm, farthest) } else { (nearest, cm) });
        }),
    };
    let lacks = move || match ends.get() {
        (Some(_), None) => Some(say::how_far_clear()),
        (None, Some(_)) => Some(say::how_near_clear()),
        _ => None,
    };
    let from = Asked {
        why,
        ..asked.clone()
    };
    view! {
        <section class="sheet asks">
            {number(&Asked { id: "clear-from".into(), label: say::clear_2().into(), ..from }, NEAREST, one(true))}
            {number(&Asked::new("clear-to", say::clear_3()), FARTHEST, one(false))}
            <p class="question" role="status">{lacks}</p>
        </section>
    }
    .into_any()
}

/// Print is a finding only with its distance; where the task is, is taken first.
fn read(part: &Part<Finding<PrintRead>>, task_cm: Signal<Option<f64>>) -> AnyView {
    let asked = part.asked(
        "print",
        say::smallest_print_both_eyes(),
        PrintRead::in_words,
    );
    let first = untrack(|| part.ask(|found| found.done().copied())).flatten();
    let (print, at_cm) = (
        RwSignal::new(first.map(|read| read.print)),
        RwSignal::new(first.map(|read| read.at_cm)),
    );
    let far = move || at_cm.get().or_else(|| task_cm.get());
    let why = asked.why.clone();
    let part = part.clone();
    let put = Callback::new(move |()| {
        let both = print.get_untracked().zip(untrack(far));
        part.change(|found| {
            *found = both.map_or(Finding::Blank, |(print, at_cm)| {
                Finding::Done(PrintRead { print, at_cm })
            });
        });
    });
    let pick = move |size: Option<PrintSize>| {
        print.set(size);
        put.run(());
    };
    let points = Spot {
        value: Signal::derive(move || match print.get()? {
            PrintSize::N(points) => PrintSize::POINTS
                .iter()
                .position(|one| (one - points).abs() < 0.05),
            PrintSize::M(_) => None,
        }),
        put: Callback::new(move |place: Option<usize>| {
            pick(place.and_then(|place| PrintSize::POINTS.get(place).copied().map(PrintSize::N)));
        }),
    };
    let units = Spot {
        value: Signal::derive(move || match print.get()? {
            PrintSize::M(units) => Some(units),
            PrintSize::N(_) => None,
        }),
        put: Callback::new(move |units: Option<f64>| pick(units.map(PrintSize::M))),
    };
    let distance = Spot {
        value: Signal::derive(far),
        put: Callback::new(move |cm| {
            at_cm.set(cm);
            put.run(());
        }),
    };
    let lacks =
        move || (print.get().is_some() && far().is_none()).then_some(say::how_far_away_read());
    let sizes = PrintSize::POINTS.map(|points| Label::of(|| PrintSize::N(points).in_words()));
    view! {
        <section class="sheet asks">
            {choice(&Asked { why, ..asked }, sizes.into(), points)}
            <Disclosure id="print-m" summary=say::m_units_instead()>{number(&Asked::new("print-units", say::m_units()), UNITS, units)}</Disclosure>
            {number(&Asked::new("print-at", say::read()), TASK, distance)}
            <p class="question" role="status">{lacks}</p>
        </section>
    }
    .into_any()
}

fn magnified(part: &Part<Finding<Magnified>>) -> AnyView {
    let asked = part.asked("magnified", say::magnified(), Magnified::in_words);
    let times = part.spot(
        |found| found.done().map(|magnified| magnified.times),
        |found, times| {
            let by = found.done().map(|magnified| magnified.by.clone());
            *found = times.map_or(Finding::Blank, |times| {
                Finding::Done(Magnified {
                    times,
                    by: by.unwrap_or_default(),
                })
            });
        },
    );
    let by = at!(part.done(), by);
    let there = by.shown(|_| true);
    view! {
        <section class="sheet asks">
            {number(&asked, TIMES, times)}
            <Show when=move || there.get()>{words(&by, "magnified-by", say::what(), Usual::MagnifiedBy)}</Show>
        </section>
    }
    .into_any()
}
