//! The index: every word in its order, by its sound, and where it stands.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::Findable;
use super::asked::{self, Piece};
use super::birth::Fit;
use super::fold::{fold, words};
use super::slip::is_one_slip_off;
use super::sound::sound;

/// Fewer letters sound like too much.
const SOUND_FROM: usize = 3;

/// Of fewer letters one in four would be wrong.
const SLIP_FROM: usize = 4;

/// Which part of a thing a word stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Name,
    Number,
    Room,
    Place,
}

/// How a word matched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum How {
    Whole,
    Beginning,
    Sound,
    Slip,
}

/// The weights that the module's table gives; none where a part is not matched that way.
const fn weight(part: Part, how: How) -> u16 {
    match (part, how) {
        (Part::Name, How::Whole) => 100,
        (Part::Number, How::Whole) => 95,
        (Part::Room, How::Whole) => 90,
        (Part::Name | Part::Number, How::Beginning) => 80,
        (Part::Place, How::Whole) => 60,
        (Part::Place | Part::Room, How::Beginning) => 50,
        (Part::Name, How::Sound) => 40,
        (Part::Name, How::Slip) => 35,
        (Part::Place, How::Sound | How::Slip) => 20,
        (Part::Number | Part::Room, How::Sound | How::Slip) => 0,
    }
}

const fn birth_weight(fit: Fit) -> u16 {
    match fit {
        Fit::Date => 85,
        Fit::MonthFirst => 82,
        Fit::Stated => 15,
    }
}

/// Everything that can be found.
#[derive(Clone, Debug)]
pub struct Index<K> {
    slots: BTreeMap<K, usize>,
    things: Vec<Option<Findable<K>>>,
    free: Vec<usize>,
    /// By name, as it is compared.
    in_order: BTreeSet<(String, usize)>,
    words: BTreeMap<String, Vec<(usize, Part)>>,
    sounds: BTreeMap<String, BTreeSet<String>>,
}

impl<K> Default for Index<K> {
    fn default() -> Self {
        Self {
            slots: BTreeMap::new(),
            things: Vec::new(),
            free: Vec::new(),
            in_order: BTreeSet::new(),
            words: BTreeMap::new(),
            sounds: BTreeMap::new(),
        }
    }
}

impl<K: Copy + Ord> Index<K> {
    /// Takes a thing, in place of an earlier one of the same key. One that has not changed costs next to nothing.
    pub fn put(&mut self, thing: Findable<K>) {
        if let Some(slot) = self.slots.get(&thing.key) {
            if self.things[*slot].as_ref() == Some(&thing) {
                return;
            }
            self.remove(&thing.key);
        }
        let slot = self.free.pop().unwrap_or_else(|| {
            self.things.push(None);
            self.things.len() - 1
        });
        for (word, part) in words_of(&thing) {
            let code = sound(&word);
            if code.len() > 1 {
                self.sounds.entry(code).or_default().insert(word.clone());
            }
            self.words.entry(word).or_default().push((slot, part));
        }
        self.slots.insert(thing.key, slot);
        self.in_order.insert((alphabetic(&thing), slot));
        self.things[slot] = Some(thing);
    }

    /// Forgets a thing.
    pub fn remove(&mut self, key: &K) {
        let Some(slot) = self.slots.remove(key) else {
            return;
        };
        let Some(thing) = self.things[slot].take() else {
            return;
        };
        for (word, _) in words_of(&thing) {
            self.forget(&word, slot);
        }
        self.in_order.remove(&(alphabetic(&thing), slot));
        self.free.push(slot);
    }

    fn forget(&mut self, word: &str, slot: usize) {
        let Some(stands) = self.words.get_mut(word) else {
            return;
        };
        stands.retain(|(at, _)| *at != slot);
        if stands.is_empty() {
            self.words.remove(word);
            let code = sound(word);
            if let Some(alike) = self.sounds.get_mut(&code) {
                alike.remove(word);
                if alike.is_empty() {
                    self.sounds.remove(&code);
                }
            }
        }
    }

    /// Takes everything that there is now: what has changed is put anew, what is not among it is forgotten.
    pub fn follow(&mut self, things: impl IntoIterator<Item = Findable<K>>) {
        let mut gone: BTreeSet<K> = self.slots.keys().copied().collect();
        for thing in things {
            gone.remove(&thing.key);
            self.put(thing);
        }
        for key in gone {
            self.remove(&key);
        }
    }

    /// How many things there are.
    pub fn len(&self) -> usize {
        self.slots.len()
    }

    /// Whether there is nothing.
    pub fn is_empty(&self) -> bool {
        self.slots.is_empty()
    }

    /// What goes with what is asked, the best first; everything in the order of names where nothing is asked.
    pub fn find(&self, asked: &str) -> Vec<K> {
        let mut best = vec![0; self.things.len()];
        for way in asked::ways(asked) {
            for (best, weight) in best.iter_mut().zip(self.weigh(&way)) {
                *best = weight.max(*best);
            }
        }
        let ordered = self.in_order.iter().map(|(_, slot)| *slot);
        let mut hits: Vec<usize> = ordered
            .filter(|slot| asked.trim().is_empty() || best[*slot] > 0)
            .collect();
        // A stable sort: of equal weight, the order of names stays.
        hits.sort_by_key(|slot| Reverse(best[*slot]));
        let things = hits
            .into_iter()
            .filter_map(|slot| self.things[slot].as_ref());
        things.map(|thing| thing.key).collect()
    }

    /// The weight of each thing in one way to take what was asked; none where a piece matches nothing of it.
    fn weigh(&self, way: &[Piece]) -> Vec<u16> {
        let mut sum = vec![0; self.things.len()];
        for (place, piece) in way.iter().enumerate() {
            for (sum, weight) in sum.iter_mut().zip(self.weigh_piece(piece)) {
                let goes_on = weight > 0 && (place == 0 || *sum > 0);
                *sum = if goes_on { *sum + weight } else { 0 };
            }
        }
        sum
    }

    fn weigh_piece(&self, piece: &Piece) -> Vec<u16> {
        let mut weights = vec![0; self.things.len()];
        if !piece.word.is_empty() {
            self.weigh_word(&piece.word, &mut weights);
        }
        if let Some(birth) = &piece.birth {
            for (weight, thing) in weights.iter_mut().zip(&self.things) {
                let born = thing.as_ref().and_then(|thing| thing.born);
                let fit = born.and_then(|born| birth.fits(born));
                *weight = fit.map_or(0, birth_weight).max(*weight);
            }
        }
        weights
    }

    fn weigh_word(&self, asked: &str, weights: &mut [u16]) {
        let mut count = |stands: &[(usize, Part)], how: How| {
            for (slot, part) in stands {
                weights[*slot] = weight(*part, how).max(weights[*slot]);
            }
        };
        let from_here = self.words.range(asked.to_owned()..);
        for (word, stands) in from_here.take_while(|(word, _)| word.starts_with(asked)) {
            let whole = word.len() == asked.len();
            count(stands, if whole { How::Whole } else { How::Beginning });
        }
        let letters = asked.chars().count();
        if letters >= SOUND_FROM {
            let alike = self.sounds.get(&sound(asked)).into_iter().flatten();
            for stands in alike.filter_map(|word| self.words.get(word)) {
                count(stands, How::Sound);
            }
        }
        let slips = letters >= SLIP_FROM && !asked.bytes().any(|byte| byte.is_ascii_digit());
        if slips {
            for (word, stands) in &self.words {
                if is_one_slip_off(asked, word) {
                    count(stands, How::Slip);
                }
            }
        }
    }
}

/// Every word of a thing, once for each part that it stands in.
fn words_of<K>(thing: &Findable<K>) -> BTreeSet<(String, Part)> {
    let of = |text: &str, part: Part| words(text).into_iter().map(move |word| (word, part));
    let numbers = thing.numbers.iter();
    of(&thing.name, Part::Name)
        .chain(numbers.flat_map(|number| of(number, Part::Number)))
        .chain(of(&thing.room, Part::Room))
        .chain(of(&thing.place, Part::Place))
        .collect()
}

/// By the last word of a name, then by the whole: people go by the family name.
fn alphabetic<K>(thing: &Findable<K>) -> String {
    let name = fold(&thing.name);
    let last = name.split_whitespace().next_back().unwrap_or_default();
    format!("{last} {name}")
}
