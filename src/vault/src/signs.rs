//! Bytes as signs that people can read aloud and type: 32 of them, five bits each, with check signs.
//!
//! A run of at most 31 signs carries one check sign, its last. Signs are taken as elements of GF(32) (the bits of a sign's
//! number as a polynomial over GF(2), modulo x^5 + x^2 + 1), and the check sign is what makes
//!
//! ```text
//! c_0 * a^0 + c_1 * a^1 + ... + c_n * a^n = 0,    a = x, a generator of the 31 elements that are not 0
//! ```
//!
//! All powers of a up to the 30th are different and none is 0. So one wrong sign changes the sum (by a non-zero difference
//! times a non-zero power), and so do two exchanged ones, wherever they stand (by their non-zero difference times the
//! non-zero difference of their powers). The tests try every single one of both.

use zeroize::Zeroizing;

/// Digits and letters without I, L, O and U.
pub const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// Signs of a line of [`lines`], the check sign among them.
const LINE: usize = 30;
/// Signs of a group in a line.
const GROUP: usize = 5;

/// The number of a sign; look-alikes count as what they look like.
pub fn number(sign: char) -> Option<u8> {
    let sign = match sign.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        other => other,
    };
    let place = ALPHABET
        .iter()
        .position(|known| char::from(*known) == sign)?;
    Some(place as u8)
}

/// The sign of a number below 32.
pub fn sign(number: u8) -> char {
    char::from(ALPHABET[usize::from(number & 31)])
}

/// The numbers of what was typed, blanks and hyphens left out; or the first sign that is none.
pub fn numbers(text: &str) -> Result<Zeroizing<Vec<u8>>, char> {
    let typed = text
        .chars()
        .filter(|sign| !sign.is_whitespace() && *sign != '-');
    let mut numbers = Zeroizing::new(Vec::with_capacity(text.len()));
    for sign in typed {
        numbers.push(number(sign).ok_or(sign)?);
    }
    Ok(numbers)
}

/// Times x in GF(32).
fn times_a(element: u8) -> u8 {
    let shifted = element << 1;
    if shifted & 32 == 0 {
        shifted
    } else {
        shifted ^ 0b10_0101
    }
}

/// The sum above; 0 for a run that is right.
pub fn sum(numbers: &[u8]) -> u8 {
    // Horner's rule, from the last sign to the first.
    numbers
        .iter()
        .rev()
        .fold(0, |sum, number| times_a(sum) ^ number)
}

/// The check sign's number for a run without it, of at most 30 signs.
pub fn check(numbers: &[u8]) -> u8 {
    let open = sum(numbers);
    (0..32)
        .find(|check| {
            let power = (0..numbers.len()).fold(*check, |element, _| times_a(element));
            open ^ power == 0
        })
        .expect("a power of a times the 32 elements gives each of them once")
}

/// Bytes as lines of 29 signs and a check sign, in groups of five; the last line may be shorter.
///
/// A line's place counts for its check sign as a sign after the 29 would, so lines can't be exchanged either (there are 32 places,
/// then they begin again).
pub fn lines(bytes: &[u8]) -> Vec<String> {
    let numbers = fives(bytes);
    let lines = (0_u8..).zip(numbers.chunks(LINE - 1));
    lines.map(|(place, line)| grouped(place, line)).collect()
}

fn grouped(place: u8, line: &[u8]) -> String {
    let mut whole = line.to_vec();
    whole.push(line_check(place, line));
    let groups = whole
        .chunks(GROUP)
        .map(|group| group.iter().map(|number| sign(*number)).collect::<String>());
    groups.collect::<Vec<_>>().join(" ")
}

fn line_check(place: u8, line: &[u8]) -> u8 {
    let mut with_place = vec![place & 31];
    with_place.extend_from_slice(line);
    check(&with_place)
}

/// What was typed is not what was shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum TypedError {
    /// A sign that never occurs.
    #[error("\u{201c}{0}\u{201d} is none of the letters and digits that can stand here")]
    Sign(char),
    /// A line whose check sign doesn't fit.
    #[error("line {0} was not typed as it is shown: compare it sign by sign")]
    Line(usize),
    /// Nothing, or a line that is cut short.
    #[error("something is missing at the end")]
    Cut,
}

/// Reads [`lines`] as people type them.
///
/// # Errors
///
/// The first line that is wrong.
pub fn read_lines(text: &str) -> Result<Vec<u8>, TypedError> {
    let numbers = numbers(text).map_err(TypedError::Sign)?;
    let mut fives = Vec::with_capacity(numbers.len());
    for (place, line) in numbers.chunks(LINE).enumerate() {
        let (check, signs) = line.split_last().ok_or(TypedError::Cut)?;
        if line_check(place as u8, signs) != *check {
            return Err(TypedError::Line(place + 1));
        }
        fives.extend_from_slice(signs);
    }
    bytes(&fives).ok_or(TypedError::Cut)
}

/// Five bits at a time, the highest first; zeros at the end.
fn fives(bytes: &[u8]) -> Vec<u8> {
    let bit = |at: usize| bytes.get(at / 8).map_or(0, |byte| byte >> (7 - at % 8) & 1);
    (0..(bytes.len() * 8).div_ceil(5))
        .map(|five| (0..5).fold(0, |number, at| number << 1 | bit(five * 5 + at)))
        .collect()
}

/// The bytes again; none where bits are left over that are no zeros, or too many are.
fn bytes(fives: &[u8]) -> Option<Vec<u8>> {
    let bit = |at: usize| fives[at / 5] >> (4 - at % 5) & 1;
    let bits = fives.len() * 5;
    let count = bits / 8;
    let whole = (bits - count * 8 < 5) && (count * 8..bits).all(|at| bit(at) == 0);
    let read = (0..count).map(|byte| (0..8).fold(0, |number, at| number << 1 | bit(byte * 8 + at)));
    (whole && count > 0).then(|| read.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn look_alikes_are_read_as_what_they_look_like() {
        assert_eq!(number('o'), number('0'));
        assert_eq!(number('I'), number('1'));
        assert_eq!(number('l'), number('1'));
        assert_eq!(number('U'), None);
        assert_eq!(number('é'), None);
        for at in 0..32 {
            assert_eq!(number(sign(at)), Some(at));
        }
    }

    // Computed by hand: x^5 = x^2 + 1, so x^4 times x is 5.
    #[test]
    fn x_generates_all_that_is_not_zero() {
        assert_eq!(times_a(16), 5);
        let mut powers: Vec<u8> = vec![1];
        while powers.len() < 31 {
            powers.push(times_a(powers[powers.len() - 1]));
        }
        assert_eq!(times_a(powers[30]), 1);
        powers.sort_unstable();
        assert_eq!(powers, (1..32).collect::<Vec<u8>>());
    }

    #[test]
    fn lines_are_read_as_they_were_written_and_as_people_type_them() {
        for length in 1..120 {
            let bytes: Vec<u8> = (0..length).map(|at| (at * 37 + length) as u8).collect();
            let written = lines(&bytes).join("\n");
            assert_eq!(read_lines(&written), Ok(bytes.clone()), "{length}");
            let typed = written.to_lowercase().replace('0', "o").replace('1', "l");
            assert_eq!(read_lines(&typed.replace(' ', "-")), Ok(bytes));
        }
    }

    /// Every sign of every line in every other way, every two of a line exchanged, every two lines exchanged.
    #[test]
    fn no_slip_of_one_or_two_signs_or_of_lines_goes_unseen() {
        let bytes: Vec<u8> = (0..70_usize).map(|at| (at * 37 + 11) as u8).collect();
        let shown = lines(&bytes);
        let signs = numbers(&shown.concat()).unwrap().to_vec();
        let refused = |changed: &[u8]| {
            let typed: String = changed.iter().map(|number| sign(*number)).collect();
            read_lines(&typed).is_err()
        };
        for at in 0..signs.len() {
            for other in (0..32).filter(|other| *other != signs[at]) {
                let mut changed = signs.clone();
                changed[at] = other;
                assert!(refused(&changed), "sign {at} as {other}");
            }
            for with in at + 1..signs.len() {
                if with / LINE == at / LINE && signs[at] != signs[with] {
                    let mut changed = signs.clone();
                    changed.swap(at, with);
                    assert!(refused(&changed), "{at} and {with} exchanged");
                }
            }
        }
        let mut exchanged = shown.clone();
        exchanged.swap(0, 2);
        assert_eq!(read_lines(&exchanged.concat()), Err(TypedError::Line(1)));
        assert_eq!(read_lines(""), Err(TypedError::Cut));
        assert_eq!(read_lines("000U"), Err(TypedError::Sign('U')));
    }
}
