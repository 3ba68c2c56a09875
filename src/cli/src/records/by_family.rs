//! Records told person by person, so that what is in memory does not grow with how many there are.

use super::open::{amiss, cannot_be_read, carry, entry, open};
use super::options::{Records, WhichExams};
use crate::ended::Failure;
use ::papers::log::Visit;
use record::{Exam, Families, Person, PersonId, Story};
use std::collections::BTreeSet;
use std::fs::File;
use std::path::PathBuf;
use sync::carry::BySubject;
use uuid::Uuid;
use vault::Subject;

/// Records that were opened and read through once.
pub struct Opened {
    path: PathBuf,
    file: BySubject<File>,
    families: Families,
    /// What is damaged or missing in the file, one sentence each.
    damage: Vec<String>,
    folded: Folded,
}

/// What folding has shown.
#[derive(Default)]
struct Folded {
    clashes: Vec<String>,
    waiting: usize,
    newer: usize,
}

impl Opened {
    /// Opens what the options name.
    pub fn open(records: &Records) -> Result<Self, Failure> {
        let (walk, keys) = open(records)?;
        let (mut families, mut damage) = (Families::default(), Vec::new());
        let read = BySubject::read_through(walk, keys, |read| match entry(&read) {
            Ok(entry) => families.take(&entry),
            Err(sentence) => damage.push(sentence),
        });
        let (file, through) = read.map_err(|error| carry(&records.carry, error))?;
        damage.extend(amiss(&through));
        Ok(Self {
            path: records.carry.clone(),
            file,
            families,
            damage,
            folded: Folded::default(),
        })
    }

    /// Folds the entries about each person, and about whoever was said to be the same, and gives the story that they tell.
    pub fn each_family<E: From<Failure>>(
        &mut self,
        mut tell: impl FnMut(&Story) -> Result<(), E>,
    ) -> Result<(), E> {
        self.folded = Folded::default();
        let mut told = BTreeSet::new();
        for subject in self.file.subjects() {
            let family = self.family(subject);
            if told.is_disjoint(&family) {
                tell(&self.fold(&family)?)?;
            }
            // Nobody comes twice, so of somebody alone nothing has to be remembered.
            told.extend(family.into_iter().filter(|one| *one != subject));
        }
        Ok(())
    }

    /// Whose entries have to be folded with those about a subject.
    fn family(&self, subject: Option<Subject>) -> BTreeSet<Option<Subject>> {
        let Some(subject) = subject else {
            return BTreeSet::from([None]);
        };
        let person = PersonId::from_uuid(Uuid::from_bytes(*subject.as_bytes()));
        let family = self.families.of(person).into_iter();
        family
            .map(|person| Some(Subject::from_bytes(*person.as_uuid().as_bytes())))
            .collect()
    }

    fn fold(&mut self, family: &BTreeSet<Option<Subject>>) -> Result<Story, Failure> {
        let mut story = Story::default();
        let clashes = &mut self.folded.clashes;
        for subject in family {
            let read = self.file.of(*subject, |read| {
                // What is no entry was told when the file was read through.
                let Some(entry) = entry(&read).ok().filter(record::Entry::is_of_people) else {
                    return;
                };
                if let Err(error) = story.admit(entry) {
                    clashes.push(cannot_be_read(&read, &error.to_string()));
                }
            });
            read.map_err(|error| carry(&self.path, error))?;
        }
        self.folded.waiting += story.waiting();
        self.folded.newer += story.unread().count();
        Ok(story)
    }

    /// What is damaged or missing, one sentence each.
    pub fn damage(self) -> Vec<String> {
        let Folded {
            clashes,
            waiting,
            newer,
        } = self.folded;
        let mut damage = [self.damage, clashes].concat();
        if waiting > 0 {
            damage.push(format!(
                "{waiting} entries wait for others that are not in this file"
            ));
        }
        if newer > 0 {
            damage.push(format!(
                "{newer} entries were written by a newer version and can’t be read here"
            ));
        }
        damage
    }
}

/// The exams that are wanted, person by person and oldest first.
pub fn wanted<'a>(story: &'a Story, exams: &WhichExams) -> Vec<(&'a Person, &'a Exam)> {
    let filter = exams.which.filter();
    let people = story.people().into_iter();
    let each = people.flat_map(|person| {
        let exams = story.exams_of(&person.id()).into_iter().rev();
        exams.map(move |exam| (person, exam))
    });
    each.filter(|(person, exam)| exams.wants(exam) && filter.wants(&Visit::of(person, exam)))
        .collect()
}
