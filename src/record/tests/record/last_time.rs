//! What was found last time, and the lens for a row in a list.

use optics::SphereCyl;
use optics::retinoscopy::Neutral;
use record::{
    ExamId, Eye, Eyes, FinalLens, Finding, Retinoscopy, Section, SectionKind, Source, Subjective,
};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day};
use crate::samples::{acuity, both, retinoscopy, subjective};

fn exam(n: u128) -> ExamId {
    ExamId::from_uuid(Uuid::from_u128(n))
}

/// Three exams of one person; the middle one has acuity only.
fn three_visits() -> Desk {
    let mut desk = Desk::with_exam(1);
    desk.open(exam(1), PERSON, day(2024, 3, 1));
    desk.open(exam(2), PERSON, day(2025, 3, 1));
    for (exam, section) in [(1, acuity(60)), (1, subjective(2.75)), (2, acuity(36))] {
        let planned = desk.story.put_section(&self::exam(exam), section, None);
        desk.write(planned.unwrap());
    }
    desk
}

#[test]
fn exams_come_newest_first_by_the_day_they_were_opened() {
    let desk = three_visits();
    let order: Vec<ExamId> = desk
        .story
        .exams_of(&PERSON)
        .iter()
        .map(|exam| exam.id())
        .collect();
    assert_eq!(order, [EXAM, exam(2), exam(1)]);
}

#[test]
fn last_time_is_the_newest_earlier_exam_that_has_the_section() {
    let desk = three_visits();
    let from = |exam: &ExamId, kind| {
        let last = desk.story.last_before(exam, kind);
        last.map(|last| (last.exam.id(), last.version.value.clone()))
    };
    assert_eq!(
        from(&EXAM, SectionKind::Acuity),
        Some((exam(2), acuity(36)))
    );
    assert_eq!(
        from(&EXAM, SectionKind::Subjective),
        Some((exam(1), subjective(2.75)))
    );
    assert_eq!(
        from(&exam(2), SectionKind::Acuity),
        Some((exam(1), acuity(60)))
    );
    assert_eq!(from(&exam(1), SectionKind::Acuity), None);
    assert_eq!(from(&EXAM, SectionKind::Retinoscopy), None);
}

#[test]
fn a_row_shows_the_newest_exam_with_a_lens() {
    let desk = three_visits();
    let last = desk.story.last_net(&PERSON).unwrap();
    assert_eq!(last.on, day(2024, 3, 1));
    assert_eq!(last.to_string(), "R +2.75 DS · L +2.75 DS");
}

/// Computed from the formula: 67 cm is 1.4925 D, so +4.75 at neutral is +3.2575, on the quarter step +3.25.
#[test]
fn without_a_chosen_lens_the_net_of_retinoscopy_stands_on_the_quarter_step() {
    let mut desk = Desk::with_exam(1);
    desk.put(retinoscopy("+4.75 / −1.50 × 90"), None);
    let exam = desk.story.exam(&EXAM).unwrap();
    let lens = SphereCyl::new(3.25, -1.5, 90.0).unwrap();
    let source = Source::Retinoscopy;
    assert_eq!(exam.final_lenses(), both(Some(FinalLens { lens, source })));
    let row = desk.story.last_net(&PERSON).unwrap().to_string();
    assert_eq!(row, "R +3.25 / −1.50 × 90 · L +3.25 / −1.50 × 90");
}

#[test]
fn an_eye_that_could_not_choose_falls_back_on_retinoscopy() {
    let mut desk = Desk::with_exam(1);
    desk.put(retinoscopy("+4.75 / −1.50 × 90"), None);
    let Section::Subjective(chosen) = subjective(3.0) else {
        unreachable!("a subjective section was made")
    };
    let reason = "stopped answering".to_owned();
    let eyes = Eyes {
        left: Finding::Unable { reason },
        ..chosen.eyes
    };
    desk.put(Section::Subjective(Subjective { eyes, ..chosen }), None);
    let exam = desk.story.exam(&EXAM).unwrap();
    let source = |eye| exam.final_lens(eye).map(|lens| lens.source);
    assert_eq!(source(Eye::Right), Some(Source::Subjective));
    assert_eq!(source(Eye::Left), Some(Source::Retinoscopy));
}

#[test]
fn two_unsettled_versions_give_no_lens() {
    let mut one = Desk::with_exam(1);
    one.put(retinoscopy("+4.75 DS"), None);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(subjective(3.0), None);
    two.put(subjective(3.25), None);
    one.hear(&two);
    let exam = one.story.exam(&EXAM).unwrap();
    assert_eq!(exam.unsettled(), [SectionKind::Subjective]);
    assert_eq!(exam.final_lenses(), both(None));
    assert_eq!(one.story.last_net(&PERSON), None);
}

#[test]
fn a_blank_eye_has_no_net() {
    let section = Retinoscopy {
        eyes: Eyes {
            right: Finding::Done(Neutral::InFrame(SphereCyl::sphere(1.5))),
            left: Finding::Blank,
        },
        ..Retinoscopy::default()
    };
    assert!(section.net(Eye::Right).is_some());
    assert!(section.net(Eye::Left).is_none());
}
