//! Findings that were written down elsewhere.

use super::Door;
use crate::edge::clock::new_id;
use chrono::NaiveDate;
use leptos::prelude::*;
use record::earlier_list::Earlier;
use record::{ExamId, PersonId, Section};

impl Door {
    /// Takes findings of a day over as an earlier exam: all of them or none.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn take_over(
        self,
        person: PersonId,
        on: NaiveDate,
        sections: Vec<Section>,
    ) -> Result<(), String> {
        let exam = ExamId::from_uuid(new_id());
        let planned = self
            .story()
            .with_untracked(|story| story.take_over(person, exam, on, sections));
        let writes = planned.map_err(|error| error.to_string())?;
        self.write_all(writes, &[]).await
    }

    /// Takes the good rows of a file of earlier findings: all of them or none.
    ///
    /// # Errors
    /// One sentence; nothing is kept then.
    pub async fn take_earlier(self, rows: Vec<Earlier>) -> Result<(), String> {
        self.change(|story| story.take_earlier(&rows, || ExamId::from_uuid(new_id())))
            .await
    }
}
