//! Making, opening and locking the vault.

use super::{Door, Draft, Gate, Keeping, NewVault, Open};
use crate::edge::single;
use crate::edge::storage::IdbStorage;
use crate::edge::stretch;
use leptos::prelude::*;
use record::{Clock, Entry, Story};
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use sync::{Ledger, Opened, Storage};
use vault::{KeyFile, Keys, StretchParams, found_vault};

/// Under which name the examiner's own details are kept, sealed as a draft is.
const PROFILE: &[u8] = b"examiner";

/// Who works with this tablet.
#[derive(Serialize, Deserialize)]
struct Profile {
    examiner: String,
}

impl Door {
    /// Finds out whether there is a vault here, and whether another tab has it.
    pub fn look(self) {
        self.gate.set(Gate::Looking);
        leptos::task::spawn_local(async move {
            let gate = self
                .seen()
                .await
                .unwrap_or_else(|sentence| Gate::Broken { sentence });
            self.gate.set(gate);
        });
    }

    async fn seen(self) -> Result<Gate, String> {
        if !self.is_writer() {
            match single::try_hold()
                .await
                .map_err(|error| error.to_string())?
            {
                Some(writer) => self.writer.set_value(Some(writer)),
                None => return Ok(Gate::OtherTab),
            }
        }
        let storage = IdbStorage::open()
            .await
            .map_err(|error| error.to_string())?;
        let file = storage
            .key_file()
            .await
            .map_err(|error| error.to_string())?;
        Ok(if file.is_some() {
            Gate::Locked { note: None }
        } else {
            Gate::NoVault
        })
    }

    /// Makes a vault and opens it.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn found(self, new: NewVault) -> Result<(), String> {
        self.must_be_writer()?;
        let params = StretchParams::fresh(&new.passphrase).map_err(|error| error.to_string())?;
        let slot_key = stretch::stretch(&new.passphrase, &params).await?;
        let (file, keys) =
            found_vault(&slot_key, params, &new.tablet).map_err(|error| error.to_string())?;
        let storage = IdbStorage::open()
            .await
            .map_err(|error| error.to_string())?;
        let ledger = Ledger::found(storage, &file, keys)
            .await
            .map_err(|error| error.to_string())?;
        let profile = crate::edge::cbor::write(&Profile {
            examiner: new.examiner.clone(),
        });
        ledger
            .put_draft(PROFILE, &profile)
            .await
            .map_err(|error| error.to_string())?;
        self.enter(ledger, Clock::default(), Some(new.examiner));
        Ok(())
    }

    /// Opens the vault.
    ///
    /// # Errors
    /// One sentence, such as that the passphrase is wrong; nothing is changed then.
    pub async fn unlock(self, passphrase: String) -> Result<(), String> {
        self.must_be_writer()?;
        let storage = IdbStorage::open()
            .await
            .map_err(|error| error.to_string())?;
        let keys = keys(&storage, &passphrase).await?;
        let opened = Ledger::open(storage, keys)
            .await
            .map_err(|error| error.to_string())?;
        self.read(opened).await
    }

    fn is_writer(self) -> bool {
        self.writer.with_value(Option::is_some)
    }

    fn must_be_writer(self) -> Result<(), String> {
        if self.is_writer() {
            return Ok(());
        }
        self.gate.set(Gate::OtherTab);
        Err("another tab has taken the vault in the meantime".to_owned())
    }

    /// Folds what was read, takes up what was half written, and says what could not be read.
    async fn read(self, opened: Opened<IdbStorage>) -> Result<(), String> {
        let (mut story, mut clock) = (Story::default(), Clock::default());
        let mut said: Vec<String> = opened.damage.iter().map(ToString::to_string).collect();
        for read in &opened.entries {
            let admitted = Entry::from_cbor(&read.payload)
                .map_err(|error| error.to_string())
                .and_then(|entry| {
                    clock.witness(entry.stamp);
                    story.admit(entry).map_err(|error| error.to_string())
                });
            if let Err(sentence) = admitted {
                said.push(format!(
                    "entry {} can\u{2019}t be read: {sentence}",
                    read.sequence
                ));
            }
        }
        said.extend(opened.refusal.map(|refusal| refusal.to_string()));
        let (profile, drafts) = drafts(&opened.ledger, &mut said).await?;
        self.damaged.set(said);
        self.story.set(story);
        self.drafts.set(drafts);
        self.enter(opened.ledger, clock, profile);
        Ok(())
    }

    fn enter(self, ledger: Ledger<IdbStorage>, clock: Clock, examiner: Option<String>) {
        let open = Open {
            ledger,
            clock: RefCell::new(clock),
            changed: RefCell::new(BTreeSet::new()),
            keeping_now: RefCell::new(false),
        };
        self.open.set_value(Some(Rc::new(open)));
        self.examiner.set(examiner);
        self.keeping.set(Keeping::Kept);
        self.gate.set(Gate::Open);
    }

    /// Locks the vault: the screen is cleared at once, and what was typed is kept before the keys go.
    pub fn lock(self, note: Option<String>) {
        if self.gate.get_untracked() == Gate::Open {
            self.gate.set(Gate::Locked { note });
            leptos::task::spawn_local(self.put_away());
        }
    }

    async fn put_away(self) {
        self.settle().await;
        // Unlocked again while the last draft was being kept: then this lock has been overtaken.
        if self.gate.get_untracked() != Gate::Open {
            self.forget();
        }
    }

    fn forget(self) {
        self.open.set_value(None);
        self.story.set(Story::default());
        self.drafts.set(BTreeMap::new());
        self.damaged.set(Vec::new());
        self.examiner.set(None);
    }

    /// Another tab asks for the vault: locks it here, and lets go once everything is kept.
    pub fn let_go(self) {
        if !self.is_writer() {
            return;
        }
        self.gate.set(Gate::OtherTab);
        leptos::task::spawn_local(async move {
            self.put_away().await;
            self.writer.set_value(None);
        });
    }

    /// Asks the other tab to let go, and waits until it has.
    pub fn use_here(self) {
        single::ask_to_let_go();
        self.gate.set(Gate::Looking);
        leptos::task::spawn_local(async move {
            match single::wait_for().await {
                Ok(writer) => {
                    self.writer.set_value(Some(writer));
                    self.look();
                }
                Err(error) => self.gate.set(Gate::Broken {
                    sentence: error.to_string(),
                }),
            }
        });
    }
}

async fn keys(storage: &IdbStorage, passphrase: &str) -> Result<Keys, String> {
    let bytes = storage
        .key_file()
        .await
        .map_err(|error| error.to_string())?;
    let bytes =
        bytes.ok_or("there is no vault on this tablet any more: the browser has cleared it")?;
    let file = KeyFile::from_bytes(&bytes).map_err(|error| error.to_string())?;
    let slot_key = stretch::stretch(passphrase, &file.passphrase_params()).await?;
    file.unlock(&slot_key).map_err(|error| error.to_string())
}

type Drafts = BTreeMap<super::DraftOf, Draft>;

/// The examiner's name and what was half written.
async fn drafts(
    ledger: &Ledger<IdbStorage>,
    said: &mut Vec<String>,
) -> Result<(Option<String>, Drafts), String> {
    let kept = ledger.drafts().await.map_err(|error| error.to_string())?;
    if kept.unopened > 0 {
        said.push(format!(
            "{} unfinished sections can\u{2019}t be read: they are damaged",
            kept.unopened
        ));
    }
    let drafts = kept
        .plain
        .iter()
        .filter_map(|plain| Draft::from_cbor(plain).ok());
    let profile = ledger.draft(PROFILE).await.ok().flatten();
    let profile = profile.and_then(|plain| crate::edge::cbor::read::<Profile>(&plain));
    Ok((
        profile.map(|profile| profile.examiner),
        drafts
            .map(|draft| ((draft.exam, draft.kind()), draft))
            .collect(),
    ))
}
