//! What is entered of a finding before it is one, as words for a draft.

use std::fmt::{self, Display};

/// Half of a finding. It stands in a draft beside a finding that is blank, and is never written down as an entry.
///
/// ```
/// use record::Half;
///
/// let half = Half::Lens { sphere: Some(2.5), cylinder: Some(-1.5), axis: None };
/// assert_eq!(half.to_string(), "lens 2.5 -1.5 ?");
/// assert_eq!(Half::read("lens 2.5 -1.5 ?"), Some(half));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Half {
    /// Fingers are counted, at a distance that is not said yet.
    Fingers,
    /// Some numbers of a lens, in dioptres and degrees.
    Lens {
        /// Dioptres.
        sphere: Option<f64>,
        /// Dioptres.
        cylinder: Option<f64>,
        /// Degrees.
        axis: Option<f64>,
    },
    /// One meridian of two is neutral.
    Meridians {
        /// The meridian that the first power belongs to, in degrees; the second lies 90 degrees from it.
        first: f64,
        /// The lens that neutralises each, in dioptres.
        powers: [Option<f64>; 2],
    },
    /// Of the glasses worn and the lens that is neutral over them not everything is known.
    OverLens {
        /// Sphere, cylinder and axis of the glasses worn, in dioptres and degrees.
        worn: [Option<f64>; 3],
        /// The same of the lens that is held over them.
        over: [Option<f64>; 3],
        /// How far before the glasses it is held, in millimetres.
        gap_mm: f64,
    },
}

impl Half {
    /// Reads what was written with [`Display`]; nothing where it is something else.
    pub fn read(text: &str) -> Option<Self> {
        let (kind, numbers) = text.split_once(' ').unwrap_or((text, ""));
        let numbers = match numbers {
            "" => Vec::new(),
            _ => numbers
                .split(' ')
                .map(number)
                .collect::<Result<_, _>>()
                .ok()?,
        };
        match (kind, &*numbers) {
            ("fingers", []) => Some(Self::Fingers),
            ("lens", &[sphere, cylinder, axis]) => Some(Self::Lens {
                sphere,
                cylinder,
                axis,
            }),
            ("meridians", &[Some(first), one, other]) => Some(Self::Meridians {
                first,
                powers: [one, other],
            }),
            ("over", &[w1, w2, w3, o1, o2, o3, Some(gap_mm)]) => Some(Self::OverLens {
                worn: [w1, w2, w3],
                over: [o1, o2, o3],
                gap_mm,
            }),
            _ => None,
        }
    }
}

impl Display for Half {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = |number: Option<f64>| number.map_or("?".into(), |number| number.to_string());
        match *self {
            Self::Fingers => f.write_str("fingers"),
            Self::Lens {
                sphere,
                cylinder,
                axis,
            } => {
                let [sphere, cylinder, axis] = [sphere, cylinder, axis].map(word);
                write!(f, "lens {sphere} {cylinder} {axis}")
            }
            Self::Meridians { first, powers } => {
                let [one, other] = powers.map(word);
                write!(f, "meridians {first} {one} {other}")
            }
            Self::OverLens { worn, over, gap_mm } => {
                f.write_str("over ")?;
                for number in worn.into_iter().chain(over) {
                    write!(f, "{} ", word(number))?;
                }
                write!(f, "{gap_mm}")
            }
        }
    }
}

/// A number, or `?` for none.
fn number(word: &str) -> Result<Option<f64>, NotANumber> {
    if word == "?" {
        return Ok(None);
    }
    let number: f64 = word.parse().map_err(|_| NotANumber)?;
    if number.is_finite() {
        Ok(Some(number))
    } else {
        Err(NotANumber)
    }
}

struct NotANumber;
