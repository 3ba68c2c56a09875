//! Who people are: changed, said to be one, and taken apart again.

use super::Door;
use record::{EntryId, PersonDetails, PersonId};

impl Door {
    /// Writes a person's details anew.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn change_person(
        self,
        person: PersonId,
        details: PersonDetails,
    ) -> Result<(), String> {
        let planned = self.plan(|story| Ok(story.put_person(person, details)))?;
        self.write(planned, person, &[]).await
    }

    /// Says that two on record are one person, and whose details hold.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn say_same(self, kept: PersonId, other: PersonId) -> Result<(), String> {
        let planned = self.plan(|story| story.say_same(kept, other, String::new()))?;
        self.write(planned, kept, &[]).await
    }

    /// Takes it back.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn say_apart(self, about: PersonId, same: EntryId) -> Result<(), String> {
        let planned = self.plan(|story| story.say_apart(same, String::new()))?;
        self.write(planned, about, &[]).await
    }
}
