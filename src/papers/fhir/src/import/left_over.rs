//! What is read out of a resource, and what stays behind.

use ::words::papers::elsewhere as say;
use serde_json::Value;

/// Something that was not taken in.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOver {
    /// Where it stood: `lensSpecification[0].prism`.
    pub place: String,
    /// What stood there.
    pub value: Value,
}

impl std::fmt::Display for LeftOver {
    /// `lensSpecification[0].prism is [{"amount":0.5,"base":"down"}]`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&match &self.value {
            Value::String(words) => say::left_says(&self.place, words),
            other => say::left_is(&self.place, other),
        })
    }
}

/// A whole resource that was not taken in.
pub(super) fn whole(place: &str, resource: &Value) -> Option<LeftOver> {
    (!resource.is_null()).then(|| LeftOver {
        place: place.to_owned(),
        value: resource.clone(),
    })
}

/// Fields that say whose a prescription is and where it belongs: they were followed or are told by the report.
const FOLLOWED: [&str; 9] = [
    "resourceType",
    "id",
    "status",
    "created",
    "dateWritten",
    "patient",
    "encounter",
    "prescriber",
    "lensSpecification",
];

/// A prescription while it is read.
pub(super) struct Reading<'a> {
    resource: &'a Value,
    /// What to look at, one sentence each.
    pub report: Vec<String>,
    /// How many lenses were taken.
    pub lenses: usize,
    rest: Vec<LeftOver>,
}

impl<'a> Reading<'a> {
    pub fn of(resource: &'a Value) -> Self {
        let fields = resource.as_object().into_iter().flatten();
        let unknown = fields.filter(|(field, _)| !FOLLOWED.contains(&field.as_str()));
        let rest = unknown.map(|(field, value)| LeftOver {
            place: field.clone(),
            value: value.clone(),
        });
        let mut reading = Self {
            resource,
            report: Vec::new(),
            lenses: 0,
            rest: rest.collect(),
        };
        if let Some(status @ ("cancelled" | "entered-in-error")) = resource["status"].as_str() {
            reading.report.push(say::mind_status(&status));
        }
        reading
    }

    /// Its lenses, each with its place.
    pub fn lenses(&self) -> Vec<(String, &'a Value)> {
        let lenses = self.resource["lensSpecification"].as_array();
        let each = lenses.into_iter().flatten().enumerate();
        each.map(|(place, lens)| (format!("lensSpecification[{place}]"), lens))
            .collect()
    }

    /// Keeps what was not taken in.
    pub fn keep(&mut self, place: String, value: &Value) {
        self.rest.push(LeftOver {
            place,
            value: value.clone(),
        });
    }

    pub fn count_in_words(&self) -> String {
        let lenses = say::lenses(self.lenses);
        match self.rest.len() {
            0 => lenses,
            rest => say::lenses_and_rest(&lenses, rest),
        }
    }

    pub fn rest(self) -> Vec<LeftOver> {
        self.rest
    }
}
