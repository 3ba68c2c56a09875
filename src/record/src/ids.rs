//! Identifiers: a newtype for each, so that a person's can't be used where an exam's is meant.
//!
//! This crate draws no randomness: whoever writes makes a time-ordered UUID (version 7) and passes it in.

use std::fmt;

use serde::{Deserialize, Serialize};
use uuid::Uuid;

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        impl $name {
            /// Takes an identifier made elsewhere.
            pub const fn from_uuid(uuid: Uuid) -> Self {
                Self(uuid)
            }

            /// The bare identifier.
            pub const fn as_uuid(&self) -> &Uuid {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

id! {
    /// Names one entry: one immutable thing written down.
    EntryId
}
id! {
    /// Names a person who is examined.
    PersonId
}
id! {
    /// Names one examination of one person.
    ExamId
}
id! {
    /// Names a home or an address where people are visited.
    PlaceId
}
id! {
    /// Names one round: a day's list of people.
    RoundId
}

/// Names the tablet or browser that wrote an entry: the first 16 bytes of SHA-256 of its public signing key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct DeviceId(#[serde(with = "serde_bytes")] pub [u8; 16]);
