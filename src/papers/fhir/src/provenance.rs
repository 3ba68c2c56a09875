//! Who signed, and who changed what afterwards and why.

use crate::exam::Visit;
use crate::names::Name;
use crate::resources::{Agent, CodeableConcept, Provenance, Reference, Resource};
use crate::time::instant;

/// Signatures and amendments, each with its writer, about everything that the exam made.
pub(crate) fn of(visit: Visit<'_>, targets: &[Name]) -> Vec<(Name, String, Resource)> {
    let target: Vec<Reference> = targets.iter().map(|name| name.reference()).collect();
    let signed = visit.exam.signatures().into_iter().map(|signed| {
        let who = signed.signer.trim().to_owned();
        (signed.entry, who, "signed".to_owned(), None)
    });
    let amended = visit.exam.amendments().into_iter().map(|amended| {
        let what = format!("{} amended", amended.kind.slug());
        let why = amended.reason.trim().to_owned();
        (
            amended.entry,
            amended.entry.author.trim().to_owned(),
            what,
            Some(why),
        )
    });
    let each = signed.chain(amended);
    each.filter_map(|(entry, who, what, why)| {
        let who = if who.is_empty() {
            "not known".to_owned()
        } else {
            who
        };
        let name = Name::within(visit.exam, &format!("{what} {}", entry.id));
        let provenance = Provenance {
            id: name.id(),
            target: target.clone(),
            recorded: instant(entry.stamp)?,
            reason: why.map(CodeableConcept::words).into_iter().collect(),
            activity: CodeableConcept::words(what),
            agent: vec![Agent {
                who: Name::of_words("practitioner", &who).reference(),
            }],
        };
        Some((name, who, Resource::Provenance(Box::new(provenance))))
    })
    .collect()
}
