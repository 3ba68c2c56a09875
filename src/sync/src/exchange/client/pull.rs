//! Taking pages in.

use super::{Effect, Exchange, Nonsense, Notice, Phase, Pull, Storing};
use crate::exchange::{Answer, Page, Run, Vector};
use std::collections::VecDeque;
use vault::DeviceId;
use vault::frame::PublicKey;

impl Exchange {
    pub(super) fn pulled(
        &mut self,
        pull: Pull,
        answer: Answer,
        random: u32,
        effects: &mut Vec<Effect>,
    ) {
        let Answer::Page(page) = answer else {
            return self.senseless(Nonsense::Other, random, effects);
        };
        if let Err(what) = self.check(&page) {
            return self.senseless(what, random, effects);
        }
        self.answered(effects);
        let relay = relay_vector(&page);
        if pull.first {
            self.look_at(&relay, effects);
            effects.extend(page.forks.iter().map(|(device, head)| {
                let sequence = head.sequence;
                Effect::Tell(Notice::Fork { device, sequence })
            }));
        }
        let pull = Pull {
            first: false,
            ..pull
        };
        let forked = page.forks.iter().map(|(device, _)| device).collect();
        let mut runs: VecDeque<Run> = page.runs.into();
        match runs.pop_front() {
            Some(now) => self.store(
                Storing {
                    pull,
                    now,
                    then: runs,
                    more: page.more,
                    relay,
                    forked,
                },
                effects,
            ),
            None => self.push_all(relay, &forked, effects),
        }
    }

    /// Believes nothing: every run is of this vault, signed by a device whose key is shown, and continues what is here.
    fn check(&self, page: &Page) -> Result<(), Nonsense> {
        if page.more && page.runs.is_empty() {
            return Err(Nonsense::More);
        }
        let mut have = self.have.clone();
        for run in &page.runs {
            let key = key_of(page, run.device()).ok_or(Nonsense::Nobody)?;
            if run.vault() != self.vault {
                return Err(Nonsense::OtherVault);
            }
            if run.before() != have.head(run.device()) {
                return Err(Nonsense::Gap);
            }
            if run.frames().iter().any(|frame| frame.verify(&key).is_err()) {
                return Err(Nonsense::Unsigned);
            }
            have.set(run.device(), Some(run.head()));
        }
        Ok(())
    }

    /// Compares what the relay shows with what it had, and counts what is to be done.
    fn look_at(&mut self, relay: &Vector, effects: &mut Vec<Effect>) {
        self.progress.total = relay.count_beyond(&self.have) + self.have.count_beyond(relay);
        for (device, seen) in self.seen.iter() {
            let shown = relay.head(device);
            if relay.sequence(device) < seen.sequence {
                effects.push(Effect::Tell(Notice::RolledBack {
                    device,
                    seen,
                    shown,
                }));
            } else if relay.sequence(device) == seen.sequence && shown != Some(seen) {
                let sequence = seen.sequence;
                effects.push(Effect::Tell(Notice::Fork { device, sequence }));
            }
        }
        let own = relay.sequence(self.own);
        if own > self.have.sequence(self.own) {
            effects.push(Effect::Tell(Notice::Copied { sequence: own }));
        }
        if self.progress.total > 0 {
            effects.push(Effect::Tell(Notice::Progress(self.progress)));
        }
    }

    fn store(&mut self, storing: Storing, effects: &mut Vec<Effect>) {
        effects.push(Effect::Store(storing.now.clone()));
        self.phase = Phase::Storing(storing);
    }

    pub(super) fn stored(&mut self, mut storing: Storing, effects: &mut Vec<Effect>) {
        let (device, head) = (storing.now.device(), storing.now.head());
        self.have.raise(device, head);
        self.seen.raise(device, head);
        self.carried(storing.now.frames().len(), effects);
        if let Some(now) = storing.then.pop_front() {
            storing.now = now;
            return self.store(storing, effects);
        }
        effects.push(Effect::Remember(self.seen.clone()));
        if storing.more {
            self.ask_page(storing.pull, effects);
        } else {
            self.push_all(storing.relay, &storing.forked, effects);
        }
    }

    /// The logs here have gone on while a page was under way: ask anew from where they are.
    pub(super) fn restart(&mut self, pull: Pull, effects: &mut Vec<Effect>) {
        match pull.restarts.checked_sub(1) {
            Some(restarts) => self.ask_page(Pull { restarts, ..pull }, effects),
            None => self.finish(effects),
        }
    }
}

fn relay_vector(page: &Page) -> Vector {
    page.heads
        .iter()
        .map(|shown| (shown.key.device(), shown.head))
        .collect()
}

fn key_of(page: &Page, device: DeviceId) -> Option<PublicKey> {
    let keys = page.heads.iter().map(|shown| shown.key);
    keys.into_iter().find(|key| key.device() == device)
}
