//! Counts tell how much and how well, and nothing of whom.

use crate::common::{Relay, Reply};
use crate::scene::Scene;
use lightround_relay::metrics;
use std::collections::BTreeMap;
use sync::exchange::Request;

/// The counts as Prometheus would read them: one number for each name with its labels.
async fn counts(scene: &Scene) -> (String, BTreeMap<String, f64>) {
    let reply = Relay::answering(metrics::router(&scene.carrying))
        .await
        .get("/metrics")
        .await;
    let kind = reply.header("content-type").unwrap();
    assert!(kind.starts_with("text/plain; version=0.0.4"), "{kind}");
    let text = reply.text();
    let numbers = text
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| {
            let (name, number) = line.rsplit_once(' ').unwrap();
            (name.to_owned(), number.parse().unwrap())
        })
        .collect();
    (text, numbers)
}

#[tokio::test]
async fn requests_are_counted_by_kind_and_end() {
    let scene = Scene::new("counted").await;
    let refused: Reply = scene.ask(3, &Request::Heads).await;
    assert_eq!(refused.status, 404);
    for _ in 0..3 {
        scene.ask(0, &Request::Heads).await;
    }
    // An address is a stranger's text: it never becomes a label.
    let odd = scene.path("given-up");
    scene.post(&odd, "nobody", b"").await;
    assert_eq!(scene.relay.get("/relay/ready").await.status, 200);
    let (text, numbers) = counts(&scene).await;
    for (name, number) in [
        (
            r#"lightround_requests_total{what="heads",status="200"}"#,
            3.0,
        ),
        (
            r#"lightround_requests_total{what="heads",status="404"}"#,
            1.0,
        ),
        (
            r#"lightround_requests_total{what="open",status="200"}"#,
            1.0,
        ),
        (
            r#"lightround_requests_total{what="state",status="200"}"#,
            2.0,
        ),
        (
            r#"lightround_requests_total{what="other",status="401"}"#,
            1.0,
        ),
        (
            r#"lightround_requests_total{what="ready",status="200"}"#,
            1.0,
        ),
        (r#"lightround_request_seconds_count{what="heads"}"#, 4.0),
        (
            r#"lightround_request_seconds_bucket{what="heads",le="+Inf"}"#,
            4.0,
        ),
        ("lightround_store_troubles_total", 0.0),
        ("lightround_at_the_store", 0.0),
    ] {
        assert_eq!(numbers.get(name), Some(&number), "{name}\n{text}");
    }
    assert!(!text.contains("given-up"));
    assert!(!text.contains(&scene.vault.to_string()));
    for device in &scene.devices {
        assert!(!text.contains(&device.keys.device().to_string()));
    }
    let lines = scene.lines.lock().unwrap();
    let written: String = lines.iter().map(ToString::to_string).collect();
    assert!(!written.contains("given-up") && !written.contains(&scene.vault.to_string()));
}

#[tokio::test]
async fn a_store_that_fails_is_counted() {
    let scene = Scene::new("troubled").await;
    let file = std::env::temp_dir()
        .join(format!("lightround-relay-{}-troubled", std::process::id()))
        .join("kept.sqlite");
    let behind = rusqlite::Connection::open(file).unwrap();
    behind
        .execute_batch("ALTER TABLE head RENAME TO lost")
        .unwrap();
    assert_eq!(scene.ask(0, &Request::Heads).await.status, 503);
    let (_, numbers) = counts(&scene).await;
    assert_eq!(numbers.get("lightround_store_troubles_total"), Some(&1.0));
}

/// Who may ask the relay for the app may not ask how busy it is.
#[tokio::test]
async fn the_relays_own_address_tells_no_counts() {
    let scene = Scene::new("uncounted").await;
    for path in ["/relay/metrics", "/relay/v1/metrics"] {
        assert_eq!(scene.relay.get(path).await.status, 404);
    }
}
