//! Whole eyes played by always taking the next move, as the page of sweeps is played: plain answers, every so many of them wrong.

use crate::assert_near;
use optics::Meridian;
use optics::retinoscopy::{Beam, Held, Motion, NextMove, Setup, Sweep, Sweeping, WorkingDistance};

/// What neutralises an eye at 67 cm, and how often a call is wrong: one in so many, 0 for never.
struct Eye {
    lying: f64,
    standing: f64,
    wrong_every: usize,
}

/// Within so many dioptres it looks neutral. Own choice.
const ZONE: f64 = 0.20;
const MANY: usize = 40;

impl Eye {
    /// With where more plus is needed, against where less; reversed they change places: common practice, no source.
    fn called(&self, sweep: usize, meridian: Meridian, lens: f64, beam: Beam) -> Motion {
        let neutral = if meridian.lies() {
            self.lying
        } else {
            self.standing
        };
        let needs = match beam {
            Beam::Normal => neutral - lens,
            Beam::Reversed => lens - neutral,
        };
        let shown = if needs.abs() <= ZONE {
            Motion::Neutral
        } else if needs > 0.0 {
            Motion::With
        } else {
            Motion::Against
        };
        if self.wrong_every == 0 || sweep % self.wrong_every != self.wrong_every - 1 {
            return shown;
        }
        match shown {
            Motion::With => Motion::Neutral,
            Motion::Neutral => Motion::Against,
            _ => Motion::With,
        }
    }

    /// The lenses found for both meridians, and after how many sweeps.
    fn play(&self) -> Option<([f64; 2], usize)> {
        let setup = Setup::new(WorkingDistance::from_cm(67.0).unwrap(), None);
        let mut sweeping = Sweeping::default();
        let mut hand = (sweeping.cross()[0], 0.0, Beam::Normal);
        for sweeps in 0..MANY {
            let held = Held {
                setup,
                lens: hand.1,
            };
            let bracket = sweeping.bracket();
            let next = NextMove::of(&bracket, &sweeping.sweeps, &held);
            let Some(take) = next.take() else {
                let found = bracket.neutral(&held)?.lens();
                return Some(([180.0, 90.0].map(|at| found.power_along(at)), sweeps));
            };
            hand = (
                take.meridian,
                take.lens.unwrap_or(hand.1),
                take.beam.unwrap_or(hand.2),
            );
            let seen = self.called(sweeps, hand.0, hand.1, hand.2);
            let sweep = Sweep::new(hand.0, hand.1, setup, seen).unwrap();
            sweeping.sweeps.push(Sweep {
                beam: hand.2,
                ..sweep
            });
        }
        None
    }
}

/// The lens of each meridian at neutral.
const EYES: [[f64; 2]; 10] = [
    [1.5, 1.5],
    [1.25, 1.75],
    [-2.5, -4.0],
    [-3.25, -3.25],
    [7.75, 6.25],
    [6.5, 7.5],
    [3.0, 4.25],
    [2.75, 3.0],
    [0.25, -0.75],
    [12.5, 11.5],
];

#[test]
fn a_plain_eye_is_found_exactly() {
    for [lying, standing] in EYES {
        let eye = Eye {
            lying,
            standing,
            wrong_every: 0,
        };
        let (found, sweeps) = eye.play().expect("it ends");
        assert!(sweeps <= 20, "{lying} {standing}: {sweeps} sweeps");
        for (found, truly) in found.into_iter().zip([lying, standing]) {
            assert_near(found, truly, 1e-9);
        }
    }
}

// A contradiction that further sweeps have settled is asked about no more: an eye with one wrong call once went on for ever.
#[test]
fn wrong_calls_lengthen_it_and_do_not_lead_astray() {
    for (wrong_every, [lying, standing]) in [11, 13]
        .into_iter()
        .flat_map(|every| EYES.map(|eye| (every, eye)))
    {
        let eye = Eye {
            lying,
            standing,
            wrong_every,
        };
        let (found, _) = eye
            .play()
            .unwrap_or_else(|| panic!("{lying} {standing} {wrong_every} has no end"));
        for (found, truly) in found.into_iter().zip([lying, standing]) {
            assert_near(found, truly, 0.5);
        }
    }
}
