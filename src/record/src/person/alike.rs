//! Who may be on record twice: one date of birth, and names that are nearly one.

use super::{Born, Name, Person};
use crate::find::{is_one_slip_off, sound, words};
use crate::ids::PersonId;
use crate::story::Story;

impl Story {
    /// Others who may be the same person, by name: born on the same day, and called alike. Somebody has to look; nothing
    /// follows from it.
    pub fn may_be_same(&self, person: &PersonId) -> Vec<&Person> {
        let Some(this) = self.person(person) else {
            return Vec::new();
        };
        let mut others = self.people();
        others.retain(|other| other.id() != this.id() && are_alike(this, other));
        others
    }
}

fn are_alike(one: &Person, other: &Person) -> bool {
    let (one, other) = (one.details(), other.details());
    let born_together = matches!(
        (one.born, other.born),
        (Some(Born::Date(one)), Some(Born::Date(other))) if one == other
    );
    born_together && called_alike(&one.name, &other.name)
}

/// Whether every word of the shorter name goes with a word of the longer: a second name may be missing, and both may stand
/// the other way round.
fn called_alike(one: &Name, other: &Name) -> bool {
    let (one, other) = (words(&one.to_string()), words(&other.to_string()));
    let (fewer, more) = if one.len() <= other.len() {
        (one, other)
    } else {
        (other, one)
    };
    let goes = |word: &String| more.iter().any(|other| sounds_or_slips(word, other));
    !fewer.is_empty() && fewer.iter().all(goes)
}

/// A slip counts both ways: the longer word may hold one letter more.
fn sounds_or_slips(one: &str, other: &str) -> bool {
    let sounds = sound(one);
    let near_in_length = one.chars().count().abs_diff(other.chars().count()) <= 1;
    one == other
        || (!sounds.is_empty() && sounds == sound(other))
        || (near_in_length && (is_one_slip_off(one, other) || is_one_slip_off(other, one)))
}
