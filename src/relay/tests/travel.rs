//! How files travel: compressed, remembered, refused when the folder isn't a build.

mod common;

use common::{PAGE, Relay, SCRIPT, built_app, squeezed};
use lightround_relay::{App, LoadError};
use std::path::Path;

#[tokio::test]
async fn brotli_travels_to_those_who_take_it() {
    let relay = Relay::start(&built_app("brotli")).await;
    let path = "/app-0123456789abcdef.js";
    let reply = relay
        .ask("GET", path, &[("accept-encoding", "gzip, br")])
        .await;
    assert_eq!(reply.header("content-encoding"), Some("br"));
    assert_eq!(
        reply.header("content-type"),
        Some("text/javascript; charset=utf-8")
    );
    assert_eq!(reply.body, squeezed(SCRIPT));

    let reply = relay.ask("GET", path, &[("accept-encoding", "gzip")]).await;
    assert_eq!(reply.header("content-encoding"), None);
    assert_eq!(reply.header("vary"), Some("accept-encoding"));
    assert_eq!(reply.text(), SCRIPT);
}

#[tokio::test]
async fn hashed_files_are_kept_and_others_asked_for_again() {
    let relay = Relay::start(&built_app("kept")).await;
    let hashed = relay.get("/app-0123456789abcdef.js").await;
    assert_eq!(
        hashed.header("cache-control"),
        Some("public, max-age=31536000, immutable")
    );
    let page = relay.get("/").await;
    assert_eq!(page.header("cache-control"), Some("no-cache"));

    let tag = page.header("etag").unwrap().to_owned();
    let again = relay.ask("GET", "/", &[("if-none-match", &tag)]).await;
    assert_eq!((again.status, again.body.len()), (304, 0));
    let other = relay
        .ask("GET", "/", &[("if-none-match", "W/\"another\"")])
        .await;
    assert_eq!((other.status, other.text().as_str()), (200, PAGE));
}

#[test]
fn a_folder_that_is_no_build_is_refused_in_one_sentence() {
    let error = App::load(Path::new("no-such-folder")).unwrap_err();
    assert!(matches!(error, LoadError::Missing(_)));
    assert_eq!(
        error.to_string(),
        "There is no built app at no-such-folder: build it first with `cargo xtask build`."
    );

    let folder = built_app("no-page");
    std::fs::remove_file(folder.join("index.html")).unwrap();
    assert!(matches!(
        App::load(&folder).unwrap_err(),
        LoadError::NoPage(_)
    ));
}

#[test]
fn a_compressed_copy_of_something_else_is_refused() {
    let folder = built_app("stale");
    std::fs::write(
        folder.join("app-0123456789abcdef.js"),
        "another build's script",
    )
    .unwrap();
    let error = App::load(&folder).unwrap_err();
    assert!(
        matches!(&error, LoadError::Stale(path) if path == "/app-0123456789abcdef.js"),
        "{error}"
    );

    std::fs::write(folder.join("app-0123456789abcdef.js"), SCRIPT).unwrap();
    std::fs::write(
        folder.join("app-0123456789abcdef.js.br"),
        "not brotli at all",
    )
    .unwrap();
    assert!(matches!(
        App::load(&folder).unwrap_err(),
        LoadError::Stale(_)
    ));
}
