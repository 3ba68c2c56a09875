//! What is timed. Another operation is another line of [`OPERATIONS`].

use anyhow::Result;
use optics::prism::{Decentration, Prism};
use optics::retinoscopy::{self, Held, Motion, Neutral, Setup, Sweep, Sweeping, WorkingDistance};
use optics::tolerance::{ANSI_Z80_1_2015, Finished, Measured, Ordered, ReadTo};
use optics::{Eye, Eyes, Meridian, SphereCyl, Step, acuity, vertex};
use std::hint::black_box;

const LENS: &str = "+2.25 / −1.25 × 35";
const PRISM: &str = "1.50 up & 2.00 in";

/// One thing to time.
pub struct Operation {
    /// What it is, in the trade's words.
    pub name: &'static str,
    /// Does it once.
    pub once: fn(&Case),
}

/// What the operations work on, made once.
pub struct Case {
    angle: f64,
    lens: SphereCyl,
    other: SphereCyl,
    neutral: Neutral,
    setup: Setup,
    sweeping: Sweeping,
    held: Held,
    off: Decentration,
    ordered: Ordered,
    measured: Measured,
}

impl Case {
    /// An eye such as many have.
    ///
    /// # Errors
    /// Where the arithmetic refuses it.
    pub fn new() -> Result<Self> {
        let setup = Setup::new(WorkingDistance::from_cm(67.0)?, None);
        let lens = SphereCyl::new(2.25, -1.25, 35.0)?;
        let other = SphereCyl::new(2.37, -1.12, 38.0)?;
        let both = |lens| -> Result<_> {
            let finished = Finished::new(lens)?;
            Ok(Eyes {
                right: finished,
                left: finished,
            })
        };
        Ok(Self {
            angle: 0.61,
            lens,
            other,
            neutral: Neutral::two_meridians(35.0, 3.75, 2.5)?,
            setup,
            sweeping: swept(setup)?,
            held: Held { setup, lens: 3.75 },
            off: Decentration::inward(Eye::Right, 2.0, 10.0)?,
            ordered: Ordered(both(lens)?),
            measured: Measured {
                lenses: both(other)?,
                read_to: ReadTo::Sixteenth,
            },
        })
    }
}

/// An eye in the middle of being swept: four sweeps a meridian.
fn swept(setup: Setup) -> Result<Sweeping> {
    let seen = [
        (0.0, Motion::With),
        (6.0, Motion::Against),
        (3.0, Motion::With),
        (3.75, Motion::Neutral),
    ];
    let mut sweeping = Sweeping::default();
    for (lens, motion) in seen {
        for meridian in [180.0, 90.0] {
            let sweep = Sweep::new(Meridian::new(meridian)?, lens, setup, motion)?;
            sweeping.sweeps.push(sweep);
        }
    }
    Ok(sweeping)
}

/// The floor: what every operation with an axis has to do at least once.
pub const FLOOR: Operation = op("one sine and cosine", |case| {
    keep(black_box(case.angle).sin_cos());
});

/// What is timed beside the floor.
pub const OPERATIONS: &[Operation] = &[
    op("reading a written lens", |_| {
        keep(SphereCyl::parse(black_box(LENS)))
    }),
    op("writing a lens", |case| {
        keep(black_box(&case.lens).to_string())
    }),
    op("adding two lenses by vectors, and back", |case| {
        keep(SphereCyl::from(
            black_box(&case.lens).vector() + black_box(&case.other).vector(),
        ));
    }),
    op("rounding a lens to quarters", |case| {
        keep(black_box(&case.other).rounded(Step::Quarter))
    }),
    op("moving a lens from 14 mm to 12 mm", |case| {
        keep(vertex::effective_sphero_cyl(
            black_box(&case.lens),
            14.0,
            12.0,
        ));
    }),
    op("the net of an eye, with its working", |case| {
        keep(retinoscopy::net(
            black_box(&case.neutral),
            black_box(&case.setup),
        ));
    }),
    op("what a tap on the sweep pad asks for", |case| {
        let bracket = black_box(&case.sweeping).bracket();
        keep(bracket.advice(&case.held));
        keep(bracket.contradiction(&case.held));
        keep(bracket.neutral(&case.held));
        keep(bracket.fit());
    }),
    op("prism of a lens off centre", |case| {
        keep(Prism::of_decentred(
            black_box(&case.lens),
            black_box(case.off),
        ))
    }),
    op("reading a written prism", |_| {
        keep(Prism::read(black_box(PRISM), Eye::Right))
    }),
    op("acuity at another distance", |_| {
        keep(acuity::logmar(
            black_box(12.0),
            black_box(6.0),
            black_box(3.0),
        ))
    }),
    op("judging a pair of spectacles", |case| {
        keep(ANSI_Z80_1_2015.judge(black_box(&case.ordered), black_box(&case.measured)));
    }),
];

const fn op(name: &'static str, once: fn(&Case)) -> Operation {
    Operation { name, once }
}

/// Makes a result count as used, so that nothing is left out for being idle.
fn keep<T>(result: T) {
    black_box(result);
}

#[cfg(test)]
mod tests {
    use super::*;

    // A refusal takes another way through the code, and its time would say nothing.
    #[test]
    fn what_is_read_while_timing_can_be_read() {
        let case = Case::new().unwrap();
        assert_eq!(SphereCyl::parse(LENS), Ok(case.lens));
        assert_eq!(
            Prism::read(PRISM, Eye::Right),
            Ok(Prism::new(2.0, 1.5).unwrap())
        );
    }
}
