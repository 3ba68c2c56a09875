//! Places and rounds: each change is planned upon what the one before has written, so that two quick taps make one history.

use super::Door;
use crate::edge::clock::new_id;
use leptos::prelude::*;
use record::home_list::{Listed, ToWrite};
use record::{
    Kit, PersonId, Place, PlaceDetails, PlaceId, Planned, RecordError, RoundDetails, RoundId,
    Story, Visit,
};

impl Door {
    /// Writes a place down: a new one, or the details of one that is known.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn put_place(
        self,
        place: Option<PlaceId>,
        details: PlaceDetails,
    ) -> Result<PlaceId, String> {
        let place = place.unwrap_or_else(|| PlaceId::from_uuid(new_id()));
        self.change(|story| Ok(vec![about_nobody(story.put_place(place, details))]))
            .await?;
        Ok(place)
    }

    /// Makes a round, and its place where that is not written down yet: both or neither.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn make_round(
        self,
        mut details: RoundDetails,
        new_place: Option<String>,
    ) -> Result<RoundId, String> {
        let round = RoundId::from_uuid(new_id());
        self.change(|story| {
            let mut writes = Vec::new();
            if let Some(name) = new_place {
                let known = story.place_called(&name).map(Place::id);
                let place = known.unwrap_or_else(|| PlaceId::from_uuid(new_id()));
                details.place = Some(place);
                let named = PlaceDetails {
                    name,
                    ..PlaceDetails::default()
                };
                if known.is_none() {
                    writes.push(about_nobody(story.put_place(place, named)));
                }
            }
            writes.push(about_nobody(story.put_round(round, details)));
            Ok(writes)
        })
        .await?;
        Ok(round)
    }

    /// Changes a round as it stands by then. What changes nothing, and settles nothing, is not written.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn change_round(
        self,
        round: RoundId,
        change: impl FnOnce(&Story, &mut RoundDetails),
    ) -> Result<(), String> {
        self.change(|story| {
            let known = story.round(&round).ok_or(RecordError::NoSuchRound(round))?;
            let mut details = known.details().clone();
            change(story, &mut details);
            let settled = known.versions().settled();
            if settled.is_some_and(|version| *version.value == details) {
                return Ok(Vec::new());
            }
            Ok(vec![about_nobody(story.put_round(round, details))])
        })
        .await
    }

    /// Writes down what became of a visit, given what was written before.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn mark_visit(
        self,
        round: RoundId,
        person: PersonId,
        visit: impl FnOnce(Option<&Visit>) -> Visit,
    ) -> Result<(), String> {
        self.change(|story| {
            let known = story.round(&round).ok_or(RecordError::NoSuchRound(round))?;
            let earlier = known.visit(&person).map(|version| version.value);
            Ok(vec![ToWrite {
                planned: story.mark_visit(&round, person, visit(earlier))?,
                about: Some(person),
            }])
        })
        .await
    }

    /// Changes the kit list.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn change_kit(self, change: impl FnOnce(&mut Kit)) -> Result<(), String> {
        self.change(|story| {
            let mut kit = story.kit();
            change(&mut kit);
            Ok(vec![about_nobody(story.put_kit(kit))])
        })
        .await
    }

    /// Ticks an item of the kit for a round, or takes the tick off.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn pack(self, round: RoundId, item: String, ticked: bool) -> Result<(), String> {
        self.change(|story| {
            let known = story.round(&round).ok_or(RecordError::NoSuchRound(round))?;
            let mut items = known.packed().to_vec();
            items.retain(|other| *other != item);
            if ticked {
                items.push(item);
            }
            Ok(vec![about_nobody(story.pack(&round, items)?)])
        })
        .await
    }

    /// Takes the good rows of a list that a place sent: people, place and round in one go, all of it or none.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn take_list(
        self,
        place: PlaceId,
        rows: Vec<Listed>,
        round: Option<RoundId>,
    ) -> Result<(), String> {
        self.change(|story| {
            let details = story.place(&place).map(|place| place.details().clone());
            let details = details.unwrap_or_default();
            let new = || PersonId::from_uuid(new_id());
            let mut taken = story.take_list(place, &details, &rows, new);
            if let Some(known) = round.and_then(|round| story.round(&round)) {
                let mut details = known.details().clone();
                details.add(taken.people);
                let planned = story.put_round(known.id(), details);
                taken.writes.push(about_nobody(planned));
            }
            Ok(taken.writes)
        })
        .await
    }

    /// Plans upon what the change before has written, and writes.
    pub(super) async fn change(
        self,
        plan: impl FnOnce(&Story) -> Result<Vec<ToWrite>, RecordError>,
    ) -> Result<(), String> {
        let open = self.held()?;
        let _turn = open.changing.lock().await;
        let writes = self
            .story()
            .with_untracked(plan)
            .map_err(|error| error.to_string())?;
        self.write_all(writes, &[]).await
    }
}

const fn about_nobody(planned: Planned) -> ToWrite {
    ToWrite {
        planned,
        about: None,
    }
}
