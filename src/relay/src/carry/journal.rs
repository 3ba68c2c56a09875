//! One line for each request: what kind, how it ended, how long it took, how many bytes. Nothing of whom or of what.

use super::{Carrying, Parts, counts};
use crate::paths;
use axum::body::HttpBody;
use axum::extract::{MatchedPath, Path, Request, State};
use axum::http::header::CONTENT_LENGTH;
use axum::middleware::Next;
use axum::response::Response;
use std::collections::HashMap;
use std::fmt;
use std::sync::Arc;
use std::time::Instant;
use sync::exchange::StoreError;
use sync::exchange::wire::LONGEST_REQUEST;

/// Where lines go.
#[derive(Clone)]
pub struct Journal(Arc<dyn Fn(Line) + Send + Sync>);

/// A line, written as JSON.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Line {
    /// The relay serves.
    Began,
    /// It was asked to stop, and does.
    Ended,
    /// A renewed certificate is in use.
    Renewed,
    /// A request was answered.
    Answered {
        /// When, in milliseconds since 1970.
        at: u64,
        /// The kind of request, one of the names that the relay knows; `other` for any that it doesn't.
        what: &'static str,
        /// The status of the answer.
        status: u16,
        /// Milliseconds that it took.
        millis: u64,
        /// Bytes of the request's body, as announced.
        bytes_in: u64,
        /// Bytes of the answer's body.
        bytes_out: u64,
    },
    /// The store failed, or something else that its keeper should know.
    Trouble(String),
}

impl Journal {
    /// Hands every line to `write`.
    pub fn to(write: impl Fn(Line) + Send + Sync + 'static) -> Self {
        Self(Arc::new(write))
    }

    /// Writes to the standard error output.
    pub fn to_stderr() -> Self {
        Self::to(|line| eprintln!("{line}"))
    }

    /// Keeps nothing.
    pub fn silent() -> Self {
        Self::to(|_| {})
    }

    /// Writes a line.
    pub fn write(&self, line: Line) {
        (self.0)(line);
    }
}

impl fmt::Display for Line {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Began => out.write_str(r#"{"relay":"serves"}"#),
            Self::Renewed => out.write_str(r#"{"relay":"has a renewed certificate"}"#),
            Self::Ended => out.write_str(r#"{"relay":"stops"}"#),
            Self::Answered {
                at,
                what,
                status,
                millis,
                bytes_in,
                bytes_out,
            } => write!(
                out,
                r#"{{"at":{at},"what":"{what}","status":{status},"ms":{millis},"in":{bytes_in},"out":{bytes_out}}}"#
            ),
            Self::Trouble(what) => write!(out, r#"{{"trouble":"{}"}}"#, escaped(what)),
        }
    }
}

/// A text within a string of JSON (RFC 8259, section 7).
fn escaped(text: &str) -> String {
    text.chars()
        .fold(String::new(), |escaped, sign| match sign {
            '"' | '\\' => escaped + "\\" + &sign.to_string(),
            control if control.is_control() => escaped + &format!("\\u{:04x}", control as u32),
            sign => escaped + &sign.to_string(),
        })
}

impl Parts {
    /// The store failed: the journal learns why, and nobody else.
    pub(super) fn trouble(&self, error: &StoreError) {
        self.counts.trouble();
        self.journal.write(Line::Trouble(error.to_string()));
    }
}

/// Writes a line after each answer, and counts it.
pub async fn write_down(
    State(carrying): State<Carrying>,
    matched: MatchedPath,
    path: Option<Path<HashMap<String, String>>>,
    request: Request,
    next: Next,
) -> Response {
    let began = Instant::now();
    let announced = request.headers().get(CONTENT_LENGTH);
    let bytes_in = announced
        .and_then(|length| length.to_str().ok()?.parse::<u64>().ok())
        // More than this is announced, and never read.
        .map_or(0, |length| length.min(LONGEST_REQUEST as u64));
    let response = next.run(request).await;
    let named = path.as_ref().and_then(|Path(named)| named.get("what"));
    let what = match named {
        Some(what) => known(what),
        None if matched.as_str() == paths::READY => "ready",
        None if matched.as_str() == paths::NEWS => "news",
        None => "other",
    };
    let request = counts::Request {
        what,
        status: response.status().as_u16(),
        millis: began.elapsed().as_millis() as u64,
        bytes_in,
        bytes_out: response.body().size_hint().exact().unwrap_or(0),
    };
    carrying.0.counts.count(request);
    carrying.0.journal.write(Line::Answered {
        at: (carrying.0.clock)(),
        what,
        status: request.status,
        millis: request.millis,
        bytes_in,
        bytes_out: request.bytes_out,
    });
    response
}

/// Only names from here are written down: an address is a stranger's text.
fn known(what: &str) -> &'static str {
    ["heads", "pull", "push", "roll", "state", "open", "aside"]
        .into_iter()
        .find(|known| *known == what)
        .unwrap_or("other")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_json() {
        let line = Line::Answered {
            at: 1,
            what: "pull",
            status: 200,
            millis: 3,
            bytes_in: 4,
            bytes_out: 5,
        };
        let json = r#"{"at":1,"what":"pull","status":200,"ms":3,"in":4,"out":5}"#;
        assert_eq!(line.to_string(), json);
        let trouble = Line::Trouble("say \"no\"\n\\ twice".into());
        assert_eq!(
            trouble.to_string(),
            r#"{"trouble":"say \"no\"\u000a\\ twice"}"#
        );
    }
}
