//! The relay: why it can't be asked, what it refuses, and what an exchange brings to light.

use crate::{InWords, short};
use sync::exchange::{
    Failure, Nonsense, Notice, Progress, Refusal, RollRefused, Status, WireError, refusals,
};
use vault::RollError;
use words::app::relay as say;

impl InWords for Failure {
    fn in_words(&self) -> String {
        match self {
            Self::Unreachable => say::unreachable().into(),
            Self::Busy { .. } => say::busy().into(),
            Self::Refused(sentence) | Self::Forbidden(sentence) => known_again(sentence),
            Self::Senseless(what) => say::answer_senseless(&what.in_words()),
            Self::Storage(error) => error.in_words(),
        }
    }
}

impl InWords for Nonsense {
    fn in_words(&self) -> String {
        match self {
            Self::Wire(error) => error.in_words(),
            Self::Other => say::answers_something_else().into(),
            Self::Circle => say::goes_in_circles().into(),
            Self::More => say::more_of_nothing().into(),
            Self::Nobody => say::entries_of_nobody().into(),
            Self::OtherVault => say::sends_of_other_vault().into(),
            Self::Gap => say::entries_after_gap().into(),
            Self::Unsigned => say::entries_unsigned().into(),
            Self::Less => say::keeps_less().into(),
        }
    }
}

impl InWords for WireError {
    /// Where exactly a message is wrong helps nobody who reads it on a tablet; that the other side is newer does.
    fn in_words(&self) -> String {
        match self {
            Self::Version(version) => say::message_newer(version),
            _ => say::message_altered().into(),
        }
    }
}

/// A relay says in an English sentence why it won't do something. One that is known is said in the reader's words, any
/// other as it came.
fn known_again(sentence: &str) -> String {
    let own = || OWN.iter().find(|(english, _)| *english == sentence);
    let refusal = || REFUSALS.iter().find(|known| known.to_string() == sentence);
    let roll = || ROLL.iter().find(|known| known.to_string() == sentence);
    let said = own().map(|(_, said)| said().to_owned());
    said.or_else(|| refusal().and_then(refused))
        .or_else(|| roll().map(InWords::in_words))
        .or_else(|| with_figure(sentence))
        .unwrap_or_else(|| sentence.to_owned())
}

type Says = fn() -> &'static str;

/// What a relay says of a request itself.
const OWN: [(&str, Says); 6] = [
    (refusals::ADDRESS, say::address_of_another),
    (refusals::UNSIGNED, say::request_unsigned),
    (refusals::REPEATED, say::request_repeated),
    (refusals::TOO_LONG, say::request_too_long),
    (refusals::SLOW, say::request_slow),
    (refusals::NO_INVITATION, say::invitation_invalid),
];

/// What has one figure in it, known again by putting that in its place.
fn with_figure(sentence: &str) -> Option<String> {
    let mut figures = sentence.split(|sign: char| !sign.is_ascii_digit());
    let figure: u64 = figures.find(|figure| !figure.is_empty())?.parse().ok()?;
    let entry = Refusal::NotAllowed { sequence: figure };
    let change = RollError::OutOfPlace { expected: figure };
    if entry.to_string() == sentence {
        return refused(&entry);
    }
    if change.to_string() == sentence {
        return Some(change.in_words());
    }
    let status = u16::try_from(figure).ok()?;
    (refusals::status(status) == sentence).then(|| say::refused_with_status(&status))
}

/// Refusals that are sentences without figures.
static REFUSALS: [Refusal; 5] = [
    Refusal::Unknown,
    Refusal::Removed,
    Refusal::NotALead,
    Refusal::OtherVault,
    Refusal::Full,
];

static ROLL: [RollError; 7] = [
    RollError::OtherVault,
    RollError::NotALead,
    RollError::Unsigned,
    RollError::WasRemoved,
    RollError::BecomesViewer,
    RollError::NotHere,
    RollError::LastLead,
];

/// None for what a relay says of its own store: that is told as its being busy.
fn refused(refusal: &Refusal) -> Option<String> {
    Some(match refusal {
        Refusal::Unknown => say::no_such_vault().into(),
        Refusal::Removed => say::tablet_removed().into(),
        Refusal::NotAllowed { sequence } => say::may_not_write(sequence),
        Refusal::NotALead => say::aside_for_leads().into(),
        Refusal::OtherVault => say::entries_of_other_vault().into(),
        Refusal::Full => say::room_full().into(),
        Refusal::Roll(error) => error.in_words(),
        Refusal::Store(_) => return None,
    })
}

impl InWords for RollRefused {
    fn in_words(&self) -> String {
        match self {
            Self::Failed(failure) => failure.in_words(),
            Self::Unsound(error) => say::list_unsound(&error.in_words()),
            Self::Stranger => say::list_without_us().into(),
            Self::Other => say::list_is_another().into(),
        }
    }
}

impl InWords for Progress {
    fn in_words(&self) -> String {
        say::so_far(&self.done, &self.total)
    }
}

impl InWords for Status {
    fn in_words(&self) -> String {
        match self {
            Self::Offline(None) => say::not_exchanged_yet().into(),
            Self::Offline(Some(failure)) => failure.in_words(),
            Self::Trying => say::asking().into(),
            Self::Online => say::answers().into(),
        }
    }
}

impl InWords for Notice {
    fn in_words(&self) -> String {
        match self {
            Self::Status(status) => status.in_words(),
            Self::Progress(progress) => say::entries_exchanged(&progress.in_words()),
            Self::Finished => say::all_exchanged().into(),
            Self::Fork { device, sequence } => say::two_entries(&short(device), sequence),
            Self::Copied { sequence } => say::own_entries_there(sequence),
            Self::RolledBack {
                device,
                seen,
                shown,
            } => {
                let now = shown.map_or(0, |head| head.sequence);
                say::rolled_back(&seen.sequence, &short(device), &now)
            }
            Self::Aside { device } => say::wait_for_lead(&short(device)),
            Self::Unsent { device, sequence } => say::unsent(sequence, &short(device)),
            Self::NotTaken { device, sequence } => say::not_taken(&short(device), sequence),
        }
    }
}
