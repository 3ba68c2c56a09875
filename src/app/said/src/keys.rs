//! What opens the vault: the passphrase, the key file, the recovery sheet, the invitation.

use crate::InWords;
use vault::keyfile::Flaw;
use vault::phrase::{LONGEST, PassphraseError, SHORTEST};
use vault::stretch::FreshError;
use vault::{
    ChangeError, FoundError, KeyFileError, NoInvitation, NoRandomness, RecoverError,
    RecoveryCodeError, StretchError, UnlockError,
};
use words::app::errors_keys as say;

impl InWords for UnlockError {
    fn in_words(&self) -> String {
        match self {
            Self::WrongPassphrase => say::wrong_passphrase().into(),
            Self::WrongRecovery => say::wrong_recovery().into(),
            Self::WrongPlatform => say::wrong_platform().into(),
            Self::Damaged(flaw) => say::keys_damaged(&flaw.in_words()),
        }
    }
}

impl InWords for KeyFileError {
    fn in_words(&self) -> String {
        match self {
            Self::Newer(format) => say::key_file_newer(format),
            Self::Damaged(flaw) => say::key_file_damaged(&flaw.in_words()),
        }
    }
}

impl InWords for Flaw {
    fn in_words(&self) -> String {
        let said = match self {
            Self::TooLong => say::flaw_too_long(),
            Self::Unreadable => say::flaw_unreadable(),
            Self::PartMissing => say::flaw_part_missing(),
            Self::Sum => say::flaw_sum(),
            Self::Inside => say::flaw_inside(),
            Self::NoPassphrase => say::flaw_no_passphrase(),
            Self::Stretching => say::flaw_stretching(),
            Self::Epochs => say::flaw_epochs(),
            Self::SigningKey => say::flaw_signing_key(),
            Self::ExchangeKey => say::flaw_exchange_key(),
            Self::ContentKey => say::flaw_content_key(),
            Self::RecoveryKey => say::flaw_recovery_key(),
        };
        said.into()
    }
}

impl InWords for ChangeError {
    fn in_words(&self) -> String {
        match self {
            Self::Unlock(error) => error.in_words(),
            Self::NoRandomness(error) => error.in_words(),
            Self::Stretch(error) => error.in_words(),
        }
    }
}

impl InWords for FoundError {
    fn in_words(&self) -> String {
        match self {
            Self::NoRandomness(error) => error.in_words(),
            Self::Stretch(error) => error.in_words(),
        }
    }
}

impl InWords for FreshError {
    fn in_words(&self) -> String {
        match self {
            Self::Refused(error) => error.in_words(),
            Self::NoRandomness(error) => error.in_words(),
        }
    }
}

impl InWords for PassphraseError {
    fn in_words(&self) -> String {
        match self {
            Self::OnlyDigits => say::only_digits().into(),
            Self::TooShort => say::too_short(&SHORTEST),
            Self::TooLong => say::too_long(&LONGEST),
            Self::TooFewDifferent => say::too_few_different().into(),
        }
    }
}

impl InWords for StretchError {
    fn in_words(&self) -> String {
        match self {
            Self::OutOfRange {
                memory_kib,
                passes,
                lanes,
            } => say::stretched_as_none(memory_kib, passes, lanes),
            Self::Memory => say::too_little_memory().into(),
        }
    }
}

impl InWords for NoRandomness {
    fn in_words(&self) -> String {
        say::no_randomness().into()
    }
}

impl InWords for RecoveryCodeError {
    fn in_words(&self) -> String {
        match self {
            Self::Sign(sign) => say::no_sign_of_code(sign),
            Self::Length(signs) => say::code_length(signs),
            Self::Check => say::code_mistyped().into(),
        }
    }
}

impl InWords for RecoverError {
    fn in_words(&self) -> String {
        match self {
            Self::OtherCode => say::other_sheet().into(),
            Self::NotGenuine => say::sheet_not_genuine().into(),
            Self::NoRandomness(error) => error.in_words(),
        }
    }
}

impl InWords for NoInvitation {
    fn in_words(&self) -> String {
        say::no_invitation().into()
    }
}
