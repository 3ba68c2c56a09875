//! Two relays before one PostgreSQL: one vault, whichever of them is asked.

use crate::cluster;
use crate::common::{Relay, built_app};
use crate::news::Stream;
use crate::scene::{NOW, Scene};
use lightround_relay::carry::{Carrying, Journal, Limits};
use lightround_relay::store::PostgresStore;
use lightround_relay::verify;
use std::collections::BTreeSet;
use std::mem::swap;
use std::sync::Arc;
use sync::exchange::{Answer, Pushed, Request, Run, Vector};
use vault::roll::Change;
use vault::{Frame, Role};

/// A scene with an open vault at one relay, and the other relay. Each has connections of its own.
async fn two(test: &str) -> (Scene, Relay) {
    let [here, there] = blocking(move || {
        [(), ()].map(|()| Arc::new(PostgresStore::open(&cluster::address("two")).unwrap()))
    })
    .await;
    // They are never closed: that waits too, and a runtime that ends allows no waiting.
    std::mem::forget([Arc::clone(&here), Arc::clone(&there)]);
    let folder = built_app(test);
    let clock = Arc::new(|| NOW);
    let carrying = Carrying::with_clock(there, Limits::default(), Journal::silent(), clock);
    let other = Relay::carrying(&folder, Some(carrying)).await;
    let mut scene = Scene::before(folder, Limits::default(), here).await;
    let code = vault::Invitation::make().unwrap();
    let store = Arc::clone(&scene.store);
    blocking(move || store.invite(code.hash(), NOW + 1_000).unwrap()).await;
    scene.open_with(code).await;
    (scene, other)
}

/// A store's call waits, and must not do so where the relay runs.
async fn blocking<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> T {
    tokio::task::spawn_blocking(work).await.unwrap()
}

async fn pulled(scene: &Scene, asker: usize) -> Vec<Vec<u8>> {
    let have = Vector::new();
    let reply = scene.ask(asker, &Request::Pull { have }).await;
    let Ok(Answer::Page(page)) = Answer::from_bytes(&reply.body) else {
        panic!("{}", reply.text());
    };
    let frames = page.runs.iter().flat_map(Run::frames);
    frames.map(|frame| frame.bytes().to_vec()).collect()
}

fn bytes(frames: &[Frame]) -> Vec<Vec<u8>> {
    frames.iter().map(|frame| frame.bytes().to_vec()).collect()
}

#[tokio::test]
async fn what_one_takes_the_other_gives() {
    let (mut scene, mut other) = two("two-take").await;
    scene.state(1, Change::Admit(Role::Clinician)).await;
    let log = scene.devices[1].log(9);
    for frame in &log {
        // Each frame at the other one of the two.
        swap(&mut scene.relay, &mut other);
        assert_eq!(scene.push(1, std::slice::from_ref(frame)).await.0, 200);
    }
    assert_eq!(pulled(&scene, 0).await, bytes(&log));
    swap(&mut scene.relay, &mut other);
    assert_eq!(pulled(&scene, 0).await, bytes(&log));
}

#[tokio::test]
async fn who_listens_at_one_hears_of_what_the_other_takes() {
    let (mut scene, other) = two("two-news").await;
    scene.state(1, Change::Admit(Role::Clinician)).await;
    let Ok(mut stream) = Stream::open(&other, &scene, 0).await else {
        panic!("no stream");
    };
    assert!(stream.hears().await, "once at the beginning");
    let log = scene.devices[1].log(1);
    assert_eq!(scene.push(1, &log).await.0, 200);
    assert!(stream.hears().await);
}

#[tokio::test]
async fn who_is_removed_at_one_is_refused_at_the_other_at_once() {
    let (mut scene, mut other) = two("two-removed").await;
    scene.state(1, Change::Admit(Role::Clinician)).await;
    let log = scene.devices[1].log(2);
    assert_eq!(scene.push(1, &log[..2]).await.0, 200);
    scene.state(1, Change::Remove { last: 2 }).await;
    swap(&mut scene.relay, &mut other);
    assert_eq!(scene.ask(1, &Request::Heads).await.status, 403);
    assert_eq!(
        scene.push(0, &log[2..]).await.0,
        202,
        "aside, whoever brings it"
    );
}

/// The same log pushed to both at the same time, piece by piece, with pieces that overlap: kept once, in order, whole.
#[tokio::test]
async fn both_at_once_keep_one_log() {
    let (mut scene, other) = two("two-race").await;
    scene.state(1, Change::Admit(Role::Clinician)).await;
    let log = scene.devices[1].log(60);
    for end in (3..=log.len()).step_by(2) {
        let request = Request::Push(Run::new(log[end - 3..end].to_vec()).unwrap());
        let (body, path) = (request.to_bytes(), scene.path("push"));
        let length = body.len().to_string();
        let fields = [0, 1].map(|asker| scene.field(asker, "POST", &path, &body, NOW));
        let heads = [&fields[0], &fields[1]].map(|field| {
            [
                ("authorization", field.as_str()),
                ("content-length", &length),
            ]
        });
        let (here, there) = tokio::join!(
            scene.relay.send("POST", &path, &heads[0], &body),
            other.send("POST", &path, &heads[1], &body)
        );
        for reply in [here, there] {
            assert_eq!(reply.status, 200, "{}", reply.text());
        }
    }
    let kept = pulled(&scene, 0).await;
    assert_eq!(kept, bytes(&log[..61]));
}

/// Two different frames under one number, one at each relay at the same time: one is kept, the other refused as a fork.
#[tokio::test]
async fn both_at_once_keep_one_of_two_forks() {
    let (mut scene, other) = two("two-forks").await;
    scene.state(1, Change::Admit(Role::Clinician)).await;
    let first = scene.devices[1].log(0);
    assert_eq!(scene.push(1, &first).await.0, 200);
    let mut head = first[0].head();
    for round in 0..10_u8 {
        let pair = [0, 1].map(|side| scene.devices[1].write(head, &[round, side]));
        let path = scene.path("push");
        let bodies = pair
            .each_ref()
            .map(|frame| Request::Push(Run::new(vec![frame.clone()]).unwrap()).to_bytes());
        let fields = bodies.each_ref().map(|body| {
            let field = scene.field(1, "POST", &path, body, NOW);
            (field, body.len().to_string())
        });
        let heads = fields.each_ref().map(|(field, length)| {
            [
                ("authorization", field.as_str()),
                ("content-length", length.as_str()),
            ]
        });
        let (here, there) = tokio::join!(
            scene.relay.send("POST", &path, &heads[0], &bodies[0]),
            other.send("POST", &path, &heads[1], &bodies[1])
        );
        let statuses = BTreeSet::from([here.status, there.status]);
        assert_eq!(statuses, BTreeSet::from([200, 409]), "round {round}");
        let kept = if here.status == 200 {
            &pair[0]
        } else {
            &pair[1]
        };
        let refused = if here.status == 200 { there } else { here };
        let sequence = kept.sequence();
        let said = Answer::from_bytes(&refused.body);
        assert_eq!(said, Ok(Answer::Pushed(Pushed::Fork { sequence })));
        head = kept.head();
    }
    let (store, id) = (Arc::clone(&scene.store), scene.vault);
    let (walked, aside) = blocking(move || {
        let wrong = verify(store.as_ref()).unwrap().wrong;
        let ours = wrong
            .into_iter()
            .filter(|wrong| wrong.contains(&id.to_string()));
        (
            ours.collect::<Vec<_>>(),
            store.aside(id, None, 99).unwrap().len(),
        )
    })
    .await;
    assert_eq!((walked, aside), (vec![], 10), "the evidence is kept");
}
