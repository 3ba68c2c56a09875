//! Retinoscopy: lenses in the frame, sometimes swept one by one, sometimes from what a machine read.

use optics::retinoscopy::bracket::{Source, Start};
use optics::retinoscopy::{
    Circumstances, Media, Motion, Neutral, Reflex, Setup, Sweep, Sweeping, WorkingDistance,
    WorkingLens, expected_neutral,
};
use optics::{Cell, Meridian, SphereCyl, Step};
use record::{Amount, Eye, Finding, Part, Retinoscopy, Section, Swept};

use super::Today;
use crate::chance::Chance;
use crate::eye::TrueEye;
use crate::somebody::Somebody;

pub fn retinoscopy(somebody: &Somebody, today: &Today, found: &mut Chance) -> Section {
    let mut section = Retinoscopy {
        setup: setup(found).unwrap_or(Retinoscopy::default().setup),
        ..Retinoscopy::default()
    };
    let (machine, sweeps) = (found.one_in(3), found.one_in(6));
    for eye in Eye::BOTH {
        let (is, net) = (somebody.eyes.of(eye), today.net.of(eye));
        let start = machine.then(|| read_by_machine(is, found)).flatten();
        let swept = Swept {
            sweeping: Sweeping {
                start,
                circumstances: circumstances(is),
                sweeps: if sweeps {
                    sweeps_of(net, &section.setup)
                } else {
                    Vec::new()
                },
            },
            ..Swept::default()
        };
        *section.swept.of_mut(eye) = swept;
        let neutral = expected_neutral(net, &section.setup);
        *section.eyes.of_mut(eye) =
            Finding::Done(Neutral::InFrame(neutral.rounded(Step::Quarter).value));
    }
    section.into_section()
}

/// About an arm's length, or 67 cm with the working lens that goes with it.
fn setup(found: &mut Chance) -> Option<Setup> {
    if found.one_in(3) {
        let lens = WorkingLens::new(1.5, Cell::Back).ok()?;
        return Some(Setup::new(WorkingDistance::from_cm(67.0).ok()?, Some(lens)));
    }
    let cm = 62.0 + (found.next() % 9) as f64;
    Some(Setup::new(WorkingDistance::from_cm(cm).ok()?, None))
}

/// A machine reads what is there within about a quarter dioptre (own choice), and nothing through a small pupil or a clouded
/// lens.
fn read_by_machine(eye: &TrueEye, found: &mut Chance) -> Option<Start> {
    let reads = eye.pupil_mm >= 2.2 && eye.amount() < Amount::Moderate;
    reads.then(|| Start {
        lens: eye
            .found([0.25, 0.12, 0.12], found)
            .rounded(Step::Quarter)
            .value,
        from: Source::Machine,
    })
}

fn circumstances(eye: &TrueEye) -> Circumstances {
    let (media, reflex) = match eye.amount() {
        Amount::Clear => (Media::Clear, Reflex::Bright),
        Amount::Mild => (Media::Slight, Reflex::Bright),
        Amount::Moderate => (Media::Moderate, Reflex::Dull),
        Amount::Dense => (Media::Dense, Reflex::Patchy),
    };
    let reflex = if eye.pupil_mm < 2.2 && reflex == Reflex::Bright {
        Reflex::Dull
    } else {
        reflex
    };
    let pupil_mm = (eye.pupil_mm * 2.0).round() / 2.0;
    Circumstances::new(Some(pupil_mm), Some(media), Some(reflex)).unwrap_or_default()
}

/// Steps that sweeping takes from below, in dioptres, until the motion turns.
const STEPS: [f64; 4] = [-1.0, -0.5, 0.0, 0.5];

/// Within so many dioptres it looks neutral. Own choice.
const LOOKS_NEUTRAL: f64 = 0.2;

/// The sweeps of both principal meridians, from with to against.
fn sweeps_of(net: &SphereCyl, setup: &Setup) -> Vec<Sweep> {
    let [one, other] = net.principal();
    let along = [one.meridian, other.meridian];
    along
        .into_iter()
        .flat_map(|meridian| sweeps_along(meridian, net, setup))
        .collect()
}

fn sweeps_along(meridian: Meridian, net: &SphereCyl, setup: &Setup) -> Vec<Sweep> {
    let wanted = setup.lens_for(net.power_along(meridian.degrees()));
    let about = (wanted * 4.0).round() / 4.0;
    let sweeps = STEPS.into_iter().filter_map(|step| {
        let lens = about + step;
        let seen = match wanted - lens {
            off if off > LOOKS_NEUTRAL => Motion::With,
            off if off < -LOOKS_NEUTRAL => Motion::Against,
            _ => Motion::Neutral,
        };
        Sweep::new(meridian, lens, *setup, seen).ok()
    });
    sweeps.collect()
}
