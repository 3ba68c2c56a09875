//! One file as one answer: compressed or not, whole or "you have it already".

use crate::app::File;
use crate::kind::{cache_control, content_type};
use axum::body::Body;
use axum::http::header::{
    ACCEPT_ENCODING, CACHE_CONTROL, CONTENT_ENCODING, CONTENT_TYPE, ETAG, IF_NONE_MATCH, VARY,
};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};

/// Answers with a file of the app, as this client can take it.
pub fn with_file(path: &str, file: &File, asked: &HeaderMap) -> Response {
    let standing = [
        (CACHE_CONTROL, cache_control(path)),
        (VARY, "accept-encoding"),
        (ETAG, file.tag.as_str()),
    ];
    if has_it(asked, &file.tag) {
        return (StatusCode::NOT_MODIFIED, standing).into_response();
    }
    let typed = [(CONTENT_TYPE, content_type(path))];
    match &file.brotli {
        Some(copy) if takes_brotli(asked) => (
            standing,
            typed,
            [(CONTENT_ENCODING, "br")],
            Body::from(copy.clone()),
        )
            .into_response(),
        _ => (standing, typed, Body::from(file.plain.clone())).into_response(),
    }
}

fn has_it(asked: &HeaderMap, tag: &str) -> bool {
    listed(asked, IF_NONE_MATCH).any(|item| item == "*" || item == tag)
}

fn takes_brotli(asked: &HeaderMap) -> bool {
    listed(asked, ACCEPT_ENCODING).any(|item| {
        let mut parts = item.split(';').map(str::trim);
        let refused = |weight: &str| {
            weight
                .strip_prefix("q=")
                .and_then(|q| q.parse::<f32>().ok())
                == Some(0.0)
        };
        parts.next() == Some("br") && !parts.any(refused)
    })
}

fn listed(asked: &HeaderMap, name: axum::http::HeaderName) -> impl Iterator<Item = &str> {
    asked
        .get_all(name)
        .into_iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(','))
        .map(str::trim)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asking(encodings: &'static str) -> HeaderMap {
        let mut asked = HeaderMap::new();
        asked.insert(
            ACCEPT_ENCODING,
            axum::http::HeaderValue::from_static(encodings),
        );
        asked
    }

    #[test]
    fn brotli_only_when_the_client_says_so() {
        // RFC 9110, section 12.5.3: a weight of 0 means "not acceptable".
        assert!(takes_brotli(&asking("gzip, deflate, br, zstd")));
        assert!(takes_brotli(&asking("br;q=0.5")));
        assert!(!takes_brotli(&asking("br;q=0")));
        assert!(!takes_brotli(&asking("br; q=0.000, gzip")));
        assert!(!takes_brotli(&asking("gzip")));
        assert!(!takes_brotli(&HeaderMap::new()));
    }
}
