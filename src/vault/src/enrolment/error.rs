//! Why a device did not come into a vault.

use crate::found::FoundError;
use crate::random::NoRandomness;
use crate::roll::RollError;
use crate::signs::TypedError;

/// Why an enrolment doesn't go on. Nothing was kept of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EnrolmentError {
    /// What was typed is not what was shown.
    #[error(transparent)]
    Typed(#[from] TypedError),
    /// Not a message of an enrolment, or another one than is due.
    #[error("this is not the code that comes next: look at the other device for the right one")]
    OtherMessage,
    /// Made by a version that does it otherwise.
    #[error("the two devices have different versions of this program: update both")]
    Format,
    /// Cut short or altered.
    #[error("this code is damaged: show it again")]
    Damaged,
    /// A name that is empty or too long.
    #[error("a tablet needs a name, of at most 60 letters")]
    Name,
    /// The nonce is not the one that was committed to.
    #[error(
        "this answer doesn\u{2019}t belong to the device that asked: begin anew, and beware of anyone between the two"
    )]
    Commitment,
    /// The packet is not from the lead with whom the phrase was compared, or not for this device, or of another enrolment.
    #[error(
        "this packet is not for this device, or not from the one that it talked to: begin anew"
    )]
    NotForUs,
    /// What is in the packet doesn't hold together.
    #[error("the lead\u{2019}s packet makes no sense: begin anew")]
    Senseless,
    /// The lead may not admit this device.
    #[error(transparent)]
    Roll(#[from] RollError),
    /// No random numbers.
    #[error(transparent)]
    NoRandomness(#[from] NoRandomness),
    /// The new device's key file could not be made.
    #[error(transparent)]
    Found(#[from] FoundError),
}
