//! Recovery without any device: from the recovery code and a copy of the frames.

use crate::found::{self, FoundError};
use crate::frame::{Frame, Purpose};
use crate::ids::VaultId;
use crate::keyfile::KeyFile;
use crate::keys::{Epoch, Keys, recovered};
use crate::random::{NoRandomness, System};
use crate::recovery::RecoveryCode;
use crate::secret::Secret;
use crate::stretch::{SlotKey, StretchParams};
use ed25519_dalek::SigningKey;
use std::collections::BTreeMap;

/// Why nothing was recovered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RecoverError {
    /// No frame is sealed to this code.
    #[error("this code opens nothing in these records: another sheet may be theirs")]
    OtherCode,
    /// What is sealed to the code was not written by a device of the vault.
    #[error("what this code opens was not written by a tablet of these records")]
    NotGenuine,
    /// No random numbers.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
}

/// A new device with every key of the vault. It is on no roll: a lead has to admit it, where there still is one.
pub struct Recovered {
    keys: Keys,
    seed: Secret,
}

/// Gets the keys of a vault from its recovery code and its frames, for a device with new keys of its own.
///
/// # Errors
///
/// The code opens nothing in the frames, or something that no device of the vault wrote; no randomness.
pub fn recover(
    code: &RecoveryCode,
    vault: VaultId,
    frames: &[Frame],
) -> Result<Recovered, RecoverError> {
    let (secret, public) = (code.exchange(vault), code.exchange_public(vault));
    let frames = || frames.iter().filter(|frame| frame.header().vault == vault);
    let mut opened: Vec<(&Frame, Vec<Epoch>)> = frames()
        .filter(|frame| frame.header().purpose == Purpose::Epoch)
        .filter_map(|frame| Some((frame, recovered(frame, &secret, &public)?)))
        .collect();
    if opened.is_empty() {
        return Err(RecoverError::OtherCode);
    }
    opened.sort_by_key(|(frame, _)| std::cmp::Reverse(frame.header().epoch));
    let first: BTreeMap<_, &Frame> = frames()
        .filter(|frame| frame.sequence() == 1)
        .map(|frame| (frame.device(), frame))
        .collect();
    for (frame, epochs) in opened {
        if !found::are_epochs(&epochs) {
            continue;
        }
        let seed = Secret::make(&mut System)?;
        let signing = SigningKey::from_bytes(seed.bytes());
        let keys = Keys::new(vault, signing, Secret::make(&mut System)?, epochs)
            .recovered_by(Some(public));
        // Whoever made this epoch introduced itself under one of its keys, and signed the frame.
        let maker = first.get(&frame.device()).copied();
        let maker = maker.and_then(|first| keys.open_introduction(first).ok());
        if maker.is_some_and(|maker| frame.verify(&maker.signing).is_ok()) {
            return Ok(Recovered { keys, seed });
        }
    }
    Err(RecoverError::NotGenuine)
}

impl Recovered {
    /// The keys for reading, by somebody who keeps nothing: no key file is made, so this device never was one.
    pub fn into_keys(self) -> Keys {
        self.keys
    }

    /// Makes the new device's key file. `slot_key` comes of its passphrase by [`stretch`](crate::stretch::stretch) with
    /// `params`.
    ///
    /// # Errors
    ///
    /// No randomness; parameters out of range.
    pub fn keep(
        self,
        slot_key: &SlotKey,
        params: StretchParams,
        device_name: &str,
    ) -> Result<(KeyFile, Keys), FoundError> {
        let file = found::key_file(&self.keys, &self.seed, slot_key, params, device_name)?;
        Ok((file, self.keys))
    }
}
