//! Addresses of any origin: each is answered, none leads out of the folder, none brings the relay down.
#![allow(clippy::unwrap_used, reason = "a failure here is the test's finding")]

mod common;

use common::{PAGE, Relay, built_app};
use lightround_relay::carry::{Carrying, Journal, Limits};
use lightround_relay::store::SqliteStore;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use std::sync::Arc;

/// Addresses to begin with, of which single signs are then replaced, left out or doubled.
const KNOWN: [&str; 8] = [
    "/",
    "/index.html",
    "/app-0123456789abcdef.js",
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/relay/health",
    "/relay/openapi.json",
    "/relay/v1/vaults/00000000000000000000000000000000/pull",
];

fn addresses() -> impl Strategy<Value = String> {
    // Every sign that may stand in a request's line; a space or a line break would end it.
    let sign = (0x21_u8..0x7f).prop_map(char::from);
    let change = (any::<prop::sample::Index>(), sign.clone(), 0..3);
    let changed = (
        prop::sample::select(&KNOWN[..]),
        prop::collection::vec(change, 1..4),
    )
        .prop_map(|(known, changes)| {
            let mut signs: Vec<char> = known.chars().collect();
            for (at, sign, how) in changes {
                // The first sign stays: without it this is no address.
                let at = 1 + at.index(signs.len());
                match how {
                    0 if at < signs.len() => signs[at] = sign,
                    1 if at < signs.len() => drop(signs.remove(at)),
                    _ => signs.insert(at, sign),
                }
            }
            signs.into_iter().collect()
        });
    let any = prop::collection::vec(sign, 0..60)
        .prop_map(|signs| std::iter::once('/').chain(signs).collect());
    prop_oneof![3 => changed, 1 => any]
}

#[test]
fn every_address_is_answered_and_none_leads_outside() {
    let folder = built_app("addresses");
    let around = folder.parent().unwrap();
    std::fs::write(around.join("secret.txt"), "not for anyone").unwrap();
    let store = SqliteStore::open(&around.join("kept.sqlite")).unwrap();
    let carrying = Carrying::new(Arc::new(store), Limits::default(), Journal::silent());
    let runtime = tokio::runtime::Runtime::new().unwrap();
    let relay = runtime.block_on(Relay::carrying(&folder, Some(carrying)));
    let config = ProptestConfig {
        cases: 400,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let ran = TestRunner::new(config).run(&(addresses(), any::<bool>()), |(address, post)| {
        let method = if post { "POST" } else { "GET" };
        let fields = [("content-length", "0")];
        let reply = runtime.block_on(relay.ask(method, &address, &fields));
        prop_assert!(
            [200, 400, 401, 404, 405].contains(&reply.status),
            "{}",
            reply.status
        );
        prop_assert!(!reply.text().contains("not for anyone"));
        Ok(())
    });
    ran.unwrap();
    let page = runtime.block_on(relay.get("/"));
    assert_eq!((page.status, page.text().as_str()), (200, PAGE));
}
