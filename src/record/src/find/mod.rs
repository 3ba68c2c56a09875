//! Finding somebody or something by whatever is remembered of it: part of a name, how the name sounds, a room, a birth.
//!
//! An [`Index`] is built once from [`Findable`]s and kept up one by one. What is asked is cut at blanks; each piece has to
//! match something, and the weights of the best matches add up. Of equal weight, the order of the alphabet decides.
//!
//! | a piece matches | weight |
//! |---|---|
//! | a whole word of the name | 100 |
//! | a number by which others know it | 95 |
//! | the room | 90 |
//! | the date or year of birth, day before month | 85 |
//! | the date of birth, month before day | 82 |
//! | the beginning of a word of the name, or of a number | 80 |
//! | a whole word of the place | 60 |
//! | the beginning of a word of the place, or of the room | 50 |
//! | a word of the name by its sound ([`sound`]) | 40 |
//! | a word of the name with one slip: a letter missing, too many, another, or two swapped | 35 |
//! | a word of the place by its sound, or with one slip | 20 |
//! | a year of birth that goes with an age as somebody stated it | 15 |
//!
//! A place on record is found as well ([`Found`]): its name weighs as a name does; its units, its address and its former names
//! weigh as a place does.
//!
//! Case and accents don't count. A sound needs three letters, a slip four. The weights are this project's own choice: what
//! was typed in full goes before what was guessed, a person's own name before where they live.
//!
//! ```
//! use record::find::{Findable, Index};
//!
//! let mut index = Index::default();
//! for (key, name, room) in [(1, "Orla Pennyquick", "14"), (2, "Piers Oakhollow", "3"), (3, "Odd Ørland", "14")] {
//!     index.put(Findable { name: name.into(), room: room.into(), ..Findable::new(key) });
//! }
//! assert_eq!(index.find("penn"), [1]);
//! assert_eq!(index.find("penyquik"), [1]);
//! assert_eq!(index.find("orl 14"), [3, 1]); // of equal weight: by the family name
//! assert_eq!(index.find("orland"), [3]);
//! ```

mod asked;
mod birth;
mod fold;
mod found;
mod index;
mod people;
mod slip;
mod sound;

pub(crate) use fold::{fold, words};
pub use found::Found;
pub use index::Index;
pub(crate) use slip::is_one_slip_off;
pub use sound::sound;

use crate::person::Born;

/// Something that can be found: whatever of it somebody may remember. Blank where there is nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Findable<K> {
    /// By what it is known to whoever asks.
    pub key: K,
    /// Its name.
    pub name: String,
    /// Numbers by which others know it.
    pub numbers: Vec<String>,
    /// The room.
    pub room: String,
    /// The place: a home, a unit, an address.
    pub place: String,
    /// The birth.
    pub born: Option<Born>,
}

impl<K> Findable<K> {
    /// Nothing known of it yet.
    pub const fn new(key: K) -> Self {
        Self {
            key,
            name: String::new(),
            numbers: Vec::new(),
            room: String::new(),
            place: String::new(),
            born: None,
        }
    }

    /// The same by another key.
    pub fn known_as<L>(self, key: impl FnOnce(K) -> L) -> Findable<L> {
        Findable {
            key: key(self.key),
            name: self.name,
            numbers: self.numbers,
            room: self.room,
            place: self.place,
            born: self.born,
        }
    }
}
