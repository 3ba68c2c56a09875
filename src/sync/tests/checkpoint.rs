//! Opening with a checkpoint gives what opening without one gives, only sooner; and a bad one costs nothing but time.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::faulty::{Failure, Faulty};
use common::{ONE, OTHER, append};
use futures::executor::block_on;
use proptest::prelude::*;
use sync::checkpoint::{Ignored, Resumed, is_due};
use sync::{Ledger, MemoryStorage, Opened, Storage};
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Keys, PersonKey, Role, Roll, Under};

/// A vault of three devices, of which the first is this one.
struct Scene {
    seed: u64,
    storage: MemoryStorage,
    others: Vec<Other>,
    roll: Option<Roll>,
}

struct Other {
    keys: Keys,
    place: vault::Proven,
    key: Option<PersonKey>,
    log: Vec<Frame>,
}

impl Other {
    fn new(device: Device, name: &str) -> Self {
        let (first, place) = device.keys.begin(name).unwrap();
        Self {
            keys: device.keys,
            place,
            key: None,
            log: vec![first],
        }
    }

    fn push(&mut self, (frame, place): (Frame, vault::Proven)) {
        self.log.push(frame);
        self.place = place;
    }

    fn write(&mut self, about: bool, payload: &[u8]) {
        if about && self.key.is_none() {
            let key = self.keys.make_person_key(ONE).unwrap();
            let sealed = self.keys.seal_person_key(&self.place, &key).unwrap();
            self.push(sealed);
            self.key = Some(key);
        }
        let under = match self.key.as_ref().filter(|_| about) {
            Some(key) => Under::Person(key),
            None => Under::Epoch,
        };
        let sealed = self.keys.seal(&self.place, under, payload).unwrap();
        self.push(sealed);
    }
}

impl Scene {
    /// With a roll, the second device is a clinician and the third a viewer, whose writing is held back.
    fn new(seed: u64, with_roll: bool) -> Self {
        let storage = MemoryStorage::new();
        let mut all = devices(seed, 3);
        let others: Vec<_> = [("two", all.remove(1)), ("three", all.remove(1))]
            .map(|(name, device)| Other::new(device, name))
            .into();
        let own = &all[0].keys;
        append(&storage, &[own.begin("one").unwrap().0], None);
        let roll = with_roll.then(|| {
            let mut roll = Roll::new(own.vault());
            let roles = [Role::Lead, Role::Clinician, Role::Viewer];
            let keys = [own, &others[0].keys, &others[1].keys];
            for (keys, role) in keys.into_iter().zip(roles) {
                let about = keys.public();
                roll.add(&own.state(&roll, about, Change::Admit(role)).unwrap())
                    .unwrap();
            }
            roll
        });
        Self {
            seed,
            storage,
            others,
            roll,
        }
    }

    fn keys(&self) -> Keys {
        devices(self.seed, 1).remove(0).keys
    }

    fn open(&self) -> Opened<MemoryStorage> {
        let (storage, roll) = (self.storage.clone(), self.roll.clone());
        block_on(Ledger::open_by(storage, self.keys(), roll)).unwrap()
    }

    fn open_afresh(&self) -> Opened<MemoryStorage> {
        let (storage, roll) = (self.storage.clone(), self.roll.clone());
        block_on(Ledger::open_afresh(storage, self.keys(), roll)).unwrap()
    }

    /// Brings the first frames of another device's log.
    fn bring(&self, other: usize, through: usize) {
        let log = &self.others[other].log;
        let head = block_on(self.storage.head(log[0].device())).unwrap();
        let here = head.map_or(0, |head| head.sequence as usize);
        let through = through.min(log.len());
        if through > here {
            append(&self.storage, &log[here..through], head);
        }
    }

    /// Keeps a checkpoint, worth it or not: one of other bytes is there before, so that one is due.
    fn checkpoint(&self) {
        block_on(self.storage.put_checkpoint(&[vec![0; 99]])).unwrap();
        let opened = self.open();
        if let Some(due) = opened.due {
            block_on(opened.ledger.keep_checkpoint(due, &opened.entries)).unwrap();
        }
    }
}

/// Both say the same of everything but how they came to it.
fn assert_same(one: &Opened<MemoryStorage>, other: &Opened<MemoryStorage>) {
    assert_eq!(one.entries, other.entries);
    assert_eq!(one.held, other.held);
    assert_eq!(one.damage, other.damage);
    assert_eq!(one.unread, other.unread);
    assert_eq!(one.refusal, other.refusal);
}

#[derive(Clone, Debug)]
enum Step {
    /// This device writes, about somebody or nobody.
    Own(Option<bool>),
    /// Another device writes.
    Other(usize, bool),
    /// Some of another device's log comes.
    Bring(usize, usize),
    Checkpoint,
    /// A kept frame of some log is damaged.
    Damage(usize, u64),
}

fn step() -> impl Strategy<Value = Step> {
    prop_oneof![
        4 => proptest::option::of(any::<bool>()).prop_map(Step::Own),
        6 => (0..2_usize, any::<bool>()).prop_map(|(which, about)| Step::Other(which, about)),
        4 => (0..2_usize, 1..20_usize).prop_map(|(which, through)| Step::Bring(which, through)),
        2 => Just(Step::Checkpoint),
        1 => (0..3_usize, 1..9_u64).prop_map(|(which, sequence)| Step::Damage(which, sequence)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 100, failure_persistence: None, ..ProptestConfig::default() })]

    /// Damage comes before the last checkpoint is made or after it; what rots under a checkpoint is found by reading afresh
    /// only, so such frames are damaged and then a checkpoint is made.
    #[test]
    fn everything_that_opening_gives_is_the_same_with_and_without(
        seed in 1..50_u64,
        with_roll in any::<bool>(),
        steps in proptest::collection::vec(step(), 1..40),
    ) {
        let mut scene = Scene::new(seed, with_roll);
        for (number, step) in steps.into_iter().enumerate() {
            let payload = format!("payload {number}");
            match step {
                Step::Own(about) => {
                    let ledger = scene.open().ledger;
                    let subject = about.map(|one| if one { ONE } else { OTHER });
                    // A damaged end refuses writing; that too must be the same.
                    let _ = block_on(ledger.write(payload.as_bytes(), subject, &[]));
                }
                Step::Other(which, about) => scene.others[which].write(about, payload.as_bytes()),
                Step::Bring(which, through) => scene.bring(which, through),
                Step::Checkpoint => scene.checkpoint(),
                Step::Damage(which, sequence) => {
                    let device = match which {
                        0 => scene.keys().device(),
                        which => scene.others[which - 1].keys.device(),
                    };
                    let kept = block_on(scene.storage.page(device, sequence, 1)).unwrap();
                    if let Some(mut frame) = kept.into_iter().find(|kept| kept.sequence == sequence) {
                        frame.bytes[130] ^= 1;
                        scene.storage.damage(device, sequence, Some(frame.bytes));
                        scene.checkpoint();
                    }
                }
            }
        }
        let (with, without) = (scene.open(), scene.open_afresh());
        assert_same(&with, &without);
        // And both go on alike.
        scene.bring(0, usize::MAX);
        scene.bring(1, usize::MAX);
        let found = [with, without].map(|opened| block_on(opened.ledger.catch_up()).unwrap());
        prop_assert_eq!(&found[0].entries, &found[1].entries);
        prop_assert_eq!(&found[0].held, &found[1].held);
        prop_assert_eq!(&found[0].damage, &found[1].damage);
    }
}

/// A vault with something of everything, and a checkpoint of it.
fn checkpointed() -> Scene {
    let mut scene = Scene::new(3, true);
    let opened = scene.open();
    block_on(opened.ledger.write(b"a place", None, &[])).unwrap();
    block_on(opened.ledger.write(b"right eye", Some(OTHER), &[])).unwrap();
    for other in &mut scene.others {
        other.write(false, b"elsewhere");
        other.write(true, b"left eye");
    }
    scene.bring(0, 9);
    scene.bring(1, 9);
    scene.checkpoint();
    scene
}

#[test]
fn a_checkpoint_is_gone_by_and_only_what_came_after_is_read() {
    let scene = checkpointed();
    let opened = scene.open();
    // This device's introduction, two entries and a key; four frames of each of the others.
    assert_eq!(opened.resumed, Resumed::After(12));
    assert!(opened.due.is_none(), "nothing came after it");
    assert_eq!((opened.entries.len(), opened.held.len()), (4, 2));
    assert_same(&opened, &scene.open_afresh());
    // Keys that came with the checkpoint are written under.
    block_on(opened.ledger.write(b"both eyes", Some(OTHER), &[])).unwrap();
    let own = block_on(scene.storage.page(scene.keys().device(), 1, 9)).unwrap();
    assert_eq!(own.len(), 5, "no second key for the same person");
    // Frames under it are not looked at again, but for each log's last one.
    scene.storage.damage(scene.keys().device(), 2, None);
    assert_eq!(scene.open().entries.len(), 5);
    assert_eq!(scene.open_afresh().damage.len(), 1);
}

#[test]
fn a_bad_checkpoint_is_passed_over_with_a_word_and_made_anew() {
    let scene = checkpointed();
    let good = block_on(scene.storage.checkpoint()).unwrap();
    let whole = scene.open_afresh();
    let changed = |at: usize, to: u8| {
        let mut pieces = good.clone();
        pieces[0][at] = to;
        pieces
    };
    let cut = |length: usize| vec![good[0][..length].to_vec()];
    let mut bad: Vec<(Vec<Vec<u8>>, Ignored)> = vec![
        (changed(0, 2), Ignored::OtherFormat),
        (changed(0, 0), Ignored::OtherFormat),
        (changed(1, 2), Ignored::OtherFormat),
        (changed(2, good[0][2] ^ 1), Ignored::OtherKeys),
        (changed(20, good[0][20] ^ 1), Ignored::Damaged),
        (changed(37, good[0][37] ^ 1), Ignored::Damaged),
        (vec![vec![]], Ignored::Damaged),
        (vec![good[0].clone(), vec![0; 16]], Ignored::Damaged),
        (vec![good[0].clone(), good[0].clone()], Ignored::Damaged),
    ];
    bad.extend([1, 36, 37, 52, 53, 200, good[0].len() - 1].map(|at| (cut(at), Ignored::Damaged)));
    for (pieces, ignored) in bad {
        block_on(scene.storage.put_checkpoint(&pieces)).unwrap();
        let opened = scene.open();
        assert_eq!(opened.resumed, Resumed::Ignored(ignored));
        assert_same(&opened, &whole);
        let due = opened.due.expect("one is made in its place");
        block_on(opened.ledger.keep_checkpoint(due, &opened.entries)).unwrap();
        assert_eq!(scene.open().resumed, Resumed::After(12));
    }
}

#[test]
fn plain_bytes_that_make_no_sense_are_passed_over_too() {
    let scene = checkpointed();
    let keys = scene.keys();
    let good = block_on(scene.storage.checkpoint()).unwrap();
    let plain = keys.open_checkpoint(&good).unwrap();
    let mut trailing = plain.to_vec();
    trailing.push(0);
    let mut other = plain.to_vec();
    other[0] = 2;
    for (bytes, ignored) in [
        (vec![], Ignored::Damaged),
        (other, Ignored::OtherFormat),
        (trailing, Ignored::Damaged),
    ] {
        let pieces = keys.seal_checkpoint(&bytes).unwrap();
        block_on(scene.storage.put_checkpoint(&pieces)).unwrap();
        assert_eq!(scene.open().resumed, Resumed::Ignored(ignored));
    }
    for length in (1..plain.len()).step_by(13) {
        let pieces = keys.seal_checkpoint(&plain[..length]).unwrap();
        block_on(scene.storage.put_checkpoint(&pieces)).unwrap();
        assert_eq!(
            scene.open().resumed,
            Resumed::Ignored(Ignored::Damaged),
            "cut to {length}"
        );
    }
}

#[test]
fn another_devices_checkpoint_is_passed_over() {
    let scene = checkpointed();
    let plain = scene
        .keys()
        .open_checkpoint(&block_on(scene.storage.checkpoint()).unwrap())
        .unwrap();
    let pieces = scene.others[0].keys.seal_checkpoint(&plain).unwrap();
    block_on(scene.storage.put_checkpoint(&pieces)).unwrap();
    assert_eq!(scene.open().resumed, Resumed::Ignored(Ignored::Damaged));
}

#[test]
fn a_checkpoint_that_is_ahead_or_beside_what_is_kept_is_passed_over() {
    let scene = checkpointed();
    let pieces = block_on(scene.storage.checkpoint()).unwrap();
    // The same devices with less on the disk, as after a restored copy.
    let fewer = Scene::new(3, true);
    let fewer = Scene {
        roll: scene.roll.clone(),
        ..fewer
    };
    block_on(fewer.storage.put_checkpoint(&pieces)).unwrap();
    let opened = fewer.open();
    assert_eq!(opened.resumed, Resumed::Ignored(Ignored::NotAPrefix));
    assert!(opened.entries.is_empty());
    // A log whose last covered frame is damaged is read anew, so that the damage shows.
    let device = scene.others[0].keys.device();
    scene.storage.damage(device, 4, None);
    let opened = scene.open();
    assert_eq!(opened.resumed, Resumed::Ignored(Ignored::NotAPrefix));
    assert_eq!(opened.damage.len(), 1);
}

#[test]
fn another_roll_judges_anew() {
    let mut scene = checkpointed();
    let own = scene.keys();
    let mut roll = scene.roll.take().unwrap();
    let viewer = scene.others[1].keys.public();
    let statement = own
        .state(&roll, viewer, Change::Admit(Role::Clinician))
        .unwrap();
    roll.add(&statement).unwrap();
    scene.roll = Some(roll);
    let opened = scene.open();
    assert_eq!(opened.resumed, Resumed::Ignored(Ignored::OtherRoll));
    assert_eq!((opened.entries.len(), opened.held.len()), (6, 0));
}

#[test]
fn a_checkpoint_of_many_chunks_opens_and_none_of_them_can_be_left_out_or_exchanged() {
    let keys = devices(1, 1).remove(0).keys;
    for length in [0, 1, 65_535, 65_536, 65_537, 131_072, 200_000] {
        let plain: Vec<u8> = (0..length).map(|at: usize| (at % 251) as u8).collect();
        let pieces = keys.seal_checkpoint(&plain).unwrap();
        assert_eq!(pieces.len(), length.div_ceil(65_536).max(1));
        assert_eq!(*keys.open_checkpoint(&pieces).unwrap(), plain);
        for left in 1..pieces.len() {
            assert!(keys.open_checkpoint(&pieces[..left]).is_err());
        }
        if let [.., one, other] = pieces.as_slice() {
            let mut exchanged = pieces.clone();
            let last = pieces.len() - 1;
            exchanged[last] = one.clone();
            exchanged[last - 1] = other.clone();
            assert!(keys.open_checkpoint(&exchanged).is_err());
        }
    }
}

#[test]
fn writing_one_is_a_matter_of_frames() {
    let mut scene = Scene::new(9, false);
    for _ in 0..sync::checkpoint::WORTH {
        scene.others[0].write(false, b"x");
    }
    scene.bring(0, 500);
    // 500 of the other's, and this device's introduction.
    let opened = scene.open();
    let due = opened.due.unwrap();
    assert_eq!(due.frames(), 501);
    assert!(!is_due(Resumed::Nowhere, 500));
}

/// A vault of one device with so many entries, still open.
fn written(scene: &Scene, entries: usize) -> Ledger<MemoryStorage> {
    let ledger = scene.open().ledger;
    write_more(&ledger, entries);
    ledger
}

fn write_more(ledger: &Ledger<MemoryStorage>, entries: usize) {
    for number in 0..entries {
        block_on(ledger.write(format!("entry {number}").as_bytes(), None, &[])).unwrap();
    }
}

#[test]
fn a_quiet_moment_keeps_one_after_more_than_five_hundred_frames_and_not_again_until_as_many_more() {
    let scene = Scene::new(4, false);
    // With this device's introduction, 500 frames.
    let ledger = written(&scene, 499);
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(None));
    assert!(block_on(scene.storage.checkpoint()).unwrap().is_empty());
    write_more(&ledger, 1);
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(Some(501)));
    write_more(&ledger, 500);
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(None));
    write_more(&ledger, 1);
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(Some(1_002)));
    let opened = scene.open();
    assert_eq!(opened.resumed, Resumed::After(1_002));
    assert!(opened.due.is_none());
    assert_same(&opened, &scene.open_afresh());
    // The count goes on from where this opening began, not from nothing.
    write_more(&opened.ledger, 500);
    assert_eq!(block_on(opened.ledger.checkpoint_if_due()), Ok(None));
    write_more(&opened.ledger, 1);
    assert_eq!(block_on(opened.ledger.checkpoint_if_due()), Ok(Some(1_503)));
}

#[test]
fn after_a_quiet_moment_writing_goes_on_where_it_was() {
    let scene = Scene::new(5, true);
    let ledger = written(&scene, 501);
    block_on(ledger.write(b"about one", Some(ONE), &[])).unwrap();
    assert!(block_on(ledger.checkpoint_if_due()).unwrap().is_some());
    block_on(ledger.write(b"about one again", Some(ONE), &[])).unwrap();
    block_on(ledger.write(b"about another", Some(OTHER), &[])).unwrap();
    let opened = scene.open();
    assert_eq!(opened.entries.len(), 504);
    assert_eq!(opened.refusal, None);
    assert_same(&opened, &scene.open_afresh());
}

#[test]
fn a_quiet_moment_covers_what_others_wrote_and_puts_a_good_one_in_place_of_a_bad_one() {
    let mut scene = Scene::new(6, false);
    for _ in 0..600 {
        scene.others[0].write(true, b"elsewhere");
    }
    let ledger = scene.open().ledger;
    scene.bring(0, usize::MAX);
    block_on(ledger.catch_up()).unwrap();
    // 600 entries, an introduction and a key beside the entries, and this device's introduction.
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(Some(603)));
    // Something overwrites it while the vault is open: the next quiet moment mends it as soon as it would write one.
    block_on(scene.storage.put_checkpoint(&[b"rotten".to_vec()])).unwrap();
    write_more(&ledger, 501);
    assert_eq!(block_on(ledger.checkpoint_if_due()), Ok(Some(1_104)));
    assert_eq!(scene.open().resumed, Resumed::After(1_104));
}

#[test]
fn a_quiet_moment_that_fails_anywhere_costs_nothing() {
    let scene = Scene::new(7, false);
    written(&scene, 501);
    let whole = scene.open_afresh();
    let sound = Faulty::new(scene.storage.clone(), None);
    let opened = block_on(Ledger::open(&sound, scene.keys())).unwrap();
    let opening = sound.count();
    assert_eq!(block_on(opened.ledger.checkpoint_if_due()), Ok(Some(502)));
    let effects = sound.count();
    for failing in opening..effects {
        block_on(scene.storage.put_checkpoint(&[])).unwrap();
        let faulty = Faulty::new(scene.storage.clone(), Some((failing, Failure::Full)));
        let opened = block_on(Ledger::open(&faulty, scene.keys())).unwrap();
        assert!(block_on(opened.ledger.checkpoint_if_due()).is_err());
        assert!(block_on(scene.storage.checkpoint()).unwrap().is_empty());
        assert_same(&scene.open(), &whole);
        // And it is tried again at the next one.
        assert_eq!(block_on(opened.ledger.checkpoint_if_due()), Ok(Some(502)));
    }
    assert!(effects > opening + 3, "several effects were failed");
}

#[test]
fn a_checkpoint_that_was_due_before_somebody_was_erased_is_not_kept() {
    let scene = Scene::new(8, false);
    let ledger = written(&scene, 501);
    block_on(ledger.write(b"right eye", Some(ONE), &[])).unwrap();
    let opened = scene.open();
    let due = opened.due.expect("more than five hundred frames");
    block_on(opened.ledger.erase(ONE, 1_000)).unwrap();
    block_on(opened.ledger.keep_checkpoint(due, &opened.entries)).unwrap();
    assert!(block_on(scene.storage.checkpoint()).unwrap().is_empty());
    let again = scene.open();
    assert!(again.entries.iter().all(|read| read.subject != Some(ONE)));
    assert!(again.due.is_some(), "another one is made in time");
}
