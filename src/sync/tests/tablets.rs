//! Tablets by name and role, a sheet made while the vault is open, and carry files through the ledger.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{ONE, founded, reopened, slot_key};
use futures::executor::block_on;
use std::cell::RefCell;
use sync::carry::{CarryError, CarryFile, relayed};
use sync::exchange::{
    Answer, Failure, FrameStore, Host as Relay, MemoryStore, Notice, Request, RollRefused, Run,
    Vector, settle_roll,
};
use sync::{
    CarriedRoll, KeysDue, LeadError, Ledger, MemoryStorage, Opened, Place, Refusal, Storage,
    WriteError, kept_key_file,
};
use vault::enrolment::{Newcomer, Packet};
use vault::{Frame, KeyFile, Opener, Role, Roll, RollError, Statement, StretchParams, recover};

const PARAMS: StretchParams = StretchParams {
    salt: [0; 16],
    memory_kib: 8192,
    passes: 1,
    lanes: 1,
};

/// Brings another tablet in, with the roll as its lead keeps it.
fn enrol(lead: &Ledger<MemoryStorage>, name: &str, role: Role) -> Opened<MemoryStorage> {
    let newcomer = Newcomer::new(name).unwrap();
    let host = block_on(lead.receive(newcomer.request().clone())).unwrap();
    let acquainted = newcomer.meet(host.offer().clone());
    let checked = host.check(acquainted.reveal()).unwrap();
    assert_eq!(checked.phrase(), acquainted.phrase());
    let packet: Packet = block_on(lead.admit(checked, role, None)).unwrap();
    let arrival = acquainted.take(&packet).ok().unwrap();
    let statements: Vec<Vec<u8>> = arrival
        .roll
        .iter()
        .map(|statement| statement.bytes().to_vec())
        .collect();
    let (file, keys) = arrival.keep(&slot_key(), PARAMS).unwrap();
    let storage = MemoryStorage::new();
    block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
    block_on(storage.put_roll(&statements)).unwrap();
    let keys = file.unlock(&slot_key()).unwrap();
    block_on(Ledger::open_kept(storage, keys)).unwrap()
}

/// What one has goes to the other in a file; gives the report's sentence.
fn bring(from: &Ledger<MemoryStorage>, to: &Ledger<MemoryStorage>) -> String {
    let file = block_on(from.carry_out(None)).unwrap();
    let report = block_on(to.carry_in(&file.bytes)).unwrap();
    block_on(to.catch_up()).unwrap();
    report.to_string()
}

fn names(ledger: &Ledger<MemoryStorage>) -> Vec<(Option<String>, Place)> {
    let tablets = block_on(ledger.tablets()).unwrap();
    tablets
        .into_iter()
        .map(|tablet| (tablet.name, tablet.place))
        .collect()
}

fn said(name: &str, place: Place) -> (Option<String>, Place) {
    (Some(name.to_owned()), place)
}

#[test]
fn a_tablet_is_called_otherwise_here_and_by_whoever_reads_it() {
    let (storage, _, ledger) = founded();
    assert_eq!(
        names(&ledger),
        [said("bedside tablet", Place::Here(Role::Lead))]
    );
    let other = enrol(&ledger, "laptop", Role::Clinician).ledger;
    block_on(ledger.rename("harbour tablet")).unwrap();
    assert_eq!(names(&ledger)[0].0.as_deref(), Some("harbour tablet"));
    let file = block_on(kept_key_file(&storage)).unwrap();
    assert_eq!(file.device_name(), "harbour tablet");
    bring(&ledger, &other);
    assert_eq!(
        names(&other),
        [
            said("laptop", Place::Here(Role::Clinician)),
            said("harbour tablet", Place::Here(Role::Lead))
        ]
    );
    // After a restart the newest name holds, and writing goes on after it.
    let opened = reopened(&storage, &file);
    assert_eq!(
        names(&opened.ledger)[0].0.as_deref(),
        Some("harbour tablet")
    );
    block_on(opened.ledger.write(b"unit 3", None, &[])).unwrap();
    assert!(opened.damage.is_empty());
}

/// What one has goes to the other in a file, and what the file says of the tablets.
fn bring_all(from: &Ledger<MemoryStorage>, to: &Ledger<MemoryStorage>) -> CarriedRoll {
    let file = block_on(from.carry_out(None)).unwrap();
    block_on(to.carry_in(&file.bytes)).unwrap();
    block_on(to.catch_up()).unwrap();
    block_on(to.carry_roll_in(&file.bytes)).unwrap()
}

/// The places of the tablets that these are called.
fn places<const N: usize>(ledger: &Ledger<MemoryStorage>, called: [&str; N]) -> [Option<Place>; N] {
    let known = names(ledger);
    called.map(|name| {
        let mut places = known
            .iter()
            .filter(|(known, _)| known.as_deref() == Some(name));
        places.next().map(|(_, place)| *place)
    })
}

/// Three tablets that no relay joins: a carry file tells one of another that came after it, and of its going.
#[test]
fn a_file_tells_of_tablets_that_came_and_went() {
    let (_, _, lead) = founded();
    let early = enrol(&lead, "early", Role::Clinician).ledger;
    let late = enrol(&lead, "late", Role::Clinician).ledger;
    block_on(late.write(b"by the late one", None, &[])).unwrap();
    bring(&late, &lead);
    let CarriedRoll::Taken(found) = bring_all(&lead, &early) else {
        panic!("the lead's list goes on from the one that came with the keys");
    };
    let read: Vec<&[u8]> = found
        .entries
        .iter()
        .map(|read| read.payload.as_slice())
        .collect();
    assert_eq!(read, [b"by the late one"], "it was held back until then");
    let here = Some(Place::Here(Role::Clinician));
    assert_eq!(places(&early, ["early", "late"]), [here, here]);
    assert!(matches!(bring_all(&lead, &early), CarriedRoll::Known));

    block_on(lead.remove(late.device())).unwrap();
    assert!(matches!(bring_all(&lead, &early), CarriedRoll::Taken(_)));
    assert_eq!(
        places(&early, ["early", "late"]),
        [here, Some(Place::Removed)]
    );
    // An older file takes nothing back.
    assert!(matches!(bring_all(&late, &early), CarriedRoll::Known));
    assert_eq!(
        places(&early, ["early", "late"]),
        [here, Some(Place::Removed)]
    );
}

/// Another role is a line of the list, and no entry: a file with nothing else that is new takes it along all the same.
#[test]
fn a_file_in_which_only_the_list_is_newer_takes_it_over() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "laptop", Role::Clinician).ledger;
    bring(&other, &lead);
    bring_all(&lead, &other);
    let theirs = block_on(other.carry_out(None)).unwrap();
    assert_eq!(
        block_on(lead.carry_out(Some(&theirs.bytes))),
        Err(CarryError::Nothing)
    );
    block_on(lead.set_role(other.device(), Role::Lead)).unwrap();
    let file = block_on(lead.carry_out(Some(&theirs.bytes))).unwrap();
    assert_eq!(file.frames, 1, "a file holds one entry at least");
    let report = block_on(other.carry_in(&file.bytes)).unwrap();
    assert_eq!((report.new, report.known), (0, 1));
    let taken = block_on(other.carry_roll_in(&file.bytes)).unwrap();
    assert!(matches!(taken, CarriedRoll::Taken(_)));
    assert_eq!(block_on(other.role()), Some(Role::Lead));
    let again = block_on(other.carry_roll_in(&file.bytes)).unwrap();
    assert!(matches!(again, CarriedRoll::Known));
}

/// Two leads that went on apart without a relay: neither takes the other's list, and nothing is changed by it.
#[test]
fn a_list_that_went_on_otherwise_is_not_taken() {
    let (_, _, one) = founded();
    let other = enrol(&one, "other", Role::Lead).ledger;
    enrol(&one, "left", Role::Clinician);
    enrol(&other, "right", Role::Clinician);
    for (from, to) in [(&one, &other), (&other, &one)] {
        let before = block_on(to.statements()).unwrap();
        assert!(matches!(bring_all(from, to), CarriedRoll::Other));
        assert_eq!(block_on(to.statements()).unwrap(), before);
    }
}

/// Whoever knows the vault's id can make up a list: where none is known, one is taken only if it begins with a tablet that is
/// known to hold a key of the vault.
#[test]
fn where_no_list_is_known_one_has_to_begin_with_a_tablet_of_the_vault() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "other", Role::Clinician).ledger;
    block_on(other.storage().put_roll(&[])).unwrap();
    let file = block_on(lead.carry_out(None)).unwrap();
    let before = block_on(other.carry_roll_in(&file.bytes)).unwrap();
    assert!(
        matches!(before, CarriedRoll::Other),
        "nobody has heard of its first tablet"
    );
    assert!(matches!(bring_all(&lead, &other), CarriedRoll::Taken(_)));
    // One who is on no list takes none: it would be set aside by it.
    let (_, _, stranger) = founded();
    let refused = block_on(stranger.carry_roll_in(&file.bytes)).unwrap();
    assert!(matches!(refused, CarriedRoll::Other));
}

#[test]
fn a_viewer_reads_and_writes_nothing_but_its_name() {
    let (_, _, lead) = founded();
    block_on(lead.write(b"right eye 6/9", Some(ONE), &[])).unwrap();
    let viewer = enrol(&lead, "laptop", Role::Viewer).ledger;
    assert_eq!(bring(&lead, &viewer), "3 entries of 1 tablet, all new");
    assert_eq!(block_on(viewer.role()), Some(Role::Viewer));
    assert_eq!(
        block_on(viewer.write(b"more", None, &[])),
        Err(WriteError::Refused(Refusal::ReadsOnly))
    );
    block_on(viewer.rename("manager")).unwrap();
    assert_eq!(bring(&viewer, &lead), "5 entries of 2 tablets, 2 were new");
    assert_eq!(names(&lead)[1], said("manager", Place::Here(Role::Viewer)));
    assert_eq!(
        block_on(viewer.set_role(lead.device(), Role::Clinician)).unwrap_err(),
        LeadError::NotALead
    );
}

#[test]
fn a_removed_tablet_stays_in_the_list_and_the_keys_change() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "laptop", Role::Clinician).ledger;
    bring(&other, &lead);
    assert_eq!(
        block_on(lead.remove(lead.device())).unwrap_err(),
        LeadError::Roll(RollError::LastLead)
    );
    block_on(lead.remove(other.device())).unwrap();
    assert_eq!(names(&lead)[1], said("laptop", Place::Removed));
    assert_eq!(block_on(lead.keys_due()), KeysDue::Renew);
    block_on(lead.renew_keys()).unwrap();
    assert_eq!(block_on(lead.keys_due()), KeysDue::Nothing);
    // What it writes afterwards is held back.
    block_on(other.write(b"later", None, &[])).unwrap();
    let file = block_on(other.carry_out(None)).unwrap();
    block_on(lead.carry_in(&file.bytes)).unwrap();
    assert_eq!(block_on(lead.catch_up()).unwrap().held.len(), 1);
}

/// Two leads change the list apart from each other: whoever comes first is taken over, and the other says its own again.
#[test]
fn two_leads_that_went_on_apart_end_with_one_list() {
    let (_, _, one) = founded();
    let other = enrol(&one, "other", Role::Lead).ledger;
    let away = enrol(&one, "away", Role::Clinician).ledger;
    let known = block_on(one.statements()).unwrap();
    for ledger in [&other, &away] {
        block_on(ledger.take_roll(&known)).unwrap();
    }
    bring(&away, &one);
    bring(&away, &other);
    let relay = Rolls(RefCell::new(known.clone()));
    let settle = |ledger: &Ledger<MemoryStorage>| {
        let known = block_on(ledger.statements()).unwrap();
        let settled = settle_roll(&relay, ledger.vault(), ledger.device(), &known);
        let settled = block_on(settled)?;
        block_on(ledger.take_roll(&settled)).unwrap();
        Ok::<_, RollRefused>(())
    };
    let right = enrol(&other, "right", Role::Clinician).ledger;
    block_on(other.remove(away.device())).unwrap();
    enrol(&one, "left", Role::Clinician);
    settle(&one).unwrap();
    // Whoever knows of a removal takes no list that lacks it, and holds on to its own until a lead has said it again.
    let by_other = block_on(other.statements()).unwrap();
    block_on(right.take_roll(&by_other)).unwrap();
    assert_eq!(settle(&right), Err(RollRefused::Stranger));
    for ledger in [&other, &other, &right, &one] {
        settle(ledger).unwrap();
    }
    let list = relay.0.borrow().clone();
    let roll = Roll::read(one.vault(), &list).unwrap();
    assert_eq!(roll.role(away.device()), None, "it is removed");
    assert_eq!(list.len(), known.len() + 3, "left, right, and the removal");
    for ledger in [&one, &other, &right] {
        assert_eq!(block_on(ledger.statements()).unwrap(), list);
    }
}

/// A relay that was put back, and on which a removed tablet goes on, shows a list that no lead has signed.
#[test]
fn a_list_that_only_a_removed_lead_went_on_with_is_not_believed() {
    let (_, _, one) = founded();
    let gone = enrol(&one, "gone", Role::Lead).ledger;
    let reader = enrol(&one, "reader", Role::Clinician).ledger;
    let before = block_on(one.statements()).unwrap();
    block_on(gone.take_roll(&before)).unwrap();
    bring(&gone, &one);
    block_on(one.remove(gone.device())).unwrap();
    let known = block_on(one.statements()).unwrap();
    block_on(reader.take_roll(&known)).unwrap();
    enrol(&gone, "friend", Role::Lead);
    enrol(&gone, "another", Role::Lead);
    let relay = Rolls(RefCell::new(block_on(gone.statements()).unwrap()));
    for ledger in [&one, &reader] {
        let settled = settle_roll(&relay, ledger.vault(), ledger.device(), &known);
        assert_eq!(block_on(settled).unwrap_err(), RollRefused::Other);
    }
}

/// The relay shows it the line that says so, signed by a lead; nobody has to be believed for it.
#[test]
fn a_removed_tablet_counts_itself_no_longer_once_it_hears_of_it() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "laptop", Role::Clinician).ledger;
    block_on(other.write(b"seen before", None, &[])).unwrap();
    bring(&other, &lead);
    block_on(lead.remove(other.device())).unwrap();
    let removal = Rolls(RefCell::new(block_on(lead.statements()).unwrap()));
    let known = block_on(other.statements()).unwrap();
    let settled = settle_roll(&removal, other.vault(), other.device(), &known);
    let settled = block_on(settled).unwrap();
    block_on(other.take_roll(&settled)).unwrap();
    assert_eq!(names(&other)[0], said("laptop", Place::Removed));
    assert_eq!(block_on(other.role()), None);
    // What it wrote stays readable to it.
    let read = block_on(other.read_again()).unwrap();
    assert_eq!((read.entries.len(), read.held.len()), (1, 0));
}

/// Every tablet is lost: what the relay has is the file that a tablet would have written.
#[test]
fn what_a_relay_keeps_is_written_as_a_tablet_would_write_it() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "laptop", Role::Clinician).ledger;
    block_on(lead.write(b"right eye 6/9", Some(ONE), &[])).unwrap();
    block_on(other.write(b"unit 3", None, &[])).unwrap();
    bring_all(&other, &lead);
    let relay = MemoryStore::new();
    let nothing = relayed(&relay, lead.vault());
    assert_eq!(nothing, Err(CarryError::Nothing));
    let statements = block_on(lead.statements()).unwrap();
    assert!(relay.open_vault(&statements[0]));
    assert!(relay.extend_roll(&statements[1]).unwrap());
    let file = block_on(lead.carry_out(None)).unwrap();
    for log in CarryFile::parse(&file.bytes).unwrap().logs {
        relay.append(&Run::new(log.frames).unwrap()).unwrap();
    }
    assert_eq!(relayed(&relay, lead.vault()), Ok(file));
}

/// The sheet's code opens the tablet itself, and a carry file where the tablet is lost.
#[test]
fn a_sheet_made_while_the_vault_is_open_brings_everything_back() {
    let (storage, file, ledger) = founded();
    let key = slot_key();
    let code = block_on(ledger.make_recovery(Opener::Passphrase(&key))).unwrap();
    assert_eq!(block_on(ledger.keys_due()), KeysDue::HandOn(1));
    block_on(ledger.renew_keys()).unwrap();
    block_on(ledger.write(b"right eye 6/9", Some(ONE), &[])).unwrap();
    let kept = block_on(kept_key_file(&storage)).unwrap();
    assert!(kept.has_recovery() && !file.has_recovery());
    assert!(kept.unlock_by(Opener::Recovery(&code)).is_ok());

    let carried = block_on(ledger.carry_out(None)).unwrap().bytes;
    let parsed = sync::carry::CarryFile::parse(&carried).unwrap();
    let frames: Vec<Frame> = parsed.logs.into_iter().flat_map(|log| log.frames).collect();
    let recovered = recover(&code, parsed.vault, &frames).unwrap();
    let (new_file, keys) = recovered.keep(&key, PARAMS, "new tablet").unwrap();
    let new = MemoryStorage::new();
    let ledger = block_on(Ledger::found(new.clone(), &new_file, keys)).unwrap();
    block_on(ledger.carry_in(&carried)).unwrap();
    let found = block_on(ledger.catch_up()).unwrap();
    assert_eq!(found.entries[0].payload, b"right eye 6/9");
    // The lost tablet is removed, and what it wrote still counts.
    let lost = file.device();
    block_on(ledger.remove(lost)).unwrap();
    block_on(ledger.renew_keys()).unwrap();
    let keys = KeyFile::from_bytes(&new_file.to_bytes())
        .unwrap()
        .unlock(&key)
        .unwrap();
    let opened = block_on(Ledger::open_kept(new, keys)).unwrap();
    assert_eq!(opened.entries.len(), 1);
    assert!(opened.held.is_empty() && opened.damage.is_empty());
    assert_eq!(
        names(&opened.ledger)[1],
        said("bedside tablet", Place::Removed)
    );
}

/// Nobody can go on with the list of a vault whose tablets are all lost. The one that begins anew says of everybody what that
/// said, and lets nobody in again who was removed.
#[test]
fn a_vault_that_is_brought_back_knows_again_who_was_what() {
    let (_, _, lead) = founded();
    let key = slot_key();
    let code = block_on(lead.make_recovery(Opener::Passphrase(&key))).unwrap();
    let others = [
        ("harbour tablet", Role::Clinician),
        ("laptop", Role::Viewer),
        ("lost tablet", Role::Clinician),
    ];
    let [harbour, _, lost] = others.map(|(name, role)| {
        let other = enrol(&lead, name, role).ledger;
        block_on(other.catch_up()).unwrap();
        bring(&other, &lead);
        other
    });
    block_on(harbour.write(b"right eye 6/9", Some(ONE), &[])).unwrap();
    bring(&harbour, &lead);
    let before = block_on(lead.carry_out(None)).unwrap().bytes;
    block_on(lead.remove(lost.device())).unwrap();
    block_on(lead.renew_keys()).unwrap();
    let carried = block_on(lead.carry_out(None)).unwrap().bytes;

    let parsed = CarryFile::parse(&carried).unwrap();
    let frames: Vec<Frame> = parsed.logs.into_iter().flat_map(|log| log.frames).collect();
    let recovered = recover(&code, parsed.vault, &frames).unwrap();
    let (file, keys) = recovered.keep(&key, PARAMS, "new tablet").unwrap();
    let storage = MemoryStorage::new();
    let new = block_on(Ledger::found(storage.clone(), &file, keys)).unwrap();
    block_on(new.carry_in(&carried)).unwrap();
    block_on(new.catch_up()).unwrap();
    let roll = block_on(new.carry_roll_in(&carried)).unwrap();
    assert!(matches!(roll, CarriedRoll::Other), "{roll:?}");
    assert!(block_on(new.statements()).unwrap().is_empty());
    // A file of before the removal, taken in later, takes nothing of it back.
    let roll = block_on(new.carry_roll_in(&before)).unwrap();
    assert!(matches!(roll, CarriedRoll::Other), "{roll:?}");

    // After a restart as well.
    let keys = file.unlock(&key).unwrap();
    let new = block_on(Ledger::open_kept(storage, keys)).unwrap().ledger;
    block_on(new.begin_roll()).unwrap();
    assert_eq!(
        places(
            &new,
            [
                "new tablet",
                "bedside tablet",
                "harbour tablet",
                "laptop",
                "lost tablet"
            ]
        ),
        [
            Some(Place::Here(Role::Lead)),
            Some(Place::Here(Role::Lead)),
            Some(Place::Here(Role::Clinician)),
            Some(Place::Here(Role::Viewer)),
            Some(Place::Removed),
        ]
    );
    let found = block_on(new.read_again()).unwrap();
    assert_eq!(found.entries.len(), 1);
    assert!(found.held.is_empty());
}

/// The only lead is put back from a copy: its new name is a lead too, and what both names wrote counts.
#[test]
fn a_lead_that_is_set_up_anew_stays_a_lead() {
    let (storage, file, lead) = founded();
    enrol(&lead, "laptop", Role::Clinician);
    block_on(lead.write(b"right eye 6/9", Some(ONE), &[])).unwrap();
    block_on(storage.mark_copy()).unwrap();
    let key = slot_key();
    let opened = block_on(Ledger::open_kept(
        storage.clone(),
        file.unlock(&key).unwrap(),
    ))
    .unwrap();
    assert_eq!(opened.refusal, Some(Refusal::Copy));
    let renewed = opened
        .ledger
        .renew(&file, Opener::Passphrase(&key), None, &opened.entries);
    let new = block_on(renewed).unwrap();
    let again = block_on(Ledger::open_kept(storage, new.unlock(&key).unwrap())).unwrap();
    assert_eq!(again.refusal, None);
    assert_eq!(again.entries[0].payload, b"right eye 6/9");
    assert!(again.held.is_empty());
    assert_eq!(block_on(again.ledger.role()), Some(Role::Lead));
    block_on(again.ledger.remove(lead.device())).unwrap();
}

#[test]
fn only_what_the_other_side_lacks_goes_out_again() {
    let (_, _, lead) = founded();
    let other = enrol(&lead, "laptop", Role::Clinician).ledger;
    bring(&lead, &other);
    let theirs = block_on(other.carry_out(None)).unwrap().bytes;
    assert_eq!(
        block_on(lead.carry_out(Some(&theirs))).unwrap_err(),
        CarryError::Nothing
    );
    block_on(lead.write(b"one more", None, &[])).unwrap();
    assert_eq!(block_on(lead.carry_out(Some(&theirs))).unwrap().frames, 1);
    let (_, _, stranger) = founded();
    assert_eq!(
        block_on(stranger.carry_out(Some(&theirs))).unwrap_err(),
        CarryError::OtherVault
    );
    assert_eq!(
        block_on(stranger.carry_in(&theirs)).unwrap_err(),
        CarryError::OtherVault
    );
}

/// A relay that keeps a roll and nothing else.
struct Rolls(RefCell<Vec<Statement>>);

impl Relay for Rolls {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        if let Request::State(statement) = request {
            self.0.borrow_mut().push(*statement);
        }
        Ok(Answer::Roll(self.0.borrow().clone()))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, _: Notice) {}
}

#[test]
fn a_relay_is_told_what_it_lacks_of_the_roll_and_is_believed_where_it_knows_more() {
    let (_, _, lead) = founded();
    enrol(&lead, "laptop", Role::Clinician);
    let known = block_on(lead.statements()).unwrap();
    assert_eq!(known.len(), 2);
    let (vault, own) = (lead.vault(), lead.device());
    let relay = Rolls(RefCell::new(known[..1].to_vec()));
    assert_eq!(
        block_on(settle_roll(&relay, vault, own, &known)).unwrap(),
        known
    );
    assert_eq!(*relay.0.borrow(), known);
    assert_eq!(
        block_on(settle_roll(&relay, vault, own, &known[..1])).unwrap(),
        known
    );
    // Another list of the same vault, which doesn't continue the one that is known.
    let (_, _, stranger) = founded();
    enrol(&stranger, "laptop", Role::Clinician);
    let other = Rolls(RefCell::new(
        block_on(stranger.statements()).unwrap()[..1].to_vec(),
    ));
    assert_eq!(
        block_on(settle_roll(&other, vault, own, &known)).unwrap_err(),
        RollRefused::Other
    );
}
