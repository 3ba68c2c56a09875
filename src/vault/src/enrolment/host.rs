//! The lead's side.

use super::message::{Offer, Request, Reveal};
use super::packet::{Packet, Payload};
use super::{EnrolmentError, check_phrase, commitment, dialogue};
use crate::ids::VaultId;
use crate::keys::Keys;
use crate::random::{Source, System, draw};
use crate::roll::{Change, Role, Roll, Statement};
use serde_bytes::ByteBuf;

/// A lead that has a request and shows its offer.
pub struct Host {
    request: Request,
    offer: Offer,
}

/// A lead that has heard everything. It waits for somebody to say that both devices show the same phrase.
pub struct Checked {
    request: Request,
    dialogue: [u8; 32],
    vault: VaultId,
}

/// What a new device comes in with.
#[derive(Clone, Copy, Debug)]
pub struct Terms<'a> {
    /// What it may do.
    pub role: Role,
    /// The roll as it is; empty where the vault has none yet.
    pub roll: &'a [Statement],
    /// Where the relay is, if there is one.
    pub relay: Option<&'a str>,
}

impl Host {
    /// Takes a request.
    ///
    /// # Errors
    ///
    /// No randomness.
    pub fn receive(keys: &Keys, request: Request) -> Result<Self, EnrolmentError> {
        Self::receive_from(keys, request, &mut System)
    }

    pub(crate) fn receive_from(
        keys: &Keys,
        request: Request,
        source: &mut dyn Source,
    ) -> Result<Self, EnrolmentError> {
        let offer = Offer {
            vault: keys.vault(),
            lead: keys.public(),
            nonce: draw(source)?,
        };
        Ok(Self { request, offer })
    }

    /// What to show to the new device.
    pub fn offer(&self) -> &Offer {
        &self.offer
    }

    /// What the new device calls itself.
    pub fn name(&self) -> &str {
        self.request.name()
    }

    /// Takes the new device's nonce. Where it is not the one that was committed to, all begins anew.
    ///
    /// # Errors
    ///
    /// Another nonce.
    pub fn check(self, reveal: &Reveal) -> Result<Checked, EnrolmentError> {
        if commitment(&reveal.nonce) != self.request.commitment {
            return Err(EnrolmentError::Commitment);
        }
        Ok(Checked {
            dialogue: dialogue(&self.request, &self.offer, reveal),
            vault: self.offer.vault,
            request: self.request,
        })
    }
}

impl Checked {
    /// What both devices must show.
    pub fn phrase(&self) -> String {
        check_phrase(&self.dialogue)
    }

    /// What the new device calls itself.
    pub fn name(&self) -> &str {
        self.request.name()
    }

    /// Admits the device, once somebody has seen the same phrase on both: seals the packet for it, and gives the statements
    /// that are to be added to the roll. Keep those before the packet is shown.
    ///
    /// Where the phrases differ, drop this instead: nothing has left this device.
    ///
    /// # Errors
    ///
    /// This device may not admit another; no randomness.
    pub fn admit(
        self,
        keys: &Keys,
        terms: Terms<'_>,
    ) -> Result<(Packet, Vec<Statement>), EnrolmentError> {
        self.admit_from(keys, terms, &mut System)
    }

    /// A packet around any plain text at all, as a lead could make it who wishes the new device ill.
    ///
    /// # Errors
    ///
    /// No randomness.
    #[cfg(feature = "sample")]
    pub fn admit_with(&self, keys: &Keys, plain: &[u8]) -> Result<Packet, EnrolmentError> {
        let to = &self.request.exchange;
        Packet::around(keys, to, &self.dialogue, plain, &mut System)
    }

    pub(crate) fn admit_from(
        self,
        keys: &Keys,
        terms: Terms<'_>,
        source: &mut dyn Source,
    ) -> Result<(Packet, Vec<Statement>), EnrolmentError> {
        let mut roll = Roll::read(self.vault, terms.roll)?;
        let mut added = Vec::new();
        if roll.length() == 0 {
            added.push(keys.state(&roll, keys.public(), Change::Admit(Role::Lead))?);
            roll.add(&added[0])?;
        }
        added.push(keys.state(&roll, self.request.signing, Change::Admit(terms.role))?);
        let statements = terms.roll.iter().chain(&added);
        let payload = Payload {
            epochs: keys
                .epochs_to_give()
                .iter()
                .map(|epoch| (&**epoch).into())
                .collect(),
            roll: statements
                .map(|statement| ByteBuf::from(statement.bytes()))
                .collect(),
            recovery: keys.recovery(),
            relay: terms.relay.map(str::to_owned),
        };
        let to = &self.request.exchange;
        let packet = Packet::seal(keys, to, &self.dialogue, &payload, source)?;
        Ok((packet, added))
    }
}
