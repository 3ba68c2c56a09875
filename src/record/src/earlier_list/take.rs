//! The good rows as exams, to be written together or not at all.

use super::judge::Earlier;
use crate::error::RecordError;
use crate::home_list::ToWrite;
use crate::ids::ExamId;
use crate::story::Story;

impl Story {
    /// Plans what each row found as findings that were taken over on their day ([`Story::take_over`]); all of it is to be written
    /// together. What stands here already is passed over, so that a file that is taken twice changes nothing.
    ///
    /// # Errors
    /// [`RecordError::NoSuchPerson`]: the rows were judged by another story.
    pub fn take_earlier(
        &self,
        rows: &[Earlier],
        mut new_exam: impl FnMut() -> ExamId,
    ) -> Result<Vec<ToWrite>, RecordError> {
        let mut writes = Vec::new();
        let is_new = |row: &&Earlier| !self.has_taken_over(&row.person, row.on, &row.sections);
        for row in rows.iter().filter(is_new) {
            let sections = row.sections.clone();
            writes.extend(self.take_over(row.person, new_exam(), row.on, sections)?);
        }
        Ok(writes)
    }
}
