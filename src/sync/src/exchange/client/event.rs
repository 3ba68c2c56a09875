//! What a client is told, and what it asks to be done.

use super::nonsense::Nonsense;
use super::notice::Notice;
use crate::exchange::{Answer, Request, Run, Vector};
use crate::storage::StorageError;
use vault::{DeviceId, Frame};

/// Something that happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// An exchange is wanted: at the start, when there may be a network again, when the app comes to the front, after
    /// something was written, when a wait is over. `have` is how far the logs go here.
    Wanted {
        /// How far the logs go here.
        have: Vector,
    },
    /// The answer to [`Effect::Ask`].
    Answered {
        /// What the relay said.
        answer: Answer,
        /// A random number, for the wait if the answer is no good.
        random: u32,
    },
    /// The frames that [`Effect::Load`] asked for, as many as can be read; none where the first can't.
    Loaded(Vec<Frame>),
    /// [`Effect::Store`] was done.
    Stored,
    /// [`Effect::Store`] was not done because the log has gone on.
    Moved {
        /// How far the logs go here now.
        have: Vector,
    },
    /// An effect could not be done.
    Failed {
        /// Why.
        failure: Failure,
        /// A random number, for the wait.
        random: u32,
    },
}

/// Something to be done. `Ask`, `Load` and `Store` are each answered by an event; the others are not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Send this to the relay.
    Ask(Request),
    /// Read a log from this number on, as much as [`Run::beginning`] would take.
    Load {
        /// Whose log.
        device: DeviceId,
        /// From which number on.
        from: u64,
    },
    /// Keep these frames after the head that they continue.
    Store(Run),
    /// Keep this: what the relay is known to have held. It is given back to [`super::Exchange::new`] after a restart.
    Remember(Vector),
    /// Come back with [`Event::Wanted`] after so many milliseconds, unless something else wants an exchange before.
    Wait {
        /// Milliseconds.
        millis: u64,
    },
    /// Show this.
    Tell(Notice),
}

/// Why an effect could not be done.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Failure {
    /// No answer: no network, or no relay.
    #[error("the relay can't be reached")]
    Unreachable,
    /// The relay asks to be left alone for a while.
    #[error("the relay is busy")]
    Busy {
        /// Seconds until it may be asked again.
        seconds: u32,
    },
    /// The relay won't do it, in its own sentence.
    #[error("{0}")]
    Refused(String),
    /// It won't do it whoever waits for how long: this may not be done by whom it was done. In its own sentence.
    #[error("{0}")]
    Forbidden(String),
    /// The answer makes no sense.
    #[error("the relay's answer can't be read: {0}")]
    Senseless(#[from] Nonsense),
    /// This device's own storage.
    #[error(transparent)]
    Storage(#[from] StorageError),
}
