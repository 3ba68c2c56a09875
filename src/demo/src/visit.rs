//! One exam from the door to the signature.

use chrono::NaiveDateTime;
use record::{
    Decision, Draft, ExamId, Finding, Part, PersonId, Rule, Section, SectionKind, Stamp,
    Subjective, Thresholds, second_look,
};

use crate::EXAMINER;
use crate::chance::Chance;
use crate::desk::{Desk, Tablet};
use crate::odd::Odd;
use crate::sections::{self, Today};
use crate::somebody::Somebody;

/// Examines somebody and writes everything down.
pub fn visit(
    desk: &mut Desk,
    person: PersonId,
    somebody: &mut Somebody,
    at: NaiveDateTime,
    odd: Option<Odd>,
    found: &mut Chance,
) {
    let exam = desk.open(person, somebody, at);
    let seen = Today::of(somebody, at, found);
    let prescribed = seen.prescribes;
    for section in sections::all(somebody, &seen, found) {
        desk.put(exam, section);
    }
    match odd {
        Some(Odd::TwoVersions) => return two_versions(desk, exam),
        Some(Odd::Amended) | None => finish(desk, exam, at),
    }
    if odd == Some(Odd::Amended) {
        amend(desk, exam);
    }
    if prescribed {
        somebody.worn = seen.chosen;
        if found.one_in(2) {
            desk.put(exam, sections::order(&seen, somebody, at));
        }
    }
}

/// Answers whatever the second look asks, then signs.
fn finish(desk: &mut Desk, exam: ExamId, at: NaiveDateTime) {
    loop {
        let asked = second_look(&desk.story, &exam, &Thresholds::default(), at.date());
        let Some(asked) = asked.into_iter().next() else {
            break;
        };
        let reason = answer(asked.rule).to_owned();
        let answer = desk.story.answer(&exam, asked.rule, asked.eye, reason);
        if answer.is_err() {
            break;
        }
        desk.write(answer);
    }
    let signed = desk.story.sign(&exam, EXAMINER.into());
    desk.write(signed);
}

fn answer(rule: Rule) -> &'static str {
    match rule {
        Rule::LargeChange | Rule::NewAnisometropia => {
            "tried in the frame on a walk to the window: steady, and glad of it"
        }
        Rule::AcuityMuchWorse | Rule::NuclearShift => "the lens has clouded; watched, and told",
        Rule::PressureHigh | Rule::PressureUnequal => {
            "taken again after ten minutes: the same; to be looked at next time"
        }
        _ => "looked at again: it is so",
    }
}

/// A change after the signature, with its reason.
fn amend(desk: &mut Desk, exam: ExamId) {
    let decision = desk.story.exam(&exam).and_then(|exam| {
        let decided = exam.decision().settled()?;
        Some(decided.value.clone())
    });
    let Some(decided) = decision else { return };
    let changed = Decision {
        note: "the daughter rang: the old reading pair is to be kept as a spare".into(),
        ..decided
    };
    let reason = Some("the daughter rang after the visit".to_owned());
    let planned = desk
        .story
        .put_section(&exam, changed.into_section(), reason);
    desk.write(planned);
}

/// Both tablets go on from one version of the subjective. It is not settled, so it can't be signed.
fn two_versions(desk: &mut Desk, exam: ExamId) {
    let Some((section, based_on)) = desk.story.exam(&exam).and_then(|exam| {
        let version = exam.subjective().settled()?;
        Some((
            version.value.clone(),
            exam.head_ids(SectionKind::Subjective),
        ))
    }) else {
        return;
    };
    for (tablet, by) in [(Tablet::Bedside, 0.25), (Tablet::Second, -0.25)] {
        desk.tablet = tablet;
        let draft = Draft {
            exam,
            section: changed(&section, by),
            typing: std::collections::BTreeMap::new(),
            based_on: based_on.clone(),
            saved: Stamp::default(),
        };
        let planned = desk.story.put_draft(draft, None);
        desk.write(planned);
    }
    desk.tablet = Tablet::Bedside;
}

/// The right eye's sphere changed by so much.
fn changed(subjective: &Subjective, by: f64) -> Section {
    let mut changed = subjective.clone();
    if let Finding::Done(eye) = &mut changed.eyes.right {
        eye.lens = eye.lens.with_sphere_changed(by);
    }
    changed.into_section()
}
