//! A relay over a file of SQLite's with its own clock, and devices that ask it. Every reply is held against the document
//! that describes the relay.

use crate::common::{Relay, Reply, built_app};
use crate::described;
use lightround_relay::carry::{Carrying, Journal, Limits, Line};
use lightround_relay::store::{Desk, SqliteStore};
use std::path::PathBuf;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex};
use sync::exchange::{Answer, Pushed, Request, Run};
use vault::request::Asked;
use vault::roll::Change;
use vault::sample::{Device, devices};
use vault::{Frame, Invitation, Role, Roll, VaultId};

/// When these tests take place: milliseconds since 1970.
pub const NOW: u64 = 1_700_000_000_000;

pub struct Scene {
    pub relay: Relay,
    pub store: Arc<dyn Desk>,
    pub vault: VaultId,
    pub roll: Roll,
    /// A lead, a clinician, a viewer, and one that is not on the roll.
    pub devices: [Device; 4],
    pub lines: Arc<Mutex<Vec<Line>>>,
    pub clock: Arc<AtomicU64>,
    pub carrying: Carrying,
}

impl Scene {
    /// A relay with an open vault.
    pub async fn new(test: &str) -> Self {
        Self::limited(test, Limits::default()).await
    }

    pub async fn limited(test: &str, limits: Limits) -> Self {
        let mut scene = Self::unopened(test, limits).await;
        scene.open().await;
        scene.state(1, Change::Admit(Role::Clinician)).await;
        scene.state(2, Change::Admit(Role::Viewer)).await;
        scene
    }

    pub async fn unopened(test: &str, limits: Limits) -> Self {
        let folder = built_app(test);
        let store = Arc::new(SqliteStore::open(&file(&folder)).unwrap());
        Self::before(folder, limits, store).await
    }

    /// A relay before any store, with no vault yet.
    pub async fn before(folder: PathBuf, limits: Limits, store: Arc<dyn Desk>) -> Self {
        static SEED: AtomicU64 = AtomicU64::new(1);
        let devices: [Device; 4] = devices(SEED.fetch_add(1, Ordering::Relaxed), 4)
            .try_into()
            .ok()
            .unwrap();
        let lines = Arc::new(Mutex::new(Vec::new()));
        let clock = Arc::new(AtomicU64::new(NOW));
        let (kept, told) = (Arc::clone(&lines), Arc::clone(&clock));
        let carrying = Carrying::with_clock(
            Arc::clone(&store),
            limits,
            Journal::to(move |line| kept.lock().unwrap().push(line)),
            Arc::new(move || told.load(Ordering::Relaxed)),
        );
        let vault = devices[0].keys.vault();
        Self {
            relay: Relay::carrying(&folder, Some(carrying.clone())).await,
            store,
            vault,
            roll: Roll::new(vault),
            devices,
            lines,
            clock,
            carrying,
        }
    }

    async fn open(&mut self) {
        self.open_with(self.invitation()).await;
    }

    /// The first device opens the vault as its lead.
    pub async fn open_with(&mut self, code: Invitation) {
        let first = self.first();
        let request = Request::Open {
            code,
            first: Box::new(first),
        };
        let reply = self.ask(0, &request).await;
        assert_eq!(reply.status, 200, "{}", reply.text());
        self.roll.add(&first).unwrap();
    }

    pub fn invitation(&self) -> Invitation {
        let code = Invitation::make().unwrap();
        self.store.invite(code.hash(), NOW + 1_000).unwrap();
        code
    }

    pub fn first(&self) -> vault::Statement {
        let keys = &self.devices[0].keys;
        let empty = Roll::new(self.vault);
        keys.state(&empty, keys.public(), Change::Admit(Role::Lead))
            .unwrap()
    }

    pub async fn state(&mut self, about: usize, change: Change) {
        let about = self.devices[about].keys.public();
        let statement = self.devices[0]
            .keys
            .state(&self.roll, about, change)
            .unwrap();
        self.roll.add(&statement).unwrap();
        let reply = self.ask(0, &Request::State(Box::new(statement))).await;
        assert_eq!(reply.status, 200, "{}", reply.text());
    }

    pub fn path(&self, what: &str) -> String {
        format!("/relay/v1/vaults/{}/{what}", self.vault)
    }

    /// Asks as a device that keeps the rules.
    pub async fn ask(&self, asker: usize, request: &Request) -> Reply {
        let (path, body) = (self.path(request.name()), request.to_bytes());
        let field = self.field(asker, "POST", &path, &body, NOW);
        self.post(&path, &field, &body).await
    }

    pub fn field(&self, asker: usize, method: &str, path: &str, body: &[u8], time: u64) -> String {
        let signed = Asked { method, path, body };
        self.devices[asker]
            .keys
            .vouch(signed, time)
            .unwrap()
            .to_string()
    }

    pub async fn post(&self, path: &str, field: &str, body: &[u8]) -> Reply {
        let length = body.len().to_string();
        let fields = [
            ("authorization", field),
            ("content-length", length.as_str()),
        ];
        let reply = self.relay.send("POST", path, &fields, body).await;
        described::hold("post", path, &reply);
        reply
    }

    pub async fn push(&self, asker: usize, frames: &[Frame]) -> (u16, Pushed) {
        let run = Run::new(frames.to_vec()).unwrap();
        let reply = self.ask(asker, &Request::Push(run)).await;
        match Answer::from_bytes(&reply.body) {
            Ok(Answer::Pushed(pushed)) => (reply.status, pushed),
            other => panic!("{} {other:?}: {}", reply.status, reply.text()),
        }
    }
}

fn file(folder: &std::path::Path) -> PathBuf {
    folder.parent().unwrap().join("kept.sqlite")
}
