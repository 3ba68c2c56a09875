//! One section in the middle: being filled in, or kept and signed and only to be read.

use super::acuity::AcuityEditor;
use super::amend::{AmendHead, SignedSection};
use super::decision::DecisionEditor;
use super::foot::Foot;
use super::halves::Halves;
use super::retinoscopy::RetinoscopyEditor;
use super::second_look::{SecondLook, raised};
use super::subjective::SubjectiveEditor;
use super::two_versions::TwoVersions;
use crate::edge::prefs::Habits;
use crate::shell::app;
use crate::words;
use leptos::prelude::*;
use optics::Step;
use optics::retinoscopy::{Setup, WorkingDistance, WorkingLens};
use record::{Chart, ExamId, Eye, Eyes, Heads, Section, SectionKind, Story};

/// What can be done with a section.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Mode {
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
            (false, _, true) => Mode::TwoVersions,
            (false, true, false) => Mode::Signed,
            (true, true, _) => Mode::Amending,
            (_, false, _) => Mode::Open,
        },
    );
    let raised = raised(exam, Some(kind));
    view! {
        <main class="exam-middle">
            <h2 class="section-title">{kind.title()}</h2>
            {move || match mode.get() {
                Mode::TwoVersions => view! { <TwoVersions exam kind/> }.into_any(),
                Mode::Signed => view! { <SignedSection exam kind/> }.into_any(),
                Mode::Amending => view! { <AmendHead exam kind/> <Editor exam kind/> <SecondLook exam raised only=kind/> }.into_any(),
                Mode::Open => view! { <Editor exam kind/> <SecondLook exam raised only=kind/> }.into_any(),
            }}
        </main>
        <Foot exam kind signed drafted raised/>
    }
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
    match kind {
        SectionKind::Acuity => {
            let pick = |section| {
                if let Section::Acuity(acuity) = section {
                    Some(acuity)
                } else {
                    None
                }
            };
            let on_change =
                Callback::new(move |acuity| door.keep_draft(exam, Section::Acuity(acuity)));
            view! { <AcuityEditor value=today_as(now, pick) last=earlier_as(before, pick) on_change halves/> }.into_any()
        }
        SectionKind::Retinoscopy => {
            let pick = |section| {
                if let Section::Retinoscopy(found) = section {
                    Some(found)
                } else {
                    None
                }
            };
            let on_change =
                Callback::new(move |found| door.keep_draft(exam, Section::Retinoscopy(found)));
            view! { <RetinoscopyEditor value=today_as(now, pick) last=earlier_as(before, pick) on_change halves age=age(exam)/> }.into_any()
        }
        SectionKind::Subjective => {
            let pick = |section| {
                if let Section::Subjective(found) = section {
                    Some(found)
                } else {
                    None
                }
            };
            let on_change =
                Callback::new(move |found| door.keep_draft(exam, Section::Subjective(found)));
            view! { <SubjectiveEditor value=today_as(now, pick) last=earlier_as(before, pick) on_change starts=starts(exam) halves/> }.into_any()
        }
        SectionKind::Decision => {
            let pick = |section| {
                if let Section::Decision(decision) = section {
                    Some(decision)
                } else {
                    None
                }
            };
            let on_change =
                Callback::new(move |decision| door.keep_draft(exam, Section::Decision(decision)));
            view! { <DecisionEditor value=today_as(now, pick) on_change/> }.into_any()
        }
    }
}

/// The section as its own type; the kind never changes under an editor, so the default never shows.
fn today_as<T: Default + PartialEq + Send + Sync + 'static>(
    now: Memo<Section>,
    pick: fn(Section) -> Option<T>,
) -> Signal<T> {
    Memo::new(move |_| pick(now.get()).unwrap_or_default()).into()
}

/// Last time's section as its own type, with its month.
fn earlier_as<T: Send + Sync + 'static>(
    before: Signal<Option<(String, Section)>>,
    pick: fn(Section) -> Option<T>,
) -> Signal<Option<(String, T)>> {
    Signal::derive(move || {
        before
            .get()
            .and_then(|(when, section)| Some((when, pick(section)?)))
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
        Section::Decision(_) => {}
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
        format!("retinoscopy, {distance} for the distance taken off"),
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
