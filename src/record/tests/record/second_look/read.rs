//! Acuity that fell.
//!
//! Computed from logMAR = log10 of the label over 6, a letter 0.02: 6/9 is 0.176, 6/12 0.301, 6/18 0.477.

use record::{EyeAcuity, Finding, Rule, Section, Seen};

use super::visit::{BOTH, NEITHER, RIGHT, acuity, asks, raised, reading, unaided};
use crate::samples::seen;

fn pinhole(without: Seen, through: Seen) -> Section {
    acuity(|read: &mut EyeAcuity, eye| {
        read.with_glasses = Finding::Done(without);
        if eye == record::Eye::Right {
            read.pinhole = Finding::Done(through);
        }
    })
}

#[test]
fn worse_through_the_pinhole_by_two_lines_is_asked_about() {
    let asks_of =
        |without, through| asks(Rule::WorseThroughPinhole, &[], &[pinhole(without, through)]);
    assert_eq!(asks_of(seen(12, 0), seen(18, -1)), NEITHER); // 0.196
    assert_eq!(asks_of(seen(12, 0), seen(18, -2)), RIGHT); // 0.216
    assert_eq!(asks_of(seen(18, 0), seen(9, 0)), NEITHER); // better
    assert_eq!(asks_of(seen(60, 0), Seen::Fingers { at_cm: 100 }), RIGHT);
    let fingers = |at_cm| Seen::Fingers { at_cm };
    assert_eq!(asks_of(fingers(60), fingers(30)), RIGHT);
    assert_eq!(asks_of(fingers(30), fingers(30)), NEITHER);
    assert_eq!(asks_of(Seen::HandMoves, fingers(30)), NEITHER);
}

/// The pinhole is held before the better of the two, so that is what it is compared with.
#[test]
fn the_pinhole_is_compared_with_the_better_reading() {
    let section = acuity(|read, _| {
        read.unaided = Finding::Done(seen(36, 0));
        read.with_glasses = Finding::Done(seen(9, 0));
        read.pinhole = Finding::Done(seen(18, 0));
    });
    let asked = raised(&[], &[section]);
    assert_eq!(asked.len(), 2);
    assert_eq!(
        asked[0].sentence,
        "right eye: 6/18 through the pinhole and 6/9 without: is it the macula, the media, or too little light?"
    );
}

#[test]
fn two_lines_lost_since_last_time_are_asked_about() {
    let then = [unaided(seen(12, 0), seen(12, 0))];
    let asks_of = |right| asks(Rule::AcuityMuchWorse, &then, &[unaided(right, seen(12, 0))]);
    assert_eq!(asks_of(seen(18, -1)), NEITHER); // 0.196
    assert_eq!(asks_of(seen(18, -2)), RIGHT); // 0.216
    assert_eq!(asks_of(Seen::HandMoves), RIGHT);
    assert_eq!(asks_of(seen(6, 0)), NEITHER);
}

/// The chart may stand elsewhere: 6/12 of a 6 m chart at 3 m is 3/12, which is 6/24, 0.301 worse than the label.
#[test]
fn the_distance_of_the_chart_counts() {
    let then = [unaided(seen(12, 0), seen(12, 0))];
    let Section::Acuity(mut now) = unaided(seen(12, 0), seen(12, 0)) else {
        unreachable!("an acuity section was made")
    };
    now.chart.used_at_m = 3.0;
    assert_eq!(
        asks(Rule::AcuityMuchWorse, &then, &[Section::Acuity(now)]),
        BOTH
    );
}

/// What the new lens gives back is no loss.
#[test]
fn like_is_compared_with_like_the_chosen_lens_first() {
    let then = [
        unaided(seen(12, 0), seen(12, 0)),
        reading(seen(9, 0), seen(9, 0)),
    ];
    let now = [
        unaided(seen(60, 0), seen(60, 0)),
        reading(seen(9, 0), seen(24, 0)),
    ];
    let asked = raised(&then, &now);
    assert_eq!(asked.len(), 1);
    assert_eq!(
        asked[0].sentence,
        "left eye with its lens: 6/24 where it was 6/9 last time: what has changed?"
    );
    // Read in different ways: nothing to compare.
    let now = [reading(seen(60, 0), seen(60, 0))];
    let then = [unaided(seen(6, 0), seen(6, 0))];
    assert_eq!(asks(Rule::AcuityMuchWorse, &then, &now), NEITHER);
}
