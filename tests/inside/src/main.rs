//! Tests that must run inside a browser: the tablet's own storage against what every such place promises, and the vault's
//! ciphers, signatures and derivations against what others published about them.
//!
//! `cargo xtask test` builds it with the app's own profile; a journey opens it in each engine and reads what became of every
//! case. It is a page of its own, and no part of the app.

mod kept;
mod page;
mod published;

use page::Page;

/// One set of cases.
struct Set {
    name: &'static str,
    /// How many cases there must be.
    stated: usize,
    cases: Vec<Case>,
}

/// One case.
struct Case {
    name: String,
    ended: Ended,
}

/// What became of a case.
enum Ended {
    Passed,
    /// It can't be asked here, and why.
    LeftOut(&'static str),
    /// It came out otherwise, and how.
    Failed(String),
}

fn main() {
    wasm_bindgen_futures::spawn_local(run());
}

async fn run() {
    let page = Page::open();
    for set in &kept::by_the_browser().await {
        page.show(set);
    }
    for set in &published::sets() {
        page.show(set);
    }
    page.end();
}
