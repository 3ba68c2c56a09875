//! Epochs: a new key when a device is removed, sealed to every device that stays.
//!
//! The frame of a new epoch is an *open* one: its outer seal is under a key that anybody can derive,
//! `HKDF-SHA256(vault id, info = "lightround v1 content epoch" || 0 || device id || key id)`, so that whoever has only the
//! recovery code can read it. Nothing secret stands in it: keys are in boxes of their own. Its header names the new epoch
//! and the new key's id. The payload is CBOR:
//!
//! ```text
//! { "number": u32, "key_id": 16 bytes,
//!   "roll": u64,                    how many statements the roll had
//!   "check": 32 bytes,              HKDF-SHA256(key, info = "lightround v1 epoch check" || 0 || vault id)
//!   "boxes": [ { "to": 32 bytes, "enc": 32 bytes, "sealed": 48 bytes } ],
//!   "recovery": 32 bytes / null,    the recovery code's public key, if one of the boxes is for it
//!   "older": [ { "number": u32, "key_id": 16 bytes, "roll": u64, "key": wrapped } ] }
//! ```
//!
//! A box holds the key, sealed by HPKE (RFC 9180, base mode) to the X25519 key `to`, with info `"lightround v1 epoch box" ||
//! 0 || vault id || number || key id || roll`, and nothing associated. `older` has the keys of all epochs before, so that one key reads
//! everything: each wrapped under `HKDF-SHA256(key, info = "lightround v1 epoch wrap" || 0 || vault id)`, with associated data
//! `"lightround v1 wrap older epoch" || 0 || vault id || key id || older number || older key id || older roll`.
//!
//! A frame may also be of an epoch that there is already: for somebody who lacks it (the recovery code, or a device that
//! came while the epoch began), or with older keys that weren't known when it began. `older` has the keys of all epochs before
//! which this one is written under, and no other.
//!
//! # Two leads at once
//!
//! Both may begin an epoch of the same number. Both are read. The one that is written under is the one with the longest
//! roll, then with the highest number, then with the smallest key id: every device comes to the same, in whatever order the
//! frames arrive. The longer roll knows of more removals, so nobody is written to whose removal one of the two leads knew
//! when it made the other's key; and where a removal is on the roll that the current epoch doesn't know of, another is due.
//! The number comes second, because a lead that was removed may have counted further than the one that removed it.

use super::content::open_content;
use super::{Epoch, Keys, OpenError, Proven, SealError};
use crate::domains;
use crate::frame::{Frame, Purpose};
use crate::hpke::{self, BoxError, Sealed};
use crate::ids::{KeyId, VaultId};
use crate::random::{NoRandomness, Source, System, draw};
use crate::secret::Secret;
use crate::wrap::Wrapped;
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use std::sync::Arc;

#[derive(Serialize, Deserialize)]
struct Payload {
    number: u32,
    key_id: KeyId,
    roll: u64,
    #[serde(with = "serde_bytes")]
    check: [u8; 32],
    boxes: Vec<Boxed>,
    #[serde(with = "serde_bytes")]
    recovery: Option<[u8; 32]>,
    older: Vec<Older>,
}

#[derive(Serialize, Deserialize)]
struct Boxed {
    #[serde(with = "serde_bytes")]
    to: [u8; 32],
    #[serde(with = "serde_bytes")]
    enc: [u8; 32],
    sealed: ByteBuf,
}

#[derive(Serialize, Deserialize)]
struct Older {
    number: u32,
    key_id: KeyId,
    roll: u64,
    key: Wrapped,
}

/// An epoch that was made and is not used yet: adopt it once its frame is kept.
pub struct NewEpoch {
    epoch: Arc<Epoch>,
}

/// What an epoch's frame says in the clear.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct EpochNotice {
    /// The key's id.
    pub key: KeyId,
    /// The public X25519 keys to which it is sealed.
    pub sealed_to: Vec<[u8; 32]>,
    /// The ids of the keys that it carries.
    pub carries: Vec<KeyId>,
    /// Whether this device can use it.
    pub ours: bool,
}

impl NewEpoch {
    /// The ids of the keys that it carries, sealed by these.
    pub fn carries(&self, keys: &Keys) -> Vec<KeyId> {
        let before = keys.epochs_before(&self.epoch);
        before.iter().map(|epoch| epoch.id).collect()
    }
}

impl Keys {
    /// Makes the next epoch's key. `roll` is how many statements the roll has.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn make_epoch(&self, roll: u64) -> Result<NewEpoch, NoRandomness> {
        self.make_epoch_from(roll, &mut System)
    }

    pub(crate) fn make_epoch_from(
        &self,
        roll: u64,
        source: &mut dyn Source,
    ) -> Result<NewEpoch, NoRandomness> {
        let epoch = Arc::new(Epoch {
            number: self.current().number.saturating_add(1),
            id: KeyId::from_bytes(draw(source)?),
            roll,
            key: Secret::make(source)?,
        });
        Ok(NewEpoch { epoch })
    }

    /// The epoch that is written under, to be sealed to somebody who lacks it.
    pub fn same_epoch(&self) -> NewEpoch {
        NewEpoch {
            epoch: self.current(),
        }
    }

    /// Seals an epoch to devices, by their public X25519 keys, and to the recovery code if there is one, as the next frame
    /// of this device's log.
    ///
    /// # Errors
    ///
    /// No randomness; a public key to which nothing can be sealed.
    pub fn seal_epoch(
        &self,
        after: &Proven,
        new: &NewEpoch,
        to: &[[u8; 32]],
    ) -> Result<(Frame, Proven), SealError> {
        let frame = self.seal_epoch_from(after, new, to, &mut System)?;
        let proven = Proven::after(&frame);
        Ok((frame, proven))
    }

    pub(crate) fn seal_epoch_from(
        &self,
        after: &Proven,
        NewEpoch { epoch }: &NewEpoch,
        to: &[[u8; 32]],
        source: &mut dyn Source,
    ) -> Result<Frame, SealError> {
        let (vault, recovery) = (self.vault(), self.recovery());
        let mut boxes = Vec::new();
        for to in to.iter().chain(&recovery) {
            let sealed = hpke::seal(to, &box_info(vault, epoch), &[], epoch.key.bytes(), source)
                .map_err(|error| match error {
                    BoxError::NoRandomness(error) => SealError::NoRandomness(error),
                    BoxError::Key => SealError::Key,
                })?;
            boxes.push(Boxed {
                to: *to,
                enc: sealed.enc,
                sealed: sealed.ciphertext.into(),
            });
        }
        let mut older = Vec::new();
        for old in self.epochs_before(epoch) {
            older.push(wrap_older(vault, epoch, &old, source)?);
        }
        let payload = Payload {
            number: epoch.number,
            key_id: epoch.id,
            roll: epoch.roll,
            check: check(vault, epoch),
            boxes,
            recovery,
            older,
        };
        let mut plain = Vec::new();
        ciborium::into_writer(&payload, &mut plain).expect("writing to memory can't fail");
        let content = open_content(vault, domains::CONTENT_EPOCH, self.device(), epoch.id);
        self.seal_in(
            epoch.number,
            Some(after.head()),
            Purpose::Epoch,
            epoch.id,
            &content,
            &plain,
            source,
        )
    }

    /// Uses an epoch from now on, whose frame is kept.
    pub fn adopt(&self, new: NewEpoch) {
        self.add_epoch(new.epoch, true);
    }

    /// Learns an epoch from its frame, with all that came before it. Who may make one is the roll's business: one that
    /// doesn't `count` is only read under.
    ///
    /// # Errors
    ///
    /// The frame holds something else or makes no sense; what it says of the keys that are here is not true.
    pub fn learn_epoch(&self, frame: &Frame, counts: bool) -> Result<EpochNotice, OpenError> {
        let payload = self.open_payload(frame)?;
        let own = self.exchange_public();
        let ours = match self.epoch(payload.number, payload.key_id) {
            Some(known) => {
                let key = Secret::from_bytes(*known.key.bytes());
                self.add_linked(payload.open_all(self.vault(), key)?, counts)?;
                true
            }
            None => match payload.boxed_for(&own) {
                Some(sealed) => {
                    let key = payload.unbox(self.vault(), self.exchange(), &sealed)?;
                    self.add_linked(payload.open_all(self.vault(), key)?, counts)?;
                    true
                }
                None => false,
            },
        };
        if let Some(recovery) = payload.recovery.filter(|_| ours && counts) {
            self.learn_recovery(payload.roll, payload.number, recovery);
        }
        Ok(EpochNotice {
            key: payload.key_id,
            sealed_to: payload.boxes.iter().map(|boxed| boxed.to).collect(),
            carries: payload.older.iter().map(|older| older.key_id).collect(),
            ours,
        })
    }

    /// Takes epochs that carry one that is here; others would be another vault's, or a lie.
    fn add_linked(&self, epochs: Vec<Epoch>, counts: bool) -> Result<(), OpenError> {
        let known: Vec<bool> = epochs
            .iter()
            .filter_map(|epoch| {
                let here = self.epoch(epoch.number, epoch.id)?;
                Some(here.key.bytes() == epoch.key.bytes())
            })
            .collect();
        if known.is_empty() || known.contains(&false) {
            return Err(OpenError::Opaque);
        }
        for epoch in epochs {
            self.add_epoch(Arc::new(epoch), counts);
        }
        Ok(())
    }

    fn open_payload(&self, frame: &Frame) -> Result<Payload, OpenError> {
        if frame.header().vault != self.vault() {
            return Err(OpenError::OtherVault);
        }
        Payload::read(frame)
    }
}

impl Payload {
    /// Reads an open frame.
    fn read(frame: &Frame) -> Result<Self, OpenError> {
        let header = frame.header();
        if header.purpose != Purpose::Epoch {
            return Err(OpenError::OtherPurpose);
        }
        let content = open_content(
            header.vault,
            domains::CONTENT_EPOCH,
            header.device,
            header.key,
        );
        let plain = super::seal::open_with(frame, &content)?;
        let payload: Self =
            ciborium::from_reader(plain.as_slice()).map_err(|_| OpenError::Opaque)?;
        let named = (payload.number, payload.key_id) == (header.epoch, header.key);
        named.then_some(payload).ok_or(OpenError::Opaque)
    }

    fn boxed_for(&self, public: &[u8; 32]) -> Option<Sealed> {
        let boxed = self.boxes.iter().find(|boxed| boxed.to == *public)?;
        Some(Sealed {
            enc: boxed.enc,
            ciphertext: boxed.sealed.to_vec(),
        })
    }

    /// The epoch, without its key.
    fn epoch(&self, key: Secret) -> Epoch {
        Epoch {
            number: self.number,
            id: self.key_id,
            roll: self.roll,
            key,
        }
    }

    /// The key in a box.
    fn unbox(&self, vault: VaultId, secret: &Secret, sealed: &Sealed) -> Result<Secret, OpenError> {
        let info = box_info(vault, &self.epoch(Secret::from_bytes([0; 32])));
        let key = hpke::open(secret, &info, &[], sealed).map_err(|_| OpenError::Opaque)?;
        let key = key.as_slice().try_into().map_err(|_| OpenError::Opaque)?;
        Ok(Secret::from_bytes(key))
    }

    /// The epoch with this key and all that it carries, oldest first.
    fn open_all(&self, vault: VaultId, key: Secret) -> Result<Vec<Epoch>, OpenError> {
        let epoch = self.epoch(key);
        if check(vault, &epoch) != self.check {
            return Err(OpenError::Opaque);
        }
        let mut epochs = Vec::with_capacity(self.older.len() + 1);
        for older in &self.older {
            let older = unwrap_older(vault, &epoch, older)?;
            // One that would be written under before this one has no place here.
            if older.rank() >= epoch.rank() {
                return Err(OpenError::Opaque);
            }
            epochs.push(older);
        }
        epochs.push(epoch);
        Ok(epochs)
    }
}

/// The epochs that a recovery code opens in a frame, oldest first; none where it opens nothing there.
pub(crate) fn recovered(frame: &Frame, secret: &Secret, public: &[u8; 32]) -> Option<Vec<Epoch>> {
    let payload = Payload::read(frame).ok()?;
    let sealed = payload.boxed_for(public)?;
    let vault = frame.header().vault;
    let key = payload.unbox(vault, secret, &sealed).ok()?;
    payload.open_all(vault, key).ok()
}

fn wrap_older(
    vault: VaultId,
    epoch: &Epoch,
    old: &Epoch,
    source: &mut dyn Source,
) -> Result<Older, NoRandomness> {
    let about = about(vault, epoch, (old.number, old.id, old.roll));
    let outer = wrap_key(vault, epoch);
    Ok(Older {
        number: old.number,
        key_id: old.id,
        roll: old.roll,
        key: Wrapped::wrap(&outer, &old.key, domains::WRAP_OLDER, &[&about], source)?,
    })
}

fn unwrap_older(vault: VaultId, epoch: &Epoch, older: &Older) -> Result<Epoch, OpenError> {
    let about = about(vault, epoch, (older.number, older.key_id, older.roll));
    let key = older
        .key
        .unwrap(&wrap_key(vault, epoch), domains::WRAP_OLDER, &[&about])
        .map_err(|_| OpenError::Opaque)?;
    Ok(Epoch {
        number: older.number,
        id: older.key_id,
        roll: older.roll,
        key,
    })
}

/// What an older epoch's wrap is bound to.
fn about(vault: VaultId, epoch: &Epoch, (number, id, roll): (u32, KeyId, u64)) -> Vec<u8> {
    [
        vault.as_bytes().as_slice(),
        epoch.id.as_bytes(),
        &number.to_be_bytes(),
        id.as_bytes(),
        &roll.to_be_bytes(),
    ]
    .concat()
}

fn wrap_key(vault: VaultId, epoch: &Epoch) -> Secret {
    let info = domains::join(domains::EPOCH_WRAP, &[vault.as_bytes()]);
    epoch.key.derive(&info)
}

fn check(vault: VaultId, epoch: &Epoch) -> [u8; 32] {
    let info = domains::join(domains::EPOCH_CHECK, &[vault.as_bytes()]);
    *epoch.key.derive(&info).bytes()
}

fn box_info(vault: VaultId, epoch: &Epoch) -> Vec<u8> {
    let parts = [
        vault.as_bytes().as_slice(),
        &epoch.number.to_be_bytes(),
        epoch.id.as_bytes(),
        &epoch.roll.to_be_bytes(),
    ];
    domains::join(domains::EPOCH_BOX, &parts)
}
