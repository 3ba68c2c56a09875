//! Findings: measures with their units where there are any, and everything else in the words in which it stands.

use std::collections::BTreeMap;

use optics::SphereCyl;
use record::{
    Acuity, Exam, Eye, Eyes, Finding, Line, Posterior, Said, Section, SectionKind, Seen, Taken,
};

use crate::Decimal;
use crate::codes;
use crate::exam::Visit;
use crate::names::Name;
use crate::resources::{
    Annotation, CodeableConcept, Coding, Component, Observation, Quantity, Resource,
};

const EXAM: Coding = Coding {
    system: "http://terminology.hl7.org/CodeSystem/observation-category",
    code: "exam",
    display: "Exam",
};

const NOT_PERFORMED: Coding = Coding {
    system: "http://terminology.hl7.org/CodeSystem/data-absent-reason",
    code: "not-performed",
    display: "Not Performed",
};

const UCUM: &str = "http://unitsofmeasure.org";

/// A unit as people write it, and as UCUM has it.
#[derive(Clone, Copy)]
struct Unit(&'static str, &'static str);

const DIOPTRES: Unit = Unit("D", "[diop]");
const DEGREES: Unit = Unit("degrees", "deg");
const MMHG: Unit = Unit("mmHg", "mm[Hg]");
/// UCUM has no logMAR: it is a logarithm of a ratio, so its unit is 1.
const LOGMAR: Unit = Unit("logMAR", "1");
const RATIO: Unit = Unit("of the disc’s height", "1");

/// Every finding of an exam.
pub(crate) fn of(visit: Visit<'_>) -> Vec<(Name, Resource)> {
    let found = SectionKind::ALL
        .into_iter()
        .flat_map(|kind| section(visit.exam, kind));
    let mut met: BTreeMap<String, u32> = BTreeMap::new();
    found
        .map(|found| {
            let what = format!("{} {:?}", found.what, found.eye.map(Eye::word));
            let again = met.entry(what.clone()).or_default();
            *again += 1;
            let name = Name::within(visit.exam, &format!("{what} {again}"));
            let observation = found.observation(visit, name);
            (name, Resource::Observation(Box::new(observation)))
        })
        .collect()
}

/// One finding, before it has a name.
struct Found {
    what: String,
    eye: Option<Eye>,
    value: Value,
    coding: Option<Coding>,
    method: Option<String>,
    note: Option<String>,
}

enum Value {
    Measure(Quantity),
    Parts(Vec<Component>),
    Words(String),
    /// Why there is none.
    Absent(String),
}

/// The one section version that holds, as findings.
fn section(exam: &Exam, kind: SectionKind) -> Vec<Found> {
    let Some(version) = exam.section(kind).settled() else {
        return Vec::new();
    };
    let mut found = measured(exam, version.value);
    let said = version.value.lines();
    let told = said
        .into_iter()
        .filter(|line| !is_measured(kind, &line.label));
    found.extend(told.flat_map(|line| words(kind, line)));
    found
}

/// Whether a line's figures are written as measures.
fn is_measured(kind: SectionKind, label: &str) -> bool {
    match kind {
        SectionKind::Acuity => label != "chart",
        SectionKind::Pressure => label != "how it was borne",
        SectionKind::Retinoscopy => label == "with the distance off",
        SectionKind::Subjective => label == "lens",
        SectionKind::Posterior => label == "cup to disc",
        _ => false,
    }
}

fn measured(exam: &Exam, section: &Section) -> Vec<Found> {
    match section {
        Section::Acuity(acuity) => read(acuity),
        Section::Pressure(pressure) => pressure.taken.iter().flat_map(taken).collect(),
        Section::Posterior(posterior) => cups(posterior),
        Section::Retinoscopy(retinoscopy) => {
            let net = |eye| retinoscopy.net(eye).map(|net| net.net);
            let nets = Eyes {
                right: net(Eye::Right),
                left: net(Eye::Left),
            };
            lenses("refraction by retinoscopy, distance off", nets)
        }
        Section::Subjective(chosen) => {
            let lens = chosen.eyes.map(|found| found.done().map(|eye| eye.lens));
            let mut found = lenses("refraction as chosen by the person", lens);
            found.extend(Eye::BOTH.into_iter().filter_map(|eye| {
                let why = exam.why_no_lens(eye)?;
                let what = "refraction as chosen by the person";
                chosen.eyes.of(eye).why_not()?;
                Some(Found::new(what, eye, Value::Absent(why)))
            }));
            found
        }
        _ => Vec::new(),
    }
}

fn read(acuity: &Acuity) -> Vec<Found> {
    let mut found = Vec::new();
    for (eye, read) in acuity.eyes.each() {
        for (what, seen) in [
            ("acuity for far, unaided", &read.unaided),
            ("acuity for far, with glasses", &read.with_glasses),
            ("acuity for far, through a pinhole", &read.pinhole),
        ] {
            let value = match seen {
                Finding::Done(seen) => match score(acuity, *seen) {
                    Some(score) => Value::Measure(score),
                    None => Value::Words(acuity.chart.in_words(seen)),
                },
                other => match other.why_not() {
                    Some(why) => Value::Absent(why),
                    None => continue,
                },
            };
            let note = seen.done().map(|seen| acuity.chart.in_words(seen));
            found.push(Found {
                note: note.filter(|_| matches!(value, Value::Measure(_))),
                ..Found::new(what, eye, value)
            });
        }
    }
    found
}

fn score(acuity: &Acuity, seen: Seen) -> Option<Quantity> {
    Some(quantity(
        Decimal::new(acuity.chart.logmar(&seen)?, 2)?,
        LOGMAR,
    ))
}

fn taken(taken: &Taken) -> Vec<Found> {
    let each = taken.eyes.each().into_iter();
    each.filter_map(|(eye, readings)| {
        let value = match (taken.mean_mmhg(eye), readings.why_not()) {
            (Some(mean), _) => Value::Measure(quantity(Decimal::new(mean, 1)?, MMHG)),
            (None, Some(why)) => Value::Absent(why),
            (None, None) => return None,
        };
        let said = readings.done().map(record::Readings::in_words);
        let note = [Some(taken.heading()), said].into_iter().flatten();
        Some(Found {
            coding: Some(codes::pressure(eye)),
            method: Some(taken.device.in_words()),
            note: Some(note.collect::<Vec<_>>().join("; ")),
            ..Found::new("pressure in the eye", eye, value)
        })
    })
    .collect()
}

fn cups(posterior: &Posterior) -> Vec<Found> {
    let each = posterior.eyes.each().into_iter();
    each.filter_map(|(eye, back)| {
        let value = match &back.cup_to_disc {
            Finding::Done(cup) => Value::Measure(quantity(Decimal::new(*cup, 2)?, RATIO)),
            other => Value::Absent(other.why_not()?),
        };
        Some(Found::new("cup to disc, vertical", eye, value))
    })
    .collect()
}

fn lenses(what: &str, lenses: Eyes<Option<SphereCyl>>) -> Vec<Found> {
    let each = lenses.each().into_iter();
    each.filter_map(|(eye, lens)| Some(Found::new(what, eye, Value::Parts(parts(&(*lens)?)))))
        .collect()
}

fn parts(lens: &SphereCyl) -> Vec<Component> {
    let part = |name: &str, value: Option<Decimal>, unit| {
        Some(Component {
            code: CodeableConcept::words(name),
            value_quantity: quantity(value?, unit),
        })
    };
    let cylinder = lens.cylinder;
    let degrees = cylinder.map(|cylinder| match cylinder.axis().degrees() {
        degrees if degrees < 0.05 => 180.0,
        degrees => degrees,
    });
    let parts = [
        part("sphere", Decimal::dioptres(lens.sphere), DIOPTRES),
        part(
            "cylinder",
            cylinder.and_then(|cylinder| Decimal::dioptres(cylinder.power())),
            DIOPTRES,
        ),
        part(
            "axis",
            degrees.and_then(|degrees| Decimal::new(degrees, 1)),
            DEGREES,
        ),
    ];
    parts.into_iter().flatten().collect()
}

fn words(kind: SectionKind, line: Line) -> Vec<Found> {
    let what = format!("{}: {}", kind.title(), line.label);
    let one = |eye, words: String| Found {
        what: what.clone(),
        eye,
        value: Value::Words(words),
        coding: None,
        method: None,
        note: None,
    };
    match line.said {
        Said::One(words) => vec![one(None, words)],
        Said::Eyes(eyes) => [(Eye::Right, eyes.right), (Eye::Left, eyes.left)]
            .into_iter()
            .filter(|(_, words)| words != "—")
            .map(|(eye, words)| one(Some(eye), words))
            .collect(),
    }
}

fn quantity(value: Decimal, Unit(unit, code): Unit) -> Quantity {
    Quantity {
        value,
        unit,
        system: UCUM,
        code,
    }
}

impl Found {
    fn new(what: &str, eye: Eye, value: Value) -> Self {
        Self {
            what: what.to_owned(),
            eye: Some(eye),
            value,
            coding: None,
            method: None,
            note: None,
        }
    }

    fn observation(self, visit: Visit<'_>, name: Name) -> Observation {
        let mut observation = Observation {
            id: name.id(),
            status: visit.found(),
            category: vec![CodeableConcept::code(EXAM)],
            code: CodeableConcept {
                coding: self.coding.into_iter().collect(),
                text: Some(self.what),
            },
            subject: visit.subject(),
            encounter: visit.encountered(),
            effective_date_time: visit.on(),
            performer: vec![visit.by()],
            value_quantity: None,
            value_string: None,
            data_absent_reason: None,
            note: self
                .note
                .map(|text| Annotation { text })
                .into_iter()
                .collect(),
            body_site: self
                .eye
                .map(|eye| CodeableConcept::words(format!("{} eye", eye.word()))),
            method: self.method.map(CodeableConcept::words),
            component: Vec::new(),
        };
        match self.value {
            Value::Measure(measure) => observation.value_quantity = Some(measure),
            Value::Parts(parts) => observation.component = parts,
            Value::Words(words) => observation.value_string = Some(words),
            Value::Absent(why) => {
                observation.data_absent_reason = Some(CodeableConcept {
                    coding: vec![NOT_PERFORMED],
                    text: Some(why),
                });
            }
        }
        observation
    }
}
