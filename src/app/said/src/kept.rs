//! What is kept on this device: the storage, the open vault over it, and what is amiss with entries.

use crate::{InWords, short};
use sync::checkpoint::Ignored;
use sync::{
    Damage, DraftsError, Fault, Held, HeldFor, LeadError, LedgerError, Refusal, RenewError,
    RewrapError, StorageError, WriteError, held_by,
};
use vault::frame::LONGEST_PAYLOAD;
use vault::{DeviceId, DraftError, SealError};
use words::app::errors_kept as say;

impl InWords for StorageError {
    fn in_words(&self) -> String {
        match self {
            Self::Moved { .. } => say::log_moved().into(),
            Self::Full => say::no_room().into(),
            Self::NotEmpty => say::vault_here_already().into(),
            Self::Gone => say::storage_closed().into(),
            Self::Damaged { sequence, .. } => say::damaged_at(sequence),
            Self::Other(why) => say::storage_failed(why),
        }
    }
}

impl InWords for LedgerError {
    fn in_words(&self) -> String {
        match self {
            Self::Storage(error) => error.in_words(),
            Self::Seal(error) => error.in_words(),
            Self::OtherVault => say::of_other_vault().into(),
        }
    }
}

impl InWords for Refusal {
    fn in_words(&self) -> String {
        let said = match self {
            Self::NoLog => say::own_entries_gone(),
            Self::DamagedEnd => say::newest_damaged(),
            Self::Copy => say::put_back_from_copy(),
            Self::ReadsOnly => say::only_reads(),
            Self::WrongKey => say::keys_do_not_fit(),
        };
        said.into()
    }
}

impl InWords for WriteError {
    fn in_words(&self) -> String {
        match self {
            Self::Refused(error) => error.in_words(),
            Self::Seal(error) => error.in_words(),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for LeadError {
    fn in_words(&self) -> String {
        match self {
            Self::NotALead => say::only_a_lead().into(),
            Self::Nobody => say::nothing_about_person().into(),
            Self::Roll(error) => error.in_words(),
            Self::Enrolment(error) => error.in_words(),
            Self::Write(error) => error.in_words(),
            Self::Unfinished(error) => say::unfinished(&error.in_words()),
        }
    }
}

impl InWords for RenewError {
    fn in_words(&self) -> String {
        match self {
            Self::Change(error) => error.in_words(),
            Self::Seal(error) => error.in_words(),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for RewrapError {
    fn in_words(&self) -> String {
        match self {
            Self::None => say::vault_cleared().into(),
            Self::File(error) => error.in_words(),
            Self::Change(error) => error.in_words(),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for DraftsError {
    fn in_words(&self) -> String {
        match self {
            Self::Seal(error) => error.in_words(),
            Self::Open(DraftError) => say::draft_unopened().into(),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for SealError {
    fn in_words(&self) -> String {
        match self {
            Self::NoRandomness(error) => error.in_words(),
            Self::Key => say::tablet_key_is_none().into(),
            Self::TooLong { length } => say::too_long_for_one_piece(length, &LONGEST_PAYLOAD),
        }
    }
}

impl InWords for Ignored {
    fn in_words(&self) -> String {
        let said = match self {
            Self::Damaged => say::snapshot_damaged(),
            Self::OtherFormat => say::snapshot_of_other_version(),
            Self::OtherKeys => say::snapshot_of_other_keys(),
            Self::NotAPrefix => say::snapshot_does_not_fit(),
            Self::OtherRoll => say::list_of_tablets_changed(),
        };
        said.into()
    }
}

/// Whose entry it is: by its tablet's name, where that is known.
fn whose(name: Option<&str>, device: &DeviceId) -> String {
    match name {
        Some(name) => say::from_named(&name),
        None => say::from_tablet(&short(device)),
    }
}

impl InWords for Damage {
    fn in_words(&self) -> String {
        let whose = whose(self.device_name.as_deref(), &self.device);
        match self.fault {
            Fault::Missing { through } if through > self.sequence => {
                say::entries_missing(&self.sequence, &through, &whose)
            }
            fault => say::entry_is(&self.sequence, &whose, &amiss(fault)),
        }
    }
}

fn amiss(fault: Fault) -> &'static str {
    match fault {
        Fault::Missing { .. } => say::is_missing(),
        Fault::Malformed(_) => say::cut_or_altered(),
        Fault::Misplaced => say::something_else_there(),
        Fault::Unsigned => say::altered_after(),
        Fault::UnknownWriter => say::writer_unknown(),
        Fault::Unlinked => say::follows_nothing(),
        Fault::NoKey => say::key_not_here(),
        Fault::Unopened => say::key_does_not_fit(),
        Fault::Emptied => say::dropped_unerased(),
    }
}

impl InWords for Held {
    fn in_words(&self) -> String {
        let whose = whose(self.device_name.as_deref(), &self.read.device);
        match self.why {
            HeldFor::Removed => say::held_for_removed(&self.read.sequence, &whose),
            HeldFor::NotAllowed => say::held_for_not_allowed(&self.read.sequence, &whose),
        }
    }
}

/// What is held back, a sentence for each tablet and reason.
pub fn held_back(held: &[Held]) -> Vec<String> {
    let said = held_by(held).into_iter().map(|(first, more)| match more {
        0 => first.in_words(),
        more => say::and_more_of_it(&first.in_words(), more),
    });
    said.collect()
}
