//! A section's versions: who, when, on which tablet, why, whether signed, and what each changed.

use crate::edge::clock;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{
    Against, Change, DeviceId, Difference, Exam, ExamId, Eye, Said, SectionKind, Written,
};
use widgets::Disclosure;

/// One version in words.
#[derive(Clone, PartialEq)]
struct Told {
    heading: String,
    reason: Option<String>,
    signed: Option<String>,
    against: Vec<Against>,
}

impl Told {
    fn of(written: &Written<'_>) -> Self {
        let stands = if written.stands { say::it_stands() } else { "" };
        let signed = written.signed_by.join(", ");
        Self {
            heading: say::version(&written.number, &stands, &who_when(written)),
            reason: written.reason.map(str::to_owned),
            signed: (!signed.is_empty()).then_some(signed),
            against: written.against.clone(),
        }
    }
}

/// "M. Farrow, 4 March 2026, 14:05, on this tablet".
pub fn who_when(written: &Written<'_>) -> String {
    let when = words::moment(written.at);
    format!(
        "{}, {when}, {}",
        written.author(),
        on_which(written.device())
    )
}

/// A tablet by its own name would need a list of names that everybody can change; the first signs of its id are enough to
/// tell two apart.
fn on_which(device: DeviceId) -> String {
    if app().door.device() == Some(device) {
        return say::tablet().into();
    }
    let [first, second, third, ..] = device.0;
    say::on_tablet(&format_args!("{first:02x}{second:02x}{third:02x}"))
}

/// The versions behind one tap; nothing where nothing was kept yet.
#[component]
pub fn ItsVersions(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let many = count(exam, kind);
    let summary = Signal::derive(move || say::its_versions(many.get()));
    view! {
        <Show when=move || many.get() != 0>
            <Disclosure id="versions" summary=summary><VersionList exam kind/></Disclosure>
        </Show>
    }
    .into_any()
}

/// Whether there is more than what stands.
pub fn count(exam: ExamId, kind: SectionKind) -> Memo<usize> {
    let story = app().door.story();
    Memo::new(move |_| {
        story.with(|story| story.exam(&exam).map_or(0, |exam| exam.history(kind).len()))
    })
}

/// All of them, newest first.
#[component]
pub fn VersionList(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let story = app().door.story();
    let told = Memo::new(move |_| {
        story.with(|story| {
            let all = |exam: &Exam| {
                let versions = exam.versions(kind, &clock::local, words::manner().far);
                versions.iter().rev().map(Told::of).collect()
            };
            story.exam(&exam).map_or_else(Vec::new, all)
        })
    });
    view! {
        <ol class="versions" id="version-list">{move || told.get().into_iter().map(version).collect_view()}</ol>
    }
    .into_any()
}

fn version(told: Told) -> AnyView {
    let against = told.against.into_iter().map(|against| {
        let replaced = against.number.map(|number| say::in_place_of(&number));
        let same = against.lines.is_empty().then(|| view! { <li class="soft">{say::says_same()}</li> });
        let lines = against.lines.into_iter().map(changed).collect_view();
        view! { {replaced.map(|said| view! { <p class="soft">{said}</p> })}<ul class="changes">{same}{lines}</ul> }
    });
    view! {
        <li class="version">
            <p><b>{told.heading}</b></p>
            {told.reason.map(|reason| view! { <p>{say::because()}{reason}</p> })}
            {told.signed.map(|signers| view! { <p class="soft">{say::signed_by_before()}{signers}</p> })}
            {against.collect_view()}
        </li>
    }
    .into_any()
}

/// "≠ lens, right: +2.00 DS → +2.25 DS".
fn changed(line: Difference) -> AnyView {
    let change = line.change();
    let label = line.label.clone();
    let parts = match (line.before, line.now) {
        (Some(Said::Eyes(before)), Some(Said::Eyes(now))) => Eye::BOTH
            .into_iter()
            .filter(|eye| before.of(*eye) != now.of(*eye))
            .map(|eye| from_to(Some(eye), Some(before.of(eye)), Some(now.of(eye))))
            .collect(),
        (before, now) => whole(before.as_ref(), now.as_ref()),
    };
    view! {
        <li class="changed">
            <span class="change" aria-hidden="true">{change.sign()}</span>
            <span class="change-word">{change.word()}</span>
            <span>{label}": "{parts.join("; ")}{(change == Change::Gone).then_some(say::gone())}</span>
        </li>
    }
    .into_any()
}

/// A line that came or went, or that turned from one for each eye into one of the person.
fn whole(before: Option<&Said>, now: Option<&Said>) -> Vec<String> {
    let words = |said: &Said| match said {
        Said::One(words) => words.clone(),
        Said::Eyes(eyes) => say::right_left(&eyes.right, &eyes.left),
    };
    let (before, now) = (before.map(words), now.map(words));
    vec![from_to(None, before.as_ref(), now.as_ref())]
}

fn from_to(eye: Option<Eye>, before: Option<&String>, now: Option<&String>) -> String {
    let eye = eye.map_or_else(String::new, |eye| format!("{} ", eye.word()));
    let said = match (before, now) {
        (Some(before), Some(now)) => format!("{before} \u{2192} {now}"),
        (Some(only), None) | (None, Some(only)) => only.clone(),
        (None, None) => String::new(),
    };
    words::number(&format!("{eye}{said}"))
}
