//! One lens of a prescription.

use ::words::papers::elsewhere as say;
use optics::SphereCyl;
use record::{Eye, Finding, NearAdd, Subjective, SubjectiveEye};
use serde_json::Value;

use super::left_over::Reading;
use super::notes::Note;

/// The usual reading distance, where nothing says another. Common practice, no source.
const USUAL_CM: f64 = 40.0;

/// Reads every lens of a prescription.
pub(super) fn read(reading: &mut Reading<'_>, subjective: &mut Subjective) {
    let mut at_cm = None;
    let mut adds: Vec<(Eye, f64)> = Vec::new();
    for (place, lens) in reading.lenses() {
        let eye = match lens["eye"].as_str() {
            Some("right") => Eye::Right,
            Some("left") => Eye::Left,
            _ => {
                reading.report.push(say::which_eye(&place));
                reading.keep(place, lens);
                continue;
            }
        };
        if is_contact(lens) {
            reading.report.push(say::contact_lens(&place));
            reading.keep(place, lens);
            continue;
        }
        if !subjective.eyes.of(eye).is_blank() {
            reading.report.push(say::second_lens(&place, &eye.said()));
            reading.keep(place, lens);
            continue;
        }
        let mut axis = number(&lens["axis"]);
        for note in notes(&place, lens, reading) {
            match note {
                Note::AdditionFor(cm) => at_cm = Some(cm),
                Note::Vertex(mm) => subjective.vertex_mm = Some(mm),
                Note::Axis(degrees) => axis = Some(degrees),
            }
        }
        match power(lens, axis) {
            Ok(power) => {
                reading.lenses += 1;
                *subjective.eyes.of_mut(eye) = Finding::Done(SubjectiveEye {
                    lens: power,
                    acuity: None,
                });
                adds.extend(number(&lens["add"]).map(|add| (eye, add)));
                others(&place, lens, reading);
            }
            Err(sentence) => {
                reading.report.push(say::fault(&place, &sentence));
                reading.keep(place, lens);
            }
        }
    }
    addition(reading, subjective, &adds, at_cm);
}

fn is_contact(lens: &Value) -> bool {
    let codings = lens["product"]["coding"].as_array().into_iter().flatten();
    codings
        .into_iter()
        .any(|coding| coding["code"] == "contact")
}

fn number(value: &Value) -> Option<f64> {
    value.as_f64().filter(|number| number.is_finite())
}

/// Sphere and cylinder; a cylinder without an axis is none that anybody could make. FHIR allows axes from −180.
fn power(lens: &Value, axis: Option<f64>) -> Result<SphereCyl, String> {
    let sphere = number(&lens["sphere"]).ok_or_else(say::no_sphere)?;
    let cylinder = number(&lens["cylinder"]).unwrap_or_default();
    if cylinder == 0.0 {
        return Ok(SphereCyl::sphere(sphere));
    }
    let axis = axis.ok_or_else(say::no_axis)?;
    let axis = if (-180.0..0.0).contains(&axis) {
        axis + 180.0
    } else {
        axis
    };
    SphereCyl::new(sphere, cylinder, axis).map_err(|error| error.to_string())
}

/// Our own notes; every other is kept.
fn notes(place: &str, lens: &Value, reading: &mut Reading<'_>) -> Vec<Note> {
    let mut known = Vec::new();
    let notes = lens["note"].as_array().into_iter().flatten();
    for (number, note) in notes.enumerate() {
        let alone = note.as_object().is_some_and(|note| note.len() == 1);
        match note["text"].as_str().filter(|_| alone).and_then(Note::read) {
            Some(note) => known.push(note),
            None => reading.keep(format!("{place}.note[{number}]"), note),
        }
    }
    known
}

/// What of a lens was read, or says no more than that it is one.
const READ: [&str; 7] = [
    "product", "eye", "sphere", "cylinder", "axis", "add", "note",
];

fn others(place: &str, lens: &Value, reading: &mut Reading<'_>) {
    for (field, value) in lens.as_object().into_iter().flatten() {
        if !READ.contains(&field.as_str()) {
            reading.keep(format!("{place}.{field}"), value);
        }
    }
}

/// One addition for both eyes; where they differ neither is taken.
fn addition(
    reading: &mut Reading<'_>,
    subjective: &mut Subjective,
    adds: &[(Eye, f64)],
    at_cm: Option<f64>,
) {
    let adds: Vec<_> = adds.iter().filter(|(_, add)| *add != 0.0).collect();
    let [(_, first), rest @ ..] = adds.as_slice() else {
        return;
    };
    // Additions are written in hundredths of a dioptre.
    if rest.iter().any(|(_, other)| (other - first).abs() > 0.001) {
        reading.report.push(say::additions_differ().to_owned());
        for (eye, add) in adds {
            let value = Value::from(*add);
            reading.keep(say::addition_of(&eye.said()), &value);
        }
        return;
    }
    if at_cm.is_none() {
        reading.report.push(say::addition_distance(&USUAL_CM));
    }
    subjective.add = Some(NearAdd {
        power: *first,
        at_cm: at_cm.unwrap_or(USUAL_CM),
    });
}
