//! Sending what the relay lacks, whoever wrote it.

use super::{Effect, Exchange, Nonsense, Notice, Phase, Push};
use crate::exchange::{Answer, Pushed, Request, Run, Vector};
use std::collections::VecDeque;
use vault::{DeviceId, Frame, Head};

impl Exchange {
    /// Begins with the first device of which the relay lacks frames.
    pub(super) fn push_all(
        &mut self,
        relay: Vector,
        forked: &[DeviceId],
        effects: &mut Vec<Effect>,
    ) {
        let lacking = self.have.beyond(&relay).into_iter();
        let devices: VecDeque<DeviceId> =
            lacking.filter(|device| !forked.contains(device)).collect();
        self.load(
            Push {
                devices,
                relay,
                corrected: false,
            },
            effects,
        );
    }

    /// Reads what comes next of the present device.
    fn load(&mut self, push: Push, effects: &mut Vec<Effect>) {
        let Some(device) = push.devices.front().copied() else {
            return self.finish(effects);
        };
        if self.have.sequence(device) <= push.relay.sequence(device) {
            return self.skip(push, effects);
        }
        let from = push.relay.sequence(device) + 1;
        effects.push(Effect::Load { device, from });
        self.phase = Phase::Loading(push);
    }

    /// Goes on to the next device.
    fn skip(&mut self, mut push: Push, effects: &mut Vec<Effect>) {
        push.devices.pop_front();
        push.corrected = false;
        self.load(push, effects);
    }

    pub(super) fn loaded(&mut self, push: Push, frames: Vec<Frame>, effects: &mut Vec<Effect>) {
        let Some(device) = push.devices.front().copied() else {
            return self.finish(effects);
        };
        let relay = push.relay.head(device);
        let sequence = relay.map_or(0, |head| head.sequence);
        match Run::beginning(frames) {
            Some(run) if run.before() == relay => {
                let sent = run.head();
                effects.push(Effect::Ask(Request::Push(run)));
                self.phase = Phase::Pushing(push, sent);
            }
            // What follows here names another frame than the relay's head.
            Some(run) if run.first().sequence() == sequence + 1 => {
                effects.push(Effect::Tell(Notice::Fork { device, sequence }));
                self.skip(push, effects);
            }
            _ => {
                let sequence = sequence + 1;
                effects.push(Effect::Tell(Notice::Unsent { device, sequence }));
                self.skip(push, effects);
            }
        }
    }

    pub(super) fn pushed(
        &mut self,
        mut push: Push,
        sent: Head,
        answer: Answer,
        random: u32,
        effects: &mut Vec<Effect>,
    ) {
        let (Answer::Pushed(pushed), Some(device)) = (answer, push.devices.front().copied()) else {
            return self.senseless(Nonsense::Other, random, effects);
        };
        match pushed {
            Pushed::Kept { head } if head.sequence >= sent.sequence => {
                self.answered(effects);
                self.confirmed(device, sent, push.relay.sequence(device), effects);
                push.relay.set(device, Some(head));
                self.load(push, effects);
            }
            Pushed::Kept { .. } => {
                self.senseless(Nonsense::Less, random, effects);
            }
            // Others push the same log, or the relay was put back meanwhile: once, its word is taken for where to go on.
            Pushed::Gap { head } if !push.corrected => {
                push.corrected = true;
                push.relay.set(device, head);
                self.load(push, effects);
            }
            Pushed::Gap { .. } => self.skip(push, effects),
            Pushed::Fork { sequence } => {
                effects.push(Effect::Tell(Notice::Fork { device, sequence }));
                self.skip(push, effects);
            }
            Pushed::Aside { .. } => {
                effects.push(Effect::Tell(Notice::Aside { device }));
                self.skip(push, effects);
            }
        }
    }

    /// Something in this log may not stand there, as what a viewer wrote may not: the other logs still go home. A device that may
    /// send nothing at all heard so when it pulled.
    pub(super) fn forbidden(&mut self, push: Push, effects: &mut Vec<Effect>) {
        if let Some(device) = push.devices.front().copied() {
            let sequence = push.relay.sequence(device) + 1;
            effects.push(Effect::Tell(Notice::NotTaken { device, sequence }));
        }
        self.skip(push, effects);
    }

    /// The relay has acknowledged everything up to `sent`.
    fn confirmed(&mut self, device: DeviceId, sent: Head, from: u64, effects: &mut Vec<Effect>) {
        let frames = usize::try_from(sent.sequence - from).unwrap_or(usize::MAX);
        self.carried(frames, effects);
        if self.seen.raise(device, sent) {
            effects.push(Effect::Remember(self.seen.clone()));
        }
    }
}
