//! The clock never goes back, whatever the tablet's own clock does.

use proptest::prelude::*;
use record::{Clock, Stamp};

proptest! {
    #[test]
    fn each_stamp_is_later_than_all_before_it(
        times in prop::collection::vec((any::<u64>(), any::<bool>(), any::<u16>()), 1..50),
    ) {
        let mut clock = Clock::default();
        let mut latest = Stamp::default();
        for (wall_ms, heard, counter) in times {
            // Far from the end of time, where nothing could be later.
            let wall_ms = wall_ms / 2;
            if heard {
                let stamp = Stamp { wall_ms, counter };
                clock.witness(stamp);
                latest = latest.max(stamp);
            } else {
                let stamp = clock.tick(wall_ms);
                prop_assert!(stamp > latest);
                prop_assert!(stamp.wall_ms >= wall_ms);
                latest = stamp;
            }
        }
    }
}

#[test]
fn a_right_clock_is_shown_as_it_is() {
    let mut clock = Clock::default();
    assert_eq!(
        clock.tick(500),
        Stamp {
            wall_ms: 500,
            counter: 0
        }
    );
    assert_eq!(
        clock.tick(500),
        Stamp {
            wall_ms: 500,
            counter: 1
        }
    );
    assert_eq!(
        clock.tick(501),
        Stamp {
            wall_ms: 501,
            counter: 0
        }
    );
}

#[test]
fn a_counter_that_is_used_up_moves_to_the_next_millisecond() {
    let mut clock = Clock::default();
    clock.witness(Stamp {
        wall_ms: 500,
        counter: u16::MAX,
    });
    assert_eq!(
        clock.tick(500),
        Stamp {
            wall_ms: 501,
            counter: 0
        }
    );
}

#[test]
fn a_clock_at_the_end_of_time_stands_still_and_does_not_go_back() {
    let mut clock = Clock::default();
    let last = Stamp {
        wall_ms: u64::MAX,
        counter: u16::MAX,
    };
    clock.witness(last);
    assert_eq!(clock.tick(500), last);
}
