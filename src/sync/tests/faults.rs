//! Every single storage effect fails once, in every way, and nothing that was acknowledged is lost.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::faulty::{Failure, Faulty};
use common::{ONE, OTHER, slot_key, vault};
use futures::executor::block_on;
use std::collections::BTreeSet;
use sync::{Ledger, MemoryStorage, Storage};
use vault::{KeyFile, Subject};

/// What a day at a home does: found, write, type, write what was typed, look it all up.
const DAY: [(&[u8], Option<Subject>); 4] = [
    (b"a place", None),
    (b"right eye", Some(ONE)),
    (b"left eye", Some(ONE)),
    (b"both eyes", Some(OTHER)),
];

/// What was told to be kept.
#[derive(Default)]
struct Told {
    founded: bool,
    entries: BTreeSet<&'static [u8]>,
    draft: Option<&'static [u8]>,
}

/// Lives through the day as a person does: what fails is tried once more, after that the vault is opened anew.
async fn live(storage: &Faulty, told: &mut Told) {
    let Some(mut ledger) = opened(storage, told).await else {
        return;
    };
    for (payload, subject) in DAY {
        // A failure once, so at the second try it is written; opening anew in between is a failure too.
        for _ in 0..2 {
            if ledger.put_draft(b"typing", payload).await.is_ok() {
                told.draft = Some(payload);
            }
            let draft = ledger.draft_name(b"typing");
            if ledger.write(payload, subject, &[draft]).await.is_ok() {
                told.entries.insert(payload);
                told.draft = None;
                break;
            }
        }
        if !told.entries.contains(payload) {
            let Some(again) = opened(storage, told).await else {
                return;
            };
            ledger = again;
        }
    }
    let _ = ledger.remove_draft(b"nothing").await;
    let _ = ledger.draft(b"typing").await;
    let _ = ledger.drafts().await;
}

/// Founds the vault, or opens the one that a lost answer has left; tries twice.
async fn opened<'a>(storage: &'a Faulty, told: &mut Told) -> Option<Ledger<&'a Faulty>> {
    for _ in 0..2 {
        let Ok(kept) = storage.key_file().await else {
            continue;
        };
        let ledger = if let Some(bytes) = kept {
            let keys = KeyFile::from_bytes(&bytes)
                .unwrap()
                .unlock(&slot_key())
                .unwrap();
            Ledger::open(storage, keys)
                .await
                .map(|opened| opened.ledger)
        } else {
            let (file, keys) = vault();
            Ledger::found(storage, &file, keys).await
        };
        if let Ok(ledger) = ledger {
            told.founded = true;
            return Some(ledger);
        }
    }
    None
}

/// What is there after a restart is what was told, all of it, sound and to be written to.
async fn check(memory: MemoryStorage, told: &Told, case: &str) {
    let Some(bytes) = memory.key_file().await.unwrap() else {
        assert!(
            !told.founded && told.entries.is_empty(),
            "{case}: the vault is lost"
        );
        return;
    };
    let keys = KeyFile::from_bytes(&bytes)
        .unwrap()
        .unlock(&slot_key())
        .unwrap();
    let opened = Ledger::open(memory, keys).await.unwrap();
    assert_eq!(opened.damage, [], "{case}");
    assert_eq!(opened.refusal, None, "{case}");
    for payload in &told.entries {
        let kept = opened
            .entries
            .iter()
            .find(|entry| entry.payload == *payload);
        let subject = DAY
            .iter()
            .find(|(written, _)| written == payload)
            .unwrap()
            .1;
        assert_eq!(
            kept.unwrap_or_else(|| panic!("{case}: an entry is lost"))
                .subject,
            subject,
            "{case}"
        );
    }
    if let Some(draft) = told.draft {
        let typed = opened.ledger.draft(b"typing").await.unwrap();
        let written = opened.entries.iter().any(|entry| entry.payload == draft);
        assert!(
            typed.as_deref() == Some(draft) || written,
            "{case}: a draft is lost"
        );
    }
    opened
        .ledger
        .write(b"the day after", None, &[])
        .await
        .unwrap();
}

#[test]
fn nothing_acknowledged_is_lost_whichever_effect_fails() {
    let sound = Faulty::new(MemoryStorage::new(), None);
    let mut told = Told::default();
    block_on(live(&sound, &mut told));
    assert_eq!(told.entries.len(), DAY.len());
    // Founding, four drafts, four writes, and what is looked up: if there were fewer, something would not be tested.
    assert!(sound.count() >= 12, "{} effects", sound.count());
    for effect in 0..sound.count() {
        for failure in [Failure::Before, Failure::After, Failure::Full] {
            let memory = MemoryStorage::new();
            let mut told = Told::default();
            block_on(live(
                &Faulty::new(memory.clone(), Some((effect, failure))),
                &mut told,
            ));
            let case = format!("effect {effect} fails {failure:?}");
            // One failure stops nobody who tries again.
            assert_eq!(told.entries.len(), DAY.len(), "{case}");
            block_on(check(memory, &told, &case));
        }
    }
}

/// The day's answer lost at every effect from one on: the tablet is switched off there.
#[test]
fn nothing_acknowledged_is_lost_when_everything_stops() {
    for stop in 0..40 {
        let memory = MemoryStorage::new();
        let mut told = Told::default();
        let storage = Faulty::stopping(memory.clone(), stop);
        block_on(live(&storage, &mut told));
        block_on(check(memory, &told, &format!("stopped at effect {stop}")));
    }
}
