//! A made-up person: who they are, how they live, what their eyes are, and when they are visited.

use chrono::{Datelike, Days, NaiveDate, NaiveDateTime, NaiveTime, TimeDelta};
use optics::SphereCyl;
use record::{
    Born, Chart, Contact, Doctor, Eyes, Identifier, LooksAt, Mobility, Name, PersonDetails,
};

use crate::PEOPLE;
use crate::chance::Chance;
use crate::course::Course;
use crate::eye::{self, TrueEye};
use crate::names::{DOCTORS, FAMILY, GIVEN, HEARING, HOMES, LANGUAGES, NOTES, RELATIONS};

/// Yearly visits to each home.
const VISITS: usize = 5;

/// Days since the last visit to each home.
const SINCE: [u64; 3] = [40, 130, 250];

/// Whole weeks that are about a year, so that visits fall on one day of the week.
const YEAR_DAYS: u64 = 364;

/// How many are seen in a day.
const A_DAY: usize = 10;

/// How people in homes get about; the shares are this project's own choice.
const MOBILITIES: [&Mobility; 8] = [
    &Mobility::WalksAlone,
    &Mobility::WithAid,
    &Mobility::WithAid,
    &Mobility::WithAid,
    &Mobility::WithHelp,
    &Mobility::Chair,
    &Mobility::Chair,
    &Mobility::Bed,
];

/// A person as they are.
#[derive(Clone, Debug)]
pub struct Somebody {
    pub details: PersonDetails,
    pub course: Course,
    pub eyes: Eyes<TrueEye>,
    /// The lenses worn for far, as they were made.
    pub worn: Eyes<SphereCyl>,
    /// Whether they can decide about an examination.
    pub decides: bool,
    pub mobility: Mobility,
    /// The chart in their room.
    pub chart: Chart,
    place: usize,
}

impl Somebody {
    pub fn born(place: usize, today: NaiveDate, chance: &mut Chance) -> Self {
        let course = Course::of(place);
        let eyes = eye::pair(course, chance);
        // Made two years before the first visit: a little more plus, as eyes of that age were then.
        let worn = eyes.map(|eye| {
            let made = eye.found([0.12, 0.06, 0.06], chance);
            made.with_sphere_changed(0.13)
                .rounded(optics::Step::Quarter)
                .value
        });
        Self {
            details: details(place, today, chance),
            course,
            eyes,
            worn,
            decides: !chance.one_in(6),
            mobility: *chance.pick(&MOBILITIES),
            chart: chart(course, chance),
            place,
        }
    }

    pub fn grow_older(&mut self, chance: &mut Chance) {
        self.eyes = eye::a_year_older(&self.eyes, self.course, chance);
    }

    /// When each visit begins, oldest first. Ten a day, by room; a few moved in later and have fewer.
    pub fn visits(&self, today: NaiveDate) -> Vec<NaiveDateTime> {
        let (home, room) = (self.place % HOMES.len(), self.place / HOMES.len());
        let begins = NaiveTime::from_hms_opt(9, 0, 0).unwrap_or_default();
        let minutes = TimeDelta::minutes(35) * i32::try_from(room % A_DAY).unwrap_or_default();
        let moved_in = if self.place % 9 == 4 { 3 } else { 0 };
        let back = (0..VISITS).rev().skip(moved_in);
        let days = back.filter_map(|years| {
            let second_day = (room / A_DAY) as u64;
            let since = SINCE[home] + YEAR_DAYS * years as u64 - second_day;
            today.checked_sub_days(Days::new(since))
        });
        days.map(|day| day.and_time(begins) + minutes).collect()
    }
}

/// Half of the rooms are long enough for six metres; who sees little is shown the chart close by.
fn chart(course: Course, chance: &mut Chance) -> Chart {
    let (made_for_m, used_at_m) = match course {
        Course::LowVision => (6.0, 2.0),
        _ if chance.one_in(2) => (6.0, 6.0),
        _ => (3.0, 3.0),
    };
    Chart {
        made_for_m,
        used_at_m,
    }
}

fn details(place: usize, today: NaiveDate, chance: &mut Chance) -> PersonDetails {
    let (home, room) = (place % HOMES.len(), place / HOMES.len());
    let family = FAMILY[place % FAMILY.len()];
    // Whoever shares a family name has another given name: 24 and 30 go apart after 30.
    let given = GIVEN[(place + 7 * (place / FAMILY.len())) % GIVEN.len()];
    let (doctor, practice) = DOCTORS[home];
    PersonDetails {
        name: Name {
            given: given.into(),
            family: family.into(),
        },
        born: Some(birth(place, today, chance)),
        place: HOMES[home].into(),
        room: (room + 1).to_string(),
        note: chance.pick(&NOTES).into(),
        identifiers: vec![Identifier {
            number: format!(
                "ZZ {:04} {:02}",
                1000 + chance.next() % 9000,
                place % PEOPLE
            ),
            issuer: "made-up health service".into(),
        }],
        contacts: vec![Contact {
            name: format!("{} {family}", chance.pick(&GIVEN)),
            relation: chance.pick(&RELATIONS).into(),
            reach: "through the home".into(),
        }],
        doctor: Doctor {
            name: doctor.into(),
            practice: practice.into(),
            reach: String::new(),
        },
        hearing: chance.pick(&HEARING).into(),
        language: chance.pick(&LANGUAGES).into(),
        looks_at: looks_at(chance),
        ..PersonDetails::default()
    }
}

/// Between 68 and 97; of one in twelve only an age is known.
fn birth(place: usize, today: NaiveDate, chance: &mut Chance) -> Born {
    let years = 68 + (chance.next() % 30) as u16;
    let days = chance.next() % 365;
    if place % 12 == 11 {
        return Born::Stated {
            years,
            in_year: today.year(),
        };
    }
    let born = today
        .with_day(1)
        .and_then(|day| day.with_year(today.year() - i32::from(years)))
        .and_then(|day| day.checked_sub_days(Days::new(days)));
    Born::Date(born.unwrap_or(today))
}

fn looks_at(chance: &mut Chance) -> Vec<LooksAt> {
    let television = LooksAt {
        what: "television".into(),
        at_cm: Some(180 + 10 * (chance.next() % 20) as u16),
    };
    let near = [
        "reading",
        "knitting",
        "puzzles or cards",
        "a screen in the hand",
    ];
    let near = LooksAt {
        what: chance.pick(&near).into(),
        at_cm: Some(35 + (chance.next() % 8) as u16),
    };
    vec![television, near]
}
