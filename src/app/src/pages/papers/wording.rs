//! What is told beside the record: the letter's words and choice of findings, what the notes add, what is known of the frames.

use crate::session::Door;
use crate::shell::app;
use ::words::app::papers as say;
use leptos::prelude::*;
use papers::{InFrame, Letter, PaperKind, Wording};
use record::{ExamId, Order, Said};
use widgets::{Disclosure, Stepper, TextField, TextKind, Unit};

/// What a paper begins with: of a letter, what is proposed.
pub fn proposed(door: Door, exam: ExamId, kind: PaperKind) -> Wording {
    let letter = door.story().with_untracked(|story| {
        let exam = story.exam(&exam).filter(|_| kind == PaperKind::Referral)?;
        Letter::proposed(story.person(&exam.person())?, exam).ok()
    });
    Wording {
        letter,
        ..Wording::default()
    }
}

/// The words that may be changed, where the paper has any.
#[component]
pub fn Words(exam: ExamId, kind: PaperKind, wording: RwSignal<Wording>) -> impl IntoView {
    let door = app().door;
    let (summary, inside): (_, ViewFn) = match kind {
        PaperKind::Referral if wording.with_untracked(|words| words.letter.is_some()) => (
            say::words_letter(),
            (move || view! { <LetterWords wording/> }).into(),
        ),
        PaperKind::CareStaff | PaperKind::Person => (
            say::words_person(),
            (move || view! { <NoteWords wording/> }).into(),
        ),
        PaperKind::Order => (
            say::words_order(),
            (move || view! { <Frames exam wording/> }).into(),
        ),
        _ => return ().into_any(),
    };
    view! {
        <section class="sheet no-print paper-words">
            <Disclosure id="paper-words" summary=summary.to_owned()>
                {inside.run()}
                <p class="soft" id="words-kept">{say::words_kept()}</p>
                <button type="button" class="pill" id="words-anew" on:click=move |_| wording.set(proposed(door, exam, kind))>{say::begin_from_proposed()}</button>
            </Disclosure>
        </section>
    }
    .into_any()
}

/// One text of the letter.
#[component]
fn LetterText(
    wording: RwSignal<Wording>,
    id: &'static str,
    label: &'static str,
    text: fn(&mut Letter) -> &mut String,
) -> impl IntoView {
    let value = Signal::derive(move || {
        let letter = wording.with(|words| words.letter.clone());
        letter.map_or_else(String::new, |mut letter| text(&mut letter).clone())
    });
    let put = move |words: String| {
        wording.update(|wording| {
            if let Some(letter) = &mut wording.letter {
                *text(letter) = words;
            }
        })
    };
    view! { <TextField id label value on_change=put kind=TextKind::Lines/> }
}

#[component]
fn LetterWords(wording: RwSignal<Wording>) -> impl IntoView {
    let findings = wording.with_untracked(|words| {
        let letter = words.letter.as_ref();
        letter.map_or_else(Vec::new, |letter| letter.findings.clone())
    });
    let tick = move |at: usize, told: bool| {
        wording.update(|words| {
            let letter = words.letter.as_mut();
            if let Some(finding) = letter.and_then(|letter| letter.findings.get_mut(at)) {
                finding.told = told;
            }
        })
    };
    let each = findings.into_iter().enumerate().map(|(at, finding)| {
        let said = match finding.line.said {
            Said::One(words) => words,
            Said::Eyes(eyes) => say::right_left(&eyes.right, &eyes.left),
        };
        let words = format!("{}, {}: {said}", finding.section.title(), finding.line.label);
        view! {
            <li><label class="tick"><input type="checkbox" id=format!("told-{at}") prop:checked=finding.told
                on:change:target=move |event| tick(at, event.target().checked())/><span>{words}</span></label></li>
        }
    });
    view! {
        <LetterText wording id="letter-to" label=say::to() text={|letter| &mut letter.to}/>
        <LetterText wording id="letter-opening" label=say::how_begins() text={|letter| &mut letter.opening}/>
        <h3>{say::what_it_tells()}</h3>
        <p class="soft">{say::chosen_by()}</p>
        <ul class="told-list">{each.collect_view()}</ul>
        <LetterText wording id="letter-asked" label=say::what_asked() text={|letter| &mut letter.asked}/>
        <LetterText wording id="letter-closing" label=say::how_ends() text={|letter| &mut letter.closing}/>
    }
    .into_any()
}

#[component]
fn NoteWords(wording: RwSignal<Wording>) -> impl IntoView {
    let words = Signal::derive(move || wording.with(|wording| wording.note.words.clone()));
    let contact = Signal::derive(move || wording.with(|wording| wording.note.contact.clone()));
    view! {
        <TextField id="note-words" label=say::words_add() value=words on_change=move |words| wording.update(|wording| wording.note.words = words) kind=TextKind::Lines/>
        <TextField id="note-contact" label=say::whom_to_ask() value=contact on_change=move |words| wording.update(|wording| wording.note.contact = words) kind=TextKind::Lines/>
    }
    .into_any()
}

/// Between the middles of a frame’s eyes: from a child’s frame to the widest, in millimetres.
const MIDDLES_MM: (f64, f64) = (40.0, 90.0);

/// What is known of each pair's frame.
#[component]
fn Frames(exam: ExamId, wording: RwSignal<Wording>) -> impl IntoView {
    let pairs = app().door.story().with_untracked(|story| {
        let order = story.exam(&exam)?.part::<Order>().settled()?.value;
        let headings = order.pairs.iter().map(record::OrderedPair::heading);
        Some(headings.collect::<Vec<_>>())
    });
    let pairs = pairs.unwrap_or_default();
    let count = pairs.len();
    let change = move |at: usize, change: &dyn Fn(&mut InFrame)| {
        wording.update(|words| {
            words.frames.resize(count, InFrame::default());
            if let Some(frame) = words.frames.get_mut(at) {
                change(frame);
            }
        })
    };
    let frame =
        move |at: usize| wording.with(|words| words.frames.get(at).copied().unwrap_or_default());
    let each = pairs.into_iter().enumerate().map(|(at, heading)| {
        view! {
            <h3>{say::pair(&(at + 1), &heading)}</h3>
            <Stepper id=format!("middles-{at}") label=say::between_middles() unit=Unit::Millimetres step=0.5 decimals=1 min=MIDDLES_MM.0 max=MIDDLES_MM.1
                value=Signal::derive(move || frame(at).middles_mm) on_change=move |mm: f64| change(at, &|frame| frame.middles_mm = Some(mm))/>
            <label class="tick"><input type="checkbox" id=format!("compensate-{at}") prop:checked=move || frame(at).compensate
                on:change:target=move |event| { let told = event.target().checked(); change(at, &|frame| frame.compensate = told) }/>
                <span>{say::for_frame_vertex()}</span></label>
        }
    });
    each.collect_view().into_any()
}
