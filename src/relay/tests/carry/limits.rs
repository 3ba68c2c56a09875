use crate::scene::{NOW, Scene};
use lightround_relay::carry::{Limits, Rate};
use std::sync::atomic::Ordering;
use std::time::Duration;
use sync::exchange::{Quota, Request, Run};

#[tokio::test]
async fn who_asks_too_often_is_told_when_to_come_back() {
    let rate = Rate {
        burst: 6,
        each_second: 1,
    };
    let scene = Scene::limited(
        "rate",
        Limits {
            rate,
            ..Limits::default()
        },
    )
    .await;
    // Opening and two statements were three requests of the lead's.
    for _ in 0..3 {
        assert_eq!(scene.ask(0, &Request::Heads).await.status, 200);
    }
    let refused = scene.ask(0, &Request::Heads).await;
    assert_eq!(
        (refused.status, refused.header("retry-after")),
        (429, Some("1"))
    );
    assert_eq!(
        scene.ask(1, &Request::Heads).await.status,
        200,
        "others may ask"
    );
    scene.clock.store(NOW + 1_000, Ordering::Relaxed);
    assert_eq!(scene.ask(0, &Request::Heads).await.status, 200);
}

/// Anybody can make keys without end: what they ask together is limited, and no tablet of a vault feels it.
#[tokio::test]
async fn strangers_without_end_hold_up_nobody_who_is_known() {
    let rate = Rate {
        burst: 6,
        each_second: 1,
    };
    let limits = Limits {
        rate,
        ..Limits::default()
    };
    let mut scene = Scene::limited("strangers", limits).await;
    let heads = Request::Heads;
    assert_eq!(scene.ask(1, &heads).await.status, 200);
    let mut ended = std::collections::BTreeMap::new();
    for stranger in vault::sample::devices(77, 80) {
        scene.devices[3] = stranger;
        let reply = scene.ask(3, &heads).await;
        *ended.entry(reply.status).or_insert(0) += 1;
        let told = (reply.status == 429).then_some("1");
        assert_eq!(reply.header("retry-after"), told);
    }
    // Computed from the formula: ten times six, less the first requests of two that are known now.
    assert_eq!(ended, [(404, 58), (429, 22)].into());
    assert_eq!(scene.ask(1, &heads).await.status, 200);
}

#[tokio::test]
async fn a_full_vault_says_so() {
    let quota = Quota { bytes: 1_000 };
    let mut scene = Scene::limited(
        "full",
        Limits {
            quota,
            ..Limits::default()
        },
    )
    .await;
    let log = scene.devices[1].log(2);
    assert_eq!(scene.push(1, &log[..2]).await.0, 200);
    let reply = scene
        .ask(1, &Request::Push(Run::new(log[2..].to_vec()).unwrap()))
        .await;
    assert_eq!(
        (reply.status, reply.text().as_str()),
        (507, "this vault's room on the relay is full\n")
    );
    assert_eq!(
        scene.push(1, &log[..2]).await.0,
        200,
        "the same again takes no room"
    );
}

#[tokio::test]
async fn a_body_that_doesnt_come_is_not_waited_for() {
    let limits = Limits {
        patience: Duration::from_millis(50),
        ..Limits::default()
    };
    let scene = Scene::limited("slow", limits).await;
    let path = scene.path("heads");
    let field = scene.field(1, "POST", &path, b"", NOW);
    let fields = [
        ("authorization", field.as_str()),
        ("content-length", "1000"),
    ];
    let reply = scene.relay.send("POST", &path, &fields, b"slow").await;
    assert_eq!(reply.status, 408);
}

/// A store that fails is the relay's affair: the client hears one sentence and when to come back, and no word of the
/// database's.
#[tokio::test]
async fn a_broken_store_is_not_told_about() {
    let scene = Scene::new("broken").await;
    let file = std::env::temp_dir()
        .join(format!("lightround-relay-{}-broken", std::process::id()))
        .join("kept.sqlite");
    let behind = rusqlite::Connection::open(file).unwrap();
    behind
        .execute_batch("ALTER TABLE head RENAME TO lost")
        .unwrap();
    let reply = scene.ask(1, &Request::Heads).await;
    assert_eq!(
        (reply.status, reply.header("retry-after")),
        (503, Some("30"))
    );
    assert_eq!(
        reply.text(),
        "the relay can't get at what it keeps just now\n"
    );
    let lines = scene.lines.lock().unwrap().clone();
    let said: String = lines.iter().map(ToString::to_string).collect();
    assert!(
        said.contains("no such table: head"),
        "the journal has it: {said}"
    );
    behind
        .execute_batch("ALTER TABLE lost RENAME TO head")
        .unwrap();
    assert_eq!(
        scene.ask(1, &Request::Heads).await.status,
        200,
        "and it recovers"
    );
}
