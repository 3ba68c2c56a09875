//! Last time's findings from a prescription or a bundle.
//!
//! Nothing is guessed and nothing is dropped: what has no place here, or cannot be read, comes back as [`LeftOver`] with
//! where it stood, to be shown and kept in words.

mod beside;
mod left_over;
mod lens;
mod notes;

pub use left_over::LeftOver;

use ::words::papers::elsewhere as say;
use chrono::NaiveDate;
use optics::format::plain;
use record::{Decision, Section, Subjective, check};
use serde_json::Value;
use thiserror::Error;

use left_over::Reading;

/// Why nothing could be taken in.
#[derive(Debug, Error)]
pub enum ImportError {
    /// It is no JSON.
    #[error("{}", say::no_json(.line, .column))]
    NoJson {
        /// The line.
        line: usize,
        /// The place in it.
        column: usize,
    },
    /// It is JSON and something else.
    #[error("{}", say::no_prescription())]
    NoPrescription,
}

/// What was taken in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Imported {
    /// Each prescription, in the order of the file.
    pub earlier: Vec<Earlier>,
    /// What was found, and what to look at, one sentence each.
    pub report: Vec<String>,
    /// What belongs to no prescription and was not taken in.
    pub left_over: Vec<LeftOver>,
}

/// One prescription as last time's findings.
#[derive(Clone, Debug, PartialEq)]
pub struct Earlier {
    /// Whose it is, as the file names them.
    pub person: Option<String>,
    /// The day of birth that the file gives.
    pub born: Option<NaiveDate>,
    /// When it was written.
    pub on: NaiveDate,
    /// The lenses.
    pub subjective: Subjective,
    /// What of it has no place here.
    pub left_over: Vec<LeftOver>,
    /// What was found on the same visit, in words.
    pub found: Vec<LeftOver>,
}

impl Earlier {
    /// The sections that keep it: the lenses, and in words what has no place and what else was found.
    pub fn sections(&self) -> Vec<Section> {
        let mut sections = vec![Section::Subjective(self.subjective.clone())];
        let in_words = self.left_over.iter().chain(&self.found);
        let said: Vec<String> = in_words.map(ToString::to_string).collect();
        if !said.is_empty() {
            sections.push(Section::Decision(Decision {
                note: say::taken_from_elsewhere(&said.join("; ")),
                ..Decision::default()
            }));
        }
        sections
    }
}

/// Reads a prescription, or every prescription of a bundle.
///
/// # Errors
/// [`ImportError`] where it is no JSON, or has no prescription.
pub fn import(text: &str) -> Result<Imported, ImportError> {
    let root: Value =
        serde_json::from_str(text.trim_start_matches('\u{feff}')).map_err(|error| {
            ImportError::NoJson {
                line: error.line(),
                column: error.column(),
            }
        })?;
    let resources = resources(&root);
    let mut imported = Imported::default();
    let mut encounters = Vec::new();
    for (place, resource) in &resources {
        match kind(resource) {
            "VisionPrescription" => {
                let person = patient(resource, &resources);
                if imported.take(place, resource, person) {
                    encounters.push(beside::encounter(resource).map(str::to_owned));
                }
            }
            // Whose prescription it is stands with the prescription.
            "Patient" => {}
            _ => imported.left_over.extend(left_over::whole(place, resource)),
        }
    }
    if imported.earlier.is_empty() && imported.report.is_empty() {
        return Err(ImportError::NoPrescription);
    }
    imported.gather(&encounters);
    Ok(imported)
}

fn kind(resource: &Value) -> &str {
    resource["resourceType"].as_str().unwrap_or_default()
}

/// The resources of a bundle with the names by which others find them, or the one that stands alone.
fn resources(root: &Value) -> Vec<(String, &Value)> {
    if kind(root) != "Bundle" {
        return vec![(kind(root).to_owned(), root)];
    }
    let entries = root["entry"].as_array().into_iter().flatten();
    let each = entries.enumerate().map(|(place, entry)| {
        let named = entry["fullUrl"].as_str().map(str::to_owned);
        (
            named.unwrap_or_else(|| format!("entry {}", place + 1)),
            &entry["resource"],
        )
    });
    each.collect()
}

/// Whom a prescription is for: by its reference, within the file.
fn patient<'a>(prescription: &Value, resources: &[(String, &'a Value)]) -> Option<&'a Value> {
    let wanted = prescription["patient"]["reference"].as_str()?;
    let patients = resources
        .iter()
        .filter(|(_, resource)| kind(resource) == "Patient");
    let found = patients.into_iter().find(|(url, resource)| {
        url == wanted
            || resource["id"]
                .as_str()
                .is_some_and(|id| wanted.strip_prefix("Patient/") == Some(id))
    });
    found.map(|(_, resource)| *resource)
}

impl Imported {
    /// Takes a prescription in; says whether it could be.
    fn take(&mut self, place: &str, resource: &Value, patient: Option<&Value>) -> bool {
        let mut reading = Reading::of(resource);
        let Some(on) = written_on(resource) else {
            self.report.push(say::no_day(&place));
            self.left_over.extend(left_over::whole(place, resource));
            return false;
        };
        let mut subjective = Subjective::default();
        lens::read(&mut reading, &mut subjective);
        let faults = check(&Section::Subjective(subjective.clone()));
        if let Some(fault) = faults.first() {
            self.report.push(say::fault(&place, &fault.sentence));
            self.left_over.extend(left_over::whole(place, resource));
            return false;
        }
        let person = patient.and_then(named).or_else(|| {
            let display = resource["patient"]["display"].as_str();
            display.map(str::to_owned)
        });
        let who = person.as_deref().unwrap_or(say::nobody_named());
        let holds = reading.count_in_words();
        self.report.push(say::prescription(&who, &on, &holds));
        self.report.append(&mut reading.report);
        if reading.lenses > 0 {
            self.report.push(chart_stands_in(&subjective));
        }
        self.earlier.push(Earlier {
            person,
            born: patient.and_then(|patient| patient["birthDate"].as_str()?.parse().ok()),
            on,
            subjective,
            left_over: reading.rest(),
            found: Vec::new(),
        });
        true
    }
}

/// No prescription tells how far off the chart was, and the section has no place for not knowing it.
fn chart_stands_in(subjective: &Subjective) -> String {
    let far = plain(subjective.chart.used_at_m, 2);
    say::chart_stands_in(&far)
}

/// The day of `dateWritten`, else of `created`.
fn written_on(resource: &Value) -> Option<NaiveDate> {
    let day = |field: &str| resource[field].as_str()?.get(..10)?.parse().ok();
    day("dateWritten").or_else(|| day("created"))
}

fn named(patient: &Value) -> Option<String> {
    let name = &patient["name"][0];
    if let Some(text) = name["text"].as_str() {
        return Some(text.to_owned());
    }
    let given = name["given"].as_array().into_iter().flatten();
    let parts = given.chain([&name["family"]]).filter_map(Value::as_str);
    let parts: Vec<&str> = parts.collect();
    (!parts.is_empty()).then(|| parts.join(" "))
}
