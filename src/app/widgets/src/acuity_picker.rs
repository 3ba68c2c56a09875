//! The squares of an acuity: the line, then letters missed or gained, or what is seen where no line is.

use crate::acuity::ReadLine;
use crate::choice::{Choice, ChoiceLook, Pick};
use crate::number::Unit;
use crate::stepper::Stepper;
use ::words::app::widgets as say;
use leptos::prelude::*;
use optics::acuity::ChartLine;

/// Picks what one eye read.
///
/// Its parts are `{id}-line-6-36`, `{id}-letters-minus-1`, `{id}-letters-all`, `{id}-else-hand-moves`, `{id}-cm`,
/// `{id}-clear`.
#[component]
pub fn AcuityPicker(
    /// The id of the whole.
    #[prop(into)]
    id: String,
    /// What is asked, such as "smallest line read, right eye".
    #[prop(into)]
    label: String,
    /// The page's reading.
    #[prop(into)]
    value: Signal<Option<ReadLine>>,
    /// Called with each reading; none when cleared.
    #[prop(into)]
    on_change: Callback<Option<ReadLine>>,
) -> impl IntoView {
    let lines: Vec<_> = ChartLine::ALL
        .into_iter()
        .map(|line| {
            Pick::new(ReadLine::Line { line, letters: 0 }, || {
                format!("6/{}", line.denominator())
            })
        })
        .collect();
    let rest = vec![
        Pick::new(ReadLine::Fingers { at_cm: None }, say::counts_fingers),
        Pick::new(ReadLine::HandMoves, say::hand_moves),
        Pick::new(ReadLine::Light, say::light),
        Pick::new(ReadLine::NoLight, say::no_light),
        Pick::new(ReadLine::Unable, say::unable),
    ];
    // A square stays filled whatever letters or distance came after it.
    let squares: Vec<ReadLine> = lines
        .iter()
        .chain(&rest)
        .map(|pick| *pick.value())
        .collect();
    let square = Signal::derive(move || {
        value
            .get()
            .and_then(|now| squares.iter().copied().find(|s| s.same_square(now)))
    });
    let pick = move |picked: ReadLine| {
        if !value
            .get_untracked()
            .is_some_and(|now| now.same_square(picked))
        {
            on_change.run(Some(picked));
        }
    };
    let letters = Signal::derive(move || value.get().and_then(ReadLine::letters));
    let put_letters = move |letters: i8| {
        on_change.run(value.get_untracked().map(|now| now.with_letters(letters)));
    };
    let cm_id = format!("{id}-cm");
    view! {
        <div class="acuity" id=id.clone() data-part="acuity" role="group" aria-label=label>
            <div class="acuity-head">
                <span class="acuity-label">{label.clone()}</span>
                <button type="button" class="pill" id=format!("{id}-clear") disabled=move || value.get().is_none()
                    on:click=move |_| on_change.run(None)>{say::clear()}</button>
            </div>
            <Choice id=format!("{id}-line") label=say::smallest_line_read() unseen_label=true look=ChoiceLook::Squares
                picks=lines value=square on_change=pick/>
            <Choice id=format!("{id}-letters") label=say::letters_missed_gained() look=ChoiceLook::Squares
                picks=letter_picks() value=letters on_change=put_letters off=Signal::derive(move || letters.get().is_none())/>
            <Choice id=format!("{id}-else") label=say::where_no_line_read() look=ChoiceLook::Squares
                picks=rest value=square on_change=pick/>
            <Show when=move || matches!(value.get(), Some(ReadLine::Fingers { .. }))>
                <Centimetres id=cm_id.clone() value=value on_change=on_change/>
            </Show>
        </div>
    }
    .into_any()
}

fn letter_picks() -> Vec<Pick<i8>> {
    vec![
        Pick::new(-2, || "\u{2212}2"),
        Pick::new(-1, || "\u{2212}1"),
        Pick::new(0, say::all),
        Pick::new(1, || "+1"),
        Pick::new(2, || "+2"),
    ]
}

/// How far away the fingers were counted.
#[component]
fn Centimetres(
    id: String,
    value: Signal<Option<ReadLine>>,
    on_change: Callback<Option<ReadLine>>,
) -> impl IntoView {
    let at = Signal::derive(move || match value.get() {
        Some(ReadLine::Fingers { at_cm }) => at_cm.map(f64::from),
        _ => None,
    });
    let put = move |cm: f64| {
        on_change.run(Some(ReadLine::Fingers {
            at_cm: Some(cm.round() as u16),
        }));
    };
    view! {
        <Stepper id=id label=say::fingers_counted() value=at on_change=put step=10.0 min=10.0 max=600.0 start=50.0 decimals=0
            unit=Unit::Centimetres/>
    }
}
