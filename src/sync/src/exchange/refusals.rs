//! What a relay says of a request itself, beside [`super::Refusal`]: here for the relay, which says it, and for whoever
//! knows it again and says it in another language.

/// The address names another vault, or asks for something else than the request.
pub const ADDRESS: &str = "this address and this request don't belong together";
/// The signature doesn't fit.
pub const UNSIGNED: &str = "this request isn't signed by the tablet that it names";
/// It came a second time.
pub const REPEATED: &str = "this request was made before";
/// It is too long.
pub const TOO_LONG: &str = "this request is longer than any may be";
/// It came too slowly.
pub const SLOW: &str = "this request took too long to come";
/// The invitation opens nothing.
pub const NO_INVITATION: &str =
    "this invitation is not valid: it may have been used, or its time is over";

/// Nothing that is a sentence: all that is known is HTTP's status.
pub fn status(status: u16) -> String {
    format!("the relay refused (status {status})")
}
