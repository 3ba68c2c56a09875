//! Erasing a person: a lead's word, carried out here and by everybody who hears of it.

use super::write::Batch;
use super::{LeadError, Ledger};
use crate::storage::{Storage, StorageError};
use std::fmt;
use vault::{DeviceId, Erasure, Frame, Subject};

/// Frames looked at, and emptied, at a time.
const PAGE: usize = 500;

/// A person who was erased.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Erased {
    /// Who, as the record named that person.
    pub subject: Subject,
    /// When, in milliseconds since 1970.
    pub at: u64,
    /// The lead that did it.
    pub by: DeviceId,
    /// The number of its word in that lead's log.
    pub sequence: u64,
}

impl fmt::Display for Erased {
    /// One plain sentence, without a name, since there is none any more; whoever shows it knows how to write a date.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let by = self.by.to_string();
        write!(
            out,
            "one person\u{2019}s records were erased by tablet {}",
            &by[..8]
        )
    }
}

impl<S: Storage> Ledger<S> {
    /// Erases a person: writes that this lead does so, then drops the person's keys and everything under them. `at` is the
    /// time, in milliseconds since 1970. What other devices keep goes when they hear of it.
    ///
    /// # Errors
    ///
    /// This device is no lead; nothing is kept about this person; it was not written; or it was, and could not be carried
    /// out here yet.
    pub async fn erase(&self, subject: Subject, at: u64) -> Result<Erased, LeadError> {
        let mut pen = self.pen.lock().await;
        self.settle(&mut pen).await?;
        if !pen.reading.leads(self.device()) {
            return Err(LeadError::NotALead);
        }
        let keys = pen.reading.people.all_of(subject);
        if keys.is_empty() {
            return Err(LeadError::Nobody);
        }
        let erasure = Erasure { subject, at, keys };
        let place = pen.proven.as_ref().map_err(|refusal| (*refusal).into());
        let place = place.map_err(LeadError::Write)?;
        let (frame, proven) = self
            .keys
            .seal_erasure(place, &erasure)
            .map_err(|error| LeadError::Write(error.into()))?;
        let (expected, sequence) = (place.head(), frame.sequence());
        let batch = Batch {
            frames: vec![frame],
            proven,
            new_people: Vec::new(),
            epoch: None,
        };
        self.append(&mut pen, expected, batch, &[]).await?;
        pen.reading.people.forget(|id, _| erasure.has(id));
        pen.reading.erasures.push(erasure);
        let done = carry_out(&self.storage, &pen.reading.erasures).await;
        done.map_err(LeadError::Unfinished)?;
        Ok(Erased {
            subject,
            at,
            by: self.device(),
            sequence,
        })
    }
}

/// Drops what is kept and was erased. Doing so twice does no more than doing it once.
pub async fn carry_out<S: Storage>(storage: &S, erasures: &[Erasure]) -> Result<(), StorageError> {
    let mut any = false;
    for (device, _) in storage.vector().await? {
        let mut next = Some(1);
        while let Some(from) = next {
            let page = storage.page(device, from, PAGE).await?;
            next = page.last().and_then(|last| last.sequence.checked_add(1));
            let frames = page
                .into_iter()
                .filter_map(|kept| Frame::parse(kept.bytes).ok());
            let gone = |frame: &Frame| erasures.iter().any(|erasure| erasure.covers(frame));
            let emptied: Vec<Frame> = frames
                .filter(|frame| !frame.is_emptied() && gone(frame))
                .map(|frame| frame.emptied())
                .collect();
            if !emptied.is_empty() {
                storage.empty(&emptied).await?;
                any = true;
            }
        }
    }
    if any {
        Ok(())
    } else {
        storage.empty(&[]).await
    }
}
