//! The real router on a real socket, asked byte by byte: no client library tidies the paths on the way.

mod common;

use common::{Relay, built_app};

#[tokio::test]
async fn the_page_comes_with_every_security_header() {
    let relay = Relay::start(&built_app("headers")).await;
    for path in [
        "/",
        "/index.html",
        "/app-0123456789abcdef.js",
        "/nothing.js",
        "/relay/health",
        "/relay/elsewhere",
    ] {
        let reply = relay.get(path).await;
        let policy = reply.header("content-security-policy").unwrap();
        assert!(
            policy.starts_with("default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'sha256-"),
            "{path}: {policy}"
        );
        assert_eq!(
            reply.header("x-content-type-options"),
            Some("nosniff"),
            "{path}"
        );
        assert_eq!(
            reply.header("referrer-policy"),
            Some("no-referrer"),
            "{path}"
        );
        assert_eq!(
            reply.header("cross-origin-opener-policy"),
            Some("same-origin"),
            "{path}"
        );
        assert!(
            reply
                .header("permissions-policy")
                .unwrap()
                .contains("camera=(self)"),
            "{path}"
        );
    }
}

#[tokio::test]
async fn addresses_of_the_app_open_its_page() {
    let relay = Relay::start(&built_app("pages")).await;
    for path in [
        "/",
        "/vault",
        "/exams/01890a5d-ac96-774b-bcce-b302099a8057/retinoscopy",
        "/people/new?from=round",
    ] {
        let reply = relay.get(path).await;
        assert_eq!(reply.status, 200, "{path}");
        assert_eq!(
            reply.header("content-type"),
            Some("text/html; charset=utf-8"),
            "{path}"
        );
        assert!(reply.text().contains("<title>Lightround</title>"), "{path}");
    }
}

#[tokio::test]
async fn what_is_neither_file_nor_page_is_not_found() {
    let relay = Relay::start(&built_app("missing")).await;
    for path in [
        "/nothing.js",
        "/app-0123456789abcdef.js.br",
        "/fonts//text.woff2",
        "/relay",
        "/relay/frames",
    ] {
        assert_eq!(relay.get(path).await.status, 404, "{path}");
    }
}

#[tokio::test]
async fn no_path_leads_outside_the_folder() {
    let folder = built_app("outside");
    std::fs::write(
        folder.parent().unwrap().join("secret.txt"),
        "not for anyone",
    )
    .unwrap();
    let relay = Relay::start(&folder).await;
    for path in [
        "/../secret.txt",
        "/fonts/../../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/%2e%2e%2fsecret.txt",
        "/..\\secret.txt",
        "//secret.txt",
        "/./secret.txt",
        "/fonts/%00/secret.txt",
    ] {
        let reply = relay.get(path).await;
        assert!(
            matches!(reply.status, 400 | 404),
            "{path}: {}",
            reply.status
        );
        assert!(!reply.text().contains("not for anyone"), "{path}");
    }
}

#[cfg(unix)]
#[tokio::test]
async fn a_link_out_of_the_folder_is_not_followed() {
    let folder = built_app("link");
    let secret = folder.parent().unwrap().join("linked.txt");
    std::fs::write(&secret, "not for anyone").unwrap();
    std::os::unix::fs::symlink(&secret, folder.join("linked.txt")).unwrap();
    let relay = Relay::start(&folder).await;
    assert_eq!(relay.get("/linked.txt").await.status, 404);
}

#[tokio::test]
async fn only_reading_is_answered() {
    let relay = Relay::start(&built_app("methods")).await;
    for method in ["POST", "PUT", "DELETE", "OPTIONS", "PATCH"] {
        for path in ["/", "/relay/health"] {
            let reply = relay.ask(method, path, &[]).await;
            assert_eq!(reply.status, 405, "{method} {path}");
            assert_eq!(
                reply.header("allow").unwrap().replace(' ', ""),
                "GET,HEAD",
                "{method} {path}"
            );
        }
    }
    let head = relay.ask("HEAD", "/", &[]).await;
    assert_eq!((head.status, head.body.len()), (200, 0));
    let length = relay.get("/").await.body.len().to_string();
    assert_eq!(head.header("content-length"), Some(length.as_str()));
}

#[tokio::test]
async fn health_is_told_and_never_kept() {
    let relay = Relay::start(&built_app("health")).await;
    let reply = relay.get("/relay/health").await;
    assert_eq!((reply.status, reply.text().as_str()), (200, "well\n"));
    assert_eq!(reply.header("cache-control"), Some("no-store"));
}
