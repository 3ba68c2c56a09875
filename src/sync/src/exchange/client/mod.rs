//! A client's side of the exchange.

mod backoff;
mod event;
mod nonsense;
mod notice;
mod pull;
mod push;

pub use event::{Effect, Event, Failure};
pub use nonsense::Nonsense;
pub use notice::{Notice, Progress, Status};

use super::{Request, Run, Vector};
use std::collections::VecDeque;
use vault::{DeviceId, Head, VaultId};

/// How often a round may begin its pull again because the logs here have gone on meanwhile.
const RESTARTS: u32 = 10;

/// Exchanges one vault with one relay. Tell it [`Event`]s and do its [`Effect`]s in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exchange {
    vault: VaultId,
    own: DeviceId,
    /// How far the logs go here.
    have: Vector,
    /// What the relay is known to have held.
    seen: Vector,
    phase: Phase,
    /// Another exchange was wanted during this one.
    again: bool,
    failures: u32,
    status: Status,
    progress: Progress,
}

/// Where a round stands.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Phase {
    /// Nothing is going on.
    Idle,
    /// A page was asked for.
    Pulling(Pull),
    /// A run of a page is being kept.
    Storing(Storing),
    /// A run is being read, to be sent.
    Loading(Push),
    /// A run was sent.
    Pushing(Push, Head),
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Pull {
    /// Whether this is the round's first page, in which the relay shows what it has.
    first: bool,
    /// How often it may still begin again.
    restarts: u32,
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Storing {
    pull: Pull,
    now: Run,
    then: VecDeque<Run>,
    more: bool,
    relay: Vector,
    forked: Vec<DeviceId>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Push {
    /// Devices of which the relay lacks frames, the present one first; never empty in a phase.
    devices: VecDeque<DeviceId>,
    relay: Vector,
    /// Whether the relay has corrected where the present device's log ends there.
    corrected: bool,
}

impl Exchange {
    /// An exchange that begins with the first [`Event::Wanted`]. `seen` is what [`Effect::Remember`] gave last; empty
    /// where it never did.
    pub fn new(vault: VaultId, own: DeviceId, seen: Vector) -> Self {
        Self {
            vault,
            own,
            have: Vector::new(),
            seen,
            phase: Phase::Idle,
            again: false,
            failures: 0,
            status: Status::Offline(None),
            progress: Progress::default(),
        }
    }

    /// Whether a notice says that this device's own log went on elsewhere: it must not be written any more.
    pub fn is_copy(&self, notice: &Notice) -> bool {
        match notice {
            Notice::Copied { .. } => true,
            Notice::Fork { device, .. } => *device == self.own,
            _ => false,
        }
    }

    /// How things stand.
    pub fn status(&self) -> &Status {
        &self.status
    }

    /// How far the round has got.
    pub fn progress(&self) -> Progress {
        self.progress
    }

    /// Whether nothing is going on.
    pub fn is_idle(&self) -> bool {
        self.phase == Phase::Idle
    }

    /// What the relay is known to have held.
    pub fn seen(&self) -> &Vector {
        &self.seen
    }

    /// Takes what happened and says what is to be done. What comes too late or twice changes nothing.
    pub fn handle(&mut self, event: Event) -> Vec<Effect> {
        let mut effects = Vec::new();
        self.step(event, &mut effects);
        effects
    }

    fn step(&mut self, event: Event, effects: &mut Vec<Effect>) {
        match (std::mem::replace(&mut self.phase, Phase::Idle), event) {
            (Phase::Idle, Event::Wanted { have }) => self.begin(have, effects),
            (phase, Event::Wanted { have }) => {
                self.have = have;
                self.again = true;
                self.phase = phase;
            }
            // A failure of nothing that was asked: a late one.
            (Phase::Idle, _) => {}
            (
                Phase::Pushing(push, _),
                Event::Failed {
                    failure: Failure::Forbidden(_),
                    ..
                },
            ) => {
                self.forbidden(push, effects);
            }
            (_, Event::Failed { failure, random }) => self.fail(failure, random, effects),
            (Phase::Pulling(pull), Event::Answered { answer, random }) => {
                self.pulled(pull, answer, random, effects);
            }
            (Phase::Storing(storing), Event::Stored) => self.stored(storing, effects),
            (Phase::Storing(storing), Event::Moved { have }) => {
                self.have = have;
                self.restart(storing.pull, effects);
            }
            (Phase::Loading(push), Event::Loaded(frames)) => self.loaded(push, frames, effects),
            (Phase::Pushing(push, sent), Event::Answered { answer, random }) => {
                self.pushed(push, sent, answer, random, effects);
            }
            (phase, _) => self.phase = phase,
        }
    }

    fn begin(&mut self, have: Vector, effects: &mut Vec<Effect>) {
        self.have = have;
        self.again = false;
        self.progress = Progress::default();
        if self.status != Status::Online {
            self.become_status(Status::Trying, effects);
        }
        self.ask_page(
            Pull {
                first: true,
                restarts: RESTARTS,
            },
            effects,
        );
    }

    fn ask_page(&mut self, pull: Pull, effects: &mut Vec<Effect>) {
        effects.push(Effect::Ask(Request::Pull {
            have: self.have.clone(),
        }));
        self.phase = Phase::Pulling(pull);
    }

    fn finish(&mut self, effects: &mut Vec<Effect>) {
        self.phase = Phase::Idle;
        effects.push(Effect::Tell(Notice::Finished));
        if self.again {
            self.begin(self.have.clone(), effects);
        }
    }

    /// Ends the round. What was kept stays kept, and the next round goes on from there.
    fn fail(&mut self, failure: Failure, random: u32, effects: &mut Vec<Effect>) {
        self.phase = Phase::Idle;
        self.again = false;
        self.failures = self.failures.saturating_add(1);
        let asked = match failure {
            Failure::Busy { seconds } => seconds,
            _ => 0,
        };
        self.become_status(Status::Offline(Some(failure)), effects);
        effects.push(Effect::Wait {
            millis: backoff::wait(self.failures, random, asked),
        });
    }

    fn senseless(&mut self, what: Nonsense, random: u32, effects: &mut Vec<Effect>) {
        self.fail(what.into(), random, effects);
    }

    /// An answer that makes sense is the only proof of being online.
    fn answered(&mut self, effects: &mut Vec<Effect>) {
        self.failures = 0;
        self.become_status(Status::Online, effects);
    }

    fn become_status(&mut self, status: Status, effects: &mut Vec<Effect>) {
        if self.status != status {
            self.status = status.clone();
            effects.push(Effect::Tell(Notice::Status(status)));
        }
    }

    fn carried(&mut self, frames: usize, effects: &mut Vec<Effect>) {
        self.progress.done += frames as u64;
        // What was written meanwhile was not counted.
        self.progress.total = self.progress.total.max(self.progress.done);
        effects.push(Effect::Tell(Notice::Progress(self.progress)));
    }
}
