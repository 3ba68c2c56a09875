//! Who a person is: name, birth, where to find them, whom to ask, what they look at.

mod alike;
mod born;
mod details;
mod families;
mod known_by;
mod looks_at;
mod name;
mod same;
mod told;

pub use born::Born;
pub use details::PersonDetails;
pub use families::Families;
pub use known_by::{Contact, Doctor, Identifier};
pub use looks_at::{LOOKED_AT, LooksAt, NoDistance};
pub use name::Name;
pub(crate) use same::Joins;
pub use same::{Apart, Joined, Same};
pub use told::{Told, ToldOn};

use crate::body::Body;
use crate::entry::Entry;
use crate::ids::PersonId;
use crate::lane::{Heads, Lane, Version};

/// A person as the entries tell it.
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    pub(crate) id: PersonId,
    pub(crate) lane: Lane,
}

impl Person {
    /// The person's name on the wire.
    pub const fn id(&self) -> PersonId {
        self.id
    }

    /// The versions of the details that nothing has replaced: one, or several that nobody has settled.
    pub fn versions(&self) -> Heads<'_, PersonDetails> {
        let version = |entry| {
            Some(Version {
                entry,
                value: details(entry)?,
            })
        };
        Heads::from_versions(self.lane.heads().filter_map(version).collect())
    }

    /// Every version of the details ever written, in order of their entries' ids.
    pub(crate) fn every_version(&self) -> impl Iterator<Item = Version<'_, PersonDetails>> {
        self.lane.all().filter_map(|entry| {
            Some(Version {
                entry,
                value: details(entry)?,
            })
        })
    }

    /// The details to show: of several unsettled versions the one written last.
    ///
    /// # Panics
    /// Never: the fold puts nobody on record without details, and a version is replaced only by another.
    pub fn details(&self) -> &PersonDetails {
        let latest = self.versions().latest();
        latest
            .expect("a person is on record from the first version of the details on")
            .value
    }
}

fn details(entry: &Entry) -> Option<&PersonDetails> {
    match &entry.body {
        Body::Person { details, .. } => Some(details),
        _ => None,
    }
}
