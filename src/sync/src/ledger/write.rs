//! Writing: seal, then one step of the storage, then say so.

use super::people::People;
use super::reading::Reading;
use super::{Ledger, Refusal, WriteError};
use crate::storage::{Append, Storage, StorageError};
use vault::{
    DraftName, Frame, Head, Keys, NewEpoch, PersonKey, Proven, Role, SealError, Subject, Under,
};

/// One payload to write.
#[derive(Clone, Copy)]
pub struct Writing<'a> {
    /// What is written.
    pub payload: &'a [u8],
    /// Whom it is about, if anybody: it is sealed under that person's own key then.
    pub subject: Option<Subject>,
}

/// Where writing stands.
pub(super) struct Pen {
    /// The proof for the newest frame, or why there is none.
    pub(super) proven: Result<Proven, Refusal>,
    /// Where reading stands; whose keys are at hand, is part of it.
    pub(super) reading: Reading,
    /// How many frames the checkpoint that is kept covers; 0 where none is to go by.
    pub(super) covered: u64,
    /// A batch that was given to the storage without a clear answer.
    unsure: Option<Batch>,
}

impl std::fmt::Debug for Pen {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("Pen")
            .field("proven", &self.proven)
            .finish_non_exhaustive()
    }
}

/// Sealed frames that are not yet known to be kept.
pub(super) struct Batch {
    pub frames: Vec<Frame>,
    pub proven: Proven,
    /// Each with the number of its frame.
    pub new_people: Vec<(PersonKey, u64)>,
    /// An epoch that begins with these frames.
    pub epoch: Option<NewEpoch>,
}

impl Pen {
    pub fn new(proven: Result<Proven, Refusal>, reading: Reading) -> Self {
        Self {
            proven,
            reading,
            covered: 0,
            unsure: None,
        }
    }

    /// The batch is kept: go on from its end.
    fn commit(&mut self, keys: &Keys, batch: Batch) -> Head {
        let head = batch.proven.head();
        self.proven = Ok(batch.proven);
        for (key, sequence) in batch.new_people {
            self.reading.people.add(key, (keys.device(), sequence));
        }
        if let Some(epoch) = batch.epoch {
            keys.adopt(epoch);
        }
        head
    }
}

impl<S: Storage> Ledger<S> {
    /// Writes one payload durably and drops the drafts that it makes needless, all in one step. When this returns `Ok`, it
    /// is kept; when it returns an error, nothing was changed, or [`WriteError::Storage`] says that this is unsure.
    ///
    /// The first entry about a person brings that person's key, in a frame of its own before it.
    ///
    /// # Errors
    ///
    /// Writing is refused; the payload is too long; the storage fails.
    pub async fn write(
        &self,
        payload: &[u8],
        subject: Option<Subject>,
        drop_drafts: &[DraftName],
    ) -> Result<Head, WriteError> {
        self.write_all(&[Writing { payload, subject }], drop_drafts)
            .await
    }

    /// Writes several payloads, all or none. Returns the new head.
    ///
    /// # Errors
    ///
    /// As [`Ledger::write`].
    pub async fn write_all(
        &self,
        writings: &[Writing<'_>],
        drop_drafts: &[DraftName],
    ) -> Result<Head, WriteError> {
        let mut pen = self.pen.lock().await;
        self.settle(&mut pen).await?;
        if pen.reading.role(self.device()) == Some(Role::Viewer) {
            return Err(Refusal::ReadsOnly.into());
        }
        let proven = pen.proven.as_ref().map_err(|refusal| *refusal)?;
        let expected = proven.head();
        let Some(batch) = seal_all(&self.keys, proven, &pen.reading.people, writings)? else {
            return Ok(expected);
        };
        self.append(&mut pen, expected, batch, drop_drafts).await
    }

    /// Keeps sealed frames after `expected`.
    pub(super) async fn append(
        &self,
        pen: &mut Pen,
        expected: Head,
        batch: Batch,
        drop_drafts: &[DraftName],
    ) -> Result<Head, WriteError> {
        let append = Append {
            device: self.device(),
            expected: Some(expected),
            frames: &batch.frames,
            drop_drafts,
        };
        match self.storage.append(append).await {
            Ok(()) => Ok(pen.commit(&self.keys, batch)),
            Err(error) => {
                if is_unsure(&error) {
                    pen.unsure = Some(batch);
                }
                Err(error.into())
            }
        }
    }

    /// Why nothing can be written, if so.
    pub async fn refusal(&self) -> Option<Refusal> {
        self.pen.lock().await.proven.as_ref().err().copied()
    }

    /// Finds out what became of a batch without a clear answer, before anything is written after it.
    pub(super) async fn settle(&self, pen: &mut Pen) -> Result<(), WriteError> {
        let Some(batch) = &pen.unsure else {
            return Ok(());
        };
        let kept = self.storage.head(self.device()).await? == Some(batch.proven.head());
        if let Some(batch) = pen.unsure.take_if(|_| kept) {
            pen.commit(&self.keys, batch);
        }
        pen.unsure = None;
        Ok(())
    }
}

/// Whether a write that failed so may have happened all the same.
fn is_unsure(error: &StorageError) -> bool {
    !matches!(
        error,
        StorageError::Moved { .. } | StorageError::Full | StorageError::NotEmpty
    )
}

/// Seals everything after `start`, with a new person's key before the first entry about that person; none for nothing.
pub(super) fn seal_all(
    keys: &Keys,
    start: &Proven,
    people: &People,
    writings: &[Writing<'_>],
) -> Result<Option<Batch>, SealError> {
    let mut sealing = Sealing {
        keys,
        start,
        people,
        frames: Vec::new(),
        proven: None,
        new_people: Vec::new(),
    };
    for writing in writings {
        sealing.add(writing)?;
    }
    let Sealing {
        frames,
        proven,
        new_people,
        ..
    } = sealing;
    Ok(proven.map(|proven| Batch {
        frames,
        proven,
        new_people,
        epoch: None,
    }))
}

struct Sealing<'a> {
    keys: &'a Keys,
    start: &'a Proven,
    people: &'a People,
    frames: Vec<Frame>,
    proven: Option<Proven>,
    new_people: Vec<(PersonKey, u64)>,
}

impl Sealing<'_> {
    fn add(&mut self, writing: &Writing<'_>) -> Result<(), SealError> {
        if let Some(subject) = writing.subject {
            self.meet(subject)?;
        }
        let under = match writing.subject.and_then(|subject| self.key_of(subject)) {
            Some(key) => Under::Person(key),
            None => Under::Epoch,
        };
        let sealed = self.keys.seal(self.place(), under, writing.payload)?;
        self.push(sealed);
        Ok(())
    }

    /// Sees to it that the person has a key.
    fn meet(&mut self, subject: Subject) -> Result<(), SealError> {
        if self.key_of(subject).is_none() {
            let key = self.keys.make_person_key(subject)?;
            let sealed = self.keys.seal_person_key(self.place(), &key)?;
            self.new_people.push((key, sealed.0.sequence()));
            self.push(sealed);
        }
        Ok(())
    }

    fn key_of(&self, subject: Subject) -> Option<&PersonKey> {
        let mut new = self.new_people.iter().map(|(key, _)| key);
        let new = new.find(|key| key.subject() == subject);
        new.or_else(|| self.people.of(subject))
    }

    fn place(&self) -> &Proven {
        self.proven.as_ref().unwrap_or(self.start)
    }

    fn push(&mut self, (frame, proven): (Frame, Proven)) {
        self.frames.push(frame);
        self.proven = Some(proven);
    }
}
