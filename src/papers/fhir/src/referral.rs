//! A referral.

use record::{History, Urgency};

use crate::exam::Visit;
use crate::names::Name;
use crate::resources::{CodeableConcept, Reference, Resource, ServiceRequest};

/// The referral of an exam that refers to somebody.
pub(crate) fn of(visit: Visit<'_>) -> Option<(Name, Resource)> {
    let decision = visit.exam.decision().settled()?.value;
    let referral = decision.refer.as_ref()?;
    let history = visit
        .exam
        .part::<History>()
        .settled()
        .map(|version| version.value);
    let complaints = history.and_then(|history| history.complaints.done());
    let reasons = complaints
        .into_iter()
        .flatten()
        .map(record::Complaint::in_words);
    let name = Name::within(visit.exam, "referral");
    let request = ServiceRequest {
        id: name.id(),
        status: visit.asked(),
        intent: "order",
        priority: priority(referral.urgency),
        code: CodeableConcept::words(format!("referral, {}", referral.urgency.word())),
        subject: visit.subject(),
        encounter: visit.encountered(),
        authored_on: visit.on(),
        requester: visit.by(),
        performer: vec![Reference {
            reference: None,
            display: Some(referral.to.trim().to_owned()),
        }],
        reason_code: reasons.map(CodeableConcept::words).collect(),
    };
    Some((name, Resource::ServiceRequest(Box::new(request))))
}

/// By the definitions of FHIR's request priorities: urgent is before routine, asap before urgent, stat at once.
const fn priority(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Routine => "routine",
        Urgency::Soon => "urgent",
        Urgency::Urgent => "asap",
        Urgency::Emergency => "stat",
    }
}
