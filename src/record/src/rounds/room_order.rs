//! The order of rooms along a corridor: 2 before 10, 10 before 10a.

use std::cmp::Ordering;

/// Orders rooms as one walks past them: numbers by what they count, words by the alphabet, whatever their case. A room that is
/// not known comes last.
///
/// ```
/// use record::room_order;
///
/// let mut rooms = vec!["10a", "G10", "10", "2", "", "G2"];
/// rooms.sort_by(|one, other| room_order(one, other));
/// assert_eq!(rooms, ["2", "10", "10a", "G2", "G10", ""]);
/// ```
pub fn room_order(one: &str, other: &str) -> Ordering {
    let (a, b) = (one.trim(), other.trim());
    a.is_empty()
        .cmp(&b.is_empty())
        .then_with(|| parts(a).cmp(parts(b)))
        .then_with(|| a.cmp(b))
}

/// A run of figures, or one of anything else.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    /// Longer is more, once the leading noughts are gone; of equal length the figures tell.
    Number(usize, String),
    Words(String),
}

fn parts(room: &str) -> impl Iterator<Item = Part> {
    let mut rest = room;
    std::iter::from_fn(move || {
        let figures = rest.starts_with(|c: char| c.is_ascii_digit());
        let end = rest
            .find(|c: char| c.is_ascii_digit() != figures)
            .unwrap_or(rest.len());
        let (part, after) = rest.split_at(end);
        rest = after;
        (!part.is_empty()).then(|| part_of(part, figures))
    })
}

fn part_of(text: &str, figures: bool) -> Part {
    if figures {
        let bare = text.trim_start_matches('0');
        Part::Number(bare.len(), bare.to_owned())
    } else {
        Part::Words(text.trim().to_lowercase())
    }
}
