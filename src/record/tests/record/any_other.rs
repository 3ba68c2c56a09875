//! Any of the sections beside acuity, refraction and decision.

use chrono::{NaiveDate, NaiveTime};
use optics::prism::Prism;
use proptest::prelude::*;
use proptest::sample::select;
use record::{Eye, Section};

use crate::any_glasses::{binocular, fitting, near, order, worn_glasses};
use crate::any_health::{
    anterior, consent, drops, fields, history, posterior, pressure, pupils, sketches,
};

pub const WORDS: &str = ".{0,12}";

pub fn eye() -> impl Strategy<Value = Eye> {
    select(&Eye::BOTH[..])
}

pub fn prism() -> impl Strategy<Value = Prism> {
    (-60.0..60.0, -60.0..60.0).prop_map(|(h, v)| Prism::new(h, v).expect("finite"))
}

pub fn date() -> impl Strategy<Value = NaiveDate> {
    (0..20_000).prop_map(|days| NaiveDate::from_num_days_from_ce_opt(730_000 + days).expect("is"))
}

pub fn time() -> impl Strategy<Value = NaiveTime> {
    (0..86_400_u32)
        .prop_map(|second| NaiveTime::from_num_seconds_from_midnight_opt(second, 0).expect("is"))
}

/// Any of them. Boxed one by one: together they would be too large for a test's stack.
pub fn other_section() -> impl Strategy<Value = Section> {
    prop_oneof![
        history().boxed(),
        consent().boxed(),
        worn_glasses().boxed(),
        pupils().boxed(),
        near().boxed(),
        binocular().boxed(),
        pressure().boxed(),
        drops().boxed(),
        anterior().boxed(),
        posterior().boxed(),
        fields().boxed(),
        sketches().boxed(),
        order().boxed(),
        fitting().boxed(),
    ]
}
