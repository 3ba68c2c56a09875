//! One person of a round, as a row shows it.

use crate::edge::clock::today;
use crate::shell::app;
use crate::words;
use ::words::app::round as say;
use leptos::prelude::*;
use record::{ExamId, ExamState, PersonId, RoundId, Standing, Story, Visit};

/// One person of the round.
#[derive(Clone, PartialEq)]
pub struct Row {
    /// The room.
    pub room: String,
    /// The name, with the age where it is known.
    pub name: String,
    /// What to remember before knocking.
    pub note: String,
    /// What was found last time.
    pub last: String,
    /// How things stand.
    pub stands: Stands,
    /// The newest exam, of whatever day.
    pub exam: Option<(ExamId, ExamState)>,
}

/// How things stand with a person, without borrowing from the story.
#[derive(Clone, PartialEq)]
pub enum Stands {
    /// Nothing was done yet.
    ToSee,
    /// An exam is open.
    UnderWay,
    /// This exam is signed.
    Seen(ExamId),
    /// Not examined, and why.
    Marked(Visit),
}

impl Stands {
    /// A word for it that a style or a test can rely on.
    pub const fn slug(&self) -> &'static str {
        match self {
            Self::ToSee => "to-see",
            Self::UnderWay => "under-way",
            Self::Seen(_) => "seen",
            Self::Marked(_) => "marked",
        }
    }
}

impl Row {
    fn of(story: &Story, round: RoundId, person: PersonId) -> Option<Self> {
        let known = story.person(&person)?;
        let details = known.details();
        let stands = match story.standing(story.round(&round)?, &person) {
            Standing::ToSee => Stands::ToSee,
            Standing::UnderWay(_) => Stands::UnderWay,
            Standing::Seen(exam) => Stands::Seen(exam.id()),
            Standing::Marked(visit) => Stands::Marked(visit.clone()),
        };
        let age = details.age_on(today());
        Some(Self {
            room: details.room.clone(),
            name: age.map_or_else(
                || words::name(known),
                |age| format!("{}, {age}", words::name(known)),
            ),
            note: details.note.clone(),
            last: story.last_net(&person).map_or_else(
                || words::NOTHING.into(),
                |net| words::number(&net.to_string()),
            ),
            stands,
            exam: story
                .exams_of(&person)
                .into_iter()
                .find(|exam| !exam.is_from_elsewhere())
                .map(|exam| (exam.id(), exam.state())),
        })
    }
}

/// That person; follows every change.
pub fn row(round: RoundId, person: PersonId) -> Memo<Option<Row>> {
    let story = app().door.story();
    Memo::new(move |_| story.with(|story| Row::of(story, round, person)))
}

/// What every row of a person begins with: the room, who it is with a note, and last time's lens.
#[component]
pub fn Whom(
    /// Who.
    person: PersonId,
    /// The row.
    row: Memo<Option<Row>>,
    /// A soft word before the name.
    #[prop(optional)]
    before: &'static str,
) -> impl IntoView {
    let text = move |part: fn(&Row) -> &String| {
        move || {
            row.with(|row| {
                row.as_ref()
                    .map(|row| part(row).clone())
                    .unwrap_or_default()
            })
        }
    };
    view! {
        <span class="person-room">{text(|row| &row.room)}</span>
        <a class="person-who" href=words::person_path(&person)>
            {(!before.is_empty()).then(|| view! { <span class="soft">{before}</span> })}
            <b>{text(|row| &row.name)}</b><span class="soft">{text(|row| &row.note)}</span>
        </a>
        <span class="person-last"><span class="soft">{say::last_time()}</span><span>{text(|row| &row.last)}</span></span>
    }
    .into_any()
}
