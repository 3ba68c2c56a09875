//! A person is erased: what the relay keeps about them goes as well, in logs and aside, whenever it comes.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{ONE, OTHER, founded, slot_key};
use futures::executor::block_on;
use sync::exchange::{
    Answer, FrameStore, MemoryStore, Pushed, Quota, Refusal, Request, Run, Vector, Why, answer,
};
use sync::{Ledger, MemoryStorage, Storage};
use vault::enrolment::Newcomer;
use vault::{DeviceId, Frame, Role, Roll, Statement, StretchParams};

/// When, in milliseconds since 1970.
const WHEN: u64 = 1_772_600_000_000;
const ROOMY: Quota = Quota { bytes: 1 << 40 };

/// A lead's tablet, and the relay that its vault is open on.
struct Scene {
    storage: MemoryStorage,
    lead: Ledger<MemoryStorage>,
    relay: MemoryStore,
}

/// One and another were examined, and everything is on the relay.
fn scene() -> Scene {
    let (storage, _, lead) = founded();
    for (payload, subject) in [("one", ONE), ("other", OTHER), ("one again", ONE)] {
        block_on(lead.write(payload.as_bytes(), Some(subject), &[])).unwrap();
    }
    let relay = MemoryStore::new();
    let first = block_on(lead.begin_roll()).unwrap();
    assert!(relay.open_vault(&first[0]));
    let scene = Scene {
        storage,
        lead,
        relay,
    };
    scene.pushed(scene.frames());
    scene
}

impl Scene {
    fn frames(&self) -> Vec<Frame> {
        kept(&self.storage, self.lead.device())
    }

    fn push(&self, frames: Vec<Frame>) -> Result<Answer, Refusal> {
        let request = Request::Push(Run::new(frames).unwrap());
        let (vault, asker) = (self.lead.vault(), self.lead.device());
        answer(&self.relay, vault, asker, ROOMY, request)
    }

    fn pushed(&self, frames: Vec<Frame>) {
        let pushed = self.push(frames).unwrap();
        assert!(matches!(pushed, Answer::Pushed(Pushed::Kept { .. })));
    }

    /// What the relay keeps of a log.
    fn at_relay(&self, device: DeviceId) -> Vec<Frame> {
        let bytes = self
            .relay
            .range(self.lead.vault(), device, 1, usize::MAX, usize::MAX);
        let frames = bytes.unwrap().into_iter().map(Frame::parse);
        frames.collect::<Result<_, _>>().unwrap()
    }

    /// The lead erases one, and its word goes to the relay.
    fn erased(&self) {
        block_on(self.lead.erase(ONE, WHEN)).unwrap();
        let word = self.frames().pop().unwrap();
        self.pushed(vec![word]);
    }
}

fn kept(storage: &MemoryStorage, device: DeviceId) -> Vec<Frame> {
    let page = block_on(storage.page(device, 1, 1_000)).unwrap();
    page.into_iter()
        .map(|kept| Frame::parse(kept.bytes).unwrap())
        .collect()
}

fn emptied(frames: &[Frame]) -> Vec<bool> {
    frames.iter().map(Frame::is_emptied).collect()
}

/// Introduction, one's key, one, another's key, other, one again; and the word.
const ONE_IS_GONE: [bool; 7] = [false, true, true, false, false, true, false];

#[test]
fn a_leads_word_empties_what_the_relay_keeps() {
    let scene = scene();
    let (vault, device) = (scene.lead.vault(), scene.lead.device());
    let before = scene.relay.size(vault).unwrap();
    scene.erased();
    let there = scene.at_relay(device);
    assert_eq!(emptied(&there), ONE_IS_GONE);
    assert_eq!(there, scene.frames(), "byte for byte what the tablet has");
    assert!(scene.relay.size(vault).unwrap() < before, "room comes back");
    // The chain still holds, and whoever comes anew reads it.
    for (pair, number) in there.windows(2).zip(2..) {
        assert_eq!(pair[1].header().previous, pair[0].hash());
        assert_eq!(pair[1].sequence(), number);
    }
    let pulled = Request::Pull {
        have: Vector::new(),
    };
    let Ok(Answer::Page(page)) = answer(&scene.relay, vault, device, ROOMY, pulled) else {
        panic!("a page");
    };
    assert_eq!(page.runs[0].frames(), there);
}

#[test]
fn the_same_word_again_changes_nothing_and_is_a_success() {
    let scene = scene();
    scene.erased();
    let there = scene.at_relay(scene.lead.device());
    scene.pushed(vec![scene.frames().pop().unwrap()]);
    assert_eq!(scene.at_relay(scene.lead.device()), there);
}

/// A relay put back from an older copy hears the word again.
#[test]
fn a_relay_from_before_the_word_empties_once_it_comes() {
    let scene = scene();
    let backup = scene.relay.copy();
    scene.erased();
    scene.relay.restore(&backup);
    assert_eq!(emptied(&scene.at_relay(scene.lead.device())), [false; 6]);
    scene.pushed(scene.frames());
    assert_eq!(emptied(&scene.at_relay(scene.lead.device())), ONE_IS_GONE);
}

/// Whole frames in the run of the word itself.
#[test]
fn what_comes_together_with_the_word_is_never_kept_whole() {
    let scene = scene();
    let mut whole = scene.frames();
    block_on(scene.lead.erase(ONE, WHEN)).unwrap();
    whole.push(scene.frames().pop().unwrap());
    let fresh = MemoryStore::new();
    for statement in block_on(scene.lead.statements()).unwrap() {
        assert!(fresh.open_vault(&statement));
    }
    let scene = Scene {
        relay: fresh,
        ..scene
    };
    scene.pushed(whole);
    assert_eq!(emptied(&scene.at_relay(scene.lead.device())), ONE_IS_GONE);
}

#[test]
fn what_was_set_aside_goes_as_well() {
    let scene = scene();
    let (vault, frames) = (scene.lead.vault(), scene.frames());
    for frame in [&frames[2], &frames[4]] {
        scene.relay.set_aside(frame, Why::Fork).unwrap();
    }
    scene.erased();
    // And what comes to lie there afterwards.
    scene
        .relay
        .set_aside(&frames[5], Why::AfterRemoval)
        .unwrap();
    let aside = scene.relay.aside(vault, None, 9).unwrap();
    let aside = aside.into_iter().map(|(_, bytes)| Frame::parse(bytes));
    let aside: Vec<Frame> = aside.collect::<Result<_, _>>().unwrap();
    assert_eq!(emptied(&aside), [true, false, true]);
}

/// Brings in another tablet, which holds the vault's keys; gives the roll that has it.
fn enrol(lead: &Ledger<MemoryStorage>, role: Role) -> (Ledger<MemoryStorage>, MemoryStorage) {
    let newcomer = Newcomer::new("harbour tablet").unwrap();
    let host = block_on(lead.receive(newcomer.request().clone())).unwrap();
    let acquainted = newcomer.meet(host.offer().clone());
    let checked = host.check(acquainted.reveal()).unwrap();
    let packet = block_on(lead.admit(checked, role, None)).unwrap();
    let arrival = acquainted.take(&packet).ok().unwrap();
    let params = StretchParams {
        salt: [0; 16],
        memory_kib: 8192,
        passes: 1,
        lanes: 1,
    };
    let (statements, (file, keys)) = (
        arrival.roll.clone(),
        arrival.keep(&slot_key(), params).unwrap(),
    );
    let storage = MemoryStorage::new();
    let ledger = block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
    block_on(ledger.take_roll(&statements)).unwrap();
    (ledger, storage)
}

fn tell_roll(relay: &MemoryStore, statements: &[Statement]) {
    for statement in statements {
        relay.extend_roll(statement).unwrap();
    }
}

/// The other lead wrote of one while it was away, and comes after the word.
#[test]
fn what_another_tablet_brings_later_is_kept_emptied() {
    let scene = scene();
    let (other, storage) = enrol(&scene.lead, Role::Lead);
    tell_roll(&scene.relay, &block_on(scene.lead.statements()).unwrap());
    // It has what the lead has, and so the lead's key of one.
    let carried = block_on(scene.lead.carry_out(None)).unwrap();
    block_on(other.carry_in(&carried.bytes)).unwrap();
    block_on(other.catch_up()).unwrap();
    block_on(other.write(b"one, seen elsewhere", Some(ONE), &[])).unwrap();
    scene.erased();
    let own = kept(&storage, other.device());
    assert_eq!(emptied(&own), [false, false], "it has not heard of it");
    scene.pushed(own);
    assert_eq!(emptied(&scene.at_relay(other.device())), [false, true]);
}

/// A lead that was removed has no say any more.
#[test]
fn a_removed_leads_word_is_set_aside_and_takes_nothing_away() {
    let scene = scene();
    let (other, storage) = enrol(&scene.lead, Role::Lead);
    let carried = block_on(scene.lead.carry_out(None)).unwrap();
    block_on(other.carry_in(&carried.bytes)).unwrap();
    block_on(other.catch_up()).unwrap();
    let before = kept(&storage, other.device());
    let carried = block_on(other.carry_out(None)).unwrap();
    block_on(scene.lead.carry_in(&carried.bytes)).unwrap();
    block_on(scene.lead.catch_up()).unwrap();
    block_on(scene.lead.remove(other.device())).unwrap();
    tell_roll(&scene.relay, &block_on(scene.lead.statements()).unwrap());
    let roll = block_on(scene.lead.statements()).unwrap();
    let roll = Roll::read(scene.lead.vault(), &roll).unwrap();
    assert_eq!(roll.role(other.device()), None);

    block_on(other.erase(ONE, WHEN)).unwrap();
    scene.pushed(before);
    let word = kept(&storage, other.device()).pop().unwrap();
    let aside = scene.push(vec![word]).unwrap();
    assert!(matches!(aside, Answer::Pushed(Pushed::Aside { .. })));
    assert_eq!(emptied(&scene.at_relay(scene.lead.device())), [false; 6]);
}
