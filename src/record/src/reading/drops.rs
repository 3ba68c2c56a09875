//! Drops in words.

use ::words::record::reading as say;
use optics::format::plain;

use super::{Lines, Reads, day, filled, listed};
use crate::sections::{Drops, Drug, Given, OneOf};

impl Drug {
    /// Each that is known here; the last is still to be named.
    pub const fn all() -> [Self; 7] {
        [
            Self::Tropicamide,
            Self::Phenylephrine,
            Self::Cyclopentolate,
            Self::Proxymetacaine,
            Self::Oxybuprocaine,
            Self::Fluorescein,
            Self::Other(String::new()),
        ]
    }
}

impl Given {
    /// "tropicamide 0.5 %, both eyes, 14:05".
    pub fn in_words(&self) -> String {
        let name = filled(self.drug.name()).unwrap_or_else(|| say::another_drop().into());
        let strength = self.strength_percent;
        let strength = strength.map(|strength| format!(" {} %", plain(strength, 2)));
        let drug = format!("{name}{}", strength.unwrap_or_default());
        let at = self.at.map(|at| at.format("%H:%M").to_string());
        listed([Some(drug), Some(self.into.in_words().into()), at])
    }

    /// The same with bottle and hand: "…, batch K12, use by 3 Mar 2027, by the nurse".
    fn in_full(&self) -> String {
        listed([
            Some(self.in_words()),
            filled(&self.batch).map(|batch| say::batch(&batch)),
            self.expires.map(|date| say::use_by(&day(date))),
            filled(&self.by).map(|by| say::given_by(&by)),
        ])
    }
}

impl Drops {
    /// Every drop in full; "none" where none was given.
    fn all_in_words(all: &[Given]) -> String {
        let each: Vec<String> = all.iter().map(Given::in_full).collect();
        filled(&each.join("; ")).unwrap_or_else(|| say::drops_none().into())
    }
}

impl Reads for Drops {
    fn read(&self, lines: &mut Lines) {
        lines.finding(say::drops_given(), &self.given, |all| {
            Self::all_in_words(all)
        });
        let before = listed([
            self.allergies_asked.then(|| say::allergies_asked().into()),
            self.angle_judged.then(|| say::angle_judged().into()),
        ]);
        lines.one(say::before_drops(), before);
        lines.one(say::told_person(), &*self.told_person);
        lines.one(say::told_staff(), &*self.told_staff);
        lines.one(say::drops_borne(), &*self.reaction);
    }
}
