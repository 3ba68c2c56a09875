//! The story so far: what is followed over the years, what happened, and the order in which it is told.

use chrono::{DateTime, NaiveDate, NaiveDateTime, NaiveTime};
use optics::SphereCyl;
use record::{
    Acuity, Amount, Chart, Decision, Device, Drops, Drug, Event, ExamId, Eye, EyeAcuity, Eyes,
    Finding, Fitted, Fitting, Given, Glasses, Grade, Happened, LensState, Measure, Moment, Noted,
    Opacity, Part, Posterior, PosteriorEye, Pressure, PupilEye, Pupils, Readings, Referral,
    Section, Seen, Stamp, Stands, StorySoFar, Subjective, SubjectiveEye, Taken, Urgency, Viewed,
    WhichEyes, in_years,
};
use uuid::Uuid;

use crate::desk::{Desk, EXAM, PERSON, day};
use crate::samples::{both, decision, retinoscopy, seen, subjective};

const EARLIER: ExamId = ExamId::from_uuid(Uuid::from_u128(0xE0));

/// A clock that is an hour ahead of universal time.
fn hour_ahead(stamp: Stamp) -> NaiveDateTime {
    let ms = i64::try_from(stamp.wall_ms).unwrap() + 3_600_000;
    DateTime::from_timestamp_millis(ms).unwrap().naive_utc()
}

/// An exam in March 2024 and one in March 2026.
fn two_years() -> Desk {
    let mut desk = Desk::with_exam(1);
    desk.open(EARLIER, PERSON, day(2024, 3, 4));
    desk
}

fn earlier(desk: &mut Desk, section: Section) {
    let planned = desk.story.put_section(&EARLIER, section, None).unwrap();
    desk.write(planned);
}

fn told(desk: &Desk) -> StorySoFar {
    desk.story.story_so_far(&PERSON, &hour_ahead)
}

fn points(story: &StorySoFar, measure: &Measure, eye: Eye) -> Vec<Noted> {
    let followed = story.followed.iter().find(|one| one.measure == *measure);
    let points = followed.into_iter().flat_map(|one| &one.points);
    points.map(|eyes| eyes.of(eye).clone()).collect()
}

fn stands(story: &StorySoFar, measure: &Measure) -> Vec<Stands> {
    let points = points(story, measure, Eye::Right);
    points.iter().map(|point| point.stands).collect()
}

fn happened(story: &StorySoFar) -> Vec<(NaiveDate, Happened)> {
    let events = story.events.iter();
    events.map(|event| (event.on, event.what)).collect()
}

/// Computed from the formula M = S + C/2, J0 = −(C/2) cos 2A, J45 = −(C/2) sin 2A (Thibos, Wheeler and Horner 1997, Optom
/// Vis Sci 74:367-375): +3.00 / −1.00 × 180 is M +2.50, J0 +0.50, J45 0.
#[test]
fn a_lens_is_followed_as_a_vector() {
    let mut desk = two_years();
    let lens = SphereCyl::new(3.0, -1.0, 180.0).unwrap();
    let eyes = both(Finding::Done(SubjectiveEye { lens, acuity: None }));
    let chosen = Subjective {
        eyes,
        ..Subjective::default()
    };
    earlier(&mut desk, chosen.into_section());
    let story = told(&desk);
    assert_eq!(
        stands(&story, &Measure::MeanSphere),
        [Stands::Number(2.5), Stands::Missing]
    );
    assert_eq!(
        stands(&story, &Measure::J0),
        [Stands::Number(0.5), Stands::Missing]
    );
    let [found, gap] = <[Noted; 2]>::try_from(points(&story, &Measure::J45, Eye::Left)).unwrap();
    let Stands::Number(j45) = found.stands else {
        panic!("{found:?}")
    };
    assert!(j45.abs() < 1e-12);
    assert_eq!((found.words.as_str(), gap.words.as_str()), ("0.00 D", ""));
    assert_eq!(found.how, "+3.00 / −1.00 × 180, chosen by the person");
}

#[test]
fn a_lens_that_nobody_chose_says_so() {
    let mut desk = two_years();
    desk.put(retinoscopy("+4.75 DS"), None);
    let now = points(&told(&desk), &Measure::MeanSphere, Eye::Right)
        .pop()
        .unwrap();
    assert!(now.how.ends_with("by retinoscopy alone"), "{}", now.how);
}

#[test]
fn what_nobody_found_is_not_followed() {
    assert_eq!(told(&two_years()).followed, []);
    let mut desk = two_years();
    let reason = "asleep".to_owned();
    let asleep = EyeAcuity {
        unaided: Finding::Unable { reason },
        ..EyeAcuity::default()
    };
    desk.put(
        Acuity {
            eyes: both(asleep),
            ..Acuity::default()
        }
        .into_section(),
        None,
    );
    assert_eq!(told(&desk).followed, []);
}

/// Computed from the formula: 6/12 at the 6 m that it was made for is log10(2) = 0.301, 6/9 is log10(1.5) = 0.176.
#[test]
fn the_best_that_was_read_counts_and_says_with_what() {
    let mut desk = two_years();
    let eye = EyeAcuity {
        unaided: Finding::Done(seen(36, 0)),
        with_glasses: Finding::Done(seen(12, 0)),
        pinhole: Finding::Done(seen(12, 0)),
    };
    desk.put(
        Acuity {
            eyes: both(eye),
            ..Acuity::default()
        }
        .into_section(),
        None,
    );
    let read = |desk: &Desk| {
        points(&told(desk), &Measure::Acuity, Eye::Right)
            .pop()
            .unwrap()
    };
    assert_eq!(read(&desk).words, "logMAR 0.30, 6/12");
    assert_eq!(read(&desk).how, "with the glasses worn");
    desk.put(subjective(3.0), None); // reads 6/9 with it
    assert_eq!(read(&desk).words, "logMAR 0.18, 6/9");
    assert_eq!(read(&desk).how, "with the chosen lens");
}

/// A category is no measurement: it has no number (Schulze-Bonsel et al. 2006, Invest Ophthalmol Vis Sci 47:1236-1240,
/// found numbers for statistics alone).
#[test]
fn a_category_lies_beyond_the_scale() {
    let mut desk = two_years();
    let fingers = EyeAcuity {
        unaided: Finding::Done(Seen::Fingers { at_cm: 30 }),
        ..EyeAcuity::default()
    };
    let chart = Chart {
        made_for_m: 6.0,
        used_at_m: 2.0,
    };
    desk.put(
        Acuity {
            chart,
            eyes: both(fingers),
        }
        .into_section(),
        None,
    );
    let now = points(&told(&desk), &Measure::Acuity, Eye::Left)
        .pop()
        .unwrap();
    assert_eq!(now.stands, Stands::Beyond);
    assert_eq!(now.words, "counts fingers at 30 cm");
}

fn pressure(device: Device, hour: u32, mmhg: &[f64], after_dilating: bool) -> Taken {
    Taken {
        device,
        at: NaiveTime::from_hms_opt(hour, 5, 0).unwrap(),
        after_dilating,
        eyes: Eyes {
            right: Finding::Done(Readings {
                mmhg: mmhg.to_vec(),
            }),
            left: Finding::NotDone {
                reason: "lids squeezed".into(),
            },
        },
        note: String::new(),
    }
}

/// Mean sphere and both crossed cylinders come from one lens.
#[test]
fn how_a_lens_was_obtained_is_said_once() {
    let mut desk = two_years();
    desk.put(subjective(3.0), None);
    let taken = vec![pressure(Device::Rebound, 9, &[16.0], false)];
    desk.put(Pressure { taken }.into_section(), None);
    let story = told(&desk);
    let said: Vec<_> = story.obtained(1).into_iter().map(|one| one.of).collect();
    // The sample's lens reads 6/9, so acuity was obtained as well.
    assert_eq!(
        said,
        ["final lens", "acuity, the best read", "pressure, rebound"]
    );
    let how = &story.obtained(1)[0].how;
    assert_eq!(how.right, "+3.00 DS, chosen by the person");
    assert_eq!(story.obtained(0), []);
    assert_eq!(story.obtained(9), []);
}

/// Devices disagree, so each has a line of its own: see `sections::pressure`.
#[test]
fn each_device_has_a_line_and_what_was_taken_before_drops_goes_first() {
    let mut desk = two_years();
    let taken = vec![
        pressure(Device::Rebound, 9, &[30.0], true),
        pressure(Device::Rebound, 8, &[15.0, 16.0, 20.0], false),
    ];
    desk.put(Pressure { taken }.into_section(), None);
    let taken = vec![pressure(Device::Applanation, 14, &[18.0], true)];
    earlier(&mut desk, Pressure { taken }.into_section());
    let story = told(&desk);
    let (rebound, flat) = (
        Measure::Pressure(Device::Rebound),
        Measure::Pressure(Device::Applanation),
    );
    assert_eq!(
        stands(&story, &rebound),
        [Stands::Missing, Stands::Number(17.0)]
    );
    assert_eq!(
        stands(&story, &flat),
        [Stands::Number(18.0), Stands::Missing]
    );
    let how = |measure| {
        points(&story, measure, Eye::Right)
            .into_iter()
            .map(|point| point.how)
    };
    assert_eq!(
        how(&rebound).next_back().unwrap(),
        "rebound, 08:05, mean of 15, 16, 20"
    );
    assert_eq!(
        how(&flat).next().unwrap(),
        "applanation, 14:05, after dilating drops"
    );
    let left = points(&story, &rebound, Eye::Left).pop().unwrap();
    assert_eq!(
        (left.stands, left.words.as_str()),
        (Stands::Missing, "not done: lids squeezed")
    );
}

#[test]
fn a_cup_says_how_it_was_viewed() {
    let mut desk = two_years();
    let eye = PosteriorEye {
        viewed: Some(Viewed::Direct),
        cup_to_disc: Finding::Done(0.45),
        ..PosteriorEye::default()
    };
    desk.put(Posterior { eyes: both(eye) }.into_section(), None);
    let now = points(&told(&desk), &Measure::CupToDisc, Eye::Right)
        .pop()
        .unwrap();
    assert_eq!(
        (now.stands, now.words.as_str()),
        (Stands::Number(0.45), "0.45")
    );
    assert!(!now.how.is_empty());
}

#[test]
fn of_two_unsettled_versions_nothing_is_taken() {
    let mut one = two_years();
    one.put(subjective(2.0), None);
    let mut two = Desk::new(2);
    two.hear(&one);
    one.put(subjective(3.0), None);
    two.put(subjective(3.25), None);
    earlier(&mut one, subjective(1.0));
    one.hear(&two);
    let now = points(&told(&one), &Measure::MeanSphere, Eye::Right)
        .pop()
        .unwrap();
    assert_eq!(now.stands, Stands::Missing);
    assert_eq!(now.words, "two versions, not settled yet");
}

fn lens(state: LensState) -> Section {
    let eye = PupilEye {
        lens: Finding::Done(state),
        ..PupilEye::default()
    };
    let eyes = Eyes {
        right: eye,
        left: PupilEye::default(),
    };
    Pupils {
        eyes,
        ..Pupils::default()
    }
    .into_section()
}

#[test]
fn what_happened_is_told_once_and_on_its_day() {
    let clouded = Opacity {
        nuclear: Some(Grade::Plain(Amount::Moderate)),
        ..Opacity::default()
    };
    let mut desk = two_years();
    earlier(&mut desk, lens(LensState::Own(clouded)));
    desk.put(lens(LensState::Implant { capsule: None }), None);
    let refer = Some(Referral {
        urgency: Urgency::Soon,
        to: "the harbour clinic".into(),
    });
    let decided = Decision {
        glasses: Some(Glasses::Prescribe),
        refer,
        ..Decision::default()
    };
    earlier(&mut desk, Section::Decision(decided));
    let fitted = Fitted {
        fitted_on: Some(day(2024, 4, 2)),
        ..Fitted::default()
    };
    earlier(
        &mut desk,
        Fitting {
            pairs: vec![fitted],
        }
        .into_section(),
    );
    let drop = Given {
        drug: Drug::Tropicamide,
        strength_percent: None,
        batch: String::new(),
        expires: None,
        at: None,
        into: WhichEyes::Both,
        by: String::new(),
    };
    let drops = Drops {
        given: Finding::Done(vec![drop]),
        ..Drops::default()
    };
    desk.put(drops.into_section(), None);
    let story = told(&desk);
    assert_eq!(
        happened(&story),
        [
            (day(2024, 3, 4), Happened::Prescribed),
            (day(2024, 3, 4), Happened::Referred),
            (day(2024, 3, 4), Happened::Cataract),
            (day(2024, 4, 2), Happened::Fitted),
            (day(2026, 3, 4), Happened::Drops),
            (day(2026, 3, 4), Happened::Implant),
        ]
    );
    let words: Vec<&str> = story
        .events
        .iter()
        .map(|event| event.words.as_str())
        .collect();
    assert_eq!(words[1], "referred: soon, to the harbour clinic");
    assert_eq!(words[2], "cataract noted: right eye");
    assert_eq!(words[4], "drops given: tropicamide");
}

#[test]
fn a_lens_that_is_still_clouded_is_no_news() {
    let clouded = Opacity {
        cortical: Some(Grade::LocsIii(3.0)),
        ..Opacity::default()
    };
    let mut desk = two_years();
    earlier(&mut desk, lens(LensState::Own(clouded)));
    desk.put(lens(LensState::Own(clouded)), None);
    assert_eq!(
        happened(&told(&desk)),
        [(day(2024, 3, 4), Happened::Cataract)]
    );
}

/// An amendment happens when it is written, by the clock where the tablet is: the desk's day begins at 08:00 universal time.
#[test]
fn the_timeline_is_newest_first_and_keeps_an_event_with_its_exam() {
    let mut desk = two_years();
    desk.put(decision(Glasses::LeaveAlone), None);
    desk.sign();
    desk.put(decision(Glasses::LeaveAlone), Some("a word was missing"));
    let decided = Decision {
        glasses: Some(Glasses::Prescribe),
        ..Decision::default()
    };
    earlier(&mut desk, subjective(2.0));
    earlier(&mut desk, Section::Decision(decided));
    let fitted = Fitted {
        fitted_on: Some(day(2024, 4, 2)),
        ..Fitted::default()
    };
    earlier(
        &mut desk,
        Fitting {
            pairs: vec![fitted],
        }
        .into_section(),
    );
    let story = told(&desk);
    let order: Vec<_> = story
        .timeline()
        .iter()
        .map(|told| match told {
            Moment::Exam { exam, on, events } => (*on, Some(*exam), events.len()),
            Moment::Later(Event { on, .. }) => (*on, None, 1),
        })
        .collect();
    assert_eq!(
        order,
        [
            (day(2026, 3, 4), Some(EXAM), 1), // amended on its own day
            (day(2024, 4, 2), None, 1),
            (day(2024, 3, 4), Some(EARLIER), 1),
        ]
    );
}

/// Computed from the calendar: 2 July is the 183rd of 365 days, so 182 have passed; in a leap year it is the 184th of 366.
#[test]
fn a_day_lies_in_its_year() {
    assert!((in_years(day(2026, 7, 2)) - (2026.0 + 182.0 / 365.0)).abs() < 1e-9);
    assert!((in_years(day(2024, 7, 2)) - (2024.0 + 183.0 / 366.0)).abs() < 1e-9);
}

#[test]
fn recent_lenses_count_the_exams_between() {
    let mut desk = two_years();
    desk.open(
        ExamId::from_uuid(Uuid::from_u128(0xE5)),
        PERSON,
        day(2025, 3, 4),
    );
    earlier(&mut desk, subjective(2.0));
    desk.put(subjective(3.0), None);
    let recent = desk.story.recent_lenses(&PERSON, Eye::Left);
    assert_eq!(
        recent,
        [(0, SphereCyl::sphere(3.0)), (2, SphereCyl::sphere(2.0))]
    );
}
