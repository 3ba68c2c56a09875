//! Making, opening and locking the vault.

use super::home::RELAY;
use super::tablets::Beginning;
use super::wording;
use super::{Door, Draft, Gate, Keeping, NewVault, Open};
use crate::edge::single;
use crate::edge::stretch;
use ::words::app::session as say;
use leptos::prelude::*;
use record::{Clock, Entry, Story};
use said::{InWords, held_back};
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;
use storage::{IdbStorage, Whose};
use sync::checkpoint::Resumed;
use sync::exchange::Remembered;
use sync::{Ledger, Opened, Read, Storage, StorageError, kept_key_file};
use vault::{KeyFile, Keys, StretchParams, found_vault};

/// Under which name the examiner's own details are kept, sealed as a draft is.
pub(super) const PROFILE: &[u8] = b"examiner";

/// Who works with this tablet.
#[derive(Serialize, Deserialize)]
pub(super) struct Profile {
    /// The name as it stands under a prescription.
    pub examiner: String,
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
            let held = single::try_hold()
                .await
                .map_err(|error| error.to_string())?;
            if held.is_none() {
                self.wait_for_the_other_tab();
                return Ok(Gate::OtherTab);
            }
            self.writer.set_value(held);
        }
        let own = IdbStorage::open(Whose::Own)
            .await
            .map_err(|error| error.in_words())?;
        let file = own.key_file().await.map_err(|error| error.in_words())?;
        self.made_up
            .set(file.is_none() && super::made_up::is_there());
        Ok(if file.is_some() || self.made_up.get_untracked() {
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
        let params = StretchParams::fresh(&new.passphrase).map_err(|error| error.in_words())?;
        let slot_key = stretch::stretch(&new.passphrase, &params).await?;
        let (file, keys) =
            found_vault(&slot_key, params, &new.tablet).map_err(|error| error.in_words())?;
        let beginning = Beginning {
            examiner: new.examiner,
            roll: Vec::new(),
            relay: false,
        };
        self.begin(&file, keys, beginning).await?;
        // So that the recovery sheet can be made at once, without typing the passphrase again.
        self.standing.just_made(slot_key);
        Ok(())
    }

    /// Keeps a vault that this tablet has just got the keys of, and opens it.
    pub(super) async fn begin(
        self,
        file: &KeyFile,
        keys: Keys,
        beginning: Beginning,
    ) -> Result<(), String> {
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        let ledger = Ledger::found(storage, file, keys)
            .await
            .map_err(|error| error.in_words())?;
        let Beginning {
            examiner,
            roll,
            relay,
        } = beginning;
        let profile = crate::edge::cbor::write(&Profile {
            examiner: examiner.clone(),
        });
        let profile = ledger.put_draft(PROFILE, &profile).await;
        profile.map_err(|error| error.in_words())?;
        if !roll.is_empty() {
            let kept = ledger.take_roll(&roll).await;
            kept.map_err(|error| error.in_words())?;
        }
        if relay {
            let remembered = Remembered::default().to_bytes();
            let kept = ledger.put_draft(RELAY, &remembered).await;
            kept.map_err(|error| error.in_words())?;
        }
        self.enter(ledger, Clock::default(), Some(examiner));
        Ok(())
    }

    /// Opens the vault.
    ///
    /// # Errors
    /// One sentence, such as that the passphrase is wrong; nothing is changed then.
    pub async fn unlock(self, passphrase: String) -> Result<(), String> {
        self.must_be_writer()?;
        let storage = self.storage().await.map_err(|error| error.in_words())?;
        let keys = keys(&storage, &passphrase).await?;
        self.open_with(storage, keys).await
    }

    /// Opens the vault with keys that its key file gave.
    pub(super) async fn open_with(self, storage: IdbStorage, keys: Keys) -> Result<(), String> {
        let opened = Ledger::open_kept(storage, keys)
            .await
            .map_err(|error| error.in_words())?;
        self.read(opened).await
    }

    fn is_writer(self) -> bool {
        self.writer.with_value(Option::is_some)
    }

    /// Opens the storage of the vault that is behind this door.
    pub(super) async fn storage(self) -> Result<IdbStorage, StorageError> {
        let made_up = self.made_up.get_untracked();
        IdbStorage::open(if made_up { Whose::MadeUp } else { Whose::Own }).await
    }

    pub(super) fn must_be_writer(self) -> Result<(), String> {
        if self.is_writer() {
            return Ok(());
        }
        self.gate.set(Gate::OtherTab);
        Err(say::another_tab().to_owned())
    }

    /// Folds what was read, takes up what was half written, and says what could not be read.
    async fn read(self, opened: Opened<IdbStorage>) -> Result<(), String> {
        let mut clock = Clock::default();
        let mut said: Vec<String> = opened.damage.iter().map(InWords::in_words).collect();
        said.extend(held_back(&opened.held));
        let story = self.fold(&opened.entries, &mut clock, &mut said);
        said.extend(opened.refusal.map(|refusal| refusal.in_words()));
        let (profile, drafts, wordings) = drafts(&opened.ledger, &mut said).await?;
        self.damaged.set(said);
        self.resumed.set(opened.resumed);
        self.story.set(story);
        self.drafts.set(drafts);
        self.wordings.set(wordings);
        self.enter(opened.ledger, clock, profile);
        self.keep_snapshot(opened.due, opened.entries);
        Ok(())
    }

    /// Folds entries into a story; what can't be read of them is said.
    pub(super) fn fold(self, entries: &[Read], clock: &mut Clock, said: &mut Vec<String>) -> Story {
        let mut story = Story::default();
        self.standing.heard.set(BTreeMap::new());
        for read in entries {
            let admitted = Entry::from_cbor(&read.payload)
                .map_err(|error| error.to_string())
                .and_then(|entry| {
                    clock.witness(entry.stamp);
                    self.standing.hear(read.device, entry.stamp.wall_ms);
                    story.admit(entry).map_err(|error| error.to_string())
                });
            if let Err(sentence) = admitted {
                said.push(say::entry_unreadable(&read.sequence, &sentence));
            }
        }
        story
    }

    pub(super) fn enter(self, ledger: Ledger<IdbStorage>, clock: Clock, examiner: Option<String>) {
        let open = Open {
            ledger,
            clock: RefCell::new(clock),
            changed: RefCell::new(BTreeSet::new()),
            keeping_now: RefCell::new(false),
            going: RefCell::new(None),
            changing: futures::lock::Mutex::new(()),
        };
        self.open.set_value(Some(Rc::new(open)));
        self.examiner.set(examiner);
        self.keeping.set(Keeping::Kept);
        self.gate.set(Gate::Open);
        leptos::task::spawn_local(async move {
            self.take_up_standing().await;
            self.take_up_home().await;
        });
    }

    /// Locks the vault: the screen is cleared at once, and what was typed is kept before the keys go.
    pub fn lock(self, note: Option<String>) {
        if self.gate.get_untracked() == Gate::Open {
            self.gate.set(Gate::Locked { note });
            leptos::task::spawn_local(async move {
                self.settle().await;
                // Nobody waits for anything now.
                self.snapshot_if_due().await;
                self.put_away().await;
            });
        }
    }

    async fn put_away(self) {
        self.settle().await;
        // Unlocked again while the last draft was being kept: then this lock has been overtaken.
        if self.gate.get_untracked() != Gate::Open {
            self.forget();
        }
    }

    pub(super) fn forget(self) {
        self.finder.clear();
        self.open.set_value(None);
        self.story.set(Story::default());
        self.drafts.set(BTreeMap::new());
        self.wordings.set(BTreeMap::new());
        self.damaged.set(Vec::new());
        self.resumed.set(Resumed::Nowhere);
        self.examiner.set(None);
        self.home.set(None);
        self.standing.clear();
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
            self.wait_for_the_other_tab();
        });
    }

    /// Asks the other tab to let go; the wait that is under way already ends then.
    pub fn use_here(self) {
        single::ask_to_let_go();
        self.gate.set(Gate::Looking);
    }

    /// Goes on by itself once the other tab has closed or let go. A page that was just left lets go a moment after the next
    /// one has looked, so even a reload may pass through here.
    fn wait_for_the_other_tab(self) {
        // A second request would stand in line behind the first, and take the vault back from whoever asked for it.
        if self.waiting.get_value() {
            return;
        }
        self.waiting.set_value(true);
        leptos::task::spawn_local(async move {
            let come = single::wait_for().await;
            self.waiting.set_value(false);
            match come {
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
    let file = kept_key_file(storage)
        .await
        .map_err(|error| error.in_words())?;
    let slot_key = stretch::stretch(passphrase, &file.passphrase_params()).await?;
    file.unlock(&slot_key).map_err(|error| error.in_words())
}

type Drafts = BTreeMap<super::DraftOf, Draft>;
type Wordings = BTreeMap<wording::PaperOf, papers::Told>;

/// The examiner's name and what was half written.
async fn drafts(
    ledger: &Ledger<IdbStorage>,
    said: &mut Vec<String>,
) -> Result<(Option<String>, Drafts, Wordings), String> {
    let kept = ledger.drafts().await.map_err(|error| error.in_words())?;
    if kept.unopened > 0 {
        said.push(say::unfinished_unreadable(kept.unopened));
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
        wording::of(&kept.plain),
    ))
}
