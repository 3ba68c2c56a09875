//! Sweeps as they are written down: what follows them, what they call for, what is refused.

use optics::retinoscopy::bracket::{Source, Start};
use optics::retinoscopy::{
    Circumstances, Motion, Neutral, Reflex, Setup, Sweep, WorkingDistance, WorkingLens,
};
use optics::{Cell, Meridian, SphereCyl};
use record::{Age, Cycloplegic, Eye, Finding, MovedIn, Retinoscopy, Section, Subjective, check};

const EYE: Eye = Eye::Right;

fn at(cm: f64) -> Setup {
    Setup::new(WorkingDistance::from_cm(cm).unwrap(), None)
}

/// One sweep at 67 cm with no working lens.
fn sweep(meridian: f64, lens: f64, seen: Motion) -> Sweep {
    Sweep::new(Meridian::new(meridian).unwrap(), lens, at(67.0), seen).unwrap()
}

/// An eye that needs +4.50 along 90 and +3.00 along 180 at 67 cm, swept from last time's finding.
fn swept() -> Retinoscopy {
    let mut found = Retinoscopy::default();
    let lens = SphereCyl::parse("+3.00 / −1.50 × 90").unwrap();
    let from = Source::LastTime;
    found.change_swept(EYE, |swept| {
        swept.sweeping.start = Some(Start { lens, from })
    });
    for (meridian, lens, seen) in [
        (180.0, 3.00, Motion::Neutral),
        (90.0, 4.25, Motion::With),
        (90.0, 4.75, Motion::Against),
        (180.0, 2.75, Motion::With),
        (180.0, 3.25, Motion::Against),
        (90.0, 4.50, Motion::Neutral),
    ] {
        found.change_swept(EYE, |swept| swept.log(sweep(meridian, lens, seen)));
    }
    found
}

fn lens_of(found: &Retinoscopy) -> Option<String> {
    let neutral = found.eyes.of(EYE).done();
    neutral.map(|neutral| neutral.lens().to_string())
}

// With below, neutral at, and against above the lens that neutralises: common practice, no source. The net is that less
// 100/67 = 1.49 dioptres, by hand.
#[test]
fn the_finding_follows_the_sweeps() {
    let found = swept();
    assert_eq!(lens_of(&found).as_deref(), Some("+4.50 / −1.50 × 90"));
    let net = found.net(EYE).unwrap().net;
    assert!((net.sphere - (4.5 - 100.0 / 67.0)).abs() < 1e-9);
    assert!(matches!(
        found.eyes.of(EYE),
        Finding::Done(Neutral::TwoMeridians { .. })
    ));
}

#[test]
fn taking_all_sweeps_back_leaves_nothing_found() {
    let mut found = swept();
    while !found.swept.right.sweeping.sweeps.is_empty() {
        found.change_swept(EYE, |swept| assert!(swept.undo().is_some()));
    }
    assert_eq!(*found.eyes.of(EYE), Finding::Blank);
}

#[test]
fn a_lens_entered_otherwise_stays_until_the_sweeps_are_taken() {
    let mut found = swept();
    found.eyes.right = Finding::Done(Neutral::InFrame(SphereCyl::sphere(2.0)));
    assert!(!found.follows_sweeps(EYE));
    found.change_swept(EYE, |swept| {
        swept.log(sweep(90.0, 4.25, Motion::With));
    });
    assert_eq!(lens_of(&found).as_deref(), Some("+2.00 DS"));
    found.take_proposed(EYE);
    assert!(found.follows_sweeps(EYE));
    assert_eq!(lens_of(&found).as_deref(), Some("+4.50 / −1.50 × 90"));
}

// The eye stays as it is when the examiner comes closer: at 40 cm, 2.50 D, each lens at neutral is 1.00 D more plus than at
// 67 cm (100/40 − 100/67 = 1.0075, on the quarter step).
#[test]
fn coming_closer_moves_the_lens_and_not_the_net() {
    let mut found = swept();
    let before = found.net(EYE).unwrap().net;
    found.change_setup(at(40.0));
    assert_eq!(lens_of(&found).as_deref(), Some("+5.50 / −1.50 × 90"));
    let after = found.net(EYE).unwrap().net;
    assert!(before.vector().distance(&after.vector()) < 0.125);
    assert!(
        found
            .swept
            .right
            .sweeping
            .sweeps
            .iter()
            .all(|sweep| sweep.setup == at(67.0))
    );
}

#[test]
fn a_lens_typed_without_sweeps_does_not_move_with_the_set_up() {
    let mut found = Retinoscopy::default();
    found.eyes.right = Finding::Done(Neutral::InFrame(SphereCyl::sphere(2.0)));
    found.change_setup(at(40.0));
    assert_eq!(lens_of(&found).as_deref(), Some("+2.00 DS"));
}

#[test]
fn the_check_at_the_end_is_made_again_after_a_further_sweep() {
    let mut found = swept();
    found.change_swept(EYE, |swept| swept.moved_in = Some(MovedIn::WithInBoth));
    found.change_swept(EYE, |swept| swept.log(sweep(90.0, 4.5, Motion::Neutral)));
    assert_eq!(found.swept.right.moved_in, None);
}

// The usual cautions of the trade: common practice, no source.
#[test]
fn a_dim_reflex_asks_for_one_surface_less_and_a_young_eye_for_care() {
    let mut found = Retinoscopy::default();
    let age = |years| Some(Age { years, exact: true });
    assert!(found.cautions(EYE, age(86)).is_empty());
    let dull = Circumstances::new(None, None, Some(Reflex::Dull)).unwrap();
    found.change_swept(EYE, |swept| swept.sweeping.circumstances = dull);
    assert!(found.cautions(EYE, age(86))[0].contains("come closer"));
    assert_eq!(found.cautions(EYE, age(86)).len(), 1);
    assert!(found.cautions(EYE, age(12))[1].contains("accommodate"));
    found.setup.working_lens = WorkingLens::new(1.5, Cell::Front).ok();
    assert!(found.cautions(EYE, age(86))[0].contains("take the working lens out"));
    let scissors = Circumstances::new(None, None, Some(Reflex::Scissoring)).unwrap();
    found.change_swept(EYE, |swept| swept.sweeping.circumstances = scissors);
    assert!(found.cautions(EYE, age(86))[0].contains("cornea"));
}

// Jackson and others 2004, Am J Ophthalmol 137:1101-1104 (abstract seen): at 10 degrees the mean sphere reads −0.45 where it
// reads −0.02 at 0, so 0.43 D too minus. Aiming within about 5 is common practice, no source.
#[test]
fn looking_from_beside_the_line_of_sight_is_said_and_widens_what_is_possible() {
    let mut found = swept();
    let width = |found: &Retinoscopy| {
        let bracket = found.swept.right.sweeping.bracket();
        bracket.each()[0].interval().width()
    };
    let on_it = width(&found);
    let beside = |degrees| {
        let on_it = Circumstances::default();
        on_it.off_the_line_of_sight(Some(degrees)).unwrap()
    };
    found.change_swept(EYE, |swept| swept.sweeping.circumstances = beside(4.0));
    assert!(found.cautions(EYE, None).is_empty());
    found.change_swept(EYE, |swept| swept.sweeping.circumstances = beside(10.0));
    assert!(found.cautions(EYE, None)[0].contains("0.43 D too minus"));
    assert!(width(&found) > on_it);
}

// Common practice, no source.
#[test]
fn drops_are_said_with_their_time() {
    let mut found = Retinoscopy::default();
    let drops = |minutes| {
        let drug = "cyclopentolate 1 %".to_owned();
        Some(Cycloplegic { drug, minutes })
    };
    let dull = Circumstances::new(None, None, Some(Reflex::Dull)).unwrap();
    found.change_swept(EYE, |swept| {
        swept.sweeping.circumstances = dull;
        swept.drops = drops(10);
    });
    let child = Some(Age {
        years: 6,
        exact: true,
    });
    let said = found.cautions(EYE, child).join("; ");
    assert!(said.contains("accommodate") && said.contains("may still focus"));
    found.change_swept(EYE, |swept| swept.drops = drops(35));
    let said = found.cautions(EYE, child).join("; ");
    assert!(!said.contains("accommodate") && said.contains("cyclopentolate 1 %, 35 min before"));
    found.change_swept(EYE, |swept| swept.drops = drops(2000));
    assert_eq!(
        check(&Section::Retinoscopy(found.clone()))[0].field,
        "right.drops"
    );
    let nameless = Cycloplegic {
        drug: " ".into(),
        minutes: 30,
    };
    found.change_swept(EYE, |swept| swept.drops = Some(nameless));
    assert!(
        check(&Section::Retinoscopy(found))[0]
            .sentence
            .contains("which drops")
    );
}

// Textbook chapters on refraction: from about 4 D the vertex distance matters.
#[test]
fn a_strong_lens_asks_for_its_vertex_distance() {
    let mut found = Retinoscopy::default();
    let weak = Neutral::InFrame(SphereCyl::sphere(5.25));
    found.eyes.right = Finding::Done(weak);
    assert_eq!(found.held_at(EYE), None, "+3.76 is no strong lens");
    let strong = Neutral::InFrame(SphereCyl::sphere(5.75));
    found.eyes.right = Finding::Done(strong);
    assert!(
        found
            .held_at(EYE)
            .unwrap()
            .contains("how far before the eye")
    );
    found.vertex_mm = Some(12.5);
    assert_eq!(found.held_at(EYE).unwrap(), "12.5 mm before the eye");
    let mut subjective = Subjective::default();
    subjective.start_from(&found);
    assert_eq!(subjective.vertex_mm, Some(12.5));
    found.vertex_mm = Some(120.0);
    assert_eq!(check(&Section::Retinoscopy(found))[0].field, "vertex_mm");
}

#[test]
fn a_sweep_beyond_any_lens_is_refused_at_its_field() {
    let mut found = swept();
    found.swept.right.sweeping.sweeps[0].lens = 80.0;
    let errors = check(&Section::Retinoscopy(found));
    assert_eq!(errors.len(), 1);
    assert_eq!(errors[0].field, "right.sweep");
}
