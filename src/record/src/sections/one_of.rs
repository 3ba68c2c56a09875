//! One of a few: every answer that a field may have, each in its words.

/// An answer out of a few.
pub trait OneOf: Clone + PartialEq + 'static {
    /// Every answer, in the order in which they are offered.
    fn all() -> Vec<Self>;

    /// The words for it.
    fn in_words(&self) -> &'static str;
}

/// Gives an enum without contents its words.
macro_rules! one_of {
    ($($name:ident { $($variant:ident = $words:path),+ $(,)? })+) => {$(
        impl $crate::sections::OneOf for $name {
            fn all() -> Vec<Self> {
                vec![$(Self::$variant),+]
            }

            fn in_words(&self) -> &'static str {
                match self {
                    $(Self::$variant => $words(),)+
                }
            }
        }
    )+};
}

pub(super) use one_of;

/// The same for those that name their words themselves.
macro_rules! named {
    ($($name:ident::$word:ident),+) => {$(
        impl OneOf for $name {
            fn all() -> Vec<Self> {
                Self::ALL.to_vec()
            }

            fn in_words(&self) -> &'static str {
                self.$word()
            }
        }
    )+};
}

use super::{Amount, LensForm, Mobility, Symptom, UsedFor};

named!(
    Amount::word,
    LensForm::word,
    Mobility::words,
    Symptom::words,
    UsedFor::word
);
