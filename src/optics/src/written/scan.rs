//! A text taken apart into the pieces of a written lens, each with its place.

use super::mistake::{Mistake, WrittenError};

/// What a piece is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Kind {
    /// A number: whether it has a sign, and whether it has decimals.
    Number {
        value: f64,
        signed: bool,
        decimals: bool,
    },
    /// A word for a power of 0.
    Plano,
    /// A word that says that the power beside it is a sphere.
    Sphere,
    /// A word that says that the power beside it is a cylinder.
    Cylinder,
    /// The unit alone.
    Dioptres,
    /// The mark of an axis.
    Times,
    /// The mark of an axis or of a meridian.
    At,
    /// What parts a sphere from a cylinder.
    Stroke,
    /// The unit of an angle.
    Degrees,
}

/// A piece and where it stands, in characters of the given text.
#[derive(Debug, Clone, Copy)]
pub(super) struct Token {
    pub kind: Kind,
    pub at: usize,
    pub end: usize,
}

/// Every word of a written lens, in lower case. Where one begins another, the longer is taken.
const WORDS: &[(&str, Kind)] = &[
    ("plano", Kind::Plano),
    ("plan", Kind::Plano),
    ("pl.", Kind::Plano),
    ("pl", Kind::Plano),
    ("∞", Kind::Plano),
    ("ds", Kind::Sphere),
    ("d.s.", Kind::Sphere),
    ("dsph", Kind::Sphere),
    ("sph", Kind::Sphere),
    ("sph.", Kind::Sphere),
    ("sphere", Kind::Sphere),
    ("dc", Kind::Cylinder),
    ("d.c.", Kind::Cylinder),
    ("dcyl", Kind::Cylinder),
    ("cyl", Kind::Cylinder),
    ("cyl.", Kind::Cylinder),
    ("cylinder", Kind::Cylinder),
    ("d", Kind::Dioptres),
    ("d.", Kind::Dioptres),
    ("x", Kind::Times),
    ("×", Kind::Times),
    ("ax", Kind::Times),
    ("ax.", Kind::Times),
    ("axis", Kind::Times),
    ("@", Kind::At),
    ("/", Kind::Stroke),
    (";", Kind::Stroke),
    (",", Kind::Stroke),
    ("°", Kind::Degrees),
    ("º", Kind::Degrees),
    ("deg", Kind::Degrees),
    ("degrees", Kind::Degrees),
];

/// A text by characters, so that a place means what a person counts.
pub(super) struct Text {
    given: Vec<char>,
    lower: Vec<char>,
}

impl Text {
    pub fn new(text: &str) -> Self {
        let given: Vec<char> = text.chars().collect();
        let lower = given.iter().map(char::to_ascii_lowercase).collect();
        Self { given, lower }
    }

    /// A refusal of the piece from `at` to before `end`.
    pub fn refuse(&self, mistake: Mistake, at: usize, end: usize) -> WrittenError {
        let piece = self.given.get(at..end).unwrap_or_default();
        WrittenError {
            mistake,
            piece: piece.iter().collect(),
            at,
        }
    }

    /// All pieces in order, without the spaces between them.
    pub fn tokens(&self) -> Result<Vec<Token>, WrittenError> {
        let mut tokens = Vec::new();
        let mut at = self.past_spaces(0);
        while at < self.lower.len() {
            let token = self.token(at)?;
            at = self.past_spaces(token.end);
            tokens.push(token);
        }
        Ok(tokens)
    }

    fn token(&self, at: usize) -> Result<Token, WrittenError> {
        let starts_number = self.is(at, is_sign)
            || self.is(at, |c| c.is_ascii_digit())
            || (self.is(at, is_point) && self.is(at + 1, |c| c.is_ascii_digit()));
        if starts_number {
            self.number(at)
        } else {
            self.word(at)
                .ok_or_else(|| self.refuse(Mistake::Unreadable, at, self.run_end(at)))
        }
    }

    fn word(&self, at: usize) -> Option<Token> {
        let here = self.lower.get(at..)?;
        let begins = |word: &str| {
            word.chars()
                .eq(here.iter().copied().take(word.chars().count()))
        };
        let words = WORDS.iter().filter(|(word, _)| begins(word));
        let (word, kind) = words.max_by_key(|(word, _)| word.chars().count())?;
        let end = at + word.chars().count();
        Some(Token {
            kind: *kind,
            at,
            end,
        })
    }

    fn number(&self, at: usize) -> Result<Token, WrittenError> {
        let signed = self.is(at, is_sign);
        let first = if signed { self.past_spaces(at + 1) } else { at };
        let point = self.past_digits(first);
        // A comma before anything but a digit parts two powers; a point may stand last, as in "+2.".
        let decimals = self.is(point, is_point)
            || (self.is(point, |c| c == ',') && self.is(point + 1, |c| c.is_ascii_digit()));
        let end = if decimals {
            self.past_digits(point + 1)
        } else {
            point
        };
        let has_digits = point > first || end > point + 1;
        if !has_digits {
            return Err(self.refuse(Mistake::Unfinished, at, at + 1));
        }
        let unreadable = || self.refuse(Mistake::Unreadable, at, self.run_end(at).max(end));
        if self.is(end, is_point) {
            return Err(unreadable());
        }
        let value = self.value(signed && self.is(at, |c| !is_plus(c)), first, end);
        let value = value.ok_or_else(unreadable)?;
        let kind = Kind::Number {
            value,
            signed,
            decimals,
        };
        Ok(Token { kind, at, end })
    }

    /// The value of digits that have been checked; none where there are so many that no number holds them.
    fn value(&self, minus: bool, first: usize, end: usize) -> Option<f64> {
        let digits = self.lower.get(first..end)?.iter();
        let digits = digits.map(|&c| if c.is_ascii_digit() { c } else { '.' });
        let size: f64 = digits.collect::<String>().parse().ok()?;
        size.is_finite().then_some(if minus { -size } else { size })
    }

    fn is(&self, at: usize, what: impl Fn(char) -> bool) -> bool {
        self.lower.get(at).is_some_and(|&c| what(c))
    }

    fn past(&self, from: usize, what: impl Fn(char) -> bool) -> usize {
        let run = self.lower.iter().skip(from).take_while(|&&c| what(c));
        from + run.count()
    }

    fn past_digits(&self, from: usize) -> usize {
        self.past(from, |c| c.is_ascii_digit())
    }

    fn past_spaces(&self, from: usize) -> usize {
        self.past(from, char::is_whitespace)
    }

    /// Where a piece that makes no sense ends: before the next space, but not after more than a person takes in.
    fn run_end(&self, at: usize) -> usize {
        const LONGEST: usize = 16;
        self.past(at, |c| !c.is_whitespace()).min(at + LONGEST)
    }
}

const fn is_plus(c: char) -> bool {
    matches!(c, '+' | '＋')
}

/// Plus, or any of the strokes that a keyboard, a telephone or a printed page gives for minus.
const fn is_sign(c: char) -> bool {
    is_plus(c) || matches!(c, '-' | '−' | '–' | '‐' | '‑' | '－')
}

const fn is_point(c: char) -> bool {
    matches!(c, '.' | '·')
}
