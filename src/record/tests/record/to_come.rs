//! What retinoscopy hands on: what to remember, what is to come, what the subjective starts from, what lies side by side.

use optics::retinoscopy::bracket::{Source, Start};
use optics::retinoscopy::{
    Circumstances, EyeBracket, Media, Motion, Neutral, Reflex, Setup, Sweep, WorkingDistance,
    WorkingLens,
};
use optics::{Cell, Meridian, SphereCyl};
use record::fog::{self, HARDLY_ACCOMMODATES_FROM, NO_FOG_FROM};
use record::{Age, Eye, Finding, FoundBy, Retinoscopy, Subjective, SubjectiveEye, ToCome};

const EYE: Eye = Eye::Right;

const fn age(years: u16) -> Age {
    Age { years, exact: true }
}

fn setup(working_lens: Option<f64>) -> Setup {
    let lens = working_lens.map(|power| WorkingLens::new(power, Cell::Front).unwrap());
    Setup::new(WorkingDistance::from_cm(67.0).unwrap(), lens)
}

/// An eye neutral with this in the frame at 67 cm.
fn found(lens: &str) -> Retinoscopy {
    let mut found = Retinoscopy::default();
    let lens = SphereCyl::parse(lens).unwrap();
    *found.eyes.of_mut(EYE) = Finding::Done(Neutral::InFrame(lens));
    found
}

/// A machine's reading, and both meridians swept from with to against about it, a quarter apart.
fn swept() -> Retinoscopy {
    let mut found = Retinoscopy::default();
    let lens = SphereCyl::parse("+3.00 / −1.50 × 90").unwrap();
    let from = Source::Machine;
    found.change_swept(EYE, |swept| {
        swept.sweeping.start = Some(Start { lens, from })
    });
    for (meridian, lens, seen) in [
        (180.0, 2.75, Motion::With),
        (180.0, 3.00, Motion::Neutral),
        (180.0, 3.25, Motion::Against),
        (90.0, 4.25, Motion::With),
        (90.0, 4.50, Motion::Neutral),
        (90.0, 4.75, Motion::Against),
    ] {
        let meridian = Meridian::new(meridian).unwrap();
        let sweep = Sweep::new(meridian, lens, setup(None), seen).unwrap();
        found.change_swept(EYE, |swept| swept.log(sweep));
    }
    found
}

fn with(mut found: Retinoscopy, media: Option<Media>, reflex: Option<Reflex>) -> Retinoscopy {
    let circumstances = Circumstances::new(None, media, reflex).unwrap();
    found.swept.of_mut(EYE).sweeping.circumstances = circumstances;
    found
}

// Published: Hofstetter 1950 (from memory): least amplitude 15 − 0.25 × age, so nothing is left at 60. The rest is common
// practice, no source.
#[test]
fn an_eye_that_cannot_focus_needs_no_fog() {
    assert!((15.0 - 0.25 * f64::from(NO_FOG_FROM)).abs() < f64::EPSILON);
    assert_eq!(fog::reminder(Some(age(86)), &setup(None)), None);
    assert_eq!(
        fog::reminder(Some(age(NO_FOG_FROM)), &setup(Some(1.5))),
        None
    );
    for younger in [Some(age(NO_FOG_FROM - 1)), Some(age(20)), None] {
        let told = fog::reminder(younger, &setup(None));
        assert!(told.is_some_and(|told| told.starts_with("fog this eye")));
    }
}

#[test]
fn the_working_lens_stays_before_a_young_eye() {
    let told = |years, lens| {
        fog::reminder(years, &setup(lens))
            .is_some_and(|told| told.contains("keep the working lens in"))
    };
    assert!(told(Some(age(20)), Some(1.5)));
    assert!(told(Some(age(HARDLY_ACCOMMODATES_FROM - 1)), Some(1.5)));
    assert!(told(None, Some(1.5)));
    assert!(!told(Some(age(HARDLY_ACCOMMODATES_FROM)), Some(1.5)));
    assert!(!told(Some(age(20)), None), "there is none to keep");
}

fn says(found: &Retinoscopy, eye: Eye) -> EyeBracket {
    found.swept.of(eye).sweeping.bracket()
}

fn to_come(found: &Retinoscopy, years: u16) -> Option<ToCome> {
    found.to_come(EYE, &says(found, EYE), Some(age(years)))
}

// Common practice, no source: cataract and a broken reflex make poor answers, a young eye hides plus.
#[test]
fn what_sort_of_refraction_is_to_come() {
    assert_eq!(to_come(&Retinoscopy::default(), 86), None);
    assert_eq!(to_come(&found("+3.00 DS"), 86), None, "nothing tells");
    assert_eq!(to_come(&found("+3.00 DS"), 19), Some(ToCome::YoungerEye));
    assert_eq!(to_come(&swept(), 86), Some(ToCome::ClearAnswers));
    assert_eq!(to_come(&swept(), 19), Some(ToCome::YoungerEye));
    for clouded in [
        with(swept(), Some(Media::Dense), None),
        with(swept(), None, Some(Reflex::Scissoring)),
        with(found("+3.00 DS"), Some(Media::Moderate), None),
    ] {
        assert_eq!(to_come(&clouded, 19), Some(ToCome::PoorAnswers));
    }
}

#[test]
fn a_meridian_that_stays_wide_makes_poor_answers() {
    let mut wide = found("+3.00 DS");
    let sweep = Sweep::new(Meridian::HORIZONTAL, 3.0, setup(None), Motion::CannotTell).unwrap();
    wide.change_swept(EYE, |swept| swept.log(sweep));
    assert_eq!(to_come(&wide, 86), Some(ToCome::PoorAnswers));
}

// By hand: +4.75 at 67 cm is +4.75 − 1.49 = +3.26, on the quarter step +3.25; the cylinder stays.
#[test]
fn the_subjective_starts_with_the_distance_off() {
    let mut chosen = Subjective::default();
    chosen.start_from(&found("+4.75 / −1.50 × 90"));
    let start = chosen.started.of(EYE).clone().unwrap();
    assert_eq!(
        start.sentence(),
        "starts from retinoscopy: +3.25 / \u{2212}1.50 \u{d7} 90, 67 cm taken off"
    );
    assert_eq!(chosen.eyes.of(EYE).done().unwrap().lens, start.lens);
    assert_eq!(*chosen.started.of(Eye::Left), None);
    assert!(chosen.eyes.of(Eye::Left).is_blank());
}

#[test]
fn a_lens_that_stands_stays() {
    let lens = SphereCyl::sphere(-1.0);
    let mut chosen = Subjective::default();
    *chosen.eyes.of_mut(EYE) = Finding::Done(SubjectiveEye { lens, acuity: None });
    let before = chosen.clone();
    chosen.start_from(&found("+4.75 / −1.50 × 90"));
    assert_eq!(chosen, before);
}

#[test]
fn what_was_found_lies_side_by_side() {
    let mut found = swept();
    let last = SphereCyl::parse("+2.75 / −1.00 × 80").unwrap();
    let beside = found.side_by_side(EYE, &says(&found, EYE), Some(last));
    let by: Vec<FoundBy> = beside.iter().map(|each| each.by).collect();
    assert_eq!(
        by,
        [FoundBy::Retinoscopy, FoundBy::Machine, FoundBy::LastTime]
    );
    assert!(
        beside[0]
            .within
            .is_some_and(|ellipse| ellipse.major >= ellipse.minor)
    );
    assert_eq!(beside[1].lens.to_string(), "+3.00 / −1.50 × 90");
    assert_eq!(beside[2].lens, last);

    *found.eyes.of_mut(EYE) = Finding::Done(Neutral::InFrame(last));
    assert_eq!(
        found.side_by_side(EYE, &says(&found, EYE), None)[0].within,
        None,
        "entered otherwise"
    );
    let left = found.side_by_side(Eye::Left, &says(&found, Eye::Left), None);
    assert!(left.is_empty());
}
