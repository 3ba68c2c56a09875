//! Rounds over a storage against the relay's side, through the bytes of the wire.

use super::{ROOMY, Relay, bytes, forked};
use futures::executor::block_on;
use std::cell::{Cell, RefCell};
use sync::exchange::{
    Answer, Asides, Exchange, Failure, FrameStore, Host, Notice, Request, RollRefused, Vector, Why,
    answer, ask_aside, ask_roll, round,
};
use sync::{Append, Ledger, MemoryStorage, Storage};
use vault::roll::Change;
use vault::sample::devices;
use vault::{DeviceId, Frame, Role, Roll};

/// Reaches a relay as one of its devices, and fails as often as it is told to.
struct Line<'a> {
    relay: &'a Relay,
    asker: DeviceId,
    failures: Cell<u32>,
    told: RefCell<Vec<Notice>>,
    remembered: RefCell<Vector>,
}

impl<'a> Line<'a> {
    fn new(relay: &'a Relay, asker: usize) -> Self {
        Self {
            relay,
            asker: relay.id(asker),
            failures: Cell::new(0),
            told: RefCell::default(),
            remembered: RefCell::default(),
        }
    }
}

impl Host for Line<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        if let Some(left) = self.failures.get().checked_sub(1) {
            self.failures.set(left);
            return Err(Failure::Unreachable);
        }
        let request = Request::from_bytes(&request.to_bytes()).unwrap();
        let answered = answer(
            &self.relay.store,
            self.relay.vault,
            self.asker,
            ROOMY,
            request,
        )
        .map_err(|refusal| Failure::Refused(refusal.to_string()))?;
        Answer::from_bytes(&answered.to_bytes()).map_err(|error| Failure::Senseless(error.into()))
    }

    fn random(&self) -> u32 {
        7
    }

    async fn remember(&self, seen: &Vector) {
        *self.remembered.borrow_mut() = seen.clone();
    }

    fn tell(&self, notice: Notice) {
        self.told.borrow_mut().push(notice);
    }
}

fn storage(log: &[Frame]) -> MemoryStorage {
    let storage = MemoryStorage::new();
    append(&storage, log);
    storage
}

fn append(storage: &MemoryStorage, frames: &[Frame]) {
    let device = frames[0].device();
    let expected = block_on(storage.head(device)).unwrap();
    block_on(storage.append(Append {
        device,
        expected,
        frames,
        drop_drafts: &[],
    }))
    .unwrap();
}

fn kept(storage: &MemoryStorage, device: DeviceId) -> Vec<Vec<u8>> {
    let page = block_on(storage.page(device, 1, 10_000)).unwrap();
    page.into_iter().map(|kept| kept.bytes).collect()
}

fn exchange(relay: &Relay, device: usize, seen: Vector) -> Exchange {
    Exchange::new(relay.vault, relay.id(device), seen)
}

#[test]
fn two_tablets_come_to_hold_the_same() {
    let mut relay = Relay::new();
    let logs = [relay.devices[0].log(1200), relay.devices[1].log(3)];
    let tablets = [storage(&logs[0]), storage(&logs[1])];
    for at in [0, 1, 0] {
        let line = Line::new(&relay, at);
        let mut exchange = exchange(&relay, at, Vector::new());
        assert_eq!(
            block_on(round(&mut exchange, &tablets[at], &line)),
            Ok(None)
        );
        assert_eq!(line.told.borrow().last(), Some(&Notice::Finished));
    }
    for tablet in &tablets {
        for (at, log) in logs.iter().enumerate() {
            assert_eq!(kept(tablet, relay.id(at)), bytes(log));
        }
    }
}

#[test]
fn a_failed_round_says_when_to_come_back_and_the_next_goes_on() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(3);
    let tablet = storage(&log);
    let line = Line::new(&relay, 1);
    let mut exchange = exchange(&relay, 1, Vector::new());
    line.failures.set(1);
    let wait = block_on(round(&mut exchange, &tablet, &line)).unwrap();
    assert!(
        wait.is_some_and(|millis| (500..=1000).contains(&millis)),
        "{wait:?}"
    );
    assert_eq!(block_on(round(&mut exchange, &tablet, &line)), Ok(None));
    assert_eq!(relay.kept(1), bytes(&log));
    assert_eq!(
        line.remembered.borrow().head(relay.id(1)),
        Some(log[3].head())
    );
}

#[test]
fn a_relay_restored_from_an_old_copy_is_healed_by_whoever_comes_first() {
    let mut relay = Relay::new();
    let logs = [relay.devices[0].log(4), relay.devices[1].log(4)];
    relay.push(0, &logs[0]).unwrap();
    let old = relay.store.copy();
    let tablet = storage(&logs[1]);
    let line = Line::new(&relay, 1);
    block_on(round(
        &mut exchange(&relay, 1, Vector::new()),
        &tablet,
        &line,
    ))
    .unwrap();
    let seen = line.remembered.borrow().clone();

    relay.store.restore(&old);
    assert_eq!(relay.kept(1).len(), 0);
    let line = Line::new(&relay, 1);
    block_on(round(&mut exchange(&relay, 1, seen), &tablet, &line)).unwrap();
    assert_eq!(relay.kept(1), bytes(&logs[1]));
    let told = line.told.borrow();
    assert!(
        told.iter()
            .any(|notice| matches!(notice, Notice::RolledBack { .. })),
        "{told:?}"
    );
}

#[test]
fn a_stranger_is_refused_in_a_sentence() {
    let mut relay = Relay::new();
    let log = relay.devices[3].log(1);
    let line = Line::new(&relay, 3);
    let mut exchange = exchange(&relay, 3, Vector::new());
    let wait = block_on(round(&mut exchange, &storage(&log), &line)).unwrap();
    assert!(wait.is_some());
    let said = line.told.borrow().last().unwrap().to_string();
    assert_eq!(said, "this relay keeps no such vault for this tablet");
}

#[test]
fn damage_on_the_tablet_is_not_sent_and_costs_no_other_log() {
    let mut relay = Relay::new();
    let logs = [relay.devices[0].log(3), relay.devices[1].log(3)];
    let tablet = storage(&logs[0]);
    append(&tablet, &logs[1]);
    tablet.damage(relay.id(0), 3, Some(vec![1, 2, 3]));
    let line = Line::new(&relay, 1);
    block_on(round(
        &mut exchange(&relay, 1, Vector::new()),
        &tablet,
        &line,
    ))
    .unwrap();
    assert_eq!(relay.kept(0), bytes(&logs[0][..2]));
    assert_eq!(relay.kept(1), bytes(&logs[1]));
    let unsent = Notice::Unsent {
        device: relay.id(0),
        sequence: 3,
    };
    assert!(line.told.borrow().contains(&unsent));
}

/// Two tablets with the same keys: one was restored from a copy of the other. Neither's entries overwrite the other's.
#[test]
fn a_copied_tablet_overwrites_nothing_and_is_told() {
    let mut relay = Relay::new();
    let log = relay.devices[1].log(4);
    let copy = forked(&mut relay.devices[1], &log, 4);
    let exchanged = |tablet: &MemoryStorage| {
        let line = Line::new(&relay, 1);
        block_on(round(
            &mut exchange(&relay, 1, Vector::new()),
            tablet,
            &line,
        ))
        .unwrap();
        line.told.into_inner()
    };
    let (original, restored) = (storage(&log), storage(&copy[..3]));
    exchanged(&original);
    // The copy is behind at first: it gets its own entries back, and is told that it is one.
    let told = exchanged(&restored);
    assert!(told.contains(&Notice::Copied { sequence: 5 }), "{told:?}");
    assert_eq!(kept(&restored, relay.id(1)), bytes(&log));
    // One that wrote before it asked has forked its log.
    let forked = storage(&copy);
    let told = exchanged(&forked);
    let fork = Notice::Fork {
        device: relay.id(1),
        sequence: 5,
    };
    assert!(told.contains(&fork), "{told:?}");
    assert_eq!(
        kept(&forked, relay.id(1)),
        bytes(&copy),
        "what it wrote stays on it"
    );
    assert_eq!(
        relay.kept(1),
        bytes(&log),
        "and nothing of it is on the relay"
    );
}

/// The whole way: another tablet's entries over the wire into a vault that is open, held to the relay's roll.
#[test]
fn an_open_vault_takes_in_what_a_round_brought() {
    let mut relay = Relay::new();
    let (own, other) = (relay.devices[0].log(0), relay.devices[1].log(3));
    relay.push(1, &other).unwrap();
    let storage = storage(&own);
    let line = Line::new(&relay, 0);
    let statements = block_on(ask_roll(&line, relay.vault, relay.id(0), &[])).unwrap();
    let roll = Roll::read(relay.vault, &statements).unwrap();
    let keys = devices_of(&relay).remove(0).keys;
    let opened = block_on(Ledger::open_by(storage.clone(), keys, Some(roll))).unwrap();
    let mut exchange = Exchange::new(relay.vault, relay.id(0), Vector::new());
    assert_eq!(block_on(round(&mut exchange, &storage, &line)), Ok(None));
    let found = block_on(opened.ledger.catch_up()).unwrap();
    let read: Vec<&[u8]> = found
        .entries
        .iter()
        .map(|read| read.payload.as_slice())
        .collect();
    assert_eq!(read, [b"entry 0".as_slice(), b"entry 1", b"entry 2"]);
    assert!(found.held.is_empty() && found.damage.is_empty());
}

/// The same devices again: their keys come from the seed.
fn devices_of(relay: &Relay) -> Vec<vault::sample::Device> {
    (1..1_000)
        .map(|seed| devices(seed, 4))
        .find(|devices| devices[0].keys.vault() == relay.vault)
        .unwrap()
}

#[test]
fn a_roll_is_believed_only_if_it_can_be_so() {
    let mut relay = Relay::new();
    let ask = |relay: &Relay, asker: usize, own: usize, known: &[vault::Statement]| {
        block_on(ask_roll(
            &Line::new(relay, asker),
            relay.vault,
            relay.id(own),
            known,
        ))
    };
    let known = ask(&relay, 1, 1, &[]).unwrap();
    assert_eq!(known.len(), 3);
    assert_eq!(ask(&relay, 1, 1, &known), Ok(known.clone()));
    assert_eq!(
        ask(&relay, 1, 3, &[]),
        Err(RollRefused::Stranger),
        "shown to one who isn't on it"
    );
    // It grows, and what was known is its beginning.
    relay.state(3, Change::Admit(Role::Clinician));
    let grown = ask(&relay, 1, 1, &known).unwrap();
    assert_eq!((grown.len(), &grown[..3]), (4, known.as_slice()));
    // A relay that was put back shows less than was known.
    let longer = [grown.clone(), vec![grown[0]]].concat();
    assert_eq!(ask(&relay, 1, 1, &longer), Err(RollRefused::Other));
    let failing = Line::new(&relay, 1);
    failing.failures.set(1);
    let failed = block_on(ask_roll(&failing, relay.vault, relay.id(1), &[]));
    assert_eq!(failed, Err(RollRefused::Failed(Failure::Unreachable)));
    assert_eq!(relay.store.roll(relay.vault).unwrap().len(), 4);
}

/// A relay that makes a roll up.
struct Liar(Vec<vault::Statement>);

impl Host for Liar {
    async fn ask(&self, _: Request) -> Result<Answer, Failure> {
        Ok(Answer::Roll(self.0.clone()))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, _: Notice) {}
}

#[test]
fn a_roll_that_was_made_up_is_not_believed() {
    let relay = Relay::new();
    let sound = relay.store.roll(relay.vault).unwrap();
    let ask = |shown: Vec<vault::Statement>| {
        block_on(ask_roll(&Liar(shown), relay.vault, relay.id(1), &[]))
    };
    assert_eq!(ask(sound.clone()), Ok(sound.clone()));
    let other = Relay::new();
    for (what, shown) in [
        ("out of order", vec![sound[1], sound[0]]),
        ("with a hole", vec![sound[0], sound[2]]),
        ("of another vault", other.store.roll(other.vault).unwrap()),
    ] {
        assert!(matches!(ask(shown), Err(RollRefused::Unsound(_))), "{what}");
    }
    assert_eq!(ask(vec![]), Err(RollRefused::Stranger));
}

/// A removed tablet's day comes to the lead's eyes: over the wire, in pages, read and kept nowhere.
#[test]
fn a_lead_reads_what_a_removed_tablet_wrote() {
    let mut relay = Relay::new();
    let own = relay.devices[0].log(0);
    // Large entries: three fit into a page of 1 MiB, no more.
    let mut log = relay.devices[1].log(1);
    for number in 0..8_u8 {
        let head = log[log.len() - 1].head();
        log.push(relay.devices[1].write(head, &vec![number; 200_000]));
    }
    relay.push(1, &log[..2]).unwrap();
    relay.state(1, Change::Remove { last: 2 });
    for frame in &log[2..] {
        relay.push(0, std::slice::from_ref(frame)).unwrap();
    }
    let line = Line::new(&relay, 0);
    let aside = block_on(ask_aside(&line, &relay.roll)).unwrap();
    assert_eq!(aside.len(), 8);
    assert!(aside.iter().all(|(why, _)| *why == Why::AfterRemoval));
    let frames: Vec<Frame> = aside.into_iter().map(|(_, frame)| frame).collect();
    assert_eq!(bytes(&frames), bytes(&log[2..]));

    let storage = storage(&own);
    let keys = devices_of(&relay).remove(0).keys;
    let roll = Some(relay.roll.clone());
    let opened = block_on(Ledger::open_by(storage.clone(), keys, roll)).unwrap();
    let seen = block_on(opened.ledger.look_at(&frames));
    assert_eq!((seen.entries.len(), seen.damage.len()), (0, 0));
    let read: Vec<u8> = seen.held.iter().map(|held| held.read.payload[0]).collect();
    assert_eq!(read, [0, 1, 2, 3, 4, 5, 6, 7]);
    assert_eq!(
        block_on(storage.vector()).unwrap().len(),
        1,
        "nothing of it is kept"
    );
    assert!(block_on(opened.ledger.catch_up()).unwrap().held.is_empty());
}

/// A relay that makes up what it set aside: pages that go round, and frames that no tablet of the vault signed.
struct Inventing(RefCell<Vec<Asides>>);

impl Host for Inventing {
    async fn ask(&self, _: Request) -> Result<Answer, Failure> {
        let mut pages = self.0.borrow_mut();
        let next = if pages.len() > 1 {
            pages.remove(0)
        } else {
            pages[0].clone()
        };
        Ok(Answer::Aside(next))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, _: Notice) {}
}

#[test]
fn what_a_relay_makes_up_is_left_out_and_a_circle_is_broken() {
    let mut relay = Relay::new();
    let (log, stranger) = (relay.devices[1].log(2), relay.devices[3].log(1));
    let page = |frames: &[&Frame], more| Asides {
        frames: frames
            .iter()
            .map(|frame| (Why::Fork, (*frame).clone()))
            .collect(),
        more,
    };
    let ask =
        |pages: Vec<Asides>| block_on(ask_aside(&Inventing(RefCell::new(pages)), &relay.roll));
    let all = ask(vec![page(&[&log[0]], true), page(&[&log[1]], false)]).unwrap();
    assert_eq!(all.len(), 2);
    assert_eq!(ask(vec![page(&[&stranger[0]], false)]), Ok(vec![]));
    let mut altered = log[1].bytes().to_vec();
    *altered.last_mut().unwrap() ^= 1;
    let altered = Frame::parse(altered).unwrap();
    assert_eq!(ask(vec![page(&[&altered], false)]), Ok(vec![]));
    for circle in [
        vec![page(&[&log[0]], true)],
        vec![page(&[&log[1], &log[0]], false)],
        vec![page(&[], true)],
    ] {
        assert!(matches!(ask(circle), Err(Failure::Senseless(_))));
    }
}
