//! The new device's side.

use super::message::{Offer, Request, Reveal};
use super::packet::Packet;
use super::{EnrolmentError, NONCE, check_phrase, commitment, dialogue};
use crate::found;
use crate::ids::VaultId;
use crate::keyfile::KeyFile;
use crate::keys::{Epoch, Keys};
use crate::random::{Source, System, draw};
use crate::roll::{Role, Roll, Statement};
use crate::secret::Secret;
use crate::stretch::{SlotKey, StretchParams};
use ed25519_dalek::SigningKey;
use x25519_dalek::{PublicKey as ExchangePublic, StaticSecret};
use zeroize::Zeroizing;

/// A device that asks to come into a vault. Its keys are made here and leave it never.
pub struct Newcomer {
    seed: Secret,
    exchange: Secret,
    nonce: Zeroizing<[u8; NONCE]>,
    request: Request,
}

/// A device that has revealed its nonce and shows the phrase. It takes one lead's packet.
pub struct Acquainted {
    seed: Secret,
    exchange: Secret,
    request: Request,
    offer: Offer,
    reveal: Reveal,
}

/// A packet that was not taken, and the device that still waits for the right one.
pub struct Rejected {
    /// It goes on waiting.
    pub waiting: Acquainted,
    /// Why it was not taken.
    pub why: EnrolmentError,
}

/// A device that has everything but a passphrase of its own.
pub struct Arrival {
    keys: Keys,
    seed: Secret,
    name: String,
    /// What it may do.
    pub role: Role,
    /// The roll, this device's admission the last.
    pub roll: Vec<Statement>,
    /// Where the relay is, if there is one.
    pub relay: Option<String>,
}

impl Newcomer {
    /// Makes a new device's keys. `name` is what it is to be called, in at most 60 bytes.
    ///
    /// # Errors
    ///
    /// No name, or a longer one; no randomness.
    pub fn new(name: &str) -> Result<Self, EnrolmentError> {
        Self::new_from(name, &mut System)
    }

    pub(crate) fn new_from(name: &str, source: &mut dyn Source) -> Result<Self, EnrolmentError> {
        let (seed, exchange) = (Secret::make(source)?, Secret::make(source)?);
        let nonce = Zeroizing::new(draw(source)?);
        let signing = SigningKey::from_bytes(seed.bytes()).verifying_key().into();
        let public = ExchangePublic::from(&StaticSecret::from(*exchange.bytes())).to_bytes();
        let request = Request::new(signing, public, commitment(&nonce), name.trim())?;
        Ok(Self {
            seed,
            exchange,
            nonce,
            request,
        })
    }

    /// What to show to a lead.
    pub fn request(&self) -> &Request {
        &self.request
    }

    /// Takes a lead's offer and reveals the nonce: to one offer only, since a second could be chosen to fit.
    #[must_use]
    pub fn meet(self, offer: Offer) -> Acquainted {
        Acquainted {
            reveal: Reveal { nonce: *self.nonce },
            seed: self.seed,
            exchange: self.exchange,
            request: self.request,
            offer,
        }
    }
}

impl Acquainted {
    /// What to show to the lead.
    pub fn reveal(&self) -> &Reveal {
        &self.reveal
    }

    /// The vault that it is about to come into.
    pub fn vault(&self) -> VaultId {
        self.offer.vault
    }

    /// What both devices must show.
    pub fn phrase(&self) -> String {
        check_phrase(&self.dialogue())
    }

    fn dialogue(&self) -> [u8; 32] {
        dialogue(&self.request, &self.offer, &self.reveal)
    }

    /// Takes the packet.
    ///
    /// # Errors
    ///
    /// It is another's, altered, or makes no sense; the device then still waits.
    pub fn take(self, packet: &Packet) -> Result<Arrival, Box<Rejected>> {
        match self.opened(packet) {
            Ok((epochs, statements, role, recovery, relay)) => {
                let signing = SigningKey::from_bytes(self.seed.bytes());
                let keys = Keys::new(self.offer.vault, signing, self.exchange, epochs);
                Ok(Arrival {
                    keys: keys.recovered_by(recovery),
                    seed: self.seed,
                    name: self.request.name().to_owned(),
                    role,
                    roll: statements,
                    relay,
                })
            }
            Err(why) => Err(Box::new(Rejected { waiting: self, why })),
        }
    }

    fn opened(&self, packet: &Packet) -> Result<Opened, EnrolmentError> {
        let payload = packet.open(&self.exchange, &self.offer.lead, &self.dialogue())?;
        let epochs: Vec<Epoch> = payload.epochs.iter().map(Epoch::from).collect();
        if !found::are_epochs(&epochs) {
            return Err(EnrolmentError::Senseless);
        }
        let kept = payload.roll.iter().map(|bytes| Statement::parse(bytes));
        let statements: Vec<Statement> = kept
            .collect::<Result<_, _>>()
            .map_err(|_| EnrolmentError::Senseless)?;
        let read = Roll::read(self.offer.vault, &statements)?;
        let (lead, own) = (self.offer.lead.device(), self.request.signing.device());
        match (read.role(lead), read.role(own)) {
            (Some(Role::Lead), Some(role)) => {
                Ok((epochs, statements, role, payload.recovery, payload.relay))
            }
            _ => Err(EnrolmentError::Senseless),
        }
    }
}

/// Epochs, roll, role, recovery key, relay.
type Opened = (
    Vec<Epoch>,
    Vec<Statement>,
    Role,
    Option<[u8; 32]>,
    Option<String>,
);

impl Arrival {
    /// Makes the device's key file. `slot_key` comes of its own passphrase by [`stretch`](crate::stretch::stretch) with
    /// `params`.
    ///
    /// # Errors
    ///
    /// No randomness; parameters out of range.
    pub fn keep(
        self,
        slot_key: &SlotKey,
        params: StretchParams,
    ) -> Result<(KeyFile, Keys), EnrolmentError> {
        let file = found::key_file(&self.keys, &self.seed, slot_key, params, &self.name)?;
        Ok((file, self.keys))
    }
}
