//! The sweeps of one eye, as they were made, and the check at their end.

use ::words::record::sections as say;
use optics::format::plain;
use optics::limits;
use optics::retinoscopy::{Brightness, Media, Reflex, Setup, Speed, Sweep, Sweeping, off_sight};
use serde::{Deserialize, Serialize};

use crate::check::{Checks, blank};
use crate::finding::Eye;
use crate::fog::HARDLY_ACCOMMODATES_FROM;
use crate::summary::Age;

/// What one eye showed, sweep by sweep.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Swept {
    /// What it was swept from, under what circumstances, and every sweep in its order.
    #[serde(default, skip_serializing_if = "Sweeping::is_empty")]
    pub sweeping: Sweeping,
    /// What was seen on moving in from the lens at neutral.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moved_in: Option<MovedIn>,
    /// The drops that keep the eye from focusing, where any were given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drops: Option<Cycloplegic>,
}

/// Drops that keep an eye from focusing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cycloplegic {
    /// The drug and its strength, in the examiner's words.
    pub drug: String,
    /// How long before the first sweep they were given, in minutes.
    pub minutes: u16,
}

/// Before so many minutes most drops have not come to their full effect (common practice, no source; half an hour for the
/// usual one, from memory).
const FULL_EFFECT_MINUTES: u16 = 30;

impl Default for Cycloplegic {
    /// Not named yet, given as long before as most drops need.
    fn default() -> Self {
        Self {
            drug: String::new(),
            minutes: FULL_EFFECT_MINUTES,
        }
    }
}

/// Nobody waits longer than a day for drops, in minutes.
const LONGEST_WAIT: u16 = 24 * 60;

impl Cycloplegic {
    /// Whether the eye can be taken to have stopped focusing.
    const fn acts(&self) -> bool {
        self.minutes >= FULL_EFFECT_MINUTES
    }

    /// "with cyclopentolate 1 %, 35 min before", and what is to be minded about it.
    pub fn sentence(&self) -> String {
        let Self { drug, minutes } = self;
        let given = say::with_drops(&drug.trim(), &minutes);
        if self.acts() {
            say::drops_act(&given)
        } else {
            say::drops_not_yet(&given)
        }
    }
}

/// What moving in showed. From a lens that is neutral, moving in shows with in both meridians (common practice, no source).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MovedIn {
    /// With in both meridians.
    WithInBoth,
    /// Something else in one of them.
    NotInBoth,
}

impl MovedIn {
    /// What it says of the lens.
    pub fn sentence(self) -> &'static str {
        match self {
            Self::WithInBoth => say::with_in_both(),
            Self::NotInBoth => say::not_with_in_both(),
        }
    }
}

/// A pupil this narrow dims the reflex, in millimetres. Own choice: small pupils do (common practice, no source).
const SMALL_PUPIL_MM: f64 = 2.5;

impl Swept {
    /// Whether nothing was written down.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Writes a sweep down. The check at the end was of the lens before it, so it is to be made again.
    pub fn log(&mut self, sweep: Sweep) {
        self.sweeping.sweeps.push(sweep);
        self.moved_in = None;
    }

    /// Takes the last sweep back, and gives it.
    pub fn undo(&mut self) -> Option<Sweep> {
        self.moved_in = None;
        self.sweeping.sweeps.pop()
    }

    /// Says of the last sweep how fast and how bright it was.
    pub fn describe_last(&mut self, speed: Option<Speed>, brightness: Option<Brightness>) {
        if let Some(last) = self.sweeping.sweeps.last_mut() {
            (last.speed, last.brightness) = (speed, brightness);
        }
    }

    /// Whether pupil, media or reflex leave little to see.
    fn is_dim(&self) -> bool {
        let eye = &self.sweeping.circumstances;
        let small = eye.pupil_mm().is_some_and(|mm| mm <= SMALL_PUPIL_MM);
        let opaque = matches!(eye.media, Some(Media::Moderate | Media::Dense));
        small || opaque || matches!(eye.reflex, Some(Reflex::Dull | Reflex::None))
    }

    /// What the circumstances call for, one sentence each. Common practice, no source.
    pub(super) fn cautions(&self, setup: &Setup, age: Option<Age>) -> Vec<String> {
        let mut said = Vec::new();
        if self.sweeping.circumstances.reflex == Some(Reflex::Scissoring) {
            said.push(say::mind_scissoring().to_owned());
        }
        if self.is_dim() {
            said.push(
                if setup.working_lens.is_some() {
                    say::little_to_see_lens()
                } else {
                    say::little_to_see()
                }
                .to_owned(),
            );
            if !self.drops.as_ref().is_some_and(Cycloplegic::acts) {
                said.extend(young(age));
            }
        }
        said.extend(self.drops.as_ref().map(Cycloplegic::sentence));
        said.extend(self.beside_the_line_of_sight());
        said
    }

    /// What looking from beside the line of sight does, by the figures of [`off_sight`].
    fn beside_the_line_of_sight(&self) -> Option<String> {
        let degrees = self.sweeping.circumstances.off_sight()?;
        let shift = off_sight::shift(degrees).ok()?;
        (!off_sight::is_close_enough(degrees)).then(|| {
            say::off_sight(
                &plain(degrees, 0),
                &format_args!("{:.2}", shift.mean_sphere.abs()),
            )
        })
    }

    pub(super) fn check(&self, eye: Eye, checks: &mut Checks) {
        if let Some(start) = &self.sweeping.start {
            checks.lens(eye, &start.lens);
        }
        if let Some(drops) = &self.drops {
            if blank(&drops.drug) {
                checks.say(Checks::name(eye, "drops"), say::ask_which_drops());
            }
            if drops.minutes > LONGEST_WAIT {
                checks.say(Checks::name(eye, "drops"), say::drops_within_day());
            }
        }
        for sweep in &self.sweeping.sweeps {
            let spacing = limits::cell_spacing_mm(sweep.setup.cell_spacing_mm);
            checks.range(
                Checks::name(eye, "sweep"),
                limits::meridian_power(sweep.lens),
            );
            checks.range(Checks::name(eye, "sweep"), spacing);
        }
    }
}

fn young(age: Option<Age>) -> Option<String> {
    let caution = say::can_accommodate();
    match age {
        Some(age) if age.years >= HARDLY_ACCOMMODATES_FROM => None,
        Some(age) => Some(say::old_eye_can(&age, &caution)),
        None => Some(say::young_eye_can(&caution)),
    }
}
