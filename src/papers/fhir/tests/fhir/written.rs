//! What is written.

use std::sync::LazyLock;

use jsonschema::Validator;
use papers::sample::{Desk, lens, orla, subjective};
use record::{
    Acuity, Born, Decision, EyeAcuity, Finding, Identifier, PersonDetails, Section, Urgency,
};
use serde_json::{Value, json};

/// HL7's own schema of R4, 4.0.1 (see `tests/schema`), read by the `jsonschema` crate.
static SCHEMA: LazyLock<Validator> = LazyLock::new(|| {
    let mut text = Vec::new();
    let packed = include_bytes!("../schema/fhir.schema.json.br").as_slice();
    brotli::BrotliDecompress(&mut { packed }, &mut text).unwrap();
    let mut schema: Value = serde_json::from_slice(&text).unwrap();
    // This copy names two definitions that it doesn't have: every resource, which it lists, and a whole number of 64 bits.
    schema["definitions"]["Resource"] = json!({ "$ref": "#/definitions/ResourceList" });
    schema["definitions"]["integer64"] = json!({ "type": "string" });
    jsonschema::validator_for(&schema).unwrap()
});

fn written(desk: &Desk) -> Value {
    valid(&fhir::bundle([(desk.person(), desk.exam())]).to_json())
}

fn valid(text: &str) -> Value {
    let bundle: Value = serde_json::from_str(text).unwrap();
    let faults: Vec<String> = SCHEMA
        .iter_errors(&bundle)
        .map(|fault| format!("{} {fault:.200}", fault.instance_path()))
        .collect();
    assert!(faults.is_empty(), "{faults:#?}");
    bundle
}

fn of_kind<'a>(bundle: &'a Value, kind: &str) -> Vec<&'a Value> {
    let entries = bundle["entry"].as_array().unwrap().iter();
    let resources = entries.map(|entry| &entry["resource"]);
    resources
        .filter(|resource| resource["resourceType"] == kind)
        .collect()
}

fn observation<'a>(bundle: &'a Value, code: &str, eye: &str) -> &'a Value {
    let all = of_kind(bundle, "Observation").into_iter();
    let mut found = all.filter(|one| one["code"]["text"] == code && one["bodySite"]["text"] == eye);
    found.next().unwrap_or_else(|| panic!("{code}, {eye}"))
}

#[test]
fn the_schema_tells_good_from_bad() {
    let patient = |gender: &str| json!({"resourceType": "Patient", "gender": gender});
    assert!(SCHEMA.is_valid(&patient("female")));
    assert!(!SCHEMA.is_valid(&patient("invented")));
    assert!(!SCHEMA.is_valid(&json!({"resourceType": "Observation", "status": "final"})));
}

#[test]
fn a_full_visit_is_valid_and_whole() {
    let bundle = written(&Desk::full());
    for (kind, count) in [
        ("Patient", 1),
        ("Practitioner", 1),
        ("Location", 1),
        ("Encounter", 1),
        ("VisionPrescription", 1),
        ("ServiceRequest", 1),
        ("Provenance", 1),
    ] {
        assert_eq!(of_kind(&bundle, kind).len(), count, "{kind}");
    }
    assert_eq!(of_kind(&bundle, "Patient")[0]["birthDate"], "1940-01-31");
    assert_eq!(of_kind(&bundle, "ServiceRequest")[0]["priority"], "urgent");
    assert_eq!(of_kind(&bundle, "Encounter")[0]["class"]["code"], "HH");
}

#[test]
fn a_person_without_any_exam_is_written_with_whom_to_ask() {
    let mut details = orla();
    details.contacts = vec![
        record::Contact {
            name: "Ada Pennyquick".into(),
            relation: "daughter".into(),
            reach: "555 0142".into(),
        },
        record::Contact {
            relation: "key worker".into(),
            ..record::Contact::default()
        },
    ];
    details.identifiers = vec![record::Identifier {
        number: "H-0014".into(),
        issuer: "Saltmarsh Court".into(),
    }];
    details.doctor.name = "Dr Brinecote".into();
    details.language = "Harbour tongue".into();
    let desk = Desk::with_exam(details);
    let bundle = valid(&fhir::whole(desk.person(), []).to_json());
    let [patient] = of_kind(&bundle, "Patient")[..] else {
        panic!("one patient")
    };
    assert_eq!(bundle["entry"].as_array().unwrap().len(), 1);
    assert_eq!(patient["contact"][0]["name"]["text"], "Ada Pennyquick");
    assert_eq!(patient["contact"][0]["telecom"][0]["value"], "555 0142");
    // R4's rule pat-1: a contact has a name, a way to reach it, an address or an organisation.
    assert_eq!(patient["contact"][1]["name"]["text"], "key worker");
    assert_eq!(
        patient["identifier"][0]["assigner"]["display"],
        "Saltmarsh Court"
    );
    assert_eq!(patient["generalPractitioner"][0]["display"], "Dr Brinecote");
    assert_eq!(
        patient["communication"][0]["language"]["text"],
        "Harbour tongue"
    );
    let with_exam = valid(&fhir::whole(desk.person(), [desk.exam()]).to_json());
    assert_eq!(of_kind(&with_exam, "Patient").len(), 1);
    assert_eq!(of_kind(&with_exam, "Encounter").len(), 1);
}

#[test]
fn every_reference_leads_somewhere() {
    let bundle = written(&Desk::full());
    let entries = bundle["entry"].as_array().unwrap();
    let urls: Vec<&Value> = entries.iter().map(|entry| &entry["fullUrl"]).collect();
    let mut met = 0;
    let mut waiting: Vec<&Value> = entries.iter().collect();
    while let Some(value) = waiting.pop() {
        if let Some(reference) = value.get("reference") {
            assert!(urls.contains(&reference), "{reference}");
            met += 1;
        }
        waiting.extend(
            value
                .as_object()
                .into_iter()
                .flat_map(|fields| fields.values()),
        );
        waiting.extend(value.as_array().into_iter().flatten());
    }
    assert!(met > 50, "{met}");
    let mut once = urls.clone();
    once.sort_by_key(ToString::to_string);
    once.dedup();
    assert_eq!(once.len(), urls.len(), "no name twice");
}

// logMAR: −log10 of the decimal fraction. 6/36 of a 6 m chart at 3 m is 3/36: log10(12) = 1.08. Fingers are no measurement.
// Computed from the formula; units from the UCUM essence.
#[test]
fn measures_have_their_units() {
    let bundle = written(&Desk::full());
    let right = observation(&bundle, "acuity for far, unaided", "right eye");
    assert_eq!(right["valueQuantity"]["value"], json!(1.08));
    assert_eq!(right["note"][0]["text"], "3/36");
    let left = observation(&bundle, "acuity for far, unaided", "left eye");
    assert_eq!(left["valueString"], "counts fingers at 30 cm");
    let pressure = observation(&bundle, "pressure in the eye", "right eye");
    // From memory, and as open profiles of eye care have it: see `codes.rs`.
    assert_eq!(pressure["code"]["coding"][0]["system"], "http://loinc.org");
    assert_eq!(pressure["code"]["coding"][0]["code"], "79892-6");
    assert_eq!(pressure["valueQuantity"]["value"], json!(16.0));
    assert_eq!(pressure["valueQuantity"]["code"], "mm[Hg]");
    assert_eq!(pressure["method"]["text"], "rebound");
    let chosen = observation(&bundle, "refraction as chosen by the person", "left eye");
    let parts: Vec<(&str, f64, &str)> = chosen["component"]
        .as_array()
        .unwrap()
        .iter()
        .map(|part| {
            let quantity = &part["valueQuantity"];
            (
                part["code"]["text"].as_str().unwrap(),
                quantity["value"].as_f64().unwrap(),
                quantity["code"].as_str().unwrap(),
            )
        })
        .collect();
    assert_eq!(
        parts,
        [
            ("sphere", -0.75, "[diop]"),
            ("cylinder", -0.5, "[diop]"),
            ("axis", 5.0, "deg")
        ]
    );
}

// Computed from the formula: 67 cm is 1.4925 D, so +5.75 at neutral leaves +4.2575.
#[test]
fn retinoscopy_is_written_net() {
    let bundle = written(&Desk::full());
    let net = observation(
        &bundle,
        "refraction by retinoscopy, distance off",
        "right eye",
    );
    let sphere = net["component"][0]["valueQuantity"]["value"]
        .as_f64()
        .unwrap();
    assert!((sphere - 4.2575).abs() < 0.0006, "{sphere}");
}

#[test]
fn what_is_no_measure_is_written_in_its_words() {
    let bundle = written(&Desk::full());
    let disc = observation(&bundle, "Posterior: disc", "left eye");
    assert_eq!(disc["valueString"], "rim thin below");
    let all = of_kind(&bundle, "Observation");
    let texts: Vec<&str> = all
        .iter()
        .filter_map(|one| one["code"]["text"].as_str())
        .collect();
    for what in ["History: complaints", "Drops: given", "Decision: see again"] {
        assert!(texts.contains(&what), "{what}: {texts:?}");
    }
}

#[test]
fn what_was_not_done_says_why() {
    let mut desk = Desk::unsigned(orla());
    let mut acuity: Acuity = papers::sample::acuity();
    acuity.eyes.left = EyeAcuity {
        unaided: Finding::Unable {
            reason: "asleep".into(),
        },
        ..EyeAcuity::default()
    };
    desk.put(Section::Acuity(acuity));
    let bundle = written(&desk);
    let left = observation(&bundle, "acuity for far, unaided", "left eye");
    assert_eq!(left["dataAbsentReason"]["text"], "unable: asleep");
    assert_eq!(left["status"], "preliminary");
    assert!(left.get("valueQuantity").is_none());
}

#[test]
fn amendments_have_their_reason() {
    let mut desk = Desk::full();
    let mut changed = subjective();
    changed.vertex_mm = Some(13.0);
    desk.amend(Section::Subjective(changed), "vertex measured again");
    let bundle = written(&desk);
    let reasons: Vec<&Value> = of_kind(&bundle, "Provenance")
        .into_iter()
        .map(|one| &one["reason"][0]["text"])
        .collect();
    assert!(reasons.contains(&&json!("vertex measured again")));
    assert_eq!(of_kind(&bundle, "Observation")[0]["status"], "amended");
}

#[test]
fn little_is_valid_as_well() {
    let mut bare = Desk::with_exam(PersonDetails {
        born: Some(Born::Stated {
            years: 86,
            in_year: 2026,
        }),
        identifier: Some(" ".into()),
        ..PersonDetails::default()
    });
    assert_eq!(of_kind(&written(&bare), "VisionPrescription").len(), 0);
    bare.put(Section::Decision(Decision::default()));
    let bundle = written(&bare);
    // An age that somebody stated is no date of birth.
    assert!(of_kind(&bundle, "Patient")[0].get("birthDate").is_none());
}

/// FHIR R4, Identifier: the organisation that gave a number stands in its `assigner`.
#[test]
fn every_number_stands_with_whoever_gave_it() {
    let known = |number: &str, issuer: &str| Identifier {
        number: number.into(),
        issuer: issuer.into(),
    };
    let desk = Desk::full_of(PersonDetails {
        identifier: Some("12".into()),
        identifiers: vec![known("H-0014", "Tern House")],
        ..orla()
    });
    let bundle = written(&desk);
    assert_eq!(
        of_kind(&bundle, "Patient")[0]["identifier"],
        json!([{"value": "12"}, {"value": "H-0014", "assigner": {"display": "Tern House"}}])
    );
}

#[test]
fn every_urgency_is_valid() {
    for urgency in Urgency::ALL {
        let mut desk = Desk::unsigned(orla());
        let mut decision = papers::sample::decision();
        decision.refer.as_mut().unwrap().urgency = urgency;
        desk.put(Section::Decision(decision));
        let bundle = written(&desk);
        assert_eq!(of_kind(&bundle, "ServiceRequest")[0]["status"], "draft");
    }
}

// FHIR R4, datatypes: the precision of a decimal counts, so trailing zeros are written.
#[test]
fn decimals_keep_their_zeros() {
    let mut desk = Desk::unsigned(orla());
    let mut chosen = subjective();
    chosen.eyes.right.done_mut().unwrap().lens = lens("+2.50 / −1.00 × 0");
    chosen.eyes.left.done_mut().unwrap().lens = lens("0.00");
    desk.put(Section::Subjective(chosen));
    let text = fhir::bundle([(desk.person(), desk.exam())]).to_json();
    assert!(
        text.contains(r#""sphere":2.50,"cylinder":-1.00,"axis":180,"add":2.50"#),
        "{text}"
    );
    assert!(
        text.contains(r#""eye":"left","sphere":0.00,"add":2.50"#),
        "{text}"
    );
    let exact = fhir::Decimal::dioptres(-0.125).unwrap().to_string();
    assert_eq!(exact, "-0.125");
}

// The specification has one form of JSON for a bundle: written exam by exam it is the same as written whole.
#[test]
fn a_bundle_that_is_written_exam_by_exam_is_the_same() {
    let (full, open) = (Desk::full(), Desk::unsigned(orla()));
    let exams = [(full.person(), full.exam()), (open.person(), open.exam())];
    let mut taken = 0;
    let counted = exams.iter().copied().inspect(|_| taken += 1);
    assert_eq!(fhir::bundle_text(counted), fhir::bundle(exams).to_json());
    assert_eq!(taken, exams.len());
    assert_eq!(fhir::bundle_text([]), fhir::bundle([]).to_json());
    let whole = fhir::whole(full.person(), [full.exam()]).to_json();
    assert_eq!(fhir::whole_text(full.person(), [full.exam()]), whole);
}

#[test]
fn two_visits_of_one_person_name_them_once() {
    let desk = Desk::full();
    let exam = (desk.person(), desk.exam());
    let text = fhir::bundle([exam, exam]).to_json();
    assert_eq!(text.matches(r#""resourceType":"Patient""#).count(), 1);
    assert_eq!(text.matches(r#""resourceType":"Encounter""#).count(), 1);
}
