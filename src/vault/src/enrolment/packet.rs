//! The last message: everything that a device needs, sealed to it.

use super::EnrolmentError;
use super::message::{Message, take};
use crate::domains;
use crate::frame::PublicKey;
use crate::hpke::{self, Sealed};
use crate::ids::KeyId;
use crate::keys::{Epoch, Keys};
use crate::random::Source;
use crate::secret::Secret;
use ed25519_dalek::Signer;
use serde::{Deserialize, Serialize};
use serde_bytes::ByteBuf;
use sha2::{Digest, Sha256};
use zeroize::{Zeroize, ZeroizeOnDrop, Zeroizing};

/// 4: sealed to the new device and signed by the lead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Packet {
    sealed: Sealed,
    signature: [u8; 64],
}

/// What is inside.
#[derive(Serialize, Deserialize)]
pub(super) struct Payload {
    pub epochs: Vec<PlainEpoch>,
    /// The roll's statements, this device's admission the last.
    pub roll: Vec<ByteBuf>,
    #[serde(with = "serde_bytes")]
    pub recovery: Option<[u8; 32]>,
    pub relay: Option<String>,
}

/// An epoch key on its way.
#[derive(Serialize, Deserialize, Zeroize, ZeroizeOnDrop)]
pub(super) struct PlainEpoch {
    number: u32,
    #[zeroize(skip)]
    key_id: KeyId,
    roll: u64,
    #[serde(with = "serde_bytes")]
    key: [u8; 32],
}

impl From<&Epoch> for PlainEpoch {
    fn from(epoch: &Epoch) -> Self {
        Self {
            number: epoch.number,
            key_id: epoch.id,
            roll: epoch.roll,
            key: *epoch.key.bytes(),
        }
    }
}

impl From<&PlainEpoch> for Epoch {
    fn from(epoch: &PlainEpoch) -> Self {
        Self {
            number: epoch.number,
            id: epoch.key_id,
            roll: epoch.roll,
            key: Secret::from_bytes(epoch.key),
        }
    }
}

impl Packet {
    pub(super) fn seal(
        keys: &Keys,
        to: &[u8; 32],
        dialogue: &[u8; 32],
        payload: &Payload,
        source: &mut dyn Source,
    ) -> Result<Self, EnrolmentError> {
        // Room for the whole at once, so that growing leaves no copy of a key behind.
        let statements: usize = payload
            .roll
            .iter()
            .map(|statement| statement.len() + 8)
            .sum();
        let room = 1024 + payload.epochs.len() * 128 + statements;
        let mut plain = Zeroizing::new(Vec::with_capacity(room));
        ciborium::into_writer(payload, &mut *plain).expect("writing to memory can't fail");
        Self::around(keys, to, dialogue, &plain, source)
    }

    pub(super) fn around(
        keys: &Keys,
        to: &[u8; 32],
        dialogue: &[u8; 32],
        plain: &[u8],
        source: &mut dyn Source,
    ) -> Result<Self, EnrolmentError> {
        let info = info(dialogue);
        let sealed =
            hpke::seal(to, &info, &[1, Self::NUMBER], plain, source).map_err(
                |error| match error {
                    hpke::BoxError::NoRandomness(error) => error.into(),
                    hpke::BoxError::Key => EnrolmentError::Damaged,
                },
            )?;
        let signature = keys.signing().sign(&signed(dialogue, &sealed)).to_bytes();
        Ok(Self { sealed, signature })
    }

    /// Opens a packet of this lead, for this secret, in this enrolment.
    pub(super) fn open(
        &self,
        secret: &Secret,
        lead: &PublicKey,
        dialogue: &[u8; 32],
    ) -> Result<Payload, EnrolmentError> {
        if !lead.signed(&signed(dialogue, &self.sealed), &self.signature) {
            return Err(EnrolmentError::NotForUs);
        }
        let plain = hpke::open(secret, &info(dialogue), &[1, Self::NUMBER], &self.sealed)
            .map_err(|_| EnrolmentError::NotForUs)?;
        ciborium::from_reader(plain.as_slice()).map_err(|_| EnrolmentError::Senseless)
    }
}

fn info(dialogue: &[u8; 32]) -> Vec<u8> {
    domains::join(domains::ENROLMENT_PACKET, &[dialogue])
}

fn signed(dialogue: &[u8; 32], sealed: &Sealed) -> Vec<u8> {
    let ciphertext = Sha256::digest(&sealed.ciphertext);
    let parts = [dialogue.as_slice(), &sealed.enc, &ciphertext];
    domains::join(domains::ENROLMENT_SIGNATURE, &parts)
}

impl Message for Packet {
    const NUMBER: u8 = 4;

    fn inside(&self) -> Vec<u8> {
        let mut inside = self.sealed.enc.to_vec();
        inside.extend_from_slice(&self.signature);
        inside.extend_from_slice(&self.sealed.ciphertext);
        inside
    }

    fn read_inside(inside: &[u8]) -> Result<Self, EnrolmentError> {
        let mut rest = inside;
        let (enc, signature) = (take(&mut rest)?, take(&mut rest)?);
        Ok(Self {
            sealed: Sealed {
                enc,
                ciphertext: rest.to_vec(),
            },
            signature,
        })
    }
}
