//! What is made up holds to the record's own rules, and is what it is meant to be.

#![allow(
    clippy::unwrap_used,
    reason = "in a test, a value that is not there is the failure"
)]

use std::collections::{BTreeMap, BTreeSet};

use chrono::NaiveDate;
use demo::{Course, Demo, HOMES, Life, PEOPLE};
use record::{Body, Entry, ExamState, Eye, Rule, SectionKind, Story, check};

fn today() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 3, 4).unwrap()
}

fn all(lives: &[Life]) -> impl Iterator<Item = &Entry> {
    lives.iter().flat_map(|life| &life.entries)
}

/// Through their bytes, as a vault gives them back.
fn folded(lives: &[Life]) -> Story {
    let mut story = Story::default();
    for entry in all(lives) {
        let read = Entry::from_cbor(&entry.to_cbor()).unwrap();
        assert_eq!(&read, entry);
        story.admit(read).unwrap();
    }
    story
}

/// Whoever is seen was put down on the morning of the first visit, and on no day before the homes were visited at all.
#[test]
fn people_are_put_down_before_they_are_seen() {
    for life in Demo::new(1, today()) {
        let put_down = |entry: &&Entry| matches!(entry.body, Body::Person { .. });
        let first = life.entries.iter().find(put_down).unwrap().stamp.wall_ms;
        let seen = life.entries.iter().find(|entry| !put_down(entry)).unwrap();
        assert!(seen.stamp.wall_ms.abs_diff(first) <= 60 * 60 * 1000);
        assert!(first < seen.stamp.wall_ms);
    }
}

#[test]
fn sixty_people_in_three_homes_have_five_years_of_exams() {
    let lives: Vec<Life> = Demo::new(1, today()).collect();
    let story = folded(&lives);
    assert_eq!((story.waiting(), story.people().len()), (0, PEOPLE));
    let mut homes: BTreeMap<&str, usize> = BTreeMap::new();
    let (mut exams, mut names) = (0, BTreeSet::new());
    for person in story.people() {
        let details = person.details();
        assert_eq!(details.check(today()), []);
        assert!(names.insert(details.name.to_string()), "{}", details.name);
        *homes.entry(details.place.as_str()).or_default() += 1;
        for exam in story.exams_of(&person.id()) {
            let days = (today() - exam.opened_on()).num_days();
            assert!((0..5 * 365).contains(&days), "{days} days ago");
            exams += 1;
        }
    }
    assert_eq!(homes, HOMES.map(|home| (home, 20)).into());
    assert!((270..=300).contains(&exams), "{exams} exams");
}

#[test]
fn everything_passes_the_checks_and_is_signed_but_for_the_odd_ones() {
    let lives: Vec<Life> = Demo::new(1, today()).collect();
    let story = folded(&lives);
    for entry in all(&lives) {
        if let Body::Section { section, .. } = &entry.body {
            assert_eq!(check(section), [], "{section:?}");
        }
    }
    let people = story.people().into_iter();
    let exams: Vec<_> = people
        .flat_map(|person| story.exams_of(&person.id()))
        .collect();
    let in_state = |state| exams.iter().filter(|exam| exam.state() == state).count();
    assert_eq!(
        (in_state(ExamState::Amended), in_state(ExamState::Open)),
        (1, 1)
    );
    let open = exams
        .iter()
        .find(|exam| exam.state() == ExamState::Open)
        .unwrap();
    assert_eq!(open.unsettled(), [SectionKind::Subjective]);
    let devices: BTreeSet<_> = open
        .subjective()
        .versions()
        .iter()
        .map(|version| version.entry.device)
        .collect();
    assert_eq!(devices.len(), 2);
    let amended = exams
        .iter()
        .find(|exam| exam.state() == ExamState::Amended)
        .unwrap();
    assert_eq!(amended.amendments().len(), 1);
    for exam in exams {
        assert!(
            exam.final_lens(Eye::Right).is_some() || exam.unsettled() == [SectionKind::Subjective]
        );
    }
}

#[test]
fn each_course_goes_as_it_is_called() {
    let lives: Vec<Life> = Demo::new(2, today()).collect();
    let story = folded(&lives);
    let courses: BTreeSet<Course> = lives.iter().map(|life| life.course).collect();
    assert_eq!(courses.len(), 5);
    for life in &lives {
        let exams = story.exams_of(&life.person);
        let logmar = |exam: &record::Exam| {
            let chosen = exam.subjective().latest()?.value;
            chosen.chart.logmar(&chosen.eyes.right.done()?.acuity?)
        };
        let (last, first) = (exams[0], exams[exams.len() - 1]);
        let (now, then) = (logmar(last).unwrap(), logmar(first).unwrap());
        match life.course {
            Course::Clouding if exams.len() == 5 => assert!(now > then, "{then} to {now}"),
            Course::LowVision => assert!(now > 0.6, "{now}"),
            Course::Ordinary => assert!(now < 0.6, "{now}"),
            _ => {}
        }
        if life.course == Course::SmallPupils {
            let pupils = last.part::<record::Pupils>();
            let mm = pupils.latest().unwrap().value.eyes.right.light_mm.clone();
            assert!(*mm.done().unwrap() <= 2.5);
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_people_and_another_gives_others() {
    let bytes = |seed| {
        let lives: Vec<Life> = Demo::new(seed, today()).take(3).collect();
        all(&lives).map(Entry::to_cbor).collect::<Vec<_>>()
    };
    assert_eq!(bytes(1), bytes(1));
    assert_ne!(bytes(1), bytes(2));
}

/// How many questions each ordinary exam got: every one was answered before the signature, and an answer is kept.
fn questions(lives: impl Iterator<Item = Life>) -> (usize, BTreeMap<String, usize>) {
    let (mut exams, mut asked) = (0, BTreeMap::new());
    for entry in lives
        .filter(|life| life.course == Course::Ordinary)
        .flat_map(|life| life.entries)
    {
        match entry.body {
            Body::Signed { .. } => exams += 1,
            Body::Answered(answered) => *asked.entry(answered.rule).or_default() += 1,
            _ => {}
        }
    }
    (exams, asked)
}

/// The limit, a fifth of a question an exam, is this project's own: more would be clicked away.
#[test]
fn the_second_look_seldom_asks_about_an_ordinary_exam() {
    let (exams, asked) = questions((1..=7).flat_map(|seed| Demo::new(seed, today())));
    let total: usize = asked.values().sum();
    assert!(exams >= 1000, "{exams}");
    assert!(total * 5 < exams, "{total} in {exams} exams: {asked:?}");
    // Were nothing asked at all, the exams would not be what is looked at.
    assert!(asked.contains_key(Rule::LargeChange.slug()), "{asked:?}");
}

#[test]
fn it_asks_nothing_where_every_measurement_finds_what_is_there() {
    let (exams, asked) = questions((1..=2).flat_map(|seed| Demo::new(seed, today()).exact()));
    assert!(exams >= 250, "{exams}");
    assert_eq!(asked, BTreeMap::new());
}
