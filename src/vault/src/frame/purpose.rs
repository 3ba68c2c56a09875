//! What a frame is for.

use crate::domains;

/// What a frame holds; part of its header and of what its key is derived for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Purpose {
    /// 1: a device's public keys and name. The first frame of every log; a later one tells a new name.
    Introduction,
    /// 2: a person's key, wrapped under the epoch key.
    PersonKey,
    /// 3: an entry, under the epoch's key or a person's.
    Entry,
    /// 4: a new epoch's key, sealed to devices. Only a lead writes it.
    Epoch,
    /// 5: a person is erased. Only a lead writes it.
    Erasure,
    /// Any other: written by a later version, carried unread.
    Later(u8),
}

impl Purpose {
    /// Its byte in the header, never 0.
    pub fn byte(self) -> u8 {
        match self {
            Self::Introduction => 1,
            Self::PersonKey => 2,
            Self::Entry => 3,
            Self::Epoch => 4,
            Self::Erasure => 5,
            Self::Later(byte) => byte,
        }
    }

    /// The purpose of a byte; none for 0.
    pub fn from_byte(byte: u8) -> Option<Self> {
        match byte {
            0 => None,
            1 => Some(Self::Introduction),
            2 => Some(Self::PersonKey),
            3 => Some(Self::Entry),
            4 => Some(Self::Epoch),
            5 => Some(Self::Erasure),
            later => Some(Self::Later(later)),
        }
    }

    /// Whether only a lead may write it.
    pub fn is_a_leads(self) -> bool {
        matches!(self, Self::Epoch | Self::Erasure)
    }

    /// The domain of the content key derived from an epoch key; none where this version derives none.
    pub(crate) fn epoch_domain(self) -> Option<&'static str> {
        match self {
            Self::Introduction => Some(domains::CONTENT_INTRODUCTION),
            Self::PersonKey => Some(domains::CONTENT_PERSON_KEY),
            Self::Entry => Some(domains::CONTENT_ENTRY),
            Self::Epoch | Self::Erasure | Self::Later(_) => None,
        }
    }
}
