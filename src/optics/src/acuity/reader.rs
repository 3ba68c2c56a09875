//! Reading a written acuity from left to right, so that an error can say where it stopped.

use super::written::FEET_ABOVE;
use super::{Category, FingersAt, Measure, PartialLine, Written, WrittenError, WrittenLine};
use crate::{OpticsError, limits};
use ::words::optics::acuity as say;

/// Reads a whole text.
pub(super) fn read(text: &str) -> Result<Written, WrittenError> {
    let mut reader = Reader::new(text);
    reader.skip(" ");
    if reader.rest.is_empty() {
        return Err(WrittenError::Empty);
    }
    let written = match reader.category()? {
        Some(category) => Written::Category(category),
        None => Written::Line(reader.line()?),
    };
    reader.skip(" ");
    if reader.rest.is_empty() {
        Ok(written)
    } else {
        Err(reader.stopped(say::nothing_more()))
    }
}

/// A text and what of it is still to be read.
struct Reader<'a> {
    text: &'a str,
    rest: &'a str,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str) -> Self {
        Self { text, rest: text }
    }

    fn stopped(&self, wanted: &'static str) -> WrittenError {
        let text = self.text.trim().to_owned();
        let rest = self.rest.trim().to_owned();
        if rest.is_empty() {
            return WrittenError::Short { text, wanted };
        }
        let after = self.text.chars().count() - self.rest.trim_start().chars().count();
        WrittenError::Stopped {
            text,
            rest,
            after,
            wanted,
        }
    }

    /// Passes over any of these characters; a space stands for any white space.
    fn skip(&mut self, any: &str) {
        let is_any = |c: char| any.contains(c) || (c.is_whitespace() && any.contains(' '));
        self.rest = self.rest.trim_start_matches(is_any);
    }

    /// Takes one of these words, whatever its case, where it ends there.
    fn word(&mut self, words: &[&str]) -> bool {
        let taken = words.iter().find_map(|word| {
            let start = self.rest.get(..word.len())?;
            let rest = &self.rest[word.len()..];
            let ends = !rest.starts_with(char::is_alphabetic);
            (start.eq_ignore_ascii_case(word) && ends).then_some(rest)
        });
        self.rest = taken.unwrap_or(self.rest);
        taken.is_some()
    }

    /// Takes a minus of any kind (true) or a plus (false).
    fn sign(&mut self) -> Option<bool> {
        let sign = self.rest.chars().next()?;
        let minus = match sign {
            '-' | '−' | '–' => true,
            '+' => false,
            _ => return None,
        };
        self.rest = &self.rest[sign.len_utf8()..];
        Some(minus)
    }

    /// Takes an unsigned number with a point or a comma.
    fn number(&mut self, wanted: &'static str) -> Result<f64, WrittenError> {
        let bytes = self.rest.as_bytes();
        let digits = |from: usize| {
            let tail = bytes[from.min(bytes.len())..].iter();
            tail.take_while(|byte| byte.is_ascii_digit()).count()
        };
        let whole = digits(0);
        let parts = match (bytes.get(whole), digits(whole + 1)) {
            (Some(b'.' | b','), decimals) if decimals > 0 => whole + 1 + decimals,
            _ => whole,
        };
        let (number, rest) = self.rest.split_at(parts);
        let number = number.replace(',', ".").parse();
        let number = number.map_err(|_| self.stopped(wanted))?;
        self.rest = rest;
        Ok(number)
    }

    fn category(&mut self) -> Result<Option<Category>, WrittenError> {
        let category = if self.word(&[
            "counts fingers",
            "counting fingers",
            "zählt Finger",
            "Fingerzählen",
            "CF",
        ]) {
            Category::CountingFingers(self.fingers()?)
        } else if self.word(&[
            "sees hand movements",
            "hand movements",
            "sieht Handbewegungen",
            "Handbewegungen",
            "HM",
        ]) {
            Category::HandMovements
        } else if self.word(&[
            "sees light",
            "perception of light",
            "sieht Licht",
            "Lichtwahrnehmung",
            "PL",
            "LP",
        ]) {
            Category::PerceptionOfLight
        } else if self.word(&[
            "sees no light",
            "no perception of light",
            "no perception",
            "sieht kein Licht",
            "keine Lichtwahrnehmung",
            "NPL",
            "NLP",
        ]) {
            Category::NoPerception
        } else {
            return Ok(None);
        };
        Ok(Some(category))
    }

    /// ` at 50 cm`, `@ 1 m`.
    fn fingers(&mut self) -> Result<FingersAt, WrittenError> {
        self.skip(" @");
        self.word(&["at", "in"]);
        self.skip(" ");
        if self.rest.is_empty() {
            let text = self.text.trim().to_owned();
            return Err(WrittenError::FingersWhere { text });
        }
        let before = self.rest;
        let number = self.number(say::wanted_how_far())?;
        self.skip(" ");
        let cm = if self.word(&["cm"]) {
            number
        } else if self.word(&["m"]) {
            // Through tenths of a millimetre, for 0.29 × 100 is not quite 29.
            (number * 10_000.0).round() / 100.0
        } else {
            return Err(self.stopped(say::wanted_unit()));
        };
        let cm = limits::fingers_cm(cm).map_err(OpticsError::from)?;
        if cm.fract() != 0.0 {
            self.rest = before;
            return Err(self.stopped(say::wanted_centimetres()));
        }
        Ok(FingersAt::from_cm(cm as u16)?)
    }

    fn line(&mut self) -> Result<WrittenLine, WrittenError> {
        let measure = self.measure()?;
        let partial = if matches!(measure, Measure::LogMar(_)) {
            PartialLine::WHOLE
        } else {
            self.partial()?
        };
        Ok(WrittenLine::new(measure, partial)?)
    }

    fn measure(&mut self) -> Result<Measure, WrittenError> {
        if self.word(&["logMAR"]) {
            self.skip(" ");
            let minus = self.sign() == Some(true);
            let size = self.number(say::wanted_number())?;
            return Ok(Measure::LogMar(signed(minus, size)));
        }
        let sign = self.sign();
        let first = self.number(say::wanted_acuity())?;
        self.skip(" ");
        if self.word(&["logMAR"]) {
            return Ok(Measure::LogMar(signed(sign == Some(true), first)));
        }
        if sign.is_some() {
            return Err(self.stopped(say::wanted_logmar()));
        }
        let Some(under) = self.rest.strip_prefix('/') else {
            return Ok(Measure::Decimal(first));
        };
        self.rest = under;
        self.skip(" ");
        let size = self.number(say::wanted_denominator())?;
        self.skip(" ");
        let feet = self.word(&["ft"]) || first > FEET_ABOVE;
        let distance = first;
        Ok(if feet {
            Measure::Feet { distance, size }
        } else {
            Measure::Metres { distance, size }
        })
    }

    fn partial(&mut self) -> Result<PartialLine, WrittenError> {
        let (mut missed, mut gained) = (None, None);
        loop {
            self.skip(" ,");
            let before = self.rest;
            let Some(minus) = self.sign() else { break };
            let count = if minus { &mut missed } else { &mut gained };
            if count.is_some() {
                self.rest = before;
                return Err(self.stopped(say::nothing_more()));
            }
            *count = Some(self.letters()?);
        }
        let partial = PartialLine::new(missed.unwrap_or(0), gained.unwrap_or(0));
        Ok(partial.map_err(OpticsError::from)?)
    }

    /// A whole count from 1.
    fn letters(&mut self) -> Result<u8, WrittenError> {
        self.skip(" ");
        let before = self.rest;
        let count = self.number(say::wanted_letters())?;
        if count < 1.0 || count.fract() != 0.0 {
            self.rest = before;
            return Err(self.stopped(say::wanted_letters()));
        }
        let count = limits::letters_of_a_line(count).map_err(OpticsError::from)?;
        Ok(count as u8)
    }
}

fn signed(minus: bool, size: f64) -> f64 {
    if minus { -size } else { size }
}
