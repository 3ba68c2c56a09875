//! In English everything is said as the crates themselves say it, and in German otherwise.

use said::{InWords, held_back};
use std::fmt::Display;
use sync::carry::{Apart, CarryError, Exported, Report};
use sync::checkpoint::Ignored;
use sync::exchange::{
    Failure, Nonsense, Notice, Progress, Refusal, RollRefused, Status, WireError, refusals,
};
use sync::{
    Damage, DraftsError, Fault, Held, HeldFor, LeadError, LedgerError, Read, RenewError,
    RewrapError, StorageError, WriteError,
};
use vault::enrolment::EnrolmentError;
use vault::keyfile::Flaw;
use vault::phrase::PassphraseError;
use vault::stretch::FreshError;
use vault::{
    ChangeError, DeviceId, DraftError, FoundError, FrameHash, Head, KeyFileError, NoInvitation,
    NoRandomness, RecoverError, RecoveryCodeError, RollError, SealError, StretchError, TypedError,
    UnlockError,
};
use words::{Language, in_language};

const DEVICE: DeviceId = DeviceId::from_bytes([0xab; 16]);

fn german(said: &impl InWords) -> String {
    in_language(Language::German, || said.in_words())
}

/// Each as itself in English, and in other words in German.
fn all<T: InWords + Display>(each: impl IntoIterator<Item = T>) {
    for one in each {
        assert_eq!(one.in_words(), one.to_string());
        assert_ne!(german(&one), one.to_string());
    }
}

#[test]
fn what_opens_the_vault() {
    let flaws = [
        Flaw::TooLong,
        Flaw::Unreadable,
        Flaw::PartMissing,
        Flaw::Sum,
        Flaw::Inside,
        Flaw::NoPassphrase,
        Flaw::Stretching,
        Flaw::Epochs,
        Flaw::SigningKey,
        Flaw::ExchangeKey,
        Flaw::ContentKey,
        Flaw::RecoveryKey,
    ];
    all(flaws);
    all(flaws.map(KeyFileError::Damaged));
    all([KeyFileError::Newer(2)]);
    all([
        UnlockError::WrongPassphrase,
        UnlockError::WrongRecovery,
        UnlockError::WrongPlatform,
        UnlockError::Damaged(Flaw::ContentKey),
    ]);
    all([
        PassphraseError::OnlyDigits,
        PassphraseError::TooShort,
        PassphraseError::TooLong,
        PassphraseError::TooFewDifferent,
    ]);
    let stretch = StretchError::OutOfRange {
        memory_kib: 1,
        passes: 2,
        lanes: 3,
    };
    all([stretch, StretchError::Memory]);
    all([NoRandomness]);
    all([
        FreshError::Refused(PassphraseError::TooShort),
        FreshError::NoRandomness(NoRandomness),
    ]);
    all([
        FoundError::NoRandomness(NoRandomness),
        FoundError::Stretch(stretch),
    ]);
    all([
        ChangeError::Unlock(UnlockError::WrongPassphrase),
        ChangeError::NoRandomness(NoRandomness),
        ChangeError::Stretch(StretchError::Memory),
    ]);
}

#[test]
fn the_recovery_sheet_and_an_invitation() {
    all([
        RecoveryCodeError::Sign('U'),
        RecoveryCodeError::Length(27),
        RecoveryCodeError::Check,
    ]);
    all([
        RecoverError::OtherCode,
        RecoverError::NotGenuine,
        RecoverError::NoRandomness(NoRandomness),
    ]);
    all([NoInvitation]);
    all([
        RewrapError::None,
        RewrapError::File(KeyFileError::Damaged(Flaw::Sum)),
        RewrapError::Change(ChangeError::Unlock(UnlockError::WrongPassphrase)),
        RewrapError::Storage(StorageError::Full),
    ]);
}

fn rolls() -> [RollError; 8] {
    [
        RollError::OtherVault,
        RollError::OutOfPlace { expected: 3 },
        RollError::NotALead,
        RollError::Unsigned,
        RollError::WasRemoved,
        RollError::BecomesViewer,
        RollError::NotHere,
        RollError::LastLead,
    ]
}

#[test]
fn a_tablet_that_comes_in() {
    all([
        EnrolmentError::OtherMessage,
        EnrolmentError::Format,
        EnrolmentError::Damaged,
        EnrolmentError::Name,
        EnrolmentError::Commitment,
        EnrolmentError::NotForUs,
        EnrolmentError::Senseless,
        EnrolmentError::NoRandomness(NoRandomness),
        EnrolmentError::Found(FoundError::NoRandomness(NoRandomness)),
    ]);
    let typed = [TypedError::Sign('U'), TypedError::Line(2), TypedError::Cut];
    all(typed);
    all(typed.map(EnrolmentError::Typed));
    all(rolls());
    all(rolls().map(EnrolmentError::Roll));
}

fn storages() -> [StorageError; 6] {
    [
        StorageError::Moved { head: None },
        StorageError::Full,
        StorageError::NotEmpty,
        StorageError::Gone,
        StorageError::Damaged {
            device: DEVICE,
            sequence: 7,
        },
        StorageError::Other("the disk is gone".into()),
    ]
}

#[test]
fn what_is_kept() {
    let seals = [
        SealError::NoRandomness(NoRandomness),
        SealError::Key,
        SealError::TooLong { length: 1 << 20 },
    ];
    let refusals = [
        sync::Refusal::NoLog,
        sync::Refusal::DamagedEnd,
        sync::Refusal::Copy,
        sync::Refusal::ReadsOnly,
        sync::Refusal::WrongKey,
    ];
    all(storages());
    all(seals);
    all(refusals);
    all(storages().map(LedgerError::Storage));
    all(seals.map(LedgerError::Seal));
    all([LedgerError::OtherVault]);
    all(refusals.map(WriteError::Refused));
    all(seals.map(WriteError::Seal));
    all(storages().map(WriteError::Storage));
    all(seals.map(DraftsError::Seal));
    all(storages().map(DraftsError::Storage));
    all([DraftsError::Open(DraftError)]);
    all(seals.map(RenewError::Seal));
    all(storages().map(RenewError::Storage));
    all([RenewError::Change(ChangeError::NoRandomness(NoRandomness))]);
    all([
        LeadError::NotALead,
        LeadError::Nobody,
        LeadError::Roll(RollError::LastLead),
        LeadError::Enrolment(EnrolmentError::Name),
        LeadError::Write(WriteError::Refused(sync::Refusal::Copy)),
        LeadError::Unfinished(StorageError::Full),
    ]);
    all([
        Ignored::Damaged,
        Ignored::OtherFormat,
        Ignored::OtherKeys,
        Ignored::NotAPrefix,
        Ignored::OtherRoll,
    ]);
}

#[test]
fn entries_that_are_amiss() {
    let faults = [
        Fault::Missing { through: 7 },
        Fault::Missing { through: 9 },
        Fault::Malformed(vault::FrameError::Sequence),
        Fault::Misplaced,
        Fault::Unsigned,
        Fault::UnknownWriter,
        Fault::Unlinked,
        Fault::NoKey,
        Fault::Unopened,
        Fault::Emptied,
    ];
    for device_name in [None, Some("bedside".to_owned())] {
        all(faults.map(|fault| Damage {
            device: DEVICE,
            device_name: device_name.clone(),
            sequence: 7,
            fault,
        }));
    }
}

fn held(sequence: u64, device_name: Option<&str>, why: HeldFor) -> Held {
    Held {
        read: Read {
            device: DEVICE,
            sequence,
            subject: None,
            payload: Vec::new(),
        },
        device_name: device_name.map(str::to_owned),
        why,
    }
}

#[test]
fn entries_that_are_held_back() {
    let (removed, not_allowed) = (HeldFor::Removed, HeldFor::NotAllowed);
    let some = [
        held(1, None, removed),
        held(2, None, removed),
        held(3, Some("bedside"), not_allowed),
        held(4, None, removed),
    ];
    all(some.clone());
    assert_eq!(held_back(&some), sync::held_back(&some));
    let said = in_language(Language::German, || held_back(&some[..2]));
    let [said] = said.as_slice() else {
        panic!("one tablet, one reason: {said:?}")
    };
    assert!(said.ends_with("; ebenso ein weiterer von ihm"), "{said}");
}

#[test]
fn carry_files() {
    all([
        CarryError::NotCarry,
        CarryError::Format(9),
        CarryError::Damaged,
        CarryError::Senseless { at: 40 },
        CarryError::OtherVault,
        CarryError::Forged {
            device: DEVICE,
            sequence: 7,
        },
        CarryError::Stranger(DEVICE),
        CarryError::Nothing,
        CarryError::Storage(StorageError::Full),
    ]);
    all([1, 2].map(|frames| Exported {
        bytes: vec![0; 1001],
        frames,
        left_out: vec![(DEVICE, 4), (DEVICE, 5)],
    }));
    let apart = vec![
        Apart::Gap {
            device: DEVICE,
            from: 2,
            through: 4,
        },
        Apart::Fork {
            device: DEVICE,
            sequence: 5,
        },
    ];
    all(apart.clone());
    let counts = [(0, 0), (0, 1), (0, 3), (1, 0), (1, 2), (2, 1), (3, 0)];
    all(counts.map(|(new, known)| Report {
        tablets: 1,
        new,
        known,
        apart: apart.clone(),
    }));
    all(counts.map(|(new, known)| Report {
        tablets: 2,
        new,
        known,
        apart: Vec::new(),
    }));
}

#[test]
fn an_exchange() {
    let head = Head {
        sequence: 9,
        hash: FrameHash::from_bytes([0; 32]),
    };
    all([
        Notice::Status(Status::Offline(None)),
        Notice::Status(Status::Offline(Some(Failure::Unreachable))),
        Notice::Status(Status::Trying),
        Notice::Status(Status::Online),
        Notice::Progress(Progress { done: 1, total: 2 }),
        Notice::Finished,
        Notice::Fork {
            device: DEVICE,
            sequence: 7,
        },
        Notice::Copied { sequence: 7 },
        Notice::RolledBack {
            device: DEVICE,
            seen: head,
            shown: None,
        },
        Notice::RolledBack {
            device: DEVICE,
            seen: head,
            shown: Some(head),
        },
        Notice::Aside { device: DEVICE },
        Notice::Unsent {
            device: DEVICE,
            sequence: 7,
        },
        Notice::NotTaken {
            device: DEVICE,
            sequence: 7,
        },
    ]);
    all([
        Failure::Unreachable,
        Failure::Busy { seconds: 2 },
        Failure::Storage(StorageError::Gone),
    ]);
    let nonsense = [
        Nonsense::Wire(WireError::Malformed),
        Nonsense::Wire(WireError::Version(2)),
        Nonsense::Other,
        Nonsense::Circle,
        Nonsense::More,
        Nonsense::Nobody,
        Nonsense::OtherVault,
        Nonsense::Gap,
        Nonsense::Unsigned,
        Nonsense::Less,
    ];
    all(nonsense);
    all(nonsense.map(Failure::Senseless));
    all([RollRefused::Stranger, RollRefused::Other]);
    all(rolls().map(RollRefused::Unsound));
    all([RollRefused::Failed(Failure::Unreachable)]);
}

/// What a relay of the same version says in English is known again; what any other says stays as it came.
#[test]
fn what_a_relay_refuses() {
    let own = [
        refusals::ADDRESS,
        refusals::UNSIGNED,
        refusals::REPEATED,
        refusals::TOO_LONG,
        refusals::SLOW,
        refusals::NO_INVITATION,
    ];
    all(own.map(|sentence| Failure::Refused(sentence.into())));
    let refused = [
        Refusal::Unknown,
        Refusal::Removed,
        Refusal::NotALead,
        Refusal::OtherVault,
        Refusal::Full,
    ];
    all(refused.map(|refusal| Failure::Refused(refusal.to_string())));
    all(rolls().map(|error| Failure::Refused(error.to_string())));
    let may_not = Refusal::NotAllowed { sequence: 7 };
    all([
        Failure::Forbidden(may_not.to_string()),
        Failure::Refused(refusals::status(418)),
    ]);
    let other = Failure::Refused("the relay moves house".into());
    assert_eq!(german(&other), "the relay moves house");
}
