//! The parts of FHIR R4 that are written here, as its definitions have them; what is never written has no field.

use serde::Serialize;

use crate::Decimal;

/// A collection of resources.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "resourceType")]
pub struct Bundle {
    /// Always `collection`.
    #[serde(rename = "type")]
    pub kind: &'static str,
    /// The resources.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub entry: Vec<Entry>,
}

/// A resource and how others in the bundle find it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Entry {
    /// `urn:uuid:…`
    pub full_url: String,
    /// The resource.
    pub resource: Resource,
}

/// A resource.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "resourceType")]
pub enum Resource {
    /// Who is examined.
    Patient(Patient),
    /// Who examines.
    Practitioner(Practitioner),
    /// Where.
    Location(Location),
    /// The visit.
    Encounter(Box<Encounter>),
    /// A finding.
    Observation(Box<Observation>),
    /// Lenses that are prescribed.
    VisionPrescription(Box<VisionPrescription>),
    /// A referral.
    ServiceRequest(Box<ServiceRequest>),
    /// Who signed or changed what, and when.
    Provenance(Box<Provenance>),
}

impl Resource {
    /// Whether several exams may name it.
    pub(crate) const fn is_shared(&self) -> bool {
        matches!(
            self,
            Self::Patient(_) | Self::Practitioner(_) | Self::Location(_)
        )
    }
}

/// Who is examined.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Patient {
    /// Its name.
    pub id: String,
    /// Numbers by which others know the person.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub identifier: Vec<Identifier>,
    /// The person's name.
    pub name: Vec<HumanName>,
    /// The day of birth, where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub birth_date: Option<String>,
    /// Whom to ask or to tell.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub contact: Vec<PatientContact>,
    /// What they speak.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub communication: Vec<Communication>,
    /// The family doctor, in words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub general_practitioner: Vec<Reference>,
}

/// A number without a system that anybody agreed on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Identifier {
    /// The number.
    pub value: String,
    /// Who gave it, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub assigner: Option<Reference>,
}

/// Somebody to ask or to tell.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PatientContact {
    /// What they are to the person.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub relationship: Vec<CodeableConcept>,
    /// What they are called.
    pub name: HumanName,
    /// How they are reached.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub telecom: Vec<ContactPoint>,
}

/// A way to reach somebody.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ContactPoint {
    /// Always `other`: which kind it is, only its words tell.
    pub system: &'static str,
    /// In words.
    pub value: String,
}

/// What somebody speaks.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Communication {
    /// In words.
    pub language: CodeableConcept,
}

impl ContactPoint {
    pub(crate) const fn in_words(value: String) -> Self {
        Self {
            system: "other",
            value,
        }
    }
}

/// A name.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HumanName {
    /// The whole.
    pub text: String,
    /// The family name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub family: Option<String>,
    /// Given names.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub given: Vec<String>,
}

/// Who examines.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Practitioner {
    /// Its name.
    pub id: String,
    /// As it is signed.
    pub name: Vec<HumanName>,
}

/// Where.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Location {
    /// Its name.
    pub id: String,
    /// What it is called.
    pub name: String,
}

/// A visit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Encounter {
    /// Its name.
    pub id: String,
    /// `finished`, `in-progress`.
    pub status: &'static str,
    /// Home health.
    pub class: Coding,
    /// Who is examined.
    pub subject: Reference,
    /// Who examines.
    pub participant: Vec<Participant>,
    /// When.
    pub period: Period,
    /// Where.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub location: Vec<EncounterLocation>,
}

/// Somebody who took part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Participant {
    /// Who.
    pub individual: Reference,
}

/// Where a visit was.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EncounterLocation {
    /// Where.
    pub location: Reference,
}

/// From when to when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Period {
    /// From.
    pub start: String,
    /// To.
    pub end: String,
}

/// A finding.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Observation {
    /// Its name.
    pub id: String,
    /// `final`, `preliminary`, `amended`.
    pub status: &'static str,
    /// An examination.
    pub category: Vec<CodeableConcept>,
    /// What was looked for.
    pub code: CodeableConcept,
    /// Of whom.
    pub subject: Reference,
    /// On which visit.
    pub encounter: Reference,
    /// On which day.
    pub effective_date_time: String,
    /// By whom.
    pub performer: Vec<Reference>,
    /// What was measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value_quantity: Option<Quantity>,
    /// What was found, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value_string: Option<String>,
    /// Why it was not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub data_absent_reason: Option<CodeableConcept>,
    /// Anything else.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub note: Vec<Annotation>,
    /// Which eye.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub body_site: Option<CodeableConcept>,
    /// How.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<CodeableConcept>,
    /// Its parts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub component: Vec<Component>,
}

/// A part of a finding.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Component {
    /// Which part.
    pub code: CodeableConcept,
    /// What was measured.
    pub value_quantity: Quantity,
}

/// A measure with its UCUM unit.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Quantity {
    /// How much.
    pub value: Decimal,
    /// The unit as people write it.
    pub unit: &'static str,
    /// UCUM.
    pub system: &'static str,
    /// The unit in UCUM.
    pub code: &'static str,
}

/// Lenses that are prescribed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct VisionPrescription {
    /// Its name.
    pub id: String,
    /// `active`, `draft`.
    pub status: &'static str,
    /// When it was made.
    pub created: String,
    /// For whom.
    pub patient: Reference,
    /// On which visit.
    pub encounter: Reference,
    /// When it was written.
    pub date_written: String,
    /// By whom.
    pub prescriber: Reference,
    /// Each lens.
    pub lens_specification: Vec<LensSpecification>,
}

/// One lens.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LensSpecification {
    /// A lens for glasses.
    pub product: CodeableConcept,
    /// `right`, `left`.
    pub eye: &'static str,
    /// Dioptres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sphere: Option<Decimal>,
    /// Dioptres; never 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cylinder: Option<Decimal>,
    /// Whole degrees, 1 to 180.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub axis: Option<i32>,
    /// Dioptres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub add: Option<Decimal>,
    /// What there is no field for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub note: Vec<Annotation>,
}

/// A referral.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct ServiceRequest {
    /// Its name.
    pub id: String,
    /// `active`, `draft`.
    pub status: &'static str,
    /// Always `order`.
    pub intent: &'static str,
    /// `routine`, `urgent`, `asap`, `stat`.
    pub priority: &'static str,
    /// What is asked.
    pub code: CodeableConcept,
    /// For whom.
    pub subject: Reference,
    /// On which visit.
    pub encounter: Reference,
    /// On which day.
    pub authored_on: String,
    /// By whom.
    pub requester: Reference,
    /// Of whom.
    pub performer: Vec<Reference>,
    /// Why.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub reason_code: Vec<CodeableConcept>,
}

/// Who did what to what, and when.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Provenance {
    /// Its name.
    pub id: String,
    /// To what.
    pub target: Vec<Reference>,
    /// When.
    pub recorded: String,
    /// Why.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub reason: Vec<CodeableConcept>,
    /// What was done.
    pub activity: CodeableConcept,
    /// By whom.
    pub agent: Vec<Agent>,
}

/// Who did it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Agent {
    /// Who.
    pub who: Reference,
}

/// A way to another resource, or only its words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Reference {
    /// `urn:uuid:…`
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<String>,
    /// In words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub display: Option<String>,
}

/// A meaning: coded where that is sure, and in words.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct CodeableConcept {
    /// Codes.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub coding: Vec<Coding>,
    /// Words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
}

/// A code.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Coding {
    /// Whose.
    pub system: &'static str,
    /// The code.
    pub code: &'static str,
    /// In words.
    pub display: &'static str,
}

/// A note.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Annotation {
    /// In words.
    pub text: String,
}

impl CodeableConcept {
    /// Words alone.
    pub fn words(text: impl Into<String>) -> Self {
        Self {
            coding: Vec::new(),
            text: Some(text.into()),
        }
    }

    /// A code alone.
    pub fn code(coding: Coding) -> Self {
        Self {
            coding: vec![coding],
            text: None,
        }
    }
}

impl Bundle {
    /// The bundle as JSON, on one line.
    ///
    /// # Panics
    /// Never: every field is a string, a number or a list of such.
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).expect("a bundle has nothing that JSON could not say")
    }
}
