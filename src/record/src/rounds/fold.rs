//! Entries about places and rounds, each put in its place. An entry about a visit rests on its round.

use std::sync::Arc;

use super::{Place, Round};
use crate::body::Body;
use crate::entry::Entry;
use crate::ids::{PlaceId, RoundId};
use crate::lane::Lane;
use crate::story::Story;

impl Story {
    pub(crate) fn fold_place(&mut self, id: PlaceId, entry: Entry) {
        let place = self.places.entry(id).or_insert_with(|| Place {
            id,
            lane: Lane::default(),
        });
        place.lane.take(Arc::new(entry));
    }

    pub(crate) fn fold_into_round(&mut self, id: RoundId, entry: Entry) {
        let round = self.rounds.entry(id).or_insert_with(|| Round {
            id,
            lane: Lane::default(),
            visits: std::collections::BTreeMap::new(),
            packed: Lane::default(),
        });
        let lane = match &entry.body {
            Body::Visit(written) => round.visits.entry(written.person).or_default(),
            Body::Packed(_) => &mut round.packed,
            _ => &mut round.lane,
        };
        lane.take(Arc::new(entry));
    }
}
