//! The one place where failures become status codes. What the database said goes to the journal and nowhere else.

use super::Parts;
use axum::http::header::{CACHE_CONTROL, RETRY_AFTER, WWW_AUTHENTICATE};
use axum::http::{HeaderName, HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use sync::exchange::{Refusal, StoreError, WireError, refusals};
use vault::{RollError, request};

/// Where a device whose clock is wrong finds the time: milliseconds since 1970.
const TIME: HeaderName = HeaderName::from_static("lightround-time");
/// Seconds after which a busy store may be asked again.
const BUSY: u32 = 2;
/// Seconds after which a store that failed may be asked again.
const FAILED: u32 = 30;

/// Why a request isn't answered.
#[derive(Debug, thiserror::Error)]
pub enum Refused {
    #[error("{}", refusals::ADDRESS)]
    Address,
    #[error("{}", refusals::UNSIGNED)]
    Unsigned,
    #[error("this tablet's clock and the relay's are more than five minutes apart")]
    Clock { now: u64 },
    #[error("{}", refusals::REPEATED)]
    Repeated,
    #[error("{}", refusals::TOO_LONG)]
    TooLong,
    #[error("{}", refusals::SLOW)]
    Slow,
    #[error("this tablet asks too often: wait {seconds} s")]
    TooMany { seconds: u32 },
    #[error("{}", refusals::NO_INVITATION)]
    NoInvitation,
    #[error(transparent)]
    Wire(#[from] WireError),
    #[error(transparent)]
    Roll(#[from] RollError),
    #[error("the relay can't get at what it keeps just now")]
    Store(#[from] StoreError),
    #[error(transparent)]
    Exchange(Refusal),
}

impl From<Refusal> for Refused {
    fn from(refusal: Refusal) -> Self {
        match refusal {
            Refusal::Store(error) => Self::Store(error),
            Refusal::Roll(error) => Self::Roll(error),
            refusal => Self::Exchange(refusal),
        }
    }
}

impl Refused {
    fn status(&self) -> StatusCode {
        match self {
            Self::Address | Self::Wire(_) => StatusCode::BAD_REQUEST,
            Self::Unsigned | Self::Clock { .. } | Self::Repeated => StatusCode::UNAUTHORIZED,
            Self::TooLong => StatusCode::PAYLOAD_TOO_LARGE,
            Self::Slow => StatusCode::REQUEST_TIMEOUT,
            Self::TooMany { .. } => StatusCode::TOO_MANY_REQUESTS,
            Self::NoInvitation => StatusCode::NOT_FOUND,
            Self::Roll(RollError::OutOfPlace { .. }) => StatusCode::CONFLICT,
            Self::Roll(_) => StatusCode::FORBIDDEN,
            Self::Store(_) => StatusCode::SERVICE_UNAVAILABLE,
            Self::Exchange(refusal) => exchange_status(refusal),
        }
    }

    /// Seconds after which it is worth asking again, where waiting helps.
    fn retry_after(&self) -> Option<u32> {
        match self {
            Self::TooMany { seconds } => Some(*seconds),
            Self::Store(StoreError::Busy(_)) => Some(BUSY),
            Self::Store(_) => Some(FAILED),
            _ => None,
        }
    }

    pub fn into_response(self, parts: &Parts) -> Response {
        if let Self::Store(error) = &self {
            parts.trouble(error);
        }
        let status = self.status();
        let mut response =
            (status, [(CACHE_CONTROL, "no-store")], format!("{self}\n")).into_response();
        let fields = response.headers_mut();
        if let Some(seconds) = self.retry_after() {
            fields.insert(RETRY_AFTER, HeaderValue::from(seconds));
        }
        if let Self::Clock { now } = self {
            fields.insert(TIME, HeaderValue::from(now));
        }
        if status == StatusCode::UNAUTHORIZED {
            fields.insert(WWW_AUTHENTICATE, HeaderValue::from_static(request::SCHEME));
        }
        response
    }
}

fn exchange_status(refusal: &Refusal) -> StatusCode {
    match refusal {
        Refusal::Unknown => StatusCode::NOT_FOUND,
        Refusal::Removed | Refusal::NotAllowed { .. } | Refusal::NotALead | Refusal::Roll(_) => {
            StatusCode::FORBIDDEN
        }
        Refusal::OtherVault => StatusCode::BAD_REQUEST,
        Refusal::Full => StatusCode::INSUFFICIENT_STORAGE,
        Refusal::Store(_) => StatusCode::SERVICE_UNAVAILABLE,
    }
}
