//! What stands beside a prescription: findings of the same encounter, kept with it in words.

use ::words::papers::elsewhere as say;
use serde_json::Value;

use super::{Imported, LeftOver, kind};

/// Fields of a finding that tell whose it is and where it belongs, or that are said in words here.
const SAID: [&str; 15] = [
    "resourceType",
    "id",
    "status",
    "category",
    "code",
    "subject",
    "encounter",
    "effectiveDateTime",
    "performer",
    "valueQuantity",
    "valueString",
    "dataAbsentReason",
    "bodySite",
    "component",
    "method",
];

impl Imported {
    /// Takes what was left of the encounter of each prescription to it: what was found on the same visit is kept with its lenses.
    pub(super) fn gather(&mut self, encounters: &[Option<String>]) {
        let left = std::mem::take(&mut self.left_over);
        for one in left {
            let on = encounter(&one.value);
            let place = encounters
                .iter()
                .position(|known| on.is_some() && known.as_deref() == on);
            match place.and_then(|place| self.earlier.get_mut(place)) {
                Some(earlier) if kind(&one.value) == "Observation" => {
                    earlier.found.push(in_words(one));
                }
                _ => self.left_over.push(one),
            }
        }
        for (at, earlier) in self.earlier.iter().enumerate() {
            if earlier.found.is_empty() {
                continue;
            }
            let said = say::found_beside(earlier.found.len());
            self.report.push(match self.earlier.len() {
                1 => said,
                _ => say::of_prescription(&(at + 1), &said),
            });
        }
    }
}

/// The encounter that something belongs to.
pub(super) fn encounter(resource: &Value) -> Option<&str> {
    resource["encounter"]["reference"].as_str()
}

/// A finding in words, `visual acuity without glasses, right eye: 6/12`; one with more than words can tell stays whole.
fn in_words(finding: LeftOver) -> LeftOver {
    let value = &finding.value;
    let fields = value.as_object().into_iter().flatten();
    let mut notes = Vec::new();
    for (field, said) in fields.filter(|(field, _)| !SAID.contains(&field.as_str())) {
        match (field.as_str(), note(said)) {
            ("note", Some(words)) => notes.push(words),
            _ => return finding,
        }
    }
    let (Some(what), Some(told)) = (concept(&value["code"]), told(value)) else {
        return finding;
    };
    let eye = concept(&value["bodySite"]).map(|eye| format!(", {eye}"));
    let how = concept(&value["method"]).map(|how| format!(", {how}"));
    let place = [Some(what), eye, how].into_iter().flatten().collect();
    let value = Value::String([vec![told], notes].concat().join("; "));
    LeftOver { place, value }
}

fn concept(concept: &Value) -> Option<String> {
    let text = concept["text"].as_str();
    let display = || concept["coding"][0]["display"].as_str();
    text.or_else(display).map(str::to_owned)
}

fn told(finding: &Value) -> Option<String> {
    if let Some(words) = finding["valueString"].as_str() {
        return Some(words.to_owned());
    }
    if let Some(measure) = quantity(&finding["valueQuantity"]) {
        return Some(measure);
    }
    if let Some(why) = concept(&finding["dataAbsentReason"]) {
        return Some(say::not_done(&why));
    }
    let parts = finding["component"].as_array()?.iter();
    let each: Option<Vec<String>> = parts
        .map(|part| {
            let measure = quantity(&part["valueQuantity"])?;
            Some(format!("{} {measure}", concept(&part["code"])?))
        })
        .collect();
    each.map(|each| each.join(", "))
}

fn quantity(quantity: &Value) -> Option<String> {
    let unit = quantity["unit"].as_str().or(quantity["code"].as_str())?;
    Some(format!("{} {unit}", quantity["value"].as_number()?))
}

fn note(notes: &Value) -> Option<String> {
    let each: Option<Vec<&str>> = notes
        .as_array()?
        .iter()
        .map(|note| note["text"].as_str())
        .collect();
    each.map(|each| each.join("; "))
}
