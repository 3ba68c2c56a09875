//! One section in the middle: being filled in, or kept and signed and only to be read.

use super::acuity::AcuityEditor;
use super::amend::{AmendHead, SignedSection};
use super::decision::DecisionEditor;
use super::editors;
use super::fields::Slate;
use super::foot::Foot;
use super::halves::Halves;
use super::reading::SectionReading;
use super::retinoscopy::RetinoscopyEditor;
use super::second_look::{SecondLook, raised};
use super::subjective::SubjectiveEditor;
use super::two_versions::{DraftAmongVersions, TwoVersions};
use super::versions::ItsVersions;
use crate::edge::prefs::Habits;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use optics::Step;
use optics::retinoscopy::{Setup, WorkingDistance, WorkingLens};
use record::{Chart, ExamId, Eye, Eyes, Heads, Part, Section, SectionKind, Story};

/// What can be done with a section.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Mode {
    /// On a tablet that only reads.
    Reading,
    Open,
    Signed,
    Amending,
    TwoVersions,
}

/// A section's page, whatever its state.
#[component]
pub fn SectionFrame(
    /// The exam.
    exam: ExamId,
    /// The section.
    kind: SectionKind,
) -> impl IntoView {
    let door = app().door;
    let story = door.story();
    let drafted = Memo::new(move |_| door.draft(exam, kind).is_some());
    let signed = Memo::new(move |_| {
        story.with(|story| story.exam(&exam).is_some_and(record::Exam::is_signed))
    });
    let several = Memo::new(move |_| {
        story.with(|story| {
            story
                .exam(&exam)
                .is_some_and(|exam| matches!(exam.section(kind), Heads::Several(_)))
        })
    });
    // The mode alone makes the page anew: an editor must outlive its first change, which turns the section into a draft.
    let mode = Memo::new(
        move |_| match (drafted.get(), signed.get(), several.get()) {
            _ if !door.standing.writes() => Mode::Reading,
            (false, _, true) => Mode::TwoVersions,
            // What follows signing in the ordinary course of things is written without a reason.
            (_, true, _) if kind.follows_signing() => Mode::Open,
            (false, true, false) => Mode::Signed,
            (true, true, _) => Mode::Amending,
            (_, false, _) => Mode::Open,
        },
    );
    let raised = raised(exam, Some(kind));
    view! {
        <main class="exam-middle">
            <h2 class="section-title">{kind.title()}</h2>
            <Show when=move || drafted.get() && several.get()><DraftAmongVersions exam kind/></Show>
            {move || match mode.get() {
                Mode::Reading => view! { <OnlyRead exam kind/> }.into_any(),
                Mode::TwoVersions => view! { <TwoVersions exam kind/> }.into_any(),
                Mode::Signed => view! { <SignedSection exam kind/> }.into_any(),
                Mode::Amending => view! { <AmendHead exam kind/> <Editor exam kind/> <SecondLook exam raised only=kind/> }.into_any(),
                Mode::Open => view! { <Editor exam kind/> <SecondLook exam raised only=kind/> }.into_any(),
            }}
            <Show when=move || mode.get() != Mode::Signed><ItsVersions exam kind/></Show>
        </main>
        <Show when=move || mode.get() != Mode::Reading><Foot exam kind signed drafted raised/></Show>
    }
}

/// What stands there, to be read.
#[component]
fn OnlyRead(exam: ExamId, kind: SectionKind) -> impl IntoView {
    let story = app().door.story();
    let kept =
        move || story.with(|story| Some(story.exam(&exam)?.section(kind).latest()?.value.clone()));
    view! {
        <section class="sheet" id="only-read">
            {move || match kept() {
                Some(section) => view! { <SectionReading section/> }.into_any(),
                None => view! { <p class="soft">{say::nothing_here()}</p> }.into_any(),
            }}
        </section>
    }
    .into_any()
}

#[component]
fn Editor(exam: ExamId, kind: SectionKind) -> impl IntoView {
    let (door, habits) = (app().door, app().habits);
    let story = door.story();
    let kept =
        move || story.with(|story| Some(story.exam(&exam)?.section(kind).latest()?.value.clone()));
    let now = Memo::new(move |_| match door.draft(exam, kind) {
        Some(draft) => draft.section,
        None => kept().unwrap_or_else(|| fresh(kind, habits.get_untracked())),
    });
    let before = Signal::derive(move || {
        story.with(|story| {
            let last = story.last_before(&exam, kind)?;
            Some((
                words::month(last.exam.opened_on()),
                last.version.value.clone(),
            ))
        })
    });
    let halves = Halves { door, exam, kind };
    let put = Callback::new(move |section| door.keep_draft(exam, section));
    let slate = Slate::new(now, before, put, halves, age(exam));
    if let Some(page) = editors::editor(kind, slate) {
        return page;
    }
    match kind {
        SectionKind::Acuity => {
            view! { <AcuityEditor value=today_as(now) last=earlier_as(before) on_change=whole(put) halves/> }.into_any()
        }
        SectionKind::Retinoscopy => {
            view! { <RetinoscopyEditor value=today_as(now) last=earlier_as(before) on_change=whole(put) halves age=age(exam)/> }.into_any()
        }
        SectionKind::Subjective => {
            view! { <SubjectiveEditor value=today_as(now) last=earlier_as(before) on_change=whole(put) starts=starts(exam) halves/> }.into_any()
        }
        _ => view! { <DecisionEditor value=today_as(now) on_change=whole(put)/> }.into_any(),
    }
}

/// Puts a section's own type.
fn whole<T: Part + Send + Sync + 'static>(put: Callback<Section>) -> Callback<T> {
    Callback::new(move |section: T| put.run(section.into_section()))
}

/// The section as its own type; the kind never changes under an editor, so the default never shows.
fn today_as<T: Part + Default + Clone + PartialEq + Send + Sync + 'static>(
    now: Memo<Section>,
) -> Signal<T> {
    let part = move |_: Option<&T>| now.with(|section| T::of(section).cloned().unwrap_or_default());
    Memo::new(part).into()
}

/// Last time's section as its own type, with its month.
fn earlier_as<T: Part + Clone + Send + Sync + 'static>(
    before: Signal<Option<(String, Section)>>,
) -> Signal<Option<(String, T)>> {
    Signal::derive(move || {
        let (when, section) = before.get()?;
        Some((when, T::of(&section)?.clone()))
    })
}

/// How old the person was when the exam was opened.
fn age(exam: ExamId) -> Signal<Option<record::Age>> {
    let story = app().door.story();
    Signal::derive(move || {
        story.with(|story| {
            let exam = story.exam(&exam)?;
            let person = story.person(&exam.person())?;
            person.details().age_on(exam.opened_on())
        })
    })
}

/// An empty section with the habits of this tablet in it.
pub(super) fn fresh(kind: SectionKind, habits: Habits) -> Section {
    let mut section = Section::empty(kind);
    let chart = Chart {
        made_for_m: habits.chart_made_for_m,
        used_at_m: habits.chart_used_at_m,
    };
    match &mut section {
        Section::Acuity(acuity) => acuity.chart = chart,
        Section::Subjective(subjective) => subjective.chart = chart,
        Section::Retinoscopy(retinoscopy) => {
            if let Some(setup) = usual_setup(habits) {
                retinoscopy.setup = setup;
            }
        }
        _ => {}
    }
    section
}

fn usual_setup(habits: Habits) -> Option<Setup> {
    let distance = WorkingDistance::from_cm(habits.working_distance_cm).ok()?;
    let working_lens = habits
        .working_lens
        .and_then(|power| WorkingLens::new(power, habits.working_cell).ok());
    Some(Setup {
        distance,
        working_lens,
        cell_spacing_mm: habits.cell_spacing_mm,
        step: habits.step,
        cylinders: habits.cylinders,
    })
}

/// Today's retinoscopy and last time's lens.
fn starts(exam: ExamId) -> super::subjective::Starts {
    let door = app().door;
    let story = door.story();
    Signal::derive(move || {
        let drafted = door
            .draft(exam, SectionKind::Retinoscopy)
            .map(|draft| draft.section);
        story.with(|story| {
            [today(story, exam, drafted), earlier(story, exam)]
                .into_iter()
                .flatten()
                .collect()
        })
    })
}

fn today(
    story: &Story,
    exam: ExamId,
    drafted: Option<Section>,
) -> Option<(String, Eyes<Option<optics::SphereCyl>>)> {
    let kept = || {
        Some(Section::Retinoscopy(
            story.exam(&exam)?.retinoscopy().latest()?.value.clone(),
        ))
    };
    let Section::Retinoscopy(found) = drafted.or_else(kept)? else {
        return None;
    };
    let net = |eye| {
        found
            .net(eye)
            .map(|net| net.net.rounded(Step::Quarter).value)
    };
    let distance = found.setup.distance.usual();
    Some((
        say::retinoscopy_at(&distance),
        Eyes {
            right: net(Eye::Right),
            left: net(Eye::Left),
        },
    ))
}

fn earlier(story: &Story, exam: ExamId) -> Option<(String, Eyes<Option<optics::SphereCyl>>)> {
    let last = story.last_before(&exam, SectionKind::Subjective)?;
    let Section::Subjective(found) = last.version.value else {
        return None;
    };
    let eyes = found.eyes.map(|finding| finding.done().map(|eye| eye.lens));
    Some((words::month(last.exam.opened_on()), eyes))
}
