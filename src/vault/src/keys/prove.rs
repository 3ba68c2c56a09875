//! Proof that these keys are the right ones to go on with.
//!
//! Writing under the wrong key is the commonest disaster of encrypted logs: everything seems to work and nothing that was
//! written can ever be read with the rest. So [`Keys::seal`] wants a [`Proven`], and there are two ways to one: begin a
//! new log, or open a frame that is already there.

use super::Keys;
use crate::frame::{Frame, Purpose};
use crate::ids::Head;

/// These keys have opened this log, and its newest frame is this one.
#[derive(Debug, PartialEq, Eq)]
pub struct Proven {
    head: Head,
}

/// Why keys are not proven against a log.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ProofError {
    /// A frame of another device or another vault.
    #[error("the newest frame is not this device's own")]
    NotOurs,
    /// The newest frame is not signed by this device.
    #[error("the newest frame is not signed by this device")]
    Unsigned,
    /// The witness doesn't open with the key that would be written under.
    #[error("the key that would be written under doesn't open what is already there")]
    WrongKey,
}

impl Proven {
    /// The log's newest frame.
    pub fn head(&self) -> Head {
        self.head
    }

    pub(super) fn after(frame: &Frame) -> Self {
        Self { head: frame.head() }
    }
}

impl Keys {
    /// Proves the keys: `newest` is the newest frame of this device's log and signed by it, and `witness`, any frame of the
    /// same log under an epoch's key, opens. The epoch that is written under may be a later one: it is only ever learnt with
    /// the keys of those before it.
    ///
    /// Two frames, because the newest one may be about a person whose key was erased.
    ///
    /// # Errors
    ///
    /// Another device's or vault's frame; a bad signature; a witness that doesn't open.
    pub fn prove(&self, witness: &Frame, newest: &Frame) -> Result<Proven, ProofError> {
        let ours =
            |frame: &Frame| frame.device() == self.device() && frame.header().vault == self.vault();
        if !ours(witness) || !ours(newest) || witness.sequence() > newest.sequence() {
            return Err(ProofError::NotOurs);
        }
        newest
            .verify(&self.public())
            .map_err(|_| ProofError::Unsigned)?;
        if !self.opens(witness) {
            return Err(ProofError::WrongKey);
        }
        Ok(Proven {
            head: newest.head(),
        })
    }

    fn opens(&self, witness: &Frame) -> bool {
        let known = !matches!(witness.header().purpose, Purpose::Later(_));
        known && self.open_epoch(witness, witness.header().purpose).is_ok()
    }
}
