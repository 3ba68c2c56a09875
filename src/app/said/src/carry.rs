//! Carry files: why one was refused, and what came of one.

use crate::{InWords, many, short};
use sync::CarriedRoll;
use sync::carry::{Apart, CarryError, Exported, Report};
use words::app::carry as say;

impl InWords for CarryError {
    fn in_words(&self) -> String {
        match self {
            Self::NotCarry => say::no_carry_file().into(),
            Self::Format(format) => say::unknown_format(format),
            Self::Damaged => say::damaged().into(),
            Self::Senseless { at } => say::made_wrongly(at),
            Self::OtherVault => say::of_other_vault().into(),
            Self::Forged { device, sequence } => say::forged(sequence, &short(device)),
            Self::Stranger(device) => say::stranger(&short(device)),
            Self::Nothing => say::nothing_lacking().into(),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for Exported {
    fn in_words(&self) -> String {
        let kilobytes = self.bytes.len().div_ceil(1000);
        let all = say::exported(many(self.frames), &kilobytes);
        let left_out = self.left_out.iter();
        let left_out = left_out.map(|(device, from)| say::left_out(&short(device), from));
        std::iter::once(all).chain(left_out).collect()
    }
}

impl InWords for Report {
    fn in_words(&self) -> String {
        let all = self.new + self.known;
        let entries = say::entries(many(all));
        let tablets = say::of_tablets(self.tablets);
        let came = match self.new {
            0 if all == 0 => say::nothing_taken().into(),
            0 => say::nothing_new(&entries, &tablets),
            new if new == all && new > 1 => say::all_new(&entries, &tablets),
            new => say::so_many_new(&entries, &tablets, many(new)),
        };
        let apart = self.apart.iter().map(InWords::in_words);
        std::iter::once(came)
            .chain(apart)
            .collect::<Vec<_>>()
            .join("; ")
    }
}

impl InWords for Apart {
    fn in_words(&self) -> String {
        match self {
            Self::Gap {
                device,
                from,
                through,
            } => say::gap(&short(device), from, through),
            Self::Fork { device, sequence } => say::fork(&short(device), sequence),
        }
    }
}

/// What came of the list of tablets in a carry file, where there is something to say of it.
pub fn carried_roll(roll: &CarriedRoll) -> Option<&'static str> {
    match roll {
        CarriedRoll::Known => None,
        CarriedRoll::Taken(_) => Some(say::newer_list()),
        CarriedRoll::Other => Some(say::other_list()),
    }
}
