//! What is taken in as last time's findings.

use fhir::{ImportError, import};
use papers::sample::{Desk, day, lens, orla, subjective};
use record::{Section, check};

/// The lenses of the example in FHIR's own page on `VisionPrescription` (R4), with its figures.
const EXAMPLE: &str = r#"{
  "resourceType": "VisionPrescription",
  "id": "33123",
  "text": {"status": "generated", "div": "<div>OD -2.00 SPH Prism 0.5</div>"},
  "status": "active",
  "created": "2014-06-15",
  "patient": {"reference": "Patient/example"},
  "dateWritten": "2014-06-15",
  "prescriber": {"reference": "Practitioner/example"},
  "lensSpecification": [
    {
      "product": {"coding": [{"system": "http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct", "code": "lens"}]},
      "eye": "right", "sphere": -2.00,
      "prism": [{"amount": 0.5, "base": "down"}], "add": 2.00
    },
    {
      "product": {"coding": [{"system": "http://terminology.hl7.org/CodeSystem/ex-visionprescriptionproduct", "code": "lens"}]},
      "eye": "left", "sphere": -1.00, "cylinder": -0.50, "axis": 180,
      "prism": [{"amount": 0.5, "base": "up"}], "add": 2.00
    }
  ]
}"#;

#[test]
fn the_published_example_is_taken_and_its_prisms_are_kept() {
    let taken = import(EXAMPLE).unwrap();
    let [earlier] = taken.earlier.as_slice() else {
        panic!("one prescription")
    };
    assert_eq!(earlier.on, day(2014, 6, 15));
    let lenses = earlier.subjective.eyes.map(|eye| eye.done().unwrap().lens);
    assert_eq!(
        (lenses.right, lenses.left),
        (lens("−2.00"), lens("−1.00 / −0.50 × 180"))
    );
    assert!((earlier.subjective.add.unwrap().power - 2.0).abs() < 1e-9);
    let places: Vec<&str> = earlier
        .left_over
        .iter()
        .map(|left| left.place.as_str())
        .collect();
    assert_eq!(
        places,
        [
            "text",
            "lensSpecification[0].prism",
            "lensSpecification[1].prism"
        ]
    );
    assert!(
        taken.report[0].contains("2 lenses; 3 things have no place here"),
        "{:?}",
        taken.report
    );
    assert!(
        taken.report[1].contains("40 cm stands in"),
        "{:?}",
        taken.report
    );
    assert!(
        taken
            .report
            .iter()
            .any(|said| said.contains("6 m stands in")),
        "{:?}",
        taken.report
    );

    let sections = earlier.sections();
    for section in &sections {
        assert_eq!(check(section), []);
    }
    let Section::Decision(decision) = &sections[1] else {
        panic!("what has no place is kept in words")
    };
    assert!(
        decision.note.contains(r#"[{"amount":0.5,"base":"down"}]"#),
        "{}",
        decision.note
    );
}

#[test]
fn our_own_bundle_comes_back_as_it_went() {
    let mut chosen = subjective();
    chosen.eyes.right.done_mut().unwrap().lens = lens("−12.75 / +3.25 × 22.5");
    let mut desk = Desk::unsigned(orla());
    desk.put(Section::Subjective(chosen.clone()));
    let text = fhir::bundle([(desk.person(), desk.exam())]).to_json();
    let taken = import(&text).unwrap();
    let earlier = &taken.earlier[0];
    assert_eq!(earlier.person.as_deref(), Some("Orla Pennyquick"));
    assert_eq!(earlier.born, Some(day(1940, 1, 31)));
    assert_eq!(earlier.on, day(2026, 3, 4));
    assert_eq!(earlier.subjective.add, chosen.add);
    assert_eq!(earlier.subjective.vertex_mm, chosen.vertex_mm);
    for (eye, found) in earlier.subjective.eyes.each() {
        let went = chosen.eyes.of(eye).done().unwrap();
        assert_eq!(found.done().unwrap().lens, went.lens);
    }
    assert!(earlier.left_over.is_empty());
    // What else is in the file is shown, not dropped.
    let kinds = taken
        .left_over
        .iter()
        .map(|left| left.value["resourceType"].as_str().unwrap());
    assert!(kinds.clone().any(|kind| kind == "Encounter"));
    assert!(!kinds.clone().any(|kind| kind == "Patient"));
}

/// Every finding of our own bundle comes back in words with the lenses of its visit, none of them as bare JSON.
#[test]
fn the_findings_of_our_own_bundle_are_kept_in_words() {
    let desk = Desk::full();
    let bundle = fhir::bundle([(desk.person(), desk.exam())]);
    let written: serde_json::Value = serde_json::from_str(&bundle.to_json()).unwrap();
    let entries = written["entry"].as_array().unwrap().iter();
    let observed = entries.filter(|entry| entry["resource"]["resourceType"] == "Observation");
    let taken = import(&bundle.to_json()).unwrap();
    let earlier = &taken.earlier[0];
    assert_eq!(earlier.found.len(), observed.count());
    let said: Vec<String> = earlier.found.iter().map(ToString::to_string).collect();
    assert!(said.iter().all(|one| !one.contains('{')), "{said:#?}");
    let Section::Decision(decision) = &earlier.sections()[1] else {
        panic!("{:?}", earlier.sections())
    };
    for one in &said {
        assert!(decision.note.contains(one), "{one}");
    }
    let count = format!(
        "{} findings of the same visit are kept in words",
        said.len()
    );
    assert!(taken.report.contains(&count), "{:?}", taken.report);
}

/// A finding that says more than words here can tell is kept whole.
#[test]
fn a_finding_with_an_unknown_part_is_kept_whole() {
    let desk = Desk::full();
    let text = fhir::bundle([(desk.person(), desk.exam())]).to_json();
    let other = text.replacen(
        r#""resourceType":"Observation","#,
        r#""resourceType":"Observation","specimen":{"display":"a tear"},"#,
        1,
    );
    assert_ne!(other, text);
    let taken = import(&other).unwrap();
    let said: Vec<String> = taken.earlier[0]
        .found
        .iter()
        .map(ToString::to_string)
        .collect();
    assert!(said.iter().any(|one| one.contains("a tear")), "{said:#?}");
}

fn changed(from: &str, to: &str) -> fhir::Imported {
    assert!(EXAMPLE.contains(from), "{from}");
    import(&EXAMPLE.replace(from, to)).unwrap()
}

#[test]
fn what_cannot_be_made_is_not_taken_and_says_why() {
    for (from, to, sentence) in [
        (
            ", \"axis\": 180",
            "",
            "lensSpecification[1]: its cylinder has no axis",
        ),
        (
            "\"axis\": 180",
            "\"axis\": 270",
            "lensSpecification[1]: the axis can be 0 to 180 degrees",
        ),
        (
            "\"sphere\": -1.00, ",
            "",
            "lensSpecification[1]: it has no sphere",
        ),
        (
            "\"eye\": \"left\"",
            "\"eye\": \"both\"",
            "lensSpecification[1]: it does not say which eye",
        ),
        (
            "\"eye\": \"left\"",
            "\"eye\": \"right\"",
            "lensSpecification[1]: a second lens for the right eye",
        ),
        (
            "\"code\": \"lens\"}]},\n      \"eye\": \"left\"",
            "\"code\": \"contact\"}]},\n      \"eye\": \"left\"",
            "lensSpecification[1]: a contact lens",
        ),
    ] {
        let taken = changed(from, to);
        assert!(
            taken.report.iter().any(|said| said.starts_with(sentence)),
            "{sentence}: {:#?}",
            taken.report
        );
        let left = &taken.earlier[0].left_over;
        assert!(
            left.iter().any(|left| left.place == "lensSpecification[1]"),
            "{sentence}"
        );
        assert!(
            taken.earlier[0].subjective.eyes.left.is_blank(),
            "{sentence}"
        );
    }
}

#[test]
fn an_axis_below_zero_is_the_one_across() {
    let taken = changed("\"axis\": 180", "\"axis\": -170");
    let left = taken.earlier[0].subjective.eyes.left.done().unwrap().lens;
    assert_eq!(left, lens("−1.00 / −0.50 × 10"));
}

#[test]
fn additions_that_differ_are_not_taken() {
    let taken = changed("\"down\"}], \"add\": 2.00", "\"down\"}], \"add\": 2.50");
    assert_eq!(taken.earlier[0].subjective.add, None);
    assert!(
        taken.earlier[0]
            .left_over
            .iter()
            .any(|left| left.to_string() == "addition of the right eye is 2.5")
    );
}

#[test]
fn powers_that_no_field_accepts_are_kept_and_not_taken() {
    let taken = changed("\"sphere\": -2.00", "\"sphere\": -200");
    assert!(taken.earlier.is_empty());
    assert_eq!(taken.left_over.len(), 1);
    assert!(taken.report[0].contains("sphere"), "{:?}", taken.report);
}

#[test]
fn a_prescription_without_a_day_is_kept_and_not_taken() {
    let text = EXAMPLE.replace("2014-06-15", "some day");
    let taken = import(&text).unwrap();
    assert!(taken.earlier.is_empty() && taken.left_over.len() == 1);
}

#[test]
fn other_files_get_one_sentence() {
    assert!(matches!(
        import("{"),
        Err(ImportError::NoJson { line: 1, .. })
    ));
    for text in [
        "{}",
        "[]",
        "3",
        r#"{"resourceType":"Bundle","entry":[{"resource":{"resourceType":"Patient"}}]}"#,
    ] {
        assert!(
            matches!(import(text), Err(ImportError::NoPrescription)),
            "{text}"
        );
    }
    let deep = "[".repeat(100_000);
    assert!(matches!(import(&deep), Err(ImportError::NoJson { .. })));
}
