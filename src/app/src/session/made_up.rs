//! A vault of made-up people, for looking around. It has a database and a passphrase of its own and nothing in common with
//! a real one; what is in it anybody may see.

use super::Door;
use super::gatekeeping::{PROFILE, Profile};
use crate::edge::made_up::Island;
use crate::edge::motion;
use crate::edge::stretch;
use gloo_storage::{LocalStorage, Storage as _};
use leptos::prelude::*;
use record::{Clock, Entry, Story};
use said::InWords;
use storage::{IdbStorage, Whose};
use sync::{Ledger, Storage, Writing};
use vault::{StretchParams, Subject, found_vault};
use workers::Life;

/// Known to everybody, for it guards nothing.
const PASSPHRASE: &str = "made-up people on made-up islands";

/// People written at once: a few hundred entries.
const AT_ONCE: usize = 4;

/// Where it is noted that there is such a vault here, so that nobody is asked who never looked around.
const NOTED: &str = "lightround.made-up";

/// Whether there is such a vault on this tablet.
pub fn is_there() -> bool {
    LocalStorage::get(NOTED).unwrap_or(false)
}

impl Door {
    /// Makes the vault afresh and opens it; tells after each step how many people of how many are in it.
    ///
    /// # Errors
    /// One sentence; what was made so far is not opened.
    pub async fn look_around(self, tell: impl Fn(usize, usize)) -> Result<(), String> {
        self.must_be_writer()?;
        let made = made(tell).await.map_err(|error| error.to_string())?;
        // A browser that refuses local storage forgets the vault with the page: it is made again in a moment.
        let _ = LocalStorage::set(NOTED, true);
        self.made_up.set(true);
        self.story.set(made.story);
        self.enter(made.ledger, made.clock, Some(made.examiner));
        Ok(())
    }

    /// Opens it again after it was locked.
    ///
    /// # Errors
    /// One sentence.
    pub async fn look_around_again(self) -> Result<(), String> {
        self.unlock(PASSPHRASE.to_owned()).await
    }

    /// Wipes it, whatever was written in it, and leads back to where a real vault is made.
    ///
    /// # Errors
    /// One sentence; it is still there then.
    pub async fn end_looking_around(self) -> Result<(), String> {
        // What is being kept just now must not come after the wiping.
        self.settle().await;
        let wiped = async { IdbStorage::open(Whose::MadeUp).await?.wipe().await };
        wiped.await.map_err(|error| error.in_words())?;
        LocalStorage::delete(NOTED);
        self.forget();
        self.made_up.set(false);
        self.look();
        Ok(())
    }
}

/// Why it was not made.
#[derive(Debug, thiserror::Error)]
enum Unmade {
    #[error("{}", .0.in_words())]
    Storage(#[from] sync::StorageError),
    #[error("{0}")]
    Keys(String),
    #[error("{}", .0.in_words())]
    Ledger(#[from] sync::LedgerError),
    #[error("{}", .0.in_words())]
    Write(#[from] sync::WriteError),
    #[error("{}", .0.in_words())]
    Draft(#[from] sync::DraftsError),
    #[error(transparent)]
    Entry(#[from] record::RecordError),
    #[error(transparent)]
    Fold(#[from] record::FoldError),
    #[error("{0}")]
    Island(String),
}

/// What was made.
struct Made {
    ledger: Ledger<IdbStorage>,
    clock: Clock,
    story: Story,
    examiner: String,
}

async fn made(tell: impl Fn(usize, usize)) -> Result<Made, Unmade> {
    // The passphrase is stretched while the first people are thought up.
    let island = async { Island::thought_up().await.map_err(Unmade::Island) };
    let (mut island, founded) = futures::try_join!(island, founded())?;
    let mut made = Made {
        ledger: founded,
        clock: Clock::default(),
        story: Story::default(),
        examiner: island.examiner.clone(),
    };
    note_examiner(&made).await?;
    let mut done = 0;
    while done < island.people {
        let mut lives = Vec::new();
        for _ in done..island.people.min(done + AT_ONCE) {
            lives.push(island.next().await.map_err(Unmade::Island)?);
        }
        write(&made.ledger, &lives).await?;
        done += lives.len();
        for payload in lives.iter().flat_map(|life| &life.entries) {
            let entry = Entry::from_cbor(payload)?;
            made.clock.witness(entry.stamp);
            made.story.admit(entry)?;
        }
        tell(done, island.people);
        motion::drawn().await;
    }
    Ok(made)
}

/// A new vault in an empty database of its own.
async fn founded() -> Result<Ledger<IdbStorage>, Unmade> {
    let storage = IdbStorage::open(Whose::MadeUp).await?;
    storage.wipe().await?;
    let params =
        StretchParams::fresh(PASSPHRASE).map_err(|error| Unmade::Keys(error.in_words()))?;
    let slot_key = stretch::stretch(PASSPHRASE, &params)
        .await
        .map_err(Unmade::Keys)?;
    let (file, keys) = found_vault(&slot_key, params, "made-up tablet")
        .map_err(|error| Unmade::Keys(error.in_words()))?;
    Ok(Ledger::found(storage, &file, keys).await?)
}

async fn note_examiner(made: &Made) -> Result<(), Unmade> {
    let profile = crate::edge::cbor::write(&Profile {
        examiner: made.examiner.clone(),
    });
    Ok(made.ledger.put_draft(PROFILE, &profile).await?)
}

/// Writes several lives in one step of the storage.
async fn write(ledger: &Ledger<IdbStorage>, lives: &[Life]) -> Result<(), Unmade> {
    let writings: Vec<Writing<'_>> = lives
        .iter()
        .flat_map(|life| {
            let subject = Some(Subject::from_bytes(life.person));
            let entries = life.entries.iter();
            entries.map(move |payload| Writing { payload, subject })
        })
        .collect();
    ledger.write_all(&writings, &[]).await?;
    Ok(())
}
