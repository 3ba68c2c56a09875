//! What is wrong with a key file that doesn't hold together.

/// What is wrong with a key file, for whoever is asked for help.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Flaw {
    /// Longer than any.
    #[error("it is too long")]
    TooLong,
    /// No key file at all.
    #[error("it can't be read at all")]
    Unreadable,
    /// Something that every key file has is not there.
    #[error("a part of it is missing")]
    PartMissing,
    /// It was altered.
    #[error("its sum is wrong")]
    Sum,
    /// The sum fits, and what it is the sum of can't be read.
    #[error("its inside can't be read")]
    Inside,
    /// It has no slot for a passphrase.
    #[error("no passphrase opens it")]
    NoPassphrase,
    /// It wants a stretching that no vault is made with.
    #[error("its passphrase would be stretched as no vault's is")]
    Stretching,
    /// Its epochs have a gap, or no beginning.
    #[error("its epochs are not complete")]
    Epochs,
    /// The key that signs is damaged.
    #[error("its signing key doesn't open")]
    SigningKey,
    /// The key for what is sealed to this device is damaged.
    #[error("its exchange key doesn't open")]
    ExchangeKey,
    /// A key of the content is damaged.
    #[error("a content key doesn't open")]
    ContentKey,
    /// The key of the recovery sheet is damaged.
    #[error("its recovery key doesn't open")]
    RecoveryKey,
}
