//! Lenses that are prescribed.

use optics::format::plain;
use optics::{Axis, SphereCyl};
use record::{Exam, Eye, Source, Subjective};

use crate::Decimal;
use crate::exam::Visit;
use crate::names::Name;
use crate::resources::{
    Annotation, CodeableConcept, Coding, LensSpecification, Resource, VisionPrescription,
};
use crate::time::instant;

const LENS: Coding = Coding {
    system: "http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct",
    code: "lens",
    display: "Lens",
};

/// How a note says what the addition is for; [`crate::import`] reads it again.
pub(crate) const ADDITION_FOR: &str = "addition for ";
/// How a note says where the lens stood.
pub(crate) const VERTEX: &str = "vertex distance ";
/// How a note says an axis that is no whole degree.
pub(crate) const AXIS: &str = "axis ";

/// The prescription of an exam in which lenses were prescribed.
pub(crate) fn of(visit: Visit<'_>) -> Option<(Name, Resource)> {
    let exam = visit.exam;
    let decision = exam.decision().settled()?.value;
    let lenses: Vec<LensSpecification> = Eye::BOTH
        .into_iter()
        .filter_map(|eye| specification(exam, eye))
        .collect();
    if !decision.prescribes() || lenses.is_empty() {
        return None;
    }
    let name = Name::within(exam, "prescription");
    let signed = exam
        .signatures()
        .last()
        .and_then(|last| instant(last.entry.stamp));
    let prescription = VisionPrescription {
        id: name.id(),
        status: visit.asked(),
        created: signed.clone().unwrap_or_else(|| visit.on()),
        patient: visit.subject(),
        encounter: visit.encountered(),
        date_written: signed.unwrap_or_else(|| visit.on()),
        prescriber: visit.by(),
        lens_specification: lenses,
    };
    Some((name, Resource::VisionPrescription(Box::new(prescription))))
}

fn specification(exam: &Exam, eye: Eye) -> Option<LensSpecification> {
    let found = exam.final_lens(eye)?;
    let chosen = exam.subjective().settled().map(|version| version.value);
    let SphereCyl { sphere, cylinder } = found.lens;
    Some(LensSpecification {
        product: CodeableConcept::code(LENS),
        eye: eye.word(),
        sphere: Decimal::dioptres(sphere),
        cylinder: cylinder.and_then(|cylinder| Decimal::dioptres(cylinder.power())),
        axis: cylinder.map(|cylinder| whole(cylinder.axis())),
        add: chosen.and_then(|chosen| Decimal::dioptres(chosen.add?.power)),
        note: notes(&found.lens, found.source, chosen),
    })
}

/// FHIR has whole degrees; 0 is written 180.
fn whole(axis: Axis) -> i32 {
    match axis.degrees().round() as i32 {
        0 => 180,
        degrees => degrees,
    }
}

/// What there is no field for.
fn notes(lens: &SphereCyl, source: Source, chosen: Option<&Subjective>) -> Vec<Annotation> {
    let add = chosen.and_then(|chosen| chosen.add);
    let vertex = chosen.and_then(|chosen| chosen.vertex_mm);
    let askew = lens.cylinder.map(|cylinder| cylinder.axis().degrees());
    let askew = askew.filter(|degrees| degrees.fract() != 0.0);
    let notes = [
        add.map(|add| format!("{ADDITION_FOR}{} cm", plain(add.at_cm, 1))),
        vertex.map(|mm| format!("{VERTEX}{} mm", plain(mm, 1))),
        askew.map(|degrees| format!("{AXIS}{}", plain(degrees, 2))),
        (source == Source::Retinoscopy)
            .then(|| "measured without spoken answers (retinoscopy only)".to_owned()),
    ];
    let notes = notes.into_iter().flatten();
    notes.map(|text| Annotation { text }).collect()
}
