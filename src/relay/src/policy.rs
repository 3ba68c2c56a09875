//! The headers that every answer carries.

use axum::http::header::{
    CONTENT_SECURITY_POLICY, HeaderName, HeaderValue, InvalidHeaderValue, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS,
};

/// Headers for every answer, whatever it is.
pub type Policy = Vec<(HeaderName, HeaderValue)>;

/// What the page's own code may ask of the device: a lit screen, and the camera to read a code off another tablet; nothing that
/// could listen or locate.
const PERMISSIONS: &str = "accelerometer=(), camera=(self), display-capture=(), geolocation=(), gyroscope=(), \
    hid=(), magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=(), screen-wake-lock=(self)";

/// The policy for a page whose inline scripts have these hashes.
///
/// # Errors
/// Never for hashes in base64; a hash with other characters can't stand in a header.
pub fn policy(script_hashes: &[String]) -> Result<Policy, InvalidHeaderValue> {
    Ok(vec![
        (
            CONTENT_SECURITY_POLICY,
            HeaderValue::from_str(&content_security_policy(script_hashes))?,
        ),
        (X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
        (REFERRER_POLICY, HeaderValue::from_static("no-referrer")),
        (
            HeaderName::from_static("permissions-policy"),
            HeaderValue::from_static(PERMISSIONS),
        ),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            HeaderValue::from_static("same-origin"),
        ),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            HeaderValue::from_static("same-origin"),
        ),
    ])
}

fn content_security_policy(script_hashes: &[String]) -> String {
    let inline = script_hashes
        .iter()
        .fold(String::new(), |said, hash| said + " '" + hash + "'");
    [
        "default-src 'none'".to_owned(),
        format!("script-src 'self' 'wasm-unsafe-eval'{inline}"),
        "style-src 'self'".to_owned(),
        "img-src 'self'".to_owned(),
        "font-src 'self'".to_owned(),
        "connect-src 'self'".to_owned(),
        "worker-src 'self'".to_owned(),
        "manifest-src 'self'".to_owned(),
        "base-uri 'none'".to_owned(),
        "form-action 'none'".to_owned(),
        "frame-ancestors 'none'".to_owned(),
    ]
    .join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_allowed_that_is_not_named() {
        let said = content_security_policy(&["sha256-AAAA".to_owned()]);
        assert!(said.starts_with("default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'sha256-AAAA'; style-src 'self'"));
        for loose in [
            "unsafe-inline",
            "'unsafe-eval'",
            "*",
            "http:",
            "https:",
            "data:",
            "blob:",
        ] {
            assert!(!said.contains(loose), "{loose}");
        }
    }
}
