//! One exam, with everybody and everything that it names, as resources.

use record::{Exam, ExamState, Person, SectionKind};

use crate::names::Name;
use crate::patient::patient;
use crate::resources::{
    Coding, Encounter, EncounterLocation, HumanName, Location, Participant, Period, Practitioner,
    Reference, Resource,
};
use crate::time::day;
use crate::{observations, prescription, provenance, referral};

/// Care given where the person lives (HL7 v3 `ActCode`).
const AT_HOME: Coding = Coding {
    system: "http://terminology.hl7.org/CodeSystem/v3-ActCode",
    code: "HH",
    display: "home health",
};

/// One exam of one person, as its resources see it.
#[derive(Clone, Copy)]
pub(crate) struct Visit<'a> {
    pub person: &'a Person,
    pub exam: &'a Exam,
}

impl Visit<'_> {
    pub fn resources(self) -> Vec<(Name, Resource)> {
        let mut each = vec![patient(self.person), self.practitioner()];
        each.extend(self.location());
        each.push(self.encounter());
        each.extend(observations::of(self));
        each.extend(prescription::of(self));
        each.extend(referral::of(self));
        let targets: Vec<Name> = each.iter().skip(2).map(|(name, _)| *name).collect();
        for (name, by, resource) in provenance::of(self, &targets) {
            each.push(practitioner(&by));
            each.push((name, resource));
        }
        each
    }

    /// Who signed, else who wrote last.
    fn examiner(self) -> String {
        if let Some(last) = self.exam.signatures().last() {
            return last.signer.trim().to_owned();
        }
        let written = SectionKind::ALL
            .into_iter()
            .flat_map(|kind| self.exam.history(kind));
        let last = written.max_by_key(|version| version.entry.stamp);
        let author = last.map(|version| version.entry.author.trim().to_owned());
        author
            .filter(|name| !name.is_empty())
            .unwrap_or_else(|| "not known".to_owned())
    }

    fn practitioner(self) -> (Name, Resource) {
        practitioner(&self.examiner())
    }

    fn location(self) -> Option<(Name, Resource)> {
        let place = self.exam.place().trim();
        let name = Name::of_words("place", place);
        let location = Location {
            id: name.id(),
            name: place.to_owned(),
        };
        (!place.is_empty()).then_some((name, Resource::Location(location)))
    }

    fn encounter(self) -> (Name, Resource) {
        let name = Name::exam(self.exam);
        let on = self.on();
        let location = self.location().map(|(name, _)| EncounterLocation {
            location: name.reference(),
        });
        let encounter = Encounter {
            id: name.id(),
            status: if self.exam.is_signed() {
                "finished"
            } else {
                "in-progress"
            },
            class: AT_HOME,
            subject: self.subject(),
            participant: vec![Participant {
                individual: self.by(),
            }],
            period: Period {
                start: on.clone(),
                end: on,
            },
            location: location.into_iter().collect(),
        };
        (name, Resource::Encounter(Box::new(encounter)))
    }

    pub fn on(self) -> String {
        day(self.exam.opened_on())
    }

    pub fn subject(self) -> Reference {
        Name::person(self.person).reference()
    }

    pub fn encountered(self) -> Reference {
        Name::exam(self.exam).reference()
    }

    pub fn by(self) -> Reference {
        self.practitioner().0.reference()
    }

    /// How a finding stands.
    pub fn found(self) -> &'static str {
        match self.exam.state() {
            ExamState::Open => "preliminary",
            ExamState::Signed => "final",
            ExamState::Amended => "amended",
        }
    }

    /// How a request stands.
    pub fn asked(self) -> &'static str {
        if self.exam.is_signed() {
            "active"
        } else {
            "draft"
        }
    }
}

fn practitioner(words: &str) -> (Name, Resource) {
    let name = Name::of_words("practitioner", words);
    let practitioner = Practitioner {
        id: name.id(),
        name: vec![HumanName {
            text: words.to_owned(),
            family: None,
            given: Vec::new(),
        }],
    };
    (name, Resource::Practitioner(practitioner))
}
