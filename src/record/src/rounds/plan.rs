//! What an entry about a place, a round or the kit would have to say, and what it would replace. Pure.

use super::{
    Kit, PackedEntry, PlaceDetails, PlaceEntry, Round, RoundDetails, RoundEntry, Visit, VisitEntry,
};
use crate::body::Body;
use crate::error::RecordError;
use crate::ids::{EntryId, PersonId, PlaceId, RoundId};
use crate::lane::Lane;
use crate::plan::Planned;
use crate::story::Story;

impl Story {
    /// Writes a place down: a new one, or new details in place of all present versions.
    pub fn put_place(&self, place: PlaceId, details: PlaceDetails) -> Planned {
        let lane = self.place(&place).map(|known| &known.lane);
        Planned {
            body: Body::Place(PlaceEntry { place, details }),
            parents: ids(lane),
        }
    }

    /// Writes a round down: a new one, or new details in place of all present versions. Nobody stands on it twice.
    pub fn put_round(&self, round: RoundId, details: RoundDetails) -> Planned {
        let lane = self.round(&round).map(|known| &known.lane);
        let details = details.each_once();
        Planned {
            body: Body::Round(RoundEntry { round, details }),
            parents: ids(lane),
        }
    }

    /// Writes down what became of a visit.
    ///
    /// # Errors
    /// [`RecordError::NoSuchRound`], [`RecordError::NotOnRound`].
    pub fn mark_visit(
        &self,
        round: &RoundId,
        person: PersonId,
        visit: Visit,
    ) -> Result<Planned, RecordError> {
        let known = self.known_round(round)?;
        if !known.details().people.contains(&person) {
            return Err(RecordError::NotOnRound);
        }
        let earlier = known.visits.get(&person);
        Ok(Planned {
            body: Body::Visit(VisitEntry {
                round: *round,
                person,
                visit,
            }),
            parents: ids(earlier.or(Some(&known.lane))),
        })
    }

    /// Writes down what of the kit is in the bag for a round.
    ///
    /// # Errors
    /// [`RecordError::NoSuchRound`].
    pub fn pack(&self, round: &RoundId, items: Vec<String>) -> Result<Planned, RecordError> {
        let known = self.known_round(round)?;
        let earlier = ids(Some(&known.packed));
        Ok(Planned {
            body: Body::Packed(PackedEntry {
                round: *round,
                items,
            }),
            parents: if earlier.is_empty() {
                ids(Some(&known.lane))
            } else {
                earlier
            },
        })
    }

    /// Writes the kit list in place of all present versions.
    pub fn put_kit(&self, kit: Kit) -> Planned {
        Planned {
            body: Body::Kit(kit),
            parents: ids(Some(&self.kit)),
        }
    }

    fn known_round(&self, round: &RoundId) -> Result<&Round, RecordError> {
        self.round(round).ok_or(RecordError::NoSuchRound(*round))
    }
}

fn ids(lane: Option<&Lane>) -> Vec<EntryId> {
    lane.into_iter().flat_map(Lane::head_ids).collect()
}
