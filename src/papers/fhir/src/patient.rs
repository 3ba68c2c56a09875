//! A person: name, birth, numbers, whom to ask. How they hear and what they look at has no place in a patient of R4, and stays out.

use record::{Born, Contact, Identifier as Known, Person};

use crate::names::Name;
use crate::resources::{
    CodeableConcept, Communication, ContactPoint, HumanName, Identifier, Patient, PatientContact,
    Reference, Resource,
};
use crate::time::day;

pub(crate) fn patient(person: &Person) -> (Name, Resource) {
    let details = person.details();
    let birth_date = match details.born {
        // An age that somebody stated is no date of birth.
        Some(Born::Date(date)) => Some(day(date)),
        _ => None,
    };
    let named = Name::person(person);
    let known_as = details.known_as();
    let patient = Patient {
        id: named.id(),
        identifier: known_as.iter().filter_map(identifier).collect(),
        name: vec![HumanName {
            text: filled(&details.name.to_string()).unwrap_or_else(|| "not known".to_owned()),
            family: filled(&details.name.family),
            given: details
                .name
                .given
                .split_whitespace()
                .map(str::to_owned)
                .collect(),
        }],
        birth_date,
        contact: details.contacts.iter().filter_map(contact).collect(),
        communication: filled(&details.language).map(spoken).into_iter().collect(),
        general_practitioner: filled(&details.doctor.to_string())
            .map(words)
            .into_iter()
            .collect(),
    };
    (named, Resource::Patient(patient))
}

fn filled(text: &str) -> Option<String> {
    let text = text.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

fn words(display: String) -> Reference {
    Reference {
        reference: None,
        display: Some(display),
    }
}

fn identifier(known: &Known) -> Option<Identifier> {
    Some(Identifier {
        value: filled(&known.number)?,
        assigner: filled(&known.issuer).map(words),
    })
}

fn spoken(language: String) -> Communication {
    Communication {
        language: CodeableConcept::words(language),
    }
}

/// A contact without a name is called by what they are to the person: R4 wants some detail of each.
fn contact(contact: &Contact) -> Option<PatientContact> {
    let relation = filled(&contact.relation);
    let text = filled(&contact.name).or_else(|| relation.clone())?;
    Some(PatientContact {
        relationship: relation.map(CodeableConcept::words).into_iter().collect(),
        name: HumanName {
            text,
            family: None,
            given: Vec::new(),
        },
        telecom: filled(&contact.reach)
            .map(ContactPoint::in_words)
            .into_iter()
            .collect(),
    })
}
