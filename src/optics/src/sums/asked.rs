//! What a sum asks, and what it was given.

use super::error::{SumError, Unread};
use super::read;
use crate::Eye;
use crate::limits::{Limit, Unit};
use ::words::{Language, in_language};

/// What gives words in the language spoken.
pub(super) type Words = fn() -> &'static str;

/// What kind of thing an ask wants.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Kind {
    /// A lens within [`crate::limits::lens`].
    Lens,
    /// A surface of a lens, written like a lens.
    Surface,
    /// Several lenses with a semicolon between them.
    Readings,
    /// Powers in their meridians, like `+2.00 @ 90`, with a semicolon between them.
    Meridians,
    /// A power in dioptres, which always has its sign.
    Power(Limit),
    /// A number; its unit may follow it, and a distance in metres may be given in feet: `10 ft`.
    Number(Limit),
    /// A whole number.
    Whole(Limit),
    /// An acuity, line or category.
    Acuity,
    /// An acuity read on a chart.
    Line,
    /// A size of print.
    Print,
    /// A prism, by names or by the compass.
    Prism,
    /// `right` or `left`.
    Eye,
    /// `back`, `middle` or `front`.
    Cell,
    /// How finely a focimeter reads: `0.12`, `0.06` or `0.01`.
    ReadTo,
}

/// One thing that a sum asks.
#[derive(Debug, Clone, Copy)]
pub struct Ask {
    /// Its name in an address or on a command line, unlike the others of its sum.
    pub slug: &'static str,
    /// What kind of thing it is.
    pub kind: Kind,
    name: Words,
    example: &'static str,
    left_out: Option<Words>,
}

/// Asks are told apart by what does not change with the language.
impl PartialEq for Ask {
    fn eq(&self, other: &Self) -> bool {
        (self.slug, self.kind, self.example) == (other.slug, other.kind, other.example)
    }
}

impl Ask {
    pub(super) const fn new(
        slug: &'static str,
        name: Words,
        example: &'static str,
        kind: Kind,
    ) -> Self {
        Self {
            slug,
            name,
            example,
            kind,
            left_out: None,
        }
    }

    /// The same ask where it need not be answered, and what that means.
    pub(super) const fn or(self, left_out: Words) -> Self {
        Self {
            left_out: Some(left_out),
            ..self
        }
    }

    /// What is asked for; in English it goes after "the".
    pub fn name(&self) -> &'static str {
        (self.name)()
    }

    /// A good answer, in words of the language spoken.
    pub fn example(&self) -> String {
        let said = match self.kind {
            Kind::Eye => read::eye(self.example, self.kind).map(|eye| eye.said().to_owned()),
            Kind::Cell => read::cell(self.example, self.kind).map(|cell| cell.to_string()),
            Kind::Prism => {
                read::prism(self.example, Eye::Right).map(|prism| prism.written(Eye::Right))
            }
            Kind::Power(limit) | Kind::Number(limit) => Ok(self.example_in(limit.unit)),
            _ => Ok(self.example.to_owned()),
        };
        said.unwrap_or_else(|_| self.example.to_owned())
    }

    fn example_in(&self, unit: Unit) -> String {
        let english = in_language(Language::English, || unit.symbol());
        match self.example.strip_suffix(english) {
            Some(bare) => format!("{bare}{}", unit.symbol()),
            None => self.example.to_owned(),
        }
    }

    /// What leaving it out means; none where it is needed.
    pub fn left_out(&self) -> Option<&'static str> {
        self.left_out.map(|means| means())
    }

    /// Whether it need not be answered.
    pub const fn is_optional(&self) -> bool {
        self.left_out.is_some()
    }

    /// Whether it asks for a distance in metres, as of a chart.
    pub fn is_in_metres(&self) -> bool {
        matches!(self.kind, Kind::Number(limit) if limit.unit == Unit::Metres)
    }

    /// What is wrong with a text by itself; nothing is wrong with an empty one.
    pub fn amiss(&self, text: &str) -> Option<Unread> {
        match text.trim() {
            "" => None,
            text => read::check(text, self.kind).err(),
        }
    }
}

/// How a text is read for a kind of ask.
pub(super) type Reader<T> = fn(&str, Kind) -> Result<T, Unread>;

/// The texts that a sum was given.
#[derive(Debug)]
pub struct Asked {
    texts: Vec<(&'static str, String)>,
}

impl Asked {
    pub(super) fn new<T: AsRef<str>>(asks: &'static [Ask], texts: &[T]) -> Self {
        let paired = asks.iter().zip(texts);
        let texts = paired.map(|(ask, text)| (ask.slug, text.as_ref().trim().to_owned()));
        Self {
            texts: texts.filter(|(_, text)| !text.is_empty()).collect(),
        }
    }

    /// What was given for an ask that may be left out.
    pub(super) fn find<T>(
        &self,
        ask: &'static Ask,
        reader: Reader<T>,
    ) -> Result<Option<T>, SumError> {
        self.find_by(ask, |text| reader(text, ask.kind))
    }

    /// What was given for an ask.
    pub(super) fn need<T>(&self, ask: &'static Ask, reader: Reader<T>) -> Result<T, SumError> {
        self.find(ask, reader)?.ok_or(SumError::Missing { ask })
    }

    /// The same where how to read it hangs on another answer.
    pub(super) fn find_by<T>(
        &self,
        ask: &'static Ask,
        reader: impl FnOnce(&str) -> Result<T, Unread>,
    ) -> Result<Option<T>, SumError> {
        let given = self.texts.iter().find(|(slug, _)| *slug == ask.slug);
        given
            .map(|(_, text)| reader(text).map_err(|why| SumError::At { ask, why }))
            .transpose()
    }

    /// The same where it is needed.
    pub(super) fn need_by<T>(
        &self,
        ask: &'static Ask,
        reader: impl FnOnce(&str) -> Result<T, Unread>,
    ) -> Result<T, SumError> {
        self.find_by(ask, reader)?.ok_or(SumError::Missing { ask })
    }
}
