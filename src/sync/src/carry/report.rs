//! What came of an import.

use std::fmt;
use vault::DeviceId;

/// What came of an import.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// Tablets whose entries are in it.
    pub tablets: usize,
    /// Entries that were not here.
    pub new: u64,
    /// Entries that were here already.
    pub known: u64,
    /// Logs that were left as they are.
    pub apart: Vec<Apart>,
}

/// A log of which nothing was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Apart {
    /// Entries between those that are here and those in the file are in neither.
    Gap {
        /// Whose log.
        device: DeviceId,
        /// The first number that is missing.
        from: u64,
        /// The last number that is missing.
        through: u64,
    },
    /// Here and in the file the same number stands for different entries.
    Fork {
        /// Whose log.
        device: DeviceId,
        /// The number.
        sequence: u64,
    },
}

impl fmt::Display for Report {
    /// One plain sentence.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all = self.new + self.known;
        let (entries, tablets) = (many(all, "entry", "entries"), self.tablets as u64);
        let tablets = many(tablets, "tablet", "tablets");
        match self.new {
            0 if all == 0 => write!(out, "nothing was taken from this carry file")?,
            0 => write!(
                out,
                "nothing in this carry file is new: its {entries} of {tablets} are here already"
            )?,
            1 => write!(out, "{entries} of {tablets}, 1 was new")?,
            new if new == all => write!(out, "{entries} of {tablets}, all new")?,
            new => write!(out, "{entries} of {tablets}, {new} were new")?,
        }
        self.apart
            .iter()
            .try_for_each(|apart| write!(out, "; {apart}"))
    }
}

fn many(count: u64, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

impl fmt::Display for Apart {
    /// A part of a sentence.
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Gap {
                device,
                from,
                through,
            } => write!(
                out,
                "from tablet {} nothing was taken, because its entries {from} to {through} are missing: ask for a file with everything",
                &device.to_string()[..8]
            ),
            Self::Fork { device, sequence } => write!(
                out,
                "from tablet {} nothing was taken, because its entry {sequence} here is another one: it may have been copied",
                &device.to_string()[..8]
            ),
        }
    }
}
