//! How a text is read for each kind of ask.

use super::asked::Kind;
use super::error::{NumberOf, Unread};
use crate::acuity::{Acuity, LogMar, Print, Written};
use crate::far::FOOT_M;
use crate::limits::{self, Limit, Unit};
use crate::prism::Prism;
use crate::retinoscopy::WorkingDistance;
use crate::tolerance::ReadTo;
use crate::written::parse_power;
use crate::{Cell, Eye, Meridian, MeridianPower, SphereCyl};
use ::words::{Language, in_language};

/// Whether a text is good for its kind by itself.
pub(super) fn check(text: &str, kind: Kind) -> Result<(), Unread> {
    match kind {
        Kind::Lens => lens(text, kind).map(drop),
        Kind::Surface => surface(text, kind).map(drop),
        Kind::Readings => readings(text, kind).map(drop),
        Kind::Meridians => meridians(text, kind).map(drop),
        Kind::Power(_) => power(text, kind).map(drop),
        Kind::Number(_) => number(text, kind).map(drop),
        Kind::Whole(_) => whole(text, kind).map(drop),
        Kind::Acuity => acuity(text, kind).map(drop),
        Kind::Line => line(text, kind).map(drop),
        Kind::Print => print(text, kind).map(drop),
        // Whether it can be read does not hang on the eye.
        Kind::Prism => prism(text, Eye::Right).map(drop),
        Kind::Eye => eye(text, kind).map(drop),
        Kind::Cell => cell(text, kind).map(drop),
        Kind::ReadTo => read_to(text, kind).map(drop),
    }
}

pub(super) fn lens(text: &str, _: Kind) -> Result<SphereCyl, Unread> {
    let lens = SphereCyl::parse(text)?;
    limits::lens(&lens)?;
    Ok(lens)
}

pub(super) fn surface(text: &str, _: Kind) -> Result<SphereCyl, Unread> {
    let surface = SphereCyl::parse(text)?;
    for meridian in surface.principal() {
        limits::surface(meridian.power)?;
    }
    Ok(surface)
}

pub(super) fn readings(text: &str, kind: Kind) -> Result<Vec<SphereCyl>, Unread> {
    text.split(';').map(|reading| lens(reading, kind)).collect()
}

pub(super) fn meridians(text: &str, _: Kind) -> Result<Vec<MeridianPower>, Unread> {
    text.split(';').map(in_a_meridian).collect()
}

fn in_a_meridian(text: &str) -> Result<MeridianPower, Unread> {
    let parts = text.split_once('@').ok_or_else(|| Unread::NoMeridian {
        text: text.trim().to_owned(),
    });
    let (power, meridian) = parts?;
    let power = limits::meridian_power(parse_power(power)?)?;
    let degrees = plain_number(meridian, Some(limits::MERIDIAN))?;
    let meridian = Meridian::new(degrees)?;
    Ok(MeridianPower { meridian, power })
}

pub(super) fn power(text: &str, kind: Kind) -> Result<f64, Unread> {
    within(kind, parse_power(text)?)
}

pub(super) fn number(text: &str, kind: Kind) -> Result<f64, Unread> {
    within(kind, plain_number(text, limit(kind))?)
}

pub(super) fn whole(text: &str, kind: Kind) -> Result<u8, Unread> {
    let value = number(text, kind)?;
    if value.fract() == 0.0 && (0.0..=f64::from(u8::MAX)).contains(&value) {
        Ok(value as u8)
    } else {
        Err(Unread::NotWhole {
            text: text.to_owned(),
        })
    }
}

pub(super) fn working_distance(text: &str, kind: Kind) -> Result<WorkingDistance, Unread> {
    Ok(WorkingDistance::from_cm(number(text, kind)?)?)
}

pub(super) fn acuity(text: &str, _: Kind) -> Result<Acuity, Unread> {
    Ok(text.parse::<Written>()?.into())
}

pub(super) fn line(text: &str, kind: Kind) -> Result<LogMar, Unread> {
    match acuity(text, kind)? {
        Acuity::Measured(read) => Ok(read),
        Acuity::Category(_) => Err(Unread::NotMeasured {
            text: text.to_owned(),
        }),
    }
}

pub(super) fn print(text: &str, _: Kind) -> Result<Print, Unread> {
    Ok(text.parse()?)
}

pub(super) fn prism(text: &str, eye: Eye) -> Result<Prism, Unread> {
    Ok(Prism::read(text, eye)?)
}

pub(super) fn eye(text: &str, _: Kind) -> Result<Eye, Unread> {
    in_any_language(|| one_of(text, &Eye::BOTH.map(|eye| (eye.said(), eye))))
}

pub(super) fn cell(text: &str, _: Kind) -> Result<Cell, Unread> {
    in_any_language(|| one_of(text, &Cell::ALL.map(|cell| (cell.to_string(), cell))))
}

/// What is read in any language; why not, in the one that is spoken.
fn in_any_language<T>(read: impl Fn() -> Result<T, Unread>) -> Result<T, Unread> {
    let mut all = Language::ALL.into_iter();
    match all.find_map(|language| in_language(language, &read).ok()) {
        Some(found) => Ok(found),
        None => read(),
    }
}

pub(super) fn read_to(text: &str, _: Kind) -> Result<ReadTo, Unread> {
    let words = [
        ("0.12", ReadTo::Eighth),
        ("0.06", ReadTo::Sixteenth),
        ("0.01", ReadTo::Hundredth),
    ];
    one_of(&text.replace(',', "."), &words)
}

/// The one of a few that a text names, in large or small letters.
fn one_of<W: AsRef<str>, T: Copy>(text: &str, words: &[(W, T)]) -> Result<T, Unread> {
    let named = |(word, _): &&(W, T)| word.as_ref().eq_ignore_ascii_case(text);
    let found = words.iter().find(named).map(|(_, thing)| *thing);
    found.ok_or_else(|| {
        let words: Vec<&str> = words.iter().map(|(word, _)| word.as_ref()).collect();
        Unread::NoneOf {
            text: text.to_owned(),
            words: words.join(", "),
        }
    })
}

const fn limit(kind: Kind) -> Option<Limit> {
    match kind {
        Kind::Power(limit) | Kind::Number(limit) | Kind::Whole(limit) => Some(limit),
        _ => None,
    }
}

fn within(kind: Kind, value: f64) -> Result<f64, Unread> {
    match limit(kind) {
        Some(limit) => Ok(limit.check(value)?),
        None => Ok(value),
    }
}

/// A decimal number, with a point or a comma, maybe with a sign before it and its unit after it. Feet become metres.
fn plain_number(text: &str, limit: Option<Limit>) -> Result<f64, Unread> {
    let in_metres = limit.is_some_and(|limit| limit.unit == Unit::Metres);
    if let Some(feet) = text.trim().strip_suffix("ft").filter(|_| in_metres) {
        let feet: Result<f64, _> = feet.trim().replace(',', ".").parse();
        return feet
            .map(|feet| feet * FOOT_M)
            .map_err(|_| Unread::NotANumber {
                text: text.to_owned(),
                unit: Some(NumberOf::Feet),
            });
    }
    let symbol = || limit.map_or("", |limit| limit.unit.symbol().trim());
    let units = Language::ALL.map(|language| in_language(language, symbol));
    let degrees = limit.is_some_and(|limit| limit.unit == Unit::Degrees);
    let bare = text.trim();
    let bare = units
        .iter()
        .find_map(|unit| bare.strip_suffix(unit))
        .unwrap_or(bare);
    let bare = if degrees {
        bare.trim_end_matches('°')
    } else {
        bare
    };
    let spelt = bare.trim().replace(',', ".").replace('−', "-");
    let digits = spelt.strip_prefix(['+', '-']).unwrap_or(&spelt);
    let decimal = digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    let value = spelt.parse().ok().filter(|_| decimal);
    value.ok_or_else(|| Unread::NotANumber {
        text: text.to_owned(),
        unit: limit.map(|limit| NumberOf::Unit(limit.unit)),
    })
}
