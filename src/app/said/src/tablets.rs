//! Other tablets: coming in, and the list of them.

use crate::InWords;
use vault::enrolment::EnrolmentError;
use vault::{RollError, TypedError};
use words::app::errors_tablets as say;

impl InWords for EnrolmentError {
    fn in_words(&self) -> String {
        match self {
            Self::Typed(error) => error.in_words(),
            Self::OtherMessage => say::other_code_due().into(),
            Self::Format => say::versions_differ().into(),
            Self::Damaged => say::code_damaged().into(),
            Self::Name => say::name_needed().into(),
            Self::Commitment => say::answer_of_another().into(),
            Self::NotForUs => say::packet_of_another().into(),
            Self::Senseless => say::packet_senseless().into(),
            Self::Roll(error) => error.in_words(),
            Self::NoRandomness(error) => error.in_words(),
            Self::Found(error) => error.in_words(),
        }
    }
}

impl InWords for TypedError {
    fn in_words(&self) -> String {
        match self {
            Self::Sign(sign) => say::no_sign_here(sign),
            Self::Line(line) => say::line_mistyped(line),
            Self::Cut => say::end_missing().into(),
        }
    }
}

impl InWords for RollError {
    fn in_words(&self) -> String {
        match self {
            Self::OtherVault => say::device_of_other_vault().into(),
            Self::OutOfPlace { expected } => say::list_changed(expected),
            Self::NotALead => say::only_lead_changes().into(),
            Self::Unsigned => say::change_unsigned().into(),
            Self::WasRemoved => say::was_removed().into(),
            Self::BecomesViewer => say::becomes_viewer().into(),
            Self::NotHere => say::none_to_remove().into(),
            Self::LastLead => say::last_lead().into(),
        }
    }
}
