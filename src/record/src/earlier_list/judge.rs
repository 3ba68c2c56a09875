//! Every row judged: taken as a whole, or kept aside as a whole.

use ::words::record::lists as say;
use chrono::{NaiveDate, NaiveTime};
use optics::{Eye, Eyes, SphereCyl};

use super::acuity::{self, Read};
use super::cells;
use super::columns::Mapping;
use super::field::Field;
use super::whom::{Said, Whom};
use super::{Fault, Row, Table};
use crate::check::check;
use crate::finding::Finding;
use crate::home_list::judged::{each, fault, slipped};
use crate::home_list::{self, held};
use crate::ids::PersonId;
use crate::manner::Manner;
use crate::person::{Name, Person};
use crate::sections::{
    Acuity, Chart, Decision, Device, NearAdd, OneOf, Pressure, Readings, Section, Seen, Subjective,
    SubjectiveEye, Taken,
};
use crate::story::Story;

/// The usual reading distance in centimetres, where the file says none. Common practice, no source.
const USUAL_CM: f64 = 40.0;

/// A row and what is thought of it.
pub type Judged = home_list::Judged<Earlier>;

/// What was found of somebody on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct Earlier {
    /// Who.
    pub person: PersonId,
    /// When.
    pub on: NaiveDate,
    /// What was found, and in words what has no place of its own.
    pub sections: Vec<Section>,
}

/// Judges every row: one exam of a person a day. `today` tells which dates lie in the future.
pub fn judge(table: &Table, mapping: &Mapping, story: &Story, today: NaiveDate) -> Vec<Judged> {
    let plus_is_left_out = |field| cells::leaves_plus_out(mapping.values(table, field));
    let bench = Bench {
        table,
        mapping,
        story,
        whom: Whom::of(story),
        today,
        plain: Eyes {
            right: plus_is_left_out(Field::Sphere(Eye::Right)),
            left: plus_is_left_out(Field::Sphere(Eye::Left)),
        },
    };
    each(
        table,
        |row| bench.judge(row),
        |earlier| (earlier.person, earlier.on),
        |_, line| say::same_day_already(&line),
    )
}

struct Bench<'a> {
    table: &'a Table,
    mapping: &'a Mapping,
    story: &'a Story,
    whom: Whom<'a>,
    today: NaiveDate,
    /// Whether the spheres of an eye are plain numbers, without plus signs.
    plain: Eyes<bool>,
}

/// A row while it is read.
struct Reading<'a> {
    bench: &'a Bench<'a>,
    row: &'a Row,
    faults: Vec<Fault>,
    /// What has no place of its own.
    words: Vec<String>,
}

impl Bench<'_> {
    fn judge(&self, row: &Row) -> Result<Earlier, Vec<Fault>> {
        let mut reading = Reading {
            bench: self,
            row,
            faults: slipped(self.table, row).into_iter().collect(),
            words: Vec::new(),
        };
        let person = reading.person();
        let on = reading.on(person);
        let sections = reading.sections();
        match (person, on) {
            (Some(person), Some(on)) if reading.faults.is_empty() => Ok(Earlier {
                person: person.id(),
                on,
                sections,
            }),
            _ => Err(reading.faults),
        }
    }
}

impl<'a> Reading<'a> {
    fn text(&self, field: Field) -> &'a str {
        let Bench { table, mapping, .. } = self.bench;
        mapping.text(table, self.row, field)
    }

    fn amiss(&mut self, field: Field, sentence: impl Into<String>) {
        let Bench { table, mapping, .. } = self.bench;
        let column = held::heading(&mapping.columns, table, field);
        self.faults.push(fault(self.row, column, sentence));
    }

    /// What a cell says, read; nothing where it is blank or amiss.
    fn cell<T>(&mut self, field: Field, read: impl FnOnce(&str) -> Result<T, String>) -> Option<T> {
        let text = self.text(field);
        if text.is_empty() {
            return None;
        }
        read(text)
            .map_err(|sentence| self.amiss(field, sentence))
            .ok()
    }

    fn person(&mut self) -> Option<&'a Person> {
        let order = self.bench.mapping.dates;
        let today = self.bench.today;
        let born = self.cell(Field::Born, |text| {
            let read = order.read(text, today);
            read.ok_or_else(|| say::no_date(&text))
        });
        let said = Said {
            name: self.name(),
            born,
            number: self.text(Field::Identifier),
        };
        let found = self.bench.whom.find(&said);
        let place = [Field::Identifier, Field::Name, Field::Family];
        let place = place
            .into_iter()
            .find(|field| !self.text(*field).is_empty());
        found
            .map_err(|sentence| self.amiss(place.unwrap_or(Field::Name), sentence))
            .ok()
    }

    fn name(&self) -> Option<Name> {
        let Bench { table, mapping, .. } = self.bench;
        let name = held::name(&mapping.columns, table, self.row, Field::NAMES);
        (!name.family.is_empty()).then_some(name)
    }

    fn on(&mut self, person: Option<&Person>) -> Option<NaiveDate> {
        let (order, today) = (self.bench.mapping.dates, self.bench.today);
        if self.text(Field::On).is_empty() {
            self.amiss(Field::On, say::which_day());
            return None;
        }
        let on = self.cell(Field::On, |text| {
            let read = order.read_past(text, today);
            read.ok_or_else(|| say::no_date(&text))
        })?;
        let said = Manner::default().date(on);
        if on > today {
            self.amiss(Field::On, say::still_to_come(&said));
        }
        let exams = person.map(|person| self.bench.story.exams_of(&person.id()));
        let mut of_day = exams.into_iter().flatten();
        match of_day.find(|exam| exam.opened_on() == on) {
            Some(known) if known.is_from_elsewhere() => {
                self.amiss(Field::On, say::taken_over_already(&said))
            }
            Some(_) => self.amiss(Field::On, say::on_record_already(&said)),
            None => {}
        }
        Some(on)
    }

    /// Everything that was found, each section checked as one that is filled in by hand.
    fn sections(&mut self) -> Vec<Section> {
        let before = self.faults.len();
        let lenses = Eyes {
            right: self.lens(Eye::Right),
            left: self.lens(Eye::Left),
        };
        let mut sections = self.seen(&lenses);
        sections.extend(self.pressure().map(Section::Pressure));
        if sections.is_empty() && self.faults.len() == before {
            self.faults.push(fault(self.row, None, say::no_finding()));
        }
        for section in &sections {
            for error in check(section) {
                let sentence = format!("{}: {}", section.kind().title(), error.sentence);
                self.faults.push(fault(self.row, None, sentence));
            }
        }
        sections.extend(self.rest());
        sections
    }

    fn lens(&mut self, eye: Eye) -> Option<SphereCyl> {
        let whole = self.cell(Field::Lens(eye), |text| {
            SphereCyl::parse(text).map_err(|error| error.to_string())
        });
        if whole.is_some() {
            return whole;
        }
        let plain = *self.bench.plain.of(eye);
        let sphere = self.cell(Field::Sphere(eye), |text| cells::power(text, plain));
        let cylinder = self.cell(Field::Cylinder(eye), |text| {
            // Nothing tells plus from minus cylinders but the sign.
            cells::power(text, text.chars().all(|sign| "0.,".contains(sign)))
        });
        let Some(sphere) = sphere else {
            if cylinder.is_some() && self.text(Field::Sphere(eye)).is_empty() {
                self.amiss(Field::Cylinder(eye), say::no_sphere());
            }
            return None;
        };
        let axis = self.text(Field::Axis(eye));
        cells::lens(sphere, cylinder, axis)
            .map_err(|sentence| self.amiss(Field::Axis(eye), sentence))
            .ok()
    }

    /// The lenses with what was read through them, and what was read otherwise.
    fn seen(&mut self, lenses: &Eyes<Option<SphereCyl>>) -> Vec<Section> {
        let (mut subjective, mut acuity) = (Subjective::default(), Acuity::default());
        let (mut through, mut otherwise) = (Vec::new(), Vec::new());
        let mut any = false;
        for eye in Eye::BOTH {
            let read = self.acuity(Field::Acuity(eye));
            if let Some(lens) = *lenses.of(eye) {
                *subjective.eyes.of_mut(eye) = Finding::Done(SubjectiveEye {
                    lens,
                    acuity: read.map(|read| read.seen),
                });
                through.extend(read);
                any = true;
            } else if let Some(read) = read {
                acuity.eyes.of_mut(eye).with_glasses = Finding::Done(read.seen);
                otherwise.push(read);
            }
            if let Some(read) = self.acuity(Field::Unaided(eye)) {
                acuity.eyes.of_mut(eye).unaided = Finding::Done(read.seen);
                otherwise.push(read);
            }
        }
        self.add(&mut subjective, any);
        subjective.chart = self.chart(&through);
        acuity.chart = self.chart(&otherwise);
        let lenses = any.then_some(Section::Subjective(subjective));
        let read = (!otherwise.is_empty()).then_some(Section::Acuity(acuity));
        lenses.into_iter().chain(read).collect()
    }

    fn acuity(&mut self, field: Field) -> Option<Read> {
        let bare = self.bench.mapping.bare;
        let read = self.cell(field, |text| acuity::read(text, bare))?;
        if !read.as_written {
            let text = self.text(field);
            self.words.push(format!("{}: {text}", field.in_words()));
        }
        Some(read)
    }

    /// The chart that all of these were read from.
    fn chart(&mut self, read: &[Read]) -> Chart {
        let lines = read
            .iter()
            .filter(|read| matches!(read.seen, Seen::Line { .. }));
        let mut distances = lines.filter_map(|read| read.used_at_m);
        let first = distances.next();
        let used_at_m = first.unwrap_or(acuity::MADE_FOR_M);
        if distances.any(|other| (other - used_at_m).abs() > f64::EPSILON) {
            let sentence = say::different_distances();
            self.faults.push(fault(self.row, None, sentence));
        }
        Chart {
            made_for_m: acuity::MADE_FOR_M,
            used_at_m,
        }
    }

    fn add(&mut self, subjective: &mut Subjective, any_lens: bool) {
        // An addition is never minus.
        let power = self.cell(Field::Add, |text| cells::power(text, true));
        let Some(power) = power.filter(|power| *power != 0.0) else {
            return;
        };
        if !any_lens {
            self.amiss(Field::Add, say::added_to_no_lens());
            return;
        }
        self.words.push(say::addition_distance(&USUAL_CM));
        let at_cm = USUAL_CM;
        subjective.add = Some(NearAdd { power, at_cm });
    }

    /// The pressures. With what and when they were taken such files seldom say, and here it is said that they did not.
    fn pressure(&mut self) -> Option<Pressure> {
        let mut eyes: Eyes<Finding<Readings>> = Eyes::default();
        for eye in Eye::BOTH {
            if let Some(mmhg) = self.cell(Field::Pressure(eye), cells::pressure) {
                *eyes.of_mut(eye) = Finding::Done(Readings { mmhg: vec![mmhg] });
            }
        }
        if Eye::BOTH.iter().all(|eye| eyes.of(*eye).is_blank()) {
            return None;
        }
        let taken = Taken {
            device: Device::Other(say::instrument_not_said().to_owned()),
            at: NaiveTime::MIN,
            after_dilating: false,
            eyes,
            note: say::time_not_said().to_owned(),
        };
        Some(Pressure { taken: vec![taken] })
    }

    /// In words what has no place of its own, where there is any.
    fn rest(&mut self) -> Option<Section> {
        let Bench { table, mapping, .. } = self.bench;
        for column in mapping.of(Field::Note) {
            let note = table.cell(self.row, column);
            if !note.is_empty() {
                let heading = table.column_name(column);
                self.words.push(format!("{heading}: {note}"));
            }
        }
        (!self.words.is_empty()).then(|| {
            Section::Decision(Decision {
                note: say::taken_from_elsewhere(&self.words.join("; ")),
                ..Decision::default()
            })
        })
    }
}
