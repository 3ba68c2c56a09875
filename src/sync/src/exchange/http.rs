//! What a request is in HTTP, and what a reply of HTTP means. Sending is the caller's.

use super::{Answer, Failure, Request, refusals};
use vault::VaultId;

/// The method of every request.
pub const METHOD: &str = "POST";
/// The type of every request's body, and of a reply's that is an [`Answer`].
pub const TYPE: &str = "application/cbor";
/// The field in which a relay says the time to a device whose clock is off: milliseconds since 1970.
pub const TIME: &str = "lightround-time";
/// Seconds to wait where a busy relay doesn't say.
const PATIENCE: u32 = 30;

/// Where a request is sent, after the host.
pub fn path(vault: VaultId, request: &Request) -> String {
    format!("/relay/v1/vaults/{vault}/{}", request.name())
}

/// A reply, as far as it matters.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reply {
    /// The status.
    pub status: u16,
    /// `content-type`, empty where there is none.
    pub kind: String,
    /// `retry-after`, in seconds.
    pub retry_after: Option<u32>,
    /// [`TIME`].
    pub time: Option<u64>,
    /// The body.
    pub body: Vec<u8>,
}

/// What a reply means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Meant {
    /// An answer.
    Answer(Answer),
    /// It was not done.
    Failed(Failure),
    /// This device's clock is off: ask again at this time, in milliseconds since 1970.
    Clock {
        /// The relay's time.
        now: u64,
    },
}

impl Reply {
    /// What it means.
    pub fn read(self) -> Meant {
        if self.kind == TYPE {
            return match Answer::from_bytes(&self.body) {
                Ok(answer) => Meant::Answer(answer),
                Err(error) => Meant::Failed(Failure::Senseless(error.into())),
            };
        }
        if let (401, Some(now)) = (self.status, self.time) {
            return Meant::Clock { now };
        }
        Meant::Failed(match self.status {
            429 | 503 => Failure::Busy {
                seconds: self.retry_after.unwrap_or(PATIENCE),
            },
            // Something between here and the relay: a proxy without it, a page that asks for a password.
            200..=399 | 502 | 504 => Failure::Unreachable,
            403 => Failure::Forbidden(self.sentence()),
            _ => Failure::Refused(self.sentence()),
        })
    }

    /// A relay says why in one sentence; whatever else answers may say anything.
    fn sentence(&self) -> String {
        let said = String::from_utf8_lossy(&self.body);
        match said.trim() {
            one if !one.is_empty() && one.len() <= LONGEST && !one.contains(['<', '\n']) => {
                one.to_owned()
            }
            _ => refusals::status(self.status),
        }
    }
}

/// Bytes of the longest sentence that is believed to be one.
const LONGEST: usize = 300;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::exchange::{Pushed, Vector};

    fn reply(status: u16, kind: &str, body: &[u8]) -> Reply {
        Reply {
            status,
            kind: kind.into(),
            retry_after: None,
            time: None,
            body: body.into(),
        }
    }

    #[test]
    fn the_address_names_the_vault_and_what_is_asked() {
        let vault = VaultId::from_bytes([0x0a; 16]);
        let pull = Request::Pull {
            have: Vector::new(),
        };
        assert_eq!(
            path(vault, &pull),
            format!("/relay/v1/vaults/{}/pull", "0a".repeat(16))
        );
    }

    #[test]
    fn an_answer_is_one_whatever_its_status() {
        let gap = Answer::Pushed(Pushed::Gap { head: None });
        assert_eq!(reply(409, TYPE, &gap.to_bytes()).read(), Meant::Answer(gap));
        assert!(matches!(
            reply(200, TYPE, b"no message").read(),
            Meant::Failed(Failure::Senseless(_))
        ));
    }

    #[test]
    fn a_wrong_clock_is_told_the_time() {
        let off = Reply {
            time: Some(7),
            ..reply(401, "text/plain", b"off")
        };
        assert_eq!(off.clone().read(), Meant::Clock { now: 7 });
        // A refusal is no matter of the clock, whatever stands beside it.
        assert_eq!(
            Reply { status: 403, ..off }.read(),
            Meant::Failed(Failure::Forbidden("off".into()))
        );
    }

    #[test]
    fn a_busy_relay_is_left_alone_for_as_long_as_it_asks() {
        let busy = |retry_after| {
            let reply = Reply {
                retry_after,
                ..reply(503, "text/plain", b"")
            };
            reply.read()
        };
        assert_eq!(busy(Some(4)), Meant::Failed(Failure::Busy { seconds: 4 }));
        assert_eq!(
            busy(None),
            Meant::Failed(Failure::Busy { seconds: PATIENCE })
        );
    }

    #[test]
    fn what_is_no_relay_is_not_taken_for_one() {
        assert_eq!(
            reply(200, "text/html", b"<p>sign in</p>").read(),
            Meant::Failed(Failure::Unreachable)
        );
        assert_eq!(
            reply(404, "text/html", b"<p>nothing here</p>").read(),
            Meant::Failed(Failure::Refused("the relay refused (status 404)".into()))
        );
        assert_eq!(
            reply(404, "text/plain", b"there is no such vault\n").read(),
            Meant::Failed(Failure::Refused("there is no such vault".into()))
        );
    }
}
