//! The messages that stand in the clear.

use super::{EnrolmentError, NONCE};
use crate::frame::PublicKey;
use crate::ids::VaultId;
use crate::signs;

const FORMAT: u8 = 1;
/// Bytes of the longest name.
const LONGEST_NAME: usize = 60;

/// A message of an enrolment, to be shown as a picture or as lines of signs.
pub trait Message: Sized {
    /// Its number among the four.
    const NUMBER: u8;

    /// What stands after format and number.
    fn inside(&self) -> Vec<u8>;

    /// Reads what stands after format and number.
    ///
    /// # Errors
    ///
    /// It makes no sense.
    fn read_inside(inside: &[u8]) -> Result<Self, EnrolmentError>;

    /// The bytes for a picture.
    fn bytes(&self) -> Vec<u8> {
        [[FORMAT, Self::NUMBER].as_slice(), &self.inside()].concat()
    }

    /// Reads the bytes of a picture.
    ///
    /// # Errors
    ///
    /// Not this message, or a damaged one.
    fn parse(bytes: &[u8]) -> Result<Self, EnrolmentError> {
        match *bytes {
            [FORMAT, number, ref inside @ ..] if number == Self::NUMBER => {
                Self::read_inside(inside)
            }
            [FORMAT, 1..=4, ..] => Err(EnrolmentError::OtherMessage),
            [FORMAT, ..] | [] => Err(EnrolmentError::Damaged),
            _ => Err(EnrolmentError::Format),
        }
    }

    /// Lines of signs, for typing, or for a picture of capitals and digits. Each has a check sign.
    fn lines(&self) -> Vec<String> {
        signs::lines(&self.bytes())
    }

    /// Reads what was typed.
    ///
    /// # Errors
    ///
    /// The line with a slip; not this message.
    fn read(text: &str) -> Result<Self, EnrolmentError> {
        Self::parse(&signs::read_lines(text)?)
    }
}

/// 1: a device asks to come in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Request {
    /// Its public signing key.
    pub signing: PublicKey,
    /// Its public X25519 key.
    pub exchange: [u8; 32],
    /// The hash of the nonce that it will reveal.
    pub commitment: [u8; 32],
    name: String,
}

impl Request {
    pub(super) fn new(
        signing: PublicKey,
        exchange: [u8; 32],
        commitment: [u8; 32],
        name: &str,
    ) -> Result<Self, EnrolmentError> {
        if name.trim().is_empty() || name.len() > LONGEST_NAME {
            return Err(EnrolmentError::Name);
        }
        Ok(Self {
            signing,
            exchange,
            commitment,
            name: name.to_owned(),
        })
    }

    /// What it is called.
    pub fn name(&self) -> &str {
        &self.name
    }
}

impl Message for Request {
    const NUMBER: u8 = 1;

    fn inside(&self) -> Vec<u8> {
        let name = self.name.as_bytes();
        let mut inside = self.signing.bytes().to_vec();
        inside.extend_from_slice(&self.exchange);
        inside.extend_from_slice(&self.commitment);
        inside.push(name.len() as u8);
        inside.extend_from_slice(name);
        inside
    }

    fn read_inside(inside: &[u8]) -> Result<Self, EnrolmentError> {
        let mut rest = inside;
        let signing = PublicKey::from_bytes(&take(&mut rest)?).ok_or(EnrolmentError::Damaged)?;
        let (exchange, commitment) = (take(&mut rest)?, take(&mut rest)?);
        let [length] = take(&mut rest)?;
        if rest.len() != usize::from(length) {
            return Err(EnrolmentError::Damaged);
        }
        let name = std::str::from_utf8(rest).map_err(|_| EnrolmentError::Damaged)?;
        Self::new(signing, exchange, commitment, name).map_err(|_| EnrolmentError::Damaged)
    }
}

/// 2: a lead's answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Offer {
    /// The vault.
    pub vault: VaultId,
    /// The lead's public signing key.
    pub lead: PublicKey,
    pub(super) nonce: [u8; NONCE],
}

impl Message for Offer {
    const NUMBER: u8 = 2;

    fn inside(&self) -> Vec<u8> {
        [
            self.vault.as_bytes().as_slice(),
            &self.lead.bytes(),
            &self.nonce,
        ]
        .concat()
    }

    fn read_inside(inside: &[u8]) -> Result<Self, EnrolmentError> {
        let mut rest = inside;
        let offer = Self {
            vault: VaultId::from_bytes(take(&mut rest)?),
            lead: PublicKey::from_bytes(&take(&mut rest)?).ok_or(EnrolmentError::Damaged)?,
            nonce: take(&mut rest)?,
        };
        ended(rest).map(|()| offer)
    }
}

/// 3: the new device's nonce.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reveal {
    pub(super) nonce: [u8; NONCE],
}

impl Message for Reveal {
    const NUMBER: u8 = 3;

    fn inside(&self) -> Vec<u8> {
        self.nonce.to_vec()
    }

    fn read_inside(inside: &[u8]) -> Result<Self, EnrolmentError> {
        let mut rest = inside;
        let nonce = take(&mut rest)?;
        ended(rest).map(|()| Self { nonce })
    }
}

/// The next `N` bytes.
pub(super) fn take<const N: usize>(rest: &mut &[u8]) -> Result<[u8; N], EnrolmentError> {
    let (taken, after) = rest.split_first_chunk().ok_or(EnrolmentError::Damaged)?;
    *rest = after;
    Ok(*taken)
}

fn ended(rest: &[u8]) -> Result<(), EnrolmentError> {
    if rest.is_empty() {
        Ok(())
    } else {
        Err(EnrolmentError::Damaged)
    }
}
