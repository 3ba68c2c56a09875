//! Answers: what was answered is not asked again until a section that it speaks of has a later version.

use record::{Eye, Glasses, RecordError, Rule, Section, Subjective, Thresholds, second_look_with};

use super::visit::{BORN, BOTH, NEITHER, asks, decided, desk, look, subjective};
use crate::desk::{Desk, EXAM, day};

/// Both spheres flipped their sign.
fn flipped() -> Desk {
    let then = [subjective("+2.00 DS", "+2.00 DS")];
    let now = [subjective("−2.00 DS", "−2.00 DS")];
    assert_eq!(asks(Rule::SignFlipped, &then, &now), BOTH);
    desk(Some(BORN), &then, &now)
}

fn answer(desk: &mut Desk, eye: Option<Eye>) {
    let reason = "nuclear cataract".to_owned();
    let planned = desk.story.answer(&EXAM, Rule::SignFlipped, eye, reason);
    desk.write(planned.unwrap());
}

fn eyes(desk: &Desk) -> Vec<Option<Eye>> {
    let asked = look(desk).into_iter();
    let flipped = asked.filter(|asked| asked.rule == Rule::SignFlipped);
    flipped.map(|asked| asked.eye).collect()
}

#[test]
fn an_answer_holds_for_its_rule_and_its_eye() {
    let mut desk = flipped();
    answer(&mut desk, Some(Eye::Right));
    assert_eq!(eyes(&desk), [Some(Eye::Left)]);
    answer(&mut desk, None); // of another eye: of neither
    assert_eq!(eyes(&desk), [Some(Eye::Left)]);
    answer(&mut desk, Some(Eye::Left));
    assert_eq!(eyes(&desk), NEITHER);
    assert!(
        look(&desk)
            .iter()
            .any(|asked| asked.rule == Rule::LargeChange)
    );
}

#[test]
fn a_later_version_is_asked_about_anew() {
    let mut desk = flipped();
    answer(&mut desk, Some(Eye::Right));
    desk.put(subjective("−2.25 DS", "−2.00 DS"), None);
    assert_eq!(eyes(&desk), BOTH);
    // A section that the rule does not speak of changes nothing.
    answer(&mut desk, Some(Eye::Right));
    desk.put(decided(Glasses::Prescribe), None);
    assert_eq!(eyes(&desk), [Some(Eye::Left)]);
}

#[test]
fn what_is_not_written_down_yet_is_looked_at_in_place_of_what_is() {
    let mut desk = flipped();
    answer(&mut desk, Some(Eye::Right));
    let asked = |unsaved: Section| {
        let today = day(2026, 3, 4);
        let all = second_look_with(
            &desk.story,
            &EXAM,
            &[unsaved],
            &Thresholds::default(),
            today,
        );
        let flipped = all
            .into_iter()
            .filter(|asked| asked.rule == Rule::SignFlipped);
        flipped.map(|asked| asked.eye).collect::<Vec<_>>()
    };
    assert_eq!(asked(subjective("+2.00 DS", "+2.00 DS")), NEITHER);
    // The same as what was answered, and something else.
    assert_eq!(asked(subjective("−2.00 DS", "−2.00 DS")), [Some(Eye::Left)]);
    assert_eq!(asked(subjective("−2.25 DS", "−2.00 DS")), BOTH);
    assert_eq!(asked(Section::Subjective(Subjective::default())), NEITHER);
}

#[test]
fn an_answer_wants_words_and_an_exam() {
    let desk = flipped();
    let blank = desk
        .story
        .answer(&EXAM, Rule::SignFlipped, None, "  ".into());
    assert_eq!(blank, Err(RecordError::NoAnswer));
    let nowhere = Desk::new(2)
        .story
        .answer(&EXAM, Rule::SignFlipped, None, "so".into());
    assert_eq!(nowhere, Err(RecordError::NoSuchExam(EXAM)));
}

#[test]
fn answers_travel_and_neither_tablets_is_lost() {
    let mut one = flipped();
    let mut two = Desk::new(2);
    two.hear(&one);
    answer(&mut one, Some(Eye::Right));
    answer(&mut two, Some(Eye::Left));
    one.hear(&two);
    two.hear(&one);
    for desk in [&one, &two] {
        assert_eq!(eyes(desk), NEITHER);
        let answers = desk.story.exam(&EXAM).unwrap().answers();
        let said: Vec<_> = answers
            .iter()
            .map(|answer| (answer.rule(), answer.answered.eye, &*answer.answered.reason))
            .collect();
        let flip = Some(Rule::SignFlipped);
        assert!(
            said.contains(&(flip, Some(Eye::Right), "nuclear cataract")),
            "{said:?}"
        );
        assert!(
            said.contains(&(flip, Some(Eye::Left), "nuclear cataract")),
            "{said:?}"
        );
        assert_eq!(said.len(), 2);
    }
}

/// An answer changes no section, so a signed exam takes one and stays signed.
#[test]
fn a_signed_exam_can_be_answered_for() {
    let mut desk = flipped();
    desk.put(decided(Glasses::Prescribe), None);
    desk.sign();
    answer(&mut desk, Some(Eye::Right));
    assert_eq!(eyes(&desk), [Some(Eye::Left)]);
    let exam = desk.story.exam(&EXAM).unwrap();
    assert_eq!(exam.state(), record::ExamState::Signed);
}
