//! What entries about places and rounds say, as it is kept and as it stands on the wire.

use serde::{Deserialize, Serialize};

use super::{PlaceDetails, RoundDetails, Visit};
use crate::ids::{PersonId, PlaceId, RoundId};

/// A place, whole.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PlaceEntry {
    /// Which.
    pub place: PlaceId,
    /// Everything known of it.
    pub details: PlaceDetails,
}

/// A round, whole.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct RoundEntry {
    /// Which.
    pub round: RoundId,
    /// Everything planned for it.
    pub details: RoundDetails,
}

/// What became of the visit to one person on a round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct VisitEntry {
    /// The round.
    pub round: RoundId,
    /// Whose visit.
    pub person: PersonId,
    /// What became of it.
    pub visit: Visit,
}

/// What of the kit is in the bag for a round, whole.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PackedEntry {
    /// The round.
    pub round: RoundId,
    /// The items that were ticked, in the words of the kit list.
    pub items: Vec<String>,
}
