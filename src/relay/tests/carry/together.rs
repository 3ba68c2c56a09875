//! Whole rounds of the client's side over the relay, as the app does them.

use crate::scene::{NOW, Scene};
use std::cell::RefCell;
use sync::exchange::{Answer, Exchange, Failure, Host, Notice, Request, Vector, round};
use sync::{Append, MemoryStorage, Storage};
use vault::Frame;

struct Line<'a> {
    scene: &'a Scene,
    asker: usize,
    told: RefCell<Vec<Notice>>,
}

impl Host for Line<'_> {
    async fn ask(&self, request: Request) -> Result<Answer, Failure> {
        let reply = self.scene.ask(self.asker, &request).await;
        if reply.header("content-type") == Some("application/cbor") {
            return Answer::from_bytes(&reply.body)
                .map_err(|error| Failure::Senseless(error.into()));
        }
        Err(Failure::Refused(reply.text().trim_end().to_owned()))
    }

    fn random(&self) -> u32 {
        0
    }

    async fn remember(&self, _: &Vector) {}

    fn tell(&self, notice: Notice) {
        self.told.borrow_mut().push(notice);
    }
}

async fn tablet(log: &[Frame]) -> MemoryStorage {
    let storage = MemoryStorage::new();
    let append = Append {
        device: log[0].device(),
        expected: None,
        frames: log,
        drop_drafts: &[],
    };
    storage.append(append).await.unwrap();
    storage
}

async fn exchange(scene: &Scene, asker: usize, storage: &MemoryStorage) -> Vec<Notice> {
    let line = Line {
        scene,
        asker,
        told: RefCell::default(),
    };
    let own = scene.devices[asker].keys.device();
    let mut exchange = Exchange::new(scene.vault, own, Vector::new());
    round(&mut exchange, storage, &line).await.unwrap();
    line.told.into_inner()
}

#[tokio::test]
async fn tablets_come_to_hold_the_same_over_http() {
    let mut scene = Scene::new("together").await;
    let logs = [scene.devices[0].log(700), scene.devices[1].log(5)];
    let tablets = [tablet(&logs[0]).await, tablet(&logs[1]).await];
    for asker in [0, 1, 0] {
        let told = exchange(&scene, asker, &tablets[asker]).await;
        assert_eq!(told.last(), Some(&Notice::Finished), "{told:?}");
    }
    let vectors = [tablets[0].vector().await, tablets[1].vector().await];
    assert_eq!(vectors[0], vectors[1]);
    assert_eq!(vectors[0].as_ref().unwrap().len(), 2);
    assert!(
        lightround_relay::verify(scene.store.as_ref())
            .unwrap()
            .wrong
            .is_empty()
    );
}

#[tokio::test]
async fn a_refused_tablet_shows_the_relays_sentence() {
    let mut scene = Scene::new("refused").await;
    let log = scene.devices[3].log(1);
    let told = exchange(&scene, 3, &tablet(&log).await).await;
    assert_eq!(
        told.last().unwrap().to_string(),
        "this relay keeps no such vault for this tablet"
    );
    assert_eq!(scene.clock.load(std::sync::atomic::Ordering::Relaxed), NOW);
}
