//! The pieces of a written lens put together, or refused with their place.

use super::mistake::{Mistake, WrittenError};
use super::scan::{Kind, Text, Token};
use crate::{OpticsError, SphereCyl, limits};

/// Reads a lens.
pub(super) fn lens(text: &str) -> Result<SphereCyl, OpticsError> {
    let mut reader = Reader::new(text)?;
    let first = reader.part()?;
    let stroke = reader.take(|kind| kind == Kind::Stroke);
    if reader.peek().is_none() {
        if let Some(stroke) = stroke {
            return Err(reader.refuse(Mistake::Unfinished, stroke.at, stroke.end));
        }
        return reader.alone(&first);
    }
    let mut second = reader.part()?;
    if first.angle.is_none() && second.angle.is_none() {
        second.angle = reader.bare_axis(&second)?;
    }
    reader.finish()?;
    reader.together(&first, &second)
}

/// Reads one power.
pub(super) fn power(text: &str) -> Result<f64, OpticsError> {
    let mut reader = Reader::new(text)?;
    let power = reader.power()?.value;
    reader.finish()?;
    Ok(power)
}

/// What a power says that it is.
#[derive(Clone, Copy, PartialEq)]
enum Role {
    Sphere,
    Cylinder,
}

/// A power as written, with or without a word that says what it is.
struct Power {
    value: f64,
    role: Option<Role>,
    number: Token,
}

/// An angle with its mark.
struct Angle {
    degrees: f64,
    is_at: bool,
    at: usize,
    end: usize,
}

/// A power and the angle behind it, if there is one.
struct Part {
    power: Power,
    angle: Option<Angle>,
}

struct Reader {
    text: Text,
    tokens: Vec<Token>,
    next: usize,
}

impl Reader {
    fn new(text: &str) -> Result<Self, WrittenError> {
        let text = Text::new(text);
        let tokens = text.tokens()?;
        if tokens.is_empty() {
            return Err(text.refuse(Mistake::Empty, 0, 0));
        }
        Ok(Self {
            text,
            tokens,
            next: 0,
        })
    }

    fn peek(&self) -> Option<Token> {
        self.tokens.get(self.next).copied()
    }

    fn take(&mut self, wanted: impl Fn(Kind) -> bool) -> Option<Token> {
        let token = self.peek().filter(|token| wanted(token.kind))?;
        self.next += 1;
        Some(token)
    }

    fn refuse(&self, mistake: Mistake, at: usize, end: usize) -> OpticsError {
        self.text.refuse(mistake, at, end).into()
    }

    fn refuse_token(&self, mistake: Mistake, token: Token) -> OpticsError {
        self.refuse(mistake, token.at, token.end)
    }

    /// The refusal where a number was wanted: of what stands there, or of the last piece if nothing does.
    fn no_number(&self) -> OpticsError {
        match (self.peek(), self.tokens.last()) {
            (Some(token), _) => self.refuse_token(Mistake::Unreadable, token),
            (None, Some(last)) => self.refuse_token(Mistake::Unfinished, *last),
            (None, None) => self.refuse(Mistake::Empty, 0, 0),
        }
    }

    fn finish(&self) -> Result<(), OpticsError> {
        self.peek().map_or(Ok(()), |token| {
            Err(self.refuse_token(Mistake::Unreadable, token))
        })
    }

    fn part(&mut self) -> Result<Part, OpticsError> {
        let power = self.power()?;
        let angle = self.angle()?;
        Ok(Part { power, angle })
    }

    fn power(&mut self) -> Result<Power, OpticsError> {
        let label = self.take(|kind| role(kind).is_some());
        let is_power = |kind| matches!(kind, Kind::Number { .. } | Kind::Plano);
        let number = self.take(is_power).ok_or_else(|| self.no_number())?;
        let value = match number.kind {
            Kind::Number { value, signed, .. } if signed || value == 0.0 => value,
            Kind::Number { .. } => return Err(self.refuse_token(Mistake::NoSign, number)),
            _ => 0.0,
        };
        let label = label.and_then(|token| role(token.kind));
        let role = self.unit(label)?.or(label);
        Ok(Power {
            value,
            role,
            number,
        })
    }

    /// The word behind a power. One that stands ahead of the next power belongs to that.
    fn unit(&mut self, label: Option<Role>) -> Result<Option<Role>, OpticsError> {
        if self.take(|kind| kind == Kind::Dioptres).is_some() {
            return Ok(None);
        }
        let after = self.tokens.get(self.next + 1).map(|token| token.kind);
        let before_power = matches!(after, Some(Kind::Number { signed: true, .. } | Kind::Plano));
        let is_cylinder = self
            .peek()
            .is_some_and(|token| token.kind == Kind::Cylinder);
        if is_cylinder && (before_power || label == Some(Role::Sphere)) {
            return Ok(None);
        }
        let unit = self.take(|kind| role(kind).is_some());
        match unit {
            Some(token) if label.is_some() && label != role(token.kind) => {
                Err(self.refuse_token(Mistake::Unreadable, token))
            }
            unit => Ok(unit.and_then(|token| role(token.kind))),
        }
    }

    fn angle(&mut self) -> Result<Option<Angle>, OpticsError> {
        let is_mark = |kind| matches!(kind, Kind::Times | Kind::At);
        // As in a list: "+2.00, −1.00, × 30".
        if self
            .tokens
            .get(self.next + 1)
            .is_some_and(|token| is_mark(token.kind))
        {
            self.take(|kind| kind == Kind::Stroke);
        }
        let Some(mark) = self.take(is_mark) else {
            return Ok(None);
        };
        let number = self.take(is_unsigned).ok_or_else(|| self.no_number())?;
        self.take(|kind| kind == Kind::Degrees);
        let is_at = mark.kind == Kind::At;
        Ok(Some(self.angle_of(number, mark.at, is_at)?))
    }

    /// An axis without a mark: behind a stroke, or behind a cylinder whose decimals are there.
    fn bare_axis(&mut self, cylinder: &Part) -> Result<Option<Angle>, OpticsError> {
        let stroke = self.take(|kind| kind == Kind::Stroke);
        let Some(number) = self.take(is_unsigned) else {
            return match stroke {
                Some(token) if self.peek().is_none() => {
                    Err(self.refuse_token(Mistake::Unfinished, token))
                }
                _ => Ok(None),
            };
        };
        let clear = matches!(
            cylinder.power.number.kind,
            Kind::Number { decimals: true, .. }
        );
        let is_degrees = self.take(|kind| kind == Kind::Degrees).is_some();
        if stroke.is_none() && !clear && !is_degrees {
            return Err(self.refuse_token(Mistake::Unmarked, number));
        }
        Ok(Some(self.angle_of(number, number.at, false)?))
    }

    fn angle_of(&self, number: Token, at: usize, is_at: bool) -> Result<Angle, OpticsError> {
        let Kind::Number { value, .. } = number.kind else {
            return Err(self.refuse_token(Mistake::Unreadable, number));
        };
        let degrees = limits::axis(value)
            .map_err(|range| self.refuse_token(Mistake::Angle(range), number))?;
        Ok(Angle {
            degrees,
            is_at,
            at,
            end: number.end,
        })
    }

    /// A lens of one power: a sphere, or a cylinder that says that it is one.
    fn alone(&self, part: &Part) -> Result<SphereCyl, OpticsError> {
        let power = part.power.value;
        match (&part.angle, part.power.role) {
            (Some(angle), Some(Role::Cylinder)) => SphereCyl::new(0.0, power, angle.degrees),
            (Some(angle), _) => Err(self.refuse(Mistake::NoCylinder, angle.at, angle.end)),
            (None, Some(Role::Cylinder)) if power != 0.0 => self.no_axis(part),
            (None, _) => Ok(SphereCyl::sphere(power)),
        }
    }

    fn together(&self, first: &Part, second: &Part) -> Result<SphereCyl, OpticsError> {
        match (&first.angle, &second.angle) {
            (None, _) if first.power.role == Some(Role::Cylinder) => self.no_axis(first),
            (None, _) if second.power.role == Some(Role::Sphere) => {
                Err(self.refuse_token(Mistake::Unreadable, second.power.number))
            }
            (None, Some(angle)) => {
                SphereCyl::new(first.power.value, second.power.value, angle.degrees)
            }
            (None, None) if second.power.value == 0.0 => Ok(SphereCyl::sphere(first.power.value)),
            (_, None) => self.no_axis(second),
            (Some(one), Some(other)) => self.crossed(first, one, second, other),
        }
    }

    /// Two plano cylinders, or the powers of two meridians, at right angles.
    fn crossed(
        &self,
        first: &Part,
        one: &Angle,
        second: &Part,
        other: &Angle,
    ) -> Result<SphereCyl, OpticsError> {
        let sphere = [first, second]
            .into_iter()
            .find(|part| part.power.role == Some(Role::Sphere));
        if let Some(part) = sphere {
            return Err(self.refuse_token(Mistake::Unreadable, part.power.number));
        }
        if one.is_at != other.is_at {
            return Err(self.refuse(Mistake::Unreadable, other.at, other.end));
        }
        let apart = (one.degrees - other.degrees).abs();
        if (apart - 90.0).abs() > 1e-9 {
            return Err(self.refuse(Mistake::NotAtRightAngles, other.at, other.end));
        }
        let (one_power, other_power) = (first.power.value, second.power.value);
        // A meridian is where its power acts; an axis is where its cylinder leaves the other cylinder alone.
        let (along, across) = if one.is_at {
            (one_power, other_power)
        } else {
            (other_power, one_power)
        };
        SphereCyl::new(along, across - along, one.degrees)
    }

    fn no_axis(&self, part: &Part) -> Result<SphereCyl, OpticsError> {
        Err(self.refuse_token(Mistake::NoAxis, part.power.number))
    }
}

const fn role(kind: Kind) -> Option<Role> {
    match kind {
        Kind::Sphere => Some(Role::Sphere),
        Kind::Cylinder => Some(Role::Cylinder),
        _ => None,
    }
}

const fn is_unsigned(kind: Kind) -> bool {
    matches!(kind, Kind::Number { signed: false, .. })
}
