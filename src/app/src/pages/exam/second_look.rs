//! The second look: what is worth a second thought, with its reason, and a word that answers it.

use crate::edge::motion;
use crate::shell::app;
use crate::words;
use ::words::app::exam as say;
use leptos::prelude::*;
use record::{ExamId, Raised, SectionKind, second_look_with};
use widgets::{Disclosure, TextField};

/// What is asked of an exam, or of one section of it. Nothing is drawn where nothing is asked.
#[component]
pub fn SecondLook(
    /// The exam.
    exam: ExamId,
    /// What is asked.
    raised: Signal<Vec<Raised>>,
    /// The one section that the questions speak of.
    #[prop(optional)]
    only: Option<SectionKind>,
) -> impl IntoView {
    let each = move || raised.get();
    let key = |asked: &Raised| (asked.rule.slug(), asked.eye, asked.sentence.clone());
    view! {
        <Show when=move || raised.with(|raised| !raised.is_empty())>
            <section class="second-look" id=SECOND_LOOK aria-label=say::second_look()>
                <h3>{say::second_look_2()}</h3>
                <ul><For each=each key=key children=move |asked| view! { <Question exam asked only/> }/></ul>
            </section>
        </Show>
    }
    .into_any()
}

/// What is asked of an exam, or only what speaks of one section of it. It follows every change, once the screen shows that.
pub fn raised(exam: ExamId, only: Option<SectionKind>) -> Signal<Vec<Raised>> {
    let door = app().door;
    let now = move || {
        let mut raised = asked(exam);
        raised.retain(|asked| only.is_none_or(|only| asked.rule.speaks_of().contains(&only)));
        raised
    };
    motion::once_drawn(move || door.follow_changes(), now)
}

/// At the foot, where the questions lie below the fold: how many there are, and the way to them.
#[component]
pub fn ToSecondLook(
    /// What is asked.
    raised: Signal<Vec<Raised>>,
) -> impl IntoView {
    let count = move || raised.with(Vec::len);
    let words = move || say::questions(count());
    let show = move |_| {
        let questions = document().get_element_by_id(SECOND_LOOK);
        if let Some(questions) = questions {
            questions.scroll_into_view();
        }
    };
    view! {
        <Show when=move || count() != 0>
            <button type="button" class="pill" id="to-second-look" on:click=show>{words}</button>
        </Show>
    }
    .into_any()
}

/// The id of the questions.
const SECOND_LOOK: &str = "second-look";

/// What the rules ask of the exam as it stands on the screen, drafts included.
fn asked(exam: ExamId) -> Vec<Raised> {
    let door = app().door;
    let drafts = SectionKind::ALL
        .into_iter()
        .filter_map(|kind| Some(door.draft(exam, kind)?.section));
    let unsaved: Vec<_> = drafts.collect();
    door.story().with(|story| {
        let opened = story.exam(&exam).map(record::Exam::opened_on);
        opened.map_or_else(Vec::new, |day| {
            let local = story.settings().thresholds();
            second_look_with(story, &exam, &unsaved, &local, day)
        })
    })
}

#[component]
fn Question(exam: ExamId, asked: Raised, only: Option<SectionKind>) -> impl IntoView {
    let door = app().door;
    let eye = asked.eye.map_or("both", record::Eye::word);
    let name = format!("{}-{eye}", asked.rule.slug());
    let (why, refused) = (RwSignal::new(String::new()), RwSignal::new(None::<String>));
    let (rule, of) = (asked.rule, asked.eye);
    let keep = move |_| {
        leptos::task::spawn_local(async move {
            let said = door.answer(exam, rule, of, why.get_untracked()).await;
            refused.set(said.err());
        });
    };
    view! {
        <li class="question-asked" id=format!("asked-{name}")>
            <p>{words::number(&asked.sentence)}</p>
            <Disclosure id=format!("why-{name}") summary=say::why_asked()>
                <p>{asked.reason}</p>
                <p class="soft">{asked.source.clone()}</p>
            </Disclosure>
            <div class="answer-row writes">
                {(only != Some(asked.section)).then(|| view! { <a class="pill" href=words::exam_path(&exam, asked.section.slug())>{say::put_right()}</a> })}
                <TextField id=format!("answer-{name}") label=say::right_because() value=why on_change=move |text| why.set(text) error=refused/>
                <button type="button" class="pill" id=format!("keep-answer-{name}") on:click=keep>{say::keep_reason()}</button>
            </div>
        </li>
    }
    .into_any()
}

/// What was asked before and how it was answered.
#[component]
pub fn Answers(
    /// The exam.
    exam: ExamId,
) -> impl IntoView {
    let story = app().door.story();
    let given = move || {
        story.with(|story| {
            let Some(exam) = story.exam(&exam) else {
                return Vec::new();
            };
            let answers = exam.answers();
            let said = answers.iter().map(|answer| {
                let slug = answer.answered.rule.as_str();
                let asked = answer.rule().map_or(slug, |rule| rule.name()).to_owned();
                let when = words::moment(crate::edge::clock::local(answer.entry.stamp));
                format!(
                    "{asked}: {} ({}, {when})",
                    answer.answered.reason, answer.entry.author
                )
            });
            said.collect::<Vec<_>>()
        })
    };
    view! {
        <ul class="signatures" id="answers">
            {move || given().into_iter().map(|said| view! { <li>{said}</li> }).collect_view()}
        </ul>
    }
}
