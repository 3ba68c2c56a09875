//! Inline scripts of the built page: the policy names each by its hash, so that no other can run.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

/// The policy's source expression, `sha256-…`, for every script written inside the page, in order.
///
/// A script with a `src` is fetched and so needs no hash. Only the page's own build is read here, never a stranger's HTML.
pub fn script_hashes(page: &str) -> Vec<String> {
    scripts(page)
        .map(|text| format!("sha256-{}", STANDARD.encode(Sha256::digest(text))))
        .collect()
}

fn scripts(page: &str) -> impl Iterator<Item = &str> {
    page.split("<script").skip(1).filter_map(|piece| {
        let (attributes, rest) = piece.split_once('>')?;
        let (text, _) = rest.split_once("</script>")?;
        (!attributes.contains("src=")).then_some(text)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_the_text_between_the_tags() {
        // The example of the Content Security Policy Level 3 specification, "Usage of hash-source expressions".
        let page = "<head><script>alert('Hello, world.');</script></head>";
        assert_eq!(
            script_hashes(page),
            ["sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng="]
        );
    }

    #[test]
    fn every_inline_script_counts_and_fetched_ones_do_not() {
        let page = r#"<script src="/a.js"></script><script type="module">one</script><script>two</script>"#;
        assert_eq!(scripts(page).collect::<Vec<_>>(), ["one", "two"]);
        assert!(script_hashes("<p>no script here</p>").is_empty());
    }
}
