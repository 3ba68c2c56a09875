//! What a file is, told from its name.

/// The content type for a path; plain bytes where the ending is not one of the app's.
pub fn content_type(path: &str) -> &'static str {
    let ending = path.rsplit_once('.').map_or("", |(_, ending)| ending);
    match ending {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// How long a browser may keep a file without asking again.
pub fn cache_control(path: &str) -> &'static str {
    if is_hashed(path) {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    }
}

/// The bundler writes a hash of 64 bits, in hexadecimal without leading zeros, after a hyphen: `app-9c1f…e2_bg.wasm`.
fn is_hashed(path: &str) -> bool {
    let name = path.rsplit('/').next().unwrap_or(path);
    name.split('-').skip(1).any(|part| {
        let digits = part
            .bytes()
            .take_while(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
            .count();
        (12..=16).contains(&digits) && matches!(part.as_bytes().get(digits), Some(b'.' | b'_'))
    })
}

/// Whether a path that names no file may be one of the app's own pages (`/people/0190…`), to be opened by the app itself.
pub fn is_page(path: &str) -> bool {
    path.strip_prefix('/').is_some_and(|rest| {
        let rest = rest.strip_suffix('/').unwrap_or(rest);
        rest.split('/').all(|part| {
            !part.is_empty()
                && part
                    .bytes()
                    .all(|byte| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_'))
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wasm_has_the_type_that_streaming_compilation_demands() {
        // The WebAssembly Web API specification: instantiateStreaming refuses any other type.
        assert_eq!(
            content_type("/app-0123456789abcdef_bg.wasm"),
            "application/wasm"
        );
    }

    #[test]
    fn modules_and_manifest_have_their_registered_types() {
        // RFC 9239 for JavaScript, the W3C's Web Application Manifest for the manifest, RFC 8081 for fonts.
        assert_eq!(content_type("/sw.js"), "text/javascript; charset=utf-8");
        assert_eq!(
            content_type("/manifest.webmanifest"),
            "application/manifest+json"
        );
        assert_eq!(content_type("/fonts/text.woff2"), "font/woff2");
        assert_eq!(content_type("/unheard-of"), "application/octet-stream");
    }

    #[test]
    fn only_hashed_names_are_kept_for_good() {
        for hashed in [
            "/app-9c1f0a2b3c4d5ee2.js",
            "/app-9c1f0a2b3c4d5ee2_bg.wasm",
            "/tokens-9c1f0a2b3c4d5e.css",
        ] {
            assert!(cache_control(hashed).contains("immutable"), "{hashed}");
        }
        for plain in [
            "/index.html",
            "/sw.js",
            "/stretch_bg.wasm",
            "/fonts/atkinson-hyperlegible-next.woff2",
            "/icons/lightround-512.png",
        ] {
            assert_eq!(cache_control(plain), "no-cache", "{plain}");
        }
    }

    #[test]
    fn pages_are_plain_words_between_slashes() {
        for page in [
            "/people/new",
            "/exams/01890a5d-ac96-774b-bcce-b302099a8057/retinoscopy",
            "/vault/",
        ] {
            assert!(is_page(page), "{page}");
        }
        for other in [
            "/app.js",
            "/../etc/passwd",
            "/%2e%2e/secret",
            "//elsewhere",
            "/a//b",
            "people",
            "/",
        ] {
            assert!(!is_page(other), "{other}");
        }
    }
}
